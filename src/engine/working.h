/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/crew-map.h"
#include "engine/findings.h"
#include "engine/righting.h"
#include "engine/small-craft-rule.h"
#include "engine/swamped.h"

G_BEGIN_DECLS

/* How a figure came about, as a hand calculation: steps in words and in numbers with units, a table where
 * there is one, and the sources. */

typedef struct
{
  char *words;   /* "area x thickness x density" */
  char *numbers; /* "0.71 m2 x 6 mm x 450 kg/m3 = 1.92 kg" */
  char *source;  /* of the figures in it, or NULL */
} GbWorkingStep;

typedef struct
{
  char *title;
  GPtrArray *steps;   /* (element-type GbWorkingStep) */
  GPtrArray *columns; /* (element-type utf8) headings of the table, or NULL */
  GPtrArray *rows;    /* (element-type GStrv) cells as text; the last row is the total */
  char *caution;      /* or NULL */
} GbWorking;

void gb_working_free (GbWorking *working);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbWorking, gb_working_free)

/* Mass of a part (take-off formula, density and its source, scale), or of a group (the sum). @part_id 0: the
 * boat, with margin. */
GbWorking *gb_working_mass (const GbBoat *boat, const GbFindings *findings, gint64 part_id);
/* Centre of a group or the boat: the moment table of what is directly in it. Of a part: how its place follows
 * from its groups. */
GbWorking *gb_working_centre (const GbBoat *boat, const GbFindings *findings, gint64 part_id);
/* The flotation limit, and what is left. With the caution. */
GbWorking *gb_working_limit (const GbBoat *boat, const GbFindings *findings);
/* Spent, still to buy and forecast: the purchases behind a sum. */
GbWorking *gb_working_money (const GbBoat *boat, const GbFindings *findings);
/* One material's figure: formula of the wood, samples, source. */
GbWorking *gb_working_material (const GbBoat *boat, gint64 material_id);

/* How she floats in a condition (0: nobody aboard): weights and moments, where she comes to rest, draughts,
 * GM and what follows. With the caution. */
GbWorking *gb_working_afloat (const GbBoat *boat, const GbFindings *findings, gint64 condition);
/* The curve of righting levers and what was read off it. NULL: there is none, and the working says so; the
 * same goes for those below. */
GbWorking *gb_working_righting (const GbBoat *boat, const GbFindings *findings, const GbRighting *righting);
/* The crew map: how its places are found, the best of them, and the row that the load is in. */
GbWorking *gb_working_crew (const GbBoat *boat, const GbFindings *findings, const GbCrewMap *map);
/* What carries her when she is full of water, and the foam that is wanted. */
GbWorking *gb_working_swamped (const GbBoat *boat, const GbFindings *findings, const GbSwamped *swamped);
/* The published rule's own steps, in pounds and cubic feet as it is worked. */
GbWorking *gb_working_rule (const GbBoat *boat, const GbRule *rule);
/* An inclining test, by its id. */
GbWorking *gb_working_inclined (const GbBoat *boat, const GbFindings *findings, gint64 inclining);
/* A test of the model in the tub, by its id: Froude's factors, what was read and what was computed. */
GbWorking *gb_working_tubbed (const GbBoat *boat, const GbFindings *findings, gint64 tub);

/* The whole as plain text, for a popover that is copied, and for reports. */
char *gb_working_to_text (const GbWorking *working);

/* The usual caution, translated: flotation and load; swamped, and the published rule; lifting. */
const char *gb_caution_afloat (void);
const char *gb_caution_swamped (void);
const char *gb_caution_lifting (void);

G_END_DECLS
