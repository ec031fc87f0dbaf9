/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fields.h"

G_BEGIN_DECLS

/* A whole build in memory: the records, linked as a tree and kept in order.
 *
 * Pointers to records stay valid until the record is removed: taking a record whose id is there already assigns to the
 * old struct. Changes come in two steps, so that rows may arrive in any order: take and remove as many as there are, then
 * settle once. Between the two, children arrays, indices and the part tree are out of date.
 *
 * A record whose owner is not there, or that is its own ancestor, is kept as an orphan: listed by gb_boat_orphans(), not
 * in the tree, and not counted. (The store refuses such files; this keeps a half-read one from harm.) */
typedef struct _GbBoat GbBoat;

GbBoat *gb_boat_new (void); /* with a build record of start values, id 1 */
GbBoat *gb_boat_copy (const GbBoat *boat);
void gb_boat_free (GbBoat *boat);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbBoat, gb_boat_free)

/* Takes ownership of @record, whose id must be over 0. Returns the record as the boat holds it. */
GbRecord *gb_boat_take (GbBoat *boat, GbRecord *record);
/* Removes one record; what lives in it becomes orphaned unless it is removed too. Nothing happens if there is none. */
void gb_boat_remove (GbBoat *boat, GbRecordKind kind, gint64 id);
void gb_boat_settle (GbBoat *boat);

const GbBuild *gb_boat_build (const GbBoat *boat);

/* NULL if there is none, or if @id is 0. */
GbRecord *gb_boat_get (const GbBoat *boat, GbRecordKind kind, gint64 id);

/* As gb_boat_get(), for each kind, with the right type. */
const GbMaterial *gb_boat_material (const GbBoat *boat, gint64 id);
const GbStock *gb_boat_stock (const GbBoat *boat, gint64 id);
const GbPart *gb_boat_part (const GbBoat *boat, gint64 id);
const GbHull *gb_boat_hull (const GbBoat *boat, gint64 id);

/* Those that live in no other record, in order. (element-type GbRecord), borrowed, never NULL. */
const GPtrArray *gb_boat_roots (const GbBoat *boat, GbRecordKind kind);
/* All of a kind that are in the tree, by their index: roots in order, each followed by what lives in it where that is of the
 * same kind. For parts this is the tree flattened depth first. Borrowed, never NULL. */
const GPtrArray *gb_boat_all (const GbBoat *boat, GbRecordKind kind);
const GPtrArray *gb_boat_orphans (const GbBoat *boat, GbRecordKind kind);
guint gb_boat_n (const GbBoat *boat, GbRecordKind kind);

/* What lives in @record, in order; of a hull its stations. Borrowed; an empty array if there is nothing. */
const GPtrArray *gb_record_children (const GbRecord *record);
/* Those of @kind alone: the stations of a hull, or its openings (which are not among its children). An empty array where none may live in it. */
const GPtrArray *gb_record_children_of (const GbRecord *record, GbRecordKind kind);

/* TRUE if the part @id is @ancestor or lies somewhere below it. */
gboolean gb_boat_is_below (const GbBoat *boat, gint64 id, gint64 ancestor);

/* A place between two siblings (NAN for none on that side). */
double gb_position_between (double before, double after);

/* TRUE if both hold the same records. With @difference, a sentence that names the first difference; free it. */
gboolean gb_boat_equal (const GbBoat *a, const GbBoat *b, char **difference);

G_END_DECLS
