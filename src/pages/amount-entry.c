/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-amount-entry"

#include "amount-entry.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "boat/quantity.h"
#include "project/words.h"

#define DASH "–"

/* The names of the fields that the take-off asks for, in the order of entry. */
static const char *const *
slots (const GbPart *part)
{
  static const char *const sides[] = { "length", "width", "thickness", NULL };
  static const char *const drawn[] = { "thickness", NULL };
  static const char *const by_area[] = { "area", "thickness", NULL };
  static const char *const round[] = { "length", "diameter", NULL };
  static const char *const tube[] = { "length", "diameter", "wall", NULL };
  static const char *const linear[] = { "length", "linear_mass", NULL };
  static const char *const by_volume[] = { "volume", NULL };
  static const char *const coats[] = { "coats", NULL };
  static const char *const count[] = { "quantity", NULL };
  static const char *const lump[] = { "mass", NULL };

  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
      return part->outline != NULL ? drawn : !isnan (part->area) ? by_area : sides;
    case GB_TAKEOFF_LENGTH:
      return part->section == GB_SECTION_ROUND    ? round
             : part->section == GB_SECTION_TUBE   ? tube
             : part->section == GB_SECTION_LINEAR ? linear
                                                  : sides;
    case GB_TAKEOFF_BLOCK:
      return !isnan (part->volume) ? by_volume : sides;
    case GB_TAKEOFF_SKIN:
      return drawn;
    case GB_TAKEOFF_COATING:
      return coats;
    case GB_TAKEOFF_LUMP:
      return lump;
    case GB_TAKEOFF_COUNT:
    default:
      return count;
    }
}

/* What stands in one slot: without its unit where a bare number means the same. */
static char *
slot_text (const GbPart *part, const char *name, const GbBuild *build)
{
  const GbField *field = gb_field (GB_RECORD_PART, name);
  g_autofree char *text = gb_field_edit_text (field, &part->rec, build);
  g_autofree char *typed = gb_typed_get (&part->rec, name);
  g_autofree char *unit = g_strconcat (" ", gb_quantity_unit (field->dim, build->units), NULL);

  if (*text == '\0')
    return g_strdup (DASH);
  if (typed == NULL && g_str_has_suffix (text, unit))
    text[strlen (text) - strlen (unit)] = '\0';
  return g_steal_pointer (&text);
}

char *
gb_amount_edit_text (GbProject *project, const GbPart *part)
{
  const GbBuild *build = gb_project_get_build (project);
  const char *const *names = slots (part);
  g_autoptr (GPtrArray) pieces = g_ptr_array_new_with_free_func (g_free);
  guint known = 0;

  if (part->kind == GB_KIND_GROUP)
    return NULL;
  if (part->quantity != 1 && strcmp (names[0], "quantity") != 0)
    g_ptr_array_add (pieces, slot_text (part, "quantity", build));
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_ptr_array_add (pieces, slot_text (part, names[i], build));
      if (strcmp (g_ptr_array_index (pieces, pieces->len - 1), DASH) != 0)
        known = pieces->len;
    }
  /* A part without its first size is new: what it took over from the part above stays unless it is typed. */
  if (gb_field_is_unknown (gb_field (GB_RECORD_PART, names[0]), &part->rec))
    return g_strdup ("");
  g_ptr_array_set_size (pieces, (int) known);
  g_ptr_array_add (pieces, NULL);
  return g_strjoinv (" x ", (char **) pieces->pdata);
}

/* The pieces between the signs. A sign is an x that stands by itself or between figures, not one in a word.
 */
static GPtrArray *
split (const char *text)
{
  GPtrArray *pieces = g_ptr_array_new_with_free_func (g_free);
  const char *start = text;

  for (const char *p = text;; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c != '\0' && c != 'x' && c != 'X' && c != 0xd7)
        continue;
      g_ptr_array_add (pieces, g_strstrip (g_strndup (start, (gsize) (p - start))));
      if (c == '\0')
        return pieces;
      start = g_utf8_next_char (p);
    }
}

static gboolean
is_dash (const char *piece)
{
  return strcmp (piece, "-") == 0 || strcmp (piece, DASH) == 0;
}

/* "length x width x thickness", for the sentence that says what is expected. */
static char *
expected (const char *const *names)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; names[i] != NULL; i++)
    g_ptr_array_add (labels, g_utf8_strdown (_ (gb_field (GB_RECORD_PART, names[i])->label), -1));
  g_ptr_array_add (labels, NULL);
  return g_strjoinv (" x ", (char **) labels->pdata);
}

static gboolean
set_slot (GbPart *part, const char *name, const char *piece, const GbBuild *build, GError **error)
{
  const GbField *field = gb_field (GB_RECORD_PART, name);
  g_auto (GbValue) value = { 0 };

  if (is_dash (piece))
    return TRUE;
  if (!gb_field_parse (field, piece, build, &value, error))
    return FALSE;
  gb_field_set (field, &part->rec, &value);
  return TRUE;
}

static gboolean
read_into (GbPart *part, const GPtrArray *pieces, const GbBuild *build, GError **error)
{
  const char *const *names = slots (part);
  guint n = g_strv_length ((char **) names);
  guint first = pieces->len == n + 1 && strcmp (names[0], "quantity") != 0 ? 1 : 0;

  if (pieces->len > n + first)
    {
      g_autofree char *order = expected (names);

      /* Translators: %s is a list such as "length x width x thickness". */
      g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                   _ ("Too many sizes; %s is expected, with the quantity before it if you like."), order);
      return FALSE;
    }
  if (first == 1 && !set_slot (part, "quantity", pieces->pdata[0], build, error))
    return FALSE;
  for (guint i = first; i < pieces->len; i++)
    if (!set_slot (part, names[i - first], pieces->pdata[i], build, error))
      return FALSE;
  return TRUE;
}

/* Those of @ids that have an amount. */
static GPtrArray *
parts_of (GbProject *project, const gint64 *ids, guint n_ids)
{
  GPtrArray *parts = g_ptr_array_new ();

  for (guint i = 0; i < n_ids; i++)
    {
      const GbPart *part = gb_boat_part (gb_project_get_boat (project), ids[i]);

      if (part != NULL && part->kind == GB_KIND_PART)
        g_ptr_array_add (parts, (gpointer) part);
    }
  return parts;
}

gboolean
gb_amount_enter (GbProject *project, const gint64 *ids, guint n_ids, const char *text, GError **error)
{
  g_autoptr (GPtrArray) pieces = split (text);
  g_autoptr (GPtrArray) parts = parts_of (project, ids, n_ids);
  g_autofree char *records = gb_words_records (parts);
  /* Translators: after "Undo:"; %s is a part, or "3 parts". */
  g_autofree char *words = g_strdup_printf (C_ ("undo", "sizes of %s"), records);
  gint64 first = parts->len > 0 ? ((const GbRecord *) parts->pdata[0])->id : 0;
  g_autoptr (GbEdit) edit = gb_edit_new (words, GB_RECORD_PART, first, "length");

  for (guint i = 0; i < parts->len; i++)
    {
      g_autoptr (GbRecord) draft = gb_record_copy (parts->pdata[i]);

      if (!read_into ((GbPart *) draft, pieces, gb_project_get_build (project), error))
        return FALSE;
      gb_edit_put (edit, g_steal_pointer (&draft));
    }
  return gb_project_apply (project, g_steal_pointer (&edit), error);
}
