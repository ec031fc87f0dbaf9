/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-chart-drag"

#include "chart-drag.h"

/* A press tells what is under it; a movement past the toolkit's threshold begins a drag, if somebody takes
 * it; Escape or a touch that is lost lets it go. The chart may be another one at each motion, as what is
 * drawn follows the drag, and its scale may change with it. Each point is read in the chart that was pressed,
 * and in the view that was: so the same movement of the hand is always the same in the boat. */

typedef enum
{
  DRAG_NONE,
  DRAG_PRESSED, /* not past the threshold yet */
  DRAG_ON,
} DragState;

typedef struct
{
  GbChartArea *area; /* the drawing's, so it outlives this */
  GtkWidget *drawing;
  DragState state;
  GbChartSpot pressed;
  GbChart *chart; /* as it was when it was pressed, and its size; NULL before that */
  int width, height;
} Drag;

static void
drag_free (gpointer data)
{
  Drag *self = data;

  g_clear_pointer (&self->chart, gb_chart_unref);
  g_free (self);
}

/* What is shown now. */
static gboolean
locate (Drag *self, double x, double y, GbChartSpot *spot)
{
  GbChart *chart = gb_chart_area_get_chart (self->area);

  return chart != NULL
         && gb_chart_locate (chart, gtk_widget_get_width (self->drawing),
                             gtk_widget_get_height (self->drawing), x, y, -1, spot);
}

static void
keep_chart (Drag *self)
{
  GbChart *chart = gb_chart_area_get_chart (self->area);

  g_clear_pointer (&self->chart, gb_chart_unref);
  self->chart = gb_chart_ref (chart);
  self->width = gtk_widget_get_width (self->drawing);
  self->height = gtk_widget_get_height (self->drawing);
}

static void
end (Drag *self, gboolean kept)
{
  gboolean was_on = self->state == DRAG_ON;

  self->state = DRAG_NONE;
  if (was_on)
    g_signal_emit_by_name (self->area, "drag-ended", kept);
}

static void
drag_begin_cb (GtkGestureDrag *gesture, double x, double y, Drag *self)
{
  end (self, FALSE);
  gtk_widget_grab_focus (self->drawing);
  if (!locate (self, x, y, &self->pressed))
    return;
  keep_chart (self);
  self->state = DRAG_PRESSED;
  g_signal_emit_by_name (self->area, "spot-pressed", &self->pressed);
}

/* FALSE as long as it is a press alone, or if nobody takes the drag. */
static gboolean
is_dragging (Drag *self, double x, double y, double dx, double dy)
{
  gboolean taken = FALSE;

  if (self->state != DRAG_PRESSED)
    return self->state == DRAG_ON;
  if (!gtk_drag_check_threshold (self->drawing, (int)x, (int)y, (int)(x + dx), (int)(y + dy)))
    return FALSE;
  g_signal_emit_by_name (self->area, "drag-begun", &self->pressed, &taken);
  self->state = taken ? DRAG_ON : DRAG_NONE;
  return taken;
}

static void
drag_update_cb (GtkGestureDrag *gesture, double dx, double dy, Drag *self)
{
  GbChartSpot spot;
  double x, y;

  gtk_gesture_drag_get_start_point (gesture, &x, &y);
  if (is_dragging (self, x, y, dx, dy)
      && gb_chart_locate (self->chart, self->width, self->height, x + dx, y + dy, self->pressed.view, &spot))
    g_signal_emit_by_name (self->area, "drag-moved", &spot);
}

static void
drag_end_cb (GtkGestureDrag *gesture, double dx, double dy, Drag *self)
{
  end (self, TRUE);
}

static void
cancel_cb (GtkGesture *gesture, GdkEventSequence *sequence, Drag *self)
{
  end (self, FALSE);
}

/* What may be dragged is seen by the pointer. */
static void
motion_cb (GtkEventControllerMotion *controller, double x, double y, Drag *self)
{
  GbChartSpot spot;
  gboolean loose = locate (self, x, y, &spot) && spot.kind == GB_RECORD_LOAD;

  gtk_widget_set_cursor_from_name (self->drawing, self->state == DRAG_ON ? "grabbing"
                                                  : loose                ? "grab"
                                                                         : NULL);
}

/* Along x with the arrows to the sides, along y with those up and down, along z with the pages. */
static const struct
{
  guint key;
  int x, y, z;
} steps[] = {
  { GDK_KEY_Left, -1, 0, 0 }, { GDK_KEY_Right, 1, 0, 0 },   { GDK_KEY_Up, 0, 1, 0 },
  { GDK_KEY_Down, 0, -1, 0 }, { GDK_KEY_Page_Up, 0, 0, 1 }, { GDK_KEY_Page_Down, 0, 0, -1 },
};

static gboolean
key_cb (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state, Drag *self)
{
  gboolean handled = FALSE;
  int times = (state & GDK_SHIFT_MASK) != 0 ? 10 : 1;

  if (key == GDK_KEY_Escape && self->state != DRAG_NONE)
    {
      end (self, FALSE);
      return GDK_EVENT_STOP;
    }
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0 || self->state != DRAG_NONE)
    return GDK_EVENT_PROPAGATE;
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i].key == key)
      g_signal_emit_by_name (self->area, "nudged", times * steps[i].x, times * steps[i].y, times * steps[i].z,
                             &handled);
  return handled ? GDK_EVENT_STOP : GDK_EVENT_PROPAGATE;
}

void
gb_chart_drag_install (GbChartArea *area, GtkWidget *drawing)
{
  Drag *self = g_new0 (Drag, 1);
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->area = area;
  self->drawing = drawing;
  g_object_set_data_full (G_OBJECT (drawing), "gb-chart-drag", self, drag_free);
  gtk_widget_set_focusable (drawing, TRUE);
  gtk_widget_add_css_class (drawing, "gb-draggable");

  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (drawing, GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (drawing, motion);
  gtk_widget_add_controller (drawing, keys);
}
