/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "scratch.h"

G_BEGIN_DECLS

/* A file as the first version of Garboard made it, from that version's own schema (schema-1.sql), with rows in the tables that have
 * changed since and in those that refer to them, an edit in its history, and numbers that were used once and are free now. */
void older_make (const char *path);

/* What today's Garboard must read from it. */
GbBoat *older_boat (void);

/* The highest number that a load of that file ever had; the highest that it has is lower. */
#define OLDER_LAST_LOAD 90

G_END_DECLS
