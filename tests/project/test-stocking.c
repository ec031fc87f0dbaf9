/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A part that is given stock takes from there what it said itself before. */

#include "fixture.h"

#include "boat/part-size.h"

#include <math.h>

static void
enter (GbProject *project, gint64 id, const char *field, const char *text)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (gb_project_enter (project, GB_RECORD_PART, &id, 1, fixture_field (field), text, &error));
  g_assert_no_error (error);
}

/* A frame of spruce, 30 mm thick, that is to be cut from the 6 mm sheet of okoume ply after all. */
static void
test_stock_says_material_and_thickness (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbProject) project = fixture_project (scratch);
  g_autoptr (GbBoat) before = NULL;
  const GbPart *frame = fixture_part (project, FRAME_1);
  GbPartSize size;

  enter (project, FRAME_1, "takeoff", "sheet");
  enter (project, FRAME_1, "thickness", "30 mm");
  g_assert_cmpint (frame->material, !=, 0);
  before = gb_boat_copy (gb_project_get_boat (project));

  enter (project, FRAME_1, "stock", gb_boat_stock (before, 1)->name);
  g_assert_cmpint (frame->stock, ==, 1);
  g_assert_cmpint (frame->material, ==, 0);
  g_assert_true (isnan (frame->thickness));
  size = gb_part_size (gb_project_get_boat (project), frame);
  g_assert_cmpint (size.material, ==, gb_boat_stock (before, 1)->material);
  g_assert_cmpfloat (size.thickness, ==, gb_boat_stock (before, 1)->thickness);
  g_assert_cmpfloat (frame->length, ==, gb_boat_part (before, FRAME_1)->length);

  /* One undo brings all of it back. */
  fixture_assert_undo (project, "stock of Frame 1", before);
}

/* What is said after that stands: a sheet may be planed thinner than it is sold. */
static void
test_what_is_said_later_stands (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autoptr (GbProject) project = fixture_project (scratch);

  enter (project, BOTTOM, "thickness", "5 mm");
  enter (project, BOTTOM, "area", "1.9 m2");
  g_assert_cmpfloat_with_epsilon (fixture_part (project, BOTTOM)->thickness, 0.005, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stocking/stock-says-material-and-thickness", test_stock_says_material_and_thickness);
  g_test_add_func ("/stocking/what-is-said-later-stands", test_what_is_said_later_stands);
  return g_test_run ();
}
