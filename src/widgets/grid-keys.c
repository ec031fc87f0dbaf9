/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-keys"

/* Keys. The list view's own keys are not those of a table, so one controller in the capture phase
 * sees every key first, finds the cell that the focus is in, and says whether it used the key. While an
 * editor is open it gets what is left. */

#include "grid-private.h"

#define PAGE_ROWS 12

/* The cell at hand. */
typedef struct
{
  GbCell *cell;
  guint position;
  guint column;
  guint n_rows;
} Hand;

static gboolean
find_hand (GbGrid *self, Hand *hand)
{
  hand->cell = gb_grid_focus_cell (self);
  if (hand->cell == NULL || self->rows == NULL)
    return FALSE;
  hand->position = gb_cell_get_position (hand->cell);
  hand->column = gb_cell_get_column (hand->cell);
  hand->n_rows = g_list_model_get_n_items (G_LIST_MODEL (self->rows));
  return hand->position != GTK_INVALID_LIST_POSITION;
}

/* Moving ------------------------------------------------------------------------------------------------- */

static void
move_rows (GbGrid *self, const Hand *hand, int by, gboolean extend)
{
  int to = CLAMP ((int) hand->position + by, 0, (int) hand->n_rows - 1);

  gb_grid_move_to (self, (guint) to, hand->column, extend);
}

/* The place of @column among those shown. */
static guint
place_among (const GArray *shown, guint column)
{
  for (guint i = 0; i < shown->len; i++)
    if (g_array_index (shown, guint, i) == column)
      return i;
  return 0;
}

static void
move_sideways (GbGrid *self, const Hand *hand, int by)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  int at = CLAMP ((int) place_among (shown, hand->column) + by, 0, (int) shown->len - 1);

  gb_grid_move_to (self, hand->position, g_array_index (shown, guint, at), FALSE);
}

static void
move_to_edge (GbGrid *self, const Hand *hand, gboolean last, gboolean rows, gboolean extend)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  guint column = g_array_index (shown, guint, last ? shown->len - 1 : 0);

  if (rows)
    gb_grid_move_to (self, last ? hand->n_rows - 1 : 0, hand->column, extend);
  else
    gb_grid_move_to (self, hand->position, column, extend);
}

/* To the next cell that may be edited, in reading order. FALSE if there is none. */
static gboolean
move_on (GbGrid *self, guint position, guint column, int by)
{
  g_autoptr (GArray) shown = gb_grid_shown_columns (self);
  int at = (int) place_among (shown, column) + by;
  int row_at = (int) position;
  int n_rows = (int) g_list_model_get_n_items (G_LIST_MODEL (self->rows));

  for (; row_at >= 0 && row_at < n_rows; row_at += by)
    {
      g_autoptr (GbGridRow) row = gb_grid_dup_row (self, (guint) row_at);

      for (; at >= 0 && at < (int) shown->len; at += by)
        {
          guint index = g_array_index (shown, guint, at);

          if (gb_grid_can_edit (self, gb_grid_column (self, index), row))
            {
              gb_grid_move_to (self, (guint) row_at, index, FALSE);
              return TRUE;
            }
        }
      at = by > 0 ? 0 : (int) shown->len - 1;
    }
  return FALSE;
}

/* Out of the table, past all its cells. */
static void
leave (GbGrid *self, GtkDirectionType direction)
{
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));

  gtk_widget_set_can_focus (GTK_WIDGET (self->view), FALSE);
  gtk_widget_child_focus (root, direction);
  gtk_widget_set_can_focus (GTK_WIDGET (self->view), TRUE);
}

/* Opens or closes the group at hand; from what cannot be closed, goes up to the group. */
static gboolean
open_or_close (GbGrid *self, const Hand *hand, gboolean open)
{
  g_autoptr (GbGridRow) row = gb_grid_dup_row (self, hand->position);
  guint position;

  if (self->type->kind != GB_RECORD_PART)
    return FALSE;
  if (gb_grid_row_can_open (row))
    {
      gb_grid_rows_set_open (self->rows, row, open);
      if (gb_grid_position_of (self, row, &position))
        gb_grid_move_to (self, position, hand->column, FALSE);
      return TRUE;
    }
  for (guint i = hand->position; !open && i > 0; i--)
    {
      g_autoptr (GbGridRow) above = gb_grid_dup_row (self, i - 1);

      if (gb_grid_row_get_depth (above) < gb_grid_row_get_depth (row))
        {
          gb_grid_move_to (self, i - 1, hand->column, FALSE);
          return TRUE;
        }
    }
  return TRUE;
}

/* Keys --------------------------------------------------------------------------------------------------- */

/* Ends the entry and goes on from its row, which may be a new one by now. */
static gboolean
commit_and_move (GbGrid *self, int rows, int cells)
{
  Hand hand;

  if (!gb_grid_commit (self))
    return GDK_EVENT_STOP;
  if (!find_hand (self, &hand))
    return GDK_EVENT_STOP;
  if (rows != 0)
    move_rows (self, &hand, rows, FALSE);
  else if (cells != 0)
    move_on (self, hand.position, hand.column, cells);
  return GDK_EVENT_STOP;
}

static gboolean
key_while_editing (GbGrid *self, guint keyval, GdkModifierType state)
{
  if (gb_cell_choices_key (self->edit_cell, keyval, state))
    return GDK_EVENT_STOP;
  switch (keyval)
    {
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      if ((state & GDK_CONTROL_MASK) != 0)
        {
          if (gb_grid_commit (self))
            gb_grid_new_row (self, GB_KIND_PART);
          return GDK_EVENT_STOP;
        }
      return commit_and_move (self, 0, (state & GDK_SHIFT_MASK) != 0 ? -1 : 1);
    case GDK_KEY_Tab:
      return (state & GDK_CONTROL_MASK) != 0 ? GDK_EVENT_PROPAGATE : commit_and_move (self, 0, 1);
    case GDK_KEY_ISO_Left_Tab:
      return commit_and_move (self, 0, -1);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return commit_and_move (self, -1, 0);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return commit_and_move (self, 1, 0);
    case GDK_KEY_Escape:
      gb_grid_cancel_edit (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
key_moves (GbGrid *self, const Hand *hand, guint keyval, GdkModifierType state)
{
  gboolean extend = (state & GDK_SHIFT_MASK) != 0;
  gboolean control = (state & GDK_CONTROL_MASK) != 0;

  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      move_rows (self, hand, -1, extend);
      return TRUE;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      move_rows (self, hand, 1, extend);
      return TRUE;
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      move_rows (self, hand, -PAGE_ROWS, extend);
      return TRUE;
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      move_rows (self, hand, PAGE_ROWS, extend);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      move_sideways (self, hand, -1);
      return TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      move_sideways (self, hand, 1);
      return TRUE;
    case GDK_KEY_Home:
    case GDK_KEY_KP_Home:
      move_to_edge (self, hand, FALSE, control, extend);
      return TRUE;
    case GDK_KEY_End:
    case GDK_KEY_KP_End:
      move_to_edge (self, hand, TRUE, control, extend);
      return TRUE;
    default:
      return FALSE;
    }
}

/* On a cell that is picked from a list, Alt+Down is the usual key for the list. */
static gboolean
open_choices (GbGrid *self, const Hand *hand)
{
  const GbField *field = gb_grid_column (self, hand->column)->field;

  if (field == NULL || !gb_field_has_choices (field)
      || !gb_grid_start_edit (self, hand->position, hand->column, NULL))
    return FALSE;
  gb_cell_open_choices (self->edit_cell);
  return TRUE;
}

static gboolean
key_with_alt (GbGrid *self, const Hand *hand, guint keyval)
{
  switch (keyval)
    {
    case GDK_KEY_Up:
      gb_grid_move_rows (self, -1);
      return TRUE;
    case GDK_KEY_Down:
      if (!open_choices (self, hand))
        gb_grid_move_rows (self, 1);
      return TRUE;
    case GDK_KEY_Right:
      gb_grid_indent (self, TRUE);
      return TRUE;
    case GDK_KEY_Left:
      gb_grid_indent (self, FALSE);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
new_part (GbGrid *self)
{
  gb_grid_new_row (self, GB_KIND_PART);
}

static void
toggle_selected (GbGrid *self, guint position)
{
  GtkSelectionModel *selection = GTK_SELECTION_MODEL (self->selection);

  if (gtk_selection_model_is_selected (selection, position))
    gtk_selection_model_unselect_item (selection, position);
  else
    gtk_selection_model_select_item (selection, position, FALSE);
}

/* The verbs that Ctrl and a key stand for. */
static gboolean
control_verb (GbGrid *self, guint keyval)
{
  static const struct
  {
    guint keyval;
    void (*verb) (GbGrid *self);
  } verbs[] = {
    { GDK_KEY_Return, new_part },     { GDK_KEY_KP_Enter, new_part }, { GDK_KEY_a, gb_grid_select_all },
    { GDK_KEY_c, gb_grid_copy },      { GDK_KEY_x, gb_grid_cut },     { GDK_KEY_v, gb_grid_paste },
    { GDK_KEY_d, gb_grid_duplicate }, { GDK_KEY_f, gb_grid_find },
  };

  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (verbs[i].keyval == gdk_keyval_to_lower (keyval))
      {
        verbs[i].verb (self);
        return TRUE;
      }
  return FALSE;
}

static gboolean
key_with_control (GbGrid *self, const Hand *hand, guint keyval, GdkModifierType state)
{
  gboolean shift = (state & GDK_SHIFT_MASK) != 0;

  switch (keyval)
    {
    case GDK_KEY_Right:
    case GDK_KEY_Left:
      if (!shift)
        return open_or_close (self, hand, keyval == GDK_KEY_Right);
      gb_grid_open_groups (self, keyval == GDK_KEY_Right);
      return TRUE;
    case GDK_KEY_Tab:
    case GDK_KEY_ISO_Left_Tab:
      leave (self, shift ? GTK_DIR_TAB_BACKWARD : GTK_DIR_TAB_FORWARD);
      return TRUE;
    case GDK_KEY_space:
      toggle_selected (self, hand->position);
      return TRUE;
    default:
      /* With Shift these keys are the page's. */
      return !shift && control_verb (self, keyval);
    }
}

static gboolean
enter_cell (GbGrid *self, const Hand *hand, int by)
{
  g_autoptr (GbGridRow) row = gb_grid_dup_row (self, hand->position);

  if (by > 0 && gb_grid_row_is_blank (row))
    return gb_grid_start_edit (self, hand->position, gb_grid_main_column (self), NULL);
  return move_on (self, hand->position, hand->column, by);
}

static gboolean
key_plain (GbGrid *self, const Hand *hand, guint keyval, GdkModifierType state)
{
  gboolean on_group = hand->column == gb_grid_main_column (self);

  switch (keyval)
    {
    case GDK_KEY_Tab:
      return move_on (self, hand->position, hand->column, 1);
    case GDK_KEY_ISO_Left_Tab:
      return move_on (self, hand->position, hand->column, -1);
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
      return enter_cell (self, hand, (state & GDK_SHIFT_MASK) != 0 ? -1 : 1);
    case GDK_KEY_F2:
      gb_grid_start_edit (self, hand->position, hand->column, NULL);
      return TRUE;
    case GDK_KEY_space:
      gb_grid_open_cell (self, hand->position, hand->column);
      return TRUE;
    case GDK_KEY_BackSpace:
      return gb_grid_start_edit (self, hand->position, hand->column, "");
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
      gb_grid_remove (self);
      return TRUE;
    case GDK_KEY_plus:
    case GDK_KEY_KP_Add:
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      return on_group && open_or_close (self, hand, keyval == GDK_KEY_plus || keyval == GDK_KEY_KP_Add);
    default:
      return FALSE;
    }
}

/* A letter or a figure replaces what is in the cell: the editor opens empty and gets the key as if it had
 * been there. */
static gboolean
type_into (GbGrid *self, const Hand *hand, guint keyval, GtkEventController *keys)
{
  gunichar c = gdk_keyval_to_unicode (keyval);
  gboolean composes = keyval >= GDK_KEY_dead_grave && keyval <= GDK_KEY_dead_greek;
  GbColumn *column = gb_grid_column (self, hand->column);

  if ((c == 0 || !g_unichar_isprint (c)) && !composes)
    return FALSE;
  if (column->field != NULL && column->field->dim == GB_DIM_FLAG)
    return FALSE;
  if (!gb_grid_start_edit (self, hand->position, hand->column, ""))
    return FALSE;
  return gtk_event_controller_key_forward (GTK_EVENT_CONTROLLER_KEY (keys),
                                           gb_cell_get_editor (self->edit_cell));
}

/* Below the cell at hand. */
static void
show_menu_at_hand (GbGrid *self, const Hand *hand)
{
  graphene_point_t corner
    = GRAPHENE_POINT_INIT (20, (float) gtk_widget_get_height (GTK_WIDGET (hand->cell)));
  graphene_point_t at;

  if (gtk_widget_compute_point (GTK_WIDGET (hand->cell), GTK_WIDGET (self->view), &corner, &at))
    gb_grid_show_menu (self, at.x, at.y);
}

static gboolean
key_pressed_cb (GbGrid *self, guint keyval, guint keycode, GdkModifierType all_state,
                GtkEventController *keys)
{
  GdkModifierType state = all_state & gtk_accelerator_get_default_mod_mask ();
  GbCell *focus_cell = gb_grid_focus_cell (self);
  Hand hand;

  if (gb_grid_is_editing (self) && focus_cell == self->edit_cell)
    return key_while_editing (self, keyval, state);
  if (!find_hand (self, &hand))
    return GDK_EVENT_PROPAGATE;

  if (keyval == GDK_KEY_Menu || (keyval == GDK_KEY_F10 && (state & GDK_SHIFT_MASK) != 0))
    {
      show_menu_at_hand (self, &hand);
      return GDK_EVENT_STOP;
    }
  if ((state & GDK_ALT_MASK) != 0)
    return key_with_alt (self, &hand, keyval);
  if ((state & GDK_CONTROL_MASK) != 0)
    return key_with_control (self, &hand, keyval, state) || key_moves (self, &hand, keyval, state);
  if ((state & (GDK_SUPER_MASK | GDK_META_MASK | GDK_HYPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  return key_plain (self, &hand, keyval, state) || key_moves (self, &hand, keyval, state)
         || type_into (self, &hand, keyval, keys);
}

void
gb_grid_keys_init (GbGrid *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self->view), keys);
}
