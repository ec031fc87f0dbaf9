/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"
#include "engine/findings.h"

G_BEGIN_DECLS

/* A copy of the boat for workers. It is taken a little at a time, since a large boat takes longer to copy
 * than a window may stand still; what is dear and can be done by a worker is left to the first one that asks.
 * */
typedef struct _GbSnapshot GbSnapshot;

GbSnapshot *gb_snapshot_new (void);
GbSnapshot *gb_snapshot_ref (GbSnapshot *self);
void gb_snapshot_unref (GbSnapshot *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbSnapshot, gb_snapshot_unref)

/* Copies for about @microseconds more. TRUE once it is whole. The boat must not change in between. */
gboolean gb_snapshot_take_more (GbSnapshot *self, const GbBoat *boat, gint64 microseconds);

/* Of a whole one, on any thread. */
const GbBoat *gb_snapshot_boat (GbSnapshot *self);
const GbFindings *gb_snapshot_findings (GbSnapshot *self, gint64 today);

G_END_DECLS
