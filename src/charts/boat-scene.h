/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "chart-private.h"
#include "hull-lines.h"

G_BEGIN_DECLS

/* All that the drawing of the boat shows, in the boat's axes, apart from any paper. */

typedef struct
{
  GbMesh mesh;               /* a copy */
  GArray *lines[GB_N_VIEWS]; /* (element-type GbSegment) */
  GPtrArray *edges;          /* (element-type GArray of GbVec3) the open edge */
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
  gint64 id; /* of the part; 0 for a load */
  char *name;
  double mass; /* of one of them */
  gboolean picked;
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

GbScene *gb_scene_new (const GbChartSource *source);
void gb_scene_free (GbScene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbScene, gb_scene_free)

gboolean gb_scene_is_empty (const GbScene *scene);
gboolean gb_vec3_is_known (GbVec3 p);

/* Draws the three views to one scale, and the centres written out. Hits are numbered as the items. */
void gb_scene_draw (const GbScene *scene, GbCanvas *canvas, GbBox box);

G_END_DECLS
