/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* The light craft's mass by top group, split by how each mass is known. */

#include "bars.h"
#include "boat/quantity.h"
#include "chart-private.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* What is surest stands first. */
static const GbAs order[GB_N_AS] = { GB_AS_WEIGHED, GB_AS_CALCULATED, GB_AS_ESTIMATED };
G_STATIC_ASSERT (GB_N_AS <= GB_MOST_PIECES);

typedef struct
{
  GbUnits units;
  GbPiece pieces[GB_N_AS];
  GArray *rows;     /* of GbBarRow */
  GArray *ids;      /* of gint64, by row; 0 for the whole */
  GPtrArray *tells; /* sentences by row */
} Groups;

typedef struct
{
  const GbPart *part;
  const GbMass *mass;
} Group;

static void
groups_free (gpointer data)
{
  Groups *groups = data;

  g_array_unref (groups->rows);
  g_array_unref (groups->ids);
  g_ptr_array_unref (groups->tells);
  g_free (groups);
}

static Groups *
groups_new (GbUnits units)
{
  Groups *groups = g_new0 (Groups, 1);

  groups->units = units;
  groups->pieces[0] = (GbPiece){ _ ("Weighed"), GB_ROLE_WEIGHED };
  groups->pieces[1] = (GbPiece){ _ ("Calculated"), GB_ROLE_CALCULATED };
  groups->pieces[2] = (GbPiece){ _ ("Estimated"), GB_ROLE_ESTIMATED };
  groups->rows = g_array_new (FALSE, FALSE, sizeof (GbBarRow));
  g_array_set_clear_func (groups->rows, (GDestroyNotify) gb_bar_row_clear);
  groups->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  groups->tells = g_ptr_array_new_with_free_func (g_free);
  return groups;
}

static char *
say_mass (double value, gconstpointer data)
{
  return gb_quantity_format (value, GB_DIM_MASS, *(const GbUnits *) data);
}

static char *
tell_row (const GbBarRow *row, const GbMass *mass, const GbPiece *pieces, GbUnits units)
{
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_append_printf (text, "%s: %s.", row->name, row->words);
  for (guint i = 0; i < GB_N_AS; i++)
    if (row->values[i] > 0)
      {
        g_autofree char *part = gb_quantity_format (row->values[i], GB_DIM_MASS, units);

        gb_say (text, "%s %s.", pieces[i].label, part);
      }
  gb_say_no_mass (text, mass->n_no_mass);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The first rows get a name and words; there may be very many more. */
static void
add_row (Groups *groups, char *name, gint64 id, const GbMass *mass)
{
  GbBarRow row = { .sd = mass->mass_sd, .mark = NAN };

  for (guint i = 0; i < GB_N_AS; i++)
    row.values[i] = mass->by_as[order[i]];
  if (name != NULL)
    {
      row.name = name;
      row.words = gb_quantity_format_with_sd (mass->mass, mass->mass_sd, GB_DIM_MASS, groups->units);
      g_ptr_array_add (groups->tells, tell_row (&row, mass, groups->pieces, groups->units));
    }
  g_array_append_val (groups->rows, row);
  g_array_append_val (groups->ids, id);
}

/* Heaviest first, unknown last, else as in the tree. */
static int
compare_groups (gconstpointer a, gconstpointer b)
{
  const Group *first = a, *second = b;
  double m1 = isfinite (first->mass->mass) ? first->mass->mass : -1;
  double m2 = isfinite (second->mass->mass) ? second->mass->mass : -1;

  if (m1 != m2)
    return m1 > m2 ? -1 : 1;
  return first->part->rec.index < second->part->rec.index ? -1 : 1;
}

static GArray *
sort_groups (const GbBoat *boat, const GbRollup *rollup)
{
  const GPtrArray *roots = gb_boat_roots (boat, GB_RECORD_PART);
  GArray *sorted = g_array_new (FALSE, FALSE, sizeof (Group));

  for (guint i = 0; i < roots->len; i++)
    {
      const GbPart *part = g_ptr_array_index (roots, i);
      Group group = { part, gb_rollup_part (rollup, part) };

      g_array_append_val (sorted, group);
    }
  g_array_sort (sorted, compare_groups);
  return sorted;
}

static void
say_title (GString *title, const GArray *sorted, const GbMass *boat)
{
  const Group *heaviest = &g_array_index (sorted, Group, 0);
  g_autofree char *name = gb_record_dup_title (&heaviest->part->rec);
  g_autofree char *share = gb_percent_words (heaviest->mass->mass / boat->mass);
  g_autofree char *estimated = gb_percent_words (boat->by_as[GB_AS_ESTIMATED] / boat->mass);
  gboolean any = boat->by_as[GB_AS_ESTIMATED] > 0;

  if (sorted->len == 1 && any)
    g_string_append_printf (title, _ ("%s of the weight is still estimated"), estimated);
  else if (sorted->len == 1)
    g_string_append (title, _ ("Nothing of the weight is estimated any more"));
  else if (any)
    /* Translators: a group, its share of the weight, the estimated share: "Hull makes up 73 % of the weight;
     * 41 % of the whole is still estimated" */
    g_string_append_printf (title, _ ("%s makes up %s of the weight; %s of the whole is still estimated"),
                            name, share, estimated);
  else
    g_string_append_printf (title, _ ("%s makes up %s of the weight; nothing is estimated any more"), name,
                            share);
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbMass *boat = &source->findings->rollup.boat;
  g_autoptr (GArray) sorted = sort_groups (source->boat, &source->findings->rollup);
  Groups *groups;

  if (sorted->len == 0 || !(boat->mass > 0))
    {
      g_string_append (words->title, _ ("The weight of each group stands here, once a part has a mass"));
      gb_say_no_mass (words->subtitle, boat->n_no_mass);
      return NULL;
    }
  say_title (words->title, sorted, boat);
  gb_say (words->subtitle, "%s",
          _ ("The light craft without margin, by group and by how each mass is known."));
  gb_say_no_mass (words->subtitle, boat->n_no_mass);

  groups = groups_new ((GbUnits) gb_boat_build (source->boat)->units);
  add_row (groups, g_strdup (_ ("Light craft")), 0, boat);
  for (guint i = 0; i < sorted->len; i++)
    {
      const Group *group = &g_array_index (sorted, Group, i);
      char *name = groups->rows->len < GB_MOST_BAR_ROWS ? gb_record_dup_title (&group->part->rec) : NULL;

      add_row (groups, name, group->part->rec.id, group->mass);
    }
  for (guint i = 0; i < groups->tells->len; i++)
    gb_say (words->description, "%s", (char *) g_ptr_array_index (groups->tells, i));
  return groups;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Groups *groups = data;
  const GbBars bars = {
    .rows = groups->rows,
    .pieces = groups->pieces,
    .n_pieces = GB_N_AS,
    .factor = gb_quantity_factor (GB_DIM_MASS, groups->units),
    .unit = gb_quantity_unit (GB_DIM_MASS, groups->units),
    .say = say_mass,
    .data = &groups->units,
  };

  gb_bars_draw (&bars, canvas, box);
}

static char *
tell (gconstpointer data, guint what)
{
  return g_strdup (g_ptr_array_index (((const Groups *) data)->tells, what));
}

static gint64
part (gconstpointer data, guint what)
{
  return g_array_index (((const Groups *) data)->ids, gint64, what);
}

const GbChartMethod gb_chart_groups = {
  .name = "groups",
  .label = N_ ("Weight by group"),
  .make = make,
  .draw = draw,
  .tell = tell,
  .part = part,
  .free = groups_free,
};
