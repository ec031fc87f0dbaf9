/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of materials: how it is read, what is said of a bad line, and whether what ships is sound. */

#include "boat/catalogue.h"
#include "boat/fields.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define HEADING "name\tfamily\tmeasure\tdensity\tbasic_gravity\tmoisture\tareal_mass\tspread\tsource\n"

static void
test_reading (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) materials = gb_catalogue_parse ("# a word first\n\n" HEADING "Fir\twood\twood\t\t0.45\t12 %\t\t10 %\tA book\r\n"
                                                        "# and one between\n"
                                                        "Cloth\tfibre\tareal\t2540\t\t\t6 oz/yd2\n"
                                                        "Foam\tfoam\tdensity\t2 lb/ft3",
                                                        &error);
  const GbMaterial *fir, *cloth, *foam;

  g_assert_no_error (error);
  g_assert_cmpuint (materials->len, ==, 3);
  fir = materials->pdata[0];
  cloth = materials->pdata[1];
  foam = materials->pdata[2];
  g_assert_cmpint (fir->rec.id, ==, 0);
  g_assert_cmpstr (fir->name, ==, "Fir");
  g_assert_cmpint (fir->family, ==, GB_FAMILY_WOOD);
  g_assert_cmpint (fir->measure, ==, GB_MEASURE_WOOD);
  g_assert_cmpfloat (fir->moisture, ==, 0.12);
  g_assert_cmpfloat (fir->spread, ==, 0.10);
  g_assert_cmpstr (fir->source, ==, "A book");
  g_assert_true (isnan (fir->density));
  g_assert_cmpfloat_with_epsilon (cloth->areal_mass, 6 * 0.028349523125 / 0.83612736, 1e-12);
  g_assert_null (cloth->source);
  g_assert_cmpfloat_with_epsilon (foam->density, 2 * 0.45359237 / 0.028316846592, 1e-9);
}

static void
test_refusals (void)
{
  static const struct
  {
    const char *text, *message;
  } cases[] = {
    { "name\tcolour\n", "Line 1: a material has no “colour”." },
    { "name\tname\n", "Line 1: the column “name” is there twice." },
    { "# x\n" HEADING "\twood\n", "Line 3: a material without a name." },
    { HEADING "Fir\tfish\n", "Line 2: family: “fish” is not among the choices." },
    { HEADING "Fir\twood\twood\t\t9\n", "Line 2: Basic specific gravity: 9 is more than any small boat needs; at most 1.5." },
    { HEADING "Fir\twood\tdensity\tlight\n", "Line 2: density: “light” is no unit that is known here; enter a density, such as 450 kg/m3." },
    { HEADING "Fir\twood\tdensity\t3 kg\n", "Line 2: density: “3 kg” is a mass; a density is expected, such as 450 kg/m3." },
    { HEADING "Fir\twood\tdensity\t-4\n", "Line 2: Density: must be more than 0 kg/m³." },
    { HEADING "Fir\n\nFIR\n", "Line 4: “FIR” is there twice." },
    { HEADING "Fir\t\t\t\t\t\t\t\t\tx\n", "Line 2: more cells than the 9 columns that the heading names." },
    { HEADING "F\xffr\n", "Line 2: this line is not UTF-8; plain text is expected." },
    { HEADING "F\001r\n", "Line 2: Name: holds a control character (U+0001); plain text is expected." },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) materials = gb_catalogue_parse (cases[i].text, &error);

      g_assert_null (materials);
      g_assert_nonnull (error);
      g_assert_cmpstr (error->message, ==, cases[i].message);
    }
}

static void
test_empty_table (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) none = gb_catalogue_parse ("", &error);
  g_autoptr (GPtrArray) heading = gb_catalogue_parse (HEADING, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (heading->len, ==, 0);
}

/* TRUE if the figure is there by which the material's mass is known. */
static gboolean
has_figure (const GbMaterial *material)
{
  switch ((GbMeasure) material->measure)
    {
    case GB_MEASURE_WOOD:
      return !isnan (material->basic_gravity) && !isnan (material->moisture);
    case GB_MEASURE_AREAL:
      return !isnan (material->areal_mass);
    case GB_MEASURE_LINEAR:
      return !isnan (material->linear_mass);
    case GB_MEASURE_DENSITY:
    default:
      return !isnan (material->density);
    }
}

static void
test_what_ships (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("GARBOARD_DATA_DIR"), "materials.tsv", NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) materials = NULL;
  guint by_family[GB_FAMILY_OTHER + 1] = { 0 };

  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  materials = gb_catalogue_parse (text, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (materials->len, >=, 170);
  for (guint i = 0; i < materials->len; i++)
    {
      const GbMaterial *material = materials->pdata[i];

      by_family[material->family]++;
      if (!has_figure (material) || isnan (material->spread) || !(material->spread > 0) || material->source == NULL)
        g_error ("%s lacks its figure, its spread or its source", material->name);
    }
  for (guint i = 0; i < G_N_ELEMENTS (by_family); i++)
    g_assert_cmpuint (by_family[i], >, 0);
  g_assert_cmpuint (by_family[GB_FAMILY_WOOD], >=, 50);
}

/* The builder's own table stands before the one that ships, row by row; its bad lines are left out with a word on the log. The test runs
 * itself, since the catalogue is read once in a process. */
static void
test_own_table (void)
{
  if (g_test_subprocess ())
    {
      const GbMaterial *own = gb_catalogue_find ("SITKA SPRUCE");

      g_assert_nonnull (own);
      g_assert_cmpfloat (own->density, ==, 430);
      g_assert_cmpstr (((GbMaterial *) gb_catalogue_get ()->pdata[0])->name, ==, "Sitka spruce");
      g_assert_nonnull (gb_catalogue_find ("Driftwood"));
      g_assert_null (gb_catalogue_find ("Spoiled"));
      g_assert_null (gb_catalogue_find ("Unobtainium"));
      g_assert_nonnull (gb_catalogue_find ("okoume plywood"));
      return;
    }
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
  g_test_trap_assert_stderr ("*Line 3: density: *heavy*");
}

static void
write_own_table (const char *folder)
{
  g_autofree char *dir = g_build_filename (folder, "garboard", NULL);
  g_autofree char *path = g_build_filename (dir, "materials.tsv", NULL);

  g_assert_cmpint (g_mkdir_with_parents (dir, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "name\tfamily\tdensity\nSitka spruce\twood\t430\nSpoiled\twood\theavy\nDriftwood\twood\t500\n", -1,
                                      NULL));
}

static void
remove_own_table (const char *folder)
{
  g_autofree char *dir = g_build_filename (folder, "garboard", NULL);
  g_autofree char *path = g_build_filename (dir, "materials.tsv", NULL);

  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (dir), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

int
main (int argc, char *argv[])
{
  const char *inherited = g_getenv ("GARBOARD_TEST_OWN");
  g_autofree char *folder = inherited != NULL ? g_strdup (inherited) : g_dir_make_tmp ("garboard-XXXXXX", NULL);
  int failed;

  g_assert_nonnull (folder);
  if (inherited == NULL)
    write_own_table (folder);
  g_setenv ("GARBOARD_TEST_OWN", folder, TRUE);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/catalogue/reading", test_reading);
  g_test_add_func ("/catalogue/refusals", test_refusals);
  g_test_add_func ("/catalogue/empty-table", test_empty_table);
  g_test_add_func ("/catalogue/what-ships", test_what_ships);
  g_test_add_func ("/catalogue/own-table", test_own_table);
  failed = g_test_run ();
  if (inherited == NULL)
    remove_own_table (folder);
  return failed;
}
