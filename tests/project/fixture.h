/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/project.h"
#include "scratch.h"

G_BEGIN_DECLS

/* A small build that most cases start from. Ids and names:
 *
 *   budget heads  1 Timber  2 Epoxy
 *   materials     1 spruce  2 okoume ply
 *   stock         1 6 mm sheet (okoume ply, 2.5 x 1.22 m, 52.80)  2 epoxy tin (no material)
 *   hull          1 Box
 *   parts         1 Hull: 2 Bottom (sheet of stock 1, 2.0 m2)
 *                         3 Side panel (pair, sheet of stock 1, 0.4 m2)
 *                         4 Frames: 5 Frame 1, 6 Frame 2 (lengths of spruce)
 *                 7 Rig:  8 Mast (lump of 3 kg, planned at 90.00)
 *                 9 Paint (coats the Hull; no coverage, so its mass is not known)
 *   weighing      1 of Bottom, reading 1    condition 1 with load 1    purchase 1 with line 1 (delivery) */
enum
{
  HULL = 1,
  BOTTOM = 2,
  SIDE = 3,
  FRAMES = 4,
  FRAME_1 = 5,
  FRAME_2 = 6,
  RIG = 7,
  MAST = 8,
  PAINT = 9,
};

GbBoat *fixture_boat (void);
/* That build in a file of @scratch, opened. */
GbProject *fixture_project (Scratch *scratch);

/* For g_test_add(): that project, and its boat as it was at the start. */
typedef struct
{
  Scratch *scratch;
  GbProject *project;
  GbBoat *before;
} Fixture;
void fixture_set_up (Fixture *c, gconstpointer data);
void fixture_tear_down (Fixture *c, gconstpointer data);

const GbPart *fixture_part (GbProject *project, gint64 id);
const GbField *fixture_field (const char *name); /* of a part */

/* The names of what lives in the part @owner (0: at the top), with spaces between. Free it. */
char *fixture_names (GbProject *project, gint64 owner);

/* The project's boat is what its file holds, and its findings are those of that boat found afresh. */
void fixture_assert_fresh (GbProject *project);

/* The next undo's words are these; it is undone; the project holds @before again; it is redone. */
void fixture_assert_undo (GbProject *project, const char *words, const GbBoat *before);

G_END_DECLS
