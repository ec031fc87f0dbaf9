/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Outlines: reading, what is no outline, and writing. */

#include "boat/outline.h"
#include "boat/quantity.h"

#include <math.h>
#include <string.h>

static void
test_reading (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GbOutline) outline
      = gb_outline_parse (" 0 0, 1200 mm 0,1.2 0.4 , 0 12\" ; 0.2 0.1, 0.3 0.1, 0.25 0.2 , 0.2 0.1", &error);

  g_assert_no_error (error);
  g_assert_cmpuint (outline->n_rings, ==, 2);
  g_assert_cmpuint (outline->rings[0].n, ==, 4);
  g_assert_cmpfloat (outline->rings[0].points[1].x, ==, 1.2);
  g_assert_cmpfloat_with_epsilon (outline->rings[0].points[3].y, 0.3048, 1e-15);
  g_assert_cmpuint (outline->rings[1].n, ==, 3); /* the last point, which lies on the first, is left out */
}

static void
test_refusals (void)
{
  static const struct
  {
    const char *text, *says;
  } cases[] = {
    { "", "three points" },
    { "0 0", "three points" },
    { "0 0, 1 0", "three points" },
    { "0 0, 1 0, 0 0", "three points" },
    { "0 0, 1 0, 1 0, 0 0", "three points" },
    { "0 0, 1 0, x y", "no point" },
    { "0 0, 1 0, 1 1 1", "no point" },
    { "0 0, 1 0, 1", "no point" },
    { "0 0, 1 0, 1 kg 2", "no point" },
    { "0 0, 1 0, inf 2", "no point" },
    { "0 0, 1 0, nan 2", "no point" },
    { "0 0, 1 0, 0x10 2", "no point" },
    { "0 0, 1 0, 1e999 2", "no point" },
    { "0 0, 1 0, 1e6 2", "farther out" },
    { "0 0, 1 0, 1 1;", "three points" },
    { "0 0, 1 0, 2 0", "no area" },
    { "0 0, 1 1, 1 0, 0 1", "crosses or touches itself" },                        /* a bow-tie */
    { "0 0, 2 0, 2 2, 1 0, 0 2", "crosses or touches itself" },                   /* a corner on an edge */
    { "0 0, 1 0, 1 1, 0.5 0.5, 0 1, 0.5 0.5", "crosses or touches itself" },      /* a point used twice */
    { "0 0, 3 0, 3 2, 5 2, 1 2", "crosses or touches itself" },                   /* a spike outwards */
    { "0 0, 3 0, 1 0, 1 2", "crosses or touches itself" },                        /* back over the edge before */
    { "0 0, 1 0, 1 1, 0 1; 2 2, 3 2, 3 3", "outside" },
    { "0 0, 1 0, 1 1, 0 1; 0.5 0.5, 1.5 0.5, 0.5 0.7", "A hole crosses or touches" },
    { "0 0, 1 0, 1 1, 0 1; 0 0, 0.5 0.2, 0.2 0.5", "A hole crosses or touches" },
    { "0 0, 1 0, 1 1, 0 1; 0.1 0.1, 0.5 0.1, 0.3 0.5; 0.2 0.15, 0.6 0.1, 0.3 0.4", "Two holes" },
    { "0 0, 1 0, 1 1, 0 1; 0.1 0.1, 0.9 0.1, 0.5 0.9; 0.4 0.2, 0.6 0.2, 0.5 0.4", "inside another" },
    { "0 0, 1 0, 1 1, 0 1; 0.4 0.2, 0.6 0.2, 0.5 0.4; 0.1 0.1, 0.9 0.1, 0.5 0.9", "inside another" },
    { "0 0, 1 0, 1 1, 0 1; -1 -1, 2 -1, 2 2, -1 2", "outside" },
    { "\xff", "UTF-8" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GbOutline) outline = gb_outline_parse (cases[i].text, &error);

      if (outline != NULL)
        g_error ("“%s” was taken for an outline", cases[i].text);
      g_assert_true (error->domain == GB_QUANTITY_ERROR);
      if (strstr (error->message, cases[i].says) == NULL)
        g_error ("“%s” says: %s", cases[i].text, error->message);
    }
}

/* A star of @n points round the origin, each at its own distance: never crosses. */
static char *
star (guint n, double least, double most)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      double r = g_test_rand_double_range (least, most);
      double turn = 2 * G_PI * i / n;

      g_string_append_printf (text, "%s%.17g %.17g", i > 0 ? ", " : "", r * cos (turn), r * sin (turn));
    }
  return g_string_free (text, FALSE);
}

static void
test_written_is_read_back (void)
{
  for (int i = 0; i < 200; i++)
    {
      g_autofree char *edge = star ((guint) g_test_rand_int_range (3, 60), 1.0, 1.5);
      g_autofree char *hole = star ((guint) g_test_rand_int_range (3, 60), 0.1, 0.49);
      g_autofree char *text = g_strconcat (edge, "; ", hole, NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (GbOutline) outline = gb_outline_parse (text, &error);
      g_autofree char *written = NULL;
      g_autoptr (GbOutline) back = NULL;

      g_assert_no_error (error);
      written = gb_outline_format (outline);
      back = gb_outline_parse (written, &error);
      g_assert_no_error (error);
      g_assert_cmpuint (back->n_rings, ==, outline->n_rings);
      for (guint r = 0; r < back->n_rings; r++)
        g_assert_cmpmem (back->rings[r].points, back->rings[r].n * sizeof (GbPoint), outline->rings[r].points,
                         outline->rings[r].n * sizeof (GbPoint));
    }
}

static void
test_how_it_is_written (void)
{
  g_autoptr (GbOutline) outline = gb_outline_parse ("-0 0, 100 mm 0, 0.1 0.4; 0.05 0.1, 0.08 0.15, 0.06 0.12", NULL);
  g_autofree char *text = gb_outline_format (outline);

  g_assert_cmpstr (text, ==, "0 0, 0.1 0, 0.1 0.4; 0.05 0.1, 0.08 0.15, 0.06 0.12");
}

static void
test_properties (void)
{
  /* Rectangle b x h with a rectangular hole: A = bh, I = bh3/12 about its own centre, and the parallel axis theorem. Two ways round. */
  static const char *const texts[] = { "10 5, 12 5, 12 6, 10 6; 10.5 5.25, 11 5.25, 11 5.75, 10.5 5.75",
                                       "10 6, 12 6, 12 5, 10 5; 10.5 5.25, 11 5.25, 11 5.75, 10.5 5.75" };
  double area = 2 - 0.25;
  double x = (2 * 11 - 0.25 * 10.75) / area;
  double ixx = 2.0 * 1 / 12 - 0.5 * 0.125 / 12;
  double iyy = 8.0 / 12 + 2 * (11 - x) * (11 - x) - 0.5 * 0.125 / 12 - 0.25 * (10.75 - x) * (10.75 - x);

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GbOutline) outline = gb_outline_parse (texts[i], NULL);
      GbOutlineProperties properties = gb_outline_properties (outline);

      g_assert_cmpfloat_with_epsilon (properties.area, area, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.perimeter, 8, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.x, x, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.y, 5.5, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.ixx, ixx, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.iyy, iyy, 1e-12);
      g_assert_cmpfloat_with_epsilon (properties.ixy, 0, 1e-12);
    }
}

static void
test_properties_of_a_triangle (void)
{
  /* A right-angled triangle: I = bh3/36 and hb3/36, product -b2h2/72 about the centroid, which is a third up. */
  g_autoptr (GbOutline) outline = gb_outline_parse ("0 0, 3 0, 0 2", NULL);
  GbOutlineProperties properties = gb_outline_properties (outline);

  g_assert_cmpfloat_with_epsilon (properties.area, 3, 1e-14);
  g_assert_cmpfloat_with_epsilon (properties.x, 1, 1e-14);
  g_assert_cmpfloat_with_epsilon (properties.y, 2.0 / 3, 1e-14);
  g_assert_cmpfloat_with_epsilon (properties.ixx, 3 * 8 / 36.0, 1e-14);
  g_assert_cmpfloat_with_epsilon (properties.iyy, 2 * 27 / 36.0, 1e-14);
  g_assert_cmpfloat_with_epsilon (properties.ixy, -9 * 4 / 72.0, 1e-14);
}

/* In a star so round that it is convex, a swap of two neighbours makes it cross itself. */
static void
test_swapped_points_cross (void)
{
  for (int i = 0; i < 200; i++)
    {
      g_autofree char *text = star (16, 1.0, 1.02);
      g_auto (GStrv) points = g_strsplit (text, ", ", -1);
      guint at = (guint) g_test_rand_int_range (0, 15);
      char *swapped = points[at];
      g_autofree char *joined = NULL;
      g_autoptr (GbOutline) outline = NULL;

      points[at] = points[at + 1];
      points[at + 1] = swapped;
      joined = g_strjoinv (",", points);
      outline = gb_outline_parse (joined, NULL);
      g_assert_null (outline);
    }
}

static void
test_many_points (void)
{
  g_autofree char *many = star (2000, 1.0, 1.5);
  g_autofree char *too_many = star (2001, 1.0, 1.5);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbOutline) outline = gb_outline_parse (many, &error);
  g_autoptr (GbOutline) refused = NULL;

  g_assert_no_error (error);
  g_assert_cmpuint (outline->rings[0].n, ==, 2000);
  refused = gb_outline_parse (too_many, &error);
  g_assert_null (refused);
  g_assert_nonnull (strstr (error->message, "too many points"));
}

/* A million characters are refused before there is time to notice. */
static void
test_hostile_lengths (void)
{
  static const char *const pieces[] = { "0 0,", ";", "1", " ", "mm ", "\xc2\xb5" };

  for (gsize i = 0; i < G_N_ELEMENTS (pieces); i++)
    {
      g_autoptr (GString) text = g_string_sized_new (1000000);
      g_autoptr (GError) error = NULL;

      while (text->len < 1000000)
        g_string_append (text, pieces[i]);
      g_test_timer_start ();
      g_assert_null (gb_outline_parse (text->str, &error));
      /* The machine may be busy; a search through all of it again and again would take minutes. */
      g_assert_cmpfloat (g_test_timer_elapsed (), <, 5);
      g_assert_cmpuint (strlen (error->message), <, 300);
    }
}

static void
test_garbage_never_harms (void)
{
  static const char *const pieces[] = { "0", "1", "2.5", " ", " ", ",", ",", ";", "mm", "'", "-", "e9", "x", "\xc3", ".", "1 1" };

  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (GbOutline) outline = NULL;

      for (int j = g_test_rand_int_range (0, 25); j > 0; j--)
        g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);
      outline = gb_outline_parse (text->str, &error);
      g_assert_true ((outline == NULL) == (error != NULL));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/outline/reading", test_reading);
  g_test_add_func ("/outline/refusals", test_refusals);
  g_test_add_func ("/outline/written-is-read-back", test_written_is_read_back);
  g_test_add_func ("/outline/how-it-is-written", test_how_it_is_written);
  g_test_add_func ("/outline/properties", test_properties);
  g_test_add_func ("/outline/properties-of-a-triangle", test_properties_of_a_triangle);
  g_test_add_func ("/outline/swapped-points-cross", test_swapped_points_cross);
  g_test_add_func ("/outline/many-points", test_many_points);
  g_test_add_func ("/outline/hostile-lengths", test_hostile_lengths);
  g_test_add_func ("/outline/garbage-never-harms", test_garbage_never_harms);
  return g_test_run ();
}
