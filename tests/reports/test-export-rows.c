/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Parts that go out as rows, and come back. */

#include "import-testing.h"
#include "random-boat.h"
#include "reports/import.h"

#include <math.h>
#include <string.h>

/* As an entry is: without white space at its ends, and a name that is not empty. */
static void
tidy_texts (GbRecord *record, guint number)
{
  const GbRecordType *type = gb_record_type (record->kind);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      const char *text
          = gb_field_storage (field) == GB_STORAGE_TEXT ? gb_field_get_text (field, record) : NULL;
      gboolean is_name = strcmp (field->name, "name") == 0;
      g_autofree char *tidy = NULL;

      if (text == NULL && !is_name)
        continue;
      /* Names differ, because that is what references go by. */
      tidy = is_name ? g_strdup_printf ("%s %u", text != NULL ? text : "", number) : g_strdup (text);
      gb_field_set_text (field, record, g_strstrip (tidy));
    }
}

static GbBoat *
random_parts (GRand *rand, guint n)
{
  GbBoat *boat = new_boat ();
  const GbRecordKind others[] = { GB_RECORD_MATERIAL, GB_RECORD_STOCK, GB_RECORD_CATEGORY, GB_RECORD_HULL };

  for (guint k = 0; k < G_N_ELEMENTS (others); k++)
    for (gint64 id = 1; id <= 4; id++)
      {
        g_autofree char *name = g_strdup_printf ("%s no. %d", gb_record_type (others[k])->name, (int) id);

        add_named (boat, others[k], id, name);
      }
  for (gint64 id = 1; id <= n; id++)
    {
      GbRecord *record = random_record (rand, boat, GB_RECORD_PART, id);
      GbPart *part = (GbPart *) record;
      gint64 owner = g_rand_int_range (rand, 0, (gint32) id);

      part->kind = id < n / 2 ? GB_KIND_GROUP : GB_KIND_PART;
      record->owner = owner < n / 2 ? owner : 0;
      record->position = (double) id;
      tidy_texts (record, (guint) id);
      gb_boat_take (boat, record);
      gb_boat_settle (boat);
    }
  return boat;
}

/* Ids and positions are new on the way in, and references go by name. */
static void
assert_same_parts (const GbBoat *a, const GbBoat *b)
{
  const GPtrArray *p = gb_boat_all (a, GB_RECORD_PART), *q = gb_boat_all (b, GB_RECORD_PART);
  const GbRecordType *type = gb_record_type (GB_RECORD_PART);

  g_assert_cmpuint (p->len, ==, q->len);
  for (guint i = 0; i < p->len; i++)
    for (guint f = 0; f < type->n_fields; f++)
      {
        const GbField *field = &type->fields[f];
        g_auto (GbValue) u = gb_field_get (field, p->pdata[i]);
        g_auto (GbValue) v = gb_field_get (field, q->pdata[i]);

        if (field->dim == GB_DIM_REF)
          {
            const GbRecord *r = gb_boat_get (a, field->refers_to, u.integer),
                           *s = gb_boat_get (b, field->refers_to, v.integer);

            g_assert_cmpint (r == NULL, ==, s == NULL);
            g_assert_true (r == NULL || r->kind != GB_RECORD_PART || r->index == s->index);
            g_assert_true (r == NULL || r->kind == GB_RECORD_PART || u.integer == v.integer);
            continue;
          }
        /* A share is written in per cent, which may cost its last bit. */
        if (!(isnan (u.real) && isnan (v.real))
            && fabs (u.real - v.real) > (field->dim == GB_DIM_RATIO ? 4e-16 * u.real : 0))
          g_error ("part %u: %s is %.17g, was %.17g", i, field->name, v.real, u.real);
        if (u.integer != v.integer)
          g_error ("part %u: %s is %d, was %d", i, field->name, (int) v.integer, (int) u.integer);
        g_assert_cmpstr (u.text, ==, v.text);
        /* A number of more digits than are shown was as good as typed now. */
        if (u.typed != NULL)
          g_assert_cmpstr (u.typed, ==, v.typed);
        g_assert_cmpuint (((GbPart *) p->pdata[i])->depth, ==, ((GbPart *) q->pdata[i])->depth);
      }
}

static void
test_rows_there_and_back (void)
{
  g_autoptr (GRand) rand = random_seeded ();

  for (guint round = 0; round < 30; round++)
    {
      g_autoptr (GbBoat) boat = random_parts (rand, 20);
      g_autoptr (GbBoat) back = random_parts (rand, 0);
      g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
      g_autofree char *rows = NULL;

      build_of (boat)->units = build_of (back)->units = round % 2 == 0 ? GB_UNITS_METRIC : GB_UNITS_FEET;
      for (gint64 id = 1; id <= 20; id++)
        g_array_append_val (ids, id);
      rows = gb_export_rows (boat, (gint64 *) ids->data, ids->len);
      import_all (back, GB_RECORD_PART, rows);
      assert_same_parts (boat, back);
    }
}

/* A plain part as rows: what a spreadsheet gets. */
static void
test_rows_as_a_spreadsheet_gets_them (void)
{
  g_autoptr (GbBoat) boat = new_boat ();
  const gint64 ids[] = { 1, 2, 2 };
  g_autofree char *rows = NULL;
  GbPart *part;

  add_named (boat, GB_RECORD_MATERIAL, 1, "okoume ply");
  add_named (boat, GB_RECORD_PART, 1, "Hull");
  add_named (boat, GB_RECORD_PART, 2, "=Bottom");
  ((GbPart *) gb_boat_get (boat, GB_RECORD_PART, 1))->kind = GB_KIND_GROUP;
  part = (GbPart *) gb_boat_get (boat, GB_RECORD_PART, 2);
  part->rec.owner = 1;
  part->material = 1;
  part->length = 2.1;
  part->thickness = 0.0065;
  add_named (boat, GB_RECORD_PART, 3, "not asked for");
  rows = gb_export_rows (boat, ids, G_N_ELEMENTS (ids));
  g_assert_cmpstr (rows, ==,
                   "Name\tGroup\tKind\tQuantity\tTake-off\tMaterial\tLength (mm)\tThickness (mm)\tSection\n"
                   "Hull\t\tGroup\t1\tSheet\t\t\t\tRectangle\n"
                   "'=Bottom\tHull\tPart\t1\tSheet\tokoume ply\t2100\t6.5\tRectangle\n");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/export/rows-there-and-back", test_rows_there_and_back);
  g_test_add_func ("/export/rows-as-a-spreadsheet-gets-them", test_rows_as_a_spreadsheet_gets_them);
  return g_test_run ();
}
