/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-text-form"

/* One field of the text form: what may stand behind its name, and what is said when something else does. */

#include "text-form-private.h"

#include "boat/expression.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (gb-text-form-error-quark, gb_text_form_error)

G_GNUC_PRINTF (2, 3)
static gboolean
fail (GError **error, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  g_propagate_error (error, g_error_new_valist (GB_TEXT_FORM_ERROR, GB_TEXT_FORM_ERROR_FIELD, format, args));
  va_end (args);
  return FALSE;
}

static char *
list_choices (const GbField *field)
{
  GString *list = g_string_new (NULL);

  for (const GbChoice *choice = field->choices; choice->name != NULL; choice++)
    g_string_append_printf (list, "%s\"%s\"", list->len > 0 ? ", " : "", choice->name);
  return g_string_free (list, FALSE);
}

/* Nothing that @field could hold stands there. */
static gboolean
fail_for_type (const GbField *field, GError **error)
{
  g_autofree char *choices = NULL;

  switch (field->dim)
    {
    case GB_DIM_TEXT:
    case GB_DIM_NOTE:
    case GB_DIM_OUTLINE:
      return fail (error, _ ("a text in quotes is expected."));
    case GB_DIM_CHOICE:
      choices = list_choices (field);
      return fail (error, _ ("one of these is expected: %s."), choices);
    case GB_DIM_FLAG:
      return fail (error, _ ("true or false is expected."));
    case GB_DIM_REF:
      return fail (error, _ ("the id or the name of another record is expected."));
    case GB_DIM_DATE:
      return fail (error, _ ("a date is expected, like \"2026-03-14\"."));
    case GB_DIM_MONEY:
      return fail (error, _ ("a sum of money is expected, like \"28.40\"."));
    case GB_DIM_COUNT:
      return fail (error, _ ("a number is expected, like 2."));
    default:
      return fail (error, _ ("a number in SI units is expected, or a text with a unit like \"%s\"."),
                   gb_dimension_shown (field->dim, GB_UNITS_METRIC)->example);
    }
}

gboolean
gb_text_form_quantity (const GbField *field, const char *text, double *value, char **typed, GError **error)
{
  g_auto (GbExpression) metric = { 0 };
  g_auto (GbExpression) feet = { 0 };
  g_autofree char *quote = NULL;

  if (!gb_expression_read (text, field->dim, GB_UNITS_METRIC, &metric, error))
    return FALSE;
  if (!gb_expression_read (text, field->dim, GB_UNITS_FEET, &feet, NULL) || metric.value != feet.value)
    {
      quote = gb_entry_quote (text);
      return fail (error, _ ("\"%s\" leaves a unit open; a text like \"%s\" is expected, or a number in SI units."), quote,
                   gb_dimension_shown (field->dim, GB_UNITS_METRIC)->example);
    }
  *value = metric.value;
  *typed = g_steal_pointer (&metric.text);
  return TRUE;
}

static gboolean
read_real (const GbField *field, const GbJson *json, GbValue *value, GError **error)
{
  if (json->type == GB_JSON_STRING)
    return gb_text_form_quantity (field, json->text, &value->real, &value->typed, error);
  if (json->type != GB_JSON_NUMBER)
    return fail_for_type (field, error);
  value->real = g_ascii_strtod (json->text, NULL);
  return TRUE;
}

static gboolean
read_choice (const GbField *field, const GbJson *json, GbValue *value, GError **error)
{
  value->integer = json->type == GB_JSON_STRING ? gb_field_choice (field, json->text) : -1;
  return value->integer >= 0 || fail_for_type (field, error);
}

static gboolean
read_flag (const GbField *field, const GbJson *json, GbValue *value, GError **error)
{
  value->integer = json->type == GB_JSON_TRUE;
  return json->type == GB_JSON_TRUE || json->type == GB_JSON_FALSE || fail_for_type (field, error);
}

/* Year, month, day and nothing else, whatever the locale. */
static gboolean
read_date (const GbField *field, const GbJson *json, GbValue *value, GError **error)
{
  const char *const shape = "dddd-dd-dd";
  gsize i = 0;

  if (json->type != GB_JSON_STRING)
    return fail_for_type (field, error);
  while (shape[i] != '\0' && (shape[i] == 'd' ? g_ascii_isdigit (json->text[i]) : json->text[i] == '-'))
    i++;
  if (shape[i] != '\0' || json->text[i] != '\0' || !gb_date_parse (json->text, &value->integer, NULL))
    return fail_for_type (field, error);
  return TRUE;
}

static gboolean
read_money (const GbField *field, const GbJson *json, const GbBuild *build, GbValue *value, GError **error)
{
  if ((json->type != GB_JSON_STRING && json->type != GB_JSON_NUMBER) || *json->text == '\0')
    return fail_for_type (field, error);
  return gb_field_parse (field, json->text, build, value, error);
}

static gboolean
read_text (const GbField *field, const GbJson *json, GbValue *value, GError **error)
{
  if (json->type != GB_JSON_STRING)
    return fail_for_type (field, error);
  value->text = g_strdup (json->text);
  return TRUE;
}

static gboolean
read_value (const GbField *field, const GbJson *json, const GbBuild *build, GbValue *value, GError **error)
{
  switch (field->dim)
    {
    case GB_DIM_TEXT:
    case GB_DIM_NOTE:
    case GB_DIM_OUTLINE:
      return read_text (field, json, value, error);
    case GB_DIM_CHOICE:
      return read_choice (field, json, value, error);
    case GB_DIM_FLAG:
      return read_flag (field, json, value, error);
    case GB_DIM_DATE:
      return read_date (field, json, value, error);
    case GB_DIM_MONEY:
      return read_money (field, json, build, value, error);
    case GB_DIM_REF:
      return fail_for_type (field, error);
    default:
      return read_real (field, json, value, error);
    }
}

/* A sentence of the field's own begins with its label; in the text form it goes by its name. */
static void
drop_label (const GbField *field, GError *error)
{
  g_autofree char *prefix = g_strconcat (_ (field->label), ": ", NULL);

  if (g_str_has_prefix (error->message, prefix))
    {
      char *rest = g_strdup (error->message + strlen (prefix));

      g_free (error->message);
      error->message = rest;
    }
}

gboolean
gb_text_form_read_field (const GbField *field, const GbJson *json, const GbBuild *build, GbRecord *record, GError **error)
{
  g_auto (GbValue) value = gb_field_unknown (field);
  g_autoptr (GError) reason = NULL;
  gboolean may_be_unknown = field->dim != GB_DIM_CHOICE && field->dim != GB_DIM_FLAG;

  if (json->type == GB_JSON_NULL)
    {
      if (!may_be_unknown)
        return fail_for_type (field, error);
    }
  else if (!read_value (field, json, build, &value, &reason) || !gb_field_check (field, &value, &reason))
    {
      drop_label (field, reason);
      g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  gb_field_set (field, record, &value);
  return TRUE;
}
