/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "random-boat.h"

#include "boat/quantity.h"

#include <math.h>
#include <string.h>

/* A triangle with a hole, of any size. */
static char *
random_outline (GRand *rand)
{
  double a = g_rand_double_range (rand, 1, 10);

  return g_strdup_printf ("0 0, %.17g 0, 0 %.17g; 0.1 0.1, 200 mm 0.1, 0.1 0.2", a, a + g_rand_double (rand));
}

/* Text that files and JSON must not stumble over: quotes, backslashes, braces, letters of two, three and four bytes. */
static char *
random_text (GRand *rand, const GbField *field)
{
  static const char *const pieces[] = { "a",  "Plover", " ",  "\"", "\\", "'", "{", "]", ":", ",", "/", "é", "木",
                                        "🛶", "--",     "/*", "%s", "=",  ";", "<", "&", "0", "1", "-", "x", "ß" };
  static const char *const currencies[] = { "EUR", "GBP", "JPY", "KWD" };
  g_autoptr (GString) text = g_string_new (NULL);

  if (field->dim == GB_DIM_OUTLINE)
    return random_outline (rand);
  if (strcmp (field->name, "currency") == 0)
    return g_strdup (currencies[g_rand_int_range (rand, 0, G_N_ELEMENTS (currencies))]);
  for (int i = g_rand_int_range (rand, 1, 12); i > 0; i--)
    g_string_append (text, pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);
  if (field->dim != GB_DIM_TEXT && g_rand_boolean (rand))
    g_string_append (text, "\n\tsecond line");
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* Over the whole range, near either end, or of a boat's own size. */
static double
random_real (GRand *rand, const GbField *field)
{
  double v;

  switch (g_rand_int_range (rand, 0, 4))
    {
    case 0:
      v = g_rand_double_range (rand, field->min, field->max);
      break;
    case 1:
      v = field->max;
      break;
    case 2:
      v = field->min + (field->max - field->min) * 1e-9 * g_rand_double (rand);
      break;
    default:
      v = g_rand_int_range (rand, 0, 3000) * 0.001;
      v = CLAMP (v, field->min, field->max);
    }
  if ((field->flags & GB_FIELD_ABOVE_MIN) != 0 && v <= field->min)
    v = nextafter (field->min, field->max);
  return v;
}

/* Something that says more than a number, as it is typed into a cell; TRUE if it gave a value that the field may hold. */
static gboolean
type_something (GRand *rand, const GbBoat *boat, const GbField *field, GbRecord *record)
{
  const char *unit = gb_field_storage (field) == GB_STORAGE_REAL ? gb_quantity_unit (field->dim, GB_UNITS_METRIC) : "";
  g_autofree char *text = g_strdup_printf ("%d/%d+0.%d %s", g_rand_int_range (rand, 1, 9), g_rand_int_range (rand, 1, 9),
                                           g_rand_int_range (rand, 0, 99), unit);
  const GbBuild *build = record->kind == GB_RECORD_BUILD ? (const GbBuild *) record : gb_boat_build (boat);
  g_auto (GbValue) value = { 0 };

  if (!gb_field_parse (field, text, build, &value, NULL))
    return FALSE;
  gb_field_set (field, record, &value);
  return TRUE;
}

static gint64
random_id (GRand *rand, const GbBoat *boat, GbRecordKind kind)
{
  const GPtrArray *all = gb_boat_all (boat, kind);

  return all->len > 0 ? ((GbRecord *) all->pdata[g_rand_int_range (rand, 0, (gint32) all->len)])->id : 0;
}

static void
random_integer (GRand *rand, const GbBoat *boat, const GbField *field, GbRecord *record)
{
  gint64 v = 0;

  switch (field->dim)
    {
    case GB_DIM_CHOICE:
      v = g_rand_int_range (rand, 0, (gint32) gb_field_n_choices (field));
      break;
    case GB_DIM_FLAG:
      v = g_rand_boolean (rand);
      break;
    case GB_DIM_REF:
      v = random_id (rand, boat, field->refers_to);
      break;
    default:
      v = (gint64) g_rand_double_range (rand, field->min, field->max);
    }
  gb_field_set_integer (field, record, v);
}

static void
set_unknown (const GbField *field, GbRecord *record)
{
  g_auto (GbValue) unknown = gb_field_unknown (field);

  gb_field_set (field, record, &unknown);
}

void
random_field (GRand *rand, const GbBoat *boat, const GbField *field, GbRecord *record)
{
  gboolean choice = field->dim == GB_DIM_CHOICE || field->dim == GB_DIM_FLAG;
  g_autofree char *text = NULL;

  gb_typed_set (record, field->name, NULL);
  if (!choice && g_rand_int_range (rand, 0, 3) == 0)
    set_unknown (field, record);
  else if ((gb_field_storage (field) == GB_STORAGE_REAL || field->dim == GB_DIM_MONEY) && g_rand_int_range (rand, 0, 4) == 0
           && type_something (rand, boat, field, record))
    return;
  else
    switch (gb_field_storage (field))
      {
      case GB_STORAGE_REAL:
        gb_field_set_real (field, record, random_real (rand, field));
        break;
      case GB_STORAGE_INTEGER:
        random_integer (rand, boat, field, record);
        break;
      case GB_STORAGE_TEXT:
        text = random_text (rand, field);
        gb_field_set_text (field, record, text);
        break;
      }
}

GbRecord *
random_record (GRand *rand, const GbBoat *boat, GbRecordKind kind, gint64 id)
{
  const GbRecordType *type = gb_record_type (kind);
  g_autoptr (GbRecord) record = gb_record_new (kind);

  record->id = id;
  record->position = g_rand_int_range (rand, 0, 2) ? g_rand_int_range (rand, 1, 20) : g_rand_double_range (rand, -1e3, 1e6);
  if (type->owner != GB_N_RECORDS && (kind != GB_RECORD_PART || g_rand_int_range (rand, 0, 4) > 0))
    record->owner = random_id (rand, boat, type->owner);
  if (type->owner != GB_N_RECORDS && kind != GB_RECORD_PART && record->owner == 0)
    return NULL;
  for (guint i = 0; i < type->n_fields; i++)
    random_field (rand, boat, &type->fields[i], record);
  return g_steal_pointer (&record);
}

/* First one of each kind, in an order in which the owners are there already. */
static GbRecordKind
kind_of_nth (GRand *rand, guint i)
{
  if (i < GB_N_RECORDS)
    return (GbRecordKind) i;
  return (GbRecordKind) g_rand_int_range (rand, GB_RECORD_CATEGORY, GB_N_RECORDS);
}

GbBoat *
random_boat (GRand *rand, guint n)
{
  GbBoat *boat = gb_boat_new ();

  gb_boat_take (boat, random_record (rand, boat, GB_RECORD_BUILD, 1));
  for (guint i = GB_RECORD_CATEGORY; i < n; i++)
    {
      GbRecord *record = random_record (rand, boat, kind_of_nth (rand, i), i);

      if (record == NULL)
        continue;
      gb_boat_take (boat, record);
      gb_boat_settle (boat);
    }
  return boat;
}

GRand *
random_seeded (void)
{
  guint32 seed = (guint32) g_test_rand_int ();

  g_test_message ("seed %u", seed);
  return g_rand_new_with_seed (seed);
}
