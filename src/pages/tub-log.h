/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/test-log.h"

G_BEGIN_DECLS

/* Tests of the model in the tub with its loads; what was read in boat size beside what was computed, what
 * would explain the difference, and what the model must weigh. */
#define GB_TYPE_TUB_LOG (gb_tub_log_get_type ())
G_DECLARE_FINAL_TYPE (GbTubLog, gb_tub_log, GB, TUB_LOG, GtkBox)

/* Its tables: they take the project, and know what is at hand and the way to a row. */
GbTestLog *gb_tub_log_get_tables (GbTubLog *self);

G_END_DECLS
