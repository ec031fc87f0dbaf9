/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/names.h"

#include "boat/catalogue.h"
#include "boat/quantity.h"
#include "project/project-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* So many names are said where one is not found. */
#define MOST_SAID 8

static char *
fold (const char *text)
{
  g_autofree char *copy = g_strstrip (g_strdup (text));

  return g_utf8_casefold (copy, -1);
}

static gboolean
is_called (const GbRecord *record, const char *folded)
{
  g_autofree char *title = gb_record_dup_title (record);
  g_autofree char *own = fold (title);

  return strcmp (own, folded) == 0;
}

/* TRUE if the groups that @part is in are called as @groups say, from the innermost outward. */
static gboolean
is_in_groups (const GbBoat *boat, const GbRecord *part, char **groups)
{
  for (guint i = g_strv_length (groups); i > 0; i--)
    {
      g_autofree char *folded = fold (groups[i - 1]);

      part = gb_boat_get (boat, GB_RECORD_PART, part->owner);
      if (part == NULL || !is_called (part, folded))
        return FALSE;
    }
  return TRUE;
}

/* Those that are called so with the very same case, if there are any; else all. */
static void
prefer_same_case (GPtrArray *found, const char *name)
{
  g_autoptr (GPtrArray) same = g_ptr_array_new ();
  g_autofree char *stripped = g_strstrip (g_strdup (name));

  for (guint i = 0; i < found->len; i++)
    {
      g_autofree char *title = gb_record_dup_title (found->pdata[i]);

      if (strcmp (title, stripped) == 0)
        g_ptr_array_add (same, found->pdata[i]);
    }
  if (same->len == 0)
    return;
  g_ptr_array_set_size (found, 0);
  g_ptr_array_extend (found, same, NULL, NULL);
}

static GPtrArray *
find_in_groups (const GbBoat *boat, GbRecordKind kind, char **groups, const char *name)
{
  const GPtrArray *all = gb_boat_all (boat, kind);
  GPtrArray *found = g_ptr_array_new ();
  g_autofree char *folded = fold (name);

  for (guint i = 0; i < all->len; i++)
    if (is_called (all->pdata[i], folded) && is_in_groups (boat, all->pdata[i], groups))
      g_ptr_array_add (found, all->pdata[i]);
  prefer_same_case (found, name);
  return found;
}

GPtrArray *
gb_names_find (const GbBoat *boat, GbRecordKind kind, const char *name)
{
  char *no_groups[] = { NULL };
  GPtrArray *found = find_in_groups (boat, kind, no_groups, name);

  if (found->len == 0 && kind == GB_RECORD_PART && strchr (name, '/') != NULL)
    {
      g_auto (GStrv) path = g_strsplit (name, "/", -1);
      guint last = g_strv_length (path) - 1;
      g_autofree char *own = g_steal_pointer (&path[last]);

      g_ptr_array_unref (found);
      found = find_in_groups (boat, kind, path, own);
    }
  return found;
}

/* "“6 mm ply”, “9 mm ply” and 3 more" */
static char *
list_names (const GbBoat *boat, GbRecordKind kind)
{
  const GPtrArray *all = gb_boat_all (boat, kind);
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < MIN (all->len, MOST_SAID); i++)
    {
      g_autofree char *title = gb_record_dup_title (all->pdata[i]);

      g_string_append_printf (names, "%s“%s”", i > 0 ? ", " : "", title);
    }
  if (all->len > MOST_SAID)
    /* Translators: at the end of a list of names. */
    g_string_append_printf (names, ngettext (" and %u more", " and %u more", all->len - MOST_SAID),
                            all->len - MOST_SAID);
  return g_string_free (names, FALSE);
}

static gboolean
refuse_unknown (const GbBoat *boat, const GbField *field, const char *name, GError **error)
{
  g_autofree char *names = list_names (boat, field->refers_to);

  if (field->refers_to == GB_RECORD_MATERIAL)
    g_set_error (
      error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
      _ ("%s: “%s” is neither in this build nor in the table of materials. Add it to the materials first."),
      _ (field->label), name);
  else if (*names == '\0')
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                 _ ("%s: nothing is called “%s”; there is none in this build yet."), _ (field->label), name);
  else
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("%s: nothing is called “%s”. There is %s."),
                 _ (field->label), name, names);
  return FALSE;
}

static gboolean
refuse_ambiguous (const GbField *field, const char *name, guint n, GError **error)
{
  if (field->refers_to == GB_RECORD_PART)
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                 _ ("%s: %u parts are called “%s”; put the group's name and a slash before it."),
                 _ (field->label), n, name);
  else
    g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                 _ ("%s: %u are called “%s”; give them different names first."), _ (field->label), n, name);
  return FALSE;
}

/* A material of the catalogue or a budget head called @name is made in @edit. 0 where neither can be. */
static gint64
make (GbEdit *edit, GbRecordKind kind, const char *name)
{
  GbRecord *record = NULL;

  if (kind == GB_RECORD_MATERIAL && gb_catalogue_find (name) != NULL)
    record = gb_record_copy (&gb_catalogue_find (name)->rec);
  else if (kind == GB_RECORD_CATEGORY)
    {
      record = gb_record_new (kind);
      ((GbCategory *) record)->name = g_strdup (name);
    }
  return record != NULL ? gb_edit_put (edit, record) : 0;
}

/* The whole boat can be weighed, and only there is it a thing to name. */
static gboolean
means_the_boat (const GbBoat *boat, const GbField *field, const char *name)
{
  g_autofree char *folded = fold (name);
  g_autofree char *label = fold (_ ("The whole boat"));

  return field->kind == GB_RECORD_WEIGHING && field->refers_to == GB_RECORD_PART
         && (strcmp (folded, label) == 0 || is_called (&gb_boat_build (boat)->rec, folded));
}

gboolean
gb_names_read (const GbBoat *boat, const GbField *field, const char *text, GbEdit *edit, gint64 *id,
               GError **error)
{
  g_autofree char *name = g_strstrip (g_strdup (text));
  g_autoptr (GPtrArray) found = NULL;

  *id = 0;
  if (*name == '\0')
    return TRUE;
  if (!g_utf8_validate (name, -1, NULL))
    {
      g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE,
                   _ ("%s: this text is not UTF-8; plain text is expected."), _ (field->label));
      return FALSE;
    }
  found = gb_names_find (boat, field->refers_to, name);
  if (found->len > 1)
    return refuse_ambiguous (field, name, found->len, error);
  if (found->len == 1)
    *id = ((GbRecord *) found->pdata[0])->id;
  else if (!means_the_boat (boat, field, name))
    {
      *id = make (edit, field->refers_to, name);
      return *id != 0 || refuse_unknown (boat, field, name, error);
    }
  return TRUE;
}

char *
gb_project_display (GbProject *self, const GbField *field, const GbRecord *record)
{
  const GbRecord *meant;

  if (field->dim != GB_DIM_REF)
    return gb_field_display (field, record, gb_boat_build (self->boat));
  meant = gb_boat_get (self->boat, field->refers_to, gb_field_get_integer (field, record));
  if (meant != NULL)
    return gb_record_dup_title (meant);
  return g_strdup (record->kind == GB_RECORD_WEIGHING ? _ ("The whole boat") : "");
}
