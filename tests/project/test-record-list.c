/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list models against a mirror: a plain list that applies each items-changed, down the whole tree, must
 * stay what the model is, and the model what the boat is. */

#include "fixture.h"

#include "project/record-list.h"

/* The mirror --------------------------------------------------------------------------------------------- */

typedef struct _Mirror Mirror;

struct _Mirror
{
  GListModel *model;
  GPtrArray *items; /* of GbRecordItem, owned */
  GPtrArray *below; /* of Mirror or NULL, one an item */
  gulong handler;
  guint n_signals;
};

static Mirror *mirror_new (GListModel *model);

static void
mirror_free (gpointer data)
{
  Mirror *mirror = data;

  if (mirror == NULL)
    return;
  g_signal_handler_disconnect (mirror->model, mirror->handler);
  g_ptr_array_unref (mirror->below);
  g_ptr_array_unref (mirror->items);
  g_object_unref (mirror->model);
  g_free (mirror);
}

static void
insert_item (Mirror *mirror, guint position)
{
  GbRecordItem *item = g_list_model_get_item (mirror->model, position);
  GListModel *children;

  g_assert_nonnull (item);
  children = gb_record_item_get_children (item);
  g_ptr_array_insert (mirror->items, (int) position, item);
  g_ptr_array_insert (mirror->below, (int) position, children != NULL ? mirror_new (children) : NULL);
}

static void
assert_mirrored (Mirror *mirror)
{
  g_assert_cmpuint (g_list_model_get_n_items (mirror->model), ==, mirror->items->len);
  for (guint i = 0; i < mirror->items->len; i++)
    {
      g_autoptr (GbRecordItem) item = g_list_model_get_item (mirror->model, i);

      g_assert_true (item == mirror->items->pdata[i]);
    }
}

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, gpointer data)
{
  Mirror *mirror = data;

  mirror->n_signals++;
  g_assert_true (removed > 0 || added > 0);
  g_assert_cmpuint (position + removed, <=, mirror->items->len);
  if (removed > 0)
    {
      g_ptr_array_remove_range (mirror->items, position, removed);
      g_ptr_array_remove_range (mirror->below, position, removed);
    }
  for (guint i = 0; i < added; i++)
    insert_item (mirror, position + i);
  if (mirror->items->len < 500)
    assert_mirrored (mirror);
}

static Mirror *
mirror_new (GListModel *model)
{
  Mirror *mirror = g_new0 (Mirror, 1);

  mirror->model = g_object_ref (model);
  mirror->items = g_ptr_array_new_with_free_func (g_object_unref);
  mirror->below = g_ptr_array_new_with_free_func (mirror_free);
  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    insert_item (mirror, i);
  mirror->handler = g_signal_connect (model, "items-changed", G_CALLBACK (items_changed_cb), mirror);
  return mirror;
}

/* The mirror holds just these records, and below them what lives in them. */
static void
assert_holds (Mirror *mirror, const GPtrArray *records)
{
  assert_mirrored (mirror);
  g_assert_cmpuint (mirror->items->len, ==, records->len);
  for (guint i = 0; i < records->len; i++)
    {
      g_assert_true (gb_record_item_get_record (mirror->items->pdata[i]) == records->pdata[i]);
      if (mirror->below->pdata[i] != NULL)
        assert_holds (mirror->below->pdata[i], gb_record_children (records->pdata[i]));
      else
        g_assert_cmpuint (gb_record_children (records->pdata[i])->len, ==, 0);
    }
}

/* Random edits ------------------------------------------------------------------------------------------- */

static gint64
pick (GRand *rand, GbProject *project)
{
  const GPtrArray *all = gb_boat_all (gb_project_get_boat (project), GB_RECORD_PART);

  return all->len > 0 ? ((const GbRecord *) all->pdata[g_rand_int_range (rand, 0, (gint32) all->len)])->id
                      : 0;
}

static void
edit_at_random (GRand *rand, GbProject *project)
{
  gint64 ids[] = { pick (rand, project), pick (rand, project), pick (rand, project) };
  guint n_parts = gb_boat_n (gb_project_get_boat (project), GB_RECORD_PART);
  gint64 owner = g_rand_int_range (rand, 0, 4) > 0 ? pick (rand, project) : 0;
  GbValue kind = GB_VALUE_INTEGER (g_rand_int_range (rand, 0, 2)),
          mass = GB_VALUE_REAL (g_rand_int_range (rand, 1, 9));

  switch (g_rand_int_range (rand, 0, 10))
    {
    case 0:
    case 1:
      gb_project_add_part (project, "part", GB_KIND_PART, owner, ids[0], NULL);
      break;
    case 2:
      gb_project_add_part (project, "group", GB_KIND_GROUP, owner, ids[0], NULL);
      break;
    case 3:
      if (n_parts > 20)
        gb_project_remove (project, GB_RECORD_PART, ids, (guint) g_rand_int_range (rand, 1, 4), NULL);
      break;
    case 4:
    case 5:
      gb_project_move (project, GB_RECORD_PART, ids, (guint) g_rand_int_range (rand, 1, 4), owner, ids[2],
                       NULL);
      break;
    case 6:
      if (n_parts < 200)
        gb_project_duplicate (project, GB_RECORD_PART, ids, 2, NULL, NULL);
      break;
    case 7:
      gb_project_set (project, GB_RECORD_PART, ids[0], fixture_field ("kind"), &kind, NULL);
      gb_project_set (project, GB_RECORD_PART, ids[1], fixture_field ("mass"), &mass, NULL);
      break;
    case 8:
      gb_project_undo (project, NULL);
      break;
    default:
      gb_project_redo (project, NULL);
    }
}

static void
test_tree_against_a_mirror (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch), *other = NULL;
  guint32 seed = (guint32) g_test_rand_int ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  GbRecordItem *boat = gb_record_item_get (project, GB_RECORD_BUILD, 1);
  Mirror *tree = mirror_new (gb_record_item_get_children (boat));
  GbRecordList *all = gb_record_list_new_all (project, GB_RECORD_PART);
  Mirror *flat = mirror_new (G_LIST_MODEL (all));

  g_test_message ("seed %u", seed);
  for (guint i = 0; i < 400; i++)
    {
      edit_at_random (rand, project);
      assert_holds (tree, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_PART));
      assert_mirrored (flat);
      g_assert_cmpuint (flat->items->len, ==, gb_boat_n (gb_project_get_boat (project), GB_RECORD_PART));
    }

  /* And by another program. */
  other = gb_project_open (scratch->path, FALSE, NULL);
  for (guint i = 0; i < 20; i++)
    {
      edit_at_random (rand, other);
      gb_project_look_elsewhere (project);
      assert_holds (tree, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_PART));
    }
  mirror_free (tree);
  mirror_free (flat);
  g_object_unref (other);
  g_assert_finalize_object (all);
  g_assert_finalize_object (boat);
  g_assert_finalize_object (project);
}

/* Items -------------------------------------------------------------------------------------------------- */

static void
count_cb (gpointer object, GParamSpec *pspec, gpointer data)
{
  (*(guint *) data)++;
}

static void
test_an_item_stays (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  GbRecordItem *side = gb_record_item_get (project, GB_RECORD_PART, SIDE);
  GbRecordItem *again = gb_record_item_get (project, GB_RECORD_PART, SIDE);
  const gint64 id = SIDE;
  GbValue thickness = GB_VALUE_REAL (0.004), density = GB_VALUE_REAL (600);
  guint notified = 0, version = gb_record_item_get_version (side);

  g_assert_true (side == again);
  g_object_unref (again);
  g_assert_true (gb_record_item_get_project (side) == project);
  g_assert_cmpint (gb_record_item_get_id (side), ==, SIDE);
  g_assert_cmpint (gb_record_item_get_kind (side), ==, GB_RECORD_PART);

  g_signal_connect (side, "notify::version", G_CALLBACK (count_cb), &notified);
  g_assert_true (
    gb_project_set (project, GB_RECORD_PART, SIDE, fixture_field ("thickness"), &thickness, NULL));
  g_assert_cmpuint (notified, ==, 1);
  g_assert_cmpuint (gb_record_item_get_version (side), >, version);
  /* A density that it is made of changes its mass. */
  g_assert_true (gb_project_set (project, GB_RECORD_MATERIAL, 2, gb_field (GB_RECORD_MATERIAL, "density"),
                                 &density, NULL));
  g_assert_cmpuint (notified, ==, 2);

  g_assert_true (gb_project_remove (project, GB_RECORD_PART, &id, 1, NULL));
  g_assert_null (gb_record_item_get_record (side));
  g_assert_null (gb_record_item_get_children (side));
  g_assert_true (gb_project_undo (project, NULL));
  again = gb_record_item_get (project, GB_RECORD_PART, SIDE);
  g_assert_true (again == side);
  g_object_unref (again);
  g_assert_nonnull (gb_record_item_get_record (side));
  g_object_unref (side);
  g_assert_finalize_object (project);
}

static void
test_what_lives_in_what (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  static const struct
  {
    GbRecordKind kind;
    guint n;
  } cases[] = { { GB_RECORD_BUILD, 3 },    { GB_RECORD_MATERIAL, 0 },  { GB_RECORD_HULL, 0 },
                { GB_RECORD_WEIGHING, 1 }, { GB_RECORD_CONDITION, 1 }, { GB_RECORD_PURCHASE, 1 } };
  static const GbRecordKind nothing[]
    = { GB_RECORD_STOCK, GB_RECORD_CATEGORY, GB_RECORD_LOAD, GB_RECORD_LINE, GB_RECORD_READING };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GbRecordItem) item = gb_record_item_get (project, cases[i].kind, 1);

      g_assert_cmpuint (g_list_model_get_n_items (gb_record_item_get_children (item)), ==, cases[i].n);
    }
  for (guint i = 0; i < G_N_ELEMENTS (nothing); i++)
    {
      g_autoptr (GbRecordItem) item = gb_record_item_get (project, nothing[i], 1);

      g_assert_null (gb_record_item_get_children (item));
    }
  g_assert_finalize_object (project);
}

static void
test_other_kinds (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  GbRecordList *lines = gb_record_list_new (project, GB_RECORD_LINE, 1);
  Mirror *mirror = mirror_new (G_LIST_MODEL (lines));
  const gint64 purchase = 1;
  guint position;

  g_assert_true (gb_record_list_find (lines, 1, &position));
  g_assert_cmpuint (position, ==, 0);
  g_assert_false (gb_record_list_find (lines, 9, NULL));
  g_assert_cmpint (gb_record_list_get_id (lines, 0), ==, 1);
  g_assert_cmpint (gb_record_list_get_id (lines, 7), ==, 0);
  g_assert_null (g_list_model_get_item (G_LIST_MODEL (lines), 7));
  g_assert_true (g_list_model_get_item_type (G_LIST_MODEL (lines)) == GB_TYPE_RECORD_ITEM);
  /* The receipt goes, and its lines with it. */
  g_assert_true (gb_project_remove (project, GB_RECORD_PURCHASE, &purchase, 1, NULL));
  g_assert_cmpuint (mirror->items->len, ==, 0);
  g_assert_true (gb_project_undo (project, NULL));
  g_assert_cmpuint (mirror->items->len, ==, 1);
  mirror_free (mirror);
  g_assert_finalize_object (lines);
  g_assert_finalize_object (project);
}

/* Handlers that are on an item or a list do not keep it, and hear nothing once they are gone. */
static void
test_no_handler_is_left (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  guint notified = 0;

  for (guint i = 0; i < 20; i++)
    {
      GbRecordItem *item = gb_record_item_get (project, GB_RECORD_PART, HULL);
      GListModel *children = gb_record_item_get_children (item);

      g_signal_connect (item, "notify::version", G_CALLBACK (count_cb), &notified);
      g_assert_nonnull (children);
      g_assert_finalize_object (item);
    }
  g_assert_cmpint (gb_project_add_part (project, "x", GB_KIND_PART, HULL, 0, NULL), >, 0);
  g_assert_cmpuint (notified, ==, 0);
  g_assert_finalize_object (project);
}

/* A handler may let go of a list while others are still to be told. */
static void
drop_cb (GListModel *model, guint position, guint removed, guint added, gpointer data)
{
  g_clear_object ((GbRecordList **) data);
}

static void
test_lists_may_go_while_they_are_told (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  GbProject *project = fixture_project (scratch);
  GbRecordList *first = gb_record_list_new (project, GB_RECORD_PART, HULL);
  GbRecordList *second = gb_record_list_new (project, GB_RECORD_PART, HULL);

  g_signal_connect (first, "items-changed", G_CALLBACK (drop_cb), &second);
  g_signal_connect (second, "items-changed", G_CALLBACK (drop_cb), &first);
  g_assert_cmpint (gb_project_add_part (project, "x", GB_KIND_PART, HULL, 0, NULL), >, 0);
  g_clear_object (&first);
  g_clear_object (&second);
  g_assert_finalize_object (project);
}

/* Large builds ------------------------------------------------------------------------------------------- */

static GbBoat *
flat_boat (guint n)
{
  GbBoat *boat = gb_boat_new ();
  GbPart *group = (GbPart *) gb_record_new (GB_RECORD_PART);

  group->rec.id = 1;
  group->rec.position = 1;
  group->kind = GB_KIND_GROUP;
  group->name = g_strdup ("group");
  gb_boat_take (boat, &group->rec);
  for (guint i = 0; i < n; i++)
    {
      GbRecord *part = gb_record_new (GB_RECORD_PART);

      part->id = i + 2;
      part->owner = 1;
      part->position = i + 1;
      ((GbPart *) part)->name = g_strdup ("part");
      gb_boat_take (boat, part);
    }
  gb_boat_settle (boat);
  return boat;
}

static void
test_smallest_signals (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = flat_boat (10000);
  GbProject *project = gb_project_create (scratch->path, boat, NULL);
  GbRecordList *list = gb_record_list_new (project, GB_RECORD_PART, 1);
  Mirror *mirror = mirror_new (G_LIST_MODEL (list));
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  const gint64 last = 10001;

  g_assert_cmpint (gb_project_add_part (project, "x", GB_KIND_PART, 1, 5000, NULL), >, 0);
  g_assert_cmpuint (mirror->n_signals, ==, 1);
  g_assert_true (gb_project_move (project, GB_RECORD_PART, &last, 1, 1, 2, NULL));
  g_assert_cmpuint (mirror->n_signals, ==, 3);
  g_assert_true (gb_project_undo (project, NULL));
  g_assert_cmpuint (mirror->n_signals, ==, 5);
  /* Every second one: told as one change. */
  for (gint64 id = 2; id < 10000; id += 2)
    g_array_append_val (ids, id);
  g_assert_true (
    gb_project_remove (project, GB_RECORD_PART, (const gint64 *) (gpointer) ids->data, ids->len, NULL));
  g_assert_cmpuint (mirror->n_signals, ==, 6);
  assert_mirrored (mirror);
  g_assert_true (gb_project_undo (project, NULL));
  assert_mirrored (mirror);
  mirror_free (mirror);
  g_assert_finalize_object (list);
  g_assert_finalize_object (project);
}

static void
test_a_hundred_thousand (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbBoat) boat = flat_boat (100000);
  GbProject *project = gb_project_create (scratch->path, boat, NULL);
  GbRecordList *list = gb_record_list_new_all (project, GB_RECORD_PART);
  g_autoptr (GbRecordItem) item = g_list_model_get_item (G_LIST_MODEL (list), 77777);

  g_assert_cmpint (gb_project_add_part (project, "x", GB_KIND_PART, 1, 50000, NULL), >, 0);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (list)), ==, 100002);
  g_assert_cmpint (gb_record_list_get_id (list, 77778), ==, gb_record_item_get_id (item));
  g_assert_finalize_object (list);
  g_clear_object (&item);
  g_assert_finalize_object (project);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/record-list/mirror", test_tree_against_a_mirror);
  g_test_add_func ("/project/record-list/item-stays", test_an_item_stays);
  g_test_add_func ("/project/record-list/what-lives-in-what", test_what_lives_in_what);
  g_test_add_func ("/project/record-list/other-kinds", test_other_kinds);
  g_test_add_func ("/project/record-list/no-handler-left", test_no_handler_is_left);
  g_test_add_func ("/project/record-list/lists-may-go", test_lists_may_go_while_they_are_told);
  g_test_add_func ("/project/record-list/smallest-signals", test_smallest_signals);
  g_test_add_func ("/project/record-list/hundred-thousand", test_a_hundred_thousand);
  return g_test_run ();
}
