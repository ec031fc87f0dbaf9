/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The field table: whole, free of doubles, and its checks. */

#include "boat/fields.h"

#include <math.h>
#include <string.h>

static void
test_table_is_whole (void)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);

      g_assert_cmpuint (type->kind, ==, k);
      g_assert_true (gb_record_type_by_name (type->name) == type);
      g_assert_cmpuint (type->n_fields, >, 0);
      if (type->switcher != NULL)
        g_assert_cmpint (gb_field (k, type->switcher)->dim, ==, GB_DIM_CHOICE);
      for (guint i = 0; i < type->n_fields; i++)
        {
          const GbField *field = &type->fields[i];

          g_assert_cmpuint (field->kind, ==, k);
          g_assert_true (gb_field_find (k, field->name) == field);
          g_assert_cmpuint (field->offset, >=, sizeof (GbRecord));
          g_assert_cmpuint (field->offset, <, type->size);
          g_assert_true (g_str_has_suffix (field->help, "."));
          g_assert_cmpuint (gb_field_n_choices (field) > 0, ==, field->dim == GB_DIM_CHOICE);
          g_assert_cmpuint (field->refers_to != GB_N_RECORDS, ==, field->dim == GB_DIM_REF);
          for (guint j = 0; j < i; j++)
            g_assert_cmpuint (type->fields[j].offset, !=, field->offset);
        }
    }
}

static void
test_start_values_pass_their_own_check (void)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      g_autoptr (GbRecord) record = gb_record_new (k);
      const GbRecordType *type = gb_record_type (k);

      for (guint i = 0; i < type->n_fields; i++)
        if ((type->fields[i].flags & GB_FIELD_REQUIRED) == 0)
          {
            g_auto (GbValue) value = gb_field_get (&type->fields[i], record);
            g_autoptr (GError) error = NULL;

            g_assert_true (gb_field_check (&type->fields[i], &value, &error));
            g_assert_no_error (error);
          }
    }
}

static void
refuse (const GbField *field, GbValue value, const char *part)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (gb_field_check (field, &value, &error));
  g_assert_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE);
  g_assert_nonnull (strstr (error->message, part));
  gb_value_clear (&value);
}

static void
test_bad_values_are_refused (void)
{
  const GbField *thickness = gb_field (GB_RECORD_PART, "thickness");
  const GbField *name = gb_field (GB_RECORD_PART, "name");
  g_autofree char *endless = g_strnfill (10000, 'a');

  refuse (thickness, GB_VALUE_REAL (INFINITY), "finite");
  refuse (thickness, GB_VALUE_REAL (-0.006), "more than");
  refuse (thickness, GB_VALUE_REAL (0), "more than");
  refuse (thickness, GB_VALUE_REAL (1e9), "at most");
  refuse (name, GB_VALUE_TEXT (endless), "too long");
  refuse (name, GB_VALUE_TEXT ("a\001b"), "control character");
  refuse (name, GB_VALUE_TEXT ("a\nb"), "control character");
  refuse (name, GB_VALUE_TEXT ("\xff\xfe"), "UTF-8");
  refuse (name, GB_VALUE_TEXT (""), "empty");
  refuse (gb_field (GB_RECORD_PART, "takeoff"), GB_VALUE_INTEGER (99), "choice");
  refuse (gb_field (GB_RECORD_STOCK, "price"), GB_VALUE_INTEGER (-1), "negative");
  refuse (gb_field (GB_RECORD_PURCHASE, "date"), GB_VALUE_INTEGER (17), "date");
}

static void
test_typed_text_is_kept_by_field (void)
{
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_PART);
  g_autofree char *thickness = NULL;
  g_autofree char *length = NULL;

  g_assert_null (gb_typed_get (record, "thickness"));
  gb_typed_set (record, "thickness", "1/4\"");
  gb_typed_set (record, "length", "2*1220-45");
  gb_typed_set (record, "thickness", "6 mm");
  thickness = gb_typed_get (record, "thickness");
  length = gb_typed_get (record, "length");
  g_assert_cmpstr (record->typed, ==, "length=2*1220-45\nthickness=6 mm");
  g_assert_cmpstr (thickness, ==, "6 mm");
  g_assert_cmpstr (length, ==, "2*1220-45");
  g_assert_null (gb_typed_get (record, "thick"));
  gb_typed_set (record, "length", NULL);
  gb_typed_set (record, "thickness", NULL);
  g_assert_null (record->typed);
}

static void
test_copies_are_equal (void)
{
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_PART);
  g_autoptr (GbRecord) copy = NULL;

  ((GbPart *) record)->name = g_strdup ("Thwart");
  gb_typed_set (record, "width", "8 in");
  copy = gb_record_copy (record);
  g_assert_true (gb_record_equal (record, copy));
  ((GbPart *) copy)->width = 0.2;
  g_assert_false (gb_record_equal (record, copy));
}

static void
test_group_shows_only_its_own_fields (void)
{
  g_autoptr (GbRecord) record = gb_record_new (GB_RECORD_PART);
  GbPart *part = (GbPart *) record;

  part->takeoff = GB_TAKEOFF_SHEET;
  g_assert_true (gb_field_applies (gb_field (GB_RECORD_PART, "outline"), record));
  g_assert_false (gb_field_applies (gb_field (GB_RECORD_PART, "mass"), record));
  part->kind = GB_KIND_GROUP;
  g_assert_false (gb_field_applies (gb_field (GB_RECORD_PART, "outline"), record));
  g_assert_true (gb_field_applies (gb_field (GB_RECORD_PART, "turn_z"), record));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fields/table-is-whole", test_table_is_whole);
  g_test_add_func ("/fields/start-values-pass-their-own-check", test_start_values_pass_their_own_check);
  g_test_add_func ("/fields/bad-values-are-refused", test_bad_values_are_refused);
  g_test_add_func ("/fields/typed-text-is-kept-by-field", test_typed_text_is_kept_by_field);
  g_test_add_func ("/fields/copies-are-equal", test_copies_are_equal);
  g_test_add_func ("/fields/group-shows-only-its-own-fields", test_group_shows_only_its_own_fields);
  return g_test_run ();
}
