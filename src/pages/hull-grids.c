/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hull-grids.h"

#include <glib/gi18n-lib.h>

#include "pages/grid-pane.h"

/* Hulls ------------------------------------------------------------------------------------------------------------- */

static void
look_hull_name (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbHullSet *hulls = &gb_project_get_findings (gb_grid_get_project (grid))->hulls;
  const char *trouble = record->index < hulls->n_hulls ? hulls->hulls[record->index].trouble : NULL;

  look->text = g_strdup (((const GbHull *) record)->name);
  look->note = g_strdup (trouble);
  look->flags = trouble != NULL ? GB_CELL_TROUBLE : 0;
}

static gint64
add_named (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  return gb_grid_add_record (grid, "name", text, NULL, spot, error);
}

/* The first is a box, which is enough to begin with. */
static gint64
add_hull (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_HULL);

  if (gb_boat_n (gb_project_get_boat (gb_grid_get_project (grid)), GB_RECORD_HULL) == 0)
    ((GbHull *) draft)->form = GB_HULL_BLOCK;
  return gb_grid_add_draft (grid, draft, "name", text, NULL, spot, error);
}

static const GbGridColumn hull_columns[] = {
  { .name = "name", .width = 20, .look = look_hull_name },
  { NULL },
};
static const char *const hull_shown[] = { "name", NULL };
const GbGridType gb_hull_grid_type = {
  .kind = GB_RECORD_HULL,
  .shown = hull_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add a hull"),
  .columns = hull_columns,
  .add = add_hull,
};

/* Stations and offsets ---------------------------------------------------------------------------------------------- */

static void
look_n_points (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  guint n = gb_record_children (record)->len;

  look->text = g_strdup_printf ("%u", n);
  if (n < 2)
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("A section needs two points at least, from the keel to the sheer."));
    }
}

static gint64
add_station (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  return gb_grid_add_record (grid, "x", text, NULL, spot, error);
}

static const GbGridColumn station_columns[] = {
  { .name = "x", .width = 8, .is_number = TRUE },
  { .name = "points", .title = N_ ("Points"), .width = 6, .is_number = TRUE, .look = look_n_points },
  { NULL },
};
static const char *const station_shown[] = { "x", "points", NULL };
const GbGridType gb_station_grid_type = {
  .kind = GB_RECORD_STATION,
  .shown = station_shown,
  .main_column = "x",
  .blank_text = N_ ("Type an x"),
  .columns = station_columns,
  .add = add_station,
};

/* A new point starts straight above the one before it, and at the keel where there is none. */
static gint64
add_offset (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  const GbRecord *station = gb_boat_get (boat, GB_RECORD_STATION, spot.owner);
  const GPtrArray *points = station != NULL ? gb_record_children (station) : NULL;
  const GbOffset *last = points != NULL && points->len > 0 ? points->pdata[points->len - 1] : NULL;
  GbRecord *draft = gb_record_new (GB_RECORD_OFFSET);

  ((GbOffset *) draft)->y = last != NULL ? last->y : 0;
  ((GbOffset *) draft)->z = last != NULL ? last->z : 0;
  return gb_grid_add_draft (grid, draft, "y", text, NULL, spot, error);
}

static const GbGridColumn offset_columns[] = {
  { .name = "y", .width = 8, .is_number = TRUE },
  { .name = "z", .width = 8, .is_number = TRUE },
  { NULL },
};
static const char *const offset_shown[] = { "y", "z", NULL };
const GbGridType gb_offset_grid_type = {
  .kind = GB_RECORD_OFFSET,
  .shown = offset_shown,
  .main_column = "y",
  .blank_text = N_ ("Type a y"),
  .columns = offset_columns,
  .add = add_offset,
};

/* Openings and their corners ---------------------------------------------------------------------------------------- */

/* The same hulls to choose from, where none is added. */
const GbGridType gb_hull_choice_grid_type = {
  .kind = GB_RECORD_HULL,
  .shown = hull_shown,
  .main_column = "name",
  .columns = hull_columns,
  .add = add_named,
};

static void
look_n_corners (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  guint n = gb_record_children (record)->len;

  look->text = g_strdup_printf ("%u", n);
  if (n == 0)
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("No corner yet: say where it is, beside this table."));
    }
}

static const GbGridColumn opening_columns[] = {
  { .name = "name", .width = 14 },
  { .name = "corners", .title = N_ ("Corners"), .width = 6, .is_number = TRUE, .look = look_n_corners },
  { NULL },
};
static const char *const opening_shown[] = { "name", "corners", "ring", "pair", NULL };
const GbGridType gb_opening_grid_type = {
  .kind = GB_RECORD_OPENING,
  .shown = opening_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add an opening"),
  .columns = opening_columns,
  .add = add_named,
};

/* A new corner starts at the breadth and the height of the one before it. */
static gint64
add_corner (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  const GbRecord *opening = gb_boat_get (boat, GB_RECORD_OPENING, spot.owner);
  const GPtrArray *corners = opening != NULL ? gb_record_children (opening) : NULL;
  const GbCorner *last = corners != NULL && corners->len > 0 ? corners->pdata[corners->len - 1] : NULL;
  GbRecord *draft = gb_record_new (GB_RECORD_CORNER);

  if (last != NULL)
    {
      ((GbCorner *) draft)->y = last->y;
      ((GbCorner *) draft)->z = last->z;
    }
  return gb_grid_add_draft (grid, draft, "x", text, NULL, spot, error);
}

static const GbGridColumn corner_columns[] = {
  { .name = "x", .width = 8, .is_number = TRUE },
  { .name = "y", .width = 8, .is_number = TRUE },
  { .name = "z", .width = 8, .is_number = TRUE },
  { NULL },
};
static const char *const corner_shown[] = { "x", "y", "z", NULL };
const GbGridType gb_corner_grid_type = {
  .kind = GB_RECORD_CORNER,
  .shown = corner_shown,
  .main_column = "x",
  .blank_text = N_ ("Type an x"),
  .columns = corner_columns,
  .add = add_corner,
};
