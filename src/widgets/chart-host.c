/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-chart-host"

#include "chart-host.h"

#include "project/project-study.h"

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
  gint64 condition, load;
  const GbAfloat *afloat; /* while the load is dragged; borrowed */
  GbVec3 moved_to;
};

G_DEFINE_FINAL_TYPE (GbChartHost, gb_chart_host, G_TYPE_OBJECT)

#define NOWHERE ((GbVec3){ NAN, NAN, NAN })

static void
slot_free (gpointer data)
{
  Slot *slot = data;

  g_clear_weak_pointer (&slot->area);
  g_free (slot);
}

/* What the chart needs that is dear is asked for only now, when it is on screen. */
static GbChart *
make_chart (GbChartHost *self, GbChartKind kind)
{
  GbChartSource source = {
    .boat = gb_project_get_boat (self->project),
    .findings = gb_project_get_findings (self->project),
    .selected = self->selected,
    .condition = self->condition,
    .afloat = self->afloat,
    .moved = self->load,
    .moved_to = self->moved_to,
  };
  const GbStudy *study = NULL;

  if (kind == GB_CHART_HISTORY)
    source.history = gb_project_get_history (self->project);
  else if (kind == GB_CHART_CREW && self->load != 0)
    source.crew_map = gb_project_get_crew_map (self->project, self->condition, self->load);
  else if (kind == GB_CHART_RIGHTING || kind == GB_CHART_SWAMPED)
    study = gb_project_get_study (self->project, self->condition);
  if (study != NULL)
    {
      source.righting = study->righting;
      source.swamped = study->swamped;
    }
  return gb_chart_new (kind, &source);
}

static void
refresh (GbChartHost *self, Slot *slot)
{
  g_autoptr (GbChart) chart = NULL;

  if (slot->area == NULL || !slot->stale || !gtk_widget_get_mapped (GTK_WIDGET (slot->area)))
    return;
  slot->stale = FALSE;
  if (self->project != NULL)
    chart = make_chart (self, slot->kind);
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

/* A map comes row by row: only what is drawn from such findings is made anew. */
static void
study_found_cb (GbProject *project, gint64 condition, GbChartHost *self)
{
  for (guint i = 0; i < self->slots->len; i++)
    {
      Slot *slot = self->slots->pdata[i];

      if (slot->kind != GB_CHART_CREW && slot->kind != GB_CHART_RIGHTING && slot->kind != GB_CHART_SWAMPED)
        continue;
      slot->stale = TRUE;
      refresh (self, slot);
    }
}

/* The dragged load has been set down, or what it was dragged in is no more. */
static void
changed_cb (GbProject *project, GbChanges *changes, GbChartHost *self)
{
  self->afloat = NULL;
  self->moved_to = NOWHERE;
  spoil (self);
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
  self->condition = self->load = 0;
  self->afloat = NULL;
  if (project != NULL)
    {
      g_signal_connect_object (project, "changed", G_CALLBACK (changed_cb), self, 0);
      g_signal_connect_object (project, "study-found", G_CALLBACK (study_found_cb), self, 0);
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

void
gb_chart_host_set_condition (GbChartHost *self, gint64 condition, gint64 load)
{
  g_return_if_fail (GB_IS_CHART_HOST (self));

  if (self->condition == condition && self->load == load)
    return;
  self->condition = condition;
  self->load = load;
  spoil (self);
}

void
gb_chart_host_set_moved (GbChartHost *self, const GbAfloat *afloat, GbVec3 to)
{
  g_return_if_fail (GB_IS_CHART_HOST (self));

  self->afloat = afloat;
  self->moved_to = afloat != NULL ? to : NOWHERE;
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
  self->moved_to = NOWHERE;
}

GbChartHost *
gb_chart_host_new (void)
{
  return g_object_new (GB_TYPE_CHART_HOST, NULL);
}
