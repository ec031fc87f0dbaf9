/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/afloat.h"
#include "engine/costs.h"
#include "engine/flotation.h"
#include "engine/inclining.h"
#include "engine/mesh.h"
#include "engine/rollup.h"
#include "engine/similarity.h"

G_BEGIN_DECLS

/* All that is found at every edit, at once. Plain results; pages, charts, reports and the command line read
 * them and never compute. */
typedef struct
{
  GbHullSet hulls;
  GbRollup rollup;
  GbFlotation flotation; /* level, of the first condition */
  GbEdgeSet edges;
  GbAfloat *afloat; /* by index of the condition; where there is none, one with nobody aboard */
  guint n_afloat;
  guint worst;      /* index of the worst of them */
  GbInclined *inclined; /* by index of the inclining test */
  guint n_inclined;
  GbTubbed *tubbed; /* by index of the model's test */
  guint n_tubbed;
  GbCosts costs;
} GbFindings;

/* How the condition @id floats; 0 is nobody aboard. NULL if there is none. */
const GbAfloat *gb_findings_afloat (const GbFindings *findings, gint64 condition);
/* Its name, or what stands for nobody aboard; translated. Free it. */
char *gb_condition_dup_name (const GbBoat *boat, gint64 condition);

GbFindings *gb_findings_new (void);
void gb_findings_free (GbFindings *findings);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbFindings, gb_findings_free)

/* What an edit may have touched, so that what it cannot have touched is kept. Costs take little
 * and are found every time. */
typedef enum
{
  GB_TOUCHED_HULLS = 1 << 0,   /* hulls, stations, offsets; the skins' weights follow */
  GB_TOUCHED_WEIGHTS = 1 << 1, /* all else that the roll-up reads: build, materials, samples, stock, parts,
                                  weighings and their readings */
  GB_TOUCHED_AFLOAT = 1 << 2,  /* water, freeboard, conditions, loads, openings and their corners, tests; all
                                  that floats follows from hulls and weights too */
  GB_TOUCHED_ALL = 0xff,
} GbTouched;

/* Finds anew. @today is a Julian day. */
void gb_findings_find (GbFindings *findings, const GbBoat *boat, GbTouched touched, gint64 today);

/* The boat within its limits? One sentence for each limit that is passed and each thing that is unknown. */
typedef enum
{
  GB_VERDICT_NOTE,   /* something is not known */
  GB_VERDICT_PASSED, /* a limit is passed */
} GbVerdictKind;
typedef enum
{
  GB_VERDICT_ON_WEIGHT, /* masses, places, hulls and loads */
  GB_VERDICT_ON_MONEY,
} GbVerdictSubject;
typedef struct
{
  GbVerdictKind kind;
  GbVerdictSubject subject;
  char *sentence; /* translated */
} GbVerdict;
/* (element-type GbVerdict) (transfer full) */
GPtrArray *gb_findings_verdicts (const GbBoat *boat, const GbFindings *findings);

G_END_DECLS
