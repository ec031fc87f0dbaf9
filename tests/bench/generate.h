/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* A build of @n_parts parts and groups, made from @seed alone: the same on every machine. It has what a real
 * one has, in about the same shares: nested groups, some turned, some in pairs; every take-off; materials of
 * every measure, with samples; stock, hulls, conditions, weighings of parts, groups and the boat, tests afloat and
 * in the tub, receipts. About
 * one part in a hundred lacks something. Every value is one that the field table allows. */
GbBoat *generate_boat (guint n_parts, guint32 seed);

G_END_DECLS
