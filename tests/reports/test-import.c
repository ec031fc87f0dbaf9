/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Parts and receipts that come in as rows, what is refused and why, and rows that go out and come back. */

#include "apply-edit.h"
#include "project/project.h"
#include "random-boat.h"
#include "reports/import.h"
#include "scratch.h"

#include <math.h>
#include <string.h>

static GbImport *
read_rows (GbRecordKind kind, const GbBoat *boat, const char *text)
{
  g_autoptr (GError) error = NULL;
  GbImport *import = gb_import_new (kind, text, -1, boat, &error);

  g_assert_no_error (error);
  return import;
}

static void
assert_all_come_in (const GbImport *import)
{
  for (guint r = 0; r < gb_import_n_rows (import); r++)
    g_assert_cmpstr (gb_import_refusal (import, r), ==, NULL);
}

/* The boat with all of @text's rows in it. */
static void
import_all (GbBoat *boat, GbRecordKind kind, const char *text)
{
  g_autoptr (GbImport) import = read_rows (kind, boat, text);

  assert_all_come_in (import);
  apply_edit (boat, gb_import_to_edit (import, 0));
}

static GbBuild *
build_of (GbBoat *boat)
{
  return (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);
}

static GbBoat *
new_boat (void)
{
  GbBoat *boat = gb_boat_new ();

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), &build_of (boat)->rec, "EUR");
  return boat;
}

static void
add_named (GbBoat *boat, GbRecordKind kind, gint64 id, const char *name)
{
  GbRecord *record = gb_record_new (kind);

  record->id = id;
  record->position = (double) id;
  gb_field_set_text (gb_field (kind, "name"), record, name);
  gb_boat_take (boat, record);
  gb_boat_settle (boat);
}

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

/* There and back ---------------------------------------------------------------------------------------------------- */

/* As an entry is: without white space at its ends, and a name that is not empty. */
static void
tidy_texts (GbRecord *record, guint number)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      const char *text
          = gb_field_storage (field) == GB_STORAGE_TEXT ? gb_field_get_text (field, record) : NULL;
      gboolean is_name = strcmp (field->name, "name") == 0;
      g_autofree char *tidy = NULL;

      if (text == NULL && !is_name)
        continue;
      /* Names differ, because that is what references go by. */
      tidy = is_name ? g_strdup_printf ("%s %u", text != NULL ? text : "", number) : g_strdup (text);
      gb_field_set_text (field, record, g_strstrip (tidy));
    }
}

static GbBoat *
random_parts (GRand *rand, guint n)
{
  GbBoat *boat = new_boat ();
  const GbRecordKind others[] = { GB_RECORD_MATERIAL, GB_RECORD_STOCK, GB_RECORD_CATEGORY, GB_RECORD_HULL };

  for (guint k = 0; k < G_N_ELEMENTS (others); k++)
    for (gint64 id = 1; id <= 4; id++)
      {
        g_autofree char *name = g_strdup_printf ("%s no. %d", gb_record_type (others[k])->name, (int) id);

        add_named (boat, others[k], id, name);
      }
  for (gint64 id = 1; id <= n; id++)
    {
      GbRecord *record = random_record (rand, boat, GB_RECORD_PART, id);
      GbPart *part = (GbPart *) record;
      gint64 owner = g_rand_int_range (rand, 0, (gint32) id);

      part->kind = id < n / 2 ? GB_KIND_GROUP : GB_KIND_PART;
      record->owner = owner < n / 2 ? owner : 0;
      record->position = (double) id;
      tidy_texts (record, (guint) id);
      gb_boat_take (boat, record);
      gb_boat_settle (boat);
    }
  return boat;
}

/* Ids and positions are new on the way in, and references go by name. */
static void
assert_same_parts (const GbBoat *a, const GbBoat *b)
{
  const GPtrArray *p = gb_boat_all (a, GB_RECORD_PART), *q = gb_boat_all (b, GB_RECORD_PART);
  const GbRecordType *type = gb_record_type (GB_RECORD_PART);

  g_assert_cmpuint (p->len, ==, q->len);
  for (guint i = 0; i < p->len; i++)
    for (guint f = 0; f < type->n_fields; f++)
      {
        const GbField *field = &type->fields[f];
        g_auto (GbValue) u = gb_field_get (field, p->pdata[i]);
        g_auto (GbValue) v = gb_field_get (field, q->pdata[i]);

        if (field->dim == GB_DIM_REF)
          {
            const GbRecord *r = gb_boat_get (a, field->refers_to, u.integer),
                           *s = gb_boat_get (b, field->refers_to, v.integer);

            g_assert_cmpint (r == NULL, ==, s == NULL);
            g_assert_true (r == NULL || r->kind != GB_RECORD_PART || r->index == s->index);
            g_assert_true (r == NULL || r->kind == GB_RECORD_PART || u.integer == v.integer);
            continue;
          }
        /* A share is written in per cent, which may cost its last bit. */
        if (!(isnan (u.real) && isnan (v.real))
            && fabs (u.real - v.real) > (field->dim == GB_DIM_RATIO ? 4e-16 * u.real : 0))
          g_error ("part %u: %s is %.17g, was %.17g", i, field->name, v.real, u.real);
        if (u.integer != v.integer)
          g_error ("part %u: %s is %d, was %d", i, field->name, (int) v.integer, (int) u.integer);
        g_assert_cmpstr (u.text, ==, v.text);
        /* A number of more digits than are shown was as good as typed now. */
        if (u.typed != NULL)
          g_assert_cmpstr (u.typed, ==, v.typed);
        g_assert_cmpuint (((GbPart *) p->pdata[i])->depth, ==, ((GbPart *) q->pdata[i])->depth);
      }
}

static void
test_rows_there_and_back (void)
{
  g_autoptr (GRand) rand = random_seeded ();

  for (guint round = 0; round < 30; round++)
    {
      g_autoptr (GbBoat) boat = random_parts (rand, 20);
      g_autoptr (GbBoat) back = random_parts (rand, 0);
      g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
      g_autofree char *rows = NULL;

      build_of (boat)->units = build_of (back)->units = round % 2 == 0 ? GB_UNITS_METRIC : GB_UNITS_FEET;
      for (gint64 id = 1; id <= 20; id++)
        g_array_append_val (ids, id);
      rows = gb_export_rows (boat, (gint64 *) ids->data, ids->len);
      import_all (back, GB_RECORD_PART, rows);
      assert_same_parts (boat, back);
    }
}

/* A plain part as rows: what a spreadsheet gets. */
static void
test_rows_as_a_spreadsheet_gets_them (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const gint64 ids[] = { 1, 2, 2 };
  g_autofree char *rows = NULL;
  GbPart *part;

  add_named (boat, GB_RECORD_MATERIAL, 1, "okoume ply");
  add_named (boat, GB_RECORD_PART, 1, "Hull");
  add_named (boat, GB_RECORD_PART, 2, "=Bottom");
  ((GbPart *) gb_boat_get (boat, GB_RECORD_PART, 1))->kind = GB_KIND_GROUP;
  part = (GbPart *) gb_boat_get (boat, GB_RECORD_PART, 2);
  part->rec.owner = 1;
  part->material = 1;
  part->length = 2.1;
  part->thickness = 0.0065;
  add_named (boat, GB_RECORD_PART, 3, "not asked for");
  rows = gb_export_rows (boat, ids, G_N_ELEMENTS (ids));
  g_assert_cmpstr (rows, ==,
                   "Name\tGroup\tKind\tQuantity\tTake-off\tMaterial\tLength (mm)\tThickness (mm)\tSection\n"
                   "Hull\t\tGroup\t1\tSheet\t\t\t\tRectangle\n"
                   "'=Bottom\tHull\tPart\t1\tSheet\tokoume ply\t2100\t6.5\tRectangle\n");
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
  g_test_add_func ("/import/rows-there-and-back", test_rows_there_and_back);
  g_test_add_func ("/import/rows-as-a-spreadsheet-gets-them", test_rows_as_a_spreadsheet_gets_them);
  return g_test_run ();
}
