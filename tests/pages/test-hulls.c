/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The hulls page by keys: a hull with its stations and points, and what is wrong with it until it is whole. */

#include "pages/hulls-page.h"
#include "support.h"

#include <math.h>

static const GbHullShape *
shape (Support *support)
{
  return &gb_project_get_findings (support->project)->hulls.hulls[0];
}

static guint
count (Support *support, GbRecordKind kind)
{
  return gb_boat_n (gb_project_get_boat (support->project), kind);
}

/* Types @text into the blank row of the table of @kind; one more record is there then. */
static void
enter (Support *support, GbRecordKind kind, const char *text)
{
  guint before = count (support, kind);

  gb_grid_start_blank (support_grid (support->page, kind));
  support_until (support_is_editing (support));
  support_type (support, text);
  support_keys (support, "Return");
  support_until (count (support, kind) == before + 1);
}

static void
make_stations (Support *support, const GbHull *hull)
{
  g_autoptr (GError) error = NULL;
  GbEdit *edit = gb_edit_new ("form", GB_RECORD_HULL, hull->rec.id, "form");
  GbRecord *record = gb_record_copy (&hull->rec);

  ((GbHull *) record)->form = GB_HULL_STATIONS;
  gb_edit_put (edit, record);
  gb_project_apply (support->project, edit, &error);
  g_assert_no_error (error);
  support_settle ();
}

/* A box of 2 m x 1 m x 0.4 m by two stations of three points: 999 kg/m3 or so times its volume at the brim. */
static void
test_hull_by_stations (void)
{
  static const char *const stations[] = { "0", "2000" };
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (Support) support = support_new_for (boat);
  const GbFlotation *flotation;
  const GbHull *hull;

  support_show (support, g_object_new (GB_TYPE_HULLS_PAGE, NULL), 1100, 700);
  gtk_widget_activate_action (support->page, "hulls.add", NULL);
  support_until (support_is_editing (support));
  support_type (support, "Box");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_HULL) == 1);
  g_assert_nonnull (shape (support)->trouble);
  /* A box to begin with, which asks for its three sides. */
  hull = (const GbHull *) gb_boat_all (gb_project_get_boat (support->project), GB_RECORD_HULL)->pdata[0];
  g_assert_cmpint (hull->form, ==, GB_HULL_BLOCK);
  support_picture (support, "hulls-new");
  make_stations (support, hull);

  for (guint i = 0; i < G_N_ELEMENTS (stations); i++)
    {
      const GbStation *station;

      enter (support, GB_RECORD_STATION, stations[i]);
      station = gb_boat_all (gb_project_get_boat (support->project), GB_RECORD_STATION)->pdata[i];
      gb_grid_go_to (support_grid (support->page, GB_RECORD_STATION), GB_RECORD_STATION, station->rec.id, "x", TRUE);
      support_until (gb_grid_get_owner (support_grid (support->page, GB_RECORD_OFFSET)) == station->rec.id);
      /* Keel, chine and sheer; a new point starts at the height of the one before. */
      enter (support, GB_RECORD_OFFSET, "0");
      enter (support, GB_RECORD_OFFSET, "500");
      enter (support, GB_RECORD_OFFSET, "500");
      gb_grid_go_to (support_grid (support->page, GB_RECORD_OFFSET), GB_RECORD_OFFSET,
                     ((const GbRecord *) gb_record_children (&station->rec)->pdata[2])->id, "z", TRUE);
      support_type (support, "400");
      support_keys (support, "Return");
      support_until (((const GbOffset *) gb_record_children (&station->rec)->pdata[2])->z == 0.4);
    }

  g_assert_null (shape (support)->trouble);
  flotation = &gb_project_get_findings (support->project)->flotation;
  /* L B (D - freeboard) x density: exact for a box. */
  g_assert_cmpfloat_with_epsilon (flotation->limit.displacement,
                                  2 * 1 * (0.4 - gb_project_get_build (support->project)->freeboard) * flotation->water_density, 1e-6);
}

/* A hatch in a hull: its corners by keys; the edge that must stay dry is there, and undo leads back to the row. */
static void
test_opening (void)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  GbHull *hull = (GbHull *) gb_record_new (GB_RECORD_HULL);
  g_autoptr (Support) support = NULL;
  g_autoptr (GError) error = NULL;
  const GbEdgeSet *edges;
  GtkStack *views;

  hull->rec.id = 1;
  hull->rec.position = 1;
  hull->name = g_strdup ("Box");
  hull->form = GB_HULL_BLOCK;
  hull->length = 2;
  hull->width = 1;
  hull->height = 0.4;
  gb_boat_take (boat, &hull->rec);
  gb_boat_settle (boat);
  support = support_new_for (boat);
  support_show (support, g_object_new (GB_TYPE_HULLS_PAGE, NULL), 1100, 700);
  views = GTK_STACK (gtk_widget_get_template_child (support->page, GB_TYPE_HULLS_PAGE, "views"));
  gtk_stack_set_visible_child_name (views, "openings");
  support_settle ();

  enter (support, GB_RECORD_OPENING, "Slot");
  gb_grid_start_blank (support_grid (support->page, GB_RECORD_CORNER));
  support_until (support_is_editing (support));
  support_type (support, "500");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_CORNER) == 1);
  /* On to the height, past the breadth, which is nothing to begin with. */
  gb_grid_go_to (support_grid (support->page, GB_RECORD_CORNER), GB_RECORD_CORNER, 1, "z", TRUE);
  support_type (support, "200");
  support_keys (support, "Return");
  edges = &gb_project_get_findings (support->project)->edges;
  support_until (edges->lines->len == 2);
  g_assert_cmpstr (((const GbEdgeLine *) edges->lines->pdata[1])->name, ==, "Box, Slot");

  gtk_stack_set_visible_child_name (views, "hulls");
  gb_project_undo (support->project, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (views), ==, "openings");
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  g_test_add_func ("/hulls/hull-by-stations", test_hull_by_stations);
  g_test_add_func ("/hulls/opening", test_opening);
  return g_test_run ();
}
