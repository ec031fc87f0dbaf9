/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "engine/working.h"
#include "project/project.h"

G_BEGIN_DECLS

/* A figure in a list: what it is, its value, and where there is one a 'how?' that opens the working. */
#define GB_TYPE_FACT_ROW (gb_fact_row_get_type ())
G_DECLARE_FINAL_TYPE (GbFactRow, gb_fact_row, GB, FACT_ROW, AdwActionRow)

/* How the figure came about; called when 'how?' is clicked. (transfer full) */
typedef GbWorking *(*GbFactWorking) (const GbBoat *boat, const GbFindings *findings);

/* @title is translated already; @working may be NULL. */
GbFactRow *gb_fact_row_new (const char *title, GbFactWorking working);

/* A row whose working needs more than that: @ask is called with @data. */
typedef GbWorking *(*GbFactAsk) (gpointer data);
GbFactRow *gb_fact_row_new_asking (const char *title, GbFactAsk ask, gpointer data);

/* The project that the working is asked of; borrowed until the next call. */
void gb_fact_row_set_project (GbFactRow *self, GbProject *project);
/* @passed marks a limit that is passed, by colour, weight and a sign. */
void gb_fact_row_set_value (GbFactRow *self, const char *value, gboolean passed);

G_END_DECLS
