/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat-scene.h"

G_BEGIN_DECLS

/* What a scene is filled with; each puts it where gb_scene_place() says. */

void gb_scene_hull_clear (GbSceneHull *hull);
void gb_scene_item_clear (GbSceneItem *item);
void gb_scene_name_clear (GbSceneName *name);

void gb_scene_add_hulls (GbScene *scene, const GbBoat *boat, const GbHullSet *hulls, gboolean with_edges);
void gb_scene_add_parts (GbScene *scene, const GbChartSource *source, gboolean picked_only);
/* Those of the source's condition. */
void gb_scene_add_loads (GbScene *scene, const GbChartSource *source);
/* The top groups'. */
void gb_scene_add_names (GbScene *scene, const GbChartSource *source);

G_END_DECLS
