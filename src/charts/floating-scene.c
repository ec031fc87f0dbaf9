/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "floating-scene.h"
#include "boat-centres.h"
#include "boat/deviation.h"
#include "boat/quantity.h"
#include "floating-words.h"
#include "level-lines.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Heeled or trimmed by more than this, draughts along her own height mean nothing. */
#define MOST_FOR_DRAUGHTS (60 * G_PI / 180)

static void
edge_free (gpointer data)
{
  GbFloatingEdge *edge = data;

  g_free (edge->name);
  g_free (edge->opening);
  g_array_unref (edge->points);
  g_free (edge);
}

/* Its own name, without its hull's; NULL: none. */
static char *
opening_name (const GbBoat *boat, const GbEdgeLine *line)
{
  const GbRecord *opening
      = line->opening != 0 ? gb_boat_get (boat, GB_RECORD_OPENING, line->opening) : NULL;

  if (line->opening == 0)
    return NULL;
  return opening != NULL ? gb_record_dup_title (opening) : g_strdup (line->name);
}

static void
add_edges (GbFloating *floating, const GbBoat *boat, const GbEdgeSet *edges)
{
  for (guint i = 0; edges->lines != NULL && i < edges->lines->len; i++)
    {
      const GbEdgeLine *line = g_ptr_array_index (edges->lines, i);
      GbFloatingEdge *edge = g_new0 (GbFloatingEdge, 1);

      edge->name = g_strdup (line->name);
      edge->opening = opening_name (boat, line);
      edge->mirrored = line->mirrored;
      edge->points = g_array_new (FALSE, FALSE, sizeof (GbVec3));
      for (guint k = 0; k < line->points->len; k++)
        {
          GbVec3 p = gb_scene_place (floating->scene, g_array_index (line->points, GbVec3, k));

          if (gb_vec3_is_known (p))
            g_array_append_val (edge->points, p);
        }
      g_ptr_array_add (floating->edges, edge);
    }
}

/* Where the water cuts @mesh. */
static void
add_waterline (GbFloating *floating, const GbMesh *mesh)
{
  g_autofree guint *first = gb_weld_points (mesh);
  g_autofree double *heights = g_new (double, mesh->n_points + 1);
  g_autofree guint (*triangles)[3] = g_memdup2 (mesh->triangles, mesh->n_triangles * sizeof *triangles);
  const GbNet net = { mesh->points, heights, (const guint (*)[3])triangles, mesh->n_triangles };
  g_autoptr (GPtrArray) lines = NULL;

  for (guint i = 0; i < mesh->n_points; i++)
    heights[i] = mesh->points[i].z;
  for (guint t = 0; t < mesh->n_triangles; t++)
    for (guint k = 0; k < 3; k++)
      triangles[t][k] = first[triangles[t][k]];
  lines = gb_level_lines (&net, 0);
  for (guint i = 0; i < lines->len; i++)
    g_ptr_array_add (floating->waterline, g_array_ref (g_ptr_array_index (lines, i)));
}

static void
set_measured (GbMeasured *measured, GbVec3 from, GbVec3 to, double value, char *words, char *tell)
{
  g_free (measured->words);
  g_free (measured->tell);
  *measured = (GbMeasured){ from, to, value, words, tell };
}

static char *
freeboard_words (double freeboard, GbUnits units)
{
  g_autofree char *text = gb_length_format (fabs (freeboard), units);

  return freeboard < 0 ? g_strdup_printf (_ ("%s under"), text) : g_strdup (text);
}

/* From the water up to @p, a place in the axes of the water. */
static void
measure_freeboard (GbFloating *floating, guint which, GbVec3 p, const char *edge)
{
  char *words = freeboard_words (p.z, floating->scene->units);
  const char *where = gb_floating_where (floating, gb_scene_from (floating->scene, p));

  /* Translators: the name of an edge, a place along the boat, and how far it is above the water */
  set_measured (&floating->measured[which], (GbVec3){ p.x, p.y, 0 }, p, p.z, words,
                g_strdup_printf (_ ("%s, %s: freeboard %s"), edge, where, words));
}

/* Of both sides alike, no side is named. */
static gboolean
is_even (const GbFloating *floating)
{
  return fabs (floating->measured[GB_FREEBOARD_PORT].value - floating->measured[GB_FREEBOARD_STARBOARD].value)
         < 0.0005;
}

char *
gb_floating_where_least (const GbFloating *floating)
{
  GbVec3 p = gb_scene_from (floating->scene, floating->measured[GB_FREEBOARD_LEAST].to);

  if (floating->least_opening != NULL)
    /* Translators: where the freeboard is least: "86 mm of freeboard at “daggerboard slot”" */
    return g_strdup_printf (_ ("at “%s”"), floating->least_opening);
  if (is_even (floating))
    p.y = 0;
  return g_strdup (gb_floating_where (floating, p));
}

/* The lowest point of an edge so far. */
typedef struct
{
  GbVec3 at;
  const GbFloatingEdge *edge;
} Lowest;

static void
lower (Lowest *lowest, GbVec3 p, const GbFloatingEdge *edge)
{
  if (lowest->edge == NULL || p.z < lowest->at.z)
    *lowest = (Lowest){ p, edge };
}

/* The least of all, and of each side. */
static void
measure_freeboards (GbFloating *floating)
{
  Lowest lowest[GB_N_MEASURED] = { 0 };

  for (guint i = 0; i < floating->edges->len; i++)
    {
      const GbFloatingEdge *edge = g_ptr_array_index (floating->edges, i);

      for (guint k = 0; k < edge->points->len; k++)
        {
          GbVec3 p = g_array_index (edge->points, GbVec3, k);
          double y = gb_scene_from (floating->scene, p).y;

          lower (&lowest[GB_FREEBOARD_LEAST], p, edge);
          if (y != 0)
            lower (&lowest[y > 0 ? GB_FREEBOARD_PORT : GB_FREEBOARD_STARBOARD], p, edge);
        }
    }
  for (guint which = GB_FREEBOARD_LEAST; which < GB_N_MEASURED; which++)
    if (lowest[which].edge != NULL)
      measure_freeboard (floating, which, lowest[which].at, lowest[which].edge->name);
  if (lowest[GB_FREEBOARD_LEAST].edge != NULL)
    floating->least_opening = lowest[GB_FREEBOARD_LEAST].edge->opening;
}

/* An attitude with all of her well under water. */
static GbAttitude
sunk (const GbHullSet *hulls)
{
  double top = 0, keel = 0;

  for (guint i = 0; i < hulls->n_hulls; i++)
    if (isfinite (hulls->hulls[i].top) && isfinite (hulls->hulls[i].keel))
      {
        top = fmax (top, hulls->hulls[i].top);
        keel = fmin (keel, hulls->hulls[i].keel);
      }
  return gb_attitude (0, 0, top + 0.15 * (top - keel));
}

/* Of the hulls, in the boat's axes. */
static void
find_extent (GbFloating *floating)
{
  GbVec3 lo = { INFINITY, INFINITY, INFINITY }, hi = { -INFINITY, -INFINITY, -INFINITY };

  for (guint i = 0; i < floating->scene->hulls->len; i++)
    {
      const GbMesh *mesh = &g_array_index (floating->scene->hulls, GbSceneHull, i).mesh;

      for (guint k = 0; k < mesh->n_points; k++)
        {
          GbVec3 p = gb_scene_from (floating->scene, mesh->points[k]);

          lo = (GbVec3){ fmin (lo.x, p.x), fmin (lo.y, p.y), fmin (lo.z, p.z) };
          hi = (GbVec3){ fmax (hi.x, p.x), fmax (hi.y, p.y), fmax (hi.z, p.z) };
        }
    }
  floating->lo = lo;
  floating->hi = hi;
}

GbFloating *
gb_floating_new (const GbChartSource *source, const GbAttitude *attitude, guint views)
{
  GbFloating *floating = g_new0 (GbFloating, 1);
  GbAttitude under = sunk (&source->findings->hulls);

  floating->has_water = attitude != NULL;
  floating->scene = gb_scene_new_loads (source, attitude != NULL ? attitude : &under, views);
  floating->edges = g_ptr_array_new_with_free_func (edge_free);
  floating->waterline = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  floating->key = gb_key_new ();
  floating->keel = floating->keel_fore_x = floating->keel_aft_x = NAN;
  for (guint i = 0; i < GB_N_MEASURED; i++)
    floating->measured[i].value = NAN;
  find_extent (floating);
  add_edges (floating, source->boat, &source->findings->edges);
  for (guint i = 0; i < floating->scene->hulls->len; i++)
    if (!g_array_index (floating->scene->hulls, GbSceneHull, i).inside)
      add_waterline (floating, &g_array_index (floating->scene->hulls, GbSceneHull, i).mesh);
  if (attitude != NULL)
    measure_freeboards (floating);
  return floating;
}

void
gb_floating_free (GbFloating *floating)
{
  gb_scene_free (floating->scene);
  g_ptr_array_unref (floating->edges);
  g_ptr_array_unref (floating->waterline);
  for (guint i = 0; i < GB_N_MEASURED; i++)
    {
      g_free (floating->measured[i].words);
      g_free (floating->measured[i].tell);
    }
  g_array_unref (floating->key);
  g_free (floating);
}

/* From the line of the keel up along her own height to the water. */
static void
measure_draught (GbFloating *floating, guint which, double x, double keel, double draught, const char *format)
{
  GbUnits units = floating->scene->units;
  g_autofree char *text = NULL;
  char *words;

  if (!isfinite (x) || !isfinite (keel) || !isfinite (draught))
    return;
  text = gb_length_format (draught, units);
  words = g_strdup_printf (format, text);
  set_measured (&floating->measured[which], gb_scene_place (floating->scene, (GbVec3){ x, 0, keel }),
                gb_scene_place (floating->scene, (GbVec3){ x, 0, keel + draught }), draught, words,
                g_strdup_printf (_ ("Draught %s"), words));
}

static void
take_draughts (GbFloating *floating, const GbAfloat *afloat)
{
  double middle = (afloat->fore_x + afloat->aft_x) / 2;

  if (!(fabs (afloat->heel) < MOST_FOR_DRAUGHTS && fabs (afloat->trim) < MOST_FOR_DRAUGHTS))
    return;
  floating->keel = afloat->keel;
  floating->keel_fore_x = afloat->fore_x;
  floating->keel_aft_x = afloat->aft_x;
  measure_draught (floating, GB_DRAUGHT_AFT, afloat->aft_x, afloat->keel, afloat->draught_aft, _ ("aft %s"));
  measure_draught (floating, GB_DRAUGHT_MID, middle, afloat->keel, afloat->draught_mid, _ ("amidships %s"));
  measure_draught (floating, GB_DRAUGHT_FORE, afloat->fore_x, afloat->keel, afloat->draught_fore,
                   _ ("forward %s"));
}

/* NULL where it is not known, as the key wants it. */
static char *
length_words (double length, GbUnits units)
{
  return isfinite (length) ? gb_length_format (length, units) : NULL;
}

static char *
place_words (GbVec3 p, GbUnits units)
{
  return gb_vec3_is_known (p) ? gb_place_words (p, units) : NULL;
}

static char *
all_up_words (const GbAfloat *afloat, GbUnits units)
{
  g_autofree char *total = gb_quantity_format (afloat->total, GB_DIM_MASS, units);
  g_autofree char *limit = gb_quantity_format (afloat->limit, GB_DIM_MASS, units);

  if (!isfinite (afloat->total))
    return NULL;
  if (afloat->limit <= 0)
    return g_strdup_printf (_ ("%s: an edge is lower than the accepted freeboard"), total);
  return isfinite (afloat->limit) ? g_strdup_printf (_ ("%s of %s"), total, limit) : g_steal_pointer (&total);
}

static char *
draught_words (const GbFloating *floating)
{
  const GbMeasured *aft = &floating->measured[GB_DRAUGHT_AFT], *mid = &floating->measured[GB_DRAUGHT_MID],
                   *fore = &floating->measured[GB_DRAUGHT_FORE];

  if (aft->words == NULL || mid->words == NULL || fore->words == NULL)
    return NULL;
  return g_strdup_printf ("%s, %s, %s", aft->words, mid->words, fore->words);
}

static char *
least_words (const GbFloating *floating)
{
  const GbMeasured *least = &floating->measured[GB_FREEBOARD_LEAST];

  g_autofree char *where = NULL;

  if (!isfinite (least->value))
    return NULL;
  where = gb_floating_where_least (floating);
  return g_strdup_printf ("%s, %s", least->words, where);
}

void
gb_floating_take (GbFloating *floating, const GbAfloat *afloat)
{
  GbUnits units = floating->scene->units;

  gb_key_add (floating->key, NULL, _ ("All up"), all_up_words (afloat, units));
  if (floating->has_water)
    {
      take_draughts (floating, afloat);
      floating->scene->loaded = gb_scene_place (floating->scene, afloat->gravity);
      floating->scene->buoyancy = gb_scene_place (floating->scene, afloat->buoyancy);
      gb_key_add (floating->key, NULL, _ ("Lies"), gb_lies_words (afloat));
    }
  gb_key_add (floating->key, NULL, _ ("Draught"), draught_words (floating));
  gb_key_add (floating->key, NULL, _ ("Least freeboard"), least_words (floating));
  gb_key_add (floating->key, gb_mark_gravity, _ ("Centre of gravity, all up"),
              place_words (afloat->gravity, units));
  gb_key_add (floating->key, gb_mark_buoyancy, _ ("Centre of buoyancy"),
              place_words (afloat->buoyancy, units));
  gb_key_add (floating->key, NULL, _ ("GM, across"), length_words (afloat->gm, units));
}

const char *
gb_floating_where (const GbFloating *floating, GbVec3 p)
{
  return gb_where_along (floating->lo, floating->hi, p);
}
