/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fixture.h"

#include <math.h>
#include <string.h>

static gpointer
take (GbBoat *boat, GbRecordKind kind, gint64 id, gint64 owner, const char *name)
{
  GbRecord *record = gb_record_new (kind);
  const GbField *field = gb_field_find (kind, "name");

  record->id = id;
  record->owner = owner;
  record->position = id;
  if (field != NULL)
    gb_field_set_text (field, record, name);
  return gb_boat_take (boat, record);
}

static GbPart *
take_part (GbBoat *boat, gint64 id, gint64 owner, const char *name, GbTakeoff takeoff)
{
  GbPart *part = take (boat, GB_RECORD_PART, id, owner, name);

  part->takeoff = takeoff;
  part->x = 1;
  part->z = 0.2;
  return part;
}

static void
take_group (GbBoat *boat, gint64 id, gint64 owner, const char *name)
{
  GbPart *group = take (boat, GB_RECORD_PART, id, owner, name);

  group->kind = GB_KIND_GROUP;
  group->x = group->z = 0;
}

static void
take_shed (GbBoat *boat)
{
  GbMaterial *spruce = take (boat, GB_RECORD_MATERIAL, 1, 0, "spruce");
  GbMaterial *ply = take (boat, GB_RECORD_MATERIAL, 2, 0, "okoume ply");
  GbStock *sheet = take (boat, GB_RECORD_STOCK, 1, 0, "6 mm sheet");
  GbStock *tin = take (boat, GB_RECORD_STOCK, 2, 0, "epoxy tin");

  ((GbCategory *) take (boat, GB_RECORD_CATEGORY, 1, 0, "Timber"))->budget = 20000;
  take (boat, GB_RECORD_CATEGORY, 2, 0, "Epoxy");
  spruce->density = ply->density = 450;
  sheet->material = 2;
  sheet->length = 2.5;
  sheet->width = 1.22;
  sheet->thickness = 0.006;
  sheet->price = 5280;
  sheet->supplier = g_strdup ("Timber yard");
  sheet->category = 1;
  tin->form = GB_FORM_TIN;
  tin->volume = 0.005;
}

static void
take_parts (GbBoat *boat)
{
  GbPart *part;

  take_group (boat, HULL, 0, "Hull");
  part = take_part (boat, BOTTOM, HULL, "Bottom", GB_TAKEOFF_SHEET);
  part->stock = 1;
  part->area = 2.0;
  part = take_part (boat, SIDE, HULL, "Side panel", GB_TAKEOFF_SHEET);
  part->stock = 1;
  part->area = 0.4;
  part->pair = 1;
  part->y = 0.5;
  take_group (boat, FRAMES, HULL, "Frames");
  for (gint64 id = FRAME_1; id <= FRAME_2; id++)
    {
      part = take_part (boat, id, FRAMES, id == FRAME_1 ? "Frame 1" : "Frame 2", GB_TAKEOFF_LENGTH);
      part->material = 1;
      part->length = 1.1;
      part->width = 0.04;
      part->thickness = 0.02;
    }
  take_group (boat, RIG, 0, "Rig");
  part = take_part (boat, MAST, RIG, "Mast", GB_TAKEOFF_LUMP);
  part->mass = 3;
  part->price = 9000;
  part = take_part (boat, PAINT, 0, "Paint", GB_TAKEOFF_COATING);
  part->surface_of = HULL;
}

static void
take_log (GbBoat *boat)
{
  GbHull *hull = take (boat, GB_RECORD_HULL, 1, 0, "Box");
  GbWeighing *weighing = take (boat, GB_RECORD_WEIGHING, 1, 0, NULL);
  GbReading *reading = take (boat, GB_RECORD_READING, 1, 1, NULL);
  GbLoad *load;
  GbLine *line;

  hull->form = GB_HULL_BLOCK;
  hull->length = 2.4;
  hull->width = 1.2;
  hull->height = 0.4;
  weighing->part = BOTTOM;
  weighing->date = gb_today () - 30;
  reading->mass = 5.5;
  take (boat, GB_RECORD_CONDITION, 1, 0, "Two up");
  load = take (boat, GB_RECORD_LOAD, 1, 1, "Crew");
  load->mass = 75;
  load->x = 1.2;
  load->z = 0.4;
  ((GbPurchase *) take (boat, GB_RECORD_PURCHASE, 1, 0, NULL))->date = gb_today () - 40;
  line = take (boat, GB_RECORD_LINE, 1, 1, NULL);
  line->kind = GB_LINE_DELIVERY;
  line->price = 1800;
}

GbBoat *
fixture_boat (void)
{
  GbBoat *boat = gb_boat_new ();
  GbBuild *build = (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);

  build->name = g_strdup ("Plover");
  build->currency = g_strdup ("EUR");
  take_shed (boat);
  take_parts (boat);
  take_log (boat);
  gb_boat_settle (boat);
  return boat;
}

GbProject *
fixture_project (Scratch *scratch)
{
  g_autoptr (GbBoat) boat = fixture_boat ();
  g_autoptr (GError) error = NULL;
  GbProject *project = gb_project_create (scratch->path, boat, &error);

  g_assert_no_error (error);
  g_assert_nonnull (project);
  return project;
}

void
fixture_set_up (Fixture *c, gconstpointer data)
{
  c->scratch = scratch_new ();
  c->project = fixture_project (c->scratch);
  c->before = gb_boat_copy (gb_project_get_boat (c->project));
}

void
fixture_tear_down (Fixture *c, gconstpointer data)
{
  gb_boat_free (c->before);
  g_assert_finalize_object (c->project);
  scratch_free (c->scratch);
}

const GbPart *
fixture_part (GbProject *project, gint64 id)
{
  return gb_boat_part (gb_project_get_boat (project), id);
}

const GbField *
fixture_field (const char *name)
{
  return gb_field (GB_RECORD_PART, name);
}

char *
fixture_names (GbProject *project, gint64 owner)
{
  const GbBoat *boat = gb_project_get_boat (project);
  const GPtrArray *siblings = owner == 0 ? gb_boat_roots (boat, GB_RECORD_PART)
                                         : gb_record_children (&fixture_part (project, owner)->rec);
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < siblings->len; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? " " : "", ((const GbPart *) siblings->pdata[i])->name);
  return g_string_free (names, FALSE);
}

static gboolean
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* The figures that stand for all: each part's mass and place, each stock's need, the limit, the sums. */
static void
assert_same_findings (const GbFindings *a, const GbFindings *b)
{
  g_assert_cmpuint (a->rollup.n_parts, ==, b->rollup.n_parts);
  for (guint i = 0; i < a->rollup.n_parts; i++)
    {
      const GbMass *m = &a->rollup.parts[i], *n = &b->rollup.parts[i];

      g_assert_true (same (m->mass, n->mass) && same (m->x, n->x) && same (m->y, n->y) && same (m->z, n->z));
      g_assert_true (same (m->mass_sd, n->mass_sd) && m->trouble == n->trouble && m->as == n->as);
      g_assert_cmpint (a->costs.parts[i].to_buy, ==, b->costs.parts[i].to_buy);
    }
  g_assert_true (same (a->rollup.boat.mass, b->rollup.boat.mass)
                 && same (a->rollup.margin.total, b->rollup.margin.total));
  g_assert_cmpuint (a->hulls.n_hulls, ==, b->hulls.n_hulls);
  g_assert_true (same (a->flotation.limit.displacement, b->flotation.limit.displacement));
  g_assert_true (same (a->flotation.total, b->flotation.total)
                 && same (a->flotation.afloat.draught, b->flotation.afloat.draught));
  g_assert_cmpuint (a->edges.lines->len, ==, b->edges.lines->len);
  g_assert_cmpuint (a->n_inclined, ==, b->n_inclined);
  g_assert_cmpuint (a->n_tubbed, ==, b->n_tubbed);
  g_assert_cmpuint (a->n_afloat, ==, b->n_afloat);
  for (guint i = 0; i < a->n_afloat; i++)
    g_assert_true (a->afloat[i].condition == b->afloat[i].condition && same (a->afloat[i].total, b->afloat[i].total)
                   && same (a->afloat[i].limit, b->afloat[i].limit));
  g_assert_cmpuint (a->costs.n_stock, ==, b->costs.n_stock);
  for (guint i = 0; i < a->costs.n_stock; i++)
    g_assert_true (same (a->costs.stock[i].need, b->costs.stock[i].need)
                   && same (a->costs.stock[i].bought, b->costs.stock[i].bought));
  g_assert_cmpint (a->costs.spent, ==, b->costs.spent);
  g_assert_cmpint (a->costs.forecast, ==, b->costs.forecast);
}

void
fixture_assert_fresh (GbProject *project)
{
  g_autoptr (GbStore) store = gb_store_open (gb_project_get_path (project), TRUE, NULL);
  g_autoptr (GbBoat) fresh = scratch_load (store);
  g_autoptr (GbFindings) findings = gb_findings_new ();

  scratch_assert_equal (gb_project_get_boat (project), fresh);
  gb_findings_find (findings, fresh, GB_TOUCHED_ALL, gb_today ());
  assert_same_findings (gb_project_get_findings (project), findings);
}

void
fixture_assert_undo (GbProject *project, const char *words, const GbBoat *before)
{
  g_autoptr (GbBoat) after = gb_boat_copy (gb_project_get_boat (project));
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (gb_project_get_undo_words (project), ==, words);
  fixture_assert_fresh (project);
  g_assert_true (gb_project_undo (project, &error));
  g_assert_no_error (error);
  scratch_assert_equal (gb_project_get_boat (project), before);
  g_assert_cmpstr (gb_project_get_redo_words (project), ==, words);
  fixture_assert_fresh (project);
  g_assert_true (gb_project_redo (project, &error));
  g_assert_no_error (error);
  scratch_assert_equal (gb_project_get_boat (project), after);
}
