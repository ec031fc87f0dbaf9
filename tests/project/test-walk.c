/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Random walks of verbs, undo and redo: at every step the boat is what the file holds and the findings are
 * those of that boat, and from any point the way back leads to the start. The seed is printed by the test
 * program; --seed= walks the same way again. */

#include "fixture.h"
#include "random-boat.h"

#include "project/verbs-buy.h"
#include "project/verbs-paste.h"
#include "project/verbs-weigh.h"

typedef struct
{
  GRand *rand;
  GbProject *project;
  guint n_done, n_refused;
} Walk;

/* A record of @kind at random; NULL if there is none. */
static GbRecord *
pick (Walk *walk, GbRecordKind kind)
{
  const GPtrArray *all = gb_boat_all (gb_project_get_boat (walk->project), kind);

  return all->len > 0 ? all->pdata[g_rand_int_range (walk->rand, 0, (gint32) all->len)] : NULL;
}

static gint64
pick_id (Walk *walk, GbRecordKind kind)
{
  const GbRecord *record = g_rand_int_range (walk->rand, 0, 5) > 0 ? pick (walk, kind) : NULL;

  return record != NULL ? record->id : 0;
}

static GbRecordKind
pick_kind (Walk *walk)
{
  return g_rand_boolean (walk->rand) ? GB_RECORD_PART
                                     : (GbRecordKind) g_rand_int_range (walk->rand, 0, GB_N_RECORDS);
}

/* Up to four ids, perhaps the same one twice. */
static guint
pick_some (Walk *walk, GbRecordKind kind, gint64 ids[4])
{
  guint n = (guint) g_rand_int_range (walk->rand, 1, 5);

  for (guint i = 0; i < n; i++)
    ids[i] = pick_id (walk, kind);
  return n;
}

static gboolean
set_something (Walk *walk, GError **error)
{
  GbRecordKind kind = pick_kind (walk);
  const GbRecordType *type = gb_record_type (kind);
  const GbField *field = &type->fields[g_rand_int_range (walk->rand, 0, (gint32) type->n_fields)];
  g_autoptr (GbRecord) drawn = gb_record_new (kind);
  g_auto (GbValue) value = { 0 };
  gint64 ids[4];
  guint n = 0;

  random_field (walk->rand, gb_project_get_boat (walk->project), field, drawn);
  value = gb_field_get (field, drawn);
  for (guint i = 0; i < 4; i++)
    if (pick (walk, kind) != NULL)
      ids[n++] = pick (walk, kind)->id;
  return gb_project_set_all (walk->project, kind, ids, n, field, &value, error);
}

static gboolean
add_something (Walk *walk, GError **error)
{
  GbRecordKind kind = pick_kind (walk);
  GbRecord *draft = kind != GB_RECORD_BUILD
                      ? random_record (walk->rand, gb_project_get_boat (walk->project), kind, 1)
                      : NULL;

  if (draft == NULL)
    return TRUE;
  return gb_project_add (walk->project, draft, draft->owner, pick_id (walk, kind), error) != 0;
}

static gboolean
add_part (Walk *walk, GError **error)
{
  return gb_project_add_part (walk->project, "new",
                              g_rand_boolean (walk->rand) ? GB_KIND_PART : GB_KIND_GROUP,
                              pick_id (walk, GB_RECORD_PART), pick_id (walk, GB_RECORD_PART), error)
         != 0;
}

static gboolean
remove_something (Walk *walk, GError **error)
{
  GbRecordKind kind = pick_kind (walk);
  gint64 ids[4];

  return gb_project_remove (walk->project, kind, ids, pick_some (walk, kind, ids), error);
}

static gboolean
move_something (Walk *walk, GError **error)
{
  gint64 ids[4];
  guint n = pick_some (walk, GB_RECORD_PART, ids);

  return gb_project_move (walk->project, GB_RECORD_PART, ids, n, pick_id (walk, GB_RECORD_PART),
                          pick_id (walk, GB_RECORD_PART), error);
}

static gboolean
duplicate_something (Walk *walk, GError **error)
{
  GbRecordKind kind = pick_kind (walk);
  gint64 id = pick_id (walk, kind);
  g_autoptr (GArray) copies = NULL;

  if (kind == GB_RECORD_BUILD || gb_boat_n (gb_project_get_boat (walk->project), GB_RECORD_PART) > 300)
    return TRUE;
  return gb_project_duplicate (walk->project, kind, &id, 1, &copies, error);
}

static gboolean
paste_something (Walk *walk, GError **error)
{
  gint64 id = pick_id (walk, GB_RECORD_PART);
  g_autofree char *text = NULL;

  if (id == 0 || gb_boat_n (gb_project_get_boat (walk->project), GB_RECORD_PART) > 300)
    return TRUE;
  text = gb_project_copy (walk->project, &id, 1);
  return gb_project_paste (walk->project, text, pick_id (walk, GB_RECORD_PART), 0, NULL, error);
}

static gboolean
buy_or_weigh (Walk *walk, GError **error)
{
  GbLine *line;

  if (g_rand_boolean (walk->rand))
    return gb_project_weigh (walk->project, pick_id (walk, GB_RECORD_PART), gb_today (),
                             g_rand_double_range (walk->rand, 0.1, 50), GB_ON_SCALE_ALL, error)
           != 0;
  line = (GbLine *) gb_record_new (GB_RECORD_LINE);
  line->stock = pick_id (walk, GB_RECORD_STOCK);
  line->part = pick_id (walk, GB_RECORD_PART);
  line->quantity = g_rand_int_range (walk->rand, -2, 20);
  return gb_project_buy (walk->project, &line->rec, pick_id (walk, GB_RECORD_PURCHASE), gb_today (), NULL,
                         error)
         != 0;
}

static gboolean
undo_some (Walk *walk, GError **error)
{
  for (gint n = g_rand_int_range (walk->rand, 1, 6);
       n > 0 && gb_project_get_undo_words (walk->project) != NULL; n--)
    if (!gb_project_undo (walk->project, error))
      return FALSE;
  return TRUE;
}

static gboolean
redo_some (Walk *walk, GError **error)
{
  for (gint n = g_rand_int_range (walk->rand, 1, 6);
       n > 0 && gb_project_get_redo_words (walk->project) != NULL; n--)
    if (!gb_project_redo (walk->project, error))
      return FALSE;
  return TRUE;
}

static gboolean (*const steps[]) (Walk *walk, GError **error) = {
  set_something,  set_something,       add_something,   add_part,     remove_something, move_something,
  move_something, duplicate_something, paste_something, buy_or_weigh, undo_some,        redo_some,
};

/* A step that is refused changes nothing; undo and redo are never refused. */
static void
take_step (Walk *walk)
{
  gboolean (*step) (Walk *, GError **) = steps[g_rand_int_range (walk->rand, 0, G_N_ELEMENTS (steps))];
  g_autoptr (GbBoat) before = gb_boat_copy (gb_project_get_boat (walk->project));
  g_autoptr (GError) error = NULL;

  walk->n_done++;
  if (step (walk, &error))
    {
      g_assert_no_error (error);
      return;
    }
  g_assert_nonnull (error);
  g_assert_true (step != undo_some && step != redo_some);
  g_assert_cmpuint (g_utf8_strlen (error->message, -1), >, 10);
  scratch_assert_equal (gb_project_get_boat (walk->project), before);
  walk->n_refused++;
}

static void
test_walk (gconstpointer data)
{
  guint n_records = GPOINTER_TO_UINT (data);
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GRand) rand = random_seeded ();
  g_autoptr (GbBoat) start = random_boat (rand, n_records);
  Walk walk = { rand, gb_project_create (scratch->path, start, NULL), 0, 0 };

  for (guint i = 0; i < 250; i++)
    {
      take_step (&walk);
      if (i % 5 == 0)
        fixture_assert_fresh (walk.project);
    }
  g_test_message ("%u steps, %u refused", walk.n_done, walk.n_refused);
  while (gb_project_get_undo_words (walk.project) != NULL)
    g_assert_true (gb_project_undo (walk.project, NULL));
  scratch_assert_equal (gb_project_get_boat (walk.project), start);
  fixture_assert_fresh (walk.project);
  while (gb_project_get_redo_words (walk.project) != NULL)
    g_assert_true (gb_project_redo (walk.project, NULL));
  fixture_assert_fresh (walk.project);
  g_assert_finalize_object (walk.project);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/project/walk/small", GUINT_TO_POINTER (12), test_walk);
  g_test_add_data_func ("/project/walk/middling", GUINT_TO_POINTER (60), test_walk);
  g_test_add_data_func ("/project/walk/large", GUINT_TO_POINTER (400), test_walk);
  return g_test_run ();
}
