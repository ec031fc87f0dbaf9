/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* What the hulls carry at each draught: displacement along, draught upward as the water rises. The limit, and
 * where the boat is with all aboard. */

#include "boat/quantity.h"
#include "chart-private.h"
#include "plot.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  GbUnits units;
  GbHydrostatics *curve;
  guint n_curve;
  GbHydrostatics limit, afloat;
  double total, total_sd;
} Draught;

static void
draught_free (gpointer data)
{
  Draught *draught = data;

  g_free (draught->curve);
  g_free (draught);
}

static char *
mass_text (double mass, GbUnits units)
{
  return gb_quantity_format (mass, GB_DIM_MASS, units);
}

static char *
tell_state (const char *format, const GbHydrostatics *state, GbUnits units)
{
  g_autofree char *mass = mass_text (state->displacement, units);
  g_autofree char *draught = gb_length_format (state->draught, units);
  g_autofree char *freeboard = gb_length_format (state->freeboard, units);

  return g_strdup_printf (format, mass, draught, freeboard);
}

static char *
tell_point (const Draught *draught, guint i)
{
  const GbHydrostatics *point = &draught->curve[i];
  gboolean feet = draught->units == GB_UNITS_FEET;
  g_autofree char *step = mass_text (point->per_cm * (feet ? 2.54 : 1), draught->units);
  g_autofree char *deep = gb_length_format (point->draught, draught->units);
  g_autofree char *mass = mass_text (point->displacement, draught->units);
  g_autofree char *freeboard = gb_length_format (point->freeboard, draught->units);

  return g_strdup_printf (feet ? _ ("%s deep: carries %s, freeboard %s; %s for each further inch.")
                               : _ ("%s deep: carries %s, freeboard %s; %s for each further centimetre."),
                          deep, mass, freeboard, step);
}

static void
say_title (GString *title, const Draught *draught, gboolean sinks)
{
  g_autofree char *deep = gb_length_format (draught->afloat.draught, draught->units);
  g_autofree char *freeboard = gb_length_format (draught->afloat.freeboard, draught->units);
  g_autofree char *total = mass_text (draught->total, draught->units);
  g_autofree char *limit = mass_text (draught->limit.displacement, draught->units);

  if (sinks)
    g_string_append_printf (title, _ ("All up %s is more than the hulls can carry"), total);
  else if (isfinite (draught->afloat.draught) && draught->total > 0)
    g_string_append_printf (title, _ ("All up the boat floats %s deep, with %s of freeboard"), deep,
                            freeboard);
  else if (isfinite (draught->limit.displacement))
    g_string_append_printf (title, _ ("The hulls carry %s at the accepted freeboard"), limit);
  else
    g_string_append (title, _ ("What the hulls carry at each draught"));
}

static void
say_subtitle (GString *text, const GbFindings *findings)
{
  guint bad = findings->flotation.n_bad_hulls;

  gb_say (text, "%s", _ ("Displacement at each draught, upright and level, up to the lowest open edge."));
  if (bad > 0)
    gb_say (text,
            ngettext ("%u hull has no shape yet and is not counted.",
                      "%u hulls have no shape yet and are not counted.", bad),
            bad);
  gb_say_no_mass (text, findings->rollup.boat.n_no_mass);
}

static void
describe (GString *text, const Draught *draught)
{
  g_autofree char *limit
      = tell_state (_ ("Flotation limit %s: draught %s, freeboard %s."), &draught->limit, draught->units);
  g_autofree char *afloat
      = tell_state (_ ("All up %s: draught %s, freeboard %s."), &draught->afloat, draught->units);
  g_autofree char *brim = tell_point (draught, draught->n_curve - 1);

  if (isfinite (draught->limit.displacement))
    gb_say (text, "%s", limit);
  if (isfinite (draught->afloat.displacement) && draught->total > 0)
    gb_say (text, "%s", afloat);
  gb_say (text, "%s", brim);
}

static Draught *
take_draught (const GbFlotation *flotation, GbUnits units)
{
  Draught *draught = g_new0 (Draught, 1);

  draught->units = units;
  draught->curve = g_new0 (GbHydrostatics, flotation->n_curve);
  for (guint i = 0; i < flotation->n_curve; i++)
    if (isfinite (flotation->curve[i].displacement) && isfinite (flotation->curve[i].draught))
      draught->curve[draught->n_curve++] = flotation->curve[i];
  draught->limit = flotation->limit;
  draught->afloat = flotation->afloat;
  draught->total = flotation->total;
  draught->total_sd = flotation->total_sd;
  return draught;
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbFlotation *flotation = &source->findings->flotation;
  Draught *draught = take_draught (flotation, (GbUnits) gb_boat_build (source->boat)->units);

  if (draught->n_curve < 2)
    {
      g_string_append (words->title,
                       flotation->n_bad_hulls > 0
                           ? _ ("What the hulls carry stands here, once a hull's shape is sound")
                           : _ ("What the hulls carry stands here, once there is a hull"));
      draught_free (draught);
      return NULL;
    }
  say_title (words->title, draught, flotation->sinks);
  say_subtitle (words->subtitle, source->findings);
  describe (words->description, draught);
  return draught;
}

static void
draw_curve (const Draught *draught, GbCanvas *canvas, const GbPlot *plot)
{
  for (guint i = 0; i < draught->n_curve; i++)
    cairo_line_to (canvas->cr, gb_axis_at (&plot->x, draught->curve[i].displacement),
                   gb_axis_at (&plot->y, draught->curve[i].draught));
  gb_canvas_stroke (canvas, GB_ROLE_COURSE, 2);
}

/* A dashed line from the scale of draughts to a point of the curve, with words on it: @above or beneath.
 * Where it is too short for them they stand beyond the point, under the curve as that rises. */
static void
draw_reading (
    GbCanvas *canvas, const GbPlot *plot, GbRole role, double x, double y, gboolean above, const char *words)
{
  double em = canvas->em, off = em * 0.15, start = plot->x.start + em * 0.4,
         line = gb_text_height (canvas, GB_TEXT_STRONG);

  gb_canvas_dashed (canvas, role, 1.2, plot->x.start, y, x, y);
  if (gb_text_width (canvas, GB_TEXT_STRONG, words) < x - start - em * 2
      && gb_text_if_free (canvas, GB_TEXT_STRONG, role, start, above ? y - off : y + off,
                          GB_AT_LEFT | (above ? GB_AT_BOTTOM : GB_AT_TOP), words))
    return;
  for (guint k = 0; k < 3; k++)
    if (gb_text_if_free (canvas, GB_TEXT_STRONG, role, x + em, y + off + k * line, GB_AT_LEFT | GB_AT_TOP,
                         words))
      return;
}

static void
draw_limit (const Draught *draught, GbCanvas *canvas, const GbPlot *plot)
{
  double x = gb_axis_at (&plot->x, draught->limit.displacement),
         y = gb_axis_at (&plot->y, draught->limit.draught);
  g_autofree char *mass = mass_text (draught->limit.displacement, draught->units);
  g_autofree char *deep = gb_length_format (draught->limit.draught, draught->units);
  g_autofree char *mass_words = g_strdup_printf (_ ("Flotation limit %s"), mass);
  g_autofree char *deep_words = g_strdup_printf (_ ("Limit: %s deep"), deep);
  double half = gb_text_width (canvas, GB_TEXT_STRONG, mass_words) / 2;

  if (!isfinite (x) || !isfinite (y))
    return;
  gb_canvas_line (canvas, GB_ROLE_LIMIT, 3.5, x, plot->y.start, x, plot->y.end);
  gb_text_if_free (canvas, GB_TEXT_STRONG, GB_ROLE_LIMIT, fmin (x, plot->outer.x + plot->outer.width - half),
                   plot->y.end - canvas->em * 0.2, GB_AT_CENTRE | GB_AT_BOTTOM, mass_words);
  draw_reading (canvas, plot, GB_ROLE_LIMIT, x, y, !(draught->afloat.draught > draught->limit.draught),
                deep_words);
}

static void
draw_afloat (const Draught *draught, GbCanvas *canvas, const GbPlot *plot)
{
  double x = gb_axis_at (&plot->x, draught->afloat.displacement),
         y = gb_axis_at (&plot->y, draught->afloat.draught);
  g_autofree char *mass = mass_text (draught->afloat.displacement, draught->units);
  g_autofree char *deep = gb_length_format (draught->afloat.draught, draught->units);
  g_autofree char *mass_words = g_strdup_printf (_ ("All up %s"), mass);
  g_autofree char *deep_words = g_strdup_printf (_ ("All up: %s deep"), deep);
  double low = plot->y.start - canvas->em * 0.2;

  if (!isfinite (x) || !isfinite (y) || !(draught->total > 0))
    return;
  draw_reading (canvas, plot, GB_ROLE_TEXT, x, y, draught->afloat.draught > draught->limit.draught,
                deep_words);
  gb_canvas_dashed (canvas, GB_ROLE_TEXT, 1.2, x, y, x, plot->y.start);
  if (draught->total_sd > 0)
    gb_canvas_whisker (canvas, x, y, gb_axis_length (&plot->x, draught->total_sd));
  gb_canvas_dot (canvas, GB_ROLE_TEXT, x, y, canvas->em * 0.35);
  /* On the side that is away from the limit. */
  if (!(draught->afloat.displacement > draught->limit.displacement)
      || !gb_text_if_free (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x + canvas->em * 0.4, low,
                           GB_AT_LEFT | GB_AT_BOTTOM, mass_words))
    gb_text_if_free (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x - canvas->em * 0.4, low,
                     GB_AT_RIGHT | GB_AT_BOTTOM, mass_words);
}

static void
draw_brim (const Draught *draught, GbCanvas *canvas, const GbPlot *plot)
{
  const GbHydrostatics *brim = &draught->curve[draught->n_curve - 1];
  g_autofree char *mass = mass_text (brim->displacement, draught->units);
  g_autofree char *words = g_strdup_printf (_ ("Brim-full %s"), mass);
  double x = gb_axis_at (&plot->x, brim->displacement), y = gb_axis_at (&plot->y, brim->draught);

  gb_canvas_dot (canvas, GB_ROLE_COURSE, x, y, canvas->em * 0.25);
  gb_text_if_free (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x - canvas->em * 0.5, y - canvas->em * 0.2,
                   GB_AT_RIGHT | GB_AT_BOTTOM, words);
}

/* A band of the field for each point of the curve, halfway to its neighbours. */
static void
mark_hits (const Draught *draught, GbCanvas *canvas, const GbPlot *plot)
{
  for (guint i = 0; i < draught->n_curve; i++)
    {
      double below = draught->curve[i > 0 ? i - 1 : i].draught, here = draught->curve[i].draught;
      double above = draught->curve[MIN (i + 1, draught->n_curve - 1)].draught;
      double top = gb_axis_at (&plot->y, (here + above) / 2),
             bottom = gb_axis_at (&plot->y, (here + below) / 2);

      gb_canvas_hit (canvas, (GbBox){ plot->field.x, top, plot->field.width, bottom - top }, i);
    }
}

static double
most_mass (const Draught *draught)
{
  double most = draught->curve[draught->n_curve - 1].displacement;

  return isfinite (draught->limit.displacement) ? fmax (most, draught->limit.displacement) : most;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Draught *draught = data;
  double em = canvas->em, head = gb_plot_head (canvas), foot = gb_plot_foot (canvas, TRUE), left;
  g_autofree char *x_title
      = g_strdup_printf (_ ("Displacement, %s"), gb_quantity_unit (GB_DIM_MASS, draught->units));
  g_autofree char *y_title
      = g_strdup_printf (_ ("Draught, %s"), gb_quantity_unit (GB_DIM_LENGTH, draught->units));
  GbPlot plot;

  gb_axis_linear (&plot.y, 0, draught->curve[draught->n_curve - 1].draught,
                  gb_quantity_factor (GB_DIM_LENGTH, draught->units),
                  gb_plot_ticks (canvas, box.height - head - foot));
  left = gb_axis_widest (&plot.y, canvas) + em * 0.5;
  gb_axis_linear (&plot.x, 0, most_mass (draught), gb_quantity_factor (GB_DIM_MASS, draught->units),
                  gb_axis_most_ticks (box.width - left, em * 6));
  gb_plot_arrange (&plot, box, left, head, em, foot);
  gb_plot_draw_left (&plot, canvas, y_title);
  gb_plot_draw_below (&plot, canvas, x_title);
  draw_limit (draught, canvas, &plot);
  draw_curve (draught, canvas, &plot);
  draw_afloat (draught, canvas, &plot);
  draw_brim (draught, canvas, &plot);
  mark_hits (draught, canvas, &plot);
}

static char *
tell (gconstpointer data, guint what)
{
  return tell_point (data, what);
}

const GbChartMethod gb_chart_draught = {
  .name = "draught",
  .label = N_ ("Draught and displacement"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = draught_free,
};
