/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The way of one edit:
 *
 *   a verb makes a GbEdit -> gb_project_apply(): completed, checked -> the store writes it -> GbChanges
 *       -> gb_project_come_home(): rows into the boat -> findings -> lists, "changed" -> pages
 *
 * Undo, redo and other programs' changes begin at GbChanges. Nothing else touches the boat. The first half is
 * in project-apply.c. */

#include "project/project-private.h"

enum
{
  PROP_0,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_UNDO_WORDS,
  PROP_REDO_WORDS,
  PROP_TITLE,
  PROP_READ_ONLY,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

enum
{
  CHANGED,
  PLACE,
  HISTORY_FOUND,
  STUDY_FOUND,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbProject, gb_project, G_TYPE_OBJECT)

gint64
gb_today (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) g_date_time_get_day_of_month (now),
                  (GDateMonth) g_date_time_get_month (now), (GDateYear) g_date_time_get_year (now));
  return g_date_get_julian (&date);
}

static void
find (GbProject *self, GbTouched touched)
{
  gb_findings_find (self->findings, self->boat, touched, gb_today ());
}

/* Takes @value as what is shown of a property; notifies if it is another than before. */
static gboolean
notify_text (GbProject *self, char **shown, const char *value, guint prop)
{
  if (g_strcmp0 (*shown, value) == 0)
    return FALSE;
  g_free (*shown);
  *shown = g_strdup (value);
  g_object_notify_by_pspec (G_OBJECT (self), properties[prop]);
  return TRUE;
}

static void
notify_words (GbProject *self, char **shown, const char *value, guint words_prop, guint can_prop)
{
  gboolean could = *shown != NULL;

  if (notify_text (self, shown, value, words_prop) && could != (*shown != NULL))
    g_object_notify_by_pspec (G_OBJECT (self), properties[can_prop]);
}

static void
notify_all (GbProject *self)
{
  g_object_freeze_notify (G_OBJECT (self));
  notify_text (self, &self->title, gb_boat_build (self->boat)->name, PROP_TITLE);
  notify_words (self, &self->undo_words, gb_store_undo_words (self->store), PROP_UNDO_WORDS, PROP_CAN_UNDO);
  notify_words (self, &self->redo_words, gb_store_redo_words (self->store), PROP_REDO_WORDS, PROP_CAN_REDO);
  g_object_thaw_notify (G_OBJECT (self));
}

static GbChanges *
new_changes_of_all (void)
{
  GbChanges *changes = gb_changes_new ();

  changes->all = TRUE;
  return changes;
}

/* What is found of the rows of each kind beyond costs; nothing of those that are not here. */
static const GbTouched touched_by[GB_N_RECORDS] = {
  /* The build has the units that a hull's trouble is told in, and the water. */
  [GB_RECORD_BUILD] = GB_TOUCHED_HULLS | GB_TOUCHED_WEIGHTS | GB_TOUCHED_AFLOAT,
  [GB_RECORD_MATERIAL] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_SAMPLE] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_STOCK] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_HULL] = GB_TOUCHED_HULLS,
  [GB_RECORD_STATION] = GB_TOUCHED_HULLS,
  [GB_RECORD_OFFSET] = GB_TOUCHED_HULLS,
  [GB_RECORD_OPENING] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_CORNER] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_PART] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_WEIGHING] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_READING] = GB_TOUCHED_WEIGHTS,
  [GB_RECORD_CONDITION] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_LOAD] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_INCLINING] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_SHIFT] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_TUB] = GB_TOUCHED_AFLOAT,
  [GB_RECORD_TUB_LOAD] = GB_TOUCHED_AFLOAT,
};

static GbTouched
what_is_touched (const GbChanges *changes)
{
  GbTouched touched = 0;

  if (changes->all)
    return GB_TOUCHED_ALL;
  for (guint i = 0; i < changes->changes->len; i++)
    touched |= touched_by[g_array_index (changes->changes, GbChange, i).kind];
  return touched;
}

/* What workers found, or are about to find, was of another boat. */
static void
forget_answers (GbProject *self)
{
  gb_project_forget_waiting (self);
  gb_project_forget_history (self);
  gb_project_forget_studies (self);
}

gboolean
gb_project_come_home (GbProject *self, const GbChanges *changes, GError **error)
{
  g_autoptr (GbProject) held G_GNUC_UNUSED = g_object_ref (self); /* a handler may close it */
  g_autoptr (GbChanges) all = NULL;
  gboolean some = !changes->all, home = gb_store_refresh (self->store, changes, self->boat, NULL);

  if (!home)
    {
      changes = all = new_changes_of_all ();
      home = gb_store_refresh (self->store, all, self->boat, error);
    }
  /* If some rows were read and others not, the boat is another all the same. */
  if (!home && !some)
    return FALSE;
  find (self, what_is_touched (changes));
  forget_answers (self);
  if (self->hub != NULL)
    gb_record_hub_tell (self->hub, changes);
  g_signal_emit (self, signals[CHANGED], 0, changes);
  notify_all (self);
  return home;
}

/* Other programs ----------------------------------------------------------------------------------------- */

gboolean
gb_project_look_elsewhere (GbProject *self)
{
  g_autoptr (GbChanges) changes = NULL;
  g_autoptr (GError) error = NULL;

  if (!gb_store_changed_elsewhere (self->store))
    return FALSE;
  changes = new_changes_of_all ();
  if (!gb_project_come_home (self, changes, &error))
    g_message ("%s", error->message);
  return TRUE;
}

static gboolean
look_cb (gpointer self)
{
  gb_project_look_elsewhere (self);
  return G_SOURCE_CONTINUE;
}

/* The object --------------------------------------------------------------------------------------------- */

static void
gb_project_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  GbProject *self = GB_PROJECT (object);

  switch (id)
    {
    case PROP_CAN_UNDO:
      g_value_set_boolean (value, gb_project_get_undo_words (self) != NULL);
      break;
    case PROP_CAN_REDO:
      g_value_set_boolean (value, gb_project_get_redo_words (self) != NULL);
      break;
    case PROP_UNDO_WORDS:
      g_value_set_string (value, gb_project_get_undo_words (self));
      break;
    case PROP_REDO_WORDS:
      g_value_set_string (value, gb_project_get_redo_words (self));
      break;
    case PROP_TITLE:
      g_value_set_string (value, gb_project_get_title (self));
      break;
    case PROP_READ_ONLY:
      g_value_set_boolean (value, gb_project_get_read_only_reason (self) != NULL);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_project_dispose (GObject *object)
{
  GbProject *self = GB_PROJECT (object);

  g_clear_handle_id (&self->look_id, g_source_remove);
  forget_answers (self);
  G_OBJECT_CLASS (gb_project_parent_class)->dispose (object);
}

static void
gb_project_finalize (GObject *object)
{
  GbProject *self = GB_PROJECT (object);

  g_clear_pointer (&self->hub, gb_record_hub_free);
  g_clear_pointer (&self->findings, gb_findings_free);
  g_clear_pointer (&self->boat, gb_boat_free);
  g_clear_pointer (&self->store, gb_store_close);
  g_clear_pointer (&self->kept_at, g_date_time_unref);
  g_free (self->title);
  g_free (self->undo_words);
  g_free (self->redo_words);
  G_OBJECT_CLASS (gb_project_parent_class)->finalize (object);
}

static void
gb_project_class_init (GbProjectClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);
  const GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = gb_project_get_property;
  object_class->dispose = gb_project_dispose;
  object_class->finalize = gb_project_finalize;

  properties[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  properties[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  properties[PROP_UNDO_WORDS] = g_param_spec_string ("undo-words", NULL, NULL, NULL, flags);
  properties[PROP_REDO_WORDS] = g_param_spec_string ("redo-words", NULL, NULL, NULL, flags);
  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  properties[PROP_READ_ONLY] = g_param_spec_boolean ("read-only", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  signals[CHANGED] = g_signal_new ("changed", GB_TYPE_PROJECT, G_SIGNAL_RUN_FIRST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[PLACE] = g_signal_new ("place", GB_TYPE_PROJECT, G_SIGNAL_RUN_FIRST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[HISTORY_FOUND] = g_signal_new ("history-found", GB_TYPE_PROJECT, G_SIGNAL_RUN_FIRST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 0);
  signals[STUDY_FOUND] = g_signal_new ("study-found", GB_TYPE_PROJECT, G_SIGNAL_RUN_FIRST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
gb_project_init (GbProject *self)
{
  self->findings = gb_findings_new ();
}

GbProject *
gb_project_open (const char *path, gboolean may_read_only, GError **error)
{
  g_autoptr (GbProject) self = g_object_new (GB_TYPE_PROJECT, NULL);

  self->store = gb_store_open (path, may_read_only, error);
  if (self->store == NULL)
    return NULL;
  self->boat = gb_store_load (self->store, error);
  if (self->boat == NULL)
    return NULL;
  find (self, GB_TOUCHED_ALL);
  notify_all (self);
  self->look_id = g_timeout_add_seconds (1, look_cb, self);
  return g_steal_pointer (&self);
}

GbProject *
gb_project_create (const char *path, const GbBoat *boat, GError **error)
{
  g_autoptr (GbBoat) empty = boat == NULL ? gb_boat_new () : NULL;

  if (!gb_store_create (path, boat != NULL ? boat : empty, FALSE, error))
    return NULL;
  return gb_project_open (path, FALSE, error);
}

GbRecordHub *
gb_project_get_hub (GbProject *self)
{
  if (self->hub == NULL)
    self->hub = gb_record_hub_new (self);
  return self->hub;
}

/* What there is ------------------------------------------------------------------------------------------ */

const GbBoat *
gb_project_get_boat (GbProject *self)
{
  return self->boat;
}

const GbBuild *
gb_project_get_build (GbProject *self)
{
  return gb_boat_build (self->boat);
}

const GbFindings *
gb_project_get_findings (GbProject *self)
{
  return self->findings;
}

const char *
gb_project_get_path (GbProject *self)
{
  return gb_store_path (self->store);
}

const char *
gb_project_get_title (GbProject *self)
{
  return self->title;
}

const char *
gb_project_get_read_only_reason (GbProject *self)
{
  return gb_store_read_only_reason (self->store);
}

GDateTime *
gb_project_get_kept_at (GbProject *self)
{
  return self->kept_at;
}

const char *
gb_project_get_undo_words (GbProject *self)
{
  return self->undo_words;
}

const char *
gb_project_get_redo_words (GbProject *self)
{
  return self->redo_words;
}

gboolean
gb_project_save_copy (GbProject *self, const char *path, GError **error)
{
  return gb_store_save_copy (self->store, path, error);
}

GPtrArray *
gb_project_check (GbProject *self)
{
  return gb_store_check (self->store);
}
