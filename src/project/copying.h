/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

/* Copies records with all that lives in them into an edit, within a build or from one build into another.
 *
 * What a copy refers to: the copy of it, where it is copied too; else the same record, within a build; else
 * the record of the other build that has its id and name, or its name; else a material, stock or a budget
 * head is copied along, and anything else is unknown. Between builds of different currencies prices are not
 * carried over. A copied part is planned. */
typedef struct _GbCopying GbCopying;

GbCopying *gb_copying_new (GbEdit *edit, const GbBoat *from, const GbBoat *to);
void gb_copying_free (GbCopying *copying);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (GbCopying, gb_copying_free)

/* Copies one record, without place. The copy is the edit's. */
GbRecord *gb_copying_add (GbCopying *copying, const GbRecord *record);
/* Gives the copy the next name that is free: "Frame 3" after "Frame 2", "Bottom 2" after "Bottom". */
void gb_copying_rename (GbCopying *copying, GbRecord *copy);
/* Copies what lives in the copied records, and sets what they refer to. */
void gb_copying_finish (GbCopying *copying);

/* The ids of @records as a new array of gint64, if @ids is wanted. */
void gb_copying_hand_out (const GPtrArray *records, GArray **ids);

G_END_DECLS
