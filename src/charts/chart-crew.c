/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "chart-private.h"

#include <glib/gi18n-lib.h>

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  g_string_append (words->title, _ ("What each place of a person does stands here, once she floats and a load is picked"));
  return NULL;
}

const GbChartMethod gb_chart_crew = {
  .name = "crew",
  .label = N_ ("Where the crew may sit"),
  .caution = TRUE,
  .make = make,
};
