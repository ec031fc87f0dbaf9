/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-report"

#include "report-private.h"

#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NAMED_AT_MOST 12 /* parts that are named one by one */

const char *
gb_basis_letters (const GbMass *mass)
{
  static const char *const letters[] = { "–", "E", "C", "E C", "A", "E A", "C A", "E C A" };
  guint which = 0;

  for (guint as = 0; as < GB_N_AS; as++)
    if (mass->by_as[as] > 0)
      which |= 1u << as;
  return letters[which];
}

const char *
gb_basis_note (void)
{
  return _ (
      "Basis: E is estimated, C is calculated from sizes and densities, A is the actual mass, off a scale.");
}

typedef gboolean (*Lacks) (const GbMass *mass);

static gboolean
lacks_mass (const GbMass *mass)
{
  return mass->n_no_mass > 0;
}

static gboolean
lacks_place (const GbMass *mass)
{
  return mass->n_no_place > 0;
}

/* "Mast, Tiller, Rudder and 3 more". */
static char *
name_parts (const GbBoat *boat, const GbRollup *rollup, Lacks lacks, guint n)
{
  const GPtrArray *parts = gb_boat_all (boat, GB_RECORD_PART);
  g_autoptr (GString) names = g_string_new (NULL);
  guint named = 0;

  for (guint i = 0; i < parts->len && named < NAMED_AT_MOST; i++)
    {
      const GbPart *part = parts->pdata[i];

      if (part->kind == GB_KIND_PART && lacks (gb_rollup_part (rollup, part)))
        g_string_append_printf (names, "%s%s", named++ > 0 ? ", " : "", part->name);
    }
  if (n > named)
    /* Translators: after a list of names. */
    g_string_append_printf (names, ngettext (" and %u more", " and %u more", n - named), n - named);
  return g_string_free (g_steal_pointer (&names), FALSE);
}

void
gb_say_unknown_parts (GbDocument *document, const GbBoat *boat, const GbRollup *rollup)
{
  guint n_mass = rollup->boat.n_no_mass, n_place = rollup->boat.n_no_place;

  if (n_mass > 0)
    {
      g_autofree char *names = name_parts (boat, rollup, lacks_mass, n_mass);

      /* Translators: a number, and the names of the parts. */
      gb_document_say (document,
                       g_strdup_printf (ngettext ("%u part has no mass yet and is in no sum: %s.",
                                                  "%u parts have no mass yet and are in no sum: %s.", n_mass),
                                        n_mass, names));
    }
  if (n_place > 0)
    {
      g_autofree char *names = name_parts (boat, rollup, lacks_place, n_place);

      gb_document_say (
          document, g_strdup_printf (ngettext ("%u part has no place yet and moves no centre: %s.",
                                               "%u parts have no place yet and move no centre: %s.", n_place),
                                     n_place, names));
    }
}

void
gb_say_verdicts (GbDocument *document,
                 const GbBoat *boat,
                 const GbFindings *findings,
                 GbVerdictSubject subject)
{
  g_autoptr (GPtrArray) verdicts = gb_findings_verdicts (boat, findings);

  for (guint i = 0; i < verdicts->len; i++)
    {
      const GbVerdict *verdict = verdicts->pdata[i];

      if (verdict->subject != subject)
        continue;
      if (verdict->kind == GB_VERDICT_PASSED)
        gb_document_warn (document, g_strdup (verdict->sentence));
      else
        gb_document_say (document, g_strdup (verdict->sentence));
    }
}

const char *
gb_head_name (const GbBoat *boat, gint64 category)
{
  const GbCategory *head = (const GbCategory *) gb_boat_get (boat, GB_RECORD_CATEGORY, category);

  return head != NULL ? head->name : _ ("Under no head");
}
