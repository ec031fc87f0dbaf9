/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/crew-map.h"
#include "engine/study.h"
#include "project/project.h"

G_BEGIN_DECLS

/* The dear findings of floating, found on workers: asking gives what is known for the boat as it stands and
 * starts the worker otherwise; the project's signal "study-found" (gint64 condition) says that there is more.
 * A change cancels and forgets them. What is given is borrowed until the next change. */

/* NULL until it is known. */
const GbStudy *gb_project_get_study (GbProject *self, gint64 condition);
/* May not be whole yet, see GbCrewMap.n_rows_found; NULL before its first rows. One map at a time: asking for
 * another load cancels and forgets it. Each "study-found" may put another in its place, so this one is
 * borrowed until then. */
const GbCrewMap *gb_project_get_crew_map (GbProject *self, gint64 condition, gint64 load);

G_END_DECLS
