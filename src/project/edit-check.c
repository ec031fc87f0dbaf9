/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

/* The rules of a build, looked at before anything is written. The store has them too, as constraints; here
 * they get their sentence. */

#include "project/edit-private.h"

#include "boat/money.h"
#include "store/store.h"

#include <glib/gi18n-lib.h>

static gboolean G_GNUC_PRINTF (2, 3) refuse (GError **error, const char *format, ...)
{
  va_list args;
  g_autofree char *sentence = NULL;

  va_start (args, format);
  sentence = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED, sentence);
  return FALSE;
}

static gboolean
check_reference (const GbEdit *edit, const GbBoat *boat, const GbRecord *record, const GbField *field,
                 GError **error)
{
  gint64 id = gb_field_get_integer (field, record);

  if (id == 0 || gb_edit_after (edit, boat, field->refers_to, id) != NULL)
    return TRUE;
  return refuse (error, _ ("%s: there is no such thing in this build."), _ (field->label));
}

/* What is not changed need not be good: a build without a name may get its currency first. */
static gboolean
is_kept (const GbField *field, const GbRecord *old, const GbRecord *record)
{
  return old != NULL && gb_field_equal (field, old, record);
}

static gboolean
check_fields (const GbEdit *edit, const GbBoat *boat, const GbRecord *record, GError **error)
{
  const GbRecordType *type = gb_record_type (record->kind);
  const GbRecord *old = gb_boat_get (boat, record->kind, record->id);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      g_auto (GbValue) value = gb_field_get (field, record);

      if (field->dim == GB_DIM_REF ? !check_reference (edit, boat, record, field, error)
                                   : !is_kept (field, old, record) && !gb_field_check (field, &value, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
check_build (const GbBoat *boat, const GbBuild *build, GError **error)
{
  const GbField *currency = gb_field (GB_RECORD_BUILD, "currency");

  if (build->rec.id != 1)
    return refuse (error, _ ("A file holds one build."));
  if (build->currency != NULL && !gb_currency_is_valid (build->currency)
      && !is_kept (currency, &gb_boat_build (boat)->rec, &build->rec))
    return refuse (error, _ ("Currency: three capital letters are expected, like EUR."));
  return TRUE;
}

/* The owner must be there after the edit, and be of the right sort. */
static gboolean
check_owner (const GbEdit *edit, const GbBoat *boat, const GbRecord *record, GError **error)
{
  const GbRecordType *type = gb_record_type (record->kind);
  g_autofree char *title = gb_record_dup_title (record);
  const GbRecord *owner;

  if (record->owner == 0 && (type->owner == GB_N_RECORDS || type->owner == record->kind))
    return TRUE;
  if (type->owner == GB_N_RECORDS)
    return refuse (error, _ ("“%s” cannot be put into something else."), title);
  owner = gb_edit_after (edit, boat, type->owner, record->owner);
  if (owner == NULL)
    return refuse (error, _ ("“%s” cannot go there: that place is no longer in this build."), title);
  if (owner->kind == GB_RECORD_PART && ((const GbPart *) owner)->kind != GB_KIND_GROUP)
    {
      g_autofree char *owner_title = gb_record_dup_title (owner);

      return refuse (error, _ ("“%s” cannot go into “%s”, which is a part and no group."), title,
                     owner_title);
    }
  return TRUE;
}

static gboolean
check_not_in_itself (const GbEdit *edit, const GbBoat *boat, const GbRecord *part, GError **error)
{
  guint left = gb_boat_n (boat, GB_RECORD_PART) + gb_edit_n_puts (edit);

  for (const GbRecord *above = part; above != NULL && above->owner != 0; left--)
    {
      if (above->owner == part->id || left == 0)
        {
          g_autofree char *title = gb_record_dup_title (part);

          return refuse (error, _ ("“%s” cannot be moved into itself."), title);
        }
      above = gb_edit_after (edit, boat, GB_RECORD_PART, above->owner);
    }
  return TRUE;
}

/* A group that has parts in it cannot become a part. */
static gboolean
check_may_be_a_part (const GbEdit *edit, const GbBoat *boat, const GbPart *part, GError **error)
{
  const GbRecord *old = gb_boat_get (boat, GB_RECORD_PART, part->rec.id);
  const GPtrArray *children = old != NULL ? gb_record_children (old) : NULL;

  if (part->kind == GB_KIND_GROUP || children == NULL)
    return TRUE;
  for (guint i = 0; i < children->len; i++)
    {
      const GbRecord *child = children->pdata[i];
      const GbRecord *after = gb_edit_after (edit, boat, GB_RECORD_PART, child->id);

      if (after != NULL && after->owner == part->rec.id)
        return refuse (error, _ ("“%s” is a group with parts in it; move them out first."), part->name);
    }
  return TRUE;
}

static gboolean
check_record (const GbEdit *edit, const GbBoat *boat, const GbRecord *record, GError **error)
{
  if (!check_fields (edit, boat, record, error) || !check_owner (edit, boat, record, error))
    return FALSE;
  if (record->kind == GB_RECORD_BUILD)
    return check_build (boat, (const GbBuild *) record, error);
  if (record->kind == GB_RECORD_PART)
    return check_not_in_itself (edit, boat, record, error)
           && check_may_be_a_part (edit, boat, (const GbPart *) record, error);
  return TRUE;
}

gboolean
gb_edit_check (const GbEdit *edit, const GbBoat *boat, GError **error)
{
  const GPtrArray *puts = gb_edit_puts (edit);
  const GArray *deletions = gb_edit_deletions (edit);

  for (guint i = 0; i < puts->len; i++)
    {
      const GbRecord *record = puts->pdata[i];

      if (record->id > 0 && gb_boat_get (boat, record->kind, record->id) == NULL)
        return refuse (error, _ ("What is to be changed is no longer in this build."));
      if (!check_record (edit, boat, record, error))
        return FALSE;
    }
  for (guint i = 0; i < deletions->len; i++)
    if (g_array_index (deletions, GbRecordKey, i).kind == GB_RECORD_BUILD)
      return refuse (error, _ ("The build itself cannot be deleted."));
  return TRUE;
}
