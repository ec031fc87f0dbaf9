/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "text.h"

#include <math.h>

/* The first of these that is there; figures of one width, so that columns of them line up. */
#define FAMILY "Cantarell, Sans"
#define FEATURES "tnum=1"

static const struct
{
  double size; /* in em */
  PangoWeight weight;
} looks[GB_N_TEXTS] = {
  [GB_TEXT_TITLE] = { 1.3, PANGO_WEIGHT_BOLD },
  [GB_TEXT_STRONG] = { 1, PANGO_WEIGHT_BOLD },
  [GB_TEXT_PLAIN] = { 1, PANGO_WEIGHT_NORMAL },
};

static PangoLayout *
create_layout (GbCanvas *canvas, GbTextLook look, const char *text)
{
  PangoLayout *layout = pango_layout_new (canvas->pango);
  PangoFontDescription *font = pango_font_description_from_string (FAMILY);
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_font_description_set_absolute_size (font, looks[look].size * canvas->em * PANGO_SCALE);
  pango_font_description_set_weight (font, looks[look].weight);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_attr_list_insert (attributes, pango_attr_font_features_new (FEATURES));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static void
measure (PangoLayout *layout, double *width, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double) logical.width / PANGO_SCALE;
  *height = (double) logical.height / PANGO_SCALE;
}

double
gb_text_width (GbCanvas *canvas, GbTextLook look, const char *text)
{
  g_autoptr (PangoLayout) layout = create_layout (canvas, look, text);
  double width, height;

  measure (layout, &width, &height);
  return width;
}

double
gb_text_height (GbCanvas *canvas, GbTextLook look)
{
  g_autoptr (PangoLayout) layout = create_layout (canvas, look, "0");
  double width, height;

  measure (layout, &width, &height);
  return height;
}

static GbBox
place (PangoLayout *layout, double x, double y, GbAnchor anchor)
{
  GbBox box = { x, y, 0, 0 };

  measure (layout, &box.width, &box.height);
  box.x -= box.width * (anchor & 3) / 2.0;
  box.y -= box.height * (anchor >> 2) / 2.0;
  return box;
}

static void
show (GbCanvas *canvas, PangoLayout *layout, GbRole role, GbBox box)
{
  gb_canvas_colour (canvas, role);
  cairo_move_to (canvas->cr, box.x, box.y);
  pango_cairo_show_layout (canvas->cr, layout);
  cairo_new_path (canvas->cr);
  g_array_append_val (canvas->words, box);
}

GbBox
gb_text_draw (GbCanvas *canvas,
              GbTextLook look,
              GbRole role,
              double x,
              double y,
              GbAnchor anchor,
              double most,
              const char *text)
{
  g_autoptr (PangoLayout) layout = create_layout (canvas, look, text);
  GbBox box;

  if (most >= 0)
    {
      pango_layout_set_width (layout, (int) CLAMP (most * PANGO_SCALE, 0, G_MAXINT / 2));
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    }
  box = place (layout, x, y, anchor);
  show (canvas, layout, role, box);
  return box;
}

/* TRUE if none of @boxes overlaps @box. */
static gboolean
leave_free (const GArray *boxes, GbBox box)
{
  for (guint i = 0; i < boxes->len; i++)
    if (gb_box_overlaps (box, g_array_index (boxes, GbBox, i)))
      return FALSE;
  return TRUE;
}

/* Between words that can move and their neighbours, in em: nearer, two numbers would be read as one. */
#define WORD_GAP 0.4

static gboolean
is_free (GbCanvas *canvas, GbBox box)
{
  double gap = canvas->em * WORD_GAP;

  if (!gb_box_holds (canvas->room, box.x, box.y)
      || !gb_box_holds (canvas->room, box.x + box.width, box.y + box.height))
    return FALSE;
  return leave_free (canvas->words, gb_box_inset (box, -gap, 0, -gap, 0)) && leave_free (canvas->marks, box);
}

gboolean
gb_text_is_free (GbCanvas *canvas, GbTextLook look, double x, double y, GbAnchor anchor, const char *text)
{
  g_autoptr (PangoLayout) layout = create_layout (canvas, look, text);

  return is_free (canvas, place (layout, x, y, anchor));
}

gboolean
gb_text_if_free (
    GbCanvas *canvas, GbTextLook look, GbRole role, double x, double y, GbAnchor anchor, const char *text)
{
  g_autoptr (PangoLayout) layout = create_layout (canvas, look, text);
  GbBox box = place (layout, x, y, anchor);

  if (!is_free (canvas, box))
    return FALSE;
  cairo_move_to (canvas->cr, box.x, box.y);
  pango_cairo_layout_path (canvas->cr, layout);
  gb_canvas_stroke (canvas, GB_ROLE_BACKGROUND, 3);
  show (canvas, layout, role, box);
  return TRUE;
}

gboolean
gb_text_beside (
    GbCanvas *canvas, GbTextLook look, GbRole role, double x, double y, double off, const char *text)
{
  static const struct
  {
    double right, down;
    GbAnchor anchor;
  } sides[] = {
    { 1, 0, GB_AT_LEFT | GB_AT_MIDDLE },      { 0, -1, GB_AT_CENTRE | GB_AT_BOTTOM },
    { -1, 0, GB_AT_RIGHT | GB_AT_MIDDLE },    { 0, 1, GB_AT_CENTRE | GB_AT_TOP },
    { 0.7, -0.7, GB_AT_LEFT | GB_AT_BOTTOM }, { -0.7, -0.7, GB_AT_RIGHT | GB_AT_BOTTOM },
    { 0.7, 0.7, GB_AT_LEFT | GB_AT_TOP },     { -0.7, 0.7, GB_AT_RIGHT | GB_AT_TOP },
  };

  for (double reach = off; reach < off + canvas->em; reach += canvas->em * 0.6)
    for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
      if (gb_text_if_free (canvas, look, role, x + sides[i].right * reach, y + sides[i].down * reach,
                           sides[i].anchor, text))
        return TRUE;
  return FALSE;
}

static PangoLayout *
create_wrapped (GbCanvas *canvas, GbTextLook look, double width, int lines, const char *text)
{
  PangoLayout *layout = create_layout (canvas, look, text);

  pango_layout_set_width (layout, (int) CLAMP (width * PANGO_SCALE, 0, G_MAXINT / 2));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_height (layout, -lines);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  return layout;
}

double
gb_text_wrapped_height (GbCanvas *canvas, GbTextLook look, double width, int lines, const char *text)
{
  g_autoptr (PangoLayout) layout = create_wrapped (canvas, look, width, lines, text);

  return place (layout, 0, 0, GB_AT_LEFT | GB_AT_TOP).height;
}

double
gb_text_wrap (GbCanvas *canvas,
              GbTextLook look,
              GbRole role,
              double x,
              double y,
              double width,
              int lines,
              const char *text)
{
  g_autoptr (PangoLayout) layout = create_wrapped (canvas, look, width, lines, text);
  GbBox box = place (layout, x, y, GB_AT_LEFT | GB_AT_TOP);

  show (canvas, layout, role, box);
  return box.height;
}

/* Neighbours that would touch become one run, which stands where its members would on average (pooling of
 * adjacent violators). */
typedef struct
{
  double start; /* where it would like to begin */
  double size;
  guint n;
} Run;

static Run
join (Run a, Run b, double gap)
{
  double size = a.size + gap + b.size;
  /* What b wants, said of the start of the joint run. */
  double wanted = b.start - a.size - gap;

  return (Run){ (a.start * a.n + wanted * b.n) / (a.n + b.n), size, a.n + b.n };
}

gboolean
gb_spread (double *centres, const double *sizes, guint n, double from, double to, double gap)
{
  g_autofree Run *runs = g_new (Run, n + 1);
  guint n_runs = 0, k = 0;
  double total = n > 0 ? (n - 1) * gap : 0;

  for (guint i = 0; i < n; i++)
    total += sizes[i];
  for (guint i = 0; i < n; i++)
    {
      Run run = { centres[i] - sizes[i] / 2, sizes[i], 1 };

      run.start = fmax (fmin (run.start, to - run.size), from);
      while (n_runs > 0 && runs[n_runs - 1].start + runs[n_runs - 1].size + gap > run.start)
        {
          run = join (runs[--n_runs], run, gap);
          run.start = fmax (fmin (run.start, to - run.size), from);
        }
      runs[n_runs++] = run;
    }
  for (guint r = 0; r < n_runs; r++)
    {
      double at = runs[r].start;

      for (guint i = 0; i < runs[r].n; i++, k++)
        {
          centres[k] = at + sizes[k] / 2;
          at += sizes[k] + gap;
        }
    }
  return total <= to - from;
}
