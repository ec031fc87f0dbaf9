/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fields.h"

extern const GbRecordType gb_record_types[GB_N_RECORDS];

/* As gb_field_check(), which says limits in metric units; this says them in @units. */
gboolean gb_field_check_in (const GbField *field, const GbValue *value, GbUnits units, GError **error);
