/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "pages/grid-pane.h"

G_BEGIN_DECLS

/* A table of tests, beside it the table of what was read in the one that is selected, and below both what
 * follows from it.
 *
 * Signal "shown" (): another test is at hand, or the project has changed: what follows is to be shown anew. */
#define GB_TYPE_TEST_LOG (gb_test_log_get_type ())
G_DECLARE_FINAL_TYPE (GbTestLog, gb_test_log, GB, TEST_LOG, GtkBox)

/* Static data; the words are untranslated. */
typedef struct
{
  const GbGridType *tests;
  const char *heading;
  const GbGridType *readings;
  const char *readings_heading;
  const char *nothing, *sentence; /* while there is no test */
} GbTestLogType;

/* @result stands below the tables, and scrolls. */
GbTestLog *gb_test_log_new (const GbTestLogType *type, GtkWidget *result);
/* NULL lets go. */
void gb_test_log_set_project (GbTestLog *self, GbProject *project);
GbProject *gb_test_log_get_project (GbTestLog *self);
GbGrid *gb_test_log_get_grid (GbTestLog *self);
/* The test that is selected, with the blank row at hand the last one; 0 and NULL: there is none. */
gint64 gb_test_log_at_hand (GbTestLog *self);
const GbRecord *gb_test_log_get_record (GbTestLog *self);
void gb_test_log_go_to (GbTestLog *self, const GbPlace *place);

G_END_DECLS
