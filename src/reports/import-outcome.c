/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import"

/* What a row becomes, in words: the take-off is often guessed from what the row gives, so that the builder
 * must see it before it comes in. */

#include "import-private.h"

#include "boat/money.h"
#include "boat/part-text.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>

static const char *
choice_label (GbRecordKind kind, const char *field, int value)
{
  return _ (gb_field (kind, field)->choices[value].label);
}

static char *
part_words (const GbImport *import, const GbImportDraft *draft)
{
  const GbPart *part = (const GbPart *) draft->record;
  g_autofree char *amount = gb_part_amount_text (import->boat, part);
  const char *label = part->kind == GB_KIND_GROUP ? choice_label (GB_RECORD_PART, "kind", part->kind)
                                                  : choice_label (GB_RECORD_PART, "takeoff", part->takeoff);

  if (draft->surface_of != NULL)
    /* Translators: a part of the table that is painted or covered by this one. */
    return g_strdup_printf (_ ("Coating of %s"), draft->surface_of);
  if (*amount == '\0')
    return g_strdup (label);
  /* Translators: how a part's amount is found, and the amount: "Sheet, 1 × 2100 × 860 × 6 mm". */
  return g_strdup_printf (_ ("%s, %s"), label, amount);
}

static char *
line_words (const GbImport *import, const GbLine *line)
{
  g_autofree char *quantity = gb_quantity_format (line->quantity, GB_DIM_COUNT, GB_UNITS_METRIC);
  g_autofree char *price = gb_money_format_full (line->price, gb_boat_build (import->boat)->currency);

  /* Translators: what was bought, how many, and the price of each: "Stock, 2 × € 34.50". */
  return g_strdup_printf (_ ("%s, %s × %s"), choice_label (GB_RECORD_LINE, "kind", line->kind), quantity,
                          price);
}

char *
gb_import_outcome (const GbImport *import, guint row)
{
  g_autoptr (GbEdit) scratch = gb_edit_new ("", import->kind, 0, NULL);
  g_auto (GbImportNames) names = { 0 };
  g_autoptr (GbImportDraft) draft = NULL;

  if (gb_import_refusal (import, row) != NULL)
    return g_strdup ("");
  gb_import_names_init (&names, import, scratch);
  draft = gb_import_draft_row (import, row, &names, NULL);
  if (draft == NULL)
    return g_strdup ("");
  return import->kind == GB_RECORD_PART ? part_words (import, draft)
                                        : line_words (import, (const GbLine *) draft->record);
}
