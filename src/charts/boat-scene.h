/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "chart-private.h"
#include "water-axes.h"

G_BEGIN_DECLS

/* All that the drawing of the boat shows, apart from any paper: in the boat's axes, or in those of the water
 * that she lies in. */

#define GB_ALL_VIEWS (1u << GB_VIEW_SIDE | 1u << GB_VIEW_PLAN | 1u << GB_VIEW_END)

typedef struct
{
  GbMesh mesh;               /* a copy */
  GArray *lines[GB_N_VIEWS]; /* (element-type GbSegment) */
  GPtrArray *edges;          /* (element-type GArray of GbVec3) the open edge */
  gboolean inside;           /* in another: carries nothing while that is dry */
  GPtrArray *sections;       /* (element-type GArray of GbVec3) as entered, both halves */
} GbSceneHull;

typedef enum
{
  GB_SCENE_PART,
  GB_SCENE_LOAD,
} GbSceneKind;

/* A part or a load. */
typedef struct
{
  GbSceneKind kind;
  gint64 id; /* of the part or the load */
  char *name;
  double mass; /* of one of them */
  gboolean picked;
  gboolean person;
} GbSceneItem;

/* Where one is, or one of several. */
typedef struct
{
  GbVec3 at;
  guint item;
} GbSceneDot;

typedef struct
{
  char *text;
  GbVec3 at;
} GbSceneName;

typedef struct
{
  GbUnits units;
  guint views;     /* bits: those that are drawn */
  gboolean afloat; /* all places are in the axes of the water */
  GbWaterAxes axes;
  GArray *hulls;                  /* of GbSceneHull */
  GArray *items;                  /* of GbSceneItem: parts, those picked and then the heaviest first; loads */
  GArray *dots;                   /* of GbSceneDot, in the order of the items */
  GArray *names;                  /* of GbSceneName: the top groups */
  double heaviest;                /* part */
  GbVec3 light, loaded, buoyancy; /* centres; NAN: unknown */
  double water, limit;            /* z of the water; NAN: unknown */
  GbVec3 lo, hi;                  /* what is shown */
  guint n_unplaced, n_outside, n_left_out; /* parts without a place, too far off, too light to be shown */
} GbScene;

/* All of the boat, upright. */
GbScene *gb_scene_new (const GbChartSource *source);
/* Hulls, the loads of the source's condition, and of the parts those that are picked; as she lies in the
 * water, or upright where @attitude is NULL. Edges and centres are left to the caller. */
GbScene *gb_scene_new_loads (const GbChartSource *source, const GbAttitude *attitude, guint views);
/* Shows what @base shows, so that a drawing that follows the pointer keeps its scale; where that would cut
 * @scene, more of it, in steps. */
void gb_scene_hold (GbScene *scene, const GbScene *base);
void gb_scene_free (GbScene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbScene, gb_scene_free)

/* "Mast: 3.1 kg"; free it. */
char *gb_scene_tell_item (const GbSceneItem *item, GbUnits units);

gboolean gb_scene_is_empty (const GbScene *scene);
gboolean gb_vec3_is_known (GbVec3 p);

/* From the boat's axes into those of the scene, and back. */
GbVec3 gb_scene_place (const GbScene *scene, GbVec3 p);
GbVec3 gb_scene_from (const GbScene *scene, GbVec3 p);

/* Draws the three views to one scale, and the centres written out. Hits are numbered as the items. */
void gb_scene_draw (const GbScene *scene, GbCanvas *canvas, GbBox box);

G_END_DECLS
