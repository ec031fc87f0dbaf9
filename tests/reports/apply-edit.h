/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

/* Applies @edit (consumed) to a boat in memory as the project would to its file: it is checked, its records
 * get ids and places. */
void apply_edit (GbBoat *boat, GbEdit *edit);

/* The only part that is called @name. */
const GbPart *part_called (const GbBoat *boat, const char *name);

G_END_DECLS
