/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-gauge"

#include "gauge.h"

#include <glib/gi18n-lib.h>
#include <math.h>

struct _GbGauge
{
  GtkWidget parent_instance;

  GbGaugeReading reading;

  GtkWidget *button;
  GtkWidget *icon;
  GtkWidget *title;
  GtkWidget *bar;
  GtkWidget *words;
};

G_DEFINE_FINAL_TYPE (GbGauge, gb_gauge, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_PAGE,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

/* How each state looks: an icon and a style class, never one alone. */
static const struct
{
  const char *icon;
  const char *style;
} looks[] = {
  [GB_GAUGE_UNKNOWN] = { "dialog-question-symbolic", "unknown" },
  [GB_GAUGE_WITHIN] = { "emblem-ok-symbolic", "within" },
  [GB_GAUGE_NEAR] = { "dialog-information-symbolic", "near" },
  [GB_GAUGE_PASSED] = { "dialog-warning-symbolic", "passed" },
};

static void
hatch (cairo_t *cr, double x, double width, double height)
{
  cairo_save (cr);
  cairo_rectangle (cr, x, 0, width, height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 1.2);
  for (double at = x - height; at < x + width; at += 4)
    {
      cairo_move_to (cr, at, height);
      cairo_line_to (cr, at + height, 0);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* A stroke with a gap on both sides, so that it is seen within the bar as well. */
static void
draw_limit (cairo_t *cr, double x, double height)
{
  cairo_save (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_rectangle (cr, x - 3.5, 0, 7, height);
  cairo_fill (cr);
  cairo_restore (cr);
  cairo_rectangle (cr, x - 1.5, 0, 3, height);
  cairo_fill (cr);
}

static void
draw_bar_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  const GbGaugeReading *r = &GB_GAUGE (data)->reading;
  double margin = isnan (r->margin) ? 0 : r->margin;
  double full, scale, sum, spread;
  GdkRGBA color;

  if (isnan (r->sure))
    return;
  /* Right to left the bar grows from the other end. */
  if (gtk_widget_get_direction (GTK_WIDGET (area)) == GTK_TEXT_DIR_RTL)
    {
      cairo_translate (cr, width, 0);
      cairo_scale (cr, -1, 1);
    }
  sum = r->sure + margin;
  spread = isnan (r->sd) ? 0 : r->sd;
  full = MAX (sum + spread, isnan (r->limit) ? 0 : r->limit) * 1.05;
  if (!(full > 0))
    return;
  scale = width / full;

  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (area)), &color);
  color.alpha = 0.15;
  gdk_cairo_set_source_rgba (cr, &color);
  cairo_rectangle (cr, 0, 1, width, height - 2);
  cairo_fill (cr);

  color.alpha = 1;
  gdk_cairo_set_source_rgba (cr, &color);
  cairo_rectangle (cr, 0, 1, r->sure * scale, height - 2);
  cairo_fill (cr);
  hatch (cr, r->sure * scale, margin * scale, height);

  if (spread > 0)
    {
      cairo_set_line_width (cr, 1);
      cairo_move_to (cr, (sum - spread) * scale, height / 2.0);
      cairo_line_to (cr, (sum + spread) * scale, height / 2.0);
      cairo_move_to (cr, (sum + spread) * scale, 2);
      cairo_line_to (cr, (sum + spread) * scale, height - 2);
      cairo_stroke (cr);
    }
  if (!isnan (r->limit))
    draw_limit (cr, r->limit * scale, height);
}

void
gb_gauge_set (GbGauge *self, const GbGaugeReading *reading, const char *words, const char *tooltip)
{
  g_autofree char *spoken = NULL;

  g_return_if_fail (GB_IS_GAUGE (self));

  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    gtk_widget_remove_css_class (GTK_WIDGET (self), looks[i].style);
  gtk_widget_add_css_class (GTK_WIDGET (self), looks[reading->state].style);
  gtk_image_set_from_icon_name (GTK_IMAGE (self->icon), looks[reading->state].icon);

  self->reading = *reading;
  gtk_label_set_text (GTK_LABEL (self->words), words);
  gtk_widget_set_tooltip_text (self->button, tooltip);
  spoken = g_strdup_printf ("%s: %s", gtk_label_get_text (GTK_LABEL (self->title)), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_set_visible (self->bar, !isnan (reading->sure));
  gtk_widget_queue_draw (self->bar);
}

const char *
gb_gauge_get_words (GbGauge *self)
{
  g_return_val_if_fail (GB_IS_GAUGE (self), NULL);
  return gtk_label_get_text (GTK_LABEL (self->words));
}

GbGaugeState
gb_gauge_get_state (GbGauge *self)
{
  g_return_val_if_fail (GB_IS_GAUGE (self), GB_GAUGE_UNKNOWN);
  return self->reading.state;
}

static void
gb_gauge_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  GbGauge *self = GB_GAUGE (object);

  switch (id)
    {
    case PROP_TITLE:
      gtk_label_set_text (GTK_LABEL (self->title), g_value_get_string (value));
      break;
    case PROP_PAGE:
      gtk_actionable_set_action_name (GTK_ACTIONABLE (self->button), "win.page");
      gtk_actionable_set_action_target (GTK_ACTIONABLE (self->button), "s", g_value_get_string (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_gauge_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GB_TYPE_GAUGE);
  G_OBJECT_CLASS (gb_gauge_parent_class)->dispose (object);
}

static void
gb_gauge_class_init (GbGaugeClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = gb_gauge_set_property;
  object_class->dispose = gb_gauge_dispose;

  /* Both are set once, from the template. */
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, "", G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_PAGE] = g_param_spec_string ("page", NULL, NULL, "", G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/gauge.ui");
  gtk_widget_class_bind_template_child (widget_class, GbGauge, button);
  gtk_widget_class_bind_template_child (widget_class, GbGauge, icon);
  gtk_widget_class_bind_template_child (widget_class, GbGauge, title);
  gtk_widget_class_bind_template_child (widget_class, GbGauge, bar);
  gtk_widget_class_bind_template_child (widget_class, GbGauge, words);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gauge");
}

static void
gb_gauge_init (GbGauge *self)
{
  self->reading = (GbGaugeReading){ GB_GAUGE_UNKNOWN, NAN, NAN, NAN, NAN };
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->bar), draw_bar_cb, self, NULL);
}
