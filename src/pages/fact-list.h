/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/fact-row.h"

G_BEGIN_DECLS

/* Lists of facts, close together, as the page "Afloat" has many of them. */

typedef struct
{
  const char *title; /* untranslated */
  GbFactAsk ask;     /* NULL: no working */
} GbFactSpec;

/* A group of @n rows under @heading (translated, NULL: none), which go to @rows; @data is for their workings.
 * */
GtkWidget *
gb_fact_list_new (const char *heading, const GbFactSpec *specs, guint n, gpointer data, GbFactRow **rows);
/* As gb_fact_row_set_value(); takes the text. */
void gb_fact_list_set (GbFactRow *row, char *take_value, gboolean passed);

/* Two lists beside one another where there is room, else one below the other. */
GtkWidget *gb_fact_lists_new (GtkWidget *first, GtkWidget *second);

/* A chart with the facts read off it, which scroll beside it. */
GtkWidget *gb_beside_facts (GtkWidget *chart, GtkWidget *facts);

/* A quiet line of text that wraps: a caution, a hint. */
GtkWidget *gb_quiet_label_new (const char *text);

G_END_DECLS
