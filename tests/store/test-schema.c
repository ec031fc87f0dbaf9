/* SPDX-License-Identifier: GPL-3.0-or-later */

/* data/schema.sql and the field table say the same: columns, sorts, references, and what a value may be. */

#include "scratch.h"

#include "store/store-private.h"

#include <math.h>
#include <sqlite3.h>
#include <string.h>

/* A file with one record of each kind. */
static sqlite3 *
open_one_of_each (Scratch *scratch)
{
  g_autoptr (GbBoat) boat = gb_boat_new ();
  g_autoptr (GbStore) store = NULL;
  sqlite3 *db;

  for (guint k = GB_RECORD_BUILD + 1; k < GB_N_RECORDS; k++)
    {
      GbRecord *record = gb_record_new (k);

      record->id = 1;
      record->owner = gb_record_type (k)->owner != GB_N_RECORDS && k != GB_RECORD_PART;
      gb_boat_take (boat, record);
    }
  gb_boat_settle (boat);
  store = scratch_store (scratch, boat);
  g_assert_cmpint (sqlite3_open (scratch->path, &db), ==, SQLITE_OK);
  return db;
}

static sqlite3_stmt *
query (sqlite3 *db, const char *format, const char *what)
{
  g_autofree char *sql = g_strdup_printf (format, what);
  sqlite3_stmt *stmt = NULL;

  if (sqlite3_prepare_v2 (db, sql, -1, &stmt, NULL) != SQLITE_OK)
    g_error ("%s: %s", sql, sqlite3_errmsg (db));
  return stmt;
}

static void
expect_column (sqlite3_stmt *stmt, const char *name, const char *type)
{
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_ROW);
  g_assert_cmpstr ((const char *) sqlite3_column_text (stmt, 1), ==, name);
  g_assert_cmpstr ((const char *) sqlite3_column_text (stmt, 2), ==, type);
}

static const char *
column_type (const GbField *field)
{
  if (field->dim == GB_DIM_CHOICE || gb_field_storage (field) == GB_STORAGE_TEXT)
    return "TEXT";
  return gb_field_storage (field) == GB_STORAGE_REAL ? "REAL" : "INTEGER";
}

static void
test_columns_are_the_field_table (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  sqlite3 *db = open_one_of_each (scratch);

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);
      sqlite3_stmt *stmt = query (db, "PRAGMA table_info(\"%s\")", type->name);

      expect_column (stmt, "id", "INTEGER");
      if (type->owner != GB_N_RECORDS)
        expect_column (stmt, "owner", "INTEGER");
      expect_column (stmt, "position", "REAL");
      expect_column (stmt, "typed", "TEXT");
      for (guint i = 0; i < type->n_fields; i++)
        expect_column (stmt, type->fields[i].name, column_type (&type->fields[i]));
      g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_DONE);
      sqlite3_finalize (stmt);
    }
  sqlite3_close (db);
}

static void
test_tables_are_strict_and_no_more (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  sqlite3 *db = open_one_of_each (scratch);
  sqlite3_stmt *stmt = query (db, "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite%s'", "%");
  guint n = 0;

  for (; sqlite3_step (stmt) == SQLITE_ROW; n++)
    g_assert_cmpint (sqlite3_column_int (stmt, 1), ==, 1);
  g_assert_cmpuint (n, ==, GB_N_RECORDS + 2); /* and the history with its mark */
  sqlite3_finalize (stmt);
  sqlite3_close (db);
}

/* References --------------------------------------------------------------------------------------------------------- */

static void
expect_link (sqlite3 *db, const GbRecordType *type, const char *column, GbRecordKind to, const char *on_delete)
{
  sqlite3_stmt *keys = query (db, "PRAGMA foreign_key_list(\"%s\")", type->name);
  g_autofree char *index = g_strdup_printf ("%s_%s", type->name, column);
  sqlite3_stmt *indexed;
  gboolean found = FALSE;

  while (sqlite3_step (keys) == SQLITE_ROW)
    if (strcmp ((const char *) sqlite3_column_text (keys, 3), column) == 0)
      {
        g_assert_cmpstr ((const char *) sqlite3_column_text (keys, 2), ==, gb_record_type (to)->name);
        g_assert_cmpstr ((const char *) sqlite3_column_text (keys, 6), ==, on_delete);
        found = TRUE;
      }
  g_assert_true (found);
  sqlite3_finalize (keys);

  indexed = query (db, "PRAGMA index_info(\"%s\")", index);
  g_assert_cmpint (sqlite3_step (indexed), ==, SQLITE_ROW);
  g_assert_cmpstr ((const char *) sqlite3_column_text (indexed, 2), ==, column);
  sqlite3_finalize (indexed);
}

static void
test_references_are_foreign_keys_with_an_index (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  sqlite3 *db = open_one_of_each (scratch);

  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      const GbRecordType *type = gb_record_type (k);

      if (type->owner != GB_N_RECORDS)
        expect_link (db, type, "owner", type->owner, "CASCADE");
      for (guint i = 0; i < type->n_fields; i++)
        if (type->fields[i].dim == GB_DIM_REF)
          expect_link (db, type, type->fields[i].name, type->fields[i].refers_to, "SET NULL");
    }
  sqlite3_close (db);
}

/* Values ------------------------------------------------------------------------------------------------------------- */

/* Whether the file itself takes @value, without the program's own checks. */
static gboolean
takes (sqlite3 *db, const GbField *field, const char *value)
{
  g_autofree char *sql = g_strdup_printf ("SAVEPOINT s; UPDATE \"%s\" SET \"%s\" = %s", gb_record_type (field->kind)->name,
                                          field->name, value);
  int code = sqlite3_exec (db, sql, NULL, NULL, NULL);

  sqlite3_exec (db, "ROLLBACK TO s; RELEASE s", NULL, NULL, NULL);
  return code == SQLITE_OK;
}

static gboolean
takes_number (sqlite3 *db, const GbField *field, double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  const char *format = gb_field_storage (field) == GB_STORAGE_REAL ? "%.17g" : "%.0f";

  return takes (db, field, g_ascii_formatd (digits, sizeof digits, format, value));
}

/* A little beyond either end, and the ends themselves. */
static void
check_range (sqlite3 *db, const GbField *field)
{
  double beyond = MAX (1, fabs (field->max) * 1e-3);

  g_assert_true (takes_number (db, field, field->max));
  g_assert_false (takes_number (db, field, field->max + beyond));
  g_assert_cmpint (takes_number (db, field, field->min), ==, (field->flags & GB_FIELD_ABOVE_MIN) == 0);
  g_assert_true (takes_number (db, field, field->min + (field->max - field->min) / 2));
  g_assert_false (takes_number (db, field, field->min - beyond));
  g_assert_false (takes (db, field, "9e999"));
  g_assert_false (takes (db, field, "-9e999"));
  g_assert_false (takes (db, field, "'six'"));
}

static void
check_choices (sqlite3 *db, const GbField *field)
{
  for (const GbChoice *choice = field->choices; choice->name != NULL; choice++)
    {
      g_autofree char *quoted = g_strdup_printf ("'%s'", choice->name);

      g_assert_true (takes (db, field, quoted));
    }
  g_assert_false (takes (db, field, "'none of them'"));
  g_assert_false (takes (db, field, "NULL"));
}

static void
check_text (sqlite3 *db, const GbField *field)
{
  g_autofree char *longest = g_strdup_printf ("printf ('%%.*c', %d, 'x')", (int) field->max);
  g_autofree char *too_long = g_strdup_printf ("printf ('%%.*c', %d, 'x')", (int) field->max + 1);

  g_assert_true (takes (db, field, longest));
  g_assert_false (takes (db, field, too_long));
  g_assert_true (takes (db, field, "NULL"));
}

static void
test_checks_are_the_field_tables (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  sqlite3 *db = open_one_of_each (scratch);

  for (guint k = 0; k < GB_N_RECORDS; k++)
    for (guint i = 0; i < gb_record_type (k)->n_fields; i++)
      {
        const GbField *field = &gb_record_type (k)->fields[i];

        g_test_message ("%s.%s", gb_record_type (k)->name, field->name);
        if (field->dim == GB_DIM_CHOICE)
          check_choices (db, field);
        else if (field->dim == GB_DIM_FLAG)
          g_assert_true (takes (db, field, "0") && takes (db, field, "1") && !takes (db, field, "2") && !takes (db, field, "NULL"));
        else if (field->dim == GB_DIM_REF)
          g_assert_true (takes (db, field, "1") && takes (db, field, "NULL") && !takes (db, field, "'oak'"));
        else if (gb_field_storage (field) == GB_STORAGE_TEXT)
          check_text (db, field);
        else
          check_range (db, field);
      }
  sqlite3_close (db);
}

/* Comparing ---------------------------------------------------------------------------------------------------------- */

/* The same schema with other remarks and spaces is the same schema. */
static void
test_remarks_and_spaces_do_not_matter (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "schema.sql", NULL);
  g_autofree char *schema = NULL;
  g_autofree char *other = g_strdup_printf ("PRAGMA application_id = %d; PRAGMA user_version = %d;", GB_STORE_APPLICATION_ID,
                                            GB_STORE_SCHEMA_VERSION);
  g_autoptr (GString) sql = g_string_new (other);
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &schema, NULL, &error);
  g_assert_no_error (error);
  g_string_append (sql, schema);
  g_string_replace (sql, " -- m\n", "  \n /* metres */\n\n", 0);
  g_string_replace (sql, "NOT NULL", "NOT\n\tNULL", 0);
  g_string_append (sql, "INSERT INTO build (id, position, units, water) VALUES (1, 0, 'metric', 'fresh')");
  scratch_sql (scratch->path, sql->str);
  store = scratch_open (scratch->path);
  boat = scratch_load (store);
  g_assert_cmpuint (gb_boat_n (boat, GB_RECORD_BUILD), ==, 1);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schema/columns-are-the-field-table", test_columns_are_the_field_table);
  g_test_add_func ("/schema/tables-are-strict-and-no-more", test_tables_are_strict_and_no_more);
  g_test_add_func ("/schema/references-are-foreign-keys", test_references_are_foreign_keys_with_an_index);
  g_test_add_func ("/schema/checks-are-the-field-tables", test_checks_are_the_field_tables);
  g_test_add_func ("/schema/remarks-and-spaces-do-not-matter", test_remarks_and_spaces_do_not_matter);
  return g_test_run ();
}
