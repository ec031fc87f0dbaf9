/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/siblings.h"

#include "project/edit-private.h"

#include <math.h>

/* Closer than this share of their size, two positions leave no room between them for long. */
#define TOO_CLOSE 1e-9

const GPtrArray *
gb_siblings (const GbBoat *boat, GbRecordKind kind, gint64 owner)
{
  GbRecordKind owner_kind = gb_record_type (kind)->owner;
  const GbRecord *record;

  if (owner == 0)
    return gb_boat_roots (boat, kind);
  record = owner_kind != GB_N_RECORDS ? gb_boat_get (boat, owner_kind, owner) : NULL;
  return record != NULL ? gb_record_children_of (record, kind) : NULL;
}

gint64
gb_sibling_after (const GbBoat *boat, const GbRecord *record)
{
  const GPtrArray *siblings = gb_siblings (boat, record->kind, record->owner);
  guint position;

  if (siblings == NULL || !g_ptr_array_find ((GPtrArray *) siblings, record, &position)
      || position + 1 == siblings->len)
    return 0;
  return ((const GbRecord *) siblings->pdata[position + 1])->id;
}

static int
compare_index (gconstpointer a, gconstpointer b)
{
  const GbRecord *r = *(const GbRecord *const *) a;
  const GbRecord *s = *(const GbRecord *const *) b;

  return r->index < s->index ? -1 : r->index > s->index;
}

GPtrArray *
gb_tops (const GbBoat *boat, GbRecordKind kind, const gint64 *ids, guint n_ids)
{
  GPtrArray *tops = g_ptr_array_new ();
  const GbRecord *above = NULL; /* the last top */

  for (guint i = 0; i < n_ids; i++)
    {
      GbRecord *record = gb_boat_get (boat, kind, ids[i]);

      if (record != NULL && record->index != G_MAXUINT)
        g_ptr_array_add (tops, record);
    }
  g_ptr_array_sort (tops, compare_index);

  /* What lies below a top follows it directly. */
  for (guint i = 0; i < tops->len;)
    {
      const GbRecord *record = tops->pdata[i];
      guint end = above == NULL
                    ? 0
                    : above->index + 1 + (kind == GB_RECORD_PART ? ((const GbPart *) above)->n_below : 0);

      if (record->index < end)
        {
          g_ptr_array_remove_index (tops, i);
          continue;
        }
      above = record;
      i++;
    }
  return tops;
}

/* Positions for @n records of @order from @first on, between those of their neighbours. FALSE if there is no
 * room. Never 0, which means: not placed yet. */
static gboolean
place_run (const GPtrArray *order, guint first, guint n)
{
  double low = first > 0 ? ((GbRecord *) order->pdata[first - 1])->position : NAN;
  double high = first + n < order->len ? ((GbRecord *) order->pdata[first + n])->position : NAN;
  double step = 1;
  double start = 1;

  if (!isnan (low) && !isnan (high))
    step = (high - low) / (n + 1);
  if (step <= TOO_CLOSE * MAX (1, MAX (fabs (low), fabs (high))))
    return FALSE;

  if (!isnan (low))
    start = low + step;
  else if (!isnan (high))
    start = high - n;
  for (guint i = 0; i < n; i++)
    {
      double position = start + i * step;

      ((GbRecord *) order->pdata[first + i])->position = position != 0 ? position : step / 3;
    }
  return TRUE;
}

static void
number_anew (GbEdit *edit, const GbBoat *boat, const GPtrArray *order)
{
  for (guint i = 0; i < order->len; i++)
    {
      const GbRecord *record = order->pdata[i];
      GbRecord *put = gb_edit_get (edit, record->kind, record->id);

      if (put == NULL)
        put = gb_edit_touch (edit, boat, record->kind, record->id);
      put->position = i + 1;
    }
}

/* @order: all siblings as they shall stand. Those that are @edit's own are given positions, those that are
 * the boat's keep theirs if there is room. */
static void
arrange (GbEdit *edit, const GbBoat *boat, const GPtrArray *order)
{
  guint first = 0;

  for (guint i = 0; i <= order->len; i++)
    {
      const GbRecord *record = i < order->len ? order->pdata[i] : NULL;

      if (record != NULL && gb_edit_get (edit, record->kind, record->id) == record)
        continue;
      if (i > first && !place_run (order, first, i - first))
        {
          number_anew (edit, boat, order);
          return;
        }
      first = i + 1;
    }
}

void
gb_siblings_place (GbEdit *edit, const GbBoat *boat, const GPtrArray *records, gint64 owner, gint64 before)
{
  GbRecordKind kind = records->len > 0 ? ((const GbRecord *) records->pdata[0])->kind : GB_RECORD_PART;
  const GPtrArray *siblings = gb_siblings (boat, kind, owner);
  g_autoptr (GPtrArray) order = g_ptr_array_new ();
  g_autoptr (GHashTable) placed = g_hash_table_new (g_int64_hash, g_int64_equal);
  gboolean passed = FALSE;
  guint gap = 0;

  for (guint i = 0; i < records->len; i++)
    {
      GbRecord *record = records->pdata[i];

      record->owner = owner;
      g_hash_table_add (placed, &record->id);
    }
  for (guint i = 0; siblings != NULL && i < siblings->len; i++)
    {
      GbRecord *sibling = siblings->pdata[i];

      passed = passed || (before != 0 && sibling->id == before);
      if (!g_hash_table_contains (placed, &sibling->id))
        g_ptr_array_add (order, sibling);
      if (!passed)
        gap = order->len;
    }
  for (guint i = 0; i < records->len; i++)
    g_ptr_array_insert (order, (int) (gap + i), records->pdata[i]);
  arrange (edit, boat, order);
}

void
gb_siblings_place_copies (GbEdit *edit, const GbBoat *boat, GHashTable *copies)
{
  g_autoptr (GHashTable) done = g_hash_table_new (g_int64_hash, g_int64_equal);
  GHashTableIter iter;
  gpointer original;

  g_hash_table_iter_init (&iter, copies);
  while (g_hash_table_iter_next (&iter, &original, NULL))
    {
      GbRecord *one = original;
      const GPtrArray *siblings = gb_siblings (boat, one->kind, one->owner);
      g_autoptr (GPtrArray) order = g_ptr_array_new ();

      if (siblings == NULL || !g_hash_table_add (done, &one->owner))
        continue;
      for (guint i = 0; i < siblings->len; i++)
        {
          GbRecord *copy = g_hash_table_lookup (copies, siblings->pdata[i]);

          g_ptr_array_add (order, siblings->pdata[i]);
          if (copy != NULL)
            {
              copy->owner = one->owner;
              g_ptr_array_add (order, copy);
            }
        }
      arrange (edit, boat, order);
    }
}

/* The position of the last sibling in the place of @record, as an address that is good while @last is. */
static double *
last_position (GHashTable *last, const GbBoat *boat, const GbRecord *record)
{
  g_autofree char *key = g_strdup_printf ("%d %" G_GINT64_FORMAT, record->kind, record->owner);
  double *position = g_hash_table_lookup (last, key);

  if (position == NULL)
    {
      const GPtrArray *siblings = gb_siblings (boat, record->kind, record->owner);

      position = g_new0 (double, 1);
      if (siblings != NULL && siblings->len > 0)
        *position = MAX (0, ((const GbRecord *) siblings->pdata[siblings->len - 1])->position);
      g_hash_table_insert (last, g_steal_pointer (&key), position);
    }
  return position;
}

void
gb_siblings_place_new (GbEdit *edit, const GbBoat *boat)
{
  g_autoptr (GHashTable) last = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  const GPtrArray *puts = gb_edit_puts (edit);

  for (guint i = 0; i < puts->len; i++)
    {
      GbRecord *record = puts->pdata[i];
      double *position;

      if (record->id > 0)
        continue;
      position = last_position (last, boat, record);
      if (record->position == 0)
        record->position = *position + 1;
      *position = MAX (*position, record->position);
    }
}
