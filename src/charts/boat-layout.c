/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "boat-layout.h"

#include <math.h>

#define FOOT 0.3048
/* Length of the boat in the picture that is worth having, in em. */
#define LEAST_BOAT 5.0

/* What is to be placed: the views, and the key after them. */
enum
{
  KEY = GB_N_VIEWS,
  N_BLOCKS
};

/* A way to stand: the column that each block is in; in a column they stand one under another. Side and end
 * view at the heads of two columns stand at one height. */
static const struct
{
  guint columns[N_BLOCKS]; /* side, plan, end, key */
} ways[] = {
  { { 0, 0, 1, 1 } }, /* as on a lines plan */
  { { 0, 2, 1, 2 } }, { { 0, 2, 1, 3 } }, { { 0, 0, 1, 0 } }, { { 0, 0, 0, 1 } }, { { 0, 1, 1, 1 } },
  { { 0, 1, 0, 1 } }, { { 0, 1, 0, 2 } }, { { 0, 1, 0, 0 } }, { { 0, 0, 0, 0 } },
};

typedef enum
{
  PADS_FULL,
  PADS_TIGHT,
  PADS_UPRIGHT, /* above and below only */
  PADS_NONE
} PadKind;

/* What is given room besides the boat herself. */
typedef struct
{
  gboolean key;
  PadKind pads;
  gboolean numbers; /* along, beneath the views */
  double worth;     /* the share of the largest scale that must be left */
} Comfort;

/* The most comfort first. */
static const Comfort comforts[] = {
  { TRUE, PADS_FULL, TRUE, 0.65 },
  { FALSE, PADS_FULL, TRUE, 0.85 },
  { FALSE, PADS_TIGHT, TRUE, 0.85 },
  { FALSE, PADS_TIGHT, FALSE, 0.85 },
  { FALSE, PADS_UPRIGHT, TRUE, 0.85 },
  { FALSE, PADS_UPRIGHT, FALSE, 0.85 },
};
static const Comfort bare = { FALSE, PADS_NONE, FALSE, 0 };

/* What a block needs: so much of the boat, times the scale, and so much of the picture. */
typedef struct
{
  double boat_width, boat_height;
  double width, height;
  double least_width;
} Need;

typedef struct
{
  Need blocks[N_BLOCKS];
  guint shown; /* bits of blocks */
  double gap_right, gap_down;
} Needs;

double
gb_boat_unit (GbUnits units)
{
  return units == GB_UNITS_FEET ? FOOT : 1;
}

void
gb_boat_view_at (const GbBoatView *view, GbVec3 p, double *x, double *y)
{
  double right, up;

  gb_view_place (view->view, p, &right, &up);
  *x = gb_axis_at (&view->right, right);
  *y = gb_axis_at (&view->up, up);
}

/* The range of a view in the boat. */
static void
view_range (const GbScene *scene, GbView view, double *right, double *up)
{
  double a, b;

  gb_view_place (view, scene->lo, &right[0], &up[0]);
  gb_view_place (view, scene->hi, &right[1], &up[1]);
  a = fmin (right[0], right[1]);
  b = fmax (right[0], right[1]);
  right[0] = a;
  right[1] = b;
}

static double
block_width (const Need *need, double scale)
{
  return fmax (need->boat_width * scale + need->width, need->least_width);
}

static double
block_height (const Need *need, double scale)
{
  return need->boat_height * scale + need->height;
}

/* The size of all together. */
static void
measure_way (
    const Needs *needs, guint way, double scale, double widths[N_BLOCKS], double *width, double *height)
{
  double heights[N_BLOCKS] = { 0 };
  guint n_columns = 0;

  for (guint c = 0; c < N_BLOCKS; c++)
    widths[c] = 0;
  for (guint b = 0; b < N_BLOCKS; b++)
    {
      guint c = ways[way].columns[b];

      if ((needs->shown & 1u << b) == 0)
        continue;
      n_columns = MAX (n_columns, c + 1);
      widths[c] = fmax (widths[c], block_width (&needs->blocks[b], scale));
      heights[c] += block_height (&needs->blocks[b], scale) + (heights[c] > 0 ? needs->gap_down : 0);
    }
  *width = (n_columns - 1) * needs->gap_right;
  *height = 0;
  for (guint c = 0; c < n_columns; c++)
    {
      *width += widths[c];
      *height = fmax (*height, heights[c]);
    }
}

/* The largest scale at which this way fits the box; 0 if it fits at none. */
static double
largest_scale (const Needs *needs, guint way, GbBox box)
{
  double lo = 0, hi = fmax (box.width / needs->blocks[GB_VIEW_SIDE].boat_width, 1e-9), widths[N_BLOCKS];

  for (guint i = 0; i < 60; i++)
    {
      double scale = (lo + hi) / 2, width, height;

      measure_way (needs, way, scale, widths, &width, &height);
      if (width <= box.width && height <= box.height)
        lo = scale;
      else
        hi = scale;
    }
  return lo;
}

static double
best_way (const Needs *needs, GbBox box, guint *way)
{
  double best = 0;

  *way = 0;
  for (guint w = 0; w < G_N_ELEMENTS (ways); w++)
    {
      double scale = largest_scale (needs, w, box);

      /* A later way must be clearly better. */
      if (scale > best * 1.05)
        {
          best = scale;
          *way = w;
        }
    }
  return best;
}

static GbPads
pads_of (const GbBoatWords *words, PadKind kind, guint view)
{
  const GbPads *pads = &words->pads[view];

  return kind == PADS_FULL      ? *pads
         : kind == PADS_TIGHT   ? words->tight[view]
         : kind == PADS_UPRIGHT ? (GbPads){ 0, pads->top, 0, pads->bottom }
                                : (GbPads){ 0, 0, 0, 0 };
}

static gboolean
has_numbers (const GbBoatWords *words, const Comfort *comfort)
{
  return comfort->numbers || !words->numbers_give_way;
}

static Needs
find_needs (
    const GbScene *scene, GbCanvas *canvas, const GbBoatWords *words, guint views, const Comfort *comfort)
{
  double line = gb_text_height (canvas, GB_TEXT_PLAIN), em = canvas->em;
  double lines = line * (has_numbers (words, comfort) ? 2 : 1);
  Needs needs = { .shown = views | (comfort->key ? 1u << KEY : 0), .gap_right = em * 1.2,
                  .gap_down = em * 0.6 };

  for (guint v = 0; v < GB_N_VIEWS; v++)
    {
      double right[2], up[2];
      GbPads pads = pads_of (words, comfort->pads, v);

      view_range (scene, (GbView)v, right, up);
      needs.blocks[v]
          = (Need){ right[1] - right[0], up[1] - up[0], em * GB_VIEW_LEFT + pads.left + pads.right,
                    lines + em * (GB_VIEW_TOP + 0.25) + pads.top + pads.bottom, words->captions[v] };
    }
  needs.blocks[GB_VIEW_SIDE].width += words->waterlines;
  needs.blocks[KEY] = (Need){ 0, 0, words->key.width, words->key.height, 0 };
  return needs;
}

/* A step that leaves room for the numbers along both ways, and has no more of them than an axis holds. */
static double
tick_step (double scale, double unit, double em, double longest)
{
  return gb_round_step (fmax (em * 2.8 / scale, longest / (GB_MOST_TICKS - 1)) / unit);
}

static void
place_view (
    const GbScene *scene, GbCanvas *canvas, GbBoatLayout *layout, GbView v, double x, double y)
{
  GbBoatView *view = &layout->views[v];
  GbPads pads = layout->pads[v];
  double right[2], up[2], unit = gb_boat_unit (scene->units), em = canvas->em;
  double step, line = gb_text_height (canvas, GB_TEXT_PLAIN);

  view_range (scene, v, right, up);
  right[0] -= pads.left / layout->scale;
  right[1] += pads.right / layout->scale;
  up[0] -= pads.bottom / layout->scale;
  up[1] += pads.top / layout->scale;
  step = tick_step (layout->scale, unit, em, fmax (right[1] - right[0], up[1] - up[0]));
  view->view = v;
  view->box = (GbBox){ x + em * GB_VIEW_LEFT, y + line + em * GB_VIEW_TOP,
                       (right[1] - right[0]) * layout->scale, (up[1] - up[0]) * layout->scale };
  gb_axis_within (&view->right, right[0], right[1], unit, step);
  gb_axis_within (&view->up, up[0], up[1], unit, step);
  view->right.start = view->box.x;
  view->right.end = view->box.x + view->box.width;
  view->up.start = view->box.y + view->box.height;
  view->up.end = view->box.y;
}

/* Where not all views fit in any size worth looking at, some are left out: the plan, and then all but one.
 * None where not even that fits. */
static Needs
choose_views (const GbScene *scene,
              GbCanvas *canvas,
              GbBox box,
              const GbBoatWords *words,
              GbBoatLayout *layout,
              guint *way)
{
  const guint side_and_end = scene->views & (1u << GB_VIEW_SIDE | 1u << GB_VIEW_END);
  const guint subsets[] = { scene->views, side_and_end, scene->views & ~(scene->views - 1) };
  Needs needs = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (subsets); i++)
    {
      if (subsets[i] == 0)
        continue;
      needs = find_needs (scene, canvas, words, subsets[i], &bare);
      layout->scale = best_way (&needs, box, way);
      layout->shown = subsets[i];
      if (layout->scale * needs.blocks[GB_VIEW_SIDE].boat_width >= LEAST_BOAT * canvas->em)
        return needs;
    }
  if (!(layout->scale * needs.blocks[GB_VIEW_SIDE].boat_width >= canvas->em))
    layout->shown = 0;
  return needs;
}

static void
take_comfort (GbBoatLayout *layout, const GbBoatWords *words, const Comfort *comfort)
{
  for (guint v = 0; v < GB_N_VIEWS; v++)
    {
      layout->pads[v] = pads_of (words, comfort->pads, v);
      layout->views[v].numbered = has_numbers (words, comfort);
    }
}

/* The largest scale at which all stands in @box. The key, then the room for words in the views, and then the
 * numbers along them give way where they would take much from the drawing. */
static Needs
choose (const GbScene *scene,
        GbCanvas *canvas,
        GbBox box,
        const GbBoatWords *words,
        GbBoatLayout *layout,
        guint *way)
{
  guint bare_way;
  Needs barest = choose_views (scene, canvas, box, words, layout, &bare_way);
  double largest = layout->scale;

  for (guint i = 0; i < G_N_ELEMENTS (comforts); i++)
    {
      Needs needs = find_needs (scene, canvas, words, layout->shown, &comforts[i]);

      layout->scale = best_way (&needs, box, way);
      take_comfort (layout, words, &comforts[i]);
      if (layout->scale >= largest * comforts[i].worth && layout->scale > 0)
        return needs;
    }
  *way = bare_way;
  layout->scale = largest;
  take_comfort (layout, words, &bare);
  return barest;
}

GbBoatLayout
gb_boat_layout (const GbScene *scene, GbCanvas *canvas, GbBox box, const GbBoatWords *words)
{
  GbBoatLayout layout = { 0 };
  double widths[N_BLOCKS], tops[N_BLOCKS], width, height;
  guint way;
  Needs needs = choose (scene, canvas, box, words, &layout, &way);

  measure_way (&needs, way, layout.scale, widths, &width, &height);
  for (guint c = 0; c < N_BLOCKS; c++)
    tops[c] = box.y;
  for (guint b = 0; b < N_BLOCKS; b++)
    {
      guint c = ways[way].columns[b];
      double x = box.x;

      if ((needs.shown & 1u << b) == 0 || layout.shown == 0)
        continue;
      for (guint left = 0; left < c; left++)
        x += widths[left] + needs.gap_right;
      if (b == KEY)
        layout.key = (GbBox){ x, tops[c], words->key.width, words->key.height };
      else
        place_view (scene, canvas, &layout, (GbView)b, x, tops[c]);
      tops[c] += block_height (&needs.blocks[b], layout.scale) + needs.gap_down;
    }
  return layout;
}

const GbBoatView *
gb_boat_view_under (const GbBoatLayout *layout, double x, double y)
{
  for (guint v = 0; v < GB_N_VIEWS; v++)
    if ((layout->shown & 1u << v) != 0 && gb_box_holds (layout->views[v].box, x, y))
      return &layout->views[v];
  return NULL;
}

gboolean
gb_boat_locate (
    const GbScene *scene, const GbBoatLayout *layout, double x, double y, GbVec3 held, GbChartSpot *spot)
{
  const GbBoatView *view = NULL;

  if (spot->view < 0)
    view = gb_boat_view_under (layout, x, y);
  else if (spot->view < GB_N_VIEWS && (layout->shown & 1u << spot->view) != 0)
    view = &layout->views[spot->view];
  if (view == NULL || !(layout->scale > 0))
    return FALSE;
  spot->view = (int)view->view;
  spot->at = gb_water_axes_on_sight (&scene->axes, view->view, gb_axis_value (&view->right, x),
                                     gb_axis_value (&view->up, y), held);
  return TRUE;
}
