/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "document.h"
#include "report.h"

G_BEGIN_DECLS

/* The documents of the reports, one for each kind. */
GbDocument *gb_parts_document (const GbBoat *boat, const GbFindings *findings, gint64 today);
GbDocument *gb_weights_document (const GbBoat *boat, const GbFindings *findings, gint64 today);
GbDocument *gb_afloat_document (const GbBoat *boat, const GbFindings *findings, const GPtrArray *studies, gint64 today);
GbDocument *gb_materials_document (const GbBoat *boat, const GbFindings *findings, gint64 today);
GbDocument *gb_purchases_document (const GbBoat *boat, const GbFindings *findings, gint64 today);
GbDocument *gb_money_document (const GbBoat *boat, const GbFindings *findings, gint64 today);

/* What several of them say. */

/* "E", "C" or "A": how a mass is known; of a group all that occur, "E C". Static. */
const char *gb_basis_letters (const GbMass *mass);
/* The sentence that explains the letters. Translated; static. */
const char *gb_basis_note (void);
/* Says how many parts have no mass or no place, and which: the first few by name. Nothing if all is known. */
void gb_say_unknown_parts (GbDocument *document, const GbBoat *boat, const GbRollup *rollup);
/* The verdicts on @subject: limits that are passed, and what is not known. */
void gb_say_verdicts (GbDocument *document,
                      const GbBoat *boat,
                      const GbFindings *findings,
                      GbVerdictSubject subject);
/* The name of a budget head; what lies under none has a name too. Borrowed. */
const char *gb_head_name (const GbBoat *boat, gint64 category);

G_END_DECLS
