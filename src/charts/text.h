/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "canvas.h"

G_BEGIN_DECLS

/* Words in a picture: never under 9 pt, cut with an ellipsis where they would be too wide, and never set over
 * others. */
typedef enum
{
  GB_TEXT_TITLE,
  GB_TEXT_STRONG,
  GB_TEXT_PLAIN,
  GB_N_TEXTS
} GbTextLook;

/* Which point of the words stands at the given place: one of each row, added up. */
typedef enum
{
  GB_AT_LEFT = 0,
  GB_AT_CENTRE = 1,
  GB_AT_RIGHT = 2,

  GB_AT_TOP = 0,
  GB_AT_MIDDLE = 4,
  GB_AT_BOTTOM = 8,
} GbAnchor;

#define GB_ANY_WIDTH -1.0

double gb_text_width (GbCanvas *canvas, GbTextLook look, const char *text);
double gb_text_height (GbCanvas *canvas, GbTextLook look); /* of a line */

/* At most @most wide. Gives the box that they fill. */
GbBox gb_text_draw (GbCanvas *canvas,
                    GbTextLook look,
                    GbRole role,
                    double x,
                    double y,
                    GbAnchor anchor,
                    double most,
                    const char *text);
/* TRUE if words there stand free of other words and of marks, and wholly in the canvas's room. */
gboolean
gb_text_is_free (GbCanvas *canvas, GbTextLook look, double x, double y, GbAnchor anchor, const char *text);
/* Draws them only there; lines beneath them are held off. TRUE if drawn. */
gboolean gb_text_if_free (
    GbCanvas *canvas, GbTextLook look, GbRole role, double x, double y, GbAnchor anchor, const char *text);
/* The same beside a point, at least @off away from it, on whichever side is free. */
gboolean gb_text_beside (
    GbCanvas *canvas, GbTextLook look, GbRole role, double x, double y, double off, const char *text);
/* In several lines, at most @lines of them, from (@x, @y) down. Gives the height. */
double gb_text_wrap (GbCanvas *canvas,
                     GbTextLook look,
                     GbRole role,
                     double x,
                     double y,
                     double width,
                     int lines,
                     const char *text);

double gb_text_wrapped_height (GbCanvas *canvas, GbTextLook look, double width, int lines, const char *text);

/* Moves @centres, which are in order, apart, as little as may be, so that things of these sizes stand between
 * @from and @to with
 * @gap between them. FALSE if there is no room for all; they then start at @from and run over. */
gboolean gb_spread (double *centres, const double *sizes, guint n, double from, double to, double gap);

G_END_DECLS
