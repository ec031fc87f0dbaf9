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
gb_bar_draw (GbCanvas *canvas,
             const GbAxis *axis,
             double y,
             double height,
             const GbPiece *pieces,
             const double *values,
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

guint
gb_bar_label_pieces (
    GbBarLabel *labels, const GbPiece *pieces, const double *values, char *const *words, guint n)
{
  double sum = 0;
  guint k = 0;

  for (guint i = 0; i < n; i++)
    {
      double size = piece_size (values[i]);

      if (size > 0)
        labels[k++] = (GbBarLabel){ sum + size / 2, pieces[i].label, words[i], GB_ROLE_TEXT };
      sum += size;
    }
  return k;
}

static void
draw_label (GbCanvas *canvas, double anchor, double y, double centre, double width, const GbBarLabel *label)
{
  double bottom = y - canvas->em * 0.45, line = gb_text_height (canvas, GB_TEXT_PLAIN);
  GbRole quiet = label->role == GB_ROLE_TEXT ? GB_ROLE_QUIET : label->role;

  gb_canvas_line (canvas, GB_ROLE_LINE, 1, anchor, y, centre, bottom);
  gb_text_draw (canvas, GB_TEXT_PLAIN, quiet, centre, bottom - line, GB_AT_CENTRE | GB_AT_BOTTOM, width,
                label->name);
  gb_text_draw (canvas, GB_TEXT_STRONG, label->role, centre, bottom, GB_AT_CENTRE | GB_AT_BOTTOM, width,
                label->words);
}

void
gb_bar_draw_labels (GbCanvas *canvas, const GbAxis *axis, double y, const GbBarLabel *labels, guint n)
{
  double anchors[GB_MOST_BAR_LABELS] = { 0 }, centres[GB_MOST_BAR_LABELS] = { 0 },
         widths[GB_MOST_BAR_LABELS] = { 0 };
  double from = axis->start, to = canvas->width - canvas->em, gap = canvas->em;

  for (guint i = 0; i < n; i++)
    {
      anchors[i] = centres[i] = gb_axis_at (axis, labels[i].at);
      widths[i] = fmax (gb_text_width (canvas, GB_TEXT_PLAIN, labels[i].name),
                        gb_text_width (canvas, GB_TEXT_STRONG, labels[i].words))
                  + 1;
    }
  /* Where there is no room for all, each is cut to the same width. */
  if (!gb_spread (centres, widths, n, from, to, gap))
    {
      for (guint i = 0; i < n; i++)
        {
          widths[i] = (to - from - (n - 1) * gap) / n;
          centres[i] = anchors[i];
        }
      gb_spread (centres, widths, n, from, to, gap);
    }
  for (guint i = 0; i < n; i++)
    draw_label (canvas, anchors[i], y, centres[i], widths[i], &labels[i]);
}

void
gb_bar_row_clear (GbBarRow *row)
{
  g_free (row->name);
  g_free (row->words);
}

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
  double head = gb_bar_labels_height (canvas), foot = line + em * 0.5;

  for (guint i = 0; i < MIN (bars->rows->len, GB_MOST_BAR_ROWS); i++)
    {
      const GbBarRow *row = &g_array_index (bars->rows, GbBarRow, i);

      layout.names
          = fmax (layout.names, gb_text_width (canvas, i == 0 ? GB_TEXT_STRONG : GB_TEXT_PLAIN, row->name));
      words = fmax (words,
                    gb_text_width (canvas, i == 0 || row->over ? GB_TEXT_STRONG : GB_TEXT_PLAIN, row->words));
    }
  layout.names = fmin (layout.names + 1, box.width * 0.28);
  room = box.height - head - foot;
  layout.n_shown = (guint) CLAMP (floor (room / (line * 1.35)), 1, MIN (bars->rows->len, GB_MOST_BAR_ROWS));
  /* One that is left over takes the place of the last. */
  if (layout.n_shown < bars->rows->len && layout.n_shown > 1)
    layout.n_shown--;
  layout.pitch = fmin (room / (layout.n_shown + (layout.n_shown < bars->rows->len)), line * 3.2);
  layout.top = box.y + head;
  layout.axis.start = box.x + layout.names + em;
  layout.axis.end = fmax (box.x + box.width - words - em, layout.axis.start + box.width * 0.25);
  gb_axis_linear (&layout.axis, 0, largest (bars), bars->factor,
                  gb_axis_most_ticks (layout.axis.end - layout.axis.start, em * 5));
  gb_axis_say_unit (&layout.axis, bars->unit);
  return layout;
}

static void
draw_row (const GbBars *bars,
          GbCanvas *canvas,
          GbBox box,
          const RowLayout *layout,
          const GbBarRow *row,
          guint place)
{
  double y = layout->top + place * layout->pitch, middle = y + layout->pitch / 2,
         height = layout->pitch * 0.56;
  double em = canvas->em, end, right = box.x + box.width;
  GbTextLook look = place == 0 ? GB_TEXT_STRONG : GB_TEXT_PLAIN;

  gb_text_draw (canvas, look, GB_ROLE_TEXT, box.x, middle, GB_AT_LEFT | GB_AT_MIDDLE, layout->names,
                row->name);
  end = gb_bar_draw (canvas, &layout->axis, middle - height / 2, height, bars->pieces, row->values,
                     bars->n_pieces);
  if (row->sd > 0 && isfinite (row->sd))
    {
      double half = gb_axis_length (&layout->axis, row->sd);

      gb_canvas_whisker (canvas, end, middle, half);
      end += half;
    }
  if (isfinite (row->mark))
    {
      double x = gb_axis_at (&layout->axis, row->mark), reach = layout->pitch * 0.42;

      gb_canvas_line (canvas, GB_ROLE_LIMIT, 3, x, middle - reach, x, middle + reach);
      end = fmax (end, x);
    }
  gb_text_draw (canvas, row->over ? GB_TEXT_STRONG : look, row->over ? GB_ROLE_LIMIT : GB_ROLE_TEXT,
                end + em * 0.5, middle, GB_AT_LEFT | GB_AT_MIDDLE, right - end - em * 0.5, row->words);
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
  GbBarLabel labels[GB_MOST_BAR_LABELS];
  guint n;

  for (guint p = 0; p < bars->n_pieces; p++)
    words[p] = bars->say (whole->values[p], bars->data);
  n = gb_bar_label_pieces (labels, bars->pieces, whole->values, words, bars->n_pieces);
  gb_bar_draw_labels (canvas, &layout->axis, layout->top + layout->pitch * 0.22, labels, n);
  for (guint p = 0; p < bars->n_pieces; p++)
    g_free (words[p]);
}

void
gb_bars_draw (const GbBars *bars, GbCanvas *canvas, GbBox box)
{
  RowLayout layout = arrange (bars, canvas, box);
  gboolean rest = layout.n_shown < bars->rows->len;

  gb_axis_draw_below (&layout.axis, canvas, layout.top + (layout.n_shown + rest) * layout.pitch, layout.top);
  label_whole (bars, canvas, &layout);
  for (guint i = 0; i < layout.n_shown; i++)
    draw_row (bars, canvas, box, &layout, &g_array_index (bars->rows, GbBarRow, i), i);
  if (rest)
    draw_rest (bars, canvas, box, &layout);
}
