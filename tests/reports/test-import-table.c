/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Tables as they come: separators, quotes, characters, ends of lines, and the meaning of headings. */

#include "boat/quantity.h"
#include "reports/import-columns.h"
#include "reports/import-table.h"

#include <string.h>

static GPtrArray *
read_bytes (const char *text, gssize length)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *rows = gb_import_read_table (text, length, &error);

  g_assert_no_error (error);
  return rows;
}

static const char *
cell (const GPtrArray *rows, guint row, guint column)
{
  const GbImportRow *r = rows->pdata[row];

  g_assert_cmpuint (column, <, r->cells->len);
  return r->cells->pdata[column];
}

static void
assert_refused (const char *text, gssize length, const char *words)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (gb_import_read_table (text, length, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_separators (void)
{
  static const char *const texts[] = {
    "Name,Thickness\nBottom,6\nSide,4\n",
    "Name;Thickness\nBottom;6\nSide;4\n",
    "Name\tThickness\nBottom\t6\nSide\t4\n",
    "Name;\"Thickness, mm\"\nBottom;\"6\"\nSide;4\n",
    /* Decimal commas and a comma in a heading do not make commas the separator. */
    "Name;Mass, kg\nBottom;6,25\nSide;4\n",
    "Name\tThickness, in mm\nBottom\t6,0\nSide\t4,1\n",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GPtrArray) rows = read_bytes (texts[i], -1);

      g_assert_cmpuint (rows->len, ==, 3);
      for (guint r = 0; r < 3; r++)
        g_assert_cmpuint (((GbImportRow *) rows->pdata[r])->cells->len, ==, 2);
      g_assert_cmpstr (cell (rows, 1, 0), ==, "Bottom");
      g_assert_true (g_str_has_prefix (cell (rows, 1, 1), "6"));
    }
}

static void
test_quotes_and_lines (void)
{
  g_autoptr (GPtrArray) rows = read_bytes (
      "Name,Notes\r\n\"Bottom, aft\",\"two\r\nlines\"\r\n\r\n  ,\r\n\"6\"\" bolt\",1/4\"\rSide,x", -1);

  g_assert_cmpuint (rows->len, ==, 4);
  g_assert_cmpstr (cell (rows, 1, 0), ==, "Bottom, aft");
  g_assert_cmpstr (cell (rows, 1, 1), ==, "two\nlines");
  g_assert_cmpstr (cell (rows, 2, 0), ==, "6\" bolt");
  g_assert_cmpstr (cell (rows, 2, 1), ==, "1/4\"");
  g_assert_cmpstr (cell (rows, 3, 0), ==, "Side");
  /* Lines in the file, breaks within quotes and empty lines counted. */
  g_assert_cmpuint (((GbImportRow *) rows->pdata[0])->line, ==, 1);
  g_assert_cmpuint (((GbImportRow *) rows->pdata[1])->line, ==, 2);
  g_assert_cmpuint (((GbImportRow *) rows->pdata[2])->line, ==, 6);
  g_assert_cmpuint (((GbImportRow *) rows->pdata[3])->line, ==, 7);
}

static void
test_characters (void)
{
  static const char utf16[] = "\xff\xfeN\0a\0m\0e\0\n\0\xe9\0\n\0";
  g_autoptr (GPtrArray) marked = read_bytes ("\xef\xbb\xbfName\né\n", -1);
  g_autoptr (GPtrArray) latin = read_bytes ("Name\n\xe9\n", -1);
  g_autoptr (GPtrArray) wide = read_bytes (utf16, sizeof utf16 - 1);
  g_autoptr (GPtrArray) with_nul = read_bytes ("Name\na\0b é\n", 12);

  g_assert_cmpstr (cell (marked, 0, 0), ==, "Name");
  g_assert_cmpstr (cell (marked, 1, 0), ==, "é");
  g_assert_cmpstr (cell (latin, 1, 0), ==, "é");
  g_assert_cmpstr (cell (wide, 0, 0), ==, "Name");
  g_assert_cmpstr (cell (wide, 1, 0), ==, "é");
  g_assert_cmpstr (cell (with_nul, 1, 0), ==, "a b é");
}

static void
test_what_is_no_table (void)
{
  g_autoptr (GString) many = g_string_new ("Name,Quantity\n");
  g_autofree char *heap = g_malloc0 (65 * 1024 * 1024);

  assert_refused ("", -1, "nothing in it");
  assert_refused ("\n \n,,\n", -1, "nothing in it");
  assert_refused ("Name\n\"Bottom\n", -1, "quotation mark");
  /* The first bytes of a workbook (a ZIP archive) and of a picture. */
  assert_refused ("PK\3\4\24\0\6\0\10\0\0\0!\0\xcb\xa4\xde\xf3", 19, "not text");
  assert_refused ("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16, "not text");
  assert_refused (heap, 65 * 1024 * 1024, "64 megabytes");
  for (guint i = 0; i < 100001; i++)
    g_string_append (many, "Rib,1\n");
  assert_refused (many->str, (gssize) many->len, "more than 100000 rows");
}

static void
test_noise_does_no_harm (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed ((guint32) g_test_rand_int ());

  for (guint i = 0; i < 2000; i++)
    {
      static const char signs[] = "ab1,;\t\"'\n\r \0\xff\xfe\xef\xbb\xbf\xe9=";
      char text[64];
      gsize n = (gsize) g_rand_int_range (rand, 0, sizeof text);
      g_autoptr (GPtrArray) rows = NULL;

      for (gsize k = 0; k < n; k++)
        text[k] = signs[g_rand_int_range (rand, 0, sizeof signs - 1)];
      rows = gb_import_read_table (text, (gssize) n, NULL);
      for (guint r = 0; rows != NULL && r < rows->len; r++)
        for (guint c = 0; c < ((GbImportRow *) rows->pdata[r])->cells->len; c++)
          g_assert_true (g_utf8_validate (cell (rows, r, c), -1, NULL));
    }
}

/* Headings ---------------------------------------------------------------------------------------------------------- */

static void
test_headings (void)
{
  static const struct
  {
    GbRecordKind kind;
    const char *heading, *field, *unit;
  } cases[] = {
    { GB_RECORD_PART, "Name", "name", NULL },
    { GB_RECORD_PART, "  name ", "name", NULL },
    { GB_RECORD_PART, "PART", "name", NULL },
    { GB_RECORD_PART, "qty", "quantity", NULL },
    { GB_RECORD_PART, "Qty.", "quantity", NULL },
    { GB_RECORD_PART, "thk", "thickness", NULL },
    { GB_RECORD_PART, "Thickness (mm)", "thickness", "mm" },
    { GB_RECORD_PART, "Thickness [in]", "thickness", "in" },
    { GB_RECORD_PART, "thickness mm", "thickness", "mm" },
    { GB_RECORD_PART, "Length in m", "length", "m" },
    { GB_RECORD_PART, "length / ft", "length", "ft" },
    { GB_RECORD_PART, "mass, kg", "mass", "kg" },
    { GB_RECORD_PART, "weight (lb)", "mass", "lb" },
    { GB_RECORD_PART, "Mass of one (g)", "unit_mass", "g" },
    { GB_RECORD_PART, "Mass per area (g/m²)", "areal_mass", "g/m²" },
    { GB_RECORD_PART, "coverage / m2/l", "coverage", "m2/l" },
    { GB_RECORD_PART, "Thickness (nominal)", "thickness", NULL },
    { GB_RECORD_PART, "unit_mass", "unit_mass", NULL },
    { GB_RECORD_PART, "Group", "group", NULL },
    { GB_RECORD_PART, "material", "material", NULL },
    { GB_RECORD_PART, "Budget head", "category", NULL },
    { GB_RECORD_PART, "Price (EUR)", "price", "EUR" },
    { GB_RECORD_PART, "Price €", "price", "€" },
    { GB_RECORD_PART, "Turn about x (°)", "turn_x", "°" },
    { GB_RECORD_PART, "LCG (mm)", "x", "mm" },
    { GB_RECORD_PART, "nonsense", NULL, NULL },
    { GB_RECORD_PART, "mass, of the sun", NULL, NULL },
    { GB_RECORD_PART, "", NULL, NULL },
    { GB_RECORD_PART, "(mm)", NULL, NULL },
    { GB_RECORD_PART, ")(", NULL, NULL },
    { GB_RECORD_LINE, "Date", "date", NULL },
    { GB_RECORD_LINE, "shop", "supplier", NULL },
    { GB_RECORD_LINE, "Item", "what", NULL },
    { GB_RECORD_LINE, "unit price", "price", NULL },
    { GB_RECORD_LINE, "Discount (%)", "discount", "%" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *unit = NULL;
      const GbField *field = gb_import_match_heading (cases[i].kind, cases[i].heading, &unit);

      g_test_message ("%s", cases[i].heading);
      g_assert_cmpstr (field != NULL ? field->name : NULL, ==, cases[i].field);
      g_assert_cmpstr (unit, ==, cases[i].unit);
    }
}

/* No two fields have the same name or label, and no label is lost among the synonyms of another. */
static void
test_every_field_finds_itself (void)
{
  static const GbRecordKind kinds[] = { GB_RECORD_PART, GB_RECORD_LINE };

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      const GPtrArray *fields = gb_import_fields_of (kinds[k]);

      for (guint i = 0; i < fields->len; i++)
        {
          const GbField *field = fields->pdata[i];
          const char *unit = gb_field_storage (field) == GB_STORAGE_REAL
                                 ? gb_quantity_unit (field->dim, GB_UNITS_METRIC)
                                 : "";
          g_autofree char *heading = g_strdup_printf ("%s (%s)", field->label, unit);
          g_autofree char *found = NULL, *none = NULL, *label = NULL;

          g_assert_true (gb_import_match_heading (kinds[k], field->name, &none) == field);
          g_assert_true (gb_import_match_heading (kinds[k], field->label, &label) == field);
          g_assert_true (gb_import_match_heading (kinds[k], heading, &found) == field);
          g_assert_cmpstr (found, ==, *unit != '\0' ? unit : NULL);
        }
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/import-table/separators", test_separators);
  g_test_add_func ("/import-table/quotes-and-lines", test_quotes_and_lines);
  g_test_add_func ("/import-table/characters", test_characters);
  g_test_add_func ("/import-table/what-is-no-table", test_what_is_no_table);
  g_test_add_func ("/import-table/noise-does-no-harm", test_noise_does_no_harm);
  g_test_add_func ("/import-table/headings", test_headings);
  g_test_add_func ("/import-table/every-field-finds-itself", test_every_field_finds_itself);
  return g_test_run ();
}
