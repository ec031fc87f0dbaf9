/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/findings.h"
#include "engine/righting.h"
#include "engine/small-craft-rule.h"
#include "engine/swamped.h"

G_BEGIN_DECLS

/* The dear findings of one condition, for a report or a worker: each may be NULL where there is none. */
typedef struct
{
  gint64 condition;
  GbRighting *righting;
  GbSwamped *swamped;
  GbRule *rule;
} GbStudy;

/* @condition 0: nobody aboard. NULL if cancelled. */
GbStudy *gb_study_find (const GbBoat *boat, const GbFindings *findings, gint64 condition,
                        GbCancelFunc is_cancelled, gpointer data);
void gb_study_free (GbStudy *study);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbStudy, gb_study_free)

/* Of every condition that the findings know, in their order. (element-type GbStudy) (transfer full); NULL if
 * cancelled. */
GPtrArray *gb_studies_find (const GbBoat *boat, const GbFindings *findings, GbCancelFunc is_cancelled,
                            gpointer data);

G_END_DECLS
