/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "import-testing.h"

#include "project/edit-private.h"
#include "project/names.h"
#include "project/siblings.h"

static gint64
next_id (GbRecordKind kind, gpointer data)
{
  gint64 *last = data;

  return ++*last;
}

static gint64
highest_id (const GbBoat *boat)
{
  gint64 highest = 0;

  for (guint k = 0; k < GB_N_RECORDS; k++)
    for (guint i = 0; i < gb_boat_n (boat, k); i++)
      highest = MAX (highest, ((GbRecord *) gb_boat_all (boat, k)->pdata[i])->id);
  return highest;
}

void
apply_edit (GbBoat *boat, GbEdit *take_edit)
{
  g_autoptr (GbEdit) edit = take_edit;
  g_autoptr (GError) error = NULL;
  gint64 last = highest_id (boat);

  g_assert_nonnull (edit);
  gb_siblings_place_new (edit, boat);
  gb_edit_check (edit, boat, &error);
  g_assert_no_error (error);
  gb_edit_assign_ids (edit, next_id, &last);
  for (guint i = 0; i < gb_edit_puts (edit)->len; i++)
    gb_boat_take (boat, gb_record_copy (gb_edit_puts (edit)->pdata[i]));
  gb_boat_settle (boat);
}

const GbPart *
part_called (const GbBoat *boat, const char *name)
{
  g_autoptr (GPtrArray) found = gb_names_find (boat, GB_RECORD_PART, name);

  g_assert_cmpuint (found->len, ==, 1);
  return found->pdata[0];
}

GbImport *
read_rows (GbRecordKind kind, const GbBoat *boat, const char *text)
{
  g_autoptr (GError) error = NULL;
  GbImport *import = gb_import_new (kind, text, -1, boat, &error);

  g_assert_no_error (error);
  return import;
}

static void
assert_all_come_in (const GbImport *import)
{
  for (guint r = 0; r < gb_import_n_rows (import); r++)
    g_assert_cmpstr (gb_import_refusal (import, r), ==, NULL);
}

void
import_all (GbBoat *boat, GbRecordKind kind, const char *text)
{
  g_autoptr (GbImport) import = read_rows (kind, boat, text);

  assert_all_come_in (import);
  apply_edit (boat, gb_import_to_edit (import, 0));
}

GbBuild *
build_of (GbBoat *boat)
{
  return (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);
}

GbBoat *
new_boat (void)
{
  GbBoat *boat = gb_boat_new ();

  gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), &build_of (boat)->rec, "EUR");
  return boat;
}

void
add_named (GbBoat *boat, GbRecordKind kind, gint64 id, const char *name)
{
  GbRecord *record = gb_record_new (kind);

  record->id = id;
  record->position = (double) id;
  gb_field_set_text (gb_field (kind, "name"), record, name);
  gb_boat_take (boat, record);
  gb_boat_settle (boat);
}
