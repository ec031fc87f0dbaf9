/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "widgets/grid.h"

G_BEGIN_DECLS

/* The tree of parts: what is found of each part beside its fields. */
extern const GbGridType gb_part_grid_type;

G_END_DECLS
