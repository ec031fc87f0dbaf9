/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The manual page says all that the text form can hold, and its example is a build. */

#include "scratch.h"

#include "engine/findings.h"
#include "project/project.h"
#include "store/text-form.h"

#include <math.h>
#include <string.h>

static char *
read_page (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("GARBOARD_DATA_DIR"), "garboard.1", NULL);
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  return text;
}

/* What stands under ".Ss @name", up to the next heading. */
static char *
section (const char *page, const char *name)
{
  g_autofree char *heading = g_strdup_printf ("\n.Ss %s\n", name);
  const char *start = strstr (page, heading);
  const char *end;

  if (start == NULL)
    g_error ("the page has no section on “%s”", name);
  start += strlen (heading);
  end = strstr (start, "\n.S");
  return end != NULL ? g_strndup (start, (gsize) (end - start)) : g_strdup (start);
}

/* The item's text, up to the next one. */
static char *
item (const char *text, const char *name)
{
  g_autofree char *tag = g_strdup_printf ("\n.It Cm %s\n", name);
  g_autofree char *padded = g_strconcat ("\n", text, NULL);
  const char *start = g_strrstr (padded, tag); /* the fields stand behind the explanations of choices */
  const char *end;

  if (start == NULL)
    g_error ("the page does not say “%s”", name);
  start += strlen (tag);
  end = strstr (start, "\n.It ");
  return end != NULL ? g_strndup (start, (gsize) (end - start)) : g_strdup (start);
}

static void
test_every_field (void)
{
  g_autofree char *page = read_page ();

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);
      g_autofree char *text = section (page, type->name);

      for (guint i = 0; i < type->n_fields; i++)
        {
          const GbField *field = &type->fields[i];
          g_autofree char *said = item (text, field->name);

          for (guint c = 0; c < gb_field_n_choices (field); c++)
            {
              g_autofree char *choice = g_strdup_printf (".Cm %s", field->choices[c].name);

              if (strstr (said, choice) == NULL)
                g_error ("the page does not say that %s may be “%s”", field->name, field->choices[c].name);
            }
          if (field->dim == GB_DIM_REF)
            g_assert_nonnull (strstr (said, "Reference to a"));
          if ((field->flags & GB_FIELD_REQUIRED) != 0)
            g_assert_nonnull (strstr (said, "must be there"));
        }
    }
}

/* The literal display that begins with "{ "garboard"". */
static char *
find_example (const char *page)
{
  static const char begin[] = "\n.Bd -literal -offset indent\n{ \"garboard\"";
  const char *start = strstr (page, begin);
  const char *end = start != NULL ? strstr (start, "\n.Ed\n") : NULL;
  g_autofree char *text = NULL;
  g_auto (GStrv) pieces = NULL;

  g_assert_nonnull (end);
  start = strstr (start, "\n{") + 1;
  text = g_strndup (start, (gsize) (end - start));
  pieces = g_strsplit (text, "\\e", -1); /* how the page writes a backslash */
  return g_strjoinv ("\\", pieces);
}

/* Bottom off the scale 2.9; sides 2 x 0.72 m2 x 4 mm at what the sheet weighed; tape 0.5 m2 x 175 g/m2 x 2.2;
 * gunwales 2 x 2.3 m x 25 x 18 mm at the wood's density, 0.37 -> 0.3930 -> 440.2 kg/m3; seat 1.4. */
static void
test_the_example_is_a_build (void)
{
  g_autofree char *page = read_page ();
  g_autofree char *text = find_example (page);
  g_autoptr (GError) error = NULL;
  g_autoptr (GbBoat) boat = gb_text_form_read (text, -1, &error);
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbFindings) findings = gb_findings_new ();
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  double expected = 2.9 + 2 * 0.72 * 0.004 * 5.6 / (2.5 * 1.22 * 0.004) + 0.5 * 0.175 * 2.2
                    + 2 * 2.3 * 0.025 * 0.018 * 440.2 + 1.4;

  g_assert_no_error (error);
  store = scratch_store (scratch, boat);
  faults = gb_store_check (store);
  g_assert_cmpuint (faults->len, ==, 0);

  gb_findings_find (findings, boat, GB_TOUCHED_ALL, gb_today ());
  g_assert_cmpuint (findings->rollup.boat.n_no_mass, ==, 0);
  g_assert_cmpuint (findings->rollup.boat.n_no_place, ==, 0);
  g_assert_cmpfloat_with_epsilon (findings->rollup.boat.mass, expected, 0.01);
  g_assert_cmpuint (findings->flotation.n_bad_hulls, ==, 0);
  g_assert_cmpfloat (findings->flotation.left, >, 0);
  g_assert_cmpint (findings->costs.spent, ==, 4350 + 1200);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/man-page/every-field", test_every_field);
  g_test_add_func ("/project/man-page/example", test_the_example_is_a_build);
  return g_test_run ();
}
