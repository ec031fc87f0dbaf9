/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef double (*GbRootFunc) (double x, gpointer data);

/* Where @f is nothing between @a and @b, at which it is @fa and @fb, of different signs: false position in
 * the Illinois form (Dowell and Jarratt, BIT 11, 1971), as near as @near. Where f jumps over nothing, the
 * place of the jump. */
double gb_root (GbRootFunc f, gpointer data, double a, double fa, double b, double fb, double near);

G_END_DECLS
