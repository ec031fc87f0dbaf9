/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/test-log.h"

G_BEGIN_DECLS

/* Inclining tests with their readings, and what follows from those beside what was computed. */
#define GB_TYPE_INCLINING_LOG (gb_inclining_log_get_type ())
G_DECLARE_FINAL_TYPE (GbIncliningLog, gb_inclining_log, GB, INCLINING_LOG, GtkBox)

/* Its tables: they take the project, and know what is at hand and the way to a row. */
GbTestLog *gb_inclining_log_get_tables (GbIncliningLog *self);

G_END_DECLS
