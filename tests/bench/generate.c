/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "generate-private.h"

#include <math.h>

#define N_CATEGORIES 6
#define N_MATERIALS 40
#define N_STOCK 60
#define MAX_DEPTH 8
#define FIRST_DAY 739000 /* 28 April 2024 */

typedef GenerateMaker Maker;

static double
between (Maker *maker, double low, double high)
{
  /* Rounded to what a builder would enter, so that the texts stay short. */
  return round (g_rand_double_range (maker->rand, low, high) * 1000) / 1000;
}

static int
pick (Maker *maker, int n)
{
  return g_rand_int_range (maker->rand, 0, n);
}

/* TRUE once in @n. */
static gboolean
once_in (Maker *maker, int n)
{
  return pick (maker, n) == 0;
}

static gint64
pick_id (Maker *maker, GbRecordKind kind)
{
  return 1 + pick (maker, (int) maker->next[kind]);
}

gpointer
generate_make (Maker *maker, GbRecordKind kind, gint64 owner)
{
  GbRecord *record = gb_record_new (kind);

  record->id = ++maker->next[kind];
  record->owner = owner;
  record->position = record->id;
  return record;
}

gint64
generate_take (Maker *maker, gpointer record)
{
  return gb_boat_take (maker->boat, record)->id;
}

static void
make_categories (Maker *maker)
{
  static const char *names[N_CATEGORIES]
      = { "Timber", "Resin and paint", "Rig", "Fittings", "Tools", "Delivery" };

  for (guint i = 0; i < N_CATEGORIES; i++)
    {
      GbCategory *category = generate_make (maker, GB_RECORD_CATEGORY, 0);

      category->name = g_strdup (names[i]);
      category->budget = 10000 + 2500 * pick (maker, 20);
      generate_take (maker, category);
    }
}

static void
make_sample (Maker *maker, gint64 material)
{
  GbSample *sample = generate_make (maker, GB_RECORD_SAMPLE, material);

  sample->date = FIRST_DAY + pick (maker, 100);
  sample->length = 1;
  sample->width = 0.5;
  sample->thickness = 0.01;
  sample->mass = between (maker, 2, 4);
  generate_take (maker, sample);
}

/* Of every four, one is a wood, one known by area, one by length, one by volume. */
static void
make_materials (Maker *maker)
{
  static const GbMeasure measures[]
      = { GB_MEASURE_DENSITY, GB_MEASURE_WOOD, GB_MEASURE_AREAL, GB_MEASURE_LINEAR };
  static const GbFamily families[] = { GB_FAMILY_PLYWOOD, GB_FAMILY_WOOD, GB_FAMILY_FIBRE, GB_FAMILY_ROPE };

  for (guint i = 0; i < N_MATERIALS; i++)
    {
      GbMaterial *material = generate_make (maker, GB_RECORD_MATERIAL, 0);

      material->name = g_strdup_printf ("Material %u", i + 1);
      material->measure = measures[i % 4];
      material->family = families[i % 4];
      material->density = between (maker, 300, 1300);
      material->basic_gravity = between (maker, 0.3, 0.7);
      material->areal_mass = between (maker, 0.1, 0.6);
      material->linear_mass = between (maker, 0.05, 0.5);
      material->spread = once_in (maker, 3) ? NAN : between (maker, 0.02, 0.12);
      material->source = g_strdup ("Invented, for measuring speed");
      generate_take (maker, material);
      if (i % 8 == 0)
        make_sample (maker, material->rec.id);
    }
}

/* A material of the measures made above. */
static gint64
pick_material (Maker *maker, GbMeasure measure)
{
  static const int order[]
      = { [GB_MEASURE_DENSITY] = 0, [GB_MEASURE_WOOD] = 1, [GB_MEASURE_AREAL] = 2, [GB_MEASURE_LINEAR] = 3 };

  return 1 + 4 * pick (maker, N_MATERIALS / 4) + order[measure];
}

static void
make_stock (Maker *maker)
{
  for (guint i = 0; i < N_STOCK; i++)
    {
      GbStock *stock = generate_make (maker, GB_RECORD_STOCK, 0);

      stock->name = g_strdup_printf ("Stock %u", i + 1);
      stock->form = i % 5;
      stock->material
          = pick_material (maker, stock->form == GB_FORM_LENGTH ? GB_MEASURE_WOOD : GB_MEASURE_DENSITY);
      stock->length = between (maker, 1, 4);
      stock->width = stock->form == GB_FORM_LENGTH ? between (maker, 0.02, 0.1) : between (maker, 0.6, 1.3);
      stock->thickness = between (maker, 0.004, 0.03);
      stock->volume = between (maker, 0.25, 5) / 1000;
      stock->mass = between (maker, 0.01, 1);
      stock->pack = once_in (maker, 4) ? 10 : 1;
      stock->price = 200 + pick (maker, 9800);
      stock->on_hand = once_in (maker, 3) ? 1 : 0;
      stock->supplier = g_strdup_printf ("Yard %d", pick (maker, 5) + 1);
      stock->category = pick_id (maker, GB_RECORD_CATEGORY);
      generate_take (maker, stock);
    }
}

static gint64
pick_stock (Maker *maker, GbForm form)
{
  return 1 + 5 * pick (maker, N_STOCK / 5) + form;
}

static char *
make_outline (Maker *maker)
{
  double length = between (maker, 0.3, 2), width = between (maker, 0.1, 0.6);
  double hole = width / 4;
  char n[5][G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (n[0], sizeof n[0], "%.4f", length);
  g_ascii_formatd (n[1], sizeof n[1], "%.4f", width);
  g_ascii_formatd (n[2], sizeof n[2], "%.4f", width * 0.8);
  g_ascii_formatd (n[3], sizeof n[3], "%.4f", hole);
  g_ascii_formatd (n[4], sizeof n[4], "%.4f", 2 * hole);
  return g_strdup_printf ("0 0, %s 0, %s %s, 0 %s; %s %s, %s %s, %s %s", n[0], n[0], n[1], n[2], n[3], n[3],
                          n[4], n[3], n[3], n[4]);
}

static void
make_sheet (Maker *maker, GbPart *part)
{
  part->length = between (maker, 0.1, 2.4);
  part->width = between (maker, 0.05, 0.6);
  part->thickness = between (maker, 0.003, 0.018);
  part->material = pick_material (maker, GB_MEASURE_DENSITY);
  if (once_in (maker, 3))
    part->stock = pick_stock (maker, GB_FORM_SHEET);
  if (once_in (maker, 10))
    part->outline = make_outline (maker);
  else if (once_in (maker, 10))
    part->area = between (maker, 0.05, 1);
}

static void
make_length (Maker *maker, GbPart *part)
{
  part->length = between (maker, 0.1, 4);
  part->section = pick (maker, 4);
  part->width = between (maker, 0.01, 0.06);
  part->thickness = between (maker, 0.01, 0.04);
  part->diameter = between (maker, 0.02, 0.06);
  part->wall = 0.002;
  part->material
      = pick_material (maker, part->section == GB_SECTION_LINEAR ? GB_MEASURE_LINEAR : GB_MEASURE_WOOD);
  if (part->section == GB_SECTION_RECTANGLE && once_in (maker, 2))
    part->stock = pick_stock (maker, GB_FORM_LENGTH);
}

static void
make_block (Maker *maker, GbPart *part)
{
  part->material = pick_material (maker, once_in (maker, 2) ? GB_MEASURE_WOOD : GB_MEASURE_DENSITY);
  part->length = between (maker, 0.05, 0.5);
  part->width = between (maker, 0.02, 0.2);
  part->thickness = between (maker, 0.02, 0.2);
  if (once_in (maker, 5))
    part->volume = between (maker, 0.001, 0.02);
}

static void
make_skin (Maker *maker, GbPart *part)
{
  part->hull = pick_id (maker, GB_RECORD_HULL);
  part->extent = pick (maker, 3);
  part->height = 0.3;
  part->thickness = 0.006;
  part->material = pick_material (maker, GB_MEASURE_DENSITY);
}

static void
make_coating (Maker *maker, GbPart *part)
{
  int what = pick (maker, 10);

  if (what < 6)
    part->area = between (maker, 0.1, 4);
  else
    part->surface_of = what < 9 ? maker->last_leaf : part->rec.owner;
  part->coats = 1 + pick (maker, 3);
  part->coating = pick (maker, 2);
  if (part->coating == GB_COATING_CLOTH)
    {
      part->material = pick_material (maker, GB_MEASURE_AREAL);
      part->resin = pick_material (maker, GB_MEASURE_DENSITY);
    }
  else
    {
      part->material = pick_material (maker, GB_MEASURE_DENSITY);
      part->coverage = 1000 * between (maker, 8, 14);
    }
}

static void
make_count (Maker *maker, GbPart *part)
{
  part->quantity = 1 + pick (maker, 24);
  if (once_in (maker, 2))
    part->stock = pick_stock (maker, GB_FORM_PIECE);
  else
    part->unit_mass = between (maker, 0.002, 0.3);
}

static void
choose_takeoff (Maker *maker, GbPart *part)
{
  int share = pick (maker, 1000);

  if (share < 400)
    part->takeoff = GB_TAKEOFF_SHEET;
  else if (share < 700)
    part->takeoff = GB_TAKEOFF_LENGTH;
  else if (share < 780)
    part->takeoff = GB_TAKEOFF_BLOCK;
  else if (share < 781)
    part->takeoff = GB_TAKEOFF_SKIN;
  else if (share < 820)
    part->takeoff = GB_TAKEOFF_COATING;
  else if (share < 920)
    part->takeoff = GB_TAKEOFF_COUNT;
  else
    part->takeoff = GB_TAKEOFF_LUMP;
}

static void
size_leaf (Maker *maker, GbPart *part)
{
  choose_takeoff (maker, part);
  switch ((GbTakeoff) part->takeoff)
    {
    case GB_TAKEOFF_SHEET:
      make_sheet (maker, part);
      break;
    case GB_TAKEOFF_LENGTH:
      make_length (maker, part);
      break;
    case GB_TAKEOFF_BLOCK:
      make_block (maker, part);
      break;
    case GB_TAKEOFF_SKIN:
      make_skin (maker, part);
      break;
    case GB_TAKEOFF_COATING:
      make_coating (maker, part);
      break;
    case GB_TAKEOFF_COUNT:
      make_count (maker, part);
      break;
    case GB_TAKEOFF_LUMP:
    default:
      part->mass = between (maker, 0.1, 5);
      break;
    }
}

static void
make_leaf (Maker *maker, GbPart *part)
{
  part->name = g_strdup_printf ("Part %" G_GINT64_FORMAT, part->rec.id);
  part->x = between (maker, 0, 2);
  part->y = between (maker, -0.5, 0.5);
  part->z = between (maker, 0, 0.6);
  part->pair = once_in (maker, 5);
  part->state = pick (maker, 4);
  part->category = once_in (maker, 4) ? pick_id (maker, GB_RECORD_CATEGORY) : 0;
  part->price = once_in (maker, 6) ? 100 * (1 + pick (maker, 50)) : GB_MONEY_UNKNOWN;
  if (once_in (maker, 20))
    part->turn_z = between (maker, -1, 1);
  size_leaf (maker, part);
  if (once_in (maker, 100))
    part->material = part->stock = 0;
  if (once_in (maker, 100))
    part->x = NAN;
  maker->last_leaf = part->rec.id;
}

static void
make_group (Maker *maker, GbPart *part)
{
  part->kind = GB_KIND_GROUP;
  part->name = g_strdup_printf ("Group %" G_GINT64_FORMAT, part->rec.id);
  part->x = between (maker, -0.2, 0.2);
  part->y = once_in (maker, 2) ? between (maker, 0, 0.2) : 0;
  part->z = between (maker, 0, 0.1);
  part->pair = once_in (maker, 12);
  if (once_in (maker, 20))
    part->quantity = 2;
  if (once_in (maker, 40))
    part->turn_y = between (maker, -0.5, 0.5);
  if (once_in (maker, 40))
    part->turn_z = between (maker, -0.5, 0.5);
}

/* Opens and closes groups at random, so that each holds about ten parts and groups lie up to MAX_DEPTH deep.
 */
static void
make_parts (Maker *maker, guint n_parts)
{
  for (guint i = 0; i < n_parts; i++)
    {
      GbPart *part;
      gboolean group;

      if (maker->groups->len > 1 && once_in (maker, 11))
        g_array_set_size (maker->groups, maker->groups->len - 1);
      group = i == 0 || (maker->groups->len < MAX_DEPTH && once_in (maker, 10));
      part = generate_make (maker, GB_RECORD_PART,
                            maker->groups->len > 0 ? g_array_index (maker->groups, gint64, maker->groups->len - 1) : 0);
      if (group)
        make_group (maker, part);
      else
        make_leaf (maker, part);
      generate_take (maker, part);
      if (group)
        g_array_append_val (maker->groups, maker->next[GB_RECORD_PART]);
    }
}

static void
make_reading (Maker *maker, gint64 weighing, double mass, double x, double y)
{
  GbReading *reading = generate_make (maker, GB_RECORD_READING, weighing);

  reading->mass = mass;
  reading->x = x;
  reading->y = y;
  generate_take (maker, reading);
}

static void
make_weighings (Maker *maker, guint n_parts)
{
  for (guint i = 0; i < 1 + n_parts / 200; i++)
    {
      GbWeighing *weighing = generate_make (maker, GB_RECORD_WEIGHING, 0);

      weighing->part = i == 0 && n_parts > 1000 ? 0 : pick_id (maker, GB_RECORD_PART);
      weighing->date = FIRST_DAY + pick (maker, 300);
      weighing->on_scale = pick (maker, 2);
      weighing->mass_sd = once_in (maker, 2) ? 0.01 : NAN;
      generate_take (maker, weighing);
      if (once_in (maker, 4))
        {
          make_reading (maker, weighing->rec.id, between (maker, 0.5, 4), 0.5, NAN);
          make_reading (maker, weighing->rec.id, between (maker, 0.5, 4), 2.5, NAN);
        }
      else
        make_reading (maker, weighing->rec.id, between (maker, 0.5, 8), NAN, NAN);
    }
}

static void
make_line (Maker *maker, gint64 purchase)
{
  GbLine *line = generate_make (maker, GB_RECORD_LINE, purchase);

  line->kind = pick (maker, 5);
  line->what = g_strdup_printf ("Line %" G_GINT64_FORMAT, line->rec.id);
  if (line->kind == GB_LINE_STOCK)
    line->stock = pick_id (maker, GB_RECORD_STOCK);
  else if (line->kind == GB_LINE_PART)
    line->part = pick_id (maker, GB_RECORD_PART);
  else
    line->category = pick_id (maker, GB_RECORD_CATEGORY);
  line->quantity = once_in (maker, 30) ? -1 : 1 + pick (maker, 4);
  line->price = 50 + pick (maker, 8000);
  line->discount = once_in (maker, 8) ? 0.1 : 0;
  generate_take (maker, line);
}

static void
make_purchases (Maker *maker, guint n_parts)
{
  for (guint i = 0; i < 1 + n_parts / 50; i++)
    {
      GbPurchase *purchase = generate_make (maker, GB_RECORD_PURCHASE, 0);

      purchase->date = FIRST_DAY + pick (maker, 300);
      purchase->supplier = g_strdup_printf ("Yard %d", pick (maker, 5) + 1);
      generate_take (maker, purchase);
      for (int n = 1 + pick (maker, 4); n > 0; n--)
        make_line (maker, purchase->rec.id);
    }
}

GbBoat *
generate_boat (guint n_parts, guint32 seed)
{
  GbBoat *boat = gb_boat_new ();
  Maker maker = { .rand = g_rand_new_with_seed (seed),
                  .boat = boat,
                  .groups = g_array_new (FALSE, FALSE, sizeof (gint64)) };
  GbBuild *build = (GbBuild *) gb_boat_get (boat, GB_RECORD_BUILD, 1);

  g_free (build->name);
  build->name = g_strdup_printf ("%u parts", n_parts);
  build->target_mass = 60;
  make_categories (&maker);
  make_materials (&maker);
  make_stock (&maker);
  generate_hulls (&maker);
  make_parts (&maker, n_parts);
  if (n_parts > 0)
    {
      make_weighings (&maker, n_parts);
      make_purchases (&maker, n_parts);
    }
  generate_conditions (&maker);
  gb_boat_settle (boat);

  g_array_unref (maker.groups);
  g_rand_free (maker.rand);
  return boat;
}
