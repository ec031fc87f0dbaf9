/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/grid.h"

G_BEGIN_DECLS

/* Tests of the model in the tub with its loads; what was read in boat size beside what was computed, what
 * would explain the difference, and what the model must weigh. */
#define GB_TYPE_TUB_LOG (gb_tub_log_get_type ())
G_DECLARE_FINAL_TYPE (GbTubLog, gb_tub_log, GB, TUB_LOG, GtkBox)

/* NULL lets go. */
void gb_tub_log_set_project (GbTubLog *self, GbProject *project);
/* The table of the tests. */
GbGrid *gb_tub_log_get_grid (GbTubLog *self);
/* The test that is selected, else the last one; 0: there is none. */
gint64 gb_tub_log_at_hand (GbTubLog *self);
/* To the row of a test or a load of the model. */
void gb_tub_log_go_to (GbTubLog *self, const GbPlace *place);

G_END_DECLS
