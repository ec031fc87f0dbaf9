/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The parts page round its table: details, scale, groups, what is unknown, outlines, two windows. */

#include "pages/part-facts.h"
#include "pages/part-sums.h"
#include "pages/parts-page.h"
#include "support.h"
#include "widgets/field-editor.h"
#include "widgets/inspector.h"
#include "widgets/outline-editor.h"
#include "widgets/outline-view.h"
#include "widgets/side-pane.h"

typedef struct
{
  Support *support;
  GbGrid *grid;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->support = support_new (NULL);
  support_show (fixture->support, gb_parts_page_new (), 1200, 760);
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

static void
go_to (Fixture *fixture, const char *part)
{
  gb_parts_page_show_part (GB_PARTS_PAGE (fixture->support->page), support_part (fixture->support, part));
}

static GbFieldEditor *
editor (Fixture *fixture, const char *field)
{
  GtkWidget *inspector = support_find (fixture->support->page, GB_TYPE_INSPECTOR);

  return GB_FIELD_EDITOR (gb_inspector_find (GB_INSPECTOR (inspector), field));
}

/* A label below @top that holds @text; NULL: none. */
static GtkWidget *
find_words (GtkWidget *top, const char *text)
{
  if (GTK_IS_LABEL (top) && gtk_widget_get_mapped (top)
      && strstr (gtk_label_get_text (GTK_LABEL (top)), text) != NULL)
    return top;
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_words (child, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
page_says (Fixture *fixture, const char *text)
{
  return find_words (fixture->support->page, text) != NULL;
}

static void
act (Fixture *fixture, const char *action)
{
  g_assert_true (gtk_widget_activate_action (fixture->support->page, action, NULL));
}

/* Details ------------------------------------------------------------------------------------------------ */

static void
test_facts (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Bottom");
  support_until (page_says (fixture, "6 kg"));
  g_assert_true (page_says (fixture, "calculated"));
  go_to (fixture, "Lantern");
  support_until (page_says (fixture, "No mass yet"));
  gb_grid_select_all (fixture->grid);
  support_until (page_says (fixture, "rows selected"));
}

/* A group and what lies in it, both selected, count once: the details say the sum of the groups alone. */
static void
test_facts_of_all_count_once (Fixture *fixture, gconstpointer data)
{
  GtkWidget *facts = support_find (fixture->support->page, GB_TYPE_PART_FACTS);
  g_autofree gint64 *tops = NULL;
  g_autofree char *words = NULL;
  guint n_tops, n_all;

  gb_grid_select_all (fixture->grid);
  g_free (gb_grid_dup_selected (fixture->grid, &n_all));
  tops = gb_grid_dup_selected_tops (fixture->grid, &n_tops);
  g_assert_cmpuint (n_tops, <, n_all);
  words = gb_part_sums_selected (fixture->support->project, tops, n_tops);
  support_until (find_words (facts, words) != NULL);
}

static void
test_inspector_edits (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Bottom");
  gtk_widget_grab_focus (gb_field_editor_get_input (editor (fixture, "thickness")));
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "8");
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Bottom")->thickness == 0.008);
  g_assert_true (page_says (fixture, "8 kg")); /* 2 x 1 x 0.008 x 500 */

  /* What is refused stays, with what is wrong; Escape takes it back. */
  gtk_widget_grab_focus (gb_field_editor_get_input (editor (fixture, "length")));
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "long");
  support_keys (fixture->support, "Return");
  support_until (gb_field_editor_get_complaint (editor (fixture, "length")) != NULL);
  support_keys (fixture->support, "Escape");
  support_until (gb_field_editor_get_complaint (editor (fixture, "length")) == NULL);
  g_assert_cmpfloat (part_named (fixture, "Bottom")->length, ==, 2);

  /* Leaving the entry keeps it. */
  gtk_widget_grab_focus (gb_field_editor_get_input (editor (fixture, "width")));
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "900");
  gtk_widget_grab_focus (GTK_WIDGET (fixture->grid));
  support_until (part_named (fixture, "Bottom")->width == 0.9);
}

static void
test_inspector_of_several (Fixture *fixture, gconstpointer data)
{
  gint64 ids[2] = { support_part (fixture->support, "Bottom"), support_part (fixture->support, "Side") };

  gb_grid_select (fixture->grid, ids, 2);
  g_assert_cmpstr (
    gtk_editable_get_text (GTK_EDITABLE (gb_field_editor_get_input (editor (fixture, "width")))), ==, "");
  g_assert_cmpstr (
    gtk_entry_get_placeholder_text (GTK_ENTRY (gb_field_editor_get_input (editor (fixture, "width")))), ==,
    "various");
  gtk_widget_grab_focus (gb_field_editor_get_input (editor (fixture, "width")));
  support_type (fixture->support, "300");
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Side")->width == 0.3);
  g_assert_cmpfloat (part_named (fixture, "Bottom")->width, ==, 0.3);
  g_assert_cmpfloat (part_named (fixture, "Transom")->width, ==, 0.4);
}

/* Only the fields of the take-off at hand are there. */
static void
test_inspector_follows_takeoff (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Bottom");
  g_assert_nonnull (editor (fixture, "thickness"));
  g_assert_null (editor (fixture, "mass"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (gb_field_editor_get_input (editor (fixture, "takeoff"))),
                              GB_TAKEOFF_LUMP);
  support_until (part_named (fixture, "Bottom")->takeoff == GB_TAKEOFF_LUMP);
  g_assert_nonnull (editor (fixture, "mass"));
  g_assert_null (editor (fixture, "thickness"));
  go_to (fixture, "Hull");
  g_assert_null (editor (fixture, "takeoff"));
  g_assert_nonnull (editor (fixture, "turn_z"));
}

static void
test_scale (Fixture *fixture, gconstpointer data)
{
  const GbMass *mass;

  go_to (fixture, "Bottom");
  gtk_widget_grab_focus (
    GTK_WIDGET (gtk_widget_get_next_sibling (find_words (fixture->support->page, "Scale says"))));
  support_type (fixture->support, "5.4");
  support_keys (fixture->support, "Return");
  support_until (gb_boat_n (gb_project_get_boat (fixture->support->project), GB_RECORD_WEIGHING) == 1);
  mass = gb_rollup_part (&gb_project_get_findings (fixture->support->project)->rollup,
                         part_named (fixture, "Bottom"));
  g_assert_cmpfloat_with_epsilon (mass->mass, 5.4, 1e-9);
  g_assert_true (page_says (fixture, "the take-off said 6 kg"));
  g_assert_cmpstr (
    support_cell (fixture->grid, GB_RECORD_PART, support_part (fixture->support, "Bottom"), "basis"), ==,
    "A");
}

/* Groups and what is unknown ----------------------------------------------------------------------------- */

static void
test_group (Fixture *fixture, gconstpointer data)
{
  gint64 ids[2] = { support_part (fixture->support, "Side"), support_part (fixture->support, "Transom") };
  gint64 group;

  gb_grid_select (fixture->grid, ids, 2);
  act (fixture, "parts.group");
  support_until (support_is_editing (fixture->support));
  group = part_named (fixture, "Side")->rec.owner;
  g_assert_cmpint (group, !=, support_part (fixture->support, "Hull"));
  g_assert_cmpint (gb_boat_part (gb_project_get_boat (fixture->support->project), group)->rec.owner, ==,
                   support_part (fixture->support, "Hull"));
  support_type (fixture->support, "Upper");
  support_keys (fixture->support, "Return");
  support_until (support_part (fixture->support, "Upper") == group);
  g_assert_true (gb_project_undo (fixture->support->project, NULL));
  g_assert_true (gb_project_undo (fixture->support->project, NULL));
  g_assert_cmpint (part_named (fixture, "Transom")->rec.owner, ==, support_part (fixture->support, "Hull"));
  g_assert_null (gb_project_get_undo_words (fixture->support->project));
}

static void
test_new_group (Fixture *fixture, gconstpointer data)
{
  go_to (fixture, "Mast");
  act (fixture, "parts.add-group");
  support_until (support_is_editing (fixture->support));
  support_type (fixture->support, "Sails");
  support_keys (fixture->support, "Return");
  support_until (support_part (fixture->support, "Sails") != 0);
  g_assert_cmpint (part_named (fixture, "Sails")->kind, ==, GB_KIND_GROUP);
  g_assert_cmpint (part_named (fixture, "Sails")->rec.owner, ==, support_part (fixture->support, "Rig"));
}

static void
test_next_unknown (Fixture *fixture, gconstpointer data)
{
  guint n;
  g_autofree gint64 *ids = NULL;

  g_assert_true (page_says (fixture, "1 without a mass"));
  act (fixture, "parts.next-unknown");
  ids = gb_grid_dup_selected (fixture->grid, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (ids[0], ==, support_part (fixture->support, "Lantern"));
  /* The cell that lacks something has the cursor: a lump's mass is its amount. */
  support_type (fixture->support, "0.8");
  support_until (support_is_editing (fixture->support));
  support_keys (fixture->support, "Return");
  support_until (part_named (fixture, "Lantern")->mass == 0.8);
  g_assert_false (page_says (fixture, "without a mass"));
  g_assert_true (page_says (fixture, "1 without a place"));
}

/* Outlines ----------------------------------------------------------------------------------------------- */

static GbOutlineEditor *
open_outline (Fixture *fixture)
{
  GtkWindow *window = NULL;

  go_to (fixture, "Side");
  g_signal_emit_by_name (gb_field_editor_get_input (editor (fixture, "outline")), "clicked");
  for (guint i = 0; i < g_list_model_get_n_items (gtk_window_get_toplevels ()); i++)
    {
      g_autoptr (GtkWindow) top = g_list_model_get_item (gtk_window_get_toplevels (), i);

      if (GB_IS_OUTLINE_EDITOR (top))
        window = top;
    }
  g_assert_nonnull (window);
  support_until (gtk_widget_get_mapped (GTK_WIDGET (window))
                 && gtk_widget_get_width (GTK_WIDGET (window)) > 0);
  support_wait_for_draw (GTK_WIDGET (window));
  support_focus (fixture->support, window);
  return GB_OUTLINE_EDITOR (window);
}

static void
test_outline_typed (Fixture *fixture, gconstpointer data)
{
  GbOutlineEditor *window = open_outline (fixture);
  GtkTextBuffer *buffer = gb_outline_editor_get_buffer (window);
  GtkWidget *words;

  /* A ring that crosses itself is said to, and cannot be kept. */
  gtk_text_buffer_set_text (buffer, "0 0\n1000 400\n1000 0\n0 400\n", -1);
  g_assert_false (gtk_widget_is_sensitive (find_words (GTK_WIDGET (window), "Keep")));
  /* 1 m x 0.4 m with a hole of 0.1 m x 0.1 m: 0.39 m2. */
  gtk_text_buffer_set_text (buffer, "0 0\n1000 0\n1 m 400 mm\n0 400\n\n100 100\n200 100\n200 200\n100 200\n",
                            -1);
  words = find_words (GTK_WIDGET (window), "0.39 m²");
  g_assert_nonnull (words);
  g_signal_emit_by_name (gtk_widget_get_ancestor (find_words (GTK_WIDGET (window), "Keep"), GTK_TYPE_BUTTON),
                         "clicked");
  support_until (part_named (fixture, "Side")->outline != NULL);
  /* 0.39 x 0.006 x 500 */
  support_until (page_says (fixture, "1.17 kg"));
}

static void
test_outline_drawn (Fixture *fixture, gconstpointer data)
{
  GbOutlineEditor *window = open_outline (fixture);
  GbOutlineView *view = GB_OUTLINE_VIEW (gb_outline_editor_get_drawing (window));
  GbPoint corner;

  gtk_text_buffer_set_text (gb_outline_editor_get_buffer (window), "0 0\n1000 0\n1000 400\n0 400\n", -1);
  support_wait_for_draw (GTK_WIDGET (window));
  /* A click near the middle of the lower edge adds a point between its ends. */
  support_click (fixture->support, GTK_WIDGET (view), 0.5, 0.9, 1);
  support_until (gb_shape_n_points (gb_outline_view_get_shape (view), 0) == 5);
  corner = gb_shape_point (gb_outline_view_get_shape (view), 0, 1);
  g_assert_cmpfloat_with_epsilon (corner.x, 0.5, 0.05);
  g_assert_cmpfloat (corner.y, <, 0);
  support_keys (fixture->support, "Up");
  support_until (gb_shape_point (gb_outline_view_get_shape (view), 0, 1).y > corner.y);
  support_keys (fixture->support, "Delete");
  support_until (gb_shape_n_points (gb_outline_view_get_shape (view), 0) == 4);
  gtk_window_destroy (GTK_WINDOW (window));
  g_assert_null (part_named (fixture, "Side")->outline);
}

/* Windows ------------------------------------------------------------------------------------------------ */

static void
test_empty (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (Support) support = support_new_for (boat);

  support_show (support, gb_parts_page_new (), 900, 600);
  support_picture (support, "parts-empty");
  g_assert_nonnull (find_words (support->page, "No parts yet"));
  gtk_widget_activate_action (support->page, "parts.add", NULL);
  support_until (support_is_editing (support));
  support_type (support, "Keel");
  support_keys (support, "Return");
  support_until (support_part (support, "Keel") != 0);
}

static void
test_between_builds (Fixture *fixture, gconstpointer data)
{
  g_autoptr (Support) other = support_new (NULL);
  GbGrid *grid;
  guint before;

  go_to (fixture, "Hull");
  gb_grid_copy (fixture->grid);
  support_show (other, gb_parts_page_new (), 900, 600);
  grid = gb_parts_page_get_grid (GB_PARTS_PAGE (other->page));
  before = gb_boat_n (gb_project_get_boat (other->project), GB_RECORD_PART);
  gb_parts_page_show_part (GB_PARTS_PAGE (other->page), support_part (other, "Lantern"));
  gb_grid_paste (grid);
  support_until (gb_boat_n (gb_project_get_boat (other->project), GB_RECORD_PART) == before + 4);
  /* The material is matched by its name. */
  g_assert_cmpuint (gb_boat_n (gb_project_get_boat (other->project), GB_RECORD_MATERIAL), ==, 1);
}

static void
test_narrow (Fixture *fixture, gconstpointer data)
{
  GbSidePane *pane = GB_SIDE_PANE (support_find (fixture->support->page, GB_TYPE_SIDE_PANE));

  g_assert_false (gb_side_pane_is_folded (pane));
  g_assert_true (gb_side_pane_get_revealed (pane));
  gtk_window_set_default_size (fixture->support->window, 800, 600);
  support_until (gb_side_pane_is_folded (pane));
  g_assert_false (gb_side_pane_get_revealed (pane));
  act (fixture, "parts.inspector");
  g_assert_true (gb_side_pane_get_revealed (pane));
  go_to (fixture, "Bottom");
  support_picture (fixture->support, "parts-folded");
  gtk_window_set_default_size (fixture->support->window, 1200, 760);
  support_until (!gb_side_pane_is_folded (pane));
  g_assert_true (gb_side_pane_get_revealed (pane));
}

static void
test_pictures (void)
{
  static const struct
  {
    const char *name;
    int width, height;
  } sizes[] = { { "parts-1280", 1280, 800 }, { "parts-900", 900, 600 } };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (Support) support = support_new ("plover");

      support_show (support, gb_parts_page_new (), sizes[i].width, sizes[i].height);
      gb_parts_page_show_part (GB_PARTS_PAGE (support->page), support_part (support, "Bottom panel"));
      support_picture (support, sizes[i].name);
    }
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/parts/facts", test_facts);
  ADD ("/parts/facts-of-all-count-once", test_facts_of_all_count_once);
  ADD ("/parts/inspector-edits", test_inspector_edits);
  ADD ("/parts/inspector-of-several", test_inspector_of_several);
  ADD ("/parts/inspector-follows-takeoff", test_inspector_follows_takeoff);
  ADD ("/parts/scale", test_scale);
  ADD ("/parts/group", test_group);
  ADD ("/parts/new-group", test_new_group);
  ADD ("/parts/next-unknown", test_next_unknown);
  ADD ("/parts/outline-typed", test_outline_typed);
  ADD ("/parts/outline-drawn", test_outline_drawn);
  g_test_add_func ("/parts/empty", test_empty);
  ADD ("/parts/between-builds", test_between_builds);
  ADD ("/parts/narrow", test_narrow);
  g_test_add_func ("/parts/pictures", test_pictures);
  return g_test_run ();
}
