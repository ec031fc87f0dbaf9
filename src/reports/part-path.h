/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* Where a part is, as text: the names of its groups from the outside in, "Hull/Frames". A stroke in a name is
 * written "\/", a backslash
 * "\\". Parts lists, copied rows and the import share it. */

/* The groups that @part is in, below @top (NULL: all of them); "" at the top. Free it. */
char *gb_part_path (const GbBoat *boat, const GbPart *part, const GbPart *top);
/* The path of what is called @name in the group @path. Free it. */
char *gb_path_join (const char *path, const char *name);
/* The path of @names. Free it. */
char *gb_path_of (char *const *names);
/* The names in @path, without empty ones. Free with g_strfreev(). */
GStrv gb_path_split (const char *path);

G_END_DECLS
