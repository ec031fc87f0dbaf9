/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"

G_BEGIN_DECLS

/* Fills @box with the colour and pattern of @role, and draws its outline. Patterns are lines and dots of
 * their own rather than a repeated picture, so that files of lines stay sharp and small; they run on from one
 * box to the next. */
void gb_pattern_fill (GbCanvas *canvas, GbRole role, GbBox box);

/* The same for the path that is set, which lies within @box; the path is gone afterwards. */
void gb_pattern_fill_path (GbCanvas *canvas, GbRole role, GbBox box);

/* The same without an outline, for a path that is put together from pieces; @apart times as far apart, and as
 * much fainter. */
void gb_pattern_fill_pieces (GbCanvas *canvas, GbRole role, GbBox box, double apart);

G_END_DECLS
