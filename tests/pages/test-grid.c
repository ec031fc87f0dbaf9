/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table by keyboard and by pointer, on the tree of parts: Hull { Bottom, Side, Transom }, Rig { Mast },
 * Lantern. */

#include "boat/catalogue.h"
#include "pages/parts-page.h"
#include "support.h"

typedef struct
{
  Support *support;
  GbGrid *grid;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->support = support_new (NULL);
  support_show (fixture->support, gb_parts_page_new (), 1100, 700);
  fixture->grid = gb_parts_page_get_grid (GB_PARTS_PAGE (fixture->support->page));
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  support_free (fixture->support);
}

static const GbPart *
part_named (Fixture *fixture, const char *name)
{
  return gb_boat_part (gb_project_get_boat (fixture->support->project),
                       support_part (fixture->support, name));
}

static GtkWidget *
focus (Fixture *fixture)
{
  return gtk_window_get_focus (fixture->support->window);
}

/* The cell that the focus is in, or whose editor has it. */
static GbCell *
focus_cell (Fixture *fixture)
{
  GtkWidget *widget = focus (fixture);

  return widget != NULL
           ? GB_CELL (GB_IS_CELL (widget) ? widget : gtk_widget_get_ancestor (widget, GB_TYPE_CELL))
           : NULL;
}

/* Puts the cursor into a cell. */
static void
go_to (Fixture *fixture, const char *part, const char *column)
{
  g_assert_true (
    gb_grid_go_to (fixture->grid, GB_RECORD_PART, support_part (fixture->support, part), column, TRUE));
  support_until (focus_cell (fixture) != NULL);
}

static guint
n_rows (Fixture *fixture)
{
  return g_list_model_get_n_items (gb_grid_get_rows (fixture->grid));
}

static const char *
cell (Fixture *fixture, const char *part, const char *column)
{
  return support_cell (fixture->grid, GB_RECORD_PART, support_part (fixture->support, part), column);
}

/* Entering ----------------------------------------------------------------------------------------------- */

static void
test_rows (Fixture *fixture, gconstpointer data)
{
  /* The boat, two groups, five parts, and the blank row. */
  g_assert_cmpuint (n_rows (fixture), ==, 9);
  g_assert_cmpstr (cell (fixture, "Bottom", "name"), ==, "Bottom");
  /* 2 m x 1 m x 6 mm x 500 kg/m3 */
  g_assert_cmpstr (cell (fixture, "Bottom", "total"), ==, "6 kg");
  g_assert_cmpstr (cell (fixture, "Bottom", "material"), ==, "Test ply");
  g_assert_cmpstr (cell (fixture, "Hull", "total"), ==, "9.6 kg");
}

static void
test_type_parts (Fixture *fixture, gconstpointer data)
{
  const GbPart *part;

  go_to (fixture, "Transom", "name");
  support_keys (fixture->support, "ctrl+Return");
  support_until (support_is_editing (fixture->support));
  support_type (fixture->support, "Frame 1");
  support_keys (fixture->support, "Return");
  support_until (support_part (fixture->support, "Frame 1") != 0);
  part = part_named (fixture, "Frame 1");
  g_assert_cmpint (part->rec.owner, ==, support_part (fixture->support, "Hull"));
  g_assert_cmpint (part->material, ==, 1); /* from the part above */

  /* Enter went on to the amount; typing starts an entry there. */
  support_until (focus_cell (fixture)
                 == gb_grid_find_cell (fixture->grid,
                                       support_row (fixture->grid, GB_RECORD_PART, part->rec.id), "amount"));
  support_type (fixture->support, "500 x 200");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Frame 1")->length == 0.5);
  g_assert_cmpfloat (part_named (fixture, "Frame 1")->width, ==, 0.2);
  g_assert_cmpfloat (part_named (fixture, "Frame 1")->thickness, ==, 0.006);
  /* 0.5 x 0.2 x 0.006 x 500 */
  g_assert_cmpstr (cell (fixture, "Frame 1", "total"), ==, "0.3 kg");
}

static void
test_blank_row (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Lantern", "name");
  support_keys (fixture->support, "Down");
  support_type (fixture->support, "Anchor");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (support_part (fixture->support, "Anchor") != 0);
  g_assert_cmpint (part_named (fixture, "Anchor")->rec.owner, ==, 0);
  g_assert_cmpuint (support_row (fixture->grid, GB_RECORD_PART, support_part (fixture->support, "Anchor")),
                    ==, n_rows (fixture) - 2);
}

static void
test_escape (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Side", "name");
  support_type (fixture->support, "Nonsense");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Escape");
  support_until (!support_is_editing (fixture->support));
  g_assert_cmpstr (cell (fixture, "Side", "name"), ==, "Side");
  g_assert_null (gb_project_get_undo_words (fixture->support->project));

  /* A draft goes with its entry. */
  support_keys (fixture->support, "ctrl+Return");
  support_until (support_is_editing (fixture->support));
  g_assert_cmpuint (n_rows (fixture), ==, 10);
  support_keys (fixture->support, "Escape");
  support_until (n_rows (fixture) == 9);
}

static void
test_edit_and_undo (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  go_to (fixture, "Side", "name");
  support_keys (fixture->support, "F2");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "End");
  support_type (fixture->support, " panel");
  support_keys (fixture->support, "Tab");
  support_until (support_part (fixture->support, "Side panel") != 0);

  go_to (fixture, "Lantern", "name");
  gb_project_undo (fixture->support->project, &error);
  g_assert_no_error (error);
  /* Undo goes back to where the edit was. */
  support_until (focus_cell (fixture)
                 == gb_grid_find_cell (
                   fixture->grid,
                   support_row (fixture->grid, GB_RECORD_PART, support_part (fixture->support, "Side")),
                   "name"));
  g_assert_cmpstr (cell (fixture, "Side", "name"), ==, "Side");
}

static void
test_wrong_entry (Fixture *fixture, gconstpointer data)
{
  GbCell *at;

  go_to (fixture, "Side", "amount");
  support_type (fixture->support, "12 furlongs");
  support_until (support_is_editing (fixture->support));
  at = focus_cell (fixture);
  support_keys (fixture->support, "Return");
  support_until (gb_cell_get_complaint (at) != NULL);
  g_assert_true (support_is_editing (fixture->support));
  g_assert_nonnull (strstr (gb_cell_get_complaint (at), "furlongs"));
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (at), "error"));
  support_picture (fixture->support, "grid-wrong-entry");

  /* Typing takes it back; a good entry is kept. */
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "1500");
  support_until (gb_cell_get_complaint (at) == NULL);
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Side")->length == 1.5);
}

static void
test_several_at_once (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Bottom", "amount");
  support_keys (fixture->support, "shift+Down shift+Down");
  support_type (fixture->support, "- x - x 9");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Transom")->thickness == 0.009);
  g_assert_cmpfloat (part_named (fixture, "Bottom")->thickness, ==, 0.009);
  g_assert_cmpfloat (part_named (fixture, "Side")->thickness, ==, 0.009);
  g_assert_cmpfloat (part_named (fixture, "Bottom")->length, ==, 2);
  g_assert_cmpstr (gb_project_get_undo_words (fixture->support->project), ==, "sizes of 3 parts");
  gb_project_undo (fixture->support->project, NULL);
  g_assert_cmpfloat (part_named (fixture, "Side")->thickness, ==, 0.006);
  g_assert_null (gb_project_get_undo_words (fixture->support->project));
}

static void
test_material_from_catalogue (Fixture *fixture, gconstpointer data)
{
  const GbMaterial *known = g_ptr_array_index (gb_catalogue_get (), 0);

  go_to (fixture, "Mast", "material");
  /* The mast is a lump and has no material. */
  support_keys (fixture->support, "F2");
  g_assert_false (support_is_editing (fixture->support));

  go_to (fixture, "Side", "material");
  support_type (fixture->support, known->name);
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Side")->material != 1);
  g_assert_cmpstr (cell (fixture, "Side", "material"), ==, known->name);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (fixture->support->project), GB_RECORD_MATERIAL), ==, 2);
  gb_project_undo (fixture->support->project, NULL);
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (fixture->support->project), GB_RECORD_MATERIAL), ==, 1);
}

/* Arranging ---------------------------------------------------------------------------------------------- */

static void
test_move_by_keys (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Transom", "name");
  support_keys (fixture->support, "alt+Up");
  support_until (part_named (fixture, "Transom")->rec.index < part_named (fixture, "Side")->rec.index);
  support_keys (fixture->support, "alt+Left");
  support_until (part_named (fixture, "Transom")->rec.owner == 0);
  /* The cursor stays with it. */
  support_until (focus_cell (fixture) != NULL
                 && g_str_equal (gb_cell_get_text (focus_cell (fixture)), "Transom"));
  support_keys (fixture->support, "alt+Right");
  support_until (part_named (fixture, "Transom")->rec.owner == support_part (fixture->support, "Hull"));
}

static void
test_groups_stay_closed (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Hull", "name");
  support_keys (fixture->support, "ctrl+Left");
  support_until (n_rows (fixture) == 6);
  support_keys (fixture->support, "alt+Down");
  support_until (part_named (fixture, "Hull")->rec.index > part_named (fixture, "Rig")->rec.index);
  g_assert_cmpuint (n_rows (fixture), ==, 6);
  gb_project_undo (fixture->support->project, NULL);
  support_settle ();
  g_assert_cmpuint (n_rows (fixture), ==, 6);
  support_keys (fixture->support, "plus");
  support_until (n_rows (fixture) == 9);
  support_keys (fixture->support, "ctrl+shift+Left");
  support_until (n_rows (fixture) == 5);
}

static void
test_delete_and_undo (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Hull", "name");
  support_keys (fixture->support, "Delete");
  support_until (support_part (fixture->support, "Hull") == 0);
  g_assert_cmpuint (n_rows (fixture), ==, 5);
  g_assert_cmpuint (fixture->support->toasts->len, ==, 1);
  g_assert_nonnull (strstr (fixture->support->toasts->pdata[0], "Hull"));
  /* The row that came up has the cursor. */
  support_until (focus_cell (fixture) != NULL
                 && g_str_equal (gb_cell_get_text (focus_cell (fixture)), "Rig"));
  gb_project_undo (fixture->support->project, NULL);
  support_until (n_rows (fixture) == 9);
  g_assert_cmpstr (cell (fixture, "Bottom", "total"), ==, "6 kg");
}

static void
test_duplicate (Fixture *fixture, gconstpointer data)
{
  guint n;
  g_autofree gint64 *ids = NULL;

  go_to (fixture, "Rig", "name");
  support_keys (fixture->support, "ctrl+d");
  support_until (n_rows (fixture) == 11);
  ids = gb_grid_dup_selected (fixture->grid, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (ids[0], !=, support_part (fixture->support, "Lantern"));
  g_assert_cmpuint (gb_boat_part (gb_project_get_boat (fixture->support->project), ids[0])->n_below, ==, 1);
}

static void
test_clipboard (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Rig", "name");
  support_keys (fixture->support, "ctrl+c");
  go_to (fixture, "Transom", "name");
  support_keys (fixture->support, "ctrl+v");
  support_until (n_rows (fixture) == 11);
  g_assert_cmpint (part_named (fixture, "Hull")->n_below, ==, 5);

  /* Cut and paste is a move. */
  go_to (fixture, "Lantern", "name");
  support_keys (fixture->support, "ctrl+x");
  support_until (support_part (fixture->support, "Lantern") == 0);
  go_to (fixture, "Side", "name");
  support_keys (fixture->support, "ctrl+v");
  support_until (support_part (fixture->support, "Lantern") != 0);
  g_assert_cmpint (part_named (fixture, "Lantern")->rec.owner, ==, support_part (fixture->support, "Hull"));
}

static void
got_text_cb (GObject *clipboard, GAsyncResult *result, gpointer user_data)
{
  char **text = user_data;

  *text = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
}

static void
test_clipboard_as_text (Fixture *fixture, gconstpointer data)
{
  GdkClipboard *clipboard = gtk_widget_get_clipboard (fixture->support->page);
  g_autofree char *text = NULL;

  go_to (fixture, "Side", "name");
  support_keys (fixture->support, "ctrl+c");
  gdk_clipboard_read_text_async (clipboard, NULL, got_text_cb, &text);
  support_until (text != NULL);
  g_assert_nonnull (strstr (text, "Side"));
  g_assert_nonnull (strchr (text, '\t'));

  /* And rows from elsewhere. */
  gdk_clipboard_set_text (clipboard, "Name\tTake-off\tMass (kg)\nRudder\tLump\t1.5\nTiller\tLump\t0.4\n");
  go_to (fixture, "Mast", "name");
  support_keys (fixture->support, "ctrl+v");
  support_until (support_part (fixture->support, "Tiller") != 0);
  g_assert_cmpfloat (part_named (fixture, "Rudder")->mass, ==, 1.5);
  g_assert_cmpint (part_named (fixture, "Tiller")->rec.owner, ==, support_part (fixture->support, "Rig"));

  /* A single word goes into the cell. */
  gdk_clipboard_set_text (clipboard, "Spar");
  go_to (fixture, "Mast", "name");
  support_keys (fixture->support, "ctrl+v");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (support_part (fixture->support, "Spar") != 0);
}

/* By pointer ---------------------------------------------------------------------------------------------- */

static GtkWidget *
cell_of (Fixture *fixture, const char *part, const char *column)
{
  guint position = support_row (fixture->grid, GB_RECORD_PART, support_part (fixture->support, part));

  return GTK_WIDGET (gb_grid_find_cell (fixture->grid, position, column));
}

static void
test_clicks (Fixture *fixture, gconstpointer data)
{
  guint n;
  g_autofree gint64 *ids = NULL;

  /* A second click opens the cell; a click elsewhere keeps what was typed. */
  support_click (fixture->support, cell_of (fixture, "Side", "name"), 0.6, 0.5, 2);
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "Flank");
  support_click (fixture->support, cell_of (fixture, "Mast", "total"), 0.5, 0.5, 1);
  support_until (support_part (fixture->support, "Flank") != 0);

  /* One click selects the row and puts the cursor there. */
  support_until (focus_cell (fixture) == GB_CELL (cell_of (fixture, "Mast", "total")));
  ids = gb_grid_dup_selected (fixture->grid, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (ids[0], ==, support_part (fixture->support, "Mast"));
  g_assert_false (support_is_editing (fixture->support));

  /* The blank row asks for a name at once. */
  support_click (fixture->support, GTK_WIDGET (gb_grid_find_cell (fixture->grid, n_rows (fixture) - 1, "name")), 0.5,
                 0.5, 1);
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Escape");

  /* The arrow of a group. */
  support_click (fixture->support, gtk_widget_get_first_child (cell_of (fixture, "Hull", "name")), 0.5, 0.5, 1);
  support_until (n_rows (fixture) == 6);
}

static void
test_drag_into_group (Fixture *fixture, gconstpointer data)
{
  support_drag (fixture->support, cell_of (fixture, "Lantern", "name"), cell_of (fixture, "Rig", "name"), 0.5);
  support_until (part_named (fixture, "Lantern")->rec.owner == support_part (fixture->support, "Rig"));
}

static void
test_drag_among_siblings (Fixture *fixture, gconstpointer data)
{
  support_drag (fixture->support, cell_of (fixture, "Transom", "name"), cell_of (fixture, "Bottom", "name"), 0.1);
  support_until (part_named (fixture, "Transom")->rec.index < part_named (fixture, "Bottom")->rec.index);
  g_assert_cmpint (part_named (fixture, "Transom")->rec.owner, ==, support_part (fixture->support, "Hull"));
  support_drag (fixture->support, cell_of (fixture, "Transom", "name"), cell_of (fixture, "Side", "name"), 0.9);
  support_until (part_named (fixture, "Transom")->rec.index > part_named (fixture, "Side")->rec.index);
}

/* All that is selected goes along; a group does not go into itself. */
static void
test_drag_several (Fixture *fixture, gconstpointer data)
{
  gint64 ids[2] = { support_part (fixture->support, "Side"), support_part (fixture->support, "Transom") };

  gb_grid_select (fixture->grid, ids, 2);
  support_drag (fixture->support, cell_of (fixture, "Side", "name"), cell_of (fixture, "Rig", "name"), 0.5);
  support_until (part_named (fixture, "Side")->rec.owner == support_part (fixture->support, "Rig"));
  g_assert_cmpint (part_named (fixture, "Transom")->rec.owner, ==, support_part (fixture->support, "Rig"));
  g_assert_cmpstr (gb_project_get_undo_words (fixture->support->project), ==, "move of 2 parts");

  support_drag (fixture->support, cell_of (fixture, "Rig", "name"), cell_of (fixture, "Mast", "name"), 0.9);
  g_assert_cmpint (part_named (fixture, "Rig")->rec.owner, ==, 0);
}

/* Finding and columns ------------------------------------------------------------------------------------ */

static void
test_find (Fixture *fixture, gconstpointer data)
{
  GtkWidget *search = support_find (GTK_WIDGET (fixture->grid), GTK_TYPE_SEARCH_ENTRY);

  go_to (fixture, "Bottom", "name");
  support_keys (fixture->support, "ctrl+f");
  support_until (focus (fixture) != NULL && gtk_widget_is_ancestor (focus (fixture), search));
  support_type (fixture->support, "mast");
  /* The boat, the group that holds it, the mast, and the blank row. */
  support_until (n_rows (fixture) == 4);
  support_picture (fixture->support, "grid-find");
  support_keys (fixture->support, "Return");
  support_until (focus_cell (fixture) != NULL
                 && g_str_equal (gb_cell_get_text (focus_cell (fixture)), "Mast"));
  support_keys (fixture->support, "ctrl+f");
  support_type (fixture->support, "zzz");
  support_until (gtk_widget_has_css_class (search, "error"));
  support_keys (fixture->support, "Escape");
  support_until (n_rows (fixture) == 9);
}

static void
test_columns (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GSettings) settings = g_settings_new ("org.garboard.Garboard");
  GActionGroup *actions = gb_grid_get_actions (fixture->grid);
  g_auto (GStrv) names = NULL;

  g_action_group_activate_action (actions, "show-state", NULL);
  support_until (gb_grid_find_cell (fixture->grid, 1, "state") != NULL);
  g_action_group_activate_action (actions, "hide", g_variant_new_string ("amount"));
  g_action_group_activate_action (actions, "column-left", g_variant_new_string ("total"));
  support_settle ();
  names = g_settings_get_strv (settings, "parts-columns");
  g_assert_cmpuint (g_strv_length (names), ==, 5);
  g_assert_cmpstr (names[0], ==, "name");
  g_assert_cmpstr (names[1], ==, "total");
  g_assert_cmpstr (names[2], ==, "material");
  g_assert_cmpstr (names[4], ==, "state");
  g_action_group_activate_action (actions, "usual-columns", NULL);
  support_settle ();
  g_assert_nonnull (gb_grid_find_cell (fixture->grid, 1, "amount"));
  g_assert_null (gb_grid_find_cell (fixture->grid, 1, "state"));
  g_settings_reset (settings, "parts-columns");
}

/* A row that is scrolled away and back is told of a change once, and an unseen one not at all. */
static void
test_handlers (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GbGridRow) row = g_list_model_get_item (gb_grid_get_rows (fixture->grid), 2);
  guint signal_id = g_signal_lookup ("changed", GB_TYPE_GRID_ROW);
  guint n = 0;

  for (guint i = 0; i < 20; i++)
    {
      g_action_group_activate_action (gb_grid_get_actions (fixture->grid), "show-state", NULL);
      support_settle ();
    }
  gb_grid_set_project (fixture->grid, NULL);
  support_settle ();
  while (g_signal_handler_find (row, G_SIGNAL_MATCH_ID, signal_id, 0, NULL, NULL, NULL) != 0 && n < 100)
    {
      g_signal_handler_disconnect (
        row, g_signal_handler_find (row, G_SIGNAL_MATCH_ID, signal_id, 0, NULL, NULL, NULL));
      n++;
    }
  g_assert_cmpuint (n, ==, 0);
  g_assert_finalize_object (g_steal_pointer (&row));
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/grid/rows", test_rows);
  ADD ("/grid/type-parts", test_type_parts);
  ADD ("/grid/blank-row", test_blank_row);
  ADD ("/grid/escape", test_escape);
  ADD ("/grid/edit-and-undo", test_edit_and_undo);
  ADD ("/grid/wrong-entry", test_wrong_entry);
  ADD ("/grid/several-at-once", test_several_at_once);
  ADD ("/grid/material-from-catalogue", test_material_from_catalogue);
  ADD ("/grid/move-by-keys", test_move_by_keys);
  ADD ("/grid/groups-stay-closed", test_groups_stay_closed);
  ADD ("/grid/delete-and-undo", test_delete_and_undo);
  ADD ("/grid/duplicate", test_duplicate);
  ADD ("/grid/clipboard", test_clipboard);
  ADD ("/grid/clipboard-as-text", test_clipboard_as_text);
  ADD ("/grid/clicks", test_clicks);
  ADD ("/grid/drag-into-group", test_drag_into_group);
  ADD ("/grid/drag-among-siblings", test_drag_among_siblings);
  ADD ("/grid/drag-several", test_drag_several);
  ADD ("/grid/find", test_find);
  ADD ("/grid/columns", test_columns);
  ADD ("/grid/handlers", test_handlers);
  return g_test_run ();
}
