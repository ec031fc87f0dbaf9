/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/project-study.h"

#include "project/project-private.h"

/* Studies ------------------------------------------------------------------------------------------------ */

/* Of one condition: known, or asked for. */
typedef struct
{
  GbStudy *study;
  GbWork *work;
} Slot;

static void
slot_free (gpointer data)
{
  Slot *slot = data;

  gb_work_drop (slot->work);
  gb_study_free (slot->study);
  g_free (slot);
}

static gpointer
find_study (GbWork *work, gpointer condition)
{
  GbSnapshot *snapshot = gb_work_snapshot (work);

  return gb_study_find (gb_snapshot_boat (snapshot), gb_snapshot_findings (snapshot, gb_today ()),
                        *(gint64 *) condition, gb_work_is_cancelled, work);
}

static void
study_found (GbProject *self, gpointer condition, gpointer study)
{
  Slot *slot = g_hash_table_lookup (self->studies, condition);

  g_clear_pointer (&slot->work, gb_work_drop);
  slot->study = study;
  g_signal_emit_by_name (self, "study-found", *(gint64 *) condition);
}

static const GbWorkType study_type = {
  .needs_snapshot = TRUE,
  .find = find_study,
  .found = study_found,
  .free_question = g_free,
  .free_answer = (GDestroyNotify) gb_study_free,
};

static gint64 *
new_id (gint64 id)
{
  return g_memdup2 (&id, sizeof id);
}

const GbStudy *
gb_project_get_study (GbProject *self, gint64 condition)
{
  Slot *slot;

  g_return_val_if_fail (GB_IS_PROJECT (self), NULL);

  if (gb_findings_afloat (self->findings, condition) == NULL)
    return NULL;
  if (self->studies == NULL)
    self->studies = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, slot_free);
  slot = g_hash_table_lookup (self->studies, &condition);
  if (slot == NULL)
    {
      slot = g_new0 (Slot, 1);
      g_hash_table_insert (self->studies, new_id (condition), slot);
      slot->work = gb_work_start (self, &study_type, new_id (condition));
    }
  return slot->study;
}

/* The crew map ------------------------------------------------------------------------------------------- */

typedef struct
{
  GbCase *floating;
  gint64 condition, load;
} MapQuestion;

static void
map_question_free (gpointer data)
{
  MapQuestion *question = data;

  gb_case_free (question->floating);
  g_free (question);
}

static void
row_found (const GbCrewMap *map, gpointer work)
{
  gb_work_tell (work, gb_crew_map_copy (map));
}

static gpointer
find_map (GbWork *work, gpointer data)
{
  const MapQuestion *question = data;

  return gb_crew_map_find (question->floating, question->load, row_found, gb_work_is_cancelled, work);
}

static void
show_map (GbProject *self, gpointer data, gpointer map)
{
  const MapQuestion *question = data;

  gb_crew_map_free (self->crew_map);
  self->crew_map = map;
  g_signal_emit_by_name (self, "study-found", question->condition);
}

static const GbWorkType map_type = {
  .find = find_map,
  .progress = show_map,
  .found = show_map,
  .free_question = map_question_free,
  .free_answer = (GDestroyNotify) gb_crew_map_free,
};

static void
forget_map (GbProject *self)
{
  g_clear_pointer (&self->map_work, gb_work_drop);
  g_clear_pointer (&self->crew_map, gb_crew_map_free);
}

static void
ask_for_map (GbProject *self, gint64 condition, gint64 load)
{
  const GbFindings *f = self->findings;
  MapQuestion *question = g_new (MapQuestion, 1);

  *question =
      (MapQuestion){ gb_case_new (self->boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, condition),
                     condition, load };
  self->map_condition = condition;
  self->map_load = load;
  self->map_work = gb_work_start (self, &map_type, question);
}

const GbCrewMap *
gb_project_get_crew_map (GbProject *self, gint64 condition, gint64 load)
{
  const GbRecord *record;

  g_return_val_if_fail (GB_IS_PROJECT (self), NULL);

  if (self->map_work != NULL && (self->map_condition != condition || self->map_load != load))
    forget_map (self);
  record = gb_boat_get (self->boat, GB_RECORD_LOAD, load);
  if (record == NULL || record->owner != condition)
    return NULL;
  if (self->map_work == NULL)
    ask_for_map (self, condition, load);
  return self->crew_map;
}

void
gb_project_forget_studies (GbProject *self)
{
  g_clear_pointer (&self->studies, g_hash_table_unref);
  forget_map (self);
}
