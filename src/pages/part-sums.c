/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-sums"

#include "part-sums.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/money.h"
#include "boat/quantity.h"

static const GbRollup *
rollup_of (GbProject *project)
{
  return &gb_project_get_findings (project)->rollup;
}

static const GbPartCost *
cost_of (GbProject *project, const GbPart *part)
{
  const GbCosts *costs = &gb_project_get_findings (project)->costs;

  return part->rec.index < costs->n_parts ? &costs->parts[part->rec.index] : NULL;
}

/* The mass of what is known; how many have none comes after it. */
static char *
mass_words (double mass, guint n_unknown, GbUnits units)
{
  g_autofree char *known = gb_quantity_format (mass, GB_DIM_MASS, units);

  if (n_unknown == 0)
    return g_steal_pointer (&known);
  /* Translators: %1$s is a mass, %2$u counts parts. */
  return g_strdup_printf (
    ngettext ("%1$s, and %2$u without a mass", "%1$s, and %2$u without a mass", n_unknown), known, n_unknown);
}

char *
gb_part_sums_selected (GbProject *project, const gint64 *ids, guint n_ids)
{
  const GbBuild *build = gb_project_get_build (project);
  g_autofree char *mass = NULL;
  g_autofree char *cost = NULL;
  double sum = 0;
  gint64 planned = 0;
  guint n_unknown = 0;

  for (guint i = 0; i < n_ids; i++)
    {
      const GbPart *part = gb_boat_part (gb_project_get_boat (project), ids[i]);
      const GbMass *found = gb_rollup_part (rollup_of (project), part);
      const GbPartCost *money = cost_of (project, part);

      sum += isnan (found->mass) ? 0 : found->mass;
      n_unknown += found->n_no_mass;
      planned = gb_money_add (planned, money != NULL ? money->planned : GB_MONEY_UNKNOWN);
    }
  mass = mass_words (sum, n_unknown, build->units);
  if (planned == GB_MONEY_UNKNOWN)
    return g_strdup_printf (ngettext ("%u row selected: %s", "%u rows selected: %s", n_ids), n_ids, mass);
  cost = gb_money_format_full (planned, build->currency);
  /* Translators: a number of rows, their mass, their planned cost. */
  return g_strdup_printf (
    ngettext ("%u row selected: %s, %s planned", "%u rows selected: %s, %s planned", n_ids), n_ids, mass,
    cost);
}

char *
gb_part_sums_all (GbProject *project)
{
  guint n = rollup_of (project)->boat.n_parts;

  return g_strdup_printf (ngettext ("%u part", "%u parts", n), n);
}

char *
gb_part_sums_cost (GbProject *project, const GbPart *part)
{
  const char *currency = gb_project_get_build (project)->currency;
  const GbPartCost *cost = cost_of (project, part);
  g_autofree char *planned = NULL;
  g_autofree char *bought = NULL;

  if (cost == NULL || cost->planned == GB_MONEY_UNKNOWN)
    return g_strdup (_ ("No price yet"));
  planned = gb_money_format_full (cost->planned, currency);
  if (cost->bought == GB_MONEY_UNKNOWN || cost->bought == 0)
    return g_strdup_printf (part->kind == GB_KIND_PART && part->state == GB_STATE_PLANNED
                              ? _ ("%s planned, not bought")
                              : _ ("%s planned"),
                            planned);
  bought = gb_money_format_full (cost->bought, currency);
  return g_strdup_printf (_ ("%s planned, %s bought"), planned, bought);
}

static gboolean
is_unknown (GbProject *project, const GbPart *part, gboolean mass)
{
  const GbMass *found = gb_rollup_part (rollup_of (project), part);

  return part->kind == GB_KIND_PART && (mass ? found->n_no_mass : found->n_no_place) > 0;
}

gint64
gb_part_sums_next_unknown (GbProject *project, gint64 after)
{
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (project), GB_RECORD_PART);
  const GbPart *from = gb_boat_part (gb_project_get_boat (project), after);
  guint start = from != NULL ? from->rec.index + 1 : 0;
  gboolean mass = rollup_of (project)->boat.n_no_mass > 0;

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[(start + i) % parts->len];

      if (is_unknown (project, part, mass))
        return part->rec.id;
    }
  return 0;
}

char *
gb_part_sums_unknown (GbProject *project)
{
  const GbMass *boat = &rollup_of (project)->boat;

  if (boat->n_no_mass > 0)
    return g_strdup_printf (ngettext ("%u without a mass", "%u without a mass", boat->n_no_mass),
                            boat->n_no_mass);
  if (boat->n_no_place > 0)
    return g_strdup_printf (ngettext ("%u without a place", "%u without a place", boat->n_no_place),
                            boat->n_no_place);
  return NULL;
}
