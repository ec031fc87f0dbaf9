/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "engine/costs.h"
#include "engine/flotation.h"
#include "engine/mesh.h"
#include "engine/rollup.h"

G_BEGIN_DECLS

/* All that is found at every edit, at once. Plain results; pages, charts, reports and the command line read them and never compute. */
typedef struct
{
  GbHullSet hulls;
  GbRollup rollup;
  GbFlotation flotation;
  GbCosts costs;
} GbFindings;

GbFindings *gb_findings_new (void);
void gb_findings_free (GbFindings *findings);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbFindings, gb_findings_free)

/* What an edit may have touched, so that what it cannot have touched is kept. Flotation and costs take little
 * and are found every time. */
typedef enum
{
  GB_TOUCHED_HULLS = 1 << 0,   /* hulls, stations, offsets; the skins' weights follow */
  GB_TOUCHED_WEIGHTS = 1 << 1, /* all else that the roll-up reads: build, materials, samples, stock, parts,
                                  weighings and their readings */
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
