/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The boat with all aboard against its flotation limit, and the light craft against its target: a bar each,
 * on a scale of its own, as the two limits may lie far apart. */

#include "bars.h"
#include "boat/quantity.h"
#include "chart-private.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* One bar and its limit. */
typedef struct
{
  const char *name;
  char *total_words; /* with the deviation */
  GbPiece pieces[GB_MOST_PIECES];
  double values[GB_MOST_PIECES];
  char *words[GB_MOST_PIECES];
  guint n_pieces;
  double total, sd;
  double limit; /* NAN: none */
  const char *limit_name;
  char *limit_words, *over_words;
  char *tell;
} Bar;

typedef struct
{
  GbUnits units;
  Bar bars[2];
  guint n_bars;
} Limit;

static void
limit_free (gpointer data)
{
  Limit *limit = data;

  for (guint i = 0; i < limit->n_bars; i++)
    {
      Bar *bar = &limit->bars[i];

      for (guint p = 0; p < bar->n_pieces; p++)
        g_free (bar->words[p]);
      g_free (bar->total_words);
      g_free (bar->limit_words);
      g_free (bar->over_words);
      g_free (bar->tell);
    }
  g_free (limit);
}

static char *
mass_text (double mass, GbUnits units)
{
  return gb_quantity_format (mass, GB_DIM_MASS, units);
}

static void
add_piece (Bar *bar, const char *label, GbRole role, double value, GbUnits units)
{
  guint p = bar->n_pieces++;

  bar->pieces[p] = (GbPiece){ label, role };
  bar->values[p] = value;
  bar->words[p] = mass_text (value, units);
}

/* Says the limit, and how far it is passed. */
static void
set_limit (Bar *bar, const char *name, double limit, GbUnits units)
{
  bar->limit = limit;
  bar->limit_name = name;
  bar->limit_words = mass_text (limit, units);
  if (bar->total > limit)
    {
      g_autofree char *text = gb_quantity_format_off (bar->total - limit, bar->total, GB_DIM_MASS, units);

      bar->over_words = g_strdup_printf (_ ("%s over"), text);
    }
}

static void
say_whole (Bar *bar, GbUnits units)
{
  g_autoptr (GString) text = g_string_new (NULL);

  bar->total_words = gb_quantity_format_with_sd (bar->total, bar->sd, GB_DIM_MASS, units);
  g_string_append_printf (text, "%s: %s.", bar->name, bar->total_words);
  for (guint p = 0; p < bar->n_pieces; p++)
    gb_say (text, "%s %s.", bar->pieces[p].label, bar->words[p]);
  if (isfinite (bar->limit))
    gb_say (text, "%s %s.", bar->limit_name, bar->limit_words);
  if (bar->over_words != NULL)
    gb_say (text, "%s.", bar->over_words);
  bar->tell = g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_all_up (Limit *limit, const GbFlotation *flotation)
{
  Bar *bar = &limit->bars[limit->n_bars++];

  bar->name = _ ("All up");
  bar->total = flotation->total;
  bar->sd = flotation->total_sd;
  add_piece (bar, _ ("Light craft"), GB_ROLE_LIGHT_CRAFT, flotation->light, limit->units);
  add_piece (bar, _ ("Margin"), GB_ROLE_MARGIN, flotation->margin, limit->units);
  add_piece (bar, _ ("Loads"), GB_ROLE_LOADS, flotation->load_mass, limit->units);
  set_limit (bar, _ ("Flotation limit"), flotation->limit.displacement, limit->units);
  say_whole (bar, limit->units);
}

static void
add_light_craft (Limit *limit, const GbFindings *findings, double target)
{
  Bar *bar = &limit->bars[limit->n_bars++];

  bar->name = _ ("Light craft");
  bar->total = findings->flotation.light + findings->flotation.margin;
  bar->sd = findings->rollup.boat.mass_sd;
  add_piece (bar, _ ("Light craft"), GB_ROLE_LIGHT_CRAFT, findings->flotation.light, limit->units);
  add_piece (bar, _ ("Margin"), GB_ROLE_MARGIN, findings->flotation.margin, limit->units);
  set_limit (bar, _ ("Target"), target, limit->units);
  say_whole (bar, limit->units);
}

static void
say_title (GString *title, const GbFlotation *flotation, double target, GbUnits units)
{
  double under = target - flotation->light - flotation->margin;
  g_autofree char *left = gb_quantity_format_off (flotation->left, flotation->total, GB_DIM_MASS, units);
  g_autofree char *off = gb_quantity_format_off (under, target, GB_DIM_MASS, units);
  g_autofree char *total = mass_text (flotation->total, units);

  if (isfinite (flotation->left) && isfinite (under))
    {
      if (flotation->left >= 0 && under >= 0)
        g_string_append_printf (title, _ ("%s may still come aboard, and the boat is %s under its target"),
                                left, off);
      else if (flotation->left >= 0)
        g_string_append_printf (title, _ ("%s may still come aboard, but the boat is %s over its target"),
                                left, off);
      else if (under >= 0)
        g_string_append_printf (
            title, _ ("All up %s over the flotation limit, though the boat is %s under its target"), left,
            off);
      else
        g_string_append_printf (
            title, _ ("All up %s over the flotation limit, and the boat is %s over its target"), left, off);
    }
  else if (isfinite (flotation->left))
    g_string_append_printf (title,
                            flotation->left >= 0 ? _ ("%s may still come aboard")
                                                 : _ ("All up %s over the flotation limit"),
                            left);
  else if (isfinite (under))
    g_string_append_printf (title, under >= 0 ? _ ("%s under target") : _ ("%s over target"), off);
  else
    g_string_append_printf (title, _ ("All up %s; no limit is known yet"), total);
}

static void
say_subtitle (GString *text, const GbFindings *findings, double freeboard)
{
  const GbFlotation *flotation = &findings->flotation;

  if (isfinite (flotation->chance))
    {
      g_autofree char *chance = gb_percent_words (flotation->chance);

      gb_say (text, _ ("Chance of passing the flotation limit: %s."), chance);
    }
  else if (flotation->n_hulls == 0)
    gb_say (text, "%s", _ ("Without a hull there is no flotation limit."));
  else if (!isfinite (freeboard))
    gb_say (text, "%s", _ ("Without an accepted least freeboard there is no flotation limit."));
  gb_say_no_mass (text, findings->rollup.boat.n_no_mass);
  if (flotation->n_no_mass_loads > 0)
    gb_say (text,
            ngettext ("%u load has no mass yet and is not counted.",
                      "%u loads have no mass yet and are not counted.", flotation->n_no_mass_loads),
            flotation->n_no_mass_loads);
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbBuild *build = gb_boat_build (source->boat);
  const GbFlotation *flotation = &source->findings->flotation;
  Limit *limit;

  if (!(flotation->total > 0))
    {
      g_string_append (words->title, _ ("The weight stands here against its limits, once a part has a mass"));
      gb_say_no_mass (words->subtitle, source->findings->rollup.boat.n_no_mass);
      return NULL;
    }
  say_title (words->title, flotation, build->target_mass, (GbUnits) build->units);
  say_subtitle (words->subtitle, source->findings, build->freeboard);

  limit = g_new0 (Limit, 1);
  limit->units = (GbUnits) build->units;
  add_all_up (limit, flotation);
  if (isfinite (build->target_mass))
    add_light_craft (limit, source->findings, build->target_mass);
  for (guint i = 0; i < limit->n_bars; i++)
    gb_say (words->description, "%s", limit->bars[i].tell);
  return limit;
}

/* How a bar's panel is divided, from top to bottom: labels, the bar, its scale. */
typedef struct
{
  GbAxis axis;
  double top, height; /* of the bar */
} Panel;

static double
least_height (GbCanvas *canvas)
{
  return gb_bar_labels_height (canvas) + gb_text_height (canvas, GB_TEXT_PLAIN) + canvas->em * 2.2;
}

static Panel
arrange (const Bar *bar, GbCanvas *canvas, GbBox box, double names, const Limit *limit)
{
  Panel panel;
  double em = canvas->em, most = bar->total + (bar->sd > 0 ? bar->sd : 0);

  if (isfinite (bar->limit))
    most = fmax (most, bar->limit);
  panel.axis.start = box.x + names;
  panel.axis.end = box.x + box.width - em * 1.5;
  gb_axis_linear (&panel.axis, 0, most, gb_quantity_factor (GB_DIM_MASS, limit->units),
                  gb_axis_most_ticks (panel.axis.end - panel.axis.start, em * 5));
  gb_axis_say_unit (&panel.axis, gb_quantity_unit (GB_DIM_MASS, limit->units));
  panel.top = box.y + gb_bar_labels_height (canvas);
  panel.height = fmin (box.height - (least_height (canvas) - em * 1.4), em * 5);
  return panel;
}

/* The limit is the boldest line; what of the bar lies beyond it is framed in its colour. */
static void
draw_limit (const Bar *bar, GbCanvas *canvas, const Panel *panel)
{
  double x = gb_axis_at (&panel->axis, bar->limit), end = gb_axis_at (&panel->axis, bar->total),
         em = canvas->em;
  double top = panel->top - em * 0.25, bottom = panel->top + panel->height;

  if (bar->total > bar->limit)
    {
      cairo_rectangle (canvas->cr, x, panel->top, end - x, panel->height);
      gb_canvas_stroke (canvas, GB_ROLE_LIMIT, 3);
    }
  gb_canvas_line (canvas, GB_ROLE_BACKGROUND, 7, x, top, x, bottom);
  gb_canvas_line (canvas, GB_ROLE_LIMIT, 4, x, top, x, bottom);
}

/* The pieces' labels, and the limit's among them. */
static void
draw_labels (const Bar *bar, GbCanvas *canvas, const Panel *panel)
{
  GbBarLabel labels[GB_MOST_BAR_LABELS];
  guint n = gb_bar_label_pieces (labels, bar->pieces, bar->values, bar->words, bar->n_pieces);

  if (isfinite (bar->limit))
    {
      guint at = n++;

      for (; at > 0 && labels[at - 1].at > bar->limit; at--)
        labels[at] = labels[at - 1];
      labels[at] = (GbBarLabel){ bar->limit, bar->limit_name, bar->limit_words, GB_ROLE_LIMIT };
    }
  gb_bar_draw_labels (canvas, &panel->axis, panel->top - canvas->em * 0.1, labels, n);
}

static void
draw_names (const Bar *bar, GbCanvas *canvas, double x, double width, double middle)
{
  gb_text_draw (canvas, GB_TEXT_STRONG, GB_ROLE_TEXT, x, middle, GB_AT_LEFT | GB_AT_BOTTOM, width, bar->name);
  gb_text_draw (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, x, middle, GB_AT_LEFT | GB_AT_TOP, width,
                bar->total_words);
}

static void
draw_bar (const Bar *bar, GbCanvas *canvas, GbBox box, double names, const Limit *limit)
{
  Panel panel = arrange (bar, canvas, box, names, limit);
  double em = canvas->em, middle = panel.top + panel.height / 2, half = 0, end;

  gb_axis_draw_below (&panel.axis, canvas, panel.top + panel.height + em * 0.2, panel.top);
  draw_names (bar, canvas, box.x, names - em, middle);
  end = gb_bar_draw (canvas, &panel.axis, panel.top, panel.height, bar->pieces, bar->values, bar->n_pieces);
  if (isfinite (bar->limit))
    draw_limit (bar, canvas, &panel);
  if (bar->sd > 0 && isfinite (bar->sd))
    {
      half = gb_axis_length (&panel.axis, bar->sd);
      gb_canvas_whisker (canvas, end, middle, half);
    }
  draw_labels (bar, canvas, &panel);
  if (bar->over_words != NULL)
    gb_text_if_free (canvas, GB_TEXT_STRONG, GB_ROLE_LIMIT, end + half + em * 0.5, middle,
                     GB_AT_LEFT | GB_AT_MIDDLE, bar->over_words);
}

static double
names_width (const Limit *limit, GbCanvas *canvas)
{
  double widest = 0;

  for (guint i = 0; i < limit->n_bars; i++)
    {
      widest = fmax (widest, gb_text_width (canvas, GB_TEXT_STRONG, limit->bars[i].name));
      widest = fmax (widest, gb_text_width (canvas, GB_TEXT_PLAIN, limit->bars[i].total_words));
    }
  return widest;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Limit *limit = data;
  double em = canvas->em, names = fmin (names_width (limit, canvas) + em, box.width * 0.3);
  guint n = box.height >= limit->n_bars * least_height (canvas) ? limit->n_bars : 1;
  double height = fmin (box.height / n, em * 18);

  for (guint i = 0; i < n; i++)
    {
      GbBox panel = { box.x, box.y + i * height, box.width, height };

      draw_bar (&limit->bars[i], canvas, panel, names, limit);
      gb_canvas_hit (canvas, panel, i);
    }
}

static char *
tell (gconstpointer data, guint what)
{
  return g_strdup (((const Limit *) data)->bars[what].tell);
}

const GbChartMethod gb_chart_limit = {
  .name = "limit",
  .label = N_ ("Weight and limits"),
  .caution = TRUE,
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = limit_free,
};
