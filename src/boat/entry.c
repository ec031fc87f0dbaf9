/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-entry"

/* Entry and display of whole fields. What was typed is kept as it was, tidied and with its unit written out,
 * so that a later change of the build's units does not change what it means; it is shown as long as it still
 * gives the value that is held. */

#include "quantity.h"

#include "expression.h"
#include "fields-private.h"
#include "money.h"
#include "quantity-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Entry -------------------------------------------------------------------------------------------------- */

/* What follows the number in @text, in lower case, without spaces and raised digits: "m2/l" of "12 m²/l". */
static char *
unit_part (const char *text)
{
  GString *unit = g_string_new (NULL);

  for (const char *p = text + strspn (text, "+-.0123456789 "); *p != '\0'; p++)
    if (*p != ' ')
      g_string_append_c (unit, g_ascii_tolower (*p));
  g_string_replace (unit, "²", "2", 0);
  g_string_replace (unit, "³", "3", 0);
  return g_string_free (unit, FALSE);
}

/* TRUE if what was typed says more than the display of its value does. */
static gboolean
says_more (const GbExpression *expression, GbDimension dim, GbUnits units)
{
  g_autofree char *shown = gb_quantity_format (expression->value, dim, units);
  g_autofree char *plain = gb_entry_tidy (shown);
  g_autofree char *unit = unit_part (expression->text);
  double back;

  /* (The display of 66 in, 5' 6", may differ from it in the last bit.) */
  if (strcmp (plain, expression->text) == 0)
    return FALSE;
  return !expression->is_plain || strcmp (unit, gb_dimension_shown (dim, units)->entry) != 0
         || !gb_quantity_parse (shown, dim, units, &back, NULL)
         || fabs (back - expression->value) > 1e-14 * fabs (back);
}

static gboolean
parse_real (const GbField *field, const char *text, const GbBuild *build, GbValue *value, GError **error)
{
  g_auto (GbExpression) expression = { 0 };
  GbUnits units = (GbUnits) build->units;

  if (!gb_expression_read (text, field->dim, units, &expression, error))
    return FALSE;
  value->real = expression.value;
  if (says_more (&expression, field->dim, units))
    value->typed = g_steal_pointer (&expression.text);
  return TRUE;
}

static gboolean
parse_money (const char *text, const GbBuild *build, GbValue *value, GError **error)
{
  g_autofree char *sum = NULL;

  if (!gb_money_parse (text, build->currency, &value->integer, error))
    return FALSE;
  sum = gb_money_strip (text, build->currency);
  if (strpbrk (sum, "*/()") != NULL || strpbrk (sum + 1, "+-") != NULL)
    value->typed = g_steal_pointer (&sum);
  return TRUE;
}

static gboolean
same_word (const char *a, const char *b)
{
  g_autofree char *folded_a = g_utf8_casefold (a, -1);
  g_autofree char *folded_b = g_utf8_casefold (b, -1);

  return strcmp (folded_a, folded_b) == 0;
}

static gboolean
parse_choice (const GbField *field, const char *text, GbValue *value, GError **error)
{
  g_autoptr (GString) list = g_string_new (NULL);
  g_autofree char *quote = gb_entry_quote (text);

  for (const GbChoice *choice = field->choices; choice->name != NULL; choice++)
    {
      if (same_word (text, choice->name) || same_word (text, choice->label)
          || same_word (text, _ (choice->label)))
        {
          value->integer = choice - field->choices;
          return TRUE;
        }
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", _ (choice->label));
    }
  g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX, _ ("“%s” is none of these: %s."), quote,
               list->str);
  return FALSE;
}

static gboolean
parse_flag (const char *text, GbValue *value, GError **error)
{
  const char *const yes[] = { "yes", "true", "1", N_ ("Yes") };
  const char *const no[] = { "no", "false", "0", N_ ("No") };
  g_autofree char *quote = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (yes); i++)
    if (same_word (text, yes[i]) || same_word (text, _ (yes[i])))
      {
        value->integer = 1;
        return TRUE;
      }
    else if (same_word (text, no[i]) || same_word (text, _ (no[i])))
      {
        value->integer = 0;
        return TRUE;
      }
  quote = gb_entry_quote (text);
  g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX, _ ("“%s” is neither yes nor no."), quote);
  return FALSE;
}

static gboolean
parse_stripped (const GbField *field, const char *text, const GbBuild *build, GbValue *value, GError **error)
{
  switch (field->dim)
    {
    case GB_DIM_TEXT:
    case GB_DIM_NOTE:
    case GB_DIM_OUTLINE:
      value->text = g_strdup (text);
      return TRUE;
    case GB_DIM_CHOICE:
      return parse_choice (field, text, value, error);
    case GB_DIM_FLAG:
      return parse_flag (text, value, error);
    case GB_DIM_DATE:
      return gb_date_parse (text, &value->integer, error);
    case GB_DIM_MONEY:
      return parse_money (text, build, value, error);
    case GB_DIM_REF:
      g_set_error_literal (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX, _ ("pick one from the list."));
      return FALSE;
    default:
      return parse_real (field, text, build, value, error);
    }
}

/* What an empty entry, or the dash that unknown is shown as, stands for. */
static GbValue
empty_value (const GbField *field)
{
  GbValue value = gb_field_unknown (field);

  if (field->dim == GB_DIM_CHOICE)
    value.integer = (gint64) field->start;
  return value;
}

gboolean
gb_field_parse (const GbField *field, const char *text, const GbBuild *build, GbValue *value, GError **error)
{
  g_auto (GbValue) read = empty_value (field);
  g_autofree char *stripped = NULL;
  gboolean is_text = read.storage == GB_STORAGE_TEXT;

  /* Text that is not UTF-8 is refused further on, by each kind of value in its own words. */
  stripped = g_strstrip (g_strdup (text));
  if (*stripped != '\0' && (is_text || strcmp (stripped, "–") != 0))
    {
      if (!g_utf8_validate (stripped, -1, NULL))
        {
          g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                       _ ("%s: this text is not UTF-8; plain text is expected."), _ (field->label));
          return FALSE;
        }
      if (!parse_stripped (field, stripped, build, &read, error))
        {
          g_prefix_error (error, "%s: ", _ (field->label));
          return FALSE;
        }
    }
  if (!gb_field_check_in (field, &read, (GbUnits) build->units, error))
    return FALSE;
  *value = read;
  read = (GbValue){ .storage = read.storage };
  return TRUE;
}

/* Display ------------------------------------------------------------------------------------------------ */

/* What was typed, if that still gives what @record holds; else NULL. @is_sum is set to whether it is more
 * than a measure. */
static char *
typed_if_true (const GbField *field, const GbRecord *record, const GbBuild *build, gboolean *is_sum)
{
  g_autofree char *typed = gb_typed_get (record, field->name);
  g_auto (GbExpression) expression = { 0 };
  gint64 amount;

  if (typed == NULL)
    return NULL;
  *is_sum = TRUE;
  if (field->dim == GB_DIM_MONEY)
    {
      if (!gb_money_parse (typed, build->currency, &amount, NULL)
          || amount != gb_field_get_integer (field, record))
        return NULL;
    }
  else
    {
      if (gb_field_storage (field) != GB_STORAGE_REAL
          || !gb_expression_read (typed, field->dim, (GbUnits) build->units, &expression, NULL)
          || expression.value != gb_field_get_real (field, record))
        return NULL;
      *is_sum = expression.is_sum;
    }
  return gb_with_decimal_sign (typed);
}

static char *
dup_or_empty (const char *text)
{
  return g_strdup (text != NULL ? text : "");
}

static char *
display_integer (const GbField *field, gint64 v, const GbBuild *build)
{
  switch (field->dim)
    {
    case GB_DIM_CHOICE:
      return g_strdup (v >= 0 && v < gb_field_n_choices (field) ? _ (field->choices[v].label) : "");
    case GB_DIM_FLAG:
      return g_strdup (v != 0 ? _ ("Yes") : _ ("No"));
    case GB_DIM_DATE:
      return gb_date_format (v);
    case GB_DIM_MONEY:
      return gb_money_format (v, build->currency);
    default:
      return g_strdup ("");
    }
}

char *
gb_field_display (const GbField *field, const GbRecord *record, const GbBuild *build)
{
  gboolean is_sum;
  g_autofree char *typed = typed_if_true (field, record, build, &is_sum);

  if (typed != NULL && !is_sum)
    return g_steal_pointer (&typed);
  switch (gb_field_storage (field))
    {
    case GB_STORAGE_TEXT:
      return dup_or_empty (gb_field_get_text (field, record));
    case GB_STORAGE_INTEGER:
      return display_integer (field, gb_field_get_integer (field, record), build);
    case GB_STORAGE_REAL:
    default:
      return gb_quantity_format (gb_field_get_real (field, record), field->dim, (GbUnits) build->units);
    }
}

char *
gb_field_edit_text (const GbField *field, const GbRecord *record, const GbBuild *build)
{
  gboolean is_sum;
  char *typed = typed_if_true (field, record, build, &is_sum);
  g_autofree char *plain = NULL;

  if (typed != NULL)
    return typed;
  if (gb_field_storage (field) == GB_STORAGE_REAL)
    return gb_quantity_format_exact (gb_field_get_real (field, record), field->dim, (GbUnits) build->units);
  if (field->dim != GB_DIM_MONEY)
    return gb_field_display (field, record, build);
  plain = gb_money_format_plain (gb_field_get_integer (field, record), build->currency);
  return gb_with_decimal_sign (plain);
}
