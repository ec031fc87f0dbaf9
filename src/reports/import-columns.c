/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-columns"

#include "import-columns.h"

#include "boat/money.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const GbField group_field = {
  .kind = GB_RECORD_PART,
  .name = "group",
  .dim = GB_DIM_TEXT,
  .label = N_ ("Group"),
  .help = N_ ("The groups that it is in, from the outside in: Hull/Frames."),
  .max = 10000,
  .refers_to = GB_N_RECORDS,
};

const GbField *
gb_import_group_field (void)
{
  return &group_field;
}

static GPtrArray *
list_fields (GbRecordKind kind)
{
  const GbRecordType *type = gb_record_type (kind);
  GPtrArray *fields = g_ptr_array_new ();

  for (guint i = 0; i < type->n_fields; i++)
    g_ptr_array_add (fields, (gpointer) &type->fields[i]);
  if (kind == GB_RECORD_PART)
    g_ptr_array_insert (fields, 1, (gpointer) &group_field);
  if (kind == GB_RECORD_LINE)
    {
      g_ptr_array_insert (fields, 0, (gpointer) gb_field (GB_RECORD_PURCHASE, "date"));
      g_ptr_array_insert (fields, 1, (gpointer) gb_field (GB_RECORD_PURCHASE, "supplier"));
      g_ptr_array_add (fields, (gpointer) gb_field (GB_RECORD_PURCHASE, "notes"));
    }
  return fields;
}

const GPtrArray *
gb_import_fields_of (GbRecordKind kind)
{
  static GPtrArray *parts, *lines;

  if (g_once_init_enter (&lines))
    {
      parts = list_fields (GB_RECORD_PART);
      g_once_init_leave (&lines, list_fields (GB_RECORD_LINE));
    }
  return kind == GB_RECORD_PART ? parts : lines;
}

/* Words ------------------------------------------------------------------------------------------------------------- */

/* What people call these columns. Translated as a whole, so that each language has its own list. */
static const struct
{
  GbRecordKind kind;
  const char *field, *words;
} synonyms[] = {
  /* Translators: headings of columns in spreadsheets for the name of a part, with | between them. */
  { GB_RECORD_PART, "name", N_ ("part|item|description|component|part name") },
  /* Translators: headings for the group that a part is in. */
  { GB_RECORD_PART, "group", N_ ("assembly|group path|belongs to") },
  /* Translators: headings for how many there are. */
  { GB_RECORD_PART, "quantity", N_ ("qty|no|number|count|pcs|pieces|off") },
  { GB_RECORD_PART, "length", N_ ("len|l") },
  { GB_RECORD_PART, "width", N_ ("breadth|w|b") },
  { GB_RECORD_PART, "thickness", N_ ("thk|thick|t") },
  { GB_RECORD_PART, "diameter", N_ ("dia|ø") },
  { GB_RECORD_PART, "mass", N_ ("weight|wt") },
  { GB_RECORD_PART, "unit_mass", N_ ("unit weight|weight each|mass each") },
  { GB_RECORD_PART, "x", N_ ("lcg|centre x|x cg") },
  { GB_RECORD_PART, "y", N_ ("tcg|centre y|y cg") },
  { GB_RECORD_PART, "z", N_ ("vcg|centre z|z cg") },
  { GB_RECORD_PART, "price", N_ ("cost|cost each|unit price|price each|price") },
  { GB_RECORD_PART, "state", N_ ("status") },
  { GB_RECORD_PART, "category", N_ ("head|budget") },
  { GB_RECORD_PART, "notes", N_ ("remark|remarks|comment|comments|note") },
  /* Translators: headings in receipts for what was bought. */
  { GB_RECORD_LINE, "what", N_ ("item|description|article|name") },
  { GB_RECORD_LINE, "quantity", N_ ("qty|no|number|count|pcs|pieces") },
  { GB_RECORD_LINE, "price", N_ ("unit price|price each|each|cost each") },
  { GB_RECORD_LINE, "discount", N_ ("rebate|reduction") },
  { GB_RECORD_LINE, "category", N_ ("head|budget") },
  { GB_RECORD_PURCHASE, "supplier", N_ ("shop|store|vendor|seller|bought from") },
  { GB_RECORD_PURCHASE, "date", N_ ("day|bought on|receipt date") },
  { GB_RECORD_PURCHASE, "notes", N_ ("remark|remarks|comment|comments|note") },
};

/* Lower case, with one space for any run of white space and of _ - . : and none at the ends. */
static char *
fold (const char *text)
{
  g_autofree char *lower = g_utf8_casefold (text, -1);
  GString *folded = g_string_new (NULL);

  for (const char *p = lower; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (!g_unichar_isspace (c) && strchr ("_-.:", *p) == NULL)
        g_string_append_unichar (folded, c);
      else if (folded->len > 0 && folded->str[folded->len - 1] != ' ')
        g_string_append_c (folded, ' ');
    }
  return g_strchomp (g_string_free (folded, FALSE));
}

static gboolean
same_word (const char *folded, const char *word)
{
  g_autofree char *own = fold (word);

  return strcmp (folded, own) == 0;
}

static gboolean
is_among (const char *folded, const char *words)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (guint i = 0; list[i] != NULL; i++)
    if (same_word (folded, list[i]))
      return TRUE;
  return FALSE;
}

static gboolean
is_synonym (const GbField *field, const char *folded)
{
  for (gsize i = 0; i < G_N_ELEMENTS (synonyms); i++)
    if (synonyms[i].kind == field->kind && strcmp (synonyms[i].field, field->name) == 0
        && (is_among (folded, synonyms[i].words) || is_among (folded, _ (synonyms[i].words))))
      return TRUE;
  return FALSE;
}

/* Names and labels go before synonyms: what one field is called is no other's synonym. */
static const GbField *
find_field (GbRecordKind kind, const char *words)
{
  const GPtrArray *fields = gb_import_fields_of (kind);
  g_autofree char *folded = fold (words);

  for (guint i = 0; i < fields->len; i++)
    {
      const GbField *field = fields->pdata[i];

      if (same_word (folded, field->name) || same_word (folded, field->label)
          || same_word (folded, _ (field->label)))
        return field;
    }
  for (guint i = 0; i < fields->len; i++)
    if (is_synonym (fields->pdata[i], folded))
      return fields->pdata[i];
  return NULL;
}

/* Units ------------------------------------------------------------------------------------------------------------- */

gboolean
gb_import_unit_fits (const GbField *field, const char *unit)
{
  g_autofree char *one = g_strconcat ("1 ", unit, NULL);
  g_autofree char *upper = g_ascii_strup (unit, -1);
  double value;

  if (field->dim == GB_DIM_MONEY)
    return gb_currency_is_valid (upper) || (g_utf8_strlen (unit, -1) == 1 && strstr ("€£$¥₹₩", unit) != NULL);
  return gb_field_storage (field) == GB_STORAGE_REAL
         && gb_quantity_parse (one, field->dim, GB_UNITS_METRIC, &value, NULL);
}

/* The field of @heading's first @length bytes, if what stands from @unit to @end is a unit for it, or may be
 * anything. */
static const GbField *
match_split (GbRecordKind kind,
             const char *heading,
             gsize length,
             const char *unit,
             const char *end,
             gboolean anything,
             char **found)
{
  g_autofree char *words = g_strndup (heading, length);
  g_autofree char *text = g_strstrip (g_strndup (unit, (gsize) (end - unit)));
  const GbField *field = find_field (kind, words);

  if (field == NULL)
    return NULL;
  if (*text != '\0' && gb_import_unit_fits (field, text))
    *found = g_steal_pointer (&text);
  else if (!anything)
    return NULL;
  return field;
}

/* "Thickness (mm)", "Thickness [mm]" */
static const GbField *
match_bracket (GbRecordKind kind, const char *heading, char **unit)
{
  const char *open = strpbrk (heading, "([");
  const char *close = open != NULL ? strpbrk (open, ")]") : NULL;

  if (close == NULL)
    return NULL;
  return match_split (kind, heading, (gsize) (open - heading), open + 1, close, TRUE, unit);
}

/* "mass, kg", "mass / kg", "mass in kg", "mass kg" */
static const GbField *
match_tail (GbRecordKind kind, const char *heading, char **unit)
{
  static const char *const marks[] = { ",", "/", " in ", " " };
  const char *end = heading + strlen (heading);

  for (gsize i = 0; i < G_N_ELEMENTS (marks); i++)
    {
      /* The first stroke: a unit may hold one itself, "density / kg/m3". */
      const char *mark = strcmp (marks[i], "/") == 0 ? strchr (heading, '/') : g_strrstr (heading, marks[i]);
      const GbField *field = NULL;

      if (mark != NULL)
        field = match_split (kind, heading, (gsize) (mark - heading), mark + strlen (marks[i]), end, FALSE,
                             unit);
      if (field != NULL)
        return field;
    }
  return NULL;
}

const GbField *
gb_import_match_heading (GbRecordKind kind, const char *heading, char **unit)
{
  const GbField *field = find_field (kind, heading);

  *unit = NULL;
  if (field == NULL)
    field = match_bracket (kind, heading, unit);
  if (field == NULL)
    field = match_tail (kind, heading, unit);
  return field;
}
