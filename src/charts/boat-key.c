/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "boat-key.h"

#include <math.h>

#define GAP 0.4 /* between rows, in em */

static void
key_row_clear (GbKeyRow *row)
{
  g_free (row->name);
  g_free (row->figures);
}

GArray *
gb_key_new (void)
{
  GArray *key = g_array_new (FALSE, FALSE, sizeof (GbKeyRow));

  g_array_set_clear_func (key, (GDestroyNotify)key_row_clear);
  return key;
}

void
gb_key_add (GArray *key, GbMark mark, const char *name, char *figures)
{
  GbKeyRow row = { mark, NULL, figures };

  if (figures == NULL)
    return;
  row.name = g_strdup (name);
  g_array_append_val (key, row);
}

static double
row_height (GbCanvas *canvas)
{
  return 2 * gb_text_height (canvas, GB_TEXT_PLAIN) + canvas->em * GAP;
}

/* Room for marks, where any row has one. */
static double
indent (const GArray *key, GbCanvas *canvas)
{
  for (guint i = 0; i < key->len; i++)
    if (g_array_index (key, GbKeyRow, i).mark != NULL)
      return canvas->em * 1.6;
  return 0;
}

GbBox
gb_key_measure (const GArray *key, GbCanvas *canvas)
{
  GbBox box = { 0, 0, 0, key->len * row_height (canvas) };

  for (guint i = 0; i < key->len; i++)
    {
      const GbKeyRow *row = &g_array_index (key, GbKeyRow, i);

      box.width = fmax (box.width, gb_text_width (canvas, GB_TEXT_STRONG, row->name));
      box.width = fmax (box.width, gb_text_width (canvas, GB_TEXT_PLAIN, row->figures));
    }
  box.width += indent (key, canvas) + canvas->em * 0.2;
  return box;
}

void
gb_key_draw (const GArray *key, GbCanvas *canvas, GbBox box)
{
  double line = gb_text_height (canvas, GB_TEXT_PLAIN), em = canvas->em, left = indent (key, canvas),
         y = box.y;

  for (guint i = 0; i < key->len && y + row_height (canvas) <= box.y + box.height + em; i++)
    {
      const GbKeyRow *row = &g_array_index (key, GbKeyRow, i);

      if (row->mark != NULL)
        row->mark (canvas, box.x + em * 0.6, y + line / 2);
      gb_text_draw (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, box.x + left, y, GB_AT_LEFT | GB_AT_TOP,
                    GB_ANY_WIDTH, row->name);
      gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_TEXT, box.x + left, y + line, GB_AT_LEFT | GB_AT_TOP,
                    GB_ANY_WIDTH, row->figures);
      y += row_height (canvas);
    }
}
