/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/snapshot.h"

/* Records between two looks at the clock. */
#define AT_ONCE 64

struct _GbSnapshot
{
  gatomicrefcount count;
  GbBoat *boat;

  /* The record to be copied next. */
  guint kind, index;

  GMutex lock; /* of what follows, once it is whole */
  gboolean settled;
  GbFindings *findings;
};

GbSnapshot *
gb_snapshot_new (void)
{
  GbSnapshot *self = g_new0 (GbSnapshot, 1);

  g_atomic_ref_count_init (&self->count);
  self->boat = gb_boat_new ();
  g_mutex_init (&self->lock);
  return self;
}

GbSnapshot *
gb_snapshot_ref (GbSnapshot *self)
{
  g_atomic_ref_count_inc (&self->count);
  return self;
}

void
gb_snapshot_unref (GbSnapshot *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->count))
    return;
  g_clear_pointer (&self->findings, gb_findings_free);
  gb_boat_free (self->boat);
  g_mutex_clear (&self->lock);
  g_free (self);
}

/* Copies up to so many records of the kind that is due. */
static void
copy_some (GbSnapshot *self, const GbBoat *boat)
{
  const GPtrArray *all = gb_boat_all (boat, self->kind);
  guint end = MIN (self->index + AT_ONCE, all->len);

  for (; self->index < end; self->index++)
    gb_boat_take (self->boat, gb_record_copy (all->pdata[self->index]));
  if (self->index == all->len)
    {
      self->kind++;
      self->index = 0;
    }
}

gboolean
gb_snapshot_take_more (GbSnapshot *self, const GbBoat *boat, gint64 microseconds)
{
  gint64 until = g_get_monotonic_time () + microseconds;

  while (self->kind < GB_N_RECORDS && g_get_monotonic_time () < until)
    copy_some (self, boat);
  return self->kind == GB_N_RECORDS;
}

static void
settle (GbSnapshot *self)
{
  if (!self->settled)
    gb_boat_settle (self->boat);
  self->settled = TRUE;
}

const GbBoat *
gb_snapshot_boat (GbSnapshot *self)
{
  g_autoptr (GMutexLocker) locker G_GNUC_UNUSED = g_mutex_locker_new (&self->lock);

  settle (self);
  return self->boat;
}

const GbFindings *
gb_snapshot_findings (GbSnapshot *self, gint64 today)
{
  g_autoptr (GMutexLocker) locker G_GNUC_UNUSED = g_mutex_locker_new (&self->lock);

  settle (self);
  if (self->findings == NULL)
    {
      self->findings = gb_findings_new ();
      gb_findings_find (self->findings, self->boat, GB_TOUCHED_ALL, today);
    }
  return self->findings;
}
