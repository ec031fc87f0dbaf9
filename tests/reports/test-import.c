/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Parts and receipts that come in as rows, and what is refused and why. */

#include "import-testing.h"
#include "project/project.h"
#include "reports/import.h"
#include "scratch.h"

#include <math.h>
#include <string.h>

/* Parts ------------------------------------------------------------------------------------------------------------- */

static void
test_parts_from_a_spreadsheet (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GbPart *bottom, *gunwale, *mast;

  import_all (
      boat, GB_RECORD_PART,
      "Group;Part;Qty;Pair;Length (mm);Width, mm;Thickness / mm;Material;x in m;Weight (kg);Price;Comments\n"
      "Hull;Bottom;1;no;2100;860;6;okoume plywood;1,05;;28,40;two sheets, butted\n"
      "Hull;Gunwale;1;yes;2.35 m;25;18;Sitka spruce;;;;\n"
      "Rig;Mast;;;;;;;\"1,9\";3,2;€ 55;\n");
  bottom = part_called (boat, "Bottom");
  gunwale = part_called (boat, "Gunwale");
  mast = part_called (boat, "Mast");

  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 5);
  g_assert_cmpstr (gb_boat_part (boat, bottom->rec.owner)->name, ==, "Hull");
  g_assert_cmpint (bottom->rec.owner, ==, gunwale->rec.owner);
  g_assert_cmpint (bottom->takeoff, ==, GB_TAKEOFF_SHEET);
  g_assert_cmpfloat (bottom->length, ==, 2.1);
  g_assert_cmpfloat (bottom->thickness, ==, 0.006);
  g_assert_cmpfloat (bottom->x, ==, 1.05);
  g_assert_cmpint (bottom->price, ==, 2840);
  g_assert_cmpstr (bottom->notes, ==, "two sheets, butted");
  g_assert_cmpint (gunwale->takeoff, ==, GB_TAKEOFF_LENGTH);
  g_assert_cmpint (gunwale->pair, ==, 1);
  g_assert_cmpfloat (gunwale->length, ==, 2.35);
  g_assert_cmpint (mast->takeoff, ==, GB_TAKEOFF_LUMP);
  g_assert_cmpfloat (mast->mass, ==, 3.2);
  g_assert_cmpint (mast->price, ==, 5500);
  /* Quantity is left at its start where the cell is empty. */
  g_assert_cmpfloat (mast->quantity, ==, 1);
}

static void
test_units_in_the_cell_go_first (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GbPart *part;

  import_all (
      boat, GB_RECORD_PART,
      "name\tlength (in)\twidth (in)\tthickness (in)\theight (mm)\nRail\t5' 6 3/8\"\t1 1/2\t6 mm\t2*1220-45\n");
  part = part_called (boat, "Rail");
  g_assert_cmpfloat_with_epsilon (part->length, 66.375 * 0.0254, 1e-12);
  g_assert_cmpfloat_with_epsilon (part->width, 1.5 * 0.0254, 1e-12);
  g_assert_cmpfloat (part->thickness, ==, 0.006);
  g_assert_cmpfloat_with_epsilon (part->height, 2.395, 1e-12);
}

static void
test_bare_numbers_take_the_builds_units (void)
{
  g_autoptr (GbBoat) boat = new_boat ();

  build_of (boat)->units = GB_UNITS_FEET;
  import_all (boat, GB_RECORD_PART, "name,length\nRail,12\n");
  g_assert_cmpfloat_with_epsilon (part_called (boat, "Rail")->length, 0.3048, 1e-12);
}

static void
test_groups_are_found_or_made (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GbPart *group;

  add_named (boat, GB_RECORD_PART, 1, "Hull");
  ((GbPart *) gb_boat_get (boat, GB_RECORD_PART, 1))->kind = GB_KIND_GROUP;
  import_all (boat, GB_RECORD_PART,
              "name,group\nRib 1,Hull/Frames\nRib 2, Hull / Frames \nKeel,Hull\nTiller,\nBar,A\\/B\n");
  group = part_called (boat, "Frames");
  g_assert_cmpint (group->kind, ==, GB_KIND_GROUP);
  g_assert_cmpint (group->rec.owner, ==, 1);
  g_assert_cmpint (part_called (boat, "Rib 1")->rec.owner, ==, group->rec.id);
  g_assert_cmpint (part_called (boat, "Rib 2")->rec.owner, ==, group->rec.id);
  g_assert_cmpint (part_called (boat, "Keel")->rec.owner, ==, 1);
  g_assert_cmpint (part_called (boat, "Tiller")->rec.owner, ==, 0);
  g_assert_cmpint (part_called (boat, "Bar")->rec.owner, ==, part_called (boat, "A/B")->rec.id);
}

static void
test_rows_go_into_a_group (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import = NULL;

  add_named (boat, GB_RECORD_PART, 1, "Hull");
  ((GbPart *) gb_boat_get (boat, GB_RECORD_PART, 1))->kind = GB_KIND_GROUP;
  import = read_rows (GB_RECORD_PART, boat, "name,group\nRib,Frames\nKeel,\n");
  apply_edit (boat, gb_import_to_edit (import, 1));
  g_assert_cmpint (part_called (boat, "Frames")->rec.owner, ==, 1);
  g_assert_cmpint (part_called (boat, "Keel")->rec.owner, ==, 1);
}

static void
test_materials_are_found_or_made (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GbMaterial *made;

  add_named (boat, GB_RECORD_MATERIAL, 5, "My ply");
  import_all (boat, GB_RECORD_PART, "name,material\nA,my PLY\nB,moon rock\nC,Moon rock\n");
  g_assert_cmpint (part_called (boat, "A")->material, ==, 5);
  g_assert_cmpint (part_called (boat, "B")->material, ==, part_called (boat, "C")->material);
  made = gb_boat_material (boat, part_called (boat, "B")->material);
  g_assert_cmpstr (made->name, ==, "moon rock");
  g_assert_true (isnan (made->density));
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_MATERIAL), ==, 2);
}

static void
test_take_off_follows_what_is_given (void)
{
  static const struct
  {
    const char *row;
    GbTakeoff takeoff;
    GbSection section;
  } cases[] = {
    { "p,2,0.5,0.006,,,,,", GB_TAKEOFF_SHEET, GB_SECTION_RECTANGLE },
    { "p,2,0.03,0.02,,,,,", GB_TAKEOFF_LENGTH, GB_SECTION_RECTANGLE },
    { "p,2,,,0.04,,,,", GB_TAKEOFF_LENGTH, GB_SECTION_ROUND },
    { "p,2,,,0.04,0.002,,,", GB_TAKEOFF_LENGTH, GB_SECTION_TUBE },
    { "p,,,,,,0.002,,", GB_TAKEOFF_BLOCK, GB_SECTION_RECTANGLE },
    { "p,,,,,,,3,", GB_TAKEOFF_LUMP, GB_SECTION_RECTANGLE },
    { "p,2,,,,,,3,", GB_TAKEOFF_LUMP, GB_SECTION_RECTANGLE },
    { "p,,,,,,,,1.5", GB_TAKEOFF_SHEET, GB_SECTION_RECTANGLE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbBoat) boat = new_boat ();
      g_autofree char *text = g_strconcat (
          "name,length (m),width (m),thickness (m),diameter (m),wall (m),volume (m3),mass,area (m2)\n",
          cases[i].row, "\n", NULL);

      import_all (boat, GB_RECORD_PART, text);
      g_test_message ("%s", cases[i].row);
      g_assert_cmpint (part_called (boat, "p")->takeoff, ==, cases[i].takeoff);
      g_assert_cmpint (part_called (boat, "p")->section, ==, cases[i].section);
    }
}

static void
test_coating_comes_with_what_it_coats (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GbPart *paint;

  import_all (boat, GB_RECORD_PART,
              "name,group,kind,surfaces of,coats\nPaint,,,Hull,2\nHull,,group,,\nBottom,Hull,,,\n");
  paint = part_called (boat, "Paint");
  g_assert_cmpint (paint->surface_of, ==, part_called (boat, "Hull")->rec.id);
  g_assert_cmpint (paint->takeoff, ==, GB_TAKEOFF_COATING);
  g_assert_cmpfloat (paint->coats, ==, 2);
  g_assert_cmpint (part_called (boat, "Bottom")->rec.owner, ==, paint->surface_of);
}

static void
test_list_of_names_alone (void)
{
  g_autoptr (GbBoat) boat = new_boat ();

  import_all (boat, GB_RECORD_PART, "Bottom\nSide panel\nTransom\n");
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 3);
}

static void
test_titles_above_the_table (void)
{
  g_autoptr (GbBoat) boat = new_boat ();

  import_all (boat, GB_RECORD_PART, "My boat,,\n,,\nName,Length (m),Notes\nRail,2,x\n");
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_PART), ==, 1);
  g_assert_cmpfloat (part_called (boat, "Rail")->length, ==, 2);
}

/* Groups, parts and a new material, on disk and back in one step. */
static void
test_an_import_is_one_undo (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbBoat) before = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbProject) project = NULL;
  g_autoptr (GbImport) import = NULL;

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "name"), &build_of (boat)->rec, "Wren");
  project = gb_project_create (scratch->path, boat, &error);
  g_assert_no_error (error);
  before = gb_boat_copy (gb_project_get_boat (project));
  import = read_rows (GB_RECORD_PART, before,
                      "name,group,material\nRib 1,Hull/Frames,moon rock\nRib 2,Hull/Frames,moon rock\n");
  gb_project_apply (project, gb_import_to_edit (import, 0), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (project), GB_RECORD_PART), ==, 4);
  g_assert_cmpstr (gb_project_get_undo_words (project), ==, "import of 2 parts");
  gb_project_undo (project, &error);
  g_assert_no_error (error);
  g_assert_true (gb_boat_equal (gb_project_get_boat (project), before, NULL));
  g_assert_null (gb_project_get_undo_words (project));
  g_clear_object (&project);
}

/* Mapping ----------------------------------------------------------------------------------------------------------- */

static void
test_columns_are_mapped_again (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import = read_rows (GB_RECORD_PART, boat, "Bauteil,L,Mass\nRail,12,x\n");

  /* Nothing says which column has the names. */
  g_assert_cmpuint (gb_import_n_columns (import), ==, 3);
  g_assert_null (gb_import_get_field (import, 0));
  g_assert_cmpstr (gb_import_refusal (import, 0), !=, NULL);
  gb_import_set_field (import, 0, gb_field (GB_RECORD_PART, "name"));
  g_assert_nonnull (strstr (gb_import_refusal (import, 0), "Mass"));
  gb_import_set_field (import, 2, NULL);
  g_assert_null (gb_import_refusal (import, 0));
  g_assert_null (gb_import_get_unit (import, 1));
  gb_import_set_unit (import, 1, "in");
  apply_edit (boat, gb_import_to_edit (import, 0));
  g_assert_cmpfloat_with_epsilon (part_called (boat, "Rail")->length, 0.3048, 1e-12);
}

static void
test_a_field_has_one_column (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import
      = read_rows (GB_RECORD_PART, boat, "name,description,length (mm)\nRail,a rail,12\n");
  const GbField *name = gb_field (GB_RECORD_PART, "name");

  g_assert_true (gb_import_get_field (import, 0) == name);
  g_assert_null (gb_import_get_field (import, 1));
  gb_import_set_field (import, 1, name);
  g_assert_null (gb_import_get_field (import, 0));
  g_assert_true (gb_import_get_field (import, 1) == name);
  /* A unit that does not fit goes with the field. */
  g_assert_cmpstr (gb_import_get_unit (import, 2), ==, "mm");
  gb_import_set_field (import, 2, gb_field (GB_RECORD_PART, "mass"));
  g_assert_null (gb_import_get_unit (import, 2));
}

/* Refusals ---------------------------------------------------------------------------------------------------------- */

static void
test_rows_are_refused_with_a_sentence (void)
{
  static const struct
  {
    const char *row, *words;
  } cases[] = {
    { ",1,6 mm,,", "no name" },
    { "\" \",1,6 mm,,", "no name" },
    { "a,1,6 kg,,", "Thickness" },
    { "a,1,six,,", "Thickness" },
    { "a,1,-6,,", "Thickness" },
    { "a,1,0,,", "Thickness" },
    { "a,1,1e300,,", "Thickness" },
    { "a,nan,,,", "Quantity" },
    { "a,-1,,,", "Quantity" },
    { "a,1,6,no such stock,", "no such stock" },
    { "a,1,6,,12 dollars", "Planned price" },
    { "a\x01z,1,6,,", "control character" },
    { "a,1,6,,,,,7", "8 cells" },
  };
  g_autoptr (GbBoat) boat = new_boat ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text
          = g_strconcat ("name,quantity,thickness,stock,price\n", cases[i].row, "\nfine,1,6,,\n", NULL);
      g_autoptr (GbImport) import = read_rows (GB_RECORD_PART, boat, text);
      g_autoptr (GbEdit) edit = gb_import_to_edit (import, 0);
      const char *refusal = gb_import_refusal (import, 0);

      g_test_message ("%s: %s", cases[i].row, refusal);
      g_assert_nonnull (refusal);
      g_assert_nonnull (strstr (refusal, cases[i].words));
      g_assert_cmpuint (gb_import_line (import, 0), ==, 2);
      /* The others come in. */
      g_assert_null (gb_import_refusal (import, 1));
      g_assert_cmpuint (gb_edit_n_puts (edit), ==, 1);
      g_assert_cmpstr (gb_edit_words (edit), ==, "import of 1 part");
    }
}

static void
test_very_long_names_are_refused (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autofree char *name = g_strnfill (10000, 'a');
  g_autofree char *text
      = g_strconcat ("name,group,material\n", name, ",,\nx,", name, ",\ny,,", name, "\n", NULL);
  g_autoptr (GbImport) import = read_rows (GB_RECORD_PART, boat, text);

  for (guint r = 0; r < 3; r++)
    g_assert_nonnull (strstr (gb_import_refusal (import, r), "too long"));
  g_assert_null (gb_import_to_edit (import, 0));
}

static void
test_very_deep_groups_are_refused (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GString) text = g_string_new ("name,group\nx,");
  g_autoptr (GbImport) import = NULL;

  for (guint i = 0; i < 5000; i++)
    g_string_append (text, "a/");
  import = read_rows (GB_RECORD_PART, boat, text->str);
  g_assert_nonnull (strstr (gb_import_refusal (import, 0), "100 groups"));
}

static void
test_formulas_are_text (void)
{
  g_autoptr (GbBoat) boat = new_boat ();

  import_all (boat, GB_RECORD_PART, "name,notes\n=1+1,\"=HYPERLINK(\"\"a\"\")\"\n'=2,'-\n");
  g_assert_cmpstr (part_called (boat, "=1+1")->notes, ==, "=HYPERLINK(\"a\")");
  g_assert_cmpstr (part_called (boat, "=2")->notes, ==, "-");
}

static void
test_a_coating_falls_with_what_it_coats (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import = read_rows (
      GB_RECORD_PART, boat, "name,surfaces of,thickness\nOuter,Inner,\nInner,Bottom,\nBottom,,6 kg\n");

  for (guint r = 0; r < 3; r++)
    g_assert_nonnull (gb_import_refusal (import, r));
}

/* Receipts ---------------------------------------------------------------------------------------------------------- */

static void
test_receipts (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const GPtrArray *purchases, *lines;
  const GbPurchase *first;
  const GbLine *ply, *back, *saw;

  add_named (boat, GB_RECORD_STOCK, 3, "6 mm ply");
  import_all (boat, GB_RECORD_LINE,
              "Date,Shop,Item,Qty,Unit price,Discount (%),Budget head\n"
              "2026-03-12,Timber yard,6 mm ply,2,\"52,80\",5,Timber\n"
              "12.3.2026,Timber yard,6 mm ply,-1,52.80,,Timber\n"
              "2026-03-14,Ironmonger,Saw,1,€ 12.50,,\n");
  purchases = gb_boat_all (boat, GB_RECORD_PURCHASE);
  g_assert_cmpuint (purchases->len, ==, 2);
  first = purchases->pdata[0];
  g_assert_cmpint (first->date, ==, 739687); /* 12 March 2026 */
  g_assert_cmpstr (first->supplier, ==, "Timber yard");
  lines = gb_record_children (&first->rec);
  g_assert_cmpuint (lines->len, ==, 2);
  ply = lines->pdata[0];
  back = lines->pdata[1];
  g_assert_cmpint (ply->kind, ==, GB_LINE_STOCK);
  g_assert_cmpint (ply->stock, ==, 3);
  g_assert_cmpint (ply->price, ==, 5280);
  g_assert_cmpfloat (ply->discount, ==, 0.05);
  g_assert_cmpfloat (back->quantity, ==, -1);
  g_assert_cmpint (ply->category, ==, back->category);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_CATEGORY), ==, 1);
  saw = gb_record_children (purchases->pdata[1])->pdata[0];
  g_assert_cmpint (saw->kind, ==, GB_LINE_OTHER);
  g_assert_cmpint (saw->price, ==, 1250);
}

static void
assert_outcomes (GbRecordKind kind, const char *text, const char *const *outcomes)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import = NULL;

  add_named (boat, GB_RECORD_STOCK, 3, "6 mm ply");
  import = read_rows (kind, boat, text);
  g_assert_cmpuint (gb_import_n_rows (import), ==, g_strv_length ((char **) outcomes));
  for (guint r = 0; outcomes[r] != NULL; r++)
    {
      g_autofree char *outcome = gb_import_outcome (import, r);

      g_assert_cmpstr (outcome, ==, outcomes[r]);
    }
}

static void
test_outcomes_in_words (void)
{
  static const char *const parts[] = { "Sheet, pair, 2 × 2100 × 860 × 18 mm",
                                       "Length, 4 × 2350 × 25 × 18 mm",
                                       "Lump, 12.5 kg",
                                       "Group",
                                       "Coating of Hull",
                                       "Sheet, 1 × – × – × – mm",
                                       "",
                                       NULL };
  static const char *const lines[] = { "Stock, 2 × €\u00a052.80", "Other, -1 × –", NULL };

  assert_outcomes (
      GB_RECORD_PART,
      "name,kind,pair,qty,length,width,thickness,mass,surfaces of\nBottom,,yes,,2100,860,18,,\nRail,,,4,2350,25,18,,\nMast,,,,,,,12.5,\n"
      "Hull,group,,,,,,,\nPaint,,,,,,,,Hull\nSeat,,,,,,,,\nOar,,,,six,,,,\n",
      parts);
  assert_outcomes (GB_RECORD_LINE, "item,qty,unit price\n6 mm ply,2,52.80\nTea,-1,\n", lines);
}

static void
test_receipts_that_are_refused (void)
{
  static const struct
  {
    const char *row, *words;
  } cases[] = {
    { "2026-02-30,Saw,1", "2026-02-30" },
    { "yesterday,Saw,1", "yesterday" },
    { "2026-02-28,,1", "what was bought" },
    { "2026-02-28,Saw,12 kg", "Price" },
  };
  g_autoptr (GbBoat) boat = new_boat ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = g_strconcat ("date,what,price\n", cases[i].row, "\n", NULL);
      g_autoptr (GbImport) import = read_rows (GB_RECORD_LINE, boat, text);

      g_assert_nonnull (gb_import_refusal (import, 0));
      g_assert_nonnull (strstr (gb_import_refusal (import, 0), cases[i].words));
      g_assert_null (gb_import_to_edit (import, 0));
    }
}

static void
test_another_currency_is_refused (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  g_autoptr (GbImport) import = read_rows (GB_RECORD_LINE, boat, "what,price (USD)\nSaw,12\n");

  g_assert_nonnull (gb_import_refusal (import, 0));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/import/parts-from-a-spreadsheet", test_parts_from_a_spreadsheet);
  g_test_add_func ("/import/units-in-the-cell-go-first", test_units_in_the_cell_go_first);
  g_test_add_func ("/import/bare-numbers-take-the-builds-units", test_bare_numbers_take_the_builds_units);
  g_test_add_func ("/import/groups-are-found-or-made", test_groups_are_found_or_made);
  g_test_add_func ("/import/rows-go-into-a-group", test_rows_go_into_a_group);
  g_test_add_func ("/import/materials-are-found-or-made", test_materials_are_found_or_made);
  g_test_add_func ("/import/take-off-follows-what-is-given", test_take_off_follows_what_is_given);
  g_test_add_func ("/import/coating-comes-with-what-it-coats", test_coating_comes_with_what_it_coats);
  g_test_add_func ("/import/list-of-names-alone", test_list_of_names_alone);
  g_test_add_func ("/import/titles-above-the-table", test_titles_above_the_table);
  g_test_add_func ("/import/an-import-is-one-undo", test_an_import_is_one_undo);
  g_test_add_func ("/import/columns-are-mapped-again", test_columns_are_mapped_again);
  g_test_add_func ("/import/a-field-has-one-column", test_a_field_has_one_column);
  g_test_add_func ("/import/rows-are-refused-with-a-sentence", test_rows_are_refused_with_a_sentence);
  g_test_add_func ("/import/very-long-names-are-refused", test_very_long_names_are_refused);
  g_test_add_func ("/import/very-deep-groups-are-refused", test_very_deep_groups_are_refused);
  g_test_add_func ("/import/formulas-are-text", test_formulas_are_text);
  g_test_add_func ("/import/a-coating-falls-with-what-it-coats", test_a_coating_falls_with_what_it_coats);
  g_test_add_func ("/import/receipts", test_receipts);
  g_test_add_func ("/import/outcomes-in-words", test_outcomes_in_words);
  g_test_add_func ("/import/receipts-that-are-refused", test_receipts_that_are_refused);
  g_test_add_func ("/import/another-currency-is-refused", test_another_currency_is_refused);
  return g_test_run ();
}
