/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "store/store.h"

G_BEGIN_DECLS

/* A folder of its own for a test case, and what most cases do in it. Everything here fails the test if it does not succeed. */
typedef struct
{
  char *folder;
  char *path; /* build.garboard in it; not there yet */
} Scratch;

Scratch *scratch_new (void);
/* Removes the folder, after making sure that nothing but the files of the builds is in it: no temporary file, no journal. */
void scratch_free (Scratch *scratch);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Scratch, scratch_free)

/* Makes the file from @boat (NULL: an empty build) and opens it to write. */
GbStore *scratch_store (Scratch *scratch, const GbBoat *boat);
GbStore *scratch_open (const char *path);
GbBoat *scratch_load (GbStore *store);
/* The file as SQL sees it, with nothing checked: what another program would do to it. */
void scratch_sql (const char *path, const char *sql);
gint64 scratch_integer (const char *path, const char *sql);

/* The two hold the same. */
void scratch_assert_equal (const GbBoat *a, const GbBoat *b);

G_END_DECLS
