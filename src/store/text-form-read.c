/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-text-form"

/* From text to a build, in three steps: the JSON with its lines; each record with its fields, by the field table; then what needs
 * all of them: ids for those without one, owners, and references by id or by name. The first thing wrong is said, with its line. */

#include "text-form-private.h"

#include "boat/expression.h"
#include "store.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MAX_POSITION 1e15

/* A record that was read. It owns nothing but its record until the boat takes that. */
typedef struct
{
  GbRecord *record;
  const GbRecord *owner; /* has its id later */
  const GbJson *json;
} Draft;

/* A reference that was read. */
typedef struct
{
  const Draft *from;
  const GbField *field;
  const GbJson *json;
} Link;

typedef struct
{
  const GbBuild *build;
  GPtrArray *drafts[GB_N_RECORDS]; /* of Draft, in the text's order */
  GHashTable *by_id[GB_N_RECORDS]; /* id -> Draft */
  GHashTable *by_name[GB_N_RECORDS]; /* name -> Draft, or several_of_a_name; made when needed */
  GArray *links;
  GError *error;
} Reader;

static const Draft several_of_a_name;

static void
draft_free (Draft *draft)
{
  gb_record_free (draft->record);
  g_free (draft);
}

static void
reader_init (Reader *reader)
{
  *reader = (Reader){ .links = g_array_new (FALSE, FALSE, sizeof (Link)) };
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      reader->drafts[k] = g_ptr_array_new_with_free_func ((GDestroyNotify) draft_free);
      reader->by_id[k] = g_hash_table_new (g_int64_hash, g_int64_equal);
    }
}

static void
reader_clear (Reader *reader)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      g_ptr_array_unref (reader->drafts[k]);
      g_hash_table_unref (reader->by_id[k]);
      g_clear_pointer (&reader->by_name[k], g_hash_table_unref);
    }
  g_array_unref (reader->links);
}

/* Sentences -------------------------------------------------------------------------------------------------------- */

static gboolean
fail (Reader *reader, GbTextFormError code, guint line, const char *sentence)
{
  if (reader->error == NULL)
    g_set_error (&reader->error, GB_TEXT_FORM_ERROR, code, _ ("Line %u: %s"), line, sentence);
  return FALSE;
}

/* "part “Bottom”", with whatever it is called by. */
static char *
describe (GbRecordKind kind, const GbJson *object)
{
  static const char *const keys[] = { "name", "what", "supplier", "id" };
  const char *label = _ (gb_record_type (kind)->label);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      const GbJson *json = gb_json_find (object, keys[i]);

      if (json != NULL && json->text != NULL && *json->text != '\0')
        {
          g_autofree char *quote = gb_entry_quote (json->text);

          /* Translators: a kind of record, and the name of one: part “Bottom” */
          return g_strdup_printf (_ ("%s “%s”"), label, quote);
        }
    }
  return g_strdup (label);
}

/* "Line 14: part “Bottom”: thickness: ..." */
static gboolean
fail_field (Reader *reader, GbTextFormError code, GbRecordKind kind, const GbJson *object, const GbJson *json, const char *sentence)
{
  g_autofree char *what = describe (kind, object);
  g_autofree char *whole = g_strdup_printf ("%s: %s: %s", what, json->name, sentence);

  return fail (reader, code, json->line, whole);
}

/* How many letters must be put in, taken out or changed to make one of the other. */
static guint
distance (const char *a, const char *b)
{
  gsize n = strlen (b);
  g_autofree guint *row = g_new (guint, n + 1);

  for (gsize j = 0; j <= n; j++)
    row[j] = (guint) j;
  for (gsize i = 0; a[i] != '\0'; i++)
    {
      guint corner = row[0];

      row[0] = (guint) i + 1;
      for (gsize j = 0; j < n; j++)
        {
          guint above = row[j + 1];

          row[j + 1] = MIN (MIN (above, row[j]) + 1, corner + (a[i] != b[j]));
          corner = above;
        }
    }
  return row[n];
}

static void
consider (const char *name, const char *wrong, const char **nearest, guint *best)
{
  guint d = distance (wrong, name);

  if (d < *best)
    {
      *best = d;
      *nearest = name;
    }
}

#define LONGEST_SUGGESTED 40

/* @known are the names that may stand there, @where is the record, like part “Bottom”. */
static gboolean
fail_unknown (Reader *reader, const GbJson *json, GPtrArray *known, const char *where)
{
  const char *nearest = NULL;
  guint best = 4;
  g_autofree char *quote = gb_entry_quote (json->name);
  g_autofree char *list = NULL;
  g_autofree char *sentence = NULL;

  for (guint i = 0; i < known->len && strlen (json->name) <= LONGEST_SUGGESTED; i++)
    consider (known->pdata[i], json->name, &nearest, &best);
  g_ptr_array_add (known, NULL);
  list = g_strjoinv (", ", (char **) known->pdata);
  if (nearest != NULL)
    /* Translators: a record, like part “Bottom”; a name that is not known; one that is */
    sentence = g_strdup_printf (_ ("%s: \"%s\" is not known here; is \"%s\" meant?"), where, quote, nearest);
  else
    sentence = g_strdup_printf (_ ("%s: \"%s\" is not known here; one of these is expected: %s."), where, quote, list);
  return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json->line, sentence);
}

/* Records ---------------------------------------------------------------------------------------------------------- */

/* The kind called @name, if it lives in @kind; else GB_N_RECORDS. */
static GbRecordKind
kind_within (GbRecordKind kind, const char *name)
{
  const GbRecordType *type = gb_record_type_by_name (name);

  return type != NULL && type->owner == kind ? type->kind : GB_N_RECORDS;
}

static gboolean
fail_unknown_field (Reader *reader, GbRecordKind kind, const GbJson *object, const GbJson *json)
{
  const GbRecordType *type = gb_record_type (kind);
  g_autoptr (GPtrArray) known = g_ptr_array_new ();
  g_autofree char *where = describe (kind, object);

  if (kind != GB_RECORD_BUILD)
    g_ptr_array_add (known, (gpointer) "id");
  g_ptr_array_add (known, (gpointer) "position");
  for (guint i = 0; i < type->n_fields; i++)
    g_ptr_array_add (known, (gpointer) type->fields[i].name);
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (gb_record_type (k)->owner == kind)
      g_ptr_array_add (known, (gpointer) gb_record_type (k)->name);
  return fail_unknown (reader, json, known, where);
}

static gboolean
read_id (Reader *reader, Draft *draft, const GbJson *json)
{
  GbRecord *record = draft->record;
  guint64 id;

  if (json->type != GB_JSON_NUMBER || !g_ascii_string_to_unsigned (json->text, 10, 1, GB_STORE_MAX_ID, &id, NULL))
    return fail_field (reader, GB_TEXT_FORM_ERROR_FIELD, record->kind, draft->json, json,
                       _ ("a whole number from 1 up is expected."));
  if (g_hash_table_contains (reader->by_id[record->kind], &id))
    return fail_field (reader, GB_TEXT_FORM_ERROR_FIELD, record->kind, draft->json, json,
                       _ ("another record of this kind has this number already."));
  record->id = (gint64) id;
  g_hash_table_insert (reader->by_id[record->kind], &record->id, draft);
  return TRUE;
}

static gboolean
read_position (Reader *reader, Draft *draft, const GbJson *json)
{
  double position = json->type == GB_JSON_NUMBER ? g_ascii_strtod (json->text, NULL) : NAN;

  if (!(fabs (position) <= MAX_POSITION))
    return fail_field (reader, GB_TEXT_FORM_ERROR_FIELD, draft->record->kind, draft->json, json, _ ("a number is expected."));
  draft->record->position = position;
  return TRUE;
}

static gboolean
read_field (Reader *reader, Draft *draft, const GbField *field, const GbJson *json)
{
  Link link = { draft, field, json };
  g_autoptr (GError) reason = NULL;

  if (field->dim == GB_DIM_REF && (json->type == GB_JSON_NUMBER || json->type == GB_JSON_STRING))
    {
      g_array_append_val (reader->links, link);
      return TRUE;
    }
  if (gb_text_form_read_field (field, json, reader->build, draft->record, &reason))
    return TRUE;
  return fail_field (reader, GB_TEXT_FORM_ERROR_FIELD, field->kind, draft->json, json, reason->message);
}

static gboolean read_list (Reader *reader, GbRecordKind kind, const GbJson *list, const GbRecord *owner);

static gboolean
read_member (Reader *reader, Draft *draft, const GbJson *json)
{
  GbRecordKind kind = draft->record->kind;
  GbRecordKind within = kind_within (kind, json->name);
  const GbField *field = gb_field_find (kind, json->name);

  if (field != NULL)
    return read_field (reader, draft, field, json);
  if (strcmp (json->name, "position") == 0)
    return read_position (reader, draft, json);
  if (kind != GB_RECORD_BUILD && strcmp (json->name, "id") == 0)
    return read_id (reader, draft, json);
  if (within != GB_N_RECORDS)
    return read_list (reader, within, json, draft->record);
  return fail_unknown_field (reader, kind, draft->json, json);
}

/* TRUE if another member before @index is called the same. An object has few members: there is nothing to be gained by a table. */
static gboolean
comes_again (const GbJson *object, guint index)
{
  const GbJson *member = object->items->pdata[index];

  return gb_json_find (object, member->name) != member;
}

static Draft *
add_draft (Reader *reader, GbRecordKind kind, const GbJson *json, const GbRecord *owner, double position)
{
  Draft *draft = g_new0 (Draft, 1);

  *draft = (Draft){ gb_record_new (kind), owner, json };
  draft->record->position = position;
  g_ptr_array_add (reader->drafts[kind], draft);
  return draft;
}

static gboolean
read_members (Reader *reader, Draft *draft)
{
  const GbJson *json = draft->json;

  for (guint i = 0; i < json->items->len; i++)
    {
      const GbJson *member = json->items->pdata[i];

      if (comes_again (json, i))
        return fail_field (reader, GB_TEXT_FORM_ERROR_FIELD, draft->record->kind, json, member, _ ("this is given twice."));
      if (!read_member (reader, draft, member))
        return FALSE;
    }
  return TRUE;
}

/* Each item takes the next position, unless it names its own; but none may come before the one that it follows. */
static gboolean
read_list (Reader *reader, GbRecordKind kind, const GbJson *list, const GbRecord *owner)
{
  const GbRecord *before = NULL;

  if (list->type != GB_JSON_ARRAY)
    {
      g_autofree char *sentence = g_strdup_printf (_ ("\"%s\": a list in brackets [ ] is expected."), list->name);

      return fail (reader, GB_TEXT_FORM_ERROR_FIELD, list->line, sentence);
    }
  for (guint i = 0; i < list->items->len; i++)
    {
      const GbJson *json = list->items->pdata[i];
      Draft *draft;

      if (json->type != GB_JSON_OBJECT)
        {
          g_autofree char *sentence = g_strdup_printf (_ ("\"%s\": a record in braces { } is expected."), list->name);

          return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json->line, sentence);
        }
      draft = add_draft (reader, kind, json, owner, i + 1);
      if (!read_members (reader, draft))
        return FALSE;
      if (before != NULL && draft->record->position < before->position)
        return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json->line,
                     _ ("position: must not be less than that of the record before it in the list."));
      before = draft->record;
    }
  return TRUE;
}

/* The document ----------------------------------------------------------------------------------------------------- */

static gboolean
check_version (Reader *reader, const GbJson *root)
{
  const GbJson *json = gb_json_find (root, "garboard");
  guint64 version;

  if (json == NULL || json->type != GB_JSON_NUMBER || !g_ascii_string_to_unsigned (json->text, 10, 1, G_MAXUINT, &version, NULL))
    return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json != NULL ? json->line : root->line,
                 _ ("this is no build in its text form: it should begin with \"garboard\": 1."));
  if (version > GB_TEXT_FORM_VERSION)
    return fail (reader, GB_TEXT_FORM_ERROR_NEWER, json->line, _ ("this was written by a newer Garboard."));
  return TRUE;
}

/* The currency decides what a sum of money means, wherever in the build that stands. */
static gboolean
read_build (Reader *reader, const GbJson *root)
{
  const GbJson *json = gb_json_find (root, "build");
  Draft *draft = add_draft (reader, GB_RECORD_BUILD, json, NULL, 0);
  const GbJson *currency;

  draft->record->id = 1;
  reader->build = (const GbBuild *) draft->record;
  if (json == NULL)
    return TRUE;
  if (json->type != GB_JSON_OBJECT)
    return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json->line, _ ("\"build\": a record in braces { } is expected."));
  currency = gb_json_find (json, "currency");
  if (currency != NULL && currency->type == GB_JSON_STRING)
    gb_field_set_text (gb_field (GB_RECORD_BUILD, "currency"), draft->record, currency->text);
  return read_members (reader, draft);
}

/* A kind whose list stands at the top: what lives in nothing, and parts. */
static gboolean
is_at_top (GbRecordKind kind)
{
  GbRecordKind owner = gb_record_type (kind)->owner;

  return kind != GB_RECORD_BUILD && (owner == GB_N_RECORDS || owner == kind);
}

static gboolean
fail_unknown_list (Reader *reader, const GbJson *json)
{
  g_autoptr (GPtrArray) known = g_ptr_array_new ();

  g_ptr_array_add (known, (gpointer) "garboard");
  g_ptr_array_add (known, (gpointer) "build");
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (is_at_top (k))
      g_ptr_array_add (known, (gpointer) gb_record_type (k)->name);
  return fail_unknown (reader, json, known, _ ("The text form"));
}

static gboolean
read_lists (Reader *reader, const GbJson *root)
{
  for (guint i = 0; i < root->items->len; i++)
    {
      const GbJson *json = root->items->pdata[i];
      const GbRecordType *type = gb_record_type_by_name (json->name);

      if (comes_again (root, i))
        {
          g_autofree char *sentence = g_strdup_printf (_ ("\"%s\" is given twice."), json->name);

          return fail (reader, GB_TEXT_FORM_ERROR_FIELD, json->line, sentence);
        }
      if (strcmp (json->name, "garboard") == 0 || strcmp (json->name, "build") == 0)
        continue;
      if (type == NULL || !is_at_top (type->kind))
        return fail_unknown_list (reader, json);
      if (!read_list (reader, type->kind, json, NULL))
        return FALSE;
    }
  return TRUE;
}

/* What needs all records ------------------------------------------------------------------------------------------- */

/* Those without an id get the numbers after the highest that was given. */
static void
hand_out_ids (Reader *reader)
{
  for (guint k = 0; k < GB_N_RECORDS; k++)
    {
      GPtrArray *drafts = reader->drafts[k];
      gint64 highest = 0;

      for (guint i = 0; i < drafts->len; i++)
        highest = MAX (highest, ((Draft *) drafts->pdata[i])->record->id);
      for (guint i = 0; i < drafts->len; i++)
        {
          Draft *draft = drafts->pdata[i];

          if (draft->record->id == 0)
            draft->record->id = ++highest;
          if (draft->owner != NULL)
            draft->record->owner = draft->owner->id;
        }
    }
}

static GHashTable *
names_of (Reader *reader, GbRecordKind kind)
{
  const GbField *name = gb_field (kind, "name");
  GHashTable *names = reader->by_name[kind];

  if (names != NULL)
    return names;
  reader->by_name[kind] = names = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < reader->drafts[kind]->len; i++)
    {
      const Draft *draft = reader->drafts[kind]->pdata[i];
      const char *text = gb_field_get_text (name, draft->record);

      if (text != NULL)
        g_hash_table_insert (names, (gpointer) text,
                             (gpointer) (g_hash_table_contains (names, text) ? &several_of_a_name : draft));
    }
  return names;
}

static gboolean
fail_link (Reader *reader, const Link *link, const char *format)
{
  g_autofree char *quote = gb_entry_quote (link->json->text);
  g_autofree char *sentence = g_strdup_printf (format, gb_record_type (link->field->refers_to)->name, quote);

  return fail_field (reader, GB_TEXT_FORM_ERROR_REFERENCE, link->field->kind, link->from->json, link->json, sentence);
}

static gboolean
resolve_link (Reader *reader, const Link *link)
{
  GbRecordKind kind = link->field->refers_to;
  const Draft *to = NULL;
  guint64 id;

  if (link->json->type == GB_JSON_STRING)
    to = g_hash_table_lookup (names_of (reader, kind), link->json->text);
  else if (g_ascii_string_to_unsigned (link->json->text, 10, 1, GB_STORE_MAX_ID, &id, NULL))
    to = g_hash_table_lookup (reader->by_id[kind], &id);

  if (to == &several_of_a_name)
    /* Translators: a kind of record, as it stands in the text form; a name */
    return fail_link (reader, link, _ ("more than one %s is called “%s”; its id is expected."));
  if (to == NULL && link->json->type == GB_JSON_STRING)
    return fail_link (reader, link, _ ("there is no %s called “%s”."));
  if (to == NULL)
    /* Translators: a kind of record, as it stands in the text form; a number */
    return fail_link (reader, link, _ ("there is no %s with the id %s."));
  gb_field_set_integer (link->field, link->from->record, to->record->id);
  return TRUE;
}

static gboolean
resolve_links (Reader *reader)
{
  for (guint i = 0; i < reader->links->len; i++)
    if (!resolve_link (reader, &g_array_index (reader->links, Link, i)))
      return FALSE;
  return TRUE;
}

static GbBoat *
take_all (Reader *reader)
{
  GbBoat *boat = gb_boat_new ();

  for (guint k = 0; k < GB_N_RECORDS; k++)
    for (guint i = 0; i < reader->drafts[k]->len; i++)
      gb_boat_take (boat, g_steal_pointer (&((Draft *) reader->drafts[k]->pdata[i])->record));
  gb_boat_settle (boat);
  return boat;
}

GbBoat *
gb_text_form_read (const char *text, gssize length, GError **error)
{
  g_autoptr (GbJson) root = gb_json_read (text, length < 0 ? strlen (text) : (gsize) length, error);
  Reader reader;
  GbBoat *boat = NULL;

  if (root == NULL)
    return NULL;
  reader_init (&reader);
  if (root->type != GB_JSON_OBJECT)
    fail (&reader, GB_TEXT_FORM_ERROR_FIELD, root->line, _ ("this is no build in its text form: it should begin with a brace {."));
  else if (check_version (&reader, root) && read_build (&reader, root) && read_lists (&reader, root))
    {
      hand_out_ids (&reader);
      if (resolve_links (&reader))
        boat = take_all (&reader);
    }
  reader_clear (&reader);
  if (boat == NULL)
    g_propagate_error (error, reader.error);
  return boat;
}
