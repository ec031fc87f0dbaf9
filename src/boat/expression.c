/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-expression"

#include "expression.h"

#include "expression-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define LONGEST_ENTRY 1000
#define DEEPEST_NEST 64

gboolean
gb_reader_fail (GbReader *reader, GbQuantityError code, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  if (reader->error == NULL)
    reader->error = g_error_new_valist (GB_QUANTITY_ERROR, code, format, args);
  va_end (args);
  return FALSE;
}

const char *
gb_reader_example (const GbReader *reader)
{
  return gb_dimension_shown (reader->dim, reader->units)->example;
}

void
gb_reader_skip_space (GbReader *reader)
{
  while (*reader->at == ' ')
    reader->at++;
}

gsize
gb_reader_place (const GbReader *reader)
{
  return (gsize) (reader->at - reader->text);
}

/* Sums --------------------------------------------------------------------------------------------------- */

static gboolean read_sum (GbReader *reader, GbTerm *term);

static gboolean
read_parentheses (GbReader *reader, GbTerm *term)
{
  if (reader->depth == DEEPEST_NEST)
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("Too many parentheses in one another."));
  reader->depth++;
  reader->at++;
  if (!read_sum (reader, term))
    return FALSE;
  reader->depth--;
  gb_reader_skip_space (reader);
  if (*reader->at != ')')
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A parenthesis is not closed."));
  reader->at++;
  reader->has_sum = TRUE;
  term->is_sum = FALSE;
  return TRUE;
}

/* @with_unit: whether a unit may follow at once. */
static gboolean
read_factor (GbReader *reader, gboolean with_unit, GbTerm *term)
{
  double sign = 1;

  *term = (GbTerm){ .bare = TRUE };
  for (gb_reader_skip_space (reader); *reader->at == '-' || *reader->at == '+'; gb_reader_skip_space (reader))
    sign *= *reader->at++ == '-' ? -1 : 1;
  if (*reader->at == '(')
    {
      if (!read_parentheses (reader, term))
        return FALSE;
    }
  else if (gb_starts_number (reader->at))
    {
      if (!gb_reader_number (reader, FALSE, &term->v))
        return FALSE;
    }
  else if (gb_reader_at_unit (reader))
    {
      g_autofree char *quote = gb_entry_quote (reader->at);
      gsize length;

      if (gb_unit_match (reader->at, &length) == NULL)
        return gb_reader_fail_for_unit (reader);
      return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                             _ ("A number is missing before “%s”; enter it as in %s."), quote,
                             gb_reader_example (reader));
    }
  else
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A number is missing; enter %s, such as %s."),
                           _ (gb_dimension_info (reader->dim)->label), gb_reader_example (reader));
  term->v *= sign;
  term->end = gb_reader_place (reader);
  return !with_unit || !term->bare || gb_reader_measure (reader, term);
}

static gboolean
refuse_temperatures (GbReader *reader, const GbTerm *a, const GbTerm *b)
{
  if (a->powers.temperature == 0 && b->powers.temperature == 0)
    return TRUE;
  return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                         _ ("A temperature is entered as one number, such as %s."),
                         gb_dimension_shown (GB_DIM_TEMPERATURE, reader->units)->example);
}

static gboolean
is_number (GbPowers powers)
{
  return gb_powers_equal (powers, (GbPowers){ 0 });
}

static gboolean
multiply (GbReader *reader, GbTerm *term, const GbTerm *factor, int sense)
{
  if (!refuse_temperatures (reader, term, factor))
    return FALSE;
  if (sense < 0 && factor->v == 0)
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_RANGE, _ ("Nothing can be divided by zero."));
  term->v = sense < 0 ? term->v / factor->v : term->v * factor->v;
  term->powers.length += sense * factor->powers.length;
  term->powers.mass += sense * factor->powers.mass;
  term->powers.angle += sense * factor->powers.angle;
  /* A number that waits for its unit still waits when taken some times, or a share of it. Where a share is
   * wanted, one of the two that has its unit is enough. */
  if (term->bare != factor->bare)
    term->bare = is_number (term->powers) && is_number (factor->powers)
                 && !is_number (gb_dimension_info (reader->dim)->powers);
  term->end = factor->end;
  return TRUE;
}

/* Behind a slash there may be a unit alone, as in kg/m3; and behind a quotient of bare numbers the unit of
 * the whole. */
static gboolean
read_division (GbReader *reader, GbTerm *term)
{
  GbTerm divisor = { .v = 1 };
  gboolean was_bare = term->bare;

  gb_reader_skip_space (reader);
  if (gb_reader_at_unit (reader))
    return gb_reader_unit (reader, &divisor) && multiply (reader, term, &divisor, -1);

  if (!read_factor (reader, !was_bare, &divisor) || !multiply (reader, term, &divisor, -1))
    return FALSE;
  /* (A quarter of an inch is a measure, half of 1220 mm a sum.) */
  if (!term->bare || fabs (term->v) >= 1)
    reader->has_sum = TRUE;
  return !term->bare || gb_reader_measure (reader, term);
}

/* Behind the sign between the two units of a moment, which may be left out: 28 kg m, 200 lb*ft. */
static const char *
behind_sign (const char *p)
{
  p += *p == '*';
  while (*p == ' ')
    p++;
  return p;
}

/* TRUE before the second unit of a moment. */
static gboolean
at_unit_of_moment (const GbReader *reader, const GbTerm *term)
{
  const char *p = behind_sign (reader->at);
  const GbUnit *unit;
  gsize length;

  unit = term->bare || gb_starts_number (p) ? NULL : gb_unit_match (p, &length);
  return unit != NULL
         && ((unit->powers.length == 1 && gb_powers_equal (term->powers, (GbPowers){ .mass = 1 }))
             || (unit->powers.mass == 1 && gb_powers_equal (term->powers, (GbPowers){ .length = 1 })));
}

static gboolean
read_unit_of_moment (GbReader *reader, GbTerm *term)
{
  GbTerm unit = { .v = 1 };

  reader->at = behind_sign (reader->at);
  return gb_reader_unit (reader, &unit) && multiply (reader, term, &unit, 1);
}

static gboolean
read_multiplication (GbReader *reader, GbTerm *term)
{
  GbTerm factor;

  reader->has_sum = TRUE;
  return read_factor (reader, TRUE, &factor) && multiply (reader, term, &factor, 1)
         && (!term->bare || gb_reader_measure (reader, term));
}

static gboolean
read_product (GbReader *reader, GbTerm *term)
{
  gsize start;
  gboolean read;

  gb_reader_skip_space (reader);
  start = gb_reader_place (reader);
  read = read_factor (reader, TRUE, term);
  while (read)
    {
      gb_reader_skip_space (reader);
      if (at_unit_of_moment (reader, term))
        read = read_unit_of_moment (reader, term);
      else if (*reader->at == '/')
        {
          reader->at++;
          read = read_division (reader, term);
        }
      else if (*reader->at == '*')
        {
          reader->at++;
          read = read_multiplication (reader, term);
        }
      else
        break;
    }
  if (!read)
    return FALSE;
  term->start = start;
  term->is_sum = FALSE;
  return TRUE;
}

/* Gives @term the unit that its dimension is shown in, and notes where to write it. Its value is then as it
 * is stored. */
static void
take_shown_unit (GbReader *reader, GbTerm *term, GbPowers powers)
{
  GbDimension dim = gb_powers_equal (powers, gb_dimension_info (reader->dim)->powers)
                        ? reader->dim
                        : gb_powers_dimension (powers);
  const GbShownUnit *shown;
  /* A unit goes with the last factor of a product, which a temperature does not multiply. */
  gboolean wrap = term->is_sum || (reader->has_sum && powers.temperature != 0);
  GbInsertion before = { term->start, "(" };
  GbInsertion after = { term->end, ")" };

  if (dim == GB_N_DIMS)
    return;
  shown = gb_dimension_shown (dim, reader->units);
  term->v = (term->v - shown->zero) * shown->num / shown->den;
  term->powers = powers;
  term->bare = FALSE;
  if (*shown->entry == '\0')
    return;
  if (wrap)
    {
      g_array_append_val (reader->insertions, before);
      g_array_append_val (reader->insertions, after);
    }
  after.text = shown->entry;
  g_array_append_val (reader->insertions, after);
}

static gboolean
fail_for_dimension (GbReader *reader, const GbTerm *term, GbPowers expected)
{
  g_autofree char *text = g_strndup (reader->text + term->start, term->end - term->start);
  g_autofree char *quote = gb_entry_quote (text);
  GbDimension is = gb_powers_dimension (term->powers);
  GbDimension wanted = gb_powers_equal (expected, gb_dimension_info (reader->dim)->powers)
                           ? reader->dim
                           : gb_powers_dimension (expected);
  const char *such_as;

  if (wanted == GB_N_DIMS)
    wanted = reader->dim;
  such_as = gb_dimension_shown (wanted, reader->units)->example;
  if (is == GB_N_DIMS)
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_DIMENSION, _ ("“%s” is not %s; enter it as in %s."),
                           quote, _ (gb_dimension_info (wanted)->label), such_as);
  /* Translators: “3 kg” is a mass; a length is expected, such as 38 mm. */
  return gb_reader_fail (reader, GB_QUANTITY_ERROR_DIMENSION, _ ("“%s” is %s; %s is expected, such as %s."),
                         quote, _ (gb_dimension_info (is)->label), _ (gb_dimension_info (wanted)->label),
                         such_as);
}

static gboolean
add (GbReader *reader, GbTerm *sum, GbTerm *term, int sense)
{
  if (!refuse_temperatures (reader, sum, term))
    return FALSE;
  if (sum->bare != term->bare)
    {
      GbTerm *bare = sum->bare ? sum : term;

      take_shown_unit (reader, bare, sum->bare ? term->powers : sum->powers);
      if (is_number (bare->powers))
        bare->v /= gb_dimension_info (reader->dim)->parts;
    }
  if (!gb_powers_equal (sum->powers, term->powers))
    {
      gboolean sum_is_odd = gb_powers_equal (term->powers, gb_dimension_info (reader->dim)->powers);

      return fail_for_dimension (reader, sum_is_odd ? sum : term, sum_is_odd ? term->powers : sum->powers);
    }
  sum->v += sense * term->v;
  sum->end = term->end;
  sum->is_sum = TRUE;
  return TRUE;
}

/* TRUE at the dash of 1-1/2, written without spaces: for the fractions that a rule is divided into. */
static gboolean
at_joining_dash (const GbReader *reader)
{
  const char *p = reader->at;
  const char *end;
  double fraction;
  int under;

  if (*p != '-' || p == reader->text || !g_ascii_isdigit (p[-1]))
    return FALSE;
  fraction = gb_slash_fraction (p + 1, &end);
  if (!(fraction > 0 && fraction < 1))
    return FALSE;
  under = atoi (strchr (p, '/') + 1);
  return under >= 2 && under <= 64 && (under & (under - 1)) == 0;
}

static gboolean
read_sum (GbReader *reader, GbTerm *sum)
{
  if (!read_product (reader, sum))
    return FALSE;
  for (gb_reader_skip_space (reader); *reader->at == '+' || *reader->at == '-'; gb_reader_skip_space (reader))
    {
      GbTerm term;
      int sense = *reader->at == '-' ? -1 : 1;

      if (at_joining_dash (reader))
        return gb_reader_fail_for_dash (reader);
      reader->at++;
      reader->has_sum = TRUE;
      if (!read_product (reader, &term) || !add (reader, sum, &term, sense))
        return FALSE;
    }
  return TRUE;
}

/* The whole ---------------------------------------------------------------------------------------------- */

static gboolean
fail_for_rest (GbReader *reader)
{
  if (*reader->at == ')')
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("A parenthesis is closed that was not opened."));
  if (gb_starts_number (reader->at) || *reader->at == '(')
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("Two numbers follow one another; put a sign between them, as in 2*1220-45."));
  return gb_reader_fail_for_unit (reader);
}

static gboolean
read_whole (GbReader *reader, double *value)
{
  const GbDimensionInfo *info = gb_dimension_info (reader->dim);
  GbTerm term;

  if (!read_sum (reader, &term))
    return FALSE;
  gb_reader_skip_space (reader);
  if (*reader->at != '\0')
    return fail_for_rest (reader);
  if (term.bare)
    take_shown_unit (reader, &term, info->powers);
  else
    term.v *= info->parts;
  if (!gb_powers_equal (term.powers, info->powers))
    return fail_for_dimension (reader, &term, info->powers);
  if (!isfinite (term.v))
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_RANGE,
                           _ ("This number is too large; enter %s, such as %s."), _ (info->label),
                           gb_reader_example (reader));
  *value = term.v;
  return TRUE;
}

static int
compare_insertions (gconstpointer a, gconstpointer b)
{
  gsize x = ((const GbInsertion *) a)->at;
  gsize y = ((const GbInsertion *) b)->at;

  return x < y ? -1 : x > y;
}

/* What was typed, with the units that were meant. */
static char *
text_with_units (const GbReader *reader)
{
  GString *text = g_string_new (NULL);
  gsize done = 0;

  g_array_sort (reader->insertions, compare_insertions);
  for (guint i = 0; i < reader->insertions->len; i++)
    {
      const GbInsertion *insertion = &g_array_index (reader->insertions, GbInsertion, i);

      g_string_append_len (text, reader->text + done, (gssize) (insertion->at - done));
      done = insertion->at;
      if (g_ascii_isalpha (*insertion->text) || *insertion->text == '%')
        g_string_append_c (text, ' ');
      g_string_append (text, insertion->text);
    }
  g_string_append (text, reader->text + done);
  return g_string_free (text, FALSE);
}

static gboolean
read_tidy (const char *tidy, GbDimension dim, GbUnits units, GbExpression *expression, GError **error)
{
  g_autoptr (GArray) insertions = g_array_new (FALSE, FALSE, sizeof (GbInsertion));
  GbReader reader = { .text = tidy, .at = tidy, .dim = dim, .units = units, .insertions = insertions };

  if (!read_whole (&reader, &expression->value))
    {
      g_propagate_error (error, reader.error);
      return FALSE;
    }
  expression->text = text_with_units (&reader);
  expression->is_sum = reader.has_sum;
  expression->is_plain = reader.n_numbers == 1 && !reader.has_fraction && !reader.has_sum;
  return TRUE;
}

gboolean
gb_expression_read (const char *text, GbDimension dim, GbUnits units, GbExpression *expression,
                    GError **error)
{
  g_autofree char *tidy = NULL;
  g_auto (GbExpression) again = { 0 };

  *expression = (GbExpression){ .value = NAN };
  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error_literal (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("This text is not UTF-8; plain text is expected."));
      return FALSE;
    }
  if (strlen (text) > LONGEST_ENTRY)
    {
      g_set_error (error, GB_QUANTITY_ERROR, GB_QUANTITY_ERROR_SYNTAX,
                   _ ("This entry is too long; at most %d characters are read."), LONGEST_ENTRY);
      return FALSE;
    }
  tidy = gb_entry_tidy (text);
  if (!read_tidy (tidy, dim, units, expression, error))
    return FALSE;
  /* What is kept must give the same to the last digit when it is read again. */
  if (strcmp (tidy, expression->text) != 0 && read_tidy (expression->text, dim, units, &again, NULL))
    expression->value = again.value;
  return TRUE;
}

void
gb_expression_clear (GbExpression *expression)
{
  g_clear_pointer (&expression->text, g_free);
}
