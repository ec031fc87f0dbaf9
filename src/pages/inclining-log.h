/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "widgets/grid.h"

G_BEGIN_DECLS

/* Inclining tests with their readings, and what follows from those beside what was computed. */
#define GB_TYPE_INCLINING_LOG (gb_inclining_log_get_type ())
G_DECLARE_FINAL_TYPE (GbIncliningLog, gb_inclining_log, GB, INCLINING_LOG, GtkBox)

/* NULL lets go. */
void gb_inclining_log_set_project (GbIncliningLog *self, GbProject *project);
/* The table of the tests. */
GbGrid *gb_inclining_log_get_grid (GbIncliningLog *self);
/* The test that is selected, else the last one; 0: there is none. */
gint64 gb_inclining_log_at_hand (GbIncliningLog *self);
/* To the row of a test or a reading. */
void gb_inclining_log_go_to (GbIncliningLog *self, const GbPlace *place);

G_END_DECLS
