/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-outline-view"

#include "outline-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/quantity.h"

#define EDGE 40   /* pixels round the drawing */
#define REACH 10  /* pixels from a point */
#define MARK 4.5  /* radius of a point */
#define EMPTY 1.0 /* metres shown while there is nothing to show */

struct _GbOutlineView
{
  GtkWidget parent_instance;
  GbUnits units;
  GbShape *shape;
  gboolean has_spot;
  GbShapeSpot spot;   /* the point at hand */
  GbPoint grabbed_at; /* where it was when the drag began */
  gboolean dragging;

  /* The drawing: pixels for a metre, and the outline's point in the middle. Kept still during a drag. */
  double scale;
  GbPoint middle;
};

enum
{
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbOutlineView, gb_outline_view, GTK_TYPE_WIDGET)

/* Scale -------------------------------------------------------------------------------------------------- */

static void
fit (GbOutlineView *self)
{
  double width = MAX (gtk_widget_get_width (GTK_WIDGET (self)) - 2 * EDGE, 1);
  double height = MAX (gtk_widget_get_height (GTK_WIDGET (self)) - 2 * EDGE, 1);
  GbPoint least, most;

  if (self->dragging)
    return;
  if (self->shape == NULL || !gb_shape_bounds (self->shape, &least, &most))
    {
      least = (GbPoint){ 0, 0 };
      most = (GbPoint){ EMPTY, EMPTY / 2 };
    }
  self->scale = MIN (width / MAX (most.x - least.x, 0.05), height / MAX (most.y - least.y, 0.05));
  self->middle = (GbPoint){ (least.x + most.x) / 2, (least.y + most.y) / 2 };
}

graphene_point_t
gb_outline_view_to_widget (GbOutlineView *self, GbPoint point)
{
  double x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0 + (point.x - self->middle.x) * self->scale;
  double y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 - (point.y - self->middle.y) * self->scale;

  return GRAPHENE_POINT_INIT ((float) x, (float) y);
}

GbPoint
gb_outline_view_from_widget (GbOutlineView *self, double x, double y)
{
  return (GbPoint){ self->middle.x + (x - gtk_widget_get_width (GTK_WIDGET (self)) / 2.0) / self->scale,
                    self->middle.y - (y - gtk_widget_get_height (GTK_WIDGET (self)) / 2.0) / self->scale };
}

static double
finest_step (GbOutlineView *self)
{
  return self->units == GB_UNITS_FEET ? 0.0254 / 16 : 0.001;
}

static GbPoint
snap (GbOutlineView *self, GbPoint point)
{
  double step = finest_step (self);

  return (GbPoint){ round (point.x / step) * step, round (point.y / step) * step };
}

/* Drawing ------------------------------------------------------------------------------------------------ */

/* A round step of 1, 2 or 5 that leaves @pixels between lines. */
static double
grid_step (double scale, double pixels)
{
  double least = pixels / scale;
  double power = pow (10, floor (log10 (least)));

  if (power >= least)
    return power;
  if (2 * power >= least)
    return 2 * power;
  return 5 * power >= least ? 5 * power : 10 * power;
}

static double
step_of (GbOutlineView *self)
{
  double unit = self->units == GB_UNITS_FEET ? 0.3048 : 1;

  return grid_step (self->scale * unit, 70) * unit;
}

static void
draw_grid (GbOutlineView *self, cairo_t *cr, const GdkRGBA *color)
{
  double step = step_of (self);
  int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));
  GbPoint low = gb_outline_view_from_widget (self, 0, height);
  GbPoint high = gb_outline_view_from_widget (self, width, 0);

  cairo_set_source_rgba (cr, color->red, color->green, color->blue, 0.12);
  cairo_set_line_width (cr, 1);
  for (double x = ceil (low.x / step) * step; x <= high.x; x += step)
    {
      double at = floor (gb_outline_view_to_widget (self, (GbPoint){ x, 0 }).x) + 0.5;

      cairo_move_to (cr, at, 0);
      cairo_line_to (cr, at, height);
    }
  for (double y = ceil (low.y / step) * step; y <= high.y; y += step)
    {
      double at = floor (gb_outline_view_to_widget (self, (GbPoint){ 0, y }).y) + 0.5;

      cairo_move_to (cr, 0, at);
      cairo_line_to (cr, width, at);
    }
  cairo_stroke (cr);
}

static void
draw_text (GbOutlineView *self, cairo_t *cr, double x, double y, double align, const char *text)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  gtk_render_layout (gtk_widget_get_style_context (GTK_WIDGET (self)), cr, floor (x - align * width),
                     floor (y - height / 2.0), layout);
}

/* How long and how wide it is, below and beside it. */
static void
draw_sizes (GbOutlineView *self, cairo_t *cr)
{
  GbPoint least, most;
  graphene_point_t low, high;
  g_autofree char *across = NULL;
  g_autofree char *up = NULL;

  if (!gb_shape_bounds (self->shape, &least, &most))
    return;
  low = gb_outline_view_to_widget (self, least);
  high = gb_outline_view_to_widget (self, most);
  across = gb_quantity_format (most.x - least.x, GB_DIM_LENGTH, self->units);
  up = gb_quantity_format (most.y - least.y, GB_DIM_LENGTH, self->units);
  draw_text (self, cr, (low.x + high.x) / 2, MIN (low.y + 22, gtk_widget_get_height (GTK_WIDGET (self)) - 10),
             0.5, across);
  cairo_save (cr);
  cairo_translate (cr, MAX (low.x - 22, 10), (low.y + high.y) / 2);
  cairo_rotate (cr, -G_PI / 2);
  draw_text (self, cr, 0, 0, 0.5, up);
  cairo_restore (cr);
}

/* What one square of the grid measures. */
static void
draw_scale (GbOutlineView *self, cairo_t *cr)
{
  g_autofree char *side = gb_quantity_format (step_of (self), GB_DIM_LENGTH, self->units);
  /* Translators: %s is a length. */
  g_autofree char *words = g_strdup_printf (_ ("One square is %s"), side);

  draw_text (self, cr, 8, 12, 0, words);
}

static void
trace_rings (GbOutlineView *self, cairo_t *cr)
{
  for (guint r = 0; r < gb_shape_n_rings (self->shape); r++)
    {
      cairo_new_sub_path (cr);
      for (guint i = 0; i < gb_shape_n_points (self->shape, r); i++)
        {
          graphene_point_t at = gb_outline_view_to_widget (self, gb_shape_point (self->shape, r, i));

          cairo_line_to (cr, at.x, at.y);
        }
      cairo_close_path (cr);
    }
}

static void
draw_points (GbOutlineView *self, cairo_t *cr)
{
  for (guint r = 0; r < gb_shape_n_rings (self->shape); r++)
    for (guint i = 0; i < gb_shape_n_points (self->shape, r); i++)
      {
        graphene_point_t at = gb_outline_view_to_widget (self, gb_shape_point (self->shape, r, i));
        gboolean at_hand = self->has_spot && self->spot.ring == r && self->spot.index == i;

        /* The point at hand is told by its size and its ring, not by colour alone. */
        cairo_arc (cr, at.x, at.y, MARK, 0, 2 * G_PI);
        cairo_fill (cr);
        if (at_hand)
          {
            cairo_arc (cr, at.x, at.y, MARK + 4, 0, 2 * G_PI);
            cairo_stroke (cr);
          }
      }
}

static void
gb_outline_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GbOutlineView *self = GB_OUTLINE_VIEW (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                               (float) gtk_widget_get_height (widget));
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  GdkRGBA color, accent;

  fit (self);
  gtk_style_context_get_color (style, &color);
  if (!gtk_style_context_lookup_color (style, "accent_color", &accent))
    accent = color;
  draw_grid (self, cr, &color);
  draw_scale (self, cr);
  if (self->shape != NULL)
    {
      trace_rings (self, cr);
      cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
      cairo_set_source_rgba (cr, accent.red, accent.green, accent.blue, 0.18);
      cairo_fill_preserve (cr);
      gdk_cairo_set_source_rgba (cr, &accent);
      cairo_set_line_width (cr, 1.5);
      cairo_stroke (cr);
      draw_points (self, cr);
      draw_sizes (self, cr);
    }
  cairo_destroy (cr);
}

/* Editing ------------------------------------------------------------------------------------------------ */

static void
edited (GbOutlineView *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[EDITED], 0);
}

static void
drag_begin_cb (GbOutlineView *self, double x, double y)
{
  GbPoint at = gb_outline_view_from_widget (self, x, y);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->shape == NULL)
    self->shape = gb_shape_new (NULL);
  self->has_spot = gb_shape_find (self->shape, at, REACH / self->scale, &self->spot);
  self->dragging = TRUE;
  if (!self->has_spot)
    {
      self->spot = gb_shape_insert (self->shape, snap (self, at));
      self->has_spot = TRUE;
      edited (self);
    }
  self->grabbed_at = gb_shape_point (self->shape, self->spot.ring, self->spot.index);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_update_cb (GbOutlineView *self, double dx, double dy)
{
  GbPoint to = { self->grabbed_at.x + dx / self->scale, self->grabbed_at.y - dy / self->scale };

  if (!self->has_spot)
    return;
  gb_shape_move (self->shape, self->spot, snap (self, to));
  edited (self);
}

static void
drag_end_cb (GbOutlineView *self, double dx, double dy)
{
  self->dragging = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
gb_outline_view_remove_point (GbOutlineView *self)
{
  if (!self->has_spot)
    return;
  gb_shape_remove (self->shape, self->spot);
  self->has_spot = FALSE;
  edited (self);
}

static gboolean
nudge (GbOutlineView *self, int dx, int dy, GdkModifierType state)
{
  double step = finest_step (self) * ((state & GDK_SHIFT_MASK) != 0 ? 10 : 1);
  GbPoint point;

  if (!self->has_spot)
    return GDK_EVENT_PROPAGATE;
  point = gb_shape_point (self->shape, self->spot.ring, self->spot.index);
  gb_shape_move (self->shape, self->spot, snap (self, (GbPoint){ point.x + dx * step, point.y + dy * step }));
  edited (self);
  return GDK_EVENT_STOP;
}

static gboolean
key_pressed_cb (GbOutlineView *self, guint keyval, guint keycode, GdkModifierType state)
{
  switch (keyval)
    {
    case GDK_KEY_Left:
      return nudge (self, -1, 0, state);
    case GDK_KEY_Right:
      return nudge (self, 1, 0, state);
    case GDK_KEY_Up:
      return nudge (self, 0, 1, state);
    case GDK_KEY_Down:
      return nudge (self, 0, -1, state);
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
    case GDK_KEY_BackSpace:
      gb_outline_view_remove_point (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

/* The widget --------------------------------------------------------------------------------------------- */

static void
gb_outline_view_finalize (GObject *object)
{
  gb_shape_free (GB_OUTLINE_VIEW (object)->shape);
  G_OBJECT_CLASS (gb_outline_view_parent_class)->finalize (object);
}

static void
gb_outline_view_class_init (GbOutlineViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gb_outline_view_finalize;
  widget_class->snapshot = gb_outline_view_snapshot;
  gtk_widget_class_set_css_name (widget_class, "gb-outline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
}

static void
gb_outline_view_init (GbOutlineView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->scale = 1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Drawing of the outline"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  _ ("The points are listed as text beside it and can be edited there."), -1);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
gb_outline_view_new (GbUnits units)
{
  GbOutlineView *self = g_object_new (GB_TYPE_OUTLINE_VIEW, NULL);

  self->units = units;
  return GTK_WIDGET (self);
}

void
gb_outline_view_set_shape (GbOutlineView *self, GbShape *shape)
{
  gb_shape_free (self->shape);
  self->shape = shape;
  self->has_spot = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const GbShape *
gb_outline_view_get_shape (GbOutlineView *self)
{
  return self->shape;
}
