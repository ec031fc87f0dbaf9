/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "chart-private.h"

#include <glib/gi18n-lib.h>

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  g_string_append (words->title, _ ("The righting lever stands here, once she floats"));
  return NULL;
}

const GbChartMethod gb_chart_righting = {
  .name = "righting",
  .label = N_ ("Righting lever"),
  .caution = TRUE,
  .make = make,
};
