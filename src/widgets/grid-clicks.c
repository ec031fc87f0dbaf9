/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-clicks"

/* Clicks, on the whole view in the capture phase: a click anywhere in a cell gives it the focus, a second one
 * opens it; the other button shows the menu of the rows. */

#include "grid-private.h"

static void
pressed_cb (GbGrid *self, int n_press, double x, double y, GtkGesture *click)
{
  GbCell *cell = gb_grid_pick_cell (self, x, y);
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (click))
                          & gtk_accelerator_get_default_mod_mask ();
  g_autoptr (GbGridRow) row = NULL;
  guint position;

  if (cell == NULL || gb_cell_is_editing (cell) || gb_cell_get_item (cell) == NULL)
    return;
  gtk_widget_grab_focus (GTK_WIDGET (cell));
  /* What was being entered is kept or refused by now; a refused entry may have kept the rows from staying as
   * they were. */
  position = gb_cell_get_position (cell);
  if (gb_grid_focus_cell (self) != cell || position == GTK_INVALID_LIST_POSITION)
    return;
  gb_grid_set_cursor (self, cell);
  if ((state & GDK_SHIFT_MASK) == 0)
    self->anchor = position;
  row = gb_grid_dup_row (self, position);
  if (n_press == 2 || (gb_grid_row_is_blank (row) && state == 0))
    {
      gtk_gesture_set_state (click, GTK_EVENT_SEQUENCE_CLAIMED);
      gtk_selection_model_select_item (GTK_SELECTION_MODEL (self->selection), position, TRUE);
      gb_grid_open_cell (self, position, gb_cell_get_column (cell));
    }
}

void
gb_grid_show_menu (GbGrid *self, double x, double y)
{
  GdkRectangle at = { 0, 0, 1, 1 };
  graphene_point_t point = GRAPHENE_POINT_INIT ((float) x, (float) y);
  graphene_point_t own;

  if (self->menu == NULL
      || !gtk_widget_compute_point (GTK_WIDGET (self->view), GTK_WIDGET (self), &point, &own))
    return;
  at.x = (int) own.x;
  at.y = (int) own.y;
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &at);
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

/* The row under the pointer is selected first, unless it is already. */
static void
menu_pressed_cb (GbGrid *self, int n_press, double x, double y, GtkGesture *click)
{
  GbCell *cell = gb_grid_pick_cell (self, x, y);
  guint position;

  if (cell == NULL || gb_cell_is_editing (cell) || !gb_grid_commit (self))
    return;
  position = gb_cell_get_position (cell);
  if (position == GTK_INVALID_LIST_POSITION)
    return;
  gtk_gesture_set_state (click, GTK_EVENT_SEQUENCE_CLAIMED);
  if (!gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->selection), position))
    gb_grid_move_to (self, position, gb_cell_get_column (cell), FALSE);
  gb_grid_show_menu (self, x, y);
}

void
gb_grid_set_menu (GbGrid *self, GMenuModel *menu)
{
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  if (menu == NULL)
    return;
  self->menu = gtk_popover_menu_new_from_model (menu);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
}

static void
add_click (GbGrid *self, guint button, GCallback pressed)
{
  GtkGesture *click = gtk_gesture_click_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), button);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (click), GTK_PHASE_CAPTURE);
  g_signal_connect_object (click, "pressed", pressed, self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self->view), GTK_EVENT_CONTROLLER (click));
}

void
gb_grid_clicks_init (GbGrid *self)
{
  add_click (self, GDK_BUTTON_PRIMARY, G_CALLBACK (pressed_cb));
  add_click (self, GDK_BUTTON_SECONDARY, G_CALLBACK (menu_pressed_cb));
}
