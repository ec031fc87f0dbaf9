/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* The figures of a condition: how she floats, how stiff she is, and where her centres are; each with its
 * working. */
#define GB_TYPE_AFLOAT_FACTS (gb_afloat_facts_get_type ())
G_DECLARE_FINAL_TYPE (GbAfloatFacts, gb_afloat_facts, GB, AFLOAT_FACTS, GtkBox)

GtkWidget *gb_afloat_facts_new (void);
/* @project is borrowed until the next call; with NULL nothing is shown. @afloat: the figures; while a load is
 * dragged they are not the findings'. */
void gb_afloat_facts_show (GbAfloatFacts *self, GbProject *project, const GbAfloat *afloat);

G_END_DECLS
