/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* The weighing log: what was weighed and when, what the scale said against what was expected, and below it the readings at each support. */
#define GB_TYPE_WEIGHING_LOG (gb_weighing_log_get_type ())
G_DECLARE_FINAL_TYPE (GbWeighingLog, gb_weighing_log, GB, WEIGHING_LOG, GtkBox)

/* NULL lets go. */
void gb_weighing_log_set_project (GbWeighingLog *self, GbProject *project);
/* To the row of a weighing or a reading. */
void gb_weighing_log_go_to (GbWeighingLog *self, const GbPlace *place);

G_END_DECLS
