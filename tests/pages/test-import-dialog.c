/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The import dialog: a table is shown with what becomes of each row, columns are chosen anew, and it comes in as one undo. */

#include "import-support.h"
#include "pages/group-choice.h"
#include "pages/import-dialog.h"
#include "pages/import-preview.h"
#include "pages/parts-page.h"

#include <string.h>

/* As a spreadsheet of a place with decimal commas writes it: units in the headings, one in a cell, and two rows that cannot come in. */
static const char frames_csv[] = "Assembly;Part;Qty;Pair;Length (mm);Width (mm);Thk (mm);Timber;LCG (m);Weight (kg);Price each;Where from\n"
                                 "Hull/Frames;Frame 1;1;no;860;95;12,5;Test ply;0,42;;;\n"
                                 "Hull/Frames;Frame 2;1;no;1020;95;12,5;Test ply;0,98;;;\n"
                                 "Hull/Frames;Frame 3;1;no;980;95;12,5;Test ply;1,54;;;\n"
                                 "Hull/Frames;Frame 4;1;no;74O;95;12,5;Test ply;2,02;;;\n"
                                 "Hull/Frames;Knee;4;yes;180;120;18;Test ply;;;;off-cuts\n"
                                 "Hull;Gunwale;1;yes;2,35 m;25;18;Sitka spruce;1,1;;14,90;\n"
                                 "Hull;Inwale;1;yes;2,30 m;20;15;Sitka spruce;1,1;;11,90;\n"
                                 "Hull;Keelson;1;no;2180;60;20;Sitka spruce;1,05;;9,40;\n"
                                 "Hull;Skeg;1;no;640;140;18;Test ply;0,3;;;\n"
                                 "Rig;Yard;1;no;2700;;;;1,6;1,85;22,00;\n"
                                 "Rig;Boom;1;no;2400;;;;1,4;1,62;19,50;\n"
                                 "Rig;;1;no;;;;;;0,35;;no name on the list\n"
                                 "Rig;Sail;1;no;;;;;1,5;2,10;148,00;second hand, still to be washed\n"
                                 "Seats;Thwart;2;no;1080;220;18;Test ply;1,2;;;\n";

/* Builds ---------------------------------------------------------------------------------------------------------------- */

/* @demo: as for support_new(). */
static Support *
show_build (const char *demo, int width, int height)
{
  Support *support = support_new (demo);

  support_show (support, gb_parts_page_new (), width, height);
  return support;
}

static Support *
show_parts (void)
{
  return show_build (NULL, 1280, 800);
}

static const GbPart *
part_called (Support *support, const char *name)
{
  return gb_boat_part (gb_project_get_boat (support->project), support_part (support, name));
}

/* Tests ----------------------------------------------------------------------------------------------------------------- */

static void
test_what_becomes_of_each_row (void)
{
  g_autoptr (Support) support = show_parts ();
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, frames_csv);
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "12 of 14 rows come in as parts.");
  g_assert_nonnull (strstr (import_words (&fixture, "hint"), "2 are refused"));
  g_assert_cmpuint (import_n_rows (&fixture), ==, 14);
  g_assert_cmpstr (import_cell_text (&fixture, 1, IMPORT_LINE), ==, "3");
  g_assert_cmpstr (import_cell_text (&fixture, 1, IMPORT_OUTCOME), ==, "Sheet, 1 × 1020 × 95 × 13 mm");
  g_assert_cmpstr (import_cell_text (&fixture, 1, IMPORT_FIRST), ==, "Hull/Frames");
  g_assert_cmpstr (import_cell_text (&fixture, 1, IMPORT_FIRST + 6), ==, "12,5");
  g_assert_true (g_str_has_prefix (import_cell_text (&fixture, 3, IMPORT_OUTCOME), "Length:"));
  g_assert_cmpstr (import_cell_text (&fixture, 11, IMPORT_OUTCOME), ==, "This row has no name.");
  for (guint r = 0; r < 14; r++)
    g_assert_true (import_is_marked (&fixture, r) == (r == 3 || r == 11));

  g_assert_cmpstr (import_field_of (&fixture, 1), ==, "Name");
  g_assert_cmpstr (import_field_of (&fixture, 6), ==, "Thickness");
  g_assert_cmpstr (import_field_of (&fixture, 11), ==, "Left out");
  g_assert_cmpstr (import_unit_of (&fixture, 6), ==, "mm");
  g_assert_cmpstr (import_unit_of (&fixture, 8), ==, "m");
  g_assert_cmpstr (import_unit_of (&fixture, 9), ==, "kg");
  g_assert_cmpstr (import_unit_of (&fixture, 1), ==, NULL);
  gtk_window_destroy (fixture.dialog);
}

static void
test_refused_rows_only (void)
{
  g_autoptr (Support) support = show_parts ();
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, frames_csv);
  support_click (support, import_child (&fixture, "refused_only"), 0.5, 0.5, 1);
  support_until (import_n_rows (&fixture) == 2);
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_LINE), ==, "5");
  g_assert_cmpstr (import_cell_text (&fixture, 1, IMPORT_LINE), ==, "13");

  /* One of them is mended by what the column means, the other with it; then there is nothing to hide. */
  import_choose_field (&fixture, 4, "Left out");
  g_assert_cmpuint (import_n_rows (&fixture), ==, 1);
  import_choose_field (&fixture, 0, "Name");
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "All 14 rows come in as parts.");
  g_assert_cmpuint (import_n_rows (&fixture), ==, 14);
  g_assert_false (gtk_check_button_get_active (import_child (&fixture, "refused_only")));
  g_assert_false (gtk_widget_get_sensitive (import_child (&fixture, "refused_only")));
  /* A field has one column. */
  g_assert_cmpstr (import_field_of (&fixture, 1), ==, "Left out");
  gtk_window_destroy (fixture.dialog);
}

static void
test_columns_are_chosen_by_keyboard (void)
{
  g_autoptr (Support) support = show_parts ();
  GtkWidget *input;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, "What;How thick\nBottom;6\nDeck;4\n");
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "No row can come in as it stands.");
  g_assert_nonnull (strstr (import_words (&fixture, "hint"), "No column holds the names yet"));
  g_assert_false (gtk_widget_get_sensitive (import_child (&fixture, "import_button")));

  input = GTK_WIDGET (gb_import_head_get_field_input (import_head (&fixture, 0)));
  gtk_widget_grab_focus (input);
  import_open_list (&fixture, GTK_DROP_DOWN (input));
  support_keys (support, "Down Return");
  support_until (g_str_equal (import_field_of (&fixture, 0), "Name"));
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "All 2 rows come in as parts.");
  g_assert_true (gtk_widget_get_sensitive (import_child (&fixture, "import_button")));
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_OUTCOME), ==, "Sheet, 1 × – × – × – mm");

  /* The next column, searched for by name. */
  support_keys (support, "Tab");
  import_open_list (&fixture, gb_import_head_get_field_input (import_head (&fixture, 1)));
  support_type (support, "Thick");
  support_until (import_n_listed (gb_import_head_get_field_input (import_head (&fixture, 1))) == 1);
  support_keys (support, "Down Return");
  support_until (g_str_equal (import_field_of (&fixture, 1), "Thickness"));
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_OUTCOME), ==, "Sheet, 1 × – × – × 6 mm");
  g_assert_cmpstr (import_unit_of (&fixture, 1), ==, "mm");

  /* Its unit; what it means changes at once. */
  support_keys (support, "Tab");
  import_open_list (&fixture, gb_import_head_get_unit_input (import_head (&fixture, 1)));
  support_keys (support, "Down Return");
  support_until (g_strcmp0 (import_unit_of (&fixture, 1), "cm") == 0);
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_OUTCOME), ==, "Sheet, 1 × – × – × 60 mm");

  /* Enter on a row goes the way of the button; Tab leaves the table. */
  support_keys (support, "Tab");
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (fixture.dialog), import_list (&fixture)));
  support_keys (support, "Down Right Left Tab");
  g_assert_false (gtk_widget_is_ancestor (gtk_window_get_focus (fixture.dialog), import_child (&fixture, "preview")));
  support_keys (support, "shift+Tab");
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (fixture.dialog), import_list (&fixture)));
  support_keys (support, "shift+Tab");
  g_assert_true (gtk_window_get_focus (fixture.dialog) != NULL
                 && gtk_widget_is_ancestor (gtk_window_get_focus (fixture.dialog), GTK_WIDGET (import_head (&fixture, 1))));
  support_keys (support, "Escape");
  support_until (import_find_dialog () == NULL);
  g_assert_cmpuint (support->toasts->len, ==, 0);
  g_assert_cmpint (support_part (support, "Deck"), ==, 0);
}

static void
test_import_is_one_undo (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autoptr (GError) error = NULL;
  const GbPart *frame, *gunwale;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, frames_csv);
  import_choose_field (&fixture, 7, "Material");
  import_choose_field (&fixture, 11, "Notes");
  g_assert_true (gtk_window_get_focus (fixture.dialog) == import_child (&fixture, "import_button"));
  support_keys (support, "Return");
  support_until (import_find_dialog () == NULL);

  g_assert_cmpuint (support->toasts->len, ==, 1);
  g_assert_cmpstr (support->toasts->pdata[0], ==, "12 parts imported");
  frame = part_called (support, "Frame 1");
  gunwale = part_called (support, "Gunwale");
  g_assert_cmpfloat (frame->length, ==, 0.86);
  g_assert_cmpfloat (frame->thickness, ==, 0.0125);
  g_assert_cmpfloat (frame->x, ==, 0.42);
  g_assert_cmpint (frame->material, ==, 1);
  g_assert_cmpfloat (gunwale->length, ==, 2.35);
  g_assert_cmpint (gunwale->price, ==, 1490);
  g_assert_cmpstr (part_called (support, "Knee")->notes, ==, "off-cuts");
  /* The group was there; "Frames" and "Seats" were not. */
  g_assert_cmpint (gunwale->rec.owner, ==, 1);
  g_assert_cmpint (part_called (support, "Frames")->rec.owner, ==, 1);
  g_assert_cmpint (part_called (support, "Seats")->rec.owner, ==, 0);
  g_assert_cmpint (support_part (support, "Frame 4"), ==, 0);
  g_assert_cmpstr (gb_project_get_undo_words (support->project), ==, "import of 12 parts");

  g_assert_true (gb_project_undo (support->project, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (support->project), GB_RECORD_PART), ==, 7);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (support->project), GB_RECORD_MATERIAL), ==, 1);
  g_assert_true (gb_project_redo (support->project, &error));
  g_assert_cmpint (support_part (support, "Frame 1"), !=, 0);
}

static void
test_parts_go_into_a_group (void)
{
  g_autoptr (Support) support = show_parts ();
  GtkDropDown *groups;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, "Name\nBoom\n");
  groups = import_child (&fixture, "group_input");
  g_assert_cmpint (gb_group_choice_get (groups), ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (groups)), ==, 3);
  gtk_drop_down_set_selected (groups, 2);
  g_assert_cmpint (gb_group_choice_get (groups), ==, 5);
  support_click (support, import_child (&fixture, "import_button"), 0.5, 0.5, 1);
  support_until (import_find_dialog () == NULL);
  g_assert_cmpint (part_called (support, "Boom")->rec.owner, ==, 5);
  g_assert_cmpstr (support->toasts->pdata[0], ==, "1 part imported");
}

static void
test_purchases (void)
{
  g_autoptr (Support) support = show_parts ();
  const GPtrArray *purchases;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_LINE,
               "Date,Shop,Item,Qty,Unit price (USD),Discount\n2026-03-12,Timber yard,Ply,2,52.80,5\n2026-03-12,Timber yard,Glue,1,12.00,\n");
  /* The build is in euros: not a row comes in until the builder says that they are. */
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "No row can come in as it stands.");
  g_assert_false (gtk_widget_get_visible (import_child (&fixture, "group_box")));
  g_assert_cmpstr (import_unit_of (&fixture, 4), ==, "USD");
  import_choose_unit (&fixture, 4, "EUR");
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "All 2 rows come in as purchases.");
  g_assert_cmpstr (import_unit_of (&fixture, 4), ==, "EUR");
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_OUTCOME), ==, "Other, 2 × €\u00a052.80");
  support_click (support, import_child (&fixture, "import_button"), 0.5, 0.5, 1);
  support_until (import_find_dialog () == NULL);
  g_assert_cmpstr (support->toasts->pdata[0], ==, "2 purchases imported");
  purchases = gb_boat_all (gb_project_get_boat (support->project), GB_RECORD_PURCHASE);
  g_assert_cmpuint (purchases->len, ==, 1);
  g_assert_cmpuint (gb_record_children (purchases->pdata[0])->len, ==, 2);
}

/* What is no table ------------------------------------------------------------------------------------------------------ */

static void
assert_told (Support *support, GFile *file, const char *told)
{
  guint before = support->told->len;

  gb_import_dialog_present (support->window, support->project, GB_RECORD_PART, file);
  support_until (support->told->len > before && import_find_dialog () == NULL);
  g_assert_nonnull (strstr (support->told->pdata[before], told));
}

static void
test_what_is_no_table (void)
{
  g_autoptr (Support) support = show_parts ();
  /* The first bytes of a picture. */
  g_autoptr (GFile) picture_file = import_write_file (support, "boat.png", "\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16);
  g_autoptr (GFile) empty = import_write_file (support, "empty.csv", "", 0);
  g_autoptr (GFile) missing = g_file_get_child (picture_file, "missing.csv");
  g_autoptr (GFile) folder = g_file_new_for_path (support->folder);

  assert_told (support, picture_file, "“boat.png” is not imported. This is not text.");
  assert_told (support, empty, "There is nothing in it");
  assert_told (support, missing, "“missing.csv” is not imported.");
  assert_told (support, folder, "is not imported.");
  g_assert_cmpuint (support->toasts->len, ==, 0);
}

static void
test_headings_alone (void)
{
  g_autoptr (Support) support = show_parts ();
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, "Name;Length\n");
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "There are no rows below the headings.");
  g_assert_false (gtk_widget_get_sensitive (import_child (&fixture, "import_button")));
  gtk_window_destroy (fixture.dialog);
}

static void
test_very_many_columns (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autoptr (GString) text = g_string_new ("");
  ImportFixture fixture;

  for (guint c = 0; c < 300; c++)
    g_string_append_printf (text, "x%u;", c);
  g_string_append (text, "Name\n");
  for (guint c = 0; c < 300; c++)
    g_string_append_printf (text, "%u;", c);
  g_string_append (text, "Bottom\n");
  import_open_dialog (&fixture, support, GB_RECORD_PART, text->str);
  g_assert_cmpstr (import_words (&fixture, "hidden"), ==, "241 more columns are left out and not shown.");
  g_assert_cmpstr (import_field_of (&fixture, 300), ==, "Name");
  g_assert_null (gb_import_preview_get_head (import_child (&fixture, "preview"), 299));
  g_assert_true (gtk_widget_get_sensitive (import_child (&fixture, "import_button")));
  gtk_window_destroy (fixture.dialog);
}

static void
test_very_long_cells (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autofree char *name = g_strnfill (10000, 'n');
  g_autofree char *text = g_strdup_printf ("Name;Notes\n%s;\"two\nlines\"\n", name);
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, text);
  g_assert_cmpuint (strlen (import_cell_text (&fixture, 0, IMPORT_FIRST)), <, 300);
  g_assert_cmpstr (import_cell_text (&fixture, 0, IMPORT_FIRST + 1), ==, "two lines");
  g_assert_nonnull (strstr (import_cell_text (&fixture, 0, IMPORT_OUTCOME), "too long"));
  gtk_window_destroy (fixture.dialog);
}

/* A worker ---------------------------------------------------------------------------------------------------------------- */

static char *
long_table (guint rows)
{
  GString *text = g_string_new ("Part;Group;Thickness;Length (mm)\n");

  for (guint r = 0; r < rows; r++)
    g_string_append_printf (text, "Rib %u;Ribs;12,5;%u\n", r, 800 + r % 7);
  return g_string_free (text, FALSE);
}

static void
test_long_tables_do_not_hold_up_the_window (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autofree char *text = long_table (4000);
  GtkWidget *input;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, text);
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "All 4000 rows come in as parts.");
  input = GTK_WIDGET (gb_import_head_get_field_input (import_head (&fixture, 2)));
  gtk_widget_grab_focus (input);
  import_choose (gb_import_head_get_field_input (import_head (&fixture, 2)), "Width");
  /* Away: what is shown stays and takes no input. */
  g_assert_true (gtk_spinner_get_spinning (import_child (&fixture, "spinner")));
  g_assert_false (gtk_widget_get_sensitive (import_child (&fixture, "import_button")));
  g_assert_false (gtk_widget_is_sensitive (input));
  support_until (import_shows_table (&fixture));
  g_assert_true (gtk_widget_is_sensitive (input));
  g_assert_true (gtk_widget_is_ancestor (gtk_window_get_focus (fixture.dialog), input));
  g_assert_cmpstr (import_field_of (&fixture, 2), ==, "Width");
  support_click (support, import_child (&fixture, "import_button"), 0.5, 0.5, 1);
  support_until (import_find_dialog () == NULL);
  g_assert_cmpfloat (part_called (support, "Rib 3999")->width, ==, 0.0125);
  g_assert_cmpstr (support->toasts->pdata[0], ==, "4000 parts imported");
}

/* At any moment of reading and working. */
static void
test_closing_in_the_middle (void)
{
  g_autofree char *text = long_table (4000);

  for (guint turns = 0; turns < 12; turns++)
    {
      g_autoptr (Support) support = show_parts ();
      g_autoptr (GFile) file = import_write_file (support, "table.csv", text, -1);
      GtkWindow *dialog;

      gb_import_dialog_present (support->window, support->project, GB_RECORD_PART, file);
      dialog = import_find_dialog ();
      for (guint i = 0; i < turns; i++)
        g_main_context_iteration (NULL, i > 2 && !gtk_widget_get_visible (GTK_WIDGET (dialog)));
      g_object_add_weak_pointer (G_OBJECT (dialog), (gpointer *) &dialog);
      gtk_window_destroy (dialog);
      support_until (dialog == NULL);
      g_assert_cmpuint (support->told->len, ==, 0);
    }
}

/* The build changes -------------------------------------------------------------------------------------------------------- */

static void
test_the_build_changes_meanwhile (void)
{
  g_autoptr (Support) support = show_parts ();
  const gint64 stern = 4;
  g_autoptr (GError) error = NULL;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, "Name;Surfaces of;How thick\nPaint;Transom;6\n");
  import_choose_field (&fixture, 2, "Coverage");
  import_choose_unit (&fixture, 2, "ft²/gal");
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "The one row comes in as a part.");
  gtk_drop_down_set_selected (import_child (&fixture, "group_input"), 2);

  /* What it refers to goes: the row is refused, and the columns stay as they were chosen. */
  g_assert_true (gb_project_remove (support->project, GB_RECORD_PART, &stern, 1, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "No row can come in as it stands.");
  g_assert_cmpstr (import_field_of (&fixture, 2), ==, "Coverage");
  g_assert_cmpstr (import_unit_of (&fixture, 2), ==, "ft²/gal");
  g_assert_cmpint (gb_group_choice_get (import_child (&fixture, "group_input")), ==, 5);
  g_assert_true (gb_project_undo (support->project, &error));
  g_assert_cmpstr (import_words (&fixture, "summary"), ==, "The one row comes in as a part.");
  gtk_window_destroy (fixture.dialog);
}

/* While the edit is made on a worker: the builder looks once more before it comes in. */
static void
test_the_build_changes_while_rows_come_in (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autofree char *text = long_table (4000);
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, text);
  g_signal_emit_by_name (import_child (&fixture, "import_button"), "clicked");
  g_assert_false (import_shows_table (&fixture));
  g_assert_cmpint (gb_project_add_part (support->project, "Yard", GB_KIND_PART, 0, 0, NULL), >, 0);
  support_until (import_shows_table (&fixture));
  g_assert_cmpint (support_part (support, "Rib 1"), ==, 0);
  g_assert_true (import_find_dialog () == fixture.dialog);
  g_signal_emit_by_name (import_child (&fixture, "import_button"), "clicked");
  support_until (import_find_dialog () == NULL);
  g_assert_cmpint (support_part (support, "Rib 1"), !=, 0);
}

/* A file from a newer Garboard can only be read; the number of its schema stands at byte 60 of the file (sqlite.org/fileformat.html). */
static void
test_a_build_that_can_only_be_read (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autofree char *path = g_build_filename (support->folder, "newer.garboard", NULL);
  g_autoptr (GFile) file = import_write_file (support, "table.csv", "Name\nBoom\n", -1);
  g_autoptr (GbProject) newer = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = NULL;
  gsize length;

  g_assert_true (gb_project_save_copy (support->project, path, &error));
  g_assert_true (g_file_get_contents (path, &bytes, &length, &error));
  bytes[62] = 1;
  g_assert_true (g_file_set_contents (path, bytes, (gssize) length, &error));
  newer = gb_project_open (path, TRUE, &error);
  g_assert_no_error (error);
  gb_import_dialog_present (support->window, newer, GB_RECORD_PART, file);
  g_assert_null (import_find_dialog ());
  g_assert_cmpuint (support->told->len, ==, 1);
  g_assert_cmpstr (support->told->pdata[0], ==, gb_project_get_read_only_reason (newer));
}

/* Another program has the file too, and changes it just before the rows come in. */
static void
test_another_program_changes_the_file (void)
{
  g_autoptr (Support) support = show_parts ();
  g_autoptr (GbProject) other = NULL;
  g_autoptr (GError) error = NULL;
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, "Name\nBoom\n");
  other = gb_project_open (gb_project_get_path (support->project), FALSE, &error);
  g_assert_no_error (error);
  g_assert_cmpint (gb_project_add_part (other, "Yard", GB_KIND_PART, 0, 0, &error), >, 0);
  support_click (support, import_child (&fixture, "import_button"), 0.5, 0.5, 1);
  support_until (import_find_dialog () == NULL || strstr (import_words (&fixture, "hint"), "Another program") != NULL);
  if (import_find_dialog () != NULL)
    support_click (support, import_child (&fixture, "import_button"), 0.5, 0.5, 1);
  support_until (import_find_dialog () == NULL);
  g_assert_cmpint (support_part (support, "Boom"), !=, 0);
  g_assert_cmpint (support_part (support, "Yard"), !=, 0);
}

static void
test_pictures_of_parts (void)
{
  g_autoptr (Support) support = show_parts ();
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART, frames_csv);
  import_picture (&fixture, "import-parts");
  /* The last columns. */
  gtk_widget_child_focus (GTK_WIDGET (import_head (&fixture, 11)), GTK_DIR_TAB_FORWARD);
  support_settle ();
  import_picture (&fixture, "import-parts-right");
  gtk_window_destroy (fixture.dialog);
}

/* In feet and inches, in a small window, with nothing that can come in yet. */
static void
test_pictures_of_a_list_that_nobody_knows (void)
{
  g_autoptr (Support) support = show_build ("reedling", 900, 600);
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_PART,
               "Bit;How long;How thick;Out of\nThwart;2' 3 1/2\";3/4;Ash\nYoke;2' 8\";7/8;Ash\nGunwale;14' 6\";5/8;Spruce\n");
  import_choose_field (&fixture, 1, "Length");
  import_choose_field (&fixture, 2, "Thickness");
  import_picture (&fixture, "import-no-name");
  gtk_window_destroy (fixture.dialog);
}

static void
test_pictures_of_purchases (void)
{
  g_autoptr (Support) support = show_build ("plover", 1280, 800);
  ImportFixture fixture;

  import_open_dialog (&fixture, support, GB_RECORD_LINE,
               "Date,Supplier,Item,Qty,Price (€),Discount (%),Budget head\n2026-04-02,The timber yard,Sitka spruce,2,18.40,5,Timber\n"
               "2026-04-02,The timber yard,Copper nails,1,12.50,,Fastenings\n2026-04-31,The ironmonger,Screws,2,4.20,,Fastenings\n"
               "2026-05-06,The chandler,Varnish,1,31.00,,Paint\n");
  import_picture (&fixture, "import-purchases");
  gtk_window_destroy (fixture.dialog);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  g_test_add_func ("/import-dialog/what-becomes-of-each-row", test_what_becomes_of_each_row);
  g_test_add_func ("/import-dialog/refused-rows-only", test_refused_rows_only);
  g_test_add_func ("/import-dialog/columns-are-chosen-by-keyboard", test_columns_are_chosen_by_keyboard);
  g_test_add_func ("/import-dialog/import-is-one-undo", test_import_is_one_undo);
  g_test_add_func ("/import-dialog/parts-go-into-a-group", test_parts_go_into_a_group);
  g_test_add_func ("/import-dialog/purchases", test_purchases);
  g_test_add_func ("/import-dialog/what-is-no-table", test_what_is_no_table);
  g_test_add_func ("/import-dialog/headings-alone", test_headings_alone);
  g_test_add_func ("/import-dialog/very-many-columns", test_very_many_columns);
  g_test_add_func ("/import-dialog/very-long-cells", test_very_long_cells);
  g_test_add_func ("/import-dialog/long-tables-do-not-hold-up-the-window", test_long_tables_do_not_hold_up_the_window);
  g_test_add_func ("/import-dialog/closing-in-the-middle", test_closing_in_the_middle);
  g_test_add_func ("/import-dialog/the-build-changes-meanwhile", test_the_build_changes_meanwhile);
  g_test_add_func ("/import-dialog/the-build-changes-while-rows-come-in", test_the_build_changes_while_rows_come_in);
  g_test_add_func ("/import-dialog/a-build-that-can-only-be-read", test_a_build_that_can_only_be_read);
  g_test_add_func ("/import-dialog/another-program-changes-the-file", test_another_program_changes_the_file);
  g_test_add_func ("/import-dialog/pictures-of-parts", test_pictures_of_parts);
  g_test_add_func ("/import-dialog/pictures-of-a-list-that-nobody-knows", test_pictures_of_a_list_that_nobody_knows);
  g_test_add_func ("/import-dialog/pictures-of-purchases", test_pictures_of_purchases);
  return g_test_run ();
}
