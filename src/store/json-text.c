/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-json"

/* A reader for JSON by recursive descent. (The toolkit's own does not say on which line a value stands, silently drops one of
 * two equal keys, and takes what is not JSON.) */

#include "json-text.h"

#include "text-form.h"

#include <glib/gi18n-lib.h>
#include <string.h>

typedef struct
{
  const char *at;
  const char *end;
  guint line;
  guint depth;
  GError *error;
} Reader;

static GbJson *read_value (Reader *reader);

void
gb_json_free (GbJson *json)
{
  if (json == NULL)
    return;
  g_clear_pointer (&json->items, g_ptr_array_unref);
  g_free (json->name);
  g_free (json->text);
  g_free (json);
}

static gboolean
fail (Reader *reader, const char *sentence)
{
  if (reader->error == NULL)
    g_set_error (&reader->error, GB_TEXT_FORM_ERROR, GB_TEXT_FORM_ERROR_SYNTAX, _ ("Line %u: %s"), reader->line, sentence);
  return FALSE;
}

static int
peek (const Reader *reader)
{
  return reader->at < reader->end ? (guchar) *reader->at : -1;
}

static void
skip_space (Reader *reader)
{
  for (; reader->at < reader->end && strchr (" \t\r\n", *reader->at) != NULL && *reader->at != '\0'; reader->at++)
    if (*reader->at == '\n')
      reader->line++;
}

static gboolean
accept (Reader *reader, char c)
{
  if (peek (reader) != c)
    return FALSE;
  reader->at++;
  return TRUE;
}

static gboolean
accept_word (Reader *reader, const char *word)
{
  gsize n = strlen (word);

  if ((gsize) (reader->end - reader->at) < n || memcmp (reader->at, word, n) != 0)
    return FALSE;
  reader->at += n;
  return TRUE;
}

/* Strings ---------------------------------------------------------------------------------------------------------- */

static gboolean
read_hex (Reader *reader, gunichar *c)
{
  *c = 0;
  for (int i = 0; i < 4; i++, reader->at++)
    {
      if (reader->at == reader->end || !g_ascii_isxdigit (*reader->at))
        return fail (reader, _ ("four digits or letters from a to f are expected after \\u."));
      *c = *c << 4 | (gunichar) g_ascii_xdigit_value (*reader->at);
    }
  return TRUE;
}

/* What follows \u, which for rare letters is a pair of two such. */
static gboolean
read_unicode_escape (Reader *reader, GString *text)
{
  gunichar c, low;

  if (!read_hex (reader, &c))
    return FALSE;
  if (c >= 0xd800 && c < 0xdc00)
    {
      if (!accept_word (reader, "\\u") || !read_hex (reader, &low) || low < 0xdc00 || low > 0xdfff)
        return fail (reader, _ ("this \\u is half of a letter; the other half is expected after it."));
      c = 0x10000 + ((c - 0xd800) << 10) + (low - 0xdc00);
    }
  if (c == 0 || !g_unichar_validate (c))
    return fail (reader, _ ("this \\u is no letter."));
  g_string_append_unichar (text, c);
  return TRUE;
}

static gboolean
read_escape (Reader *reader, GString *text)
{
  static const char from[] = "\"\\/bfnrt";
  static const char to[] = "\"\\/\b\f\n\r\t";
  int c = peek (reader);
  const char *known = c > 0 ? strchr (from, c) : NULL;

  if (accept (reader, 'u'))
    return read_unicode_escape (reader, text);
  if (known == NULL)
    return fail (reader, _ ("a backslash in a text must be followed by one of \" \\ / b f n r t u."));
  reader->at++;
  g_string_append_c (text, to[known - from]);
  return TRUE;
}

/* Behind the opening quote. */
static char *
read_string (Reader *reader)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (;;)
    {
      const char *start = reader->at;

      while (reader->at < reader->end && (guchar) *reader->at >= ' ' && *reader->at != '"' && *reader->at != '\\')
        reader->at++;
      g_string_append_len (text, start, reader->at - start);
      if (accept (reader, '"'))
        return g_string_free (g_steal_pointer (&text), FALSE);
      if (!accept (reader, '\\'))
        {
          fail (reader, peek (reader) < 0 ? _ ("the text that begins here has no closing quote.")
                                          : _ ("a line break or control character in a text must be written as \\n or \\u...."));
          return NULL;
        }
      if (!read_escape (reader, text))
        return NULL;
    }
}

/* Numbers ---------------------------------------------------------------------------------------------------------- */

static gboolean
skip_digits (Reader *reader)
{
  const char *start = reader->at;

  while (reader->at < reader->end && g_ascii_isdigit (*reader->at))
    reader->at++;
  return reader->at > start;
}

static char *
read_number (Reader *reader)
{
  const char *start = reader->at;
  gboolean sound;

  accept (reader, '-');
  sound = accept (reader, '0') || skip_digits (reader);
  if (sound && accept (reader, '.'))
    sound = skip_digits (reader);
  if (sound && (accept (reader, 'e') || accept (reader, 'E')))
    {
      if (!accept (reader, '+'))
        accept (reader, '-');
      sound = skip_digits (reader);
    }
  if (sound && !g_ascii_isalnum (peek (reader)) && peek (reader) != '.')
    return g_strndup (start, (gsize) (reader->at - start));
  fail (reader, _ ("this is no number as JSON writes it: digits, a point for the decimals, no zero in front."));
  return NULL;
}

/* Arrays and objects ----------------------------------------------------------------------------------------------- */

static char *
read_key (Reader *reader)
{
  g_autofree char *key = NULL;

  if (!accept (reader, '"'))
    {
      fail (reader, peek (reader) == '}' ? _ ("there is a comma too many before this.") : _ ("a name in quotes is expected."));
      return NULL;
    }
  key = read_string (reader);
  if (key == NULL)
    return NULL;
  skip_space (reader);
  if (accept (reader, ':'))
    return g_steal_pointer (&key);
  fail (reader, _ ("a colon is expected after the name."));
  return NULL;
}

/* Behind the opening bracket. */
static gboolean
read_items (Reader *reader, GbJson *json, char closing)
{
  json->items = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_json_free);
  skip_space (reader);
  if (accept (reader, closing))
    return TRUE;
  for (;;)
    {
      g_autofree char *key = NULL;
      GbJson *item;

      skip_space (reader);
      if (json->type == GB_JSON_OBJECT && (key = read_key (reader)) == NULL)
        return FALSE;
      item = read_value (reader);
      if (item == NULL)
        return FALSE;
      item->name = g_steal_pointer (&key);
      g_ptr_array_add (json->items, item);
      skip_space (reader);
      if (accept (reader, closing))
        return TRUE;
      if (!accept (reader, ','))
        return fail (reader, closing == ']' ? _ ("a comma or a closing ] is expected.") : _ ("a comma or a closing } is expected."));
    }
}

static gboolean
read_nested (Reader *reader, GbJson *json, char closing)
{
  gboolean done;

  if (reader->depth == GB_JSON_MAX_DEPTH)
    return fail (reader, _ ("this is nested too deeply."));
  reader->depth++;
  done = read_items (reader, json, closing);
  reader->depth--;
  return done;
}

/* Into @json, whose line is set. */
static gboolean
read_into (Reader *reader, GbJson *json)
{
  int c = peek (reader);

  if (accept (reader, '{'))
    {
      json->type = GB_JSON_OBJECT;
      return read_nested (reader, json, '}');
    }
  if (accept (reader, '['))
    {
      json->type = GB_JSON_ARRAY;
      return read_nested (reader, json, ']');
    }
  if (accept (reader, '"'))
    {
      json->type = GB_JSON_STRING;
      return (json->text = read_string (reader)) != NULL;
    }
  if (c == '-' || g_ascii_isdigit (c))
    {
      json->type = GB_JSON_NUMBER;
      return (json->text = read_number (reader)) != NULL;
    }
  json->type = accept_word (reader, "true") ? GB_JSON_TRUE : accept_word (reader, "false") ? GB_JSON_FALSE : GB_JSON_NULL;
  if (json->type != GB_JSON_NULL || accept_word (reader, "null"))
    return TRUE;
  if (c == ']')
    return fail (reader, _ ("there is a comma too many before this."));
  return fail (reader, c < 0 ? _ ("the text ends too early.")
                             : _ ("a value is expected: a number, a text in quotes, true, false, null, [ or {."));
}

static GbJson *
read_value (Reader *reader)
{
  g_autoptr (GbJson) json = g_new0 (GbJson, 1);

  skip_space (reader);
  json->line = reader->line;
  return read_into (reader, json) ? g_steal_pointer (&json) : NULL;
}

/* A text of other letters than UTF-8, or with a NUL in it, is refused before anything else. */
static gboolean
check_letters (Reader *reader)
{
  const char *bad;

  if (g_utf8_validate (reader->at, reader->end - reader->at, &bad))
    return TRUE;
  for (const char *p = reader->at; p < bad; p++)
    reader->line += *p == '\n';
  return fail (reader, _ ("this text is not UTF-8; save it as UTF-8."));
}

GbJson *
gb_json_read (const char *text, gsize length, GError **error)
{
  static const char byte_order_mark[] = "\xef\xbb\xbf";
  Reader reader = { text, text + length, 1, 0, NULL };
  g_autoptr (GbJson) json = NULL;

  if (check_letters (&reader))
    {
      accept_word (&reader, byte_order_mark);
      json = read_value (&reader);
      skip_space (&reader);
      if (json != NULL && reader.at == reader.end)
        return g_steal_pointer (&json);
      fail (&reader, _ ("nothing is expected after the last bracket."));
    }
  g_propagate_error (error, reader.error);
  return NULL;
}

const GbJson *
gb_json_find (const GbJson *object, const char *name)
{
  for (guint i = 0; i < object->items->len; i++)
    {
      const GbJson *item = object->items->pdata[i];

      if (strcmp (item->name, name) == 0)
        return item;
    }
  return NULL;
}

/* Writing ---------------------------------------------------------------------------------------------------------- */

void
gb_json_append_string (GString *out, const char *text)
{
  g_string_append_c (out, '"');
  for (const char *p = text; *p != '\0'; p++)
    switch (*p)
      {
      case '"':
      case '\\':
        g_string_append_c (out, '\\');
        g_string_append_c (out, *p);
        break;
      case '\n':
        g_string_append (out, "\\n");
        break;
      case '\t':
        g_string_append (out, "\\t");
        break;
      default:
        if ((guchar) *p < ' ' || *p == 0x7f)
          g_string_append_printf (out, "\\u%04x", (guint) (guchar) *p);
        else
          g_string_append_c (out, *p);
      }
  g_string_append_c (out, '"');
}

void
gb_json_append_number (GString *out, double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  for (int figures = 15; figures <= 17; figures++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", figures);
      g_ascii_formatd (digits, sizeof digits, format, value);
      if (g_ascii_strtod (digits, NULL) == value)
        break;
    }
  g_string_append (out, digits);
}
