/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "chart-private.h"

#include <glib/gi18n-lib.h>

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  g_string_append (words->title, _ ("How she floats is drawn here, once there is a hull and a weight"));
  return NULL;
}

const GbChartMethod gb_chart_floating = {
  .name = "floating",
  .label = N_ ("In the water as she sits"),
  .caution = TRUE,
  .make = make,
};
