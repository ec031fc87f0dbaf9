/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Whole fields: what is typed, what is kept of it, and what is shown, also after the build's units have changed. */

#include "boat/boat.h"
#include "boat/quantity.h"

#include <math.h>
#include <string.h>

static GbBuild *
new_build (GbUnits units)
{
  GbBuild *build = (GbBuild *) gb_record_new (GB_RECORD_BUILD);

  build->units = units;
  build->currency = g_strdup ("EUR");
  return build;
}

typedef struct
{
  const char *field, *text;
  GbUnits units;
  const char *typed; /* what is kept, or NULL */
  const char *shown, *edit;
  const char *other; /* shown in the other units */
} Case;

static void
check_case (const Case *c)
{
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_PART);
  g_autoptr (GbRecord) build_record = (GbRecord *) new_build (c->units);
  GbBuild *build = (GbBuild *) build_record;
  const GbField *field = gb_field (GB_RECORD_PART, c->field);
  g_auto (GbValue) value = { 0 };
  g_autoptr (GError) error = NULL;
  g_autofree char *shown = NULL;
  g_autofree char *edit = NULL;
  g_autofree char *other = NULL;

  if (!gb_field_parse (field, c->text, build, &value, &error))
    g_error ("%s", error->message);
  g_assert_cmpstr (value.typed, ==, c->typed);
  gb_field_set (field, record, &value);
  shown = gb_field_display (field, record, build);
  edit = gb_field_edit_text (field, record, build);
  build->units = c->units == GB_UNITS_METRIC ? GB_UNITS_FEET : GB_UNITS_METRIC;
  other = gb_field_display (field, record, build);
  g_assert_cmpstr (shown, ==, c->shown);
  g_assert_cmpstr (edit, ==, c->edit);
  g_assert_cmpstr (other, ==, c->other);
}

static void
test_what_is_kept (void)
{
  static const Case cases[] = {
    { "length", "38", GB_UNITS_METRIC, NULL, "38 mm", "38 mm", "1 1/2\"" },
    { "length", "38 mm", GB_UNITS_METRIC, NULL, "38 mm", "38 mm", "1 1/2\"" },
    { "length", "66", GB_UNITS_FEET, NULL, "5' 6\"", "5' 6\"", "1676 mm" },
    { "length", "5' 6\"", GB_UNITS_FEET, NULL, "5' 6\"", "5' 6\"", "1676 mm" },
    { "length", "38.25", GB_UNITS_METRIC, "38.25 mm", "38.25 mm", "38.25 mm", "38.25 mm" },
    { "length", "1,5 m", GB_UNITS_METRIC, "1.5 m", "1.5 m", "1.5 m", "1.5 m" },
    { "length", " 1/4\" ", GB_UNITS_METRIC, "1/4\"", "1/4\"", "1/4\"", "1/4\"" },
    { "length", "6\n mm", GB_UNITS_FEET, "6 mm", "6 mm", "6 mm", "6 mm" },
    { "length", "6 3/8", GB_UNITS_FEET, "6 3/8 in", "6 3/8 in", "6 3/8 in", "6 3/8 in" },
    { "length", "5' 6", GB_UNITS_METRIC, "5' 6 in", "5' 6 in", "5' 6 in", "5' 6 in" },
    { "length", "2*1220-45", GB_UNITS_METRIC, "(2*1220-45) mm", "2395 mm", "(2*1220-45) mm", "7' 10 5/16\"" },
    { "length", "(1220-45)/2", GB_UNITS_METRIC, "(1220-45)/2 mm", "588 mm", "(1220-45)/2 mm", "1' 11 1/8\"" },
    { "length", "1 m - 45", GB_UNITS_METRIC, "1 m - 45 mm", "955 mm", "1 m - 45 mm", "3' 1 5/8\"" },
    { "length", "40+5 + 1 m", GB_UNITS_METRIC, "(40+5) mm + 1 m", "1045 mm", "(40+5) mm + 1 m", "3' 5 1/8\"" },
    { "mass", "0.3", GB_UNITS_METRIC, NULL, "0.3 kg", "0.3 kg", "10.6 oz" },
    { "mass", "300 g", GB_UNITS_METRIC, "300 g", "300 g", "300 g", "300 g" },
    { "mass", "12 lb 4 oz", GB_UNITS_METRIC, "12 lb 4 oz", "12 lb 4 oz", "12 lb 4 oz", "12 lb 4 oz" },
    { "coverage", "12 m²/l", GB_UNITS_METRIC, NULL, "12 m²/l", "12 m²/l", "489 ft²/gal" },
    { "coverage", "12 m2/l", GB_UNITS_METRIC, NULL, "12 m²/l", "12 m²/l", "489 ft²/gal" },
    { "spread", "5", GB_UNITS_METRIC, NULL, "5 %", "5 %", "5 %" },
    { "turn_x", "45", GB_UNITS_METRIC, NULL, "45°", "45°", "45°" },
    { "quantity", "3", GB_UNITS_METRIC, NULL, "3", "3", "3" },
    { "price", "€ 12,50", GB_UNITS_METRIC, NULL, "12.50", "12.50", "12.50" },
    { "price", "2*12,50", GB_UNITS_METRIC, "2*12.50", "25.00", "2*12.50", "25.00" },
    { "length", "", GB_UNITS_METRIC, NULL, "–", "", "–" },
    { "length", "–", GB_UNITS_METRIC, NULL, "–", "", "–" },
    { "price", "", GB_UNITS_METRIC, NULL, "–", "", "–" },
    { "name", "  Thwart ", GB_UNITS_METRIC, NULL, "Thwart", "Thwart", "Thwart" },
    { "takeoff", "skin of a HULL", GB_UNITS_METRIC, NULL, "Skin of a hull", "Skin of a hull", "Skin of a hull" },
    { "takeoff", "coating", GB_UNITS_METRIC, NULL, "Coating", "Coating", "Coating" },
    { "pair", "YES", GB_UNITS_METRIC, NULL, "Yes", "Yes", "Yes" },
    { "pair", "0", GB_UNITS_METRIC, NULL, "No", "No", "No" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    check_case (&cases[i]);
}

/* Whatever was typed, what is kept of it gives the very same value again, in either set of units. */
static void
test_what_is_kept_means_the_same (void)
{
  static const char *const texts[] = { "38.25", "1/3",       "2*1220-45",     "7/3+1", "28/3",     "1.1*1.1", "0.1+0.2",
                                       "5 ft 7", "(1+2)/7", "1/3*(2+5/7)", "1e-3",  "100/7 m", "2 m/7", "2*(1 m/1 m)", "5*(2+1)/7" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    for (int units = GB_UNITS_METRIC; units <= GB_UNITS_FEET; units++)
      for (GbDimension dim = GB_DIM_RATIO; dim < GB_N_DIMS; dim++)
        {
          GbField field = *gb_field (GB_RECORD_PART, "spread");
          g_autoptr (GbRecord) build_record = (GbRecord *) new_build ((GbUnits) units);
          GbBuild *build = (GbBuild *) build_record;
          g_auto (GbValue) value = { 0 };
          double back;

          field.dim = dim;
          field.max = 1e9;
          field.min = -1e9;
          if (!gb_field_parse (&field, texts[i], build, &value, NULL) || value.typed == NULL)
            continue;
          for (int later = GB_UNITS_METRIC; later <= GB_UNITS_FEET; later++)
            {
              if (!gb_quantity_parse (value.typed, dim, (GbUnits) later, &back, NULL))
                g_error ("“%s” was kept as “%s”, which is no entry", texts[i], value.typed);
              if (back != value.real)
                g_error ("“%s” was kept as “%s”: got %.17g, expected %.17g", texts[i], value.typed, back, value.real);
            }
        }
}

/* A value that was set by other means is shown, not what was once typed. */
static void
test_stale_text_is_not_shown (void)
{
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_PART);
  g_autoptr (GbRecord) build = (GbRecord *) new_build (GB_UNITS_METRIC);
  const GbField *length = gb_field (GB_RECORD_PART, "length");
  const GbField *price = gb_field (GB_RECORD_PART, "price");
  g_autofree char *shown = NULL;
  g_autofree char *edit = NULL;
  g_autofree char *cost = NULL;

  gb_field_set_real (length, record, 2);
  gb_typed_set (record, "length", "1.5 m");
  gb_field_set_integer (price, record, 700);
  gb_typed_set (record, "price", "2*4");
  shown = gb_field_display (length, record, (GbBuild *) build);
  edit = gb_field_edit_text (length, record, (GbBuild *) build);
  cost = gb_field_edit_text (price, record, (GbBuild *) build);
  g_assert_cmpstr (shown, ==, "2000 mm");
  g_assert_cmpstr (edit, ==, "2000 mm");
  g_assert_cmpstr (cost, ==, "7.00");
}

static void
test_refusals_name_the_field (void)
{
  static const struct
  {
    GbRecordKind kind;
    const char *field, *text;
    GbUnits units;
    const char *message;
  } cases[] = {
    { GB_RECORD_PART, "thickness", "3 kg", GB_UNITS_METRIC,
      "Thickness: “3 kg” is a mass; a length is expected, such as 38 mm." },
    { GB_RECORD_PART, "thickness", "0", GB_UNITS_METRIC, "Thickness: must be more than 0 mm." },
    { GB_RECORD_PART, "thickness", "-1/4", GB_UNITS_FEET, "Thickness: must be more than 0\"." },
    { GB_RECORD_PART, "length", "200 m", GB_UNITS_METRIC,
      "Length: 200000 mm is more than any small boat needs; at most 100000 mm." },
    { GB_RECORD_PART, "length", "200 m", GB_UNITS_FEET, "Length: 656' 2\" is more than any small boat needs; at most 328' 1\"." },
    { GB_RECORD_BUILD, "temperature", "0", GB_UNITS_FEET, "Temperature: must not be less than 28.4 °F." },
    { GB_RECORD_PART, "name", "", GB_UNITS_METRIC, "Name: must not be empty." },
    { GB_RECORD_PART, "name", "\xff", GB_UNITS_METRIC, "Name: this text is not UTF-8; plain text is expected." },
    { GB_RECORD_PART, "length", "\xff", GB_UNITS_METRIC, "Length: this text is not UTF-8; plain text is expected." },
    { GB_RECORD_PART, "pair", "maybe", GB_UNITS_METRIC, "Pair: “maybe” is neither yes nor no." },
    { GB_RECORD_PART, "coating", "jam", GB_UNITS_METRIC, "Coating: “jam” is none of these: Paint, varnish or oil, Cloth and resin." },
    { GB_RECORD_PART, "price", "12 USD", GB_UNITS_METRIC,
      "Planned price: “12 USD” is no sum of money in EUR; enter a number, such as 12.50 or 2*12.50." },
    { GB_RECORD_PART, "price", "-3", GB_UNITS_METRIC, "Planned price: must not be negative." },
    { GB_RECORD_PART, "material", "oak", GB_UNITS_METRIC, "Material: pick one from the list." },
    { GB_RECORD_PART, "outline", "0 0, 1 0", GB_UNITS_METRIC,
      "Outline: An outline needs at least three points, such as 0 0, 1.2 0, 1.2 0.4." },
    { GB_RECORD_BUILD, "currency", "euro", GB_UNITS_METRIC, "Currency: three capital letters are expected, such as EUR." },
    { GB_RECORD_PURCHASE, "date", "soon", GB_UNITS_METRIC,
      "Date: “soon” is no date from 1900 to 2199; enter year, month and day, as in 2025-03-31." },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbRecord) build = (GbRecord *) new_build (cases[i].units);
      g_auto (GbValue) value = { 0 };
      g_autoptr (GError) error = NULL;

      g_assert_false (
          gb_field_parse (gb_field (cases[i].kind, cases[i].field), cases[i].text, (GbBuild *) build, &value, &error));
      g_assert_nonnull (error);
      g_assert_cmpstr (error->message, ==, cases[i].message);
    }
}

/* An empty choice is what a new record holds. */
static void
test_empty_choice (void)
{
  g_autoptr (GbRecord) build = (GbRecord *) new_build (GB_UNITS_METRIC);
  g_auto (GbValue) value = { 0 };

  g_assert_true (gb_field_parse (gb_field (GB_RECORD_MATERIAL, "family"), "", (GbBuild *) build, &value, NULL));
  g_assert_cmpint (value.integer, ==, GB_FAMILY_OTHER);
}

/* For every field: what an editor starts with is taken again and leaves the record as it is. */
static void
test_edit_text_changes_nothing (void)
{
  g_autoptr (GbRecord) build = (GbRecord *) new_build (GB_UNITS_METRIC);

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);
      g_autoptr (GbRecord) record = gb_record_new (k);

      for (guint i = 0; i < type->n_fields; i++)
        {
          const GbField *field = &type->fields[i];
          g_autofree char *text = gb_field_edit_text (field, record, (GbBuild *) build);
          g_autofree char *again = NULL;
          g_auto (GbValue) value = { 0 };
          g_autoptr (GError) error = NULL;

          if ((field->flags & GB_FIELD_REQUIRED) != 0)
            continue;
          if (!gb_field_parse (field, text, (GbBuild *) build, &value, &error))
            g_error ("%s.%s: %s", type->name, field->name, error->message);
          gb_field_set (field, record, &value);
          again = gb_field_edit_text (field, record, (GbBuild *) build);
          g_assert_cmpstr (again, ==, text);
        }
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/entry/what-is-kept", test_what_is_kept);
  g_test_add_func ("/entry/what-is-kept-means-the-same", test_what_is_kept_means_the_same);
  g_test_add_func ("/entry/stale-text-is-not-shown", test_stale_text_is_not_shown);
  g_test_add_func ("/entry/refusals-name-the-field", test_refusals_name_the_field);
  g_test_add_func ("/entry/empty-choice", test_empty_choice);
  g_test_add_func ("/entry/edit-text-changes-nothing", test_edit_text_changes_nothing);
  return g_test_run ();
}
