/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "older.h"

#include <sqlite3.h>

/* Written out, and not by today's code: this is what lies on people's disks. */
static const char rows[]
  = "PRAGMA application_id = 1197633377; PRAGMA user_version = 1;" /* 0x47626f61 */
    "INSERT INTO build (id, position, name, currency, units, water, freeboard)"
    " VALUES (1, 0, 'Old boat', 'EUR', 'metric', 'salt', 0.2);"
    "INSERT INTO hull (id, position, name, form, pair, edge, length, width, height, typed)"
    " VALUES (3, 1, 'Hull', 'stations', 0, 'open', NULL, NULL, NULL, NULL),"
    " (4, 2, 'Float', 'pipe', 1, 'closed', 3.5, NULL, NULL, 'length=3.5 m');"
    "INSERT INTO station (id, owner, position, x) VALUES (1, 3, 1, 0), (2, 3, 2, 4);"
    "INSERT INTO offset (id, owner, position, y, z) VALUES (1, 1, 1, 0, 0), (2, 1, 2, 0.5, 0.4);"
    "INSERT INTO part (id, position, name, kind, pair, quantity, state, takeoff, section, extent, coating, basis, hull)"
    " VALUES (8, 1, 'Skin', 'part', 0, 1, 'planned', 'skin', 'rectangle', 'all', 'paint', 'by-takeoff', 4);"
    "INSERT INTO condition (id, position, name, notes) VALUES (2, 1, 'Usual load', 'two aboard');"
    "INSERT INTO load (id, owner, position, name, kind, quantity, mass, spread, x, y, z)"
    " VALUES (5, 2, 1, 'Rower', 'person', 1, 75, 0.1, 1.9, 0, 0.45), (6, 2, 2, 'Jugs', 'water', 2, 10, NULL, 1, 0, NULL),"
    " (90, 2, 3, 'Gone', 'other', 1, 1, NULL, NULL, 0, NULL);"
    "DELETE FROM load WHERE id = 90;"
    "INSERT INTO history VALUES (1, 1700000000, 'deletion of Gone', 'load', 90, NULL, x'5401');"
    "UPDATE history_mark SET done = 1;";

void
older_make (const char *path)
{
  g_autofree char *file = g_test_build_filename (G_TEST_DIST, "store", "schema-1.sql", NULL);
  g_autofree char *schema = NULL;
  g_autofree char *sql = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (file, &schema, NULL, &error);
  g_assert_no_error (error);
  /* Nothing can be lost yet, and many cases want a fresh one. */
  sql = g_strconcat ("PRAGMA synchronous = OFF; PRAGMA journal_mode = MEMORY; BEGIN;", schema, rows, "COMMIT", NULL);
  scratch_sql (path, sql);
}

/* A record with a number, in an owner, and called so; of the rest nothing is known. */
static gpointer
add (GbBoat *boat, GbRecordKind kind, gint64 id, gint64 owner, double position, const char *name)
{
  const GbRecordType *type = gb_record_type (kind);
  GbRecord *record = gb_record_new (kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      g_auto (GbValue) unknown = gb_field_unknown (&type->fields[i]);

      if (type->fields[i].dim != GB_DIM_CHOICE && type->fields[i].dim != GB_DIM_FLAG)
        gb_field_set (&type->fields[i], record, &unknown);
    }
  record->id = id;
  record->owner = owner;
  record->position = position;
  if (name != NULL)
    gb_field_set_text (gb_field (kind, "name"), record, name);
  return gb_boat_take (boat, record);
}

static void
add_hulls (GbBoat *boat)
{
  GbHull *hull = add (boat, GB_RECORD_HULL, 3, 0, 1, "Hull");
  GbHull *pipe = add (boat, GB_RECORD_HULL, 4, 0, 2, "Float");
  GbStation *aft = add (boat, GB_RECORD_STATION, 1, 3, 1, NULL);
  GbStation *fore = add (boat, GB_RECORD_STATION, 2, 3, 2, NULL);
  GbOffset *keel = add (boat, GB_RECORD_OFFSET, 1, 1, 1, NULL);
  GbOffset *sheer = add (boat, GB_RECORD_OFFSET, 2, 1, 2, NULL);

  hull->form = GB_HULL_STATIONS;
  hull->edge = GB_EDGE_OPEN;
  pipe->form = GB_HULL_PIPE;
  pipe->pair = 1;
  pipe->edge = GB_EDGE_CLOSED;
  pipe->length = 3.5;
  pipe->rec.typed = g_strdup ("length=3.5 m");
  aft->x = 0;
  fore->x = 4;
  keel->y = keel->z = 0;
  sheer->y = 0.5;
  sheer->z = 0.4;
}

static void
add_loads (GbBoat *boat)
{
  GbCondition *usual = add (boat, GB_RECORD_CONDITION, 2, 0, 1, "Usual load");
  GbLoad *rower = add (boat, GB_RECORD_LOAD, 5, 2, 1, "Rower");
  GbLoad *jugs = add (boat, GB_RECORD_LOAD, 6, 2, 2, "Jugs");

  usual->notes = g_strdup ("two aboard");
  rower->kind = GB_LOAD_PERSON;
  rower->quantity = 1;
  rower->mass = 75;
  rower->spread = 0.1;
  rower->x = 1.9;
  rower->y = 0;
  rower->z = 0.45;
  /* What nobody could say then: that z is the person's own centre, and that nothing pulls. */
  rower->posture = GB_POSTURE_CENTRE;
  rower->dip = jugs->dip = G_PI / 2;
  rower->bearing = jugs->bearing = 0;
  jugs->kind = GB_LOAD_WATER;
  jugs->quantity = 2;
  jugs->mass = 10;
  jugs->x = 1;
  jugs->y = 0;
}

GbBoat *
older_boat (void)
{
  GbBoat *boat = gb_boat_new ();
  GbBuild *build = add (boat, GB_RECORD_BUILD, 1, 0, 0, "Old boat");
  GbPart *skin = add (boat, GB_RECORD_PART, 8, 0, 1, "Skin");

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), &build->rec, "EUR");
  build->units = GB_UNITS_METRIC;
  build->water = GB_WATER_SALT;
  build->freeboard = 0.2;
  skin->takeoff = GB_TAKEOFF_SKIN;
  skin->hull = 4;
  skin->quantity = 1;
  add_hulls (boat);
  add_loads (boat);
  gb_boat_settle (boat);
  return boat;
}
