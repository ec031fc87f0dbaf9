/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "apply-edit.h"

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
apply_edit (GbBoat *boat, GbEdit *edit)
{
  g_autoptr (GbEdit) owned = edit;
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
