/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* How high each edge that must stay dry is above the water, along the boat. */

#include "boat/quantity.h"
#include "floating-words.h"
#include "plot.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Closer than this at the right end, two edges of one name are one. */
#define ALIKE 0.002
/* Less is no difference. */
#define ROUNDING 1e-6

typedef struct
{
  double x, y, freeboard; /* x and y in the boat's axes */
} Point;

/* An edge as far as it runs on one side. */
typedef struct
{
  char *name;
  gboolean port;
  GArray *points; /* of Point */
} Piece;

typedef struct
{
  GbUnits units;
  GPtrArray *pieces; /* of Piece */
  GPtrArray *tells;  /* sentences by hit */
  Point least;
  char *least_name;
  gboolean even;   /* the other side comes as near there */
  double accepted; /* NAN: none */
  double from, to; /* of x */
  double lo, hi;   /* of the freeboard */
  GbVec3 least_corner, most_corner;
} Freeboard;

static void
piece_free (gpointer data)
{
  Piece *piece = data;

  g_free (piece->name);
  g_array_unref (piece->points);
  g_free (piece);
}

static void
freeboard_free (gpointer data)
{
  Freeboard *freeboard = data;

  g_ptr_array_unref (freeboard->pieces);
  g_ptr_array_unref (freeboard->tells);
  g_free (freeboard->least_name);
  g_free (freeboard);
}

static Piece *
begin_piece (Freeboard *freeboard, const char *name, gboolean port)
{
  Piece *piece = g_new0 (Piece, 1);

  piece->name = g_strdup (name);
  piece->port = port;
  piece->points = g_array_new (FALSE, FALSE, sizeof (Point));
  g_ptr_array_add (freeboard->pieces, piece);
  return piece;
}

/* The same point of the other side, and as high. */
static gboolean
is_opposite (const Point *p, const Point *q)
{
  return p->y * q->y < 0 && fabs (p->x - q->x) < ALIKE && fabs (p->freeboard - q->freeboard) < ROUNDING;
}

static void
take_in (Freeboard *freeboard, Point p, const char *name)
{
  GbVec3 *lo = &freeboard->least_corner, *hi = &freeboard->most_corner;

  freeboard->from = fmin (freeboard->from, p.x);
  freeboard->to = fmax (freeboard->to, p.x);
  freeboard->lo = fmin (freeboard->lo, p.freeboard);
  freeboard->hi = fmax (freeboard->hi, p.freeboard);
  *lo = (GbVec3){ freeboard->from, fmin (lo->y, p.y), 0 };
  *hi = (GbVec3){ freeboard->to, fmax (hi->y, p.y), 0 };
  if (isfinite (freeboard->least.freeboard) && p.freeboard >= freeboard->least.freeboard - ROUNDING)
    {
      freeboard->even = freeboard->even || is_opposite (&freeboard->least, &p);
      return;
    }
  freeboard->least = p;
  freeboard->even = FALSE;
  g_free (freeboard->least_name);
  freeboard->least_name = g_strdup (name);
}

/* Parted where it goes over to the other side; a transom is then a step. */
static void
add_line (Freeboard *freeboard, const GbEdgeLine *line, GbAttitude attitude)
{
  Piece *piece = NULL;

  for (guint i = 0; i < line->points->len; i++)
    {
      GbVec3 at = g_array_index (line->points, GbVec3, i);
      Point p = { at.x, at.y, gb_attitude_above (attitude, at) };

      if (!isfinite (p.x) || !isfinite (p.freeboard))
        continue;
      if (piece == NULL || (at.y != 0 && piece->port != (at.y > 0)))
        piece = begin_piece (freeboard, line->name, at.y > 0);
      g_array_append_val (piece->points, p);
      take_in (freeboard, p, line->name);
    }
  /* Where a ring comes home there is no more of that side. */
  if (piece != NULL && piece->points->len == 1 && line->points->len > 1)
    g_ptr_array_remove (freeboard->pieces, piece);
}

static Freeboard *
take_freeboard (const GbChartSource *source, const GbAfloat *afloat)
{
  Freeboard *freeboard = g_new0 (Freeboard, 1);
  const GPtrArray *lines = source->findings->edges.lines;
  double accepted = gb_boat_build (source->boat)->freeboard;

  freeboard->units = (GbUnits)gb_boat_build (source->boat)->units;
  freeboard->pieces = g_ptr_array_new_with_free_func (piece_free);
  freeboard->tells = g_ptr_array_new_with_free_func (g_free);
  freeboard->accepted = isfinite (accepted) ? accepted : NAN;
  freeboard->least.freeboard = NAN;
  freeboard->from = freeboard->lo = freeboard->least_corner.y = INFINITY;
  freeboard->to = freeboard->hi = freeboard->most_corner.y = -INFINITY;
  for (guint i = 0; lines != NULL && i < lines->len; i++)
    add_line (freeboard, g_ptr_array_index (lines, i), afloat->attitude);
  return freeboard;
}

/* Words ------------------------------------------------------------ */

static char *
height_words (double height, GbUnits units)
{
  g_autofree char *text = gb_length_format (fabs (height), units);

  return height < 0 ? g_strdup_printf (_ ("%s under water"), text) : g_steal_pointer (&text);
}

static const char *
side_words (double y)
{
  return y > 0 ? _ ("port") : y < 0 ? _ ("starboard") : _ ("on the centreline");
}

static char *
tell_point (const Freeboard *freeboard, const char *name, const Point *p)
{
  g_autofree char *x = gb_length_format (p->x, freeboard->units);
  g_autofree char *height = height_words (p->freeboard, freeboard->units);

  /* Translators: the name of an edge, a place along the boat, its side, and its height above the water */
  return g_strdup_printf (_ ("%s, x %s, %s: %s"), name, x, side_words (p->y), height);
}

static void
say_title (GString *title, const Freeboard *freeboard)
{
  const Point *least = &freeboard->least;
  g_autofree char *height = gb_length_format (fabs (least->freeboard), freeboard->units);
  g_autofree char *accepted = gb_length_format (freeboard->accepted, freeboard->units);
  const char *where = gb_where_along (freeboard->least_corner, freeboard->most_corner,
                                      (GbVec3){ least->x, freeboard->even ? 0 : least->y, 0 });

  if (least->freeboard < 0)
    g_string_append_printf (title, _ ("%s is under water by %s, %s"), freeboard->least_name, height, where);
  else if (least->freeboard < freeboard->accepted)
    g_string_append_printf (title, _ ("%s comes within %s of the water, %s: %s is the least accepted"),
                            freeboard->least_name, height, where, accepted);
  else
    g_string_append_printf (title, _ ("Least freeboard %s: %s, %s"), height, freeboard->least_name, where);
}

static void
describe (GString *text, const Freeboard *freeboard)
{
  g_autofree char *accepted = gb_length_format (freeboard->accepted, freeboard->units);
  g_autofree char *least = tell_point (freeboard, freeboard->least_name, &freeboard->least);

  gb_say (text, _ ("Least: %s."), least);
  if (isfinite (freeboard->accepted))
    gb_say (text, _ ("Least accepted: %s."), accepted);
  for (guint i = 0; i < freeboard->pieces->len; i++)
    {
      const Piece *piece = g_ptr_array_index (freeboard->pieces, i);

      for (guint k = 0; k < piece->points->len; k++)
        g_ptr_array_add (freeboard->tells,
                         tell_point (freeboard, piece->name, &g_array_index (piece->points, Point, k)));
    }
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbAfloat *afloat = gb_source_afloat (source);
  gboolean rests = afloat != NULL && isfinite (afloat->attitude.height) && isfinite (afloat->attitude.up.z)
                   && afloat->state != GB_AFLOAT_SINKS && afloat->state != GB_AFLOAT_UNKNOWN;
  Freeboard *freeboard = rests ? take_freeboard (source, afloat) : NULL;

  if (freeboard == NULL || freeboard->pieces->len == 0)
    {
      if (afloat != NULL && afloat->state == GB_AFLOAT_SINKS)
        gb_say_state (words->title, afloat);
      else
        g_string_append (words->title,
                         rests ? _ ("The freeboard stands here, once there is an edge that must stay dry")
                               : _ ("The freeboard along each edge stands here, once she floats"));
      g_clear_pointer (&freeboard, freeboard_free);
      return NULL;
    }
  say_title (words->title, freeboard);
  gb_say_condition (words->subtitle, source, afloat->total);
  gb_say (words->subtitle, "%s", _ ("Height of the edges above the water; port is dashed."));
  describe (words->description, freeboard);
  return freeboard;
}

/* Drawing ------------------------------------------------------------ */

static void
draw_piece (const Piece *piece, GbCanvas *canvas, const GbPlot *plot)
{
  const double dash[] = { canvas->em * 0.6, canvas->em * 0.35 };

  for (guint i = 0; i < piece->points->len; i++)
    {
      const Point *p = &g_array_index (piece->points, Point, i);
      double x = gb_axis_at (&plot->x, p->x), y = gb_axis_at (&plot->y, p->freeboard), from_x, from_y;

      if (i > 0)
        {
          cairo_get_current_point (canvas->cr, &from_x, &from_y);
          gb_canvas_mark_line (canvas, from_x, from_y, x, y);
        }
      cairo_line_to (canvas->cr, x, y);
    }
  if (piece->port)
    cairo_set_dash (canvas->cr, dash, G_N_ELEMENTS (dash), 0);
  gb_canvas_stroke (canvas, GB_ROLE_COURSE, 2);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

static void
draw_water (GbCanvas *canvas, const GbPlot *plot)
{
  double y = gb_axis_at (&plot->y, 0);

  cairo_rectangle (canvas->cr, plot->field.x, y, plot->field.width, fmax (plot->y.start - y, 0));
  gb_canvas_tint (canvas, GB_ROLE_WATER, 0.16);
  cairo_fill (canvas->cr);
  gb_canvas_line (canvas, GB_ROLE_WATER, 1.8, plot->x.start, y, plot->x.end, y);
}

static void
draw_pieces (const Freeboard *freeboard, GbCanvas *canvas, const GbPlot *plot)
{
  double reach = canvas->em * 0.6;
  guint what = 0;

  for (guint i = 0; i < freeboard->pieces->len; i++)
    {
      const Piece *piece = g_ptr_array_index (freeboard->pieces, i);

      draw_piece (piece, canvas, plot);
      for (guint k = 0; k < piece->points->len; k++)
        {
          const Point *p = &g_array_index (piece->points, Point, k);
          double x = gb_axis_at (&plot->x, p->x), y = gb_axis_at (&plot->y, p->freeboard);

          gb_canvas_mark (canvas, gb_box_around (x, y, canvas->em * 0.2));
          gb_canvas_hit (canvas, gb_box_around (x, y, reach), what++);
          if (piece->points->len == 1)
            gb_canvas_dot (canvas, GB_ROLE_COURSE, x, y, canvas->em * 0.25);
        }
    }
}

static void
draw_least (const Freeboard *freeboard, GbCanvas *canvas, const GbPlot *plot)
{
  g_autofree char *height = height_words (freeboard->least.freeboard, freeboard->units);
  double x = gb_axis_at (&plot->x, freeboard->least.x), y = gb_axis_at (&plot->y, freeboard->least.freeboard);
  GbRole role = freeboard->least.freeboard < 0 || freeboard->least.freeboard < freeboard->accepted
                    ? GB_ROLE_LIMIT
                    : GB_ROLE_TEXT;
  g_autofree char *words = g_strdup_printf ("%s, %s", freeboard->least_name, height);

  gb_canvas_dot (canvas, role, x, y, canvas->em * 0.35);
  canvas->room = plot->field;
  gb_text_beside (canvas, GB_TEXT_STRONG, role, x, y, canvas->em * 0.6, words);
  canvas->room = (GbBox){ 0, 0, canvas->width, canvas->height };
}

static const Point *
right_end (const Piece *piece)
{
  const Point *end = &g_array_index (piece->points, Point, 0);

  for (guint k = 1; k < piece->points->len; k++)
    if (g_array_index (piece->points, Point, k).x > end->x)
      end = &g_array_index (piece->points, Point, k);
  return end;
}

/* TRUE if it runs to the right end of the field, where its name then stands. */
static gboolean
runs_out (const Freeboard *freeboard, const Piece *piece)
{
  return right_end (piece)->x >= freeboard->to - 0.05 * (freeboard->to - freeboard->from);
}

/* The names of edges at their right ends; of those that end alike the first. */
static guint
label_pieces (const Freeboard *freeboard, GbEndLabel *labels, guint n)
{
  for (guint i = 0; i < freeboard->pieces->len && n < GB_MOST_END_LABELS; i++)
    {
      const Piece *piece = g_ptr_array_index (freeboard->pieces, i);
      double end = right_end (piece)->freeboard;
      gboolean known = !runs_out (freeboard, piece);

      for (guint k = 0; k < n; k++)
        known
            = known || (g_strcmp0 (labels[k].text, piece->name) == 0 && fabs (labels[k].value - end) < ALIKE);
      if (!known)
        labels[n++] = (GbEndLabel){ end, piece->name, GB_ROLE_COURSE };
    }
  return n;
}

/* The names of short ones, hatches and slots, beside them. */
static void
name_pieces (const Freeboard *freeboard, GbCanvas *canvas, const GbPlot *plot)
{
  const char *last = NULL;

  canvas->room = plot->field;
  for (guint i = 0; i < freeboard->pieces->len; i++)
    {
      const Piece *piece = g_ptr_array_index (freeboard->pieces, i);
      const Point *p = right_end (piece);

      if (!runs_out (freeboard, piece) && g_strcmp0 (piece->name, last) != 0)
        gb_text_beside (canvas, GB_TEXT_PLAIN, GB_ROLE_COURSE, gb_axis_at (&plot->x, p->x),
                        gb_axis_at (&plot->y, p->freeboard), canvas->em * 0.5, piece->name);
      last = piece->name;
    }
  canvas->room = (GbBox){ 0, 0, canvas->width, canvas->height };
}

static void
arrange (const Freeboard *freeboard, GbCanvas *canvas, GbBox box, double right, GbPlot *plot)
{
  double head = gb_plot_head (canvas), foot = gb_plot_foot (canvas, TRUE), em = canvas->em, left;
  double most = fmax (fmax (freeboard->hi, 0), isfinite (freeboard->accepted) ? freeboard->accepted : 0);
  double unit = freeboard->units == GB_UNITS_FEET ? 0.3048 : 1;

  gb_axis_linear (&plot->y, fmin (freeboard->lo, 0), most,
                  gb_quantity_factor (GB_DIM_LENGTH, freeboard->units),
                  gb_plot_ticks (canvas, box.height - head - foot));
  left = gb_axis_widest (&plot->y, canvas) + em * 0.5;
  gb_axis_linear (&plot->x, freeboard->from, freeboard->to, unit,
                  gb_axis_most_ticks (box.width - left - right, em * 5));
  gb_plot_arrange (plot, box, left, head, right, foot);
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Freeboard *freeboard = data;
  g_autofree char *accepted = gb_length_format (freeboard->accepted, freeboard->units);
  g_autofree char *accepted_words = g_strdup_printf (_ ("Accepted %s"), accepted);
  GbEndLabel labels[GB_MOST_END_LABELS] = {
    { freeboard->accepted, accepted_words, GB_ROLE_LIMIT },
    { 0, _ ("Water"), GB_ROLE_QUIET },
  };
  guint n = label_pieces (freeboard, labels, 2);
  double right = fmin (gb_end_labels_width (canvas, labels, n), box.width * 0.35);
  g_autofree char *y_title
      = g_strdup_printf (_ ("Freeboard, %s"), gb_quantity_unit (GB_DIM_LENGTH, freeboard->units));
  GbPlot plot;

  arrange (freeboard, canvas, box, right, &plot);
  draw_water (canvas, &plot);
  gb_plot_draw_left (&plot, canvas, y_title);
  gb_plot_draw_below (&plot, canvas,
                      freeboard->units == GB_UNITS_FEET ? _ ("x, forward, ft") : _ ("x, forward, m"));
  if (isfinite (freeboard->accepted))
    {
      double y = gb_axis_at (&plot.y, freeboard->accepted);

      gb_canvas_line (canvas, GB_ROLE_LIMIT, 3.5, plot.x.start, y, plot.x.end, y);
      gb_canvas_mark_line (canvas, plot.x.start, y, plot.x.end, y);
    }
  draw_pieces (freeboard, canvas, &plot);
  draw_least (freeboard, canvas, &plot);
  name_pieces (freeboard, canvas, &plot);
  gb_plot_end_labels (&plot, canvas, labels, n);
}

static char *
tell (gconstpointer data, guint what)
{
  return g_strdup (g_ptr_array_index (((const Freeboard *)data)->tells, what));
}

const GbChartMethod gb_chart_freeboard = {
  .name = "freeboard",
  .label = N_ ("Freeboard along the edges"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = freeboard_free,
};
