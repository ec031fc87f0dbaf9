/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-side-pane"

#include "side-pane.h"

#include <adwaita.h>

/* Below this the two do not fit beside each other. */
#define NARROW_WIDTH 900

struct _GbSidePane
{
  GtkWidget parent_instance;
  AdwFlap *flap;
  GSettings *settings;
  guint fold_id; /* an idle: folding asks for a new layout, which cannot be done within one */
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

gboolean
gb_side_pane_is_folded (GbSidePane *self)
{
  return adw_flap_get_fold_policy (self->flap) == ADW_FLAP_FOLD_POLICY_ALWAYS;
}

static gboolean
fold_cb (gpointer user_data)
{
  GbSidePane *self = user_data;
  gboolean narrow = gtk_widget_get_width (GTK_WIDGET (self)) < NARROW_WIDTH;

  self->fold_id = 0;
  if (narrow != gb_side_pane_is_folded (self))
    {
      adw_flap_set_fold_policy (self->flap, narrow ? ADW_FLAP_FOLD_POLICY_ALWAYS : ADW_FLAP_FOLD_POLICY_NEVER);
      adw_flap_set_reveal_flap (self->flap, !narrow && g_settings_get_boolean (self->settings, "inspector"));
    }
  return G_SOURCE_REMOVE;
}

static void
gb_side_pane_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GbSidePane *self = GB_SIDE_PANE (widget);

  gtk_widget_allocate (GTK_WIDGET (self->flap), width, height, baseline, NULL);
  if ((width < NARROW_WIDTH) != gb_side_pane_is_folded (self) && self->fold_id == 0)
    self->fold_id = g_idle_add (fold_cb, self);
}

static void
gb_side_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  gtk_widget_measure (GTK_WIDGET (GB_SIDE_PANE (widget)->flap), orientation, for_size, minimum, natural, minimum_baseline,
                      natural_baseline);
}

static void
revealed_cb (GbSidePane *self)
{
  if (!gb_side_pane_is_folded (self))
    g_settings_set_boolean (self->settings, "inspector", adw_flap_get_reveal_flap (self->flap));
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_REVEALED]);
}

gboolean
gb_side_pane_get_revealed (GbSidePane *self)
{
  return adw_flap_get_reveal_flap (self->flap);
}

void
gb_side_pane_set_revealed (GbSidePane *self, gboolean revealed)
{
  adw_flap_set_reveal_flap (self->flap, revealed);
}

static void
gb_side_pane_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  GbSidePane *self = GB_SIDE_PANE (object);

  switch (id)
    {
    case PROP_CONTENT:
      g_value_set_object (value, adw_flap_get_content (self->flap));
      break;
    case PROP_SIDE:
      g_value_set_object (value, adw_flap_get_flap (self->flap));
      break;
    case PROP_REVEALED:
      g_value_set_boolean (value, gb_side_pane_get_revealed (self));
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
      adw_flap_set_content (self->flap, g_value_get_object (value));
      break;
    case PROP_SIDE:
      adw_flap_set_flap (self->flap, g_value_get_object (value));
      break;
    case PROP_REVEALED:
      gb_side_pane_set_revealed (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_side_pane_dispose (GObject *object)
{
  GbSidePane *self = GB_SIDE_PANE (object);

  g_clear_handle_id (&self->fold_id, g_source_remove);
  if (self->flap != NULL)
    g_signal_handlers_disconnect_by_data (self->flap, self);
  if (self->flap != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->flap)));
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
  properties[PROP_CONTENT]
    = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  properties[PROP_SIDE] = g_param_spec_object ("side", NULL, NULL, GTK_TYPE_WIDGET, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  properties[PROP_REVEALED]
    = g_param_spec_boolean ("revealed", NULL, NULL, TRUE, G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gb_side_pane_init (GbSidePane *self)
{
  self->settings = g_settings_new ("org.garboard.Garboard");
  self->flap = g_object_new (ADW_TYPE_FLAP, "flap-position", GTK_PACK_END, "fold-policy", ADW_FLAP_FOLD_POLICY_NEVER, "separator",
                             gtk_separator_new (GTK_ORIENTATION_VERTICAL), "locked", TRUE, "swipe-to-open", FALSE, "reveal-flap",
                             g_settings_get_boolean (self->settings, "inspector"), NULL);
  g_signal_connect_swapped (self->flap, "notify::reveal-flap", G_CALLBACK (revealed_cb), self);
  gtk_widget_set_parent (GTK_WIDGET (self->flap), GTK_WIDGET (self));
}
