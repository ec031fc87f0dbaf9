/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-chart-host"

#include "chart-host.h"

#include <math.h>

typedef struct
{
  GbChartArea *area; /* weak */
  GbChartKind kind;
  gboolean stale;
} Slot;

struct _GbChartHost
{
  GObject parent_instance;

  GbProject *project;
  GPtrArray *slots; /* of Slot */
  gint64 *selected;
};

G_DEFINE_FINAL_TYPE (GbChartHost, gb_chart_host, G_TYPE_OBJECT)

static void
slot_free (gpointer data)
{
  Slot *slot = data;

  g_clear_weak_pointer (&slot->area);
  g_free (slot);
}

static void
refresh (GbChartHost *self, Slot *slot)
{
  g_autoptr (GbChart) chart = NULL;

  if (slot->area == NULL || !slot->stale || !gtk_widget_get_mapped (GTK_WIDGET (slot->area)))
    return;
  slot->stale = FALSE;
  if (self->project != NULL)
    {
      const GbChartSource source = {
        .boat = gb_project_get_boat (self->project),
        .findings = gb_project_get_findings (self->project),
        .history = slot->kind == GB_CHART_HISTORY ? gb_project_get_history (self->project) : NULL,
        .selected = self->selected,
        .moved_to = { NAN, NAN, NAN },
      };

      chart = gb_chart_new (slot->kind, &source);
    }
  gb_chart_area_set_chart (slot->area, chart, slot->kind);
}

static void
spoil (GbChartHost *self)
{
  for (guint i = 0; i < self->slots->len; i++)
    {
      Slot *slot = self->slots->pdata[i];

      slot->stale = TRUE;
      refresh (self, slot);
    }
}

static void
area_mapped_cb (GtkWidget *area, GbChartHost *self)
{
  for (guint i = 0; i < self->slots->len; i++)
    if (((Slot *) self->slots->pdata[i])->area == GB_CHART_AREA (area))
      refresh (self, self->slots->pdata[i]);
}

void
gb_chart_host_add (GbChartHost *self, GbChartArea *area, GbChartKind kind)
{
  Slot *slot = g_new0 (Slot, 1);

  g_return_if_fail (GB_IS_CHART_HOST (self));
  g_return_if_fail (GB_IS_CHART_AREA (area));

  g_set_weak_pointer (&slot->area, area);
  slot->kind = kind;
  slot->stale = TRUE;
  g_ptr_array_add (self->slots, slot);
  g_signal_connect_object (area, "map", G_CALLBACK (area_mapped_cb), self, G_CONNECT_AFTER);
}

void
gb_chart_host_set_project (GbChartHost *self, GbProject *project)
{
  g_return_if_fail (GB_IS_CHART_HOST (self));

  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_set_object (&self->project, project);
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (spoil), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (project, "history-found", G_CALLBACK (spoil), self, G_CONNECT_SWAPPED);
    }
  spoil (self);
}

void
gb_chart_host_set_selected (GbChartHost *self, const gint64 *selected)
{
  gsize n = 0;

  g_return_if_fail (GB_IS_CHART_HOST (self));

  g_clear_pointer (&self->selected, g_free);
  if (selected != NULL)
    {
      while (selected[n] != 0)
        n++;
      self->selected = g_memdup2 (selected, (n + 1) * sizeof *selected);
    }
  spoil (self);
}

static void
gb_chart_host_dispose (GObject *object)
{
  GbChartHost *self = GB_CHART_HOST (object);

  if (self->project != NULL)
    g_signal_handlers_disconnect_by_data (self->project, self);
  g_clear_object (&self->project);
  g_ptr_array_set_size (self->slots, 0);
  G_OBJECT_CLASS (gb_chart_host_parent_class)->dispose (object);
}

static void
gb_chart_host_finalize (GObject *object)
{
  GbChartHost *self = GB_CHART_HOST (object);

  g_ptr_array_unref (self->slots);
  g_free (self->selected);
  G_OBJECT_CLASS (gb_chart_host_parent_class)->finalize (object);
}

static void
gb_chart_host_class_init (GbChartHostClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_chart_host_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_chart_host_finalize;
}

static void
gb_chart_host_init (GbChartHost *self)
{
  self->slots = g_ptr_array_new_with_free_func (slot_free);
}

GbChartHost *
gb_chart_host_new (void)
{
  return g_object_new (GB_TYPE_CHART_HOST, NULL);
}
