/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat"

/* What a condition's answers follow from, taken out of the boat once. */

#include "afloat-private.h"

#include "loads.h"
#include "mesh-private.h"

#include <glib/gi18n-lib.h>

static const GbVec3 nowhere = { NAN, NAN, NAN };

static gboolean
is_place (GbVec3 p)
{
  return isfinite (p.x) && isfinite (p.y) && isfinite (p.z);
}

static void
clear_load (gpointer load)
{
  g_free (((GbCaseLoad *)load)->name);
}

static GArray *
new_loads (void)
{
  GArray *loads = g_array_new (FALSE, FALSE, sizeof (GbCaseLoad));

  g_array_set_clear_func (loads, clear_load);
  return loads;
}

/* Hulls ------------------------------------------------------------------------------------------------- */

static void
extend_box (GbCase *self, const GbHullShape *shape)
{
  double least, most;

  gb_body_extent (shape->body, (GbVec3){ 1, 0, 0 }, &least, &most);
  self->least.x = fmin (self->least.x, least);
  self->most.x = fmax (self->most.x, most);
  gb_body_extent (shape->body, (GbVec3){ 0, 1, 0 }, &least, &most);
  if (shape->mirrored != NULL)
    {
      most = fmax (most, -least);
      least = -most;
    }
  self->least.y = fmin (self->least.y, least);
  self->most.y = fmax (self->most.y, most);
  self->least.z = fmin (self->least.z, shape->keel);
  self->most.z = fmax (self->most.z, shape->top);
}

static gboolean
has_edge (const GbEdgeSet *edges, gint64 hull)
{
  for (guint i = 0; i < edges->lines->len; i++)
    if (((const GbEdgeLine *)edges->lines->pdata[i])->hull == hull)
      return TRUE;
  return FALSE;
}

/* Also adds up what carries whatever becomes of the edges: hulls that have none. */
static void
take_hulls (GbCase *self, const GbHullSet *hulls)
{
  double tight = 0;

  self->least = self->most = nowhere;
  for (guint i = 0; i < hulls->n_hulls; i++)
    {
      const GbHullShape *shape = &hulls->hulls[i];
      gboolean is_pair = shape->mirrored != NULL;

      if (shape->body == NULL || shape->inside)
        continue;
      gb_floater_add_hull (self->floater, shape->body, FALSE);
      if (is_pair)
        gb_floater_add_hull (self->floater, shape->body, TRUE);
      if (!has_edge (&self->edges, shape->id))
        tight += (is_pair ? 2 : 1) * gb_body_volume (shape->body);
      extend_box (self, shape);
    }
  self->carries = tight * self->floater->density;
}

static double
lowest_edge (const GbEdgeSet *edges)
{
  return gb_edge_set_least (edges, gb_attitude (0, 0, 0)).freeboard;
}

/* Where there is no edge all of her carries. */
static void
take_limit (GbCase *self, const GbFlotation *flotation)
{
  double brim = isnan (lowest_edge (&self->edges)) ? 0 : flotation->brim;
  GbHydrostatics limit = flotation->limit;

  self->carries = isnan (self->least.z) ? NAN : fmax (self->carries, brim);
  self->limit = limit.displacement;
  self->limit_at = (GbVec3){ limit.lcb, limit.tcb, limit.vcb };
}

/* Loads ------------------------------------------------------------------------------------------------- */

/* A pull against which the water holds: at half the draught, under the centre of the hulls' buoyancy (common
 * practice, no source). */
static void
add_pull (GbCase *self, GbCaseLoad *load, const GbLoad *record, const GbHullSet *hulls)
{
  double level = record->quantity * record->mass * cos (record->dip);
  GbPull pull = { level, load->at, { 0, 0, 0 }, { cos (record->bearing), sin (record->bearing), 0 } };
  GbHydrostatics afloat;

  if (!(fabs (level) > 1e-9 * record->mass) || !isfinite (level) || !isfinite (record->bearing))
    return;
  afloat = gb_hydrostatics_for (hulls, self->floater->density, self->total);
  pull.against = (GbVec3){ afloat.lcb, afloat.tcb, self->least.z + afloat.draught / 2 };
  if (!is_place (pull.against))
    pull.against = vec3_scale (vec3_add (self->least, self->most), 0.5);
  load->pull = (int)self->floater->pulls->len;
  g_array_append_val (self->floater->pulls, pull);
}

static double
liquid_density (const GbCase *self, const GbLoad *record)
{
  return isnan (record->liquid_density) ? self->floater->density : record->liquid_density;
}

static double
tank_holds (const GbCase *self, const GbLoad *record)
{
  return gb_load_has_tank (record) ? record->tank_length * record->tank_width * record->tank_height
                                         * liquid_density (self, record)
                                   : NAN;
}

static void
add_tank (GbCase *self, GbCaseLoad *load, const GbLoad *record)
{
  GbFloater *floater = self->floater;
  GbVec3 size = { record->tank_length, record->tank_width, record->tank_height };
  guint n = floater->tanks->len;

  gb_floater_add_tank (floater, load->at, size, liquid_density (self, record), record->mass,
                       record->quantity);
  /* A full one is but a mass. */
  if (floater->tanks->len > n)
    load->tank = (int)n;
}

/* Its weight goes into the floater. */
static void
place_load (GbCase *self, GbCaseLoad *load, const GbLoad *record, const GbHullSet *hulls)
{
  if (isnan (load->weight))
    return;
  if (gb_load_has_tank (record) && is_place (load->centre))
    add_tank (self, load, record);
  else
    gb_floater_add_mass (self->floater, load->weight, load->at);
  if (record->kind == GB_LOAD_PULL)
    add_pull (self, load, record, hulls);
}

static void
weigh_load (GbCase *self, const GbLoad *record)
{
  GbCaseLoad load = { .id = record->rec.id,
                      .kind = record->kind,
                      .name = gb_record_dup_title (&record->rec),
                      .each = record->mass,
                      .weight = gb_load_weight (record),
                      .holds = tank_holds (self, record),
                      .centre = gb_load_centre (record),
                      .tank = -1,
                      .pull = -1 };

  if (!is_place (load.centre))
    load.centre = nowhere;
  load.at = is_place (load.centre) ? load.centre : self->light_at;
  if (!isnan (load.weight))
    {
      self->load_mass += load.weight;
      self->load_sd = hypot (self->load_sd, load.weight * gb_load_spread (record));
    }
  g_array_append_val (self->loads, load);
}

/* All are weighed before the first is placed, because what the water holds a pull against depends on the sum.
 */
static void
take_loads (GbCase *self, const GPtrArray *records, const GbMass *light, const GbHullSet *hulls)
{
  for (guint i = 0; i < records->len; i++)
    weigh_load (self, records->pdata[i]);
  self->total = self->light + self->margin + self->load_mass;
  self->total_sd = hypot (light->mass_sd, self->load_sd);
  gb_floater_add_mass (self->floater, self->light + self->margin, self->light_at);
  for (guint i = 0; i < records->len; i++)
    place_load (self, &g_array_index (self->loads, GbCaseLoad, i), records->pdata[i], hulls);
}

static const char *
trouble_of (const GbCase *self)
{
  if (self->floater->hulls->len == 0)
    return _ ("There is no hull yet that could float.");
  if (!(self->floater->density > 0 && isfinite (self->floater->density)))
    return _ ("The water that she floats in has no density yet.");
  if (!isfinite (self->light + self->margin))
    return _ ("Nothing of the boat has a mass yet.");
  if (!is_place (self->light_at))
    return _ ("The boat's own centre of gravity is not known yet: no part with a mass has a place.");
  if (!(self->total > 0))
    return _ ("The pulls lift more than she weighs.");
  return NULL;
}

/* The case ---------------------------------------------------------------------------------------------- */

GbCase *
gb_case_new (const GbBoat *boat,
             const GbHullSet *hulls,
             const GbEdgeSet *edges,
             const GbRollup *rollup,
             const GbFlotation *flotation,
             gint64 condition)
{
  const GbCondition *record = (const GbCondition *)gb_boat_get (boat, GB_RECORD_CONDITION, condition);
  const GbMass *light = &rollup->boat;
  g_autoptr (GPtrArray) nobody = g_ptr_array_new ();
  GbCase *self;

  if (condition != 0 && record == NULL)
    return NULL;
  self = g_new0 (GbCase, 1);
  self->condition = condition;
  self->units = (GbUnits)gb_boat_build (boat)->units;
  self->floater = gb_floater_new (flotation->water_density);
  self->loads = new_loads ();
  self->heeling_moment = record != NULL ? record->heeling_moment : NAN;
  self->freeboard = gb_boat_build (boat)->freeboard;
  self->light = flotation->light;
  self->margin = flotation->margin;
  self->light_at = (GbVec3){ light->x, light->y, light->z };
  gb_edge_set_copy (&self->edges, edges);
  take_hulls (self, hulls);
  take_limit (self, flotation);
  take_loads (self, record != NULL ? gb_record_children (&record->rec) : nobody, light, hulls);
  self->trouble = trouble_of (self);
  return self;
}

GbCase *
gb_case_copy (const GbCase *self)
{
  GbCase *copy = g_memdup2 (self, sizeof *self);

  copy->floater = gb_floater_copy (self->floater);
  gb_edge_set_copy (&copy->edges, &self->edges);
  copy->loads = new_loads ();
  for (guint i = 0; i < self->loads->len; i++)
    {
      GbCaseLoad load = g_array_index (self->loads, GbCaseLoad, i);

      load.name = g_strdup (load.name);
      g_array_append_val (copy->loads, load);
    }
  return copy;
}

void
gb_case_free (GbCase *self)
{
  if (self == NULL)
    return;
  gb_floater_free (self->floater);
  gb_edge_set_clear (&self->edges);
  g_array_unref (self->loads);
  g_free (self);
}

GbCaseLoad *
gb_case_find_load (const GbCase *self, gint64 id)
{
  for (guint i = 0; i < self->loads->len; i++)
    if (g_array_index (self->loads, GbCaseLoad, i).id == id)
      return &g_array_index (self->loads, GbCaseLoad, i);
  return NULL;
}

gboolean
gb_case_move (GbCase *self, gint64 id, GbVec3 to)
{
  GbCaseLoad *load = gb_case_find_load (self, id);
  GbFloater *floater = self->floater;

  if (load == NULL || !is_place (to))
    return FALSE;
  if (load->tank >= 0)
    g_array_index (floater->tanks, GbTank, load->tank).centre = to;
  else if (!isnan (load->weight))
    floater->moment = vec3_add (floater->moment, vec3_scale (vec3_sub (to, load->at), load->weight));
  if (load->pull >= 0)
    g_array_index (floater->pulls, GbPull, load->pull).at = to;
  load->centre = load->at = to;
  return TRUE;
}

gint64
gb_case_condition (const GbCase *self)
{
  return self->condition;
}

const GbFloater *
gb_case_floater (const GbCase *self)
{
  return self->floater;
}

const GbEdgeSet *
gb_case_edges (const GbCase *self)
{
  return &self->edges;
}

double
gb_case_heeling_moment (const GbCase *self)
{
  return self->heeling_moment;
}

double
gb_case_freeboard (const GbCase *self)
{
  return self->freeboard;
}

GbVec3
gb_case_load_centre (const GbCase *self, gint64 id)
{
  const GbCaseLoad *load = gb_case_find_load (self, id);

  return load != NULL ? load->centre : nowhere;
}
