/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/catalogue.h"
#include "engine/density.h"

#include <math.h>

/* The density of a row of the table that ships, which must be there. */
static inline double
shipped_density (const char *name)
{
  const GbMaterial *material = gb_catalogue_find (name);

  if (material == NULL)
    g_error ("the table has no %s", name);
  return gb_material_figures (material).density;
}

static inline void
assert_within (const char *what, double got, double expected, double relative)
{
  if (!(fabs (got - expected) <= relative * fabs (expected)))
    g_error ("%s: got %.6g, expected %.6g, difference %+.2f %%, allowed %.2f %%", what, got, expected, 100 * (got / expected - 1),
             100 * relative);
}

/* The table that ships alone, without rows of whoever runs the tests. */
static inline void
use_shipped_table_only (void)
{
  g_setenv ("XDG_DATA_HOME", "/nonexistent", TRUE);
}
