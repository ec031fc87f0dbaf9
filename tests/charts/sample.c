/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "sample.h"

#include <math.h>

/* Records ------------------------------------------------------------ */

static GbRecord *
take (GbBoat *boat, GbRecordKind kind, gint64 id, gint64 owner)
{
  GbRecord *record = gb_record_new (kind);

  record->id = id;
  record->owner = owner;
  record->position = (double)id;
  return gb_boat_take (boat, record);
}

static GbPart *
add_part (
    GbBoat *boat, gint64 id, gint64 owner, GbPartKind kind, const char *name, double x, double y, double z)
{
  GbPart *part = (GbPart *)take (boat, GB_RECORD_PART, id, owner);

  part->kind = kind;
  part->name = g_strdup (name);
  part->x = x;
  part->y = y;
  part->z = z;
  return part;
}

/* Half sections of a pram, from keel to sheer. */
static const struct
{
  double x;
  double offsets[3][2];
} stations[] = {
  { 0.0, { { 0, 0.14 }, { 0.34, 0.16 }, { 0.46, 0.44 } } },
  { 0.6, { { 0, 0.02 }, { 0.43, 0.05 }, { 0.57, 0.42 } } },
  { 1.2, { { 0, 0.0 }, { 0.45, 0.04 }, { 0.60, 0.43 } } },
  { 1.8, { { 0, 0.07 }, { 0.36, 0.11 }, { 0.54, 0.48 } } },
  { 2.4, { { 0, 0.27 }, { 0.20, 0.29 }, { 0.36, 0.56 } } },
};

static void
add_hull (GbBoat *boat)
{
  GbHull *hull = (GbHull *)take (boat, GB_RECORD_HULL, 1, 0);
  gint64 offset_id = 1;

  hull->name = g_strdup ("Hull");
  hull->form = GB_HULL_STATIONS;
  hull->x = hull->y = hull->z = 0;
  for (guint i = 0; i < G_N_ELEMENTS (stations); i++)
    {
      GbStation *station = (GbStation *)take (boat, GB_RECORD_STATION, i + 1, 1);

      station->x = stations[i].x;
      for (guint k = 0; k < 3; k++)
        {
          GbOffset *offset = (GbOffset *)take (boat, GB_RECORD_OFFSET, offset_id++, station->rec.id);

          offset->y = stations[i].offsets[k][0];
          offset->z = stations[i].offsets[k][1];
        }
    }
}

static void
add_load (GbBoat *boat, gint64 id, const char *name, double mass, double x, double y, double z)
{
  GbLoad *load = (GbLoad *)take (boat, GB_RECORD_LOAD, id, 1);

  load->name = g_strdup (name);
  load->kind = mass > 30 ? GB_LOAD_PERSON : GB_LOAD_GEAR;
  load->quantity = 1;
  load->mass = mass;
  load->x = x;
  load->y = y;
  load->z = z;
}

static void
add_category (GbBoat *boat, gint64 id, const char *name)
{
  ((GbCategory *)take (boat, GB_RECORD_CATEGORY, id, 0))->name = g_strdup (name);
}

static void
fill_pram (GbBoat *boat)
{
  add_part (boat, 1, 0, GB_KIND_GROUP, "Hull", 0, 0, 0);
  add_part (boat, 2, 1, GB_KIND_PART, "Bottom", 1.18, 0, 0.06);
  add_part (boat, 3, 1, GB_KIND_PART, "Side panel", 1.20, 0.53, 0.27)->pair = 1;
  add_part (boat, 4, 1, GB_KIND_PART, "Aft transom", 0.02, 0, 0.30);
  add_part (boat, 5, 1, GB_KIND_PART, "Bow transom", 2.38, 0, 0.42);
  add_part (boat, 6, 1, GB_KIND_PART, "Gunwale", 1.20, 0.57, 0.44)->pair = 1;
  add_part (boat, 7, 1, GB_KIND_PART, "Middle thwart", 1.10, 0, 0.32);
  add_part (boat, 8, 0, GB_KIND_GROUP, "Rig", 0, 0, 0);
  add_part (boat, 9, 8, GB_KIND_PART, "Mast", 1.75, 0, 1.15);
  add_part (boat, 10, 8, GB_KIND_PART, "Sail", 1.30, 0, 1.25);
  add_part (boat, 11, 0, GB_KIND_GROUP, "Foils", 0, 0, 0);
  add_part (boat, 12, 11, GB_KIND_PART, "Rudder", -0.12, 0, 0.15);
  add_part (boat, 13, 11, GB_KIND_PART, "Daggerboard", 1.35, 0, 0.05);
  add_part (boat, 14, 0, GB_KIND_GROUP, "Paint and glue", 0, 0, 0);
  add_part (boat, 15, 14, GB_KIND_PART, "Primer", NAN, NAN, NAN);
  add_hull (boat);
  ((GbCondition *)take (boat, GB_RECORD_CONDITION, 1, 0))->name = g_strdup ("Two up");
  add_load (boat, 1, "Helm", 78, 0.75, 0, 0.52);
  add_load (boat, 2, "Crew", 64, 1.45, 0.1, 0.50);
  add_load (boat, 3, "Picnic", 6, 0.3, 0, 0.2);
  add_category (boat, 1, "Timber");
  add_category (boat, 2, "Glue and paint");
  add_category (boat, 3, "Rig and sail");
  add_category (boat, 4, "Fittings");
}

static void
fill_large (GbBoat *boat)
{
  for (gint64 i = 1; i <= 80; i++)
    {
      g_autofree char *name = g_strdup_printf (
          "%d: A group with a very long name that nobody would want to read to its end", (int)i);

      add_part (boat, i, 0, GB_KIND_GROUP, name, 0, 0, 0);
      add_part (boat, 100 + i, i, GB_KIND_PART, name, i * 0.1, 0, 0.5);
      add_category (boat, i, name);
    }
  add_part (boat, 300, 1, GB_KIND_PART, "Mistyped", 5000, 0, 0);
  add_hull (boat);
}

/* Findings ------------------------------------------------------------ */

/* Masses of the parts of fill_pram() by id; groups are summed. */
static const struct
{
  gint64 id;
  double mass;
  GbAs as;
} masses[] = {
  { 2, 6.2, GB_AS_WEIGHED },    { 3, 5.1, GB_AS_WEIGHED },    { 4, 1.6, GB_AS_WEIGHED },
  { 5, 0.9, GB_AS_CALCULATED }, { 6, 1.8, GB_AS_CALCULATED }, { 7, 1.9, GB_AS_CALCULATED },
  { 9, 3.1, GB_AS_CALCULATED }, { 10, 1.4, GB_AS_ESTIMATED }, { 12, 1.7, GB_AS_CALCULATED },
  { 13, 2.0, GB_AS_ESTIMATED }, { 15, 1.2, GB_AS_ESTIMATED },
};

static void
set_mass (GbMass *mass, double kg, GbAs as, double x, double y, double z)
{
  mass->mass = kg;
  mass->mass_sd = kg * (as == GB_AS_ESTIMATED ? 0.2 : as == GB_AS_CALCULATED ? 0.05 : 0);
  mass->x = x;
  mass->y = y;
  mass->z = z;
  mass->by_as[as] = kg;
  mass->as = as;
  mass->n_parts = 1;
}

/* Adds @part to what it is in. */
static void
add_to (GbMass *sum, const GbMass *part)
{
  gboolean placed = isfinite (part->x), first = !(sum->mass > 0);
  double total = sum->mass + part->mass;

  if (placed)
    {
      sum->x = first ? part->x : (sum->x * sum->mass + part->x * part->mass) / total;
      sum->y = first ? part->y : (sum->y * sum->mass + part->y * part->mass) / total;
      sum->z = first ? part->z : (sum->z * sum->mass + part->z * part->mass) / total;
    }
  sum->mass = total;
  sum->mass_sd = sqrt (sum->mass_sd * sum->mass_sd + part->mass_sd * part->mass_sd);
  for (guint i = 0; i < GB_N_AS; i++)
    sum->by_as[i] += part->by_as[i];
  sum->n_parts++;
}

static void
find_pram_masses (const GbBoat *boat, GbRollup *rollup)
{
  for (guint i = 0; i < G_N_ELEMENTS (masses); i++)
    {
      const GbPart *part = gb_boat_part (boat, masses[i].id), *group = gb_boat_part (boat, part->rec.owner);
      GbMass *mass = &rollup->parts[part->rec.index];

      set_mass (mass, masses[i].mass, masses[i].as, part->x, part->pair ? 0 : part->y, part->z);
      add_to (&rollup->parts[group->rec.index], mass);
      add_to (&rollup->boat, mass);
    }
}

static void
find_large_masses (const GbBoat *boat, GbRollup *rollup)
{
  for (gint64 i = 1; i <= 80; i++)
    {
      const GbPart *part = gb_boat_part (boat, 100 + i), *group = gb_boat_part (boat, i);
      GbMass *mass = &rollup->parts[part->rec.index];

      set_mass (mass, 12345.6 / i, (GbAs)(i % GB_N_AS), part->x, part->y, part->z);
      add_to (&rollup->parts[group->rec.index], mass);
      add_to (&rollup->boat, mass);
    }
  set_mass (&rollup->parts[gb_boat_part (boat, 300)->rec.index], 1, GB_AS_WEIGHED, 5000, 0, 0);
}

static GbHydrostatics
afloat_at (double draught)
{
  GbHydrostatics h = {
    .z = draught, .draught = draught, .displacement = 1300 * pow (draught, 1.25), .freeboard = 0.42 - draught
  };

  h.volume = h.displacement / 1000;
  h.waterplane = 1.9;
  h.per_cm = 1300 * 1.25 * pow (draught, 0.25) / 100;
  h.lcb = 1.16;
  h.tcb = 0;
  h.vcb = draught * 0.6;
  h.lcf = 1.15;
  return h;
}

static void
find_flotation (GbFlotation *flotation, const GbRollup *rollup, double loads)
{
  flotation->n_hulls = 1;
  flotation->water_density = 1000;
  flotation->keel = 0;
  flotation->lowest_edge = 0.42;
  flotation->limit = afloat_at (0.24);
  flotation->n_curve = 43;
  flotation->curve = g_new0 (GbHydrostatics, 43);
  for (guint i = 0; i < 43; i++)
    flotation->curve[i] = afloat_at (i * 0.01);
  flotation->brim = flotation->curve[42].displacement;
  flotation->load_mass = loads;
  flotation->load_sd = loads * 0.05;
  flotation->light = rollup->boat.mass;
  flotation->margin = rollup->margin.total;
  flotation->total = flotation->light + flotation->margin + loads;
  flotation->total_sd = sqrt (pow (rollup->boat.mass_sd, 2) + pow (flotation->load_sd, 2));
  flotation->total_x = 1.08;
  flotation->total_y = 0.04;
  flotation->total_z = 0.47;
  flotation->left = flotation->limit.displacement - flotation->total;
  flotation->chance = 0.5 * erfc (flotation->left / flotation->total_sd / sqrt (2));
  flotation->sinks = flotation->total > flotation->brim;
  flotation->afloat = afloat_at (pow (flotation->total / 1300, 1 / 1.25));
  if (flotation->sinks)
    flotation->afloat = afloat_at (NAN);
}

static gint64
known_sum (gint64 a, gint64 b)
{
  return a == GB_MONEY_UNKNOWN ? b : a + b;
}

static void
set_head (GbCosts *costs, guint i, gint64 category, gint64 budget, gint64 spent, gint64 to_buy)
{
  costs->heads[i] = (GbHead){ category, budget, spent, to_buy, spent + to_buy };
  costs->spent += spent;
  costs->to_buy += to_buy;
  if (budget != GB_MONEY_UNKNOWN)
    costs->budget = known_sum (costs->budget, budget);
}

static gint64
julian (int year, int month, int day)
{
  GDate date;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  return g_date_get_julian (&date);
}

static void
find_costs (GbCosts *costs, gint64 more)
{
  costs->n_heads = 5;
  costs->heads = g_new0 (GbHead, 5);
  costs->budget = GB_MONEY_UNKNOWN;
  set_head (costs, 0, 1, 22000, 18450 + more, 2890);
  set_head (costs, 1, 2, 9000, 6120, 1750);
  set_head (costs, 2, 3, 12000, 2400, 8300);
  set_head (costs, 3, 4, 4000, 1980, 640);
  set_head (costs, 4, 0, GB_MONEY_UNKNOWN, 1250, 0);
  costs->allowance = 1500;
  costs->forecast = costs->spent + costs->to_buy + costs->allowance;
  costs->n_course = 6;
  costs->course = g_new0 (GbSpendPoint, 6);
  costs->course[0] = (GbSpendPoint){ 0, 1250 };
  costs->course[1] = (GbSpendPoint){ julian (2025, 2, 8), 9800 };
  costs->course[2] = (GbSpendPoint){ julian (2025, 3, 1), 15500 };
  costs->course[3] = (GbSpendPoint){ julian (2025, 3, 22), 21000 };
  costs->course[4] = (GbSpendPoint){ julian (2025, 5, 10), 28600 };
  costs->course[5] = (GbSpendPoint){ julian (2025, 6, 21), costs->spent };
}

static void
find_large_costs (GbCosts *costs)
{
  costs->n_heads = 81;
  costs->heads = g_new0 (GbHead, 81);
  costs->budget = GB_MONEY_UNKNOWN;
  for (guint i = 0; i < 81; i++)
    set_head (costs, i, (i + 1) % 81, i % 3 == 0 ? GB_MONEY_UNKNOWN : 123456789, 100000000 + i, 20000000);
  costs->forecast = costs->spent + costs->to_buy;
  costs->n_course = 400;
  costs->course = g_new0 (GbSpendPoint, 400);
  for (guint i = 0; i < 400; i++)
    costs->course[i] = (GbSpendPoint){ julian (1999, 1, 1) + i * 20, costs->spent / 400 * (i + 1) };
}

static void
find_history (GbHistory *history, double change)
{
  const GbHistoryPoint points[] = {
    { 0, 27.9, 2.3, 0 },
    { julian (2025, 4, 5), 27.9 + change * 0.5, 2.0, 0.21 },
    { julian (2025, 4, 27), 27.9 + change * 0.4, 1.5, 0.38 },
    { julian (2025, 6, 2), 27.9 + change, 1.1, 0.51 },
  };

  history->n_points = G_N_ELEMENTS (points);
  history->points = g_memdup2 (points, sizeof points);
}

/* Every real number of a struct of them. */
static void
forget (double *numbers, gsize size)
{
  for (gsize i = 0; i < size / sizeof (double); i++)
    numbers[i] = NAN;
}

static void
forget_all (Sample *sample)
{
  GbRollup *rollup = &sample->findings.rollup;
  GbFlotation *flotation = &sample->findings.flotation;
  GbCosts *costs = &sample->findings.costs;

  for (guint i = 0; i <= rollup->n_parts; i++)
    {
      GbMass *mass = i < rollup->n_parts ? &rollup->parts[i] : &rollup->boat;

      mass->mass = mass->mass_sd = mass->x = mass->y = mass->z = NAN;
      mass->n_no_mass = 1;
    }
  rollup->margin.total = NAN;
  forget ((double *)flotation->curve, flotation->n_curve * sizeof *flotation->curve);
  forget ((double *)&flotation->limit, sizeof flotation->limit);
  forget ((double *)&flotation->afloat, sizeof flotation->afloat);
  flotation->total = flotation->total_sd = flotation->left = flotation->chance = NAN;
  flotation->total_x = flotation->total_y = flotation->total_z = flotation->light = flotation->margin = NAN;
  for (guint i = 0; i < costs->n_heads; i++)
    costs->heads[i].budget = costs->heads[i].forecast = costs->heads[i].to_buy = costs->heads[i].spent
        = GB_MONEY_UNKNOWN;
  for (guint i = 0; i < costs->n_course; i++)
    costs->course[i].spent = GB_MONEY_UNKNOWN;
  costs->budget = costs->spent = costs->to_buy = costs->allowance = costs->forecast = GB_MONEY_UNKNOWN;
  for (guint i = 0; i < sample->history.n_points; i++)
    sample->history.points[i].mass = sample->history.points[i].mass_sd
        = sample->history.points[i].weighed_share = NAN;
}

/* The whole ------------------------------------------------------------ */

static void
find_all (Sample *sample, SampleKind kind)
{
  GbFindings *findings = &sample->findings;

  findings->rollup.n_parts = gb_boat_n (sample->boat, GB_RECORD_PART);
  findings->rollup.parts = g_new0 (GbMass, findings->rollup.n_parts);
  for (guint i = 0; i < findings->rollup.n_parts; i++)
    findings->rollup.parts[i].x = findings->rollup.parts[i].y = findings->rollup.parts[i].z = NAN;
  gb_hull_set_find (&findings->hulls, sample->boat);
  if (kind == SAMPLE_LARGE)
    {
      find_large_masses (sample->boat, &findings->rollup);
      find_large_costs (&findings->costs);
      find_flotation (&findings->flotation, &findings->rollup, 1e6);
      return;
    }
  find_pram_masses (sample->boat, &findings->rollup);
  findings->rollup.margin.total = 1.9;
  find_flotation (&findings->flotation, &findings->rollup, kind == SAMPLE_OVER ? 248 : 148);
  find_costs (&findings->costs, kind == SAMPLE_OVER ? 9900 : 0);
  find_history (&sample->history, kind == SAMPLE_OVER ? 3.4 : -0.8);
  if (kind == SAMPLE_UNKNOWN)
    forget_all (sample);
}

Sample *
sample_new (SampleKind kind)
{
  Sample *sample = g_new0 (Sample, 1);
  GbBuild *build;

  sample->boat = gb_boat_new ();
  sample->moved_to = (GbVec3){ NAN, NAN, NAN };
  build = (GbBuild *)gb_boat_build (sample->boat);
  g_free (build->currency);
  build->currency = g_strdup ("EUR");
  build->units = kind == SAMPLE_OVER ? GB_UNITS_FEET : GB_UNITS_METRIC;
  sample->findings.costs.budget = GB_MONEY_UNKNOWN;
  if (kind == SAMPLE_EMPTY)
    return sample;
  build->target_mass = kind == SAMPLE_UNKNOWN ? NAN : kind == SAMPLE_OVER ? 26 : 32;
  build->freeboard = kind == SAMPLE_UNKNOWN ? NAN : 0.18;
  if (kind == SAMPLE_LARGE)
    fill_large (sample->boat);
  else
    fill_pram (sample->boat);
  gb_boat_settle (sample->boat);
  find_all (sample, kind);
  sample_set_afloat (sample, kind);
  return sample;
}

void
sample_free (Sample *sample)
{
  sample_clear_afloat (sample);
  gb_hull_set_clear (&sample->findings.hulls);
  g_free (sample->findings.rollup.parts);
  g_free (sample->findings.flotation.curve);
  g_free (sample->findings.costs.heads);
  g_free (sample->findings.costs.course);
  g_free (sample->history.points);
  gb_boat_free (sample->boat);
  g_free (sample);
}

GbChart *
sample_chart (const Sample *sample, GbChartKind kind)
{
  const GbChartSource source = { .boat = sample->boat,
                                 .findings = &sample->findings,
                                 .history = sample->history.n_points > 0 ? &sample->history : NULL,
                                 .moved = sample->moved,
                                 .moved_to = sample->moved_to,
                                 .righting = sample->righting,
                                 .crew_map = sample->crew_map,
                                 .swamped = sample->swamped };

  return gb_chart_new (kind, &source);
}

const char *
sample_name (SampleKind kind)
{
  static const char *const names[] = { "pram", "over", "empty", "unknown", "large" };

  return names[kind];
}

GbChart *
sample_chart_alone (SampleKind kind, GbChartKind chart)
{
  g_autoptr (Sample) sample = sample_new (kind);

  return sample_chart (sample, chart);
}

void
sample_for_each_chart (SampleCheck check)
{
  for (guint s = 0; s < N_SAMPLES; s++)
    {
      g_autoptr (Sample) sample = sample_new ((SampleKind)s);

      for (guint c = 0; c < GB_N_CHARTS; c++)
        {
          g_autoptr (GbChart) chart = sample_chart (sample, (GbChartKind)c);

          check (chart, (GbChartKind)c, (SampleKind)s);
        }
    }
}
