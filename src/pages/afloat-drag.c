/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat-drag"

#include "afloat-drag.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "engine/loads.h"
#include "project/words.h"

struct _GbAfloatDrag
{
  GObject parent_instance;

  GbProject *project; /* borrowed */
  gint64 condition;
  gint64 load; /* what the keys move */

  /* While a load is dragged; the case is NULL otherwise. */
  GbCase *moving;
  gint64 dragged;
  GbVec3 grip;   /* where it was taken hold of */
  GbVec3 centre; /* where it was then */
  GbVec3 to;     /* where it is now */
  GbAfloat afloat;
};

G_DEFINE_FINAL_TYPE (GbAfloatDrag, gb_afloat_drag, G_TYPE_OBJECT)

enum
{
  PICKED,
  MOVED,
  ENDED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* One key's step, and what a place by hand is rounded to. */
static double
key_step (GbUnits units)
{
  return units == GB_UNITS_FEET ? 0.0127 : 0.01;
}

static double
round_place (double v, GbUnits units)
{
  double grain = units == GB_UNITS_FEET ? 0.0254 / 16 : 0.001;

  return round (v / grain) * grain;
}

/* Putting it there ------------------------------------------------------------------------------------------
 */

/* Moves its record by @by; along an axis that is not moved the record keeps what was typed. */
static gboolean
put (GbAfloatDrag *self, gint64 id, GbVec3 by, GError **error)
{
  static const char *const names[] = { "x", "y", "z" };
  const double moves[] = { by.x, by.y, by.z };
  const GbRecord *now = gb_boat_get (gb_project_get_boat (self->project), GB_RECORD_LOAD, id);
  g_autofree char *title = now != NULL ? gb_words_title (now) : NULL;
  /* Translators: what is undone: the place of a load. */
  g_autofree char *words = now != NULL ? g_strdup_printf (_ ("place of %s"), title) : NULL;
  GbEdit *edit;
  GbRecord *record;

  if (now == NULL)
    return TRUE;
  edit = gb_edit_new (words, GB_RECORD_LOAD, id, "x");
  record = gb_record_copy (now);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const GbField *field = gb_field (GB_RECORD_LOAD, names[i]);
      double value = gb_field_get_real (field, record) + moves[i];

      if (isnan (value) || moves[i] == 0)
        continue;
      gb_field_set_real (field, record, round_place (value, gb_project_get_build (self->project)->units));
      gb_typed_set (record, names[i], NULL);
    }
  gb_edit_put (edit, record);
  return gb_project_apply (self->project, edit, error);
}

static void
put_and_tell (GbAfloatDrag *self, GtkWidget *area, gint64 id, GbVec3 by)
{
  g_autoptr (GError) error = NULL;

  if (!put (self, id, by, &error))
    gtk_widget_activate_action (area, "win.tell", "s", error->message);
}

/* Dragging --------------------------------------------------------------------------------------------------
 */

static void
let_go (GbAfloatDrag *self)
{
  if (self->moving == NULL)
    return;
  g_clear_pointer (&self->moving, gb_case_free);
  g_signal_emit (self, signals[ENDED], 0);
  gb_afloat_clear (&self->afloat);
}

static gboolean
may_move (GbAfloatDrag *self, gint64 id)
{
  const GbRecord *record
      = self->project != NULL ? gb_boat_get (gb_project_get_boat (self->project), GB_RECORD_LOAD, id) : NULL;

  return record != NULL && record->owner == self->condition
         && gb_project_get_read_only_reason (self->project) == NULL;
}

static void
spot_pressed_cb (GbChartArea *area, const GbChartSpot *spot, GbAfloatDrag *self)
{
  if (spot->kind == GB_RECORD_LOAD && spot->id != self->load)
    g_signal_emit (self, signals[PICKED], 0, spot->id);
}

static gboolean
drag_begun_cb (GbChartArea *area, const GbChartSpot *spot, GbAfloatDrag *self)
{
  const GbFindings *findings;

  if (spot->kind != GB_RECORD_LOAD || !may_move (self, spot->id))
    return FALSE;
  let_go (self);
  findings = gb_project_get_findings (self->project);
  self->moving = gb_case_new (gb_project_get_boat (self->project), &findings->hulls, &findings->edges,
                              &findings->rollup, &findings->flotation, self->condition);
  self->dragged = spot->id;
  self->grip = spot->at;
  self->centre = self->to = gb_case_load_centre (self->moving, spot->id);
  return TRUE;
}

/* Along the line of sight a point of the picture says nothing: there the load stays as it is. */
static double
follow (double centre, double grip, double at, GbUnits units)
{
  return isnan (at) || isnan (grip) ? centre : centre + round_place (at - grip, units);
}

static void
drag_moved_cb (GbChartArea *area, const GbChartSpot *spot, GbAfloatDrag *self)
{
  GbUnits units;
  GbAttitude from;
  gboolean known;
  GbAfloat before;

  if (self->moving == NULL)
    return;
  units = gb_project_get_build (self->project)->units;
  self->to.x = follow (self->centre.x, self->grip.x, spot->at.x, units);
  self->to.y = follow (self->centre.y, self->grip.y, spot->at.y, units);
  self->to.z = follow (self->centre.z, self->grip.z, spot->at.z, units);
  if (!gb_case_move (self->moving, self->dragged, self->to))
    return;
  /* The picture may still show the figures before until the signal has been heard. */
  before = self->afloat;
  self->afloat = (GbAfloat){ 0 };
  known = before.troubles != NULL && !isnan (before.heel);
  from = before.attitude;
  gb_afloat_find (&self->afloat, self->moving, known ? &from : NULL);
  g_signal_emit (self, signals[MOVED], 0, self->dragged, &self->afloat, &self->to);
  gb_afloat_clear (&before);
}

static void
drag_ended_cb (GbChartArea *area, gboolean kept, GbAfloatDrag *self)
{
  GbVec3 by = { self->to.x - self->centre.x, self->to.y - self->centre.y, self->to.z - self->centre.z };
  gint64 id = self->dragged;

  if (self->moving == NULL)
    return;
  let_go (self);
  if (kept)
    put_and_tell (self, GTK_WIDGET (area), id, by);
}

static gboolean
nudged_cb (GbChartArea *area, int x, int y, int z, GbAfloatDrag *self)
{
  double step;

  if (!may_move (self, self->load))
    return FALSE;
  step = key_step (gb_project_get_build (self->project)->units);
  put_and_tell (self, GTK_WIDGET (area), self->load, (GbVec3){ x * step, y * step, z * step });
  return TRUE;
}

/* Object ----------------------------------------------------------------------------------------------------
 */

void
gb_afloat_drag_attach (GbAfloatDrag *self, GbChartArea *area)
{
  g_return_if_fail (GB_IS_AFLOAT_DRAG (self));
  gb_chart_area_make_draggable (area);
  g_signal_connect_object (area, "spot-pressed", G_CALLBACK (spot_pressed_cb), self, 0);
  g_signal_connect_object (area, "drag-begun", G_CALLBACK (drag_begun_cb), self, 0);
  g_signal_connect_object (area, "drag-moved", G_CALLBACK (drag_moved_cb), self, 0);
  g_signal_connect_object (area, "drag-ended", G_CALLBACK (drag_ended_cb), self, 0);
  g_signal_connect_object (area, "nudged", G_CALLBACK (nudged_cb), self, 0);
}

void
gb_afloat_drag_set (GbAfloatDrag *self, GbProject *project, gint64 condition, gint64 load)
{
  g_return_if_fail (GB_IS_AFLOAT_DRAG (self));
  let_go (self);
  self->project = project;
  self->condition = condition;
  self->load = load;
}

static void
gb_afloat_drag_finalize (GObject *object)
{
  GbAfloatDrag *self = GB_AFLOAT_DRAG (object);

  g_clear_pointer (&self->moving, gb_case_free);
  gb_afloat_clear (&self->afloat);
  G_OBJECT_CLASS (gb_afloat_drag_parent_class)->finalize (object);
}

static void
gb_afloat_drag_class_init (GbAfloatDragClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gb_afloat_drag_finalize;
  signals[PICKED]
      = g_signal_new ("picked", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[MOVED] = g_signal_new ("moved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 3,
                                 G_TYPE_INT64, G_TYPE_POINTER, G_TYPE_POINTER);
  signals[ENDED] = g_signal_new ("ended", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
gb_afloat_drag_init (GbAfloatDrag *self)
{
}

GbAfloatDrag *
gb_afloat_drag_new (void)
{
  return g_object_new (GB_TYPE_AFLOAT_DRAG, NULL);
}
