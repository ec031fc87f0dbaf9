/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "project/edit.h"

G_BEGIN_DECLS

/* Records by their names, as a person types and reads them. */

/* (element-type GbRecord), borrowed records: those of @kind that are called @name, the case aside; where some
 * have the very same case, those alone. A part may be named with groups before it: "Hull/Bottom". (transfer
 * container) */
GPtrArray *gb_names_find (const GbBoat *boat, GbRecordKind kind, const char *name);

/* Reads @text as the name of what @field shall refer to. What the build does not hold yet and may be made, a
 * material of the catalogue or a budget head, is put into @edit. FALSE with a sentence that says what is
 * there. Empty: 0, nothing. */
gboolean gb_names_read (const GbBoat *boat, const GbField *field, const char *text, GbEdit *edit, gint64 *id,
                        GError **error);

G_END_DECLS
