/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reports/report.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* Reports for tests, with the studies where they have a use for them; what goes wrong ends the test. */
GBytes *report_make (const GbBoat *boat, GbReportKind kind, GbReportFormat format);
char *report_text (const GbBoat *boat, GbReportKind kind, GbReportFormat format);
JsonNode *report_json (const GbBoat *boat, GbReportKind kind);

JsonObject *report_facts (JsonNode *root);
/* The row of a table whose member @key is @name. */
JsonObject *report_row (JsonNode *root, const char *table, const char *key, const char *name);
void report_assert_near (JsonObject *object, const char *key, double expected, double tolerance);
void report_assert_number (JsonObject *object, const char *key, double expected); /* to 1e-9 */

G_END_DECLS
