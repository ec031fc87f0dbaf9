/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "chart-private.h"
#include "engine/working.h"
#include "text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static const GbChartMethod *const methods[GB_N_CHARTS] = {
  [GB_CHART_LIMIT] = &gb_chart_limit,         [GB_CHART_GROUPS] = &gb_chart_groups,
  [GB_CHART_HISTORY] = &gb_chart_history,     [GB_CHART_BOAT] = &gb_chart_boat,
  [GB_CHART_DRAUGHT] = &gb_chart_draught,     [GB_CHART_COURSE] = &gb_chart_course,
  [GB_CHART_HEADS] = &gb_chart_heads,         [GB_CHART_FLOATING] = &gb_chart_floating,
  [GB_CHART_FREEBOARD] = &gb_chart_freeboard, [GB_CHART_CREW] = &gb_chart_crew,
  [GB_CHART_RIGHTING] = &gb_chart_righting,   [GB_CHART_SWAMPED] = &gb_chart_swamped,
};

/* All but the places under the pointer stays as it was made. Those are found once for a size and kept, so
 * that a moving pointer does not draw the picture again and again. */
struct _GbChart
{
  gatomicrefcount refs;
  const GbChartMethod *method;
  gpointer data; /* NULL: nothing to draw yet */
  char *title, *subtitle, *description;

  GMutex lock;
  GArray *hits; /* or NULL */
  double hits_width, hits_height;
};

const char *
gb_chart_kind_name (GbChartKind kind)
{
  g_return_val_if_fail (kind < GB_N_CHARTS, NULL);

  return methods[kind]->name;
}

const char *
gb_chart_kind_label (GbChartKind kind)
{
  g_return_val_if_fail (kind < GB_N_CHARTS, NULL);

  return _ (methods[kind]->label);
}

/* With a full stop, unless it ends otherwise already. */
static void
end_sentence (GString *text)
{
  if (text->len > 0 && strchr (".!?:", text->str[text->len - 1]) == NULL)
    g_string_append_c (text, '.');
}

static char *
describe (const GbChartWords *words)
{
  g_autoptr (GString) text = g_string_new (words->title->str);

  end_sentence (text);
  if (words->subtitle->len > 0)
    {
      g_string_append_printf (text, " %s", words->subtitle->str);
      end_sentence (text);
    }
  if (words->description->len > 0)
    g_string_append_printf (text, " %s", words->description->str);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

GbChart *
gb_chart_new (GbChartKind kind, const GbChartSource *source)
{
  GbChartWords words;
  GbChart *chart;

  g_return_val_if_fail (kind < GB_N_CHARTS, NULL);
  g_return_val_if_fail (source != NULL && source->boat != NULL && source->findings != NULL, NULL);

  words.title = g_string_new (NULL);
  words.subtitle = g_string_new (NULL);
  words.description = g_string_new (NULL);
  chart = g_new0 (GbChart, 1);
  g_atomic_ref_count_init (&chart->refs);
  g_mutex_init (&chart->lock);
  chart->method = methods[kind];
  chart->data = chart->method->make (source, &words);
  chart->description = describe (&words);
  chart->title = g_string_free (words.title, FALSE);
  chart->subtitle = g_string_free (words.subtitle, FALSE);
  g_string_free (words.description, TRUE);
  return chart;
}

GbChart *
gb_chart_ref (GbChart *chart)
{
  g_atomic_ref_count_inc (&chart->refs);
  return chart;
}

void
gb_chart_unref (GbChart *chart)
{
  if (chart == NULL || !g_atomic_ref_count_dec (&chart->refs))
    return;
  if (chart->data != NULL)
    chart->method->free (chart->data);
  g_free (chart->title);
  g_free (chart->subtitle);
  g_free (chart->description);
  g_clear_pointer (&chart->hits, g_array_unref);
  g_mutex_clear (&chart->lock);
  g_free (chart);
}

const char *
gb_chart_title (const GbChart *chart)
{
  return chart->title;
}

const char *
gb_chart_subtitle (const GbChart *chart)
{
  return chart->subtitle;
}

const char *
gb_chart_description (const GbChart *chart)
{
  return chart->description;
}

gboolean
gb_chart_is_empty (const GbChart *chart)
{
  return chart->data == NULL;
}

/* Height of a picture that is low, in em: where a load is dragged, the head then gives way to the drawing. */
#define LOW 23
#define TITLE_LINES 2

/* The title and the subtitle; gives the room beneath them. In a steady chart that follows from the size of
 * the picture and the subtitle alone: the title has its room whether it fills it or not. In a low one the
 * subtitle stands only in room that the title leaves. */
static GbBox
draw_head (const GbChart *chart, GbCanvas *canvas)
{
  gboolean steady = chart->method->steady && chart->data != NULL;
  gboolean low = steady && canvas->height < LOW * canvas->em;
  double pad = canvas->em, width = canvas->width - 2 * pad, y = pad * 0.8;
  double head_width = width - 2 * canvas->em; /* on screen the chart's menu stands in the corner */
  double line = gb_text_height (canvas, GB_TEXT_TITLE), title, subtitle = 0;

  title = gb_text_wrap (canvas, GB_TEXT_TITLE, GB_ROLE_TEXT, pad, y, head_width, TITLE_LINES, chart->title);
  if (chart->subtitle[0] != '\0' && (!low || title < line * 1.5))
    subtitle = gb_text_wrap (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, pad, y + title, head_width, low ? 1 : 2,
                             chart->subtitle);
  y += (steady ? TITLE_LINES * line : title) + (low ? 0 : subtitle) + pad * 0.6;
  return (GbBox){ pad, y, width, canvas->height - y - pad };
}

/* In small words along the bottom of @box; gives the room above them. */
static GbBox
draw_caution (GbCanvas *canvas, GbBox box)
{
  double height = gb_text_wrapped_height (canvas, GB_TEXT_PLAIN, box.width, 3, gb_caution_afloat ());

  gb_text_wrap (canvas, GB_TEXT_PLAIN, GB_ROLE_QUIET, box.x, box.y + box.height - height, box.width, 3,
                gb_caution_afloat ());
  return gb_box_inset (box, 0, 0, 0, height + canvas->em * 0.5);
}

/* Under this nothing but the words could be read. */
#define LEAST_WIDTH 16 /* em */
#define LEAST_HEIGHT 7

static gboolean
has_room (const GbCanvas *canvas, GbBox box)
{
  return box.width >= LEAST_WIDTH * canvas->em && box.height >= LEAST_HEIGHT * canvas->em;
}

void
gb_chart_render (const GbChart *chart, GbCanvas *canvas, gboolean alone)
{
  GbBox box;

  cairo_rectangle (canvas->cr, 0, 0, canvas->width, canvas->height);
  cairo_clip_preserve (canvas->cr);
  gb_canvas_colour (canvas, GB_ROLE_BACKGROUND);
  cairo_fill (canvas->cr);
  if (canvas->width < 4 * canvas->em || canvas->height < 4 * canvas->em)
    return;
  box = draw_head (chart, canvas);
  if (alone && chart->method->caution && chart->data != NULL)
    box = draw_caution (canvas, box);
  if (chart->data != NULL && has_room (canvas, box))
    chart->method->draw (chart->data, canvas, box);
}

void
gb_chart_draw (GbChart *chart, cairo_t *cr, double width, double height, GbChartStyle style)
{
  gb_chart_draw_alone (chart, cr, width, height, style, style == GB_CHART_PRINT);
}

void
gb_chart_draw_alone (
    GbChart *chart, cairo_t *cr, double width, double height, GbChartStyle style, gboolean alone)
{
  g_auto (GbCanvas) canvas = { 0 };

  g_return_if_fail (chart != NULL && cr != NULL);

  if (!(width > 0 && height > 0) || !isfinite (width) || !isfinite (height))
    return;
  gb_canvas_init (&canvas, cr, width, height, style);
  gb_chart_render (chart, &canvas, alone);
}

/* Something to draw onto that takes no paint, for the places alone. */
static cairo_t *
create_nothing (void)
{
  cairo_surface_t *nothing = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (nothing);

  cairo_surface_destroy (nothing);
  return cr;
}

static GArray *
find_hits (const GbChart *chart, double width, double height)
{
  g_auto (GbCanvas) canvas = { 0 };
  cairo_t *cr = create_nothing ();

  gb_canvas_init (&canvas, cr, width, height, GB_CHART_LIGHT);
  gb_chart_render (chart, &canvas, FALSE);
  cairo_destroy (cr);
  return g_steal_pointer (&canvas.hits);
}

static gboolean
has_picture (const GbChart *chart, double width, double height)
{
  return chart->data != NULL && width > 0 && height > 0 && isfinite (width) && isfinite (height);
}

/* What is under the pointer, or GB_NO_HIT. */
static guint
what_is_at (GbChart *chart, double width, double height, double x, double y)
{
  g_autoptr (GMutexLocker) locker G_GNUC_UNUSED = g_mutex_locker_new (&chart->lock);
  const GbHit *hit;

  if (!has_picture (chart, width, height))
    return GB_NO_HIT;
  if (chart->hits == NULL || chart->hits_width != width || chart->hits_height != height)
    {
      g_clear_pointer (&chart->hits, g_array_unref);
      chart->hits = find_hits (chart, width, height);
      chart->hits_width = width;
      chart->hits_height = height;
    }
  hit = gb_hits_find (chart->hits, x, y);
  return hit != NULL ? hit->what : GB_NO_HIT;
}

/* The room for the drawing itself is what draw() got. */
static gboolean
find_place (GbChart *chart, double width, double height, double x, double y, guint what, GbChartSpot *spot)
{
  g_auto (GbCanvas) canvas = { 0 };
  cairo_t *cr;
  GbBox box;
  gboolean found;

  if (chart->method->locate == NULL || !has_picture (chart, width, height) || !isfinite (x) || !isfinite (y))
    return FALSE;
  cr = create_nothing ();
  gb_canvas_init (&canvas, cr, width, height, GB_CHART_LIGHT);
  box = draw_head (chart, &canvas);
  found = has_room (&canvas, box) && chart->method->locate (chart->data, &canvas, box, x, y, what, spot);
  cairo_destroy (cr);
  return found;
}

/* Where the head may be cut short. */
static gboolean
is_over_head (const GbChart *chart, double width, double height, double y)
{
  g_auto (GbCanvas) canvas = { 0 };
  cairo_t *cr;
  GbBox box;

  if (!chart->method->steady || !has_picture (chart, width, height))
    return FALSE;
  cr = create_nothing ();
  gb_canvas_init (&canvas, cr, width, height, GB_CHART_LIGHT);
  box = draw_head (chart, &canvas);
  cairo_destroy (cr);
  return y >= 0 && y < box.y;
}

char *
gb_chart_tooltip (GbChart *chart, double width, double height, double x, double y)
{
  GbChartSpot spot = { GB_N_RECORDS, 0, -1, { NAN, NAN, NAN } };
  guint what;

  g_return_val_if_fail (chart != NULL, NULL);

  what = what_is_at (chart, width, height, x, y);
  if (what != GB_NO_HIT)
    return chart->method->tell != NULL ? chart->method->tell (chart->data, what) : NULL;
  if (is_over_head (chart, width, height, y))
    return g_strdup_printf ("%s. %s", chart->title, chart->subtitle);
  if (chart->method->tell_place != NULL && find_place (chart, width, height, x, y, what, &spot))
    return chart->method->tell_place (chart->data, &spot);
  return NULL;
}

static gint64
part_of (const GbChart *chart, guint what)
{
  return what != GB_NO_HIT && chart->method->part != NULL ? chart->method->part (chart->data, what) : 0;
}

static gint64
load_of (const GbChart *chart, guint what)
{
  return what != GB_NO_HIT && chart->method->load != NULL ? chart->method->load (chart->data, what) : 0;
}

gint64
gb_chart_pick (GbChart *chart, double width, double height, double x, double y)
{
  g_return_val_if_fail (chart != NULL, 0);

  return chart->method->part != NULL ? part_of (chart, what_is_at (chart, width, height, x, y)) : 0;
}

gboolean
gb_chart_locate (GbChart *chart, double width, double height, double x, double y, int view, GbChartSpot *spot)
{
  guint what;

  g_return_val_if_fail (chart != NULL && spot != NULL, FALSE);

  *spot = (GbChartSpot){ GB_N_RECORDS, 0, view, { NAN, NAN, NAN } };
  if (chart->method->locate == NULL)
    return FALSE;
  what = what_is_at (chart, width, height, x, y);
  if (!find_place (chart, width, height, x, y, what, spot))
    return FALSE;
  spot->id = load_of (chart, what);
  spot->kind = spot->id != 0 ? GB_RECORD_LOAD : GB_N_RECORDS;
  if (spot->id == 0 && (spot->id = part_of (chart, what)) != 0)
    spot->kind = GB_RECORD_PART;
  return TRUE;
}
