/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"

G_BEGIN_DECLS

/* Something on a scale. Each is one undo; returns the id of the new record, or 0 with a sentence. */

/* The part or group @part_id (0: the whole boat) weighs @mass on a single scale: adds a weighing with one
 * reading. */
gint64 gb_project_weigh (GbProject *self, gint64 part_id, gint64 date, double mass, GbOnScale on_scale,
                         GError **error);

/* A sample of a material; @draft (a GbSample, consumed) has its mass and sides. */
gint64 gb_project_weigh_sample (GbProject *self, gint64 material_id, GbRecord *draft, GError **error);

/* "This sheet weighs 9.8 kg": a sample of the stock's material whose sides are those of @pieces of the stock.
 * Refused where the stock has no material or no sides (tins and single things). */
gint64 gb_project_weigh_stock (GbProject *self, gint64 stock_id, gint64 date, double mass, double pieces,
                               GError **error);

G_END_DECLS
