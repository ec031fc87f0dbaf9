/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The rows of a table against a mirror: a plain list that applies each "items-changed" and must stay equal,
 * and whose rows must be those that the boat, the open groups and the filter give afresh, through a few
 * hundred random edits, undos, foldings and filters. */

#include <glib/gstdio.h>

#include "generate.h"
#include "widgets/grid-rows.h"

#define N_STEPS 300

typedef struct
{
  char *folder;
  GbProject *project;
  GbGridRows *rows;
  GPtrArray *mirror; /* of GbGridRow */
  guint n_told;
} Fixture;

static void
items_changed_cb (GListModel *model, guint position, guint removed, guint added, Fixture *fixture)
{
  g_assert_cmpuint (position + removed, <=, fixture->mirror->len);
  if (removed > 0)
    g_ptr_array_remove_range (fixture->mirror, position, removed);
  for (guint i = 0; i < added; i++)
    g_ptr_array_insert (fixture->mirror, (int) (position + i), g_list_model_get_item (model, position + i));
  fixture->n_told++;
}

static void
set_up (Fixture *fixture, GbBoat *boat, GbRecordKind kind, gint64 owner)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;

  fixture->folder = g_dir_make_tmp ("garboard-rows-XXXXXX", NULL);
  path = g_build_filename (fixture->folder, "rows.garboard", NULL);
  fixture->project = gb_project_create (path, boat, &error);
  g_assert_no_error (error);
  fixture->rows = gb_grid_rows_new (fixture->project, kind, owner, TRUE);
  fixture->mirror = g_ptr_array_new_with_free_func (g_object_unref);
  fixture->n_told = 0;
  g_signal_connect (fixture->rows, "items-changed", G_CALLBACK (items_changed_cb), fixture);
  items_changed_cb (G_LIST_MODEL (fixture->rows), 0, 0,
                    g_list_model_get_n_items (G_LIST_MODEL (fixture->rows)), fixture);
}

static void
tear_down (Fixture *fixture)
{
  g_autofree char *path = g_build_filename (fixture->folder, "rows.garboard", NULL);

  g_ptr_array_unref (fixture->mirror);
  g_assert_finalize_object (fixture->rows);
  g_assert_finalize_object (fixture->project);
  g_unlink (path);
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
}

static void
check_mirror (Fixture *fixture)
{
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (fixture->rows)), ==, fixture->mirror->len);
  for (guint i = 0; i < fixture->mirror->len; i++)
    {
      g_autoptr (GbGridRow) row = g_list_model_get_item (G_LIST_MODEL (fixture->rows), i);

      g_assert_true (row == fixture->mirror->pdata[i]);
    }
}

/* Without a filter: each part is shown whose groups are all open, in the boat's order and at its depth. */
static void
check_open_tree (Fixture *fixture, GHashTable *closed)
{
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (fixture->project), GB_RECORD_PART);
  guint at = 1; /* after the boat's own row */

  g_assert_true (gb_grid_row_is_boat (fixture->mirror->pdata[0]));
  for (guint i = 0; i < parts->len;)
    {
      const GbPart *part = parts->pdata[i];
      GbGridRow *row = fixture->mirror->pdata[at++];

      g_assert_cmpint (gb_grid_row_get_id (row), ==, part->rec.id);
      g_assert_cmpuint (gb_grid_row_get_depth (row), ==, part->depth + 1);
      i += g_hash_table_contains (closed, &part->rec.id) ? part->n_below + 1 : 1;
    }
  g_assert_true (gb_grid_row_is_blank (fixture->mirror->pdata[at]));
  g_assert_cmpuint (at + 1, ==, fixture->mirror->len);
}

static const GbPart *
random_part (Fixture *fixture, gboolean group)
{
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (fixture->project), GB_RECORD_PART);

  for (guint tries = 0; parts->len > 0 && tries < 50; tries++)
    {
      const GbPart *part = parts->pdata[g_test_rand_int_range (0, (gint32) parts->len)];

      if (!group || part->kind == GB_KIND_GROUP)
        return part;
    }
  return NULL;
}

/* Verbs that are refused change nothing, which is as good a step as any. */
static void
random_edit (Fixture *fixture)
{
  const GbPart *part = random_part (fixture, FALSE);
  const GbPart *group = random_part (fixture, TRUE);
  gint64 owner = group != NULL && g_test_rand_bit () ? group->rec.id : 0;
  gint64 id = part != NULL ? part->rec.id : 0;

  switch (g_test_rand_int_range (0, 7))
    {
    case 0:
      gb_project_add_part (fixture->project, "Fresh", g_test_rand_bit () ? GB_KIND_PART : GB_KIND_GROUP,
                           owner, 0, NULL);
      break;
    case 1:
      if (id != 0)
        gb_project_remove (fixture->project, GB_RECORD_PART, &id, 1, NULL);
      break;
    case 2:
    case 3:
      if (id != 0)
        gb_project_move (fixture->project, GB_RECORD_PART, &id, 1, owner, 0, NULL);
      break;
    case 4:
      if (id != 0)
        gb_project_duplicate (fixture->project, GB_RECORD_PART, &id, 1, NULL, NULL);
      break;
    case 5:
      gb_project_undo (fixture->project, NULL);
      break;
    default:
      gb_project_redo (fixture->project, NULL);
      break;
    }
}

static void
random_fold (Fixture *fixture, GHashTable *closed)
{
  GbGridRow *row = fixture->mirror->pdata[g_test_rand_int_range (0, (gint32) fixture->mirror->len)];
  gboolean open = g_test_rand_bit ();
  gint64 id = gb_grid_row_get_id (row);

  if (gb_grid_row_is_boat (row) || !gb_grid_row_can_open (row))
    return;
  gb_grid_rows_set_open (fixture->rows, row, open);
  if (open)
    g_hash_table_remove (closed, &id);
  else
    g_hash_table_add (closed, g_memdup2 (&id, sizeof id));
}

static void
test_random_walk (void)
{
  g_autoptr (GbBoat) boat = generate_boat (60, 7);
  g_autoptr (GHashTable) closed = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  Fixture fixture;

  set_up (&fixture, boat, GB_RECORD_PART, 0);
  for (guint i = 0; i < N_STEPS; i++)
    {
      if (g_test_rand_int_range (0, 4) == 0)
        random_fold (&fixture, closed);
      else
        random_edit (&fixture);
      check_mirror (&fixture);
      check_open_tree (&fixture, closed);
    }
  tear_down (&fixture);
}

static void
test_filter (void)
{
  g_autoptr (GbBoat) boat = generate_boat (200, 3);
  Fixture fixture;

  set_up (&fixture, boat, GB_RECORD_PART, 0);
  for (guint i = 0; i < 60; i++)
    {
      const GbPart *part = random_part (&fixture, FALSE);
      g_autofree char *word = part != NULL ? g_utf8_strdown (part->name, -1) : g_strdup ("none");
      guint position;

      gb_grid_rows_set_filter (fixture.rows, word);
      check_mirror (&fixture);
      /* It is there, and so are all the groups that it lies in. */
      for (const GbPart *up = part; up != NULL;
           up = gb_boat_part (gb_project_get_boat (fixture.project), up->rec.owner))
        g_assert_true (gb_grid_rows_find (fixture.rows, GB_RECORD_PART, up->rec.id, &position));
      random_edit (&fixture);
      check_mirror (&fixture);
    }
  gb_grid_rows_set_filter (fixture.rows, "no part is called this");
  check_mirror (&fixture);
  g_assert_cmpuint (fixture.mirror->len, ==, 2); /* the boat and the blank row */
  gb_grid_rows_set_filter (fixture.rows, NULL);
  check_mirror (&fixture);
  g_assert_cmpuint (fixture.mirror->len, ==,
                    gb_boat_n (gb_project_get_boat (fixture.project), GB_RECORD_PART) + 2);
  tear_down (&fixture);
}

/* What moves is told as little more than a move: the rows between stay. */
static void
test_few_runs (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  gint64 last = 100;
  Fixture fixture;

  for (gint64 i = 1; i <= last; i++)
    {
      GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

      part->rec.id = i;
      part->rec.position = (double) i;
      part->name = g_strdup ("Part");
      gb_boat_take (boat, &part->rec);
    }
  gb_boat_settle (boat);
  set_up (&fixture, boat, GB_RECORD_PART, 0);
  fixture.n_told = 0;
  g_assert_true (gb_project_move (fixture.project, GB_RECORD_PART, &last, 1, 0, 1, NULL));
  g_assert_cmpuint (fixture.n_told, ==, 2);
  check_mirror (&fixture);
  tear_down (&fixture);
}

static void
test_draft (void)
{
  g_autoptr (GbBoat) boat = generate_boat (40, 5);
  Fixture fixture;

  set_up (&fixture, boat, GB_RECORD_PART, 0);
  for (guint i = 0; i < 60; i++)
    {
      const GbPart *part = random_part (&fixture, FALSE);
      GbGridSpot spot = part != NULL ? (GbGridSpot){ part->rec.owner, part->rec.id } : (GbGridSpot){ 0, 0 };
      guint position;

      gb_grid_rows_set_draft (fixture.rows, spot, GB_KIND_PART);
      check_mirror (&fixture);
      g_assert_true (gb_grid_rows_find_draft (fixture.rows, &position));
      g_assert_true (gb_grid_row_is_draft (fixture.mirror->pdata[position]));
      g_assert_cmpuint (gb_grid_row_get_depth (fixture.mirror->pdata[position]), ==,
                        part != NULL ? part->depth + 1 : 1);
      random_edit (&fixture);
      check_mirror (&fixture);
    }
  gb_grid_rows_clear_draft (fixture.rows);
  check_mirror (&fixture);
  tear_down (&fixture);
}

/* Lines of a receipt: a flat list of one owner, which may go. */
static void
test_flat (void)
{
  g_autoptr (GbBoat) boat = generate_boat (100, 2);
  const GPtrArray *purchases = gb_boat_roots (boat, GB_RECORD_PURCHASE);
  const GbRecord *purchase = purchases->pdata[0];
  gint64 id = purchase->id;
  Fixture fixture;

  set_up (&fixture, boat, GB_RECORD_LINE, id);
  g_assert_cmpuint (fixture.mirror->len, ==, gb_record_children (purchase)->len + 1);
  g_assert_cmpint (gb_project_add (fixture.project, gb_record_new (GB_RECORD_LINE), id, 0, NULL), >, 0);
  check_mirror (&fixture);
  g_assert_cmpuint (fixture.mirror->len, ==, gb_record_children (purchase)->len + 2);
  g_assert_true (gb_project_remove (fixture.project, GB_RECORD_PURCHASE, &id, 1, NULL));
  check_mirror (&fixture);
  g_assert_cmpuint (fixture.mirror->len, ==, 1);
  tear_down (&fixture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/grid-rows/random-walk", test_random_walk);
  g_test_add_func ("/grid-rows/filter", test_filter);
  g_test_add_func ("/grid-rows/few-runs", test_few_runs);
  g_test_add_func ("/grid-rows/draft", test_draft);
  g_test_add_func ("/grid-rows/flat", test_flat);
  return g_test_run ();
}
