/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/chart-area.h"

G_BEGIN_DECLS

/* Loads of a condition dragged about in the charts of floating. While one is dragged all figures are found
 * anew at each motion; when it is let go, one edit puts it there. The keys do the same by small steps.
 * Signals:
 *
 *   "picked" (gint64 load)                                          a load was pressed
 *   "moved" (gint64 load, const GbAfloat *, const GbVec3 *centre)   how she floats with its centre there; the
 * figures are borrowed until the next of these signals "ended" () no longer dragged, nothing is changed yet
 */
#define GB_TYPE_AFLOAT_DRAG (gb_afloat_drag_get_type ())
G_DECLARE_FINAL_TYPE (GbAfloatDrag, gb_afloat_drag, GB, AFLOAT_DRAG, GObject)

GbAfloatDrag *gb_afloat_drag_new (void);
/* Listens to an area; it becomes draggable. */
void gb_afloat_drag_attach (GbAfloatDrag *self, GbChartArea *area);
/* @project is borrowed until the next call and may be NULL; @load is what the keys move, 0: none. A drag
 * under way is let go. */
void gb_afloat_drag_set (GbAfloatDrag *self, GbProject *project, gint64 condition, gint64 load);

G_END_DECLS
