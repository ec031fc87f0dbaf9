/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* One reading of the strip: a word for what it is, a sentence in figures, and a bar. On the bar what is sure is solid, what is set aside or still to
 * come is hatched, the deviation is a whisker and the limit a stroke. A passed limit changes word, icon and colour together. A click opens
 * the page behind it (property "action-name" and target of the button that it is). */
#define GB_TYPE_GAUGE (gb_gauge_get_type ())
G_DECLARE_FINAL_TYPE (GbGauge, gb_gauge, GB, GAUGE, GtkWidget)

typedef enum
{
  GB_GAUGE_UNKNOWN,
  GB_GAUGE_WITHIN,
  GB_GAUGE_NEAR,
  GB_GAUGE_PASSED,
} GbGaugeState;

typedef struct
{
  GbGaugeState state;
  double sure;   /* solid; NAN: no bar */
  double margin; /* hatched, on top of that */
  double sd;     /* whisker about their sum; NAN: none */
  double limit;  /* the stroke; NAN: none */
} GbGaugeReading;

/* @words and @tooltip are copied. */
void gb_gauge_set (GbGauge *self, const GbGaugeReading *reading, const char *words, const char *tooltip);

const char *gb_gauge_get_words (GbGauge *self);
GbGaugeState gb_gauge_get_state (GbGauge *self);

G_END_DECLS
