/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "json-text.h"
#include "text-form.h"

G_BEGIN_DECLS

#define GB_TEXT_FORM_VERSION 1

/* Reads a quantity with its unit. @typed gets it tidied, as it is kept. Refuses one whose unit would depend on the build. */
gboolean gb_text_form_quantity (const GbField *field, const char *text, double *value, char **typed, GError **error);

/* What @json says into @field of @record, in the currency of @build; a reference only if it is null. The error is a sentence without
 * line and record. */
gboolean gb_text_form_read_field (const GbField *field, const GbJson *json, const GbBuild *build, GbRecord *record, GError **error);

G_END_DECLS
