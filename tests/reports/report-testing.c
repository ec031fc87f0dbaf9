/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-testing.h"

#include "small-build.h"

GBytes *
report_make (const GbBoat *boat, GbReportKind kind, GbReportFormat format)
{
  g_autoptr (GbFindings) findings = small_build_find (boat);
  g_autoptr (GPtrArray) studies =
      gb_report_takes_studies (kind) ? gb_studies_find (boat, findings, NULL, NULL) : NULL;
  g_autoptr (GError) error = NULL;
  GBytes *bytes = gb_report_make (kind, format, boat, findings, studies, SMALL_BUILD_TODAY, &error);

  g_assert_no_error (error);
  return bytes;
}

char *
report_text (const GbBoat *boat, GbReportKind kind, GbReportFormat format)
{
  g_autoptr (GBytes) bytes = report_make (boat, kind, format);

  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

JsonNode *
report_json (const GbBoat *boat, GbReportKind kind)
{
  g_autofree char *text = report_text (boat, kind, GB_FORMAT_JSON);
  g_autoptr (GError) error = NULL;
  JsonNode *node = json_from_string (text, &error);

  g_assert_no_error (error);
  return node;
}

JsonObject *
report_facts (JsonNode *root)
{
  return json_object_get_object_member (json_node_get_object (root), "facts");
}

JsonObject *
report_row (JsonNode *root, const char *table, const char *key, const char *name)
{
  JsonArray *rows = json_object_get_array_member (json_node_get_object (root), table);

  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *row = json_array_get_object_element (rows, i);

      if (g_strcmp0 (json_object_get_string_member_with_default (row, key, NULL), name) == 0)
        return row;
    }
  g_error ("no row '%s' in '%s'", name, table);
}

void
report_assert_near (JsonObject *object, const char *key, double expected, double tolerance)
{
  g_assert_true (json_object_has_member (object, key));
  g_assert_false (json_object_get_null_member (object, key));
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, key), expected, tolerance);
}

void
report_assert_number (JsonObject *object, const char *key, double expected)
{
  report_assert_near (object, key, expected, 1e-9);
}
