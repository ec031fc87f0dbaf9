/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "bars.h"
#include "pattern.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static double
piece_size (double value)
{
  return isfinite (value) && value > 0 ? value : 0;
}

static double
sum_of (const double *values, guint n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += piece_size (values[i]);
  return sum;
}

double
gb_bar_draw (GbCanvas *canvas, const GbAxis *axis, double y, double height, const GbPiece *pieces, const double *values,
             guint n)
{
  double sum = 0, x = gb_axis_at (axis, 0);

  for (guint i = 0; i < n; i++)
    {
      double end;

      if (piece_size (values[i]) == 0)
        continue;
      sum += values[i];
      end = gb_axis_at (axis, sum);
      gb_pattern_fill (canvas, pieces[i].role, (GbBox){ x, y, end - x, height });
      x = end;
    }
  return x;
}

double
gb_bar_labels_height (GbCanvas *canvas)
{
  return canvas->em * 0.5 + 2 * gb_text_height (canvas, GB_TEXT_PLAIN);
}

typedef struct
{
  guint piece;
  double anchor; /* the middle of the piece */
} Label;

static void
draw_label (GbCanvas *canvas, double y, gboolean above, Label label, double centre, double width, const char *name,
            const char *words)
{
  double step = canvas->em * 0.45 * (above ? -1 : 1), line = gb_text_height (canvas, GB_TEXT_PLAIN);
  double top = above ? y + step - 2 * line : y + step;

  gb_canvas_line (canvas, GB_ROLE_LINE, 1, label.anchor, y, centre, y + step);
  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, centre, top, GB_AT_CENTRE | GB_AT_TOP, width, name);
  gb_text_draw (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, centre, top + line, GB_AT_CENTRE | GB_AT_TOP, width, words);
}

void
gb_bar_label (GbCanvas *canvas, const GbAxis *axis, double y, gboolean above, const GbPiece *pieces, const double *values,
              char *const *words, guint n)
{
  Label labels[GB_MOST_PIECES];
  double centres[GB_MOST_PIECES] = { 0 }, widths[GB_MOST_PIECES] = { 0 }, sum = 0;
  double from = axis->start, to = canvas->width - canvas->em, gap = canvas->em;
  guint k = 0;

  for (guint i = 0; i < n; i++)
    {
      double size = piece_size (values[i]);

      if (size == 0)
        continue;
      labels[k] = (Label){ i, gb_axis_at (axis, sum + size / 2) };
      centres[k] = labels[k].anchor;
      widths[k] = fmax (gb_text_width (canvas, GB_TEXT_PLAIN, pieces[i].label),
                        gb_text_width (canvas, GB_TEXT_STRONG, words[i])) + 1;
      sum += size;
      k++;
    }
  if (!gb_spread (centres, widths, k, from, to, gap))
    {
      for (guint i = 0; i < k; i++)
        {
          widths[i] = (to - from - (k - 1) * gap) / k;
          centres[i] = labels[i].anchor;
        }
      gb_spread (centres, widths, k, from, to, gap);
    }
  for (guint i = 0; i < k; i++)
    draw_label (canvas, y, above, labels[i], centres[i], widths[i], pieces[labels[i].piece].label, words[labels[i].piece]);
}

void
gb_bar_row_clear (GbBarRow *row)
{
  g_free (row->name);
  g_free (row->words);
}

/* More rows than this are never shown one by one, so no more need be measured. */
#define MOST_ROWS 60u

/* How the rows share the box. */
typedef struct
{
  GbAxis axis;
  double names;  /* width of the column at the left */
  double top;    /* of the first row */
  double pitch;  /* from row to row */
  guint n_shown; /* rows of their own; the rest are one more */
} RowLayout;

static double
largest (const GbBars *bars)
{
  double most = 0;

  for (guint i = 0; i < bars->rows->len; i++)
    {
      const GbBarRow *row = &g_array_index (bars->rows, GbBarRow, i);

      most = fmax (most, sum_of (row->values, bars->n_pieces) + (row->sd > 0 ? row->sd : 0));
      if (isfinite (row->mark))
        most = fmax (most, row->mark);
    }
  return most;
}

static RowLayout
arrange (const GbBars *bars, GbCanvas *canvas, GbBox box)
{
  RowLayout layout = { 0 };
  double em = canvas->em, line = gb_text_height (canvas, GB_TEXT_PLAIN), words = 0, room;
  double head = gb_bar_labels_height (canvas), foot = line * 2 + em * 0.5;

  for (guint i = 0; i < MIN (bars->rows->len, MOST_ROWS); i++)
    {
      const GbBarRow *row = &g_array_index (bars->rows, GbBarRow, i);

      layout.names = fmax (layout.names, gb_text_width (canvas, i == 0 ? GB_TEXT_STRONG : GB_TEXT_PLAIN, row->name));
      words = fmax (words, gb_text_width (canvas, i == 0 || row->over ? GB_TEXT_STRONG : GB_TEXT_PLAIN, row->words));
    }
  layout.names = fmin (layout.names + 1, box.width * 0.28);
  room = box.height - head - foot;
  layout.n_shown = (guint) CLAMP (floor (room / (line * 1.35)), 1, MIN (bars->rows->len, MOST_ROWS));
  /* One that is left over takes the place of the last. */
  if (layout.n_shown < bars->rows->len && layout.n_shown > 1)
    layout.n_shown--;
  layout.pitch = fmin (room / (layout.n_shown + (layout.n_shown < bars->rows->len)), line * 2.6);
  layout.top = box.y + head;
  layout.axis.start = box.x + layout.names + em;
  layout.axis.end = fmax (box.x + box.width - words - em, layout.axis.start + box.width * 0.25);
  gb_axis_linear (&layout.axis, 0, largest (bars), bars->factor,
                  (guint) fmax ((layout.axis.end - layout.axis.start) / (em * 5), 2));
  return layout;
}

static void
draw_row (const GbBars *bars, GbCanvas *canvas, GbBox box, const RowLayout *layout, const GbBarRow *row, guint place)
{
  double y = layout->top + place * layout->pitch, middle = y + layout->pitch / 2, height = layout->pitch * 0.56;
  double em = canvas->em, end, right = box.x + box.width;
  GbTextLook look = place == 0 ? GB_TEXT_STRONG : GB_TEXT_PLAIN;

  gb_text_draw (canvas, look, GB_ROLE_TEXT, box.x, middle, GB_AT_LEFT | GB_AT_MIDDLE, layout->names, row->name);
  end = gb_bar_draw (canvas, &layout->axis, middle - height / 2, height, bars->pieces, row->values, bars->n_pieces);
  if (row->sd > 0 && isfinite (row->sd))
    {
      double half = row->sd * (layout->axis.end - layout->axis.start) / (layout->axis.to - layout->axis.from);

      gb_canvas_whisker (canvas, end, middle, half);
      end += half;
    }
  if (isfinite (row->mark))
    {
      double x = gb_axis_at (&layout->axis, row->mark), reach = layout->pitch * 0.42;

      gb_canvas_line (canvas, GB_ROLE_LIMIT, 3, x, middle - reach, x, middle + reach);
      end = fmax (end, x);
    }
  gb_text_draw (canvas, row->over ? GB_TEXT_STRONG : look, row->over ? GB_ROLE_LIMIT : GB_ROLE_TEXT, end + em * 0.5, middle,
                GB_AT_LEFT | GB_AT_MIDDLE, right - end - em * 0.5, row->words);
  if (place < layout->n_shown)
    gb_canvas_hit (canvas, (GbBox){ box.x, y, box.width, layout->pitch }, place);
}

/* What did not fit, as one row. */
static void
draw_rest (const GbBars *bars, GbCanvas *canvas, GbBox box, const RowLayout *layout)
{
  guint n = bars->rows->len - layout->n_shown;
  g_autofree char *name = g_strdup_printf (ngettext ("%u more", "%u more", n), n);
  g_autofree char *words = NULL;
  GbBarRow rest = { .name = name, .mark = NAN };

  for (guint i = layout->n_shown; i < bars->rows->len; i++)
    for (guint p = 0; p < bars->n_pieces; p++)
      rest.values[p] += piece_size (g_array_index (bars->rows, GbBarRow, i).values[p]);
  rest.words = words = bars->say (sum_of (rest.values, bars->n_pieces), bars->data);
  draw_row (bars, canvas, box, layout, &rest, layout->n_shown);
}

static void
label_whole (const GbBars *bars, GbCanvas *canvas, const RowLayout *layout)
{
  const GbBarRow *whole = &g_array_index (bars->rows, GbBarRow, 0);
  char *words[GB_MOST_PIECES] = { NULL };

  for (guint p = 0; p < bars->n_pieces; p++)
    words[p] = bars->say (whole->values[p], bars->data);
  gb_bar_label (canvas, &layout->axis, layout->top + layout->pitch * 0.22, TRUE, bars->pieces, whole->values, words,
                bars->n_pieces);
  for (guint p = 0; p < bars->n_pieces; p++)
    g_free (words[p]);
}

void
gb_bars_draw (const GbBars *bars, GbCanvas *canvas, GbBox box)
{
  RowLayout layout = arrange (bars, canvas, box);
  gboolean rest = layout.n_shown < bars->rows->len;
  double bottom = layout.top + (layout.n_shown + rest) * layout.pitch, line = gb_text_height (canvas, GB_TEXT_PLAIN);

  gb_axis_draw_below (&layout.axis, canvas, bottom, layout.top);
  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, layout.axis.end, bottom + line + canvas->em * 0.25, GB_AT_RIGHT | GB_AT_TOP,
                layout.axis.end - box.x, bars->unit);
  label_whole (bars, canvas, &layout);
  for (guint i = 0; i < layout.n_shown; i++)
    draw_row (bars, canvas, box, &layout, &g_array_index (bars->rows, GbBarRow, i), i);
  if (rest)
    draw_rest (bars, canvas, box, &layout);
}
