/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/test-log.h"
#include "project/project.h"

G_BEGIN_DECLS

/* Inclining tests with their readings, and what follows from those beside what was computed. */
#define GB_TYPE_INCLINING_LOG (gb_inclining_log_get_type ())
G_DECLARE_FINAL_TYPE (GbIncliningLog, gb_inclining_log, GB, INCLINING_LOG, GtkBox)

/* NULL lets go. */
void gb_inclining_log_set_project (GbIncliningLog *self, GbProject *project);
/* Its tables: what is at hand, and the way to a row. */
GbTestLog *gb_inclining_log_get_tables (GbIncliningLog *self);

G_END_DECLS
