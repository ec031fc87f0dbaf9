/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/row-diff.h"

/* After what is the same at both ends is cut off, one walk along both lists decides for each key that
 * differs: it went (not in the new list), it came (not in the old one), or one of the two at hand moved: the
 * one whose other place is farther away. A key that is taken as moved counts as gone here and as come there.
 */

#define MAX_RUNS 64

typedef struct
{
  guint position, removed;
  guint from, n_added; /* in the new list */
} Run;

typedef struct
{
  const gint64 *old_keys, *new_keys;
  guint n_old, n_new;
  GHashTable *old_at, *new_at; /* key -> index + 1 */
  GHashTable *moved;           /* keys taken as moved */
  GArray *runs;
} Diff;

static GHashTable *
index_keys (const gint64 *keys, guint n)
{
  GHashTable *at = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = 0; i < n; i++)
    g_hash_table_insert (at, (gpointer) &keys[i], GUINT_TO_POINTER (i + 1));
  return at;
}

static guint
place (GHashTable *at, const gint64 *key)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (at, key));
}

/* Adds to the last run where that ends here. */
static Run *
run_at (Diff *diff, guint position)
{
  Run *last = diff->runs->len > 0 ? &g_array_index (diff->runs, Run, diff->runs->len - 1) : NULL;
  Run fresh = { .position = position };

  if (last != NULL && last->position + last->n_added == position)
    return last;
  g_array_append_val (diff->runs, fresh);
  return &g_array_index (diff->runs, Run, diff->runs->len - 1);
}

static void
take_out (Diff *diff, guint position)
{
  run_at (diff, position)->removed++;
}

static void
put_in (Diff *diff, guint position, guint j)
{
  Run *run = run_at (diff, position);

  if (run->n_added++ == 0)
    run->from = j;
}

/* FALSE if it gave up because there are too many runs. */
static gboolean
walk (Diff *diff)
{
  guint i = 0, j = 0;

  while ((i < diff->n_old || j < diff->n_new) && diff->runs->len <= MAX_RUNS)
    {
      const gint64 *o = i < diff->n_old ? &diff->old_keys[i] : NULL;
      const gint64 *n = j < diff->n_new ? &diff->new_keys[j] : NULL;
      gboolean o_goes = o != NULL && (place (diff->new_at, o) == 0 || g_hash_table_contains (diff->moved, o));
      gboolean n_comes
        = n != NULL && (place (diff->old_at, n) == 0 || g_hash_table_contains (diff->moved, n));

      /* What stands before @j is done, so that @j is the position of the list as it stands by now. */
      if (o != NULL && n != NULL && *o == *n)
        i++, j++;
      else if (o_goes)
        take_out (diff, j), i++;
      else if (n_comes)
        put_in (diff, j, j), j++;
      else if (place (diff->new_at, o) - 1 - j >= place (diff->old_at, n) - 1 - i)
        g_hash_table_add (diff->moved, (gpointer) o);
      else
        g_hash_table_add (diff->moved, (gpointer) n);
    }
  return diff->runs->len <= MAX_RUNS;
}

void
gb_row_diff (const gint64 *old_keys, guint n_old, const gint64 *new_keys, guint n_new, GbRowRun run,
             gpointer user_data)
{
  static const gint64 nothing;
  guint head = 0, tail = 0;
  Diff diff;

  /* An empty array may have no data, and no place in it then. */
  old_keys = n_old > 0 ? old_keys : &nothing;
  new_keys = n_new > 0 ? new_keys : &nothing;

  while (head < n_old && head < n_new && old_keys[head] == new_keys[head])
    head++;
  while (tail < n_old - head && tail < n_new - head
         && old_keys[n_old - 1 - tail] == new_keys[n_new - 1 - tail])
    tail++;
  if (head + tail == n_old && head + tail == n_new)
    return;

  diff = (Diff){ .old_keys = old_keys + head,
                 .new_keys = new_keys + head,
                 .n_old = n_old - head - tail,
                 .n_new = n_new - head - tail };
  diff.old_at = index_keys (diff.old_keys, diff.n_old);
  diff.new_at = index_keys (diff.new_keys, diff.n_new);
  diff.moved = g_hash_table_new (g_int64_hash, g_int64_equal);
  diff.runs = g_array_new (FALSE, FALSE, sizeof (Run));

  if (!walk (&diff))
    {
      Run all = { 0, diff.n_old, 0, diff.n_new };

      g_array_set_size (diff.runs, 0);
      g_array_append_val (diff.runs, all);
    }
  /* From here on the caller may change the old list; only the new one is read. */
  for (guint k = 0; k < diff.runs->len; k++)
    {
      const Run *r = &g_array_index (diff.runs, Run, k);

      run (head + r->position, r->removed, diff.new_keys + r->from, r->n_added, user_data);
    }

  g_hash_table_unref (diff.old_at);
  g_hash_table_unref (diff.new_at);
  g_hash_table_unref (diff.moved);
  g_array_unref (diff.runs);
}
