/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-expression"

#include "expression.h"

#include "quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define LONGEST_ENTRY 1000
#define DEEPEST_NEST 64

/* A piece of text to be put into what was typed. */
typedef struct
{
  gsize at;
  const char *text;
} Insertion;

typedef struct
{
  const char *text; /* tidied */
  const char *at;   /* where reading has come to */
  GbDimension dim;
  GbUnits units;
  guint depth;
  guint n_numbers;
  gboolean has_fraction, has_sum;
  const GbUnit *unit; /* the last that was read */
  GArray *insertions;
  GError *error;
} Reader;

typedef struct
{
  double v;
  GbPowers powers;
  gboolean bare;   /* waits for a unit */
  gboolean is_sum; /* of several terms, not in parentheses */
  gsize start, end;
} Term;

static gboolean read_sum (Reader *reader, Term *term);

G_GNUC_PRINTF (3, 4)
static gboolean
fail (Reader *reader, GbQuantityError code, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  if (reader->error == NULL)
    reader->error = g_error_new_valist (GB_QUANTITY_ERROR, code, format, args);
  va_end (args);
  return FALSE;
}

static const char *
example (const Reader *reader)
{
  return gb_dimension_shown (reader->dim, reader->units)->example;
}

static void
skip_space (Reader *reader)
{
  while (*reader->at == ' ')
    reader->at++;
}

static gsize
place (const Reader *reader)
{
  return (gsize) (reader->at - reader->text);
}

/* Numbers ----------------------------------------------------------------------------------------------------------- */

/* A vulgar fraction sign at @p, such as ¾; 0 if there is none. Its decomposition is digits round a fraction slash. */
static double
vulgar_fraction (const char *p, const char **end)
{
  gunichar parts[8];
  gunichar c = g_utf8_get_char (p);
  gsize n;
  double over = 0, under = 0;
  gboolean slash = FALSE;

  if (c < 0xbc || (c > 0xbe && c < 0x2150) || c > 0x215e)
    return 0;
  n = g_unichar_fully_decompose (c, TRUE, parts, G_N_ELEMENTS (parts));
  for (gsize i = 0; i < n; i++)
    if (parts[i] == 0x2044)
      slash = TRUE;
    else if (slash)
      under = 10 * under + g_unichar_digit_value (parts[i]);
    else
      over = 10 * over + g_unichar_digit_value (parts[i]);
  *end = g_utf8_next_char (p);
  return under > 0 ? over / under : 0;
}

static gboolean
starts_number (const char *p)
{
  const char *end;

  return g_ascii_isdigit (*p) || (*p == '.' && g_ascii_isdigit (p[1])) || vulgar_fraction (p, &end) > 0;
}

/* A fraction of whole digits at @p, such as 3/8; -1 if there is none. */
static double
slash_fraction (const char *p, const char **end)
{
  const char *slash = p + strspn (p, "0123456789");
  const char *stop;

  if (slash == p || *slash != '/')
    return -1;
  stop = slash + 1 + strspn (slash + 1, "0123456789");
  if (stop == slash + 1)
    return -1;
  *end = stop;
  return g_ascii_strtod (p, NULL) / g_ascii_strtod (slash + 1, NULL);
}

/* Digits, point and exponent. */
static double
read_decimal (Reader *reader, gboolean *is_whole)
{
  const char *start = reader->at;
  const char *p = start + strspn (start, "0123456789");
  g_autofree char *digits = NULL;

  *is_whole = TRUE;
  if (*p == '.')
    {
      *is_whole = FALSE;
      p += 1 + strspn (p + 1, "0123456789");
    }
  if (*p == 'e' || *p == 'E')
    {
      const char *exponent = p + 1 + (p[1] == '+' || p[1] == '-');

      if (g_ascii_isdigit (*exponent))
        {
          *is_whole = FALSE;
          p = exponent + strspn (exponent, "0123456789");
        }
    }
  digits = g_strndup (start, (gsize) (p - start));
  reader->at = p;
  return g_ascii_strtod (digits, NULL);
}

/* @fractions: whether "3/8" is one number here; elsewhere that is a division and comes to the same. */
static gboolean
read_number (Reader *reader, gboolean fractions, double *v)
{
  const char *end;
  double fraction = vulgar_fraction (reader->at, &end);
  gboolean is_whole;

  reader->n_numbers++;
  *v = 0;
  if (fraction == 0 && fractions && (fraction = slash_fraction (reader->at, &end)) < 0)
    fraction = 0;
  if (fraction == 0)
    {
      *v = read_decimal (reader, &is_whole);
      if (*reader->at == '.')
        return fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                     _ ("A number has one decimal sign; leave out the marks between thousands, as in 1220.5."));
      if (is_whole && (fraction = vulgar_fraction (reader->at, &end)) == 0 && *reader->at == ' ')
        fraction = slash_fraction (reader->at + 1, &end);
    }
  if (fraction > 0 && (fraction < 1 || *v == 0))
    {
      *v += fraction;
      reader->at = end;
      reader->has_fraction = TRUE;
    }
  return TRUE;
}

/* Units ------------------------------------------------------------------------------------------------------------- */

/* A 2 or a 3 that belongs to the unit before it, and not to a number that follows: m2 and ft², but not 5ft2in. */
static int
read_power (Reader *reader)
{
  static const char *const signs[] = { "²", "³" };
  const char *p = reader->at;

  for (int i = 0; i < 2; i++)
    if (g_str_has_prefix (p, signs[i]))
      {
        reader->at += strlen (signs[i]);
        return i + 2;
      }
  if (*p == '^')
    p++;
  if (*p != '2' && *p != '3')
    return 1;
  if (strchr (".'\"", p[1]) != NULL && p[1] != '\0')
    return 1;
  if (g_unichar_isalnum (g_utf8_get_char (p + 1)))
    return 1;
  reader->at = p + 1;
  return *p - '0';
}

static int
read_power_word (Reader *reader)
{
  static const struct
  {
    const char *word;
    int power;
  } words[] = { { "sq", 2 }, { "square", 2 }, { "cu", 3 }, { "cubic", 3 } };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize n = strlen (words[i].word);

      if (g_ascii_strncasecmp (reader->at, words[i].word, n) == 0 && !g_ascii_isalnum (reader->at[n]))
        {
          reader->at += n;
          skip_space (reader);
          return words[i].power;
        }
    }
  return 1;
}

static gboolean
fail_for_unit (Reader *reader)
{
  const char *end = reader->at;
  g_autofree char *word = NULL;
  g_autofree char *quote = NULL;

  while (*end != '\0' && (g_unichar_isalpha (g_utf8_get_char (end)) || end == reader->at))
    end = g_utf8_next_char (end);
  word = g_strndup (reader->at, (gsize) (end - reader->at));
  quote = gb_entry_quote (word);
  if (g_unichar_isalpha (g_utf8_get_char (word)))
    return fail (reader, GB_QUANTITY_ERROR_UNIT, _ ("“%s” is no unit that is known here; enter %s, such as %s."), quote,
                 _ (gb_dimension_info (reader->dim)->label), example (reader));
  return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("“%s” has no meaning here; enter %s, such as %s."), quote,
               _ (gb_dimension_info (reader->dim)->label), example (reader));
}

/* What may stand behind a finished measure without being a unit. */
static gboolean
at_unit (const Reader *reader)
{
  return *reader->at != '\0' && strchr ("+-*/()", *reader->at) == NULL && !starts_number (reader->at);
}

/* Turns @term, a bare number, into one of the unit that is read. */
static gboolean
read_unit (Reader *reader, Term *term)
{
  int power = read_power_word (reader);
  gsize length;
  const GbUnit *unit = gb_unit_match (reader->at, &length);
  double num = 1, den = 1;

  if (unit == NULL)
    return fail_for_unit (reader);
  reader->at += length;
  if (power == 1 && g_ascii_isalpha (reader->at[-1]) && gb_powers_equal (unit->powers, (GbPowers){ 1, 0, 0, 0 }))
    power = read_power (reader);
  for (int i = 0; i < power; i++)
    {
      num *= unit->num;
      den *= unit->den;
    }
  term->v = (term->v - unit->zero) * num / den;
  term->powers = unit->powers;
  term->powers.length *= power;
  term->bare = FALSE;
  term->end = place (reader);
  reader->unit = unit;
  return TRUE;
}

/* The dash in 5'-6" joins for some and takes away for others; so does that in 1-1/2. */
static gboolean
fail_for_dash (Reader *reader)
{
  g_autofree char *quote = gb_entry_quote (reader->text);

  return fail (reader, GB_QUANTITY_ERROR_SYNTAX,
               _ ("“%s” can be read in two ways: leave out the dash to add, or put spaces round it to take away."), quote);
}

/* How many of @smaller make one of @larger; 0 if that is no whole number, or none. */
static double
how_many (const GbUnit *larger, const GbUnit *smaller)
{
  double ratio = (larger->num / larger->den) / (smaller->num / smaller->den);

  if (!gb_powers_equal (larger->powers, smaller->powers) || ratio < 1.5 || fabs (ratio - round (ratio)) > 1e-9)
    return 0;
  return round (ratio);
}

/* The unit of what follows @larger in a measure: what is written, or inches after feet and so on. */
static const GbUnit *
read_smaller_unit (Reader *reader, const GbUnit *larger)
{
  Insertion insertion = { place (reader), larger->smaller };
  const GbUnit *unit;
  gsize length;

  skip_space (reader);
  if (at_unit (reader))
    {
      unit = gb_unit_match (reader->at, &length);
      if (unit == NULL)
        fail_for_unit (reader);
      reader->at += length;
    }
  else if (larger->smaller != NULL)
    {
      unit = gb_unit_match (larger->smaller, &length);
      g_array_append_val (reader->insertions, insertion);
    }
  else
    {
      unit = NULL;
      fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("Two numbers follow one another; put a sign between them, as in 2*1220-45."));
    }
  return unit;
}

/* A smaller unit's worth on top, as inches after feet. @count is what there is so far, in the last unit; the sum is found in the smaller
 * one, so that 5' 6" is the very 66 in. */
static gboolean
read_rest_of_measure (Reader *reader, Term *term, double *count)
{
  const GbUnit *larger = reader->unit;
  const GbUnit *smaller;
  double part, ratio;

  if (!read_number (reader, TRUE, &part))
    return FALSE;
  smaller = read_smaller_unit (reader, larger);
  if (smaller == NULL)
    return FALSE;
  ratio = how_many (larger, smaller);
  if (!(part < ratio))
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                 _ ("What follows “%s” must be less than one of it, in a smaller unit, as in 5' 6\"; else put a + between."),
                 larger->names[0]);
  *count = *count * ratio + (signbit (*count) ? -part : part);
  term->v = *count * smaller->num / smaller->den;
  term->end = place (reader);
  reader->unit = smaller;
  return TRUE;
}

/* The unit behind a bare number, if there is one, and smaller units after it. */
static gboolean
read_measure (Reader *reader, Term *term)
{
  double count = term->v;

  skip_space (reader);
  if (!at_unit (reader))
    return TRUE;
  if (!read_unit (reader, term))
    return FALSE;
  if (*reader->at == '-' && g_ascii_isdigit (reader->at[1]) && reader->unit->smaller != NULL)
    return fail_for_dash (reader);
  if (!gb_powers_equal (term->powers, reader->unit->powers))
    return TRUE;
  for (skip_space (reader); starts_number (reader->at); skip_space (reader))
    if (!read_rest_of_measure (reader, term, &count))
      return FALSE;
  return TRUE;
}

/* Sums -------------------------------------------------------------------------------------------------------------- */

static gboolean
read_parentheses (Reader *reader, Term *term)
{
  if (reader->depth == DEEPEST_NEST)
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("Too many parentheses in one another."));
  reader->depth++;
  reader->at++;
  if (!read_sum (reader, term))
    return FALSE;
  reader->depth--;
  skip_space (reader);
  if (*reader->at != ')')
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A parenthesis is not closed."));
  reader->at++;
  reader->has_sum = TRUE;
  term->is_sum = FALSE;
  return TRUE;
}

/* @with_unit: whether a unit may follow at once. */
static gboolean
read_factor (Reader *reader, gboolean with_unit, Term *term)
{
  double sign = 1;

  *term = (Term){ .bare = TRUE };
  for (skip_space (reader); *reader->at == '-' || *reader->at == '+'; skip_space (reader))
    sign *= *reader->at++ == '-' ? -1 : 1;
  if (*reader->at == '(')
    {
      if (!read_parentheses (reader, term))
        return FALSE;
    }
  else if (starts_number (reader->at))
    {
      if (!read_number (reader, FALSE, &term->v))
        return FALSE;
    }
  else if (at_unit (reader))
    {
      g_autofree char *quote = gb_entry_quote (reader->at);
      gsize length;

      if (gb_unit_match (reader->at, &length) == NULL)
        return fail_for_unit (reader);
      return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A number is missing before “%s”; enter it as in %s."), quote,
                   example (reader));
    }
  else
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A number is missing; enter %s, such as %s."),
                 _ (gb_dimension_info (reader->dim)->label), example (reader));
  term->v *= sign;
  term->end = place (reader);
  return !with_unit || !term->bare || read_measure (reader, term);
}

static gboolean
refuse_temperatures (Reader *reader, const Term *a, const Term *b)
{
  if (a->powers.temperature == 0 && b->powers.temperature == 0)
    return TRUE;
  return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A temperature is entered as one number, such as %s."),
               gb_dimension_shown (GB_DIM_TEMPERATURE, reader->units)->example);
}

static gboolean
is_number (GbPowers powers)
{
  return gb_powers_equal (powers, (GbPowers){ 0 });
}

static gboolean
multiply (Reader *reader, Term *term, const Term *factor, int sense)
{
  if (!refuse_temperatures (reader, term, factor))
    return FALSE;
  if (sense < 0 && factor->v == 0)
    return fail (reader, GB_QUANTITY_ERROR_RANGE, _ ("Nothing can be divided by zero."));
  term->v = sense < 0 ? term->v / factor->v : term->v * factor->v;
  term->powers.length += sense * factor->powers.length;
  term->powers.mass += sense * factor->powers.mass;
  term->powers.angle += sense * factor->powers.angle;
  /* A number that waits for its unit still waits when taken some times, or a share of it. Where a share is wanted, one of the two
   * that has its unit is enough. */
  if (term->bare != factor->bare)
    term->bare = is_number (term->powers) && is_number (factor->powers) && !is_number (gb_dimension_info (reader->dim)->powers);
  term->end = factor->end;
  return TRUE;
}

/* Behind a slash there may be a unit alone, as in kg/m3; and behind a quotient of bare numbers the unit of the whole. */
static gboolean
read_division (Reader *reader, Term *term)
{
  Term divisor = { .v = 1 };
  gboolean was_bare = term->bare;

  skip_space (reader);
  if (at_unit (reader))
    return read_unit (reader, &divisor) && multiply (reader, term, &divisor, -1);

  if (!read_factor (reader, !was_bare, &divisor) || !multiply (reader, term, &divisor, -1))
    return FALSE;
  if (term->bare && fabs (term->v) < 1)
    reader->has_fraction = TRUE;
  else
    reader->has_sum = TRUE;
  return !term->bare || read_measure (reader, term);
}

static gboolean
read_product (Reader *reader, Term *term)
{
  gsize start;

  skip_space (reader);
  start = place (reader);
  if (!read_factor (reader, TRUE, term))
    return FALSE;
  term->start = start;
  for (skip_space (reader); *reader->at == '*' || *reader->at == '/'; skip_space (reader))
    {
      Term factor;

      if (*reader->at++ == '/')
        {
          if (!read_division (reader, term))
            return FALSE;
          continue;
        }
      reader->has_sum = TRUE;
      if (!read_factor (reader, TRUE, &factor) || !multiply (reader, term, &factor, 1))
        return FALSE;
    }
  term->start = start;
  term->is_sum = FALSE;
  return TRUE;
}

/* Gives @term the unit that its dimension is shown in, and notes where to write it. Its value is then as it is stored. */
static void
take_shown_unit (Reader *reader, Term *term, GbPowers powers)
{
  GbDimension dim = gb_powers_equal (powers, gb_dimension_info (reader->dim)->powers) ? reader->dim
                                                                                       : gb_powers_dimension (powers);
  const GbShownUnit *shown;
  /* A unit goes with the last factor of a product, which a temperature does not multiply. */
  gboolean wrap = term->is_sum || (reader->has_sum && powers.temperature != 0);
  Insertion before = { term->start, "(" };
  Insertion after = { term->end, ")" };

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
fail_for_dimension (Reader *reader, const Term *term, GbPowers expected)
{
  g_autofree char *text = g_strndup (reader->text + term->start, term->end - term->start);
  g_autofree char *quote = gb_entry_quote (text);
  GbDimension is = gb_powers_dimension (term->powers);
  GbDimension wanted = gb_powers_equal (expected, gb_dimension_info (reader->dim)->powers) ? reader->dim
                                                                                            : gb_powers_dimension (expected);
  const char *such_as;

  if (wanted == GB_N_DIMS)
    wanted = reader->dim;
  such_as = gb_dimension_shown (wanted, reader->units)->example;
  if (is == GB_N_DIMS)
    return fail (reader, GB_QUANTITY_ERROR_DIMENSION, _ ("“%s” is not %s; enter it as in %s."), quote,
                 _ (gb_dimension_info (wanted)->label), such_as);
  /* Translators: “3 kg” is a mass; a length is expected, such as 38 mm. */
  return fail (reader, GB_QUANTITY_ERROR_DIMENSION, _ ("“%s” is %s; %s is expected, such as %s."), quote,
               _ (gb_dimension_info (is)->label), _ (gb_dimension_info (wanted)->label), such_as);
}

static gboolean
add (Reader *reader, Term *sum, Term *term, int sense)
{
  if (!refuse_temperatures (reader, sum, term))
    return FALSE;
  if (sum->bare != term->bare)
    {
      Term *bare = sum->bare ? sum : term;

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

/* TRUE at the dash of 1-1/2, written without spaces. */
static gboolean
at_joining_dash (const Reader *reader)
{
  const char *p = reader->at;
  const char *end;
  double fraction;
  int under;

  if (*p != '-' || p == reader->text || !g_ascii_isdigit (p[-1]))
    return FALSE;
  fraction = slash_fraction (p + 1, &end);
  if (!(fraction > 0 && fraction < 1))
    return FALSE;
  under = atoi (strchr (p, '/') + 1);
  return under >= 2 && under <= 64 && (under & (under - 1)) == 0;
}

static gboolean
read_sum (Reader *reader, Term *sum)
{
  if (!read_product (reader, sum))
    return FALSE;
  for (skip_space (reader); *reader->at == '+' || *reader->at == '-'; skip_space (reader))
    {
      Term term;
      int sense = *reader->at == '-' ? -1 : 1;

      if (at_joining_dash (reader))
        return fail_for_dash (reader);
      reader->at++;
      reader->has_sum = TRUE;
      if (!read_product (reader, &term) || !add (reader, sum, &term, sense))
        return FALSE;
    }
  return TRUE;
}

/* The whole --------------------------------------------------------------------------------------------------------- */

static gboolean
fail_for_rest (Reader *reader)
{
  if (*reader->at == ')')
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX, _ ("A parenthesis is closed that was not opened."));
  if (starts_number (reader->at) || *reader->at == '(')
    return fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                 _ ("Two numbers follow one another; put a sign between them, as in 2*1220-45."));
  return fail_for_unit (reader);
}

static gboolean
read_whole (Reader *reader, double *value)
{
  const GbDimensionInfo *info = gb_dimension_info (reader->dim);
  Term term;

  if (!read_sum (reader, &term))
    return FALSE;
  skip_space (reader);
  if (*reader->at != '\0')
    return fail_for_rest (reader);
  if (term.bare)
    take_shown_unit (reader, &term, info->powers);
  else
    term.v *= info->parts;
  if (!gb_powers_equal (term.powers, info->powers))
    return fail_for_dimension (reader, &term, info->powers);
  if (!isfinite (term.v))
    return fail (reader, GB_QUANTITY_ERROR_RANGE, _ ("This number is too large; enter %s, such as %s."), _ (info->label),
                 example (reader));
  *value = term.v;
  return TRUE;
}

static int
compare_insertions (gconstpointer a, gconstpointer b)
{
  gsize x = ((const Insertion *) a)->at;
  gsize y = ((const Insertion *) b)->at;

  return x < y ? -1 : x > y;
}

/* What was typed, with the units that were meant. */
static char *
text_with_units (const Reader *reader)
{
  GString *text = g_string_new (NULL);
  gsize done = 0;

  g_array_sort (reader->insertions, compare_insertions);
  for (guint i = 0; i < reader->insertions->len; i++)
    {
      const Insertion *insertion = &g_array_index (reader->insertions, Insertion, i);

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
  g_autoptr (GArray) insertions = g_array_new (FALSE, FALSE, sizeof (Insertion));
  Reader reader = { .text = tidy, .at = tidy, .dim = dim, .units = units, .insertions = insertions };

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
gb_expression_read (const char *text, GbDimension dim, GbUnits units, GbExpression *expression, GError **error)
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
