/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "boat/boat.h"

G_BEGIN_DECLS

/* Records and builds filled at random with whatever the field table allows, unknown included: no sense, but every corner. */

/* A random value that @field may hold. References point to records of @boat, or to nothing. */
void random_field (GRand *rand, const GbBoat *boat, const GbField *field, GbRecord *record);

/* A record with random fields and a random position; it lives in some record of @boat. NULL if it must live in one and there is none. */
GbRecord *random_record (GRand *rand, const GbBoat *boat, GbRecordKind kind, gint64 id);

/* A settled build of about @n records; if those are many, of every kind. */
GbBoat *random_boat (GRand *rand, guint n);

/* A generator seeded anew for each test program run (see g_test_rand_int()), whose seed is printed. */
GRand *random_seeded (void);

G_END_DECLS
