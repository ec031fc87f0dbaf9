/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-chart-area"

#include "chart-area.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "chart-drag.h"

struct _GbChartArea
{
  GtkWidget parent_instance;

  GbChart *chart;
  GbChartKind kind;

  GtkWidget *overlay;
  GtkWidget *area;
  GtkWidget *menu_button;
  gulong dark_id;
};

G_DEFINE_FINAL_TYPE (GbChartArea, gb_chart_area, GTK_TYPE_WIDGET)

enum
{
  PART_PICKED,
  SPOT_PRESSED,
  DRAG_BEGUN,
  DRAG_MOVED,
  DRAG_ENDED,
  NUDGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* What a chart is saved at, in points: a third of a landscape page. */
#define EXPORT_WIDTH 800
#define EXPORT_HEIGHT 480

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  GbChartArea *self = data;
  gboolean dark = adw_style_manager_get_dark (adw_style_manager_get_default ());

  if (self->chart != NULL)
    gb_chart_draw (self->chart, cr, width, height, dark ? GB_CHART_DARK : GB_CHART_LIGHT);
}

static gboolean
query_tooltip_cb (GtkWidget *area, int x, int y, gboolean keyboard, GtkTooltip *tooltip, gpointer data)
{
  GbChartArea *self = GB_CHART_AREA (gtk_widget_get_ancestor (area, GB_TYPE_CHART_AREA));
  g_autofree char *text = NULL;

  if (self->chart == NULL || keyboard)
    return FALSE;
  text = gb_chart_tooltip (self->chart, gtk_widget_get_width (area), gtk_widget_get_height (area), x, y);
  gtk_tooltip_set_text (tooltip, text);
  return text != NULL;
}

static void
clicked_cb (GtkGestureClick *gesture, int n_press, double x, double y, gpointer data)
{
  GtkWidget *area = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  GbChartArea *self = GB_CHART_AREA (gtk_widget_get_ancestor (area, GB_TYPE_CHART_AREA));
  gint64 id;

  if (self->chart == NULL)
    return;
  id = gb_chart_pick (self->chart, gtk_widget_get_width (area), gtk_widget_get_height (area), x, y);
  if (id == 0)
    return;
  if (n_press == 1)
    g_signal_emit (self, signals[PART_PICKED], 0, id);
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "win.go-to-part", "x", id);
}

/* Export ------------------------------------------------------------------------------------------------------------ */

gboolean
gb_chart_area_export (GbChartArea *self, const char *path, const char *format, GError **error)
{
  g_return_val_if_fail (GB_IS_CHART_AREA (self) && self->chart != NULL, FALSE);
  return gb_chart_export (self->chart, path, format, EXPORT_WIDTH, EXPORT_HEIGHT, GB_CHART_PRINT, error);
}

static void
export_response_cb (GtkNativeDialog *dialog, int response, GbChartArea *self)
{
  const char *format = g_object_get_data (G_OBJECT (dialog), "format");

  if (response == GTK_RESPONSE_ACCEPT && self->chart != NULL)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *path = g_file_get_path (file);
      g_autofree char *told = NULL;
      g_autoptr (GError) error = NULL;

      if (path != NULL && gb_chart_area_export (self, path, format, &error))
        told = g_strdup_printf (_ ("Written to %s"), path);
      else
        told = g_strdup (path != NULL ? error->message : _ ("Pictures can only be written into folders of this machine."));
      gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", told);
    }
  g_object_unref (dialog);
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GbChartArea *self = GB_CHART_AREA (widget);
  const char *format = g_variant_get_string (parameter, NULL);
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (_ ("Save the Picture"), GTK_WINDOW (gtk_widget_get_root (widget)),
                                                              GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  g_autofree char *file_name = g_strdup_printf ("%s.%s", gb_chart_kind_name (self->kind), format);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), file_name);
  g_object_set_data_full (G_OBJECT (dialog), "format", g_strdup (format), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (export_response_cb), self, 0);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, gpointer data)
{
  GbChart *chart = data;
  double width = gtk_print_context_get_width (context);
  double height = gtk_print_context_get_height (context);

  gb_chart_draw (chart, gtk_print_context_get_cairo_context (context), width, MIN (height, width * EXPORT_HEIGHT / EXPORT_WIDTH),
                 GB_CHART_PRINT);
}

static void
unref_chart (gpointer data, GClosure *closure)
{
  gb_chart_unref (data);
}

gboolean
gb_chart_area_print (GbChartArea *self, GtkPrintOperationAction action, const char *export_path, GError **error)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  g_return_val_if_fail (GB_IS_CHART_AREA (self) && self->chart != NULL, FALSE);

  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation, gb_chart_title (self->chart));
  if (export_path != NULL)
    gtk_print_operation_set_export_filename (operation, export_path);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (draw_page_cb), gb_chart_ref (self->chart), unref_chart, 0);
  return gtk_print_operation_run (operation, action, GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, error)
         != GTK_PRINT_OPERATION_RESULT_ERROR;
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GError) error = NULL;

  if (!gb_chart_area_print (GB_CHART_AREA (widget), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, NULL, &error))
    gtk_widget_activate_action (widget, "win.tell", "s", error->message);
}

/* Object ------------------------------------------------------------------------------------------------------------ */

void
gb_chart_area_set_chart (GbChartArea *self, GbChart *chart, GbChartKind kind)
{
  gboolean something;

  g_return_if_fail (GB_IS_CHART_AREA (self));

  if (chart != NULL)
    gb_chart_ref (chart);
  g_clear_pointer (&self->chart, gb_chart_unref);
  self->chart = chart;
  self->kind = kind;

  something = chart != NULL && !gb_chart_is_empty (chart);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "chart.export", something);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "chart.print", something);
  gtk_widget_set_visible (self->menu_button, something);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->area), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  chart != NULL ? gb_chart_title (chart) : "", GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  chart != NULL ? gb_chart_description (chart) : "", -1);
  gtk_widget_queue_draw (self->area);
}

GbChart *
gb_chart_area_get_chart (GbChartArea *self)
{
  g_return_val_if_fail (GB_IS_CHART_AREA (self), NULL);
  return self->chart;
}

void
gb_chart_area_make_draggable (GbChartArea *self)
{
  g_return_if_fail (GB_IS_CHART_AREA (self));
  gb_chart_drag_install (self, self->area);
}

static void
gb_chart_area_dispose (GObject *object)
{
  GbChartArea *self = GB_CHART_AREA (object);

  g_clear_signal_handler (&self->dark_id, adw_style_manager_get_default ());
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_CHART_AREA);
  g_clear_pointer (&self->chart, gb_chart_unref);
  G_OBJECT_CLASS (gb_chart_area_parent_class)->dispose (object);
}

static void
make_signals (GType type)
{
  signals[PART_PICKED] = g_signal_new ("part-picked", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[SPOT_PRESSED] = g_signal_new ("spot-pressed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[DRAG_BEGUN] = g_signal_new ("drag-begun", type, G_SIGNAL_RUN_LAST, 0, g_signal_accumulator_true_handled, NULL, NULL,
                                      G_TYPE_BOOLEAN, 1, G_TYPE_POINTER);
  signals[DRAG_MOVED] = g_signal_new ("drag-moved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[DRAG_ENDED] = g_signal_new ("drag-ended", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[NUDGED] = g_signal_new ("nudged", type, G_SIGNAL_RUN_LAST, 0, g_signal_accumulator_true_handled, NULL, NULL, G_TYPE_BOOLEAN, 3,
                                  G_TYPE_INT, G_TYPE_INT, G_TYPE_INT);
}

static void
gb_chart_area_class_init (GbChartAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_chart_area_dispose;
  make_signals (G_TYPE_FROM_CLASS (klass));

  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/chart-area.ui");
  gtk_widget_class_bind_template_child (widget_class, GbChartArea, overlay);
  gtk_widget_class_bind_template_child (widget_class, GbChartArea, area);
  gtk_widget_class_bind_template_child (widget_class, GbChartArea, menu_button);
  gtk_widget_class_bind_template_callback (widget_class, query_tooltip_cb);
  gtk_widget_class_bind_template_callback (widget_class, clicked_cb);
  gtk_widget_class_install_action (widget_class, "chart.export", "s", export_action);
  gtk_widget_class_install_action (widget_class, "chart.print", NULL, print_action);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "chart-area");
}

static void
gb_chart_area_init (GbChartArea *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->area), draw_cb, self, NULL);
  self->dark_id = g_signal_connect_object (adw_style_manager_get_default (), "notify::dark", G_CALLBACK (gtk_widget_queue_draw),
                                           self->area, G_CONNECT_SWAPPED);
  gtk_widget_set_visible (self->menu_button, FALSE);
}

GtkWidget *
gb_chart_area_new (void)
{
  return g_object_new (GB_TYPE_CHART_AREA, NULL);
}
