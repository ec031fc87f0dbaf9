/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "text.h"

G_BEGIN_DECLS

/* The key beside a drawing: rows of a mark, a name, and figures under it. */

/* Draws a mark about a point. */
typedef void (*GbMark) (GbCanvas *canvas, double x, double y);

typedef struct
{
  GbMark mark; /* NULL: none */
  char *name;
  char *figures;
} GbKeyRow;

GArray *gb_key_new (void); /* (element-type GbKeyRow) */
/* Takes @figures; nothing is added where they are NULL. */
void gb_key_add (GArray *key, GbMark mark, const char *name, char *figures);

GbBox gb_key_measure (const GArray *key, GbCanvas *canvas);
/* As many rows as @box is high. */
void gb_key_draw (const GArray *key, GbCanvas *canvas, GbBox box);

G_END_DECLS
