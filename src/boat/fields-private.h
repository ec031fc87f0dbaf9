/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fields.h"

extern const GbRecordType gb_record_types[GB_N_RECORDS];
