/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-side-pane"

#include "side-pane.h"

/* Below this the two do not fit beside each other. */
#define NARROW_WIDTH 900

struct _GbSidePane
{
  GtkWidget parent_instance;
  GtkWidget *content;
  GtkWidget *side;
  GSettings *settings;
  gboolean revealed;
  gboolean folded;
  guint fold_id; /* an idle: what follows a fold asks for a new layout, which cannot be done within one */
};

enum
{
  PROP_0,
  PROP_CONTENT,
  PROP_SIDE,
  PROP_REVEALED,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (GbSidePane, gb_side_pane, GTK_TYPE_WIDGET)

/* Layout ------------------------------------------------------------------------------------------------- */

static int
side_width (GbSidePane *self)
{
  int minimum;

  if (self->side == NULL || !self->revealed)
    return 0;
  gtk_widget_measure (self->side, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
  return minimum;
}

static gboolean
fold_cb (gpointer user_data)
{
  GbSidePane *self = user_data;
  gboolean narrow = gtk_widget_get_width (GTK_WIDGET (self)) < NARROW_WIDTH;

  self->fold_id = 0;
  if (narrow == self->folded)
    return G_SOURCE_REMOVE;
  self->folded = narrow;
  if (narrow)
    gtk_widget_add_css_class (GTK_WIDGET (self), "folded");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "folded");
  gb_side_pane_set_revealed (self, !narrow && g_settings_get_boolean (self->settings, "inspector"));
  gtk_widget_queue_resize (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

static void
gb_side_pane_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GbSidePane *self = GB_SIDE_PANE (widget);
  int aside = MIN (side_width (self), width);
  GtkAllocation side = { width - aside, 0, aside, height };

  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    side.x = 0;
  if (self->content != NULL)
    {
      GtkAllocation content = { 0, 0, self->folded ? width : width - aside, height };

      if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
        content.x = width - content.width;
      gtk_widget_size_allocate (self->content, &content, -1);
    }
  if (self->side != NULL && self->revealed)
    gtk_widget_size_allocate (self->side, &side, -1);
  if ((width < NARROW_WIDTH) != self->folded && self->fold_id == 0)
    self->fold_id = g_idle_add (fold_cb, self);
}

static void
gb_side_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  GbSidePane *self = GB_SIDE_PANE (widget);
  int side_minimum = 0, side_natural = 0;

  if (self->content != NULL)
    gtk_widget_measure (self->content, orientation, -1, minimum, natural, NULL, NULL);
  if (self->side == NULL || !self->revealed)
    return;
  gtk_widget_measure (self->side, orientation, -1, &side_minimum, &side_natural, NULL, NULL);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *natural += side_minimum;
  *minimum = MAX (*minimum, side_minimum);
  *natural = MAX (*natural, side_natural);
}

/* The details lie on top of the list. */
static void
gb_side_pane_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  GbSidePane *self = GB_SIDE_PANE (widget);

  if (self->content != NULL)
    gtk_widget_snapshot_child (widget, self->content, snapshot);
  if (self->side != NULL && self->revealed)
    gtk_widget_snapshot_child (widget, self->side, snapshot);
}

/* Properties --------------------------------------------------------------------------------------------- */

gboolean
gb_side_pane_is_folded (GbSidePane *self)
{
  return self->folded;
}

gboolean
gb_side_pane_get_revealed (GbSidePane *self)
{
  return self->revealed;
}

void
gb_side_pane_set_revealed (GbSidePane *self, gboolean revealed)
{
  if (self->revealed == revealed)
    return;
  self->revealed = revealed;
  if (!self->folded && self->fold_id == 0)
    g_settings_set_boolean (self->settings, "inspector", revealed);
  if (self->side != NULL)
    gtk_widget_set_visible (self->side, revealed);
  gtk_widget_queue_resize (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_REVEALED]);
}

static gboolean
side_key_cb (GbSidePane *self, guint keyval)
{
  if (keyval != GDK_KEY_Escape || !self->folded)
    return GDK_EVENT_PROPAGATE;
  gb_side_pane_set_revealed (self, FALSE);
  gtk_widget_child_focus (self->content, GTK_DIR_TAB_FORWARD);
  return GDK_EVENT_STOP;
}

static void
set_child (GbSidePane *self, GtkWidget **place, GtkWidget *child)
{
  g_clear_pointer (place, gtk_widget_unparent);
  *place = child;
  if (child != NULL)
    gtk_widget_set_parent (child, GTK_WIDGET (self));
}

static void
set_side (GbSidePane *self, GtkWidget *side)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  set_child (self, &self->side, side);
  gtk_widget_add_css_class (side, "gb-side");
  gtk_widget_set_visible (side, self->revealed);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (side_key_cb), self);
  gtk_widget_add_controller (side, keys);
}

static void
gb_side_pane_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  GbSidePane *self = GB_SIDE_PANE (object);

  switch (id)
    {
    case PROP_CONTENT:
      g_value_set_object (value, self->content);
      break;
    case PROP_SIDE:
      g_value_set_object (value, self->side);
      break;
    case PROP_REVEALED:
      g_value_set_boolean (value, self->revealed);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_side_pane_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  GbSidePane *self = GB_SIDE_PANE (object);

  switch (id)
    {
    case PROP_CONTENT:
      set_child (self, &self->content, g_value_get_object (value));
      break;
    case PROP_SIDE:
      set_side (self, g_value_get_object (value));
      break;
    case PROP_REVEALED:
      gb_side_pane_set_revealed (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

/* The widget --------------------------------------------------------------------------------------------- */

static void
gb_side_pane_dispose (GObject *object)
{
  GbSidePane *self = GB_SIDE_PANE (object);

  g_clear_handle_id (&self->fold_id, g_source_remove);
  g_clear_pointer (&self->content, gtk_widget_unparent);
  g_clear_pointer (&self->side, gtk_widget_unparent);
  g_clear_object (&self->settings);
  G_OBJECT_CLASS (gb_side_pane_parent_class)->dispose (object);
}

static void
gb_side_pane_class_init (GbSidePaneClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gb_side_pane_dispose;
  object_class->get_property = gb_side_pane_get_property;
  object_class->set_property = gb_side_pane_set_property;
  widget_class->measure = gb_side_pane_measure;
  widget_class->size_allocate = gb_side_pane_size_allocate;
  widget_class->snapshot = gb_side_pane_snapshot;
  gtk_widget_class_set_css_name (widget_class, "gb-side-pane");
  properties[PROP_CONTENT] = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET,
                                                  G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  properties[PROP_SIDE]
    = g_param_spec_object ("side", NULL, NULL, GTK_TYPE_WIDGET, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  properties[PROP_REVEALED] = g_param_spec_boolean (
    "revealed", NULL, NULL, TRUE, G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gb_side_pane_init (GbSidePane *self)
{
  self->settings = g_settings_new ("org.garboard.Garboard");
  self->revealed = g_settings_get_boolean (self->settings, "inspector");
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}
