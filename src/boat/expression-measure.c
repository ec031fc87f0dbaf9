/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-expression"

#include "expression-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A 2 or a 3 that belongs to the unit before it, and not to a number that follows: m2 and ft², but not
 * 5ft2in. */
static int
read_power (GbReader *reader)
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

/* That of an abbreviation: in., sq. ft. */
static void
skip_point (GbReader *reader)
{
  if (*reader->at == '.' && !g_ascii_isdigit (reader->at[1]))
    reader->at++;
}

static int
read_power_word (GbReader *reader)
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
          skip_point (reader);
          gb_reader_skip_space (reader);
          return words[i].power;
        }
    }
  return 1;
}

gboolean
gb_reader_fail_for_unit (GbReader *reader)
{
  const char *end = reader->at;
  g_autofree char *word = NULL;
  g_autofree char *quote = NULL;

  while (*end != '\0' && (g_unichar_isalpha (g_utf8_get_char (end)) || end == reader->at))
    end = g_utf8_next_char (end);
  word = g_strndup (reader->at, (gsize) (end - reader->at));
  quote = gb_entry_quote (word);
  if (g_unichar_isalpha (g_utf8_get_char (word)))
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_UNIT,
                           _ ("“%s” is no unit that is known here; enter %s, such as %s."), quote,
                           _ (gb_dimension_info (reader->dim)->label), gb_reader_example (reader));
  return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                         _ ("“%s” has no meaning here; enter %s, such as %s."), quote,
                         _ (gb_dimension_info (reader->dim)->label), gb_reader_example (reader));
}

gboolean
gb_reader_at_unit (const GbReader *reader)
{
  return *reader->at != '\0' && strchr ("+-*/()", *reader->at) == NULL && !gb_starts_number (reader->at);
}

gboolean
gb_reader_unit (GbReader *reader, GbTerm *term)
{
  int power = read_power_word (reader);
  gsize length;
  const GbUnit *unit = gb_unit_match (reader->at, &length);
  double num = 1, den = 1;
  gboolean is_length = unit != NULL && gb_powers_equal (unit->powers, (GbPowers){ .length = 1 });

  if (unit == NULL || (power > 1 && !is_length))
    return gb_reader_fail_for_unit (reader);
  reader->at += length;
  if (power == 1 && is_length && g_ascii_isalpha (reader->at[-1]))
    power = read_power (reader);
  skip_point (reader);
  for (int i = 0; i < power; i++)
    {
      num *= unit->num;
      den *= unit->den;
    }
  term->v = (term->v - unit->zero) * num / den;
  term->powers = unit->powers;
  term->powers.length *= power;
  term->bare = FALSE;
  term->end = gb_reader_place (reader);
  reader->unit = unit;
  return TRUE;
}

gboolean
gb_reader_fail_for_dash (GbReader *reader)
{
  g_autofree char *quote = gb_entry_quote (reader->text);

  return gb_reader_fail (
      reader, GB_QUANTITY_ERROR_SYNTAX,
      _ ("“%s” can be read in two ways: leave out the dash to add, or put spaces round it to take away."),
      quote);
}

/* How many of @smaller make one of @larger; 0 if that is no whole number, or none. */
static double
how_many (const GbUnit *larger, const GbUnit *smaller)
{
  double ratio = (larger->num / larger->den) / (smaller->num / smaller->den);

  if (!gb_powers_equal (larger->powers, smaller->powers) || ratio < 1.5
      || fabs (ratio - round (ratio)) > 1e-9)
    return 0;
  return round (ratio);
}

/* The unit of what follows @larger in a measure: what is written, or inches after feet and so on. */
static const GbUnit *
read_smaller_unit (GbReader *reader, const GbUnit *larger)
{
  GbInsertion insertion = { gb_reader_place (reader), larger->smaller };
  const GbUnit *unit;
  gsize length;

  gb_reader_skip_space (reader);
  if (gb_reader_at_unit (reader))
    {
      unit = gb_unit_match (reader->at, &length);
      if (unit == NULL)
        gb_reader_fail_for_unit (reader);
      reader->at += length;
      skip_point (reader);
    }
  else if (larger->smaller != NULL)
    {
      unit = gb_unit_match (larger->smaller, &length);
      g_array_append_val (reader->insertions, insertion);
    }
  else
    {
      unit = NULL;
      gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                      _ ("Two numbers follow one another; put a sign between them, as in 2*1220-45."));
    }
  return unit;
}

/* A smaller unit's worth on top, as inches after feet. @count is what there is so far, in the last unit; the
 * sum is found in the smaller one, so that 5' 6" is the very 66 in. */
static gboolean
read_rest_of_measure (GbReader *reader, GbTerm *term, double *count)
{
  const GbUnit *larger = reader->unit;
  const GbUnit *smaller;
  double part, ratio;

  if (!gb_reader_number (reader, TRUE, &part))
    return FALSE;
  smaller = read_smaller_unit (reader, larger);
  if (smaller == NULL)
    return FALSE;
  ratio = how_many (larger, smaller);
  if (!(part < ratio))
    return gb_reader_fail (reader, GB_QUANTITY_ERROR_SYNTAX,
                           _ ("What follows “%s” must be less than one of it, in a smaller unit, as in 5' "
                              "6\"; else put a + between."),
                           larger->names[0]);
  *count = *count * ratio + (signbit (*count) ? -part : part);
  term->v = *count * smaller->num / smaller->den;
  term->end = gb_reader_place (reader);
  reader->unit = smaller;
  return TRUE;
}

gboolean
gb_reader_measure (GbReader *reader, GbTerm *term)
{
  double count = term->v;

  gb_reader_skip_space (reader);
  if (!gb_reader_at_unit (reader))
    return TRUE;
  if (!gb_reader_unit (reader, term))
    return FALSE;
  if (*reader->at == '-' && g_ascii_isdigit (reader->at[1]) && reader->unit->smaller != NULL)
    return gb_reader_fail_for_dash (reader);
  if (!gb_powers_equal (term->powers, reader->unit->powers))
    return TRUE;
  for (gb_reader_skip_space (reader); gb_starts_number (reader->at); gb_reader_skip_space (reader))
    if (!read_rest_of_measure (reader, term, &count))
      return FALSE;
  return TRUE;
}
