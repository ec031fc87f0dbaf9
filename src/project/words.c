/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LONGEST_TITLE 60

static const char *
count_format (GbRecordKind kind, guint n)
{
  switch (kind)
    {
    case GB_RECORD_CATEGORY:
      return ngettext ("%u budget head", "%u budget heads", n);
    case GB_RECORD_MATERIAL:
      return ngettext ("%u material", "%u materials", n);
    case GB_RECORD_SAMPLE:
      return ngettext ("%u sample", "%u samples", n);
    case GB_RECORD_STOCK:
      return ngettext ("%u entry of stock", "%u entries of stock", n);
    case GB_RECORD_HULL:
      return ngettext ("%u hull", "%u hulls", n);
    case GB_RECORD_STATION:
      return ngettext ("%u station", "%u stations", n);
    case GB_RECORD_OFFSET:
      return ngettext ("%u offset", "%u offsets", n);
    case GB_RECORD_OPENING:
      return ngettext ("%u opening", "%u openings", n);
    case GB_RECORD_CORNER:
      return ngettext ("%u corner", "%u corners", n);
    case GB_RECORD_PART:
      return ngettext ("%u part", "%u parts", n);
    case GB_RECORD_WEIGHING:
      return ngettext ("%u weighing", "%u weighings", n);
    case GB_RECORD_READING:
      return ngettext ("%u reading", "%u readings", n);
    case GB_RECORD_CONDITION:
      return ngettext ("%u condition", "%u conditions", n);
    case GB_RECORD_LOAD:
      return ngettext ("%u load", "%u loads", n);
    case GB_RECORD_INCLINING:
      return ngettext ("%u inclining test", "%u inclining tests", n);
    case GB_RECORD_SHIFT:
      return ngettext ("%u reading of heel", "%u readings of heel", n);
    case GB_RECORD_TUB:
      return ngettext ("%u test of the model", "%u tests of the model", n);
    case GB_RECORD_TUB_LOAD:
      return ngettext ("%u load of the model", "%u loads of the model", n);
    case GB_RECORD_PURCHASE:
      return ngettext ("%u purchase", "%u purchases", n);
    case GB_RECORD_LINE:
      return ngettext ("%u line", "%u lines", n);
    case GB_RECORD_BUILD:
    default:
      return ngettext ("%u build", "%u builds", n);
    }
}

char *
gb_words_count (GbRecordKind kind, guint n)
{
  return g_strdup_printf (count_format (kind, n), n);
}

char *
gb_words_title (const GbRecord *record)
{
  g_autofree char *title = gb_record_dup_title (record);
  g_autofree char *start = NULL;

  if (g_utf8_strlen (title, -1) <= LONGEST_TITLE)
    return g_steal_pointer (&title);
  start = g_utf8_substring (title, 0, LONGEST_TITLE - 1);
  return g_strconcat (start, "…", NULL);
}

char *
gb_words_records (const GPtrArray *records)
{
  if (records->len == 1)
    return gb_words_title (records->pdata[0]);
  return gb_words_count (records->len > 0 ? ((const GbRecord *) records->pdata[0])->kind : GB_RECORD_PART,
                         records->len);
}

/* A label as it stands within a sentence. */
static char *
label_inside (const char *label)
{
  g_autofree char *first = NULL;

  /* Translators: whether a field's label begins with a small letter within a sentence ("thickness of Side
   * panel"). Translate as "no" if your language writes it as it stands. */
  if (strcmp (C_ ("labels begin with a small letter", "yes"), "yes") != 0)
    return g_strdup (label);
  first = g_utf8_strdown (label, g_utf8_next_char (label) - label);
  return g_strconcat (first, g_utf8_next_char (label), NULL);
}

char *
gb_words_set (const GbField *field, const GPtrArray *records)
{
  g_autofree char *label = label_inside (_ (field->label));
  g_autofree char *set = gb_words_records (records);

  /* Translators: after "Undo:". A field and what it belongs to: "thickness of Side panel", "material of 3
   * parts". */
  return g_strdup_printf (C_ ("undo", "%1$s of %2$s"), label, set);
}

char *
gb_words_add (const GbRecord *draft)
{
  g_autofree char *label = label_inside (_ (gb_record_type (draft->kind)->label));
  g_autofree char *title = gb_words_title (draft);

  if (draft->kind == GB_RECORD_PART && ((const GbPart *) draft)->kind == GB_KIND_GROUP)
    /* Translators: after "Undo:". */
    return g_strdup_printf (C_ ("undo", "new group %s"), title);
  if (strcmp (title, _ (gb_record_type (draft->kind)->label)) == 0)
    /* Translators: after "Undo:". Something without a name: "new weighing". */
    return g_strdup_printf (C_ ("undo", "new %s"), label);
  /* Translators: after "Undo:". What it is and its name: "new part Bottom". */
  return g_strdup_printf (C_ ("undo", "new %1$s %2$s"), label, title);
}

/* @format has one %s for what it was done to. */
static char *
words_for (const char *format, const GPtrArray *records)
{
  g_autofree char *what = gb_words_records (records);

  return g_strdup_printf (format, what);
}

char *
gb_words_remove (const GPtrArray *records)
{
  /* Translators: after "Undo:". "deletion of 3 parts" */
  return words_for (C_ ("undo", "deletion of %s"), records);
}

char *
gb_words_move (const GPtrArray *records)
{
  /* Translators: after "Undo:". "move of Frame 2" */
  return words_for (C_ ("undo", "move of %s"), records);
}

char *
gb_words_copy (const GPtrArray *records)
{
  /* Translators: after "Undo:". "copy of Frame 2" */
  return words_for (C_ ("undo", "copy of %s"), records);
}

char *
gb_words_paste (const GPtrArray *records)
{
  /* Translators: after "Undo:". "paste of 3 parts" */
  return words_for (C_ ("undo", "paste of %s"), records);
}
