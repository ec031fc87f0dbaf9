/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records.h"

G_BEGIN_DECLS

/* The table of materials that comes with Garboard: data/materials.tsv, which a person can read and amend. Tab-separated; the first line
 * that does not start with '#' names the columns, which are names of the material's fields; quantities are SI numbers or texts with a unit. */

/* (element-type GbMaterial) (transfer full), in the table's order; ids are 0. NULL with a sentence that names the line. */
GPtrArray *gb_catalogue_parse (const char *text, GError **error);

/* The table as it is installed (GARBOARD_DATA_DIR or the system's data folders), with rows of the builder's own from materials.tsv in
 * garboard/ of the user's data folder before it. Read once; borrowed. An unreadable table is an empty one, with a word on the log. */
const GPtrArray *gb_catalogue_get (void);

/* The material called @name, whatever the case; or NULL. */
const GbMaterial *gb_catalogue_find (const char *name);

G_END_DECLS
