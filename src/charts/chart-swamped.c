/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "chart-private.h"

#include <glib/gi18n-lib.h>

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  g_string_append (words->title, _ ("How she lies full of water is drawn here, once there is a hull and a weight"));
  return NULL;
}

const GbChartMethod gb_chart_swamped = {
  .name = "swamped",
  .label = N_ ("Full of water"),
  .caution = TRUE,
  .make = make,
};
