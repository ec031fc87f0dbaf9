/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-costs-parts"

/* One walk down the tree of parts, in its flattened order. A stack holds the groups that are open: how many
 * there are of each in all, and what holds for everything in them. A group that closes hands its sums to the
 * one that it is in. */

#include "costs-private.h"
#include "density.h"
#include "rollup-private.h"

#include <math.h>

/* What is looked up for many parts in a row is mostly what was looked up before; a full hash look-up for each
 * of 100,000 would show. */
#define CACHE_SIZE 256
typedef struct
{
  gint64 id;
  guint index; /* of the record; G_MAXUINT for none */
} CacheSlot;

typedef struct
{
  guint index;
  guint end;       /* first index that is no longer in it */
  double copies;   /* of it, in the whole boat */
  gboolean there;  /* its state, or that of one above it, says so */
  gboolean named;  /* on a receipt, it or one above it */
  gboolean is_kit; /* it or one above it has a price of its own */
  guint head;
} Frame;

typedef struct
{
  GbCosts *costs;
  const GbBoat *boat;
  const GbRollup *rollup;
  const GPtrArray *stock;
  double *densities; /* of what is in tins, by index of the stock */
  double cutting;    /* 1 + allowance */
  GArray *open;      /* of Frame; the first stands for the boat */
  CacheSlot stock_cache[CACHE_SIZE], tin_cache[CACHE_SIZE], head_cache[CACHE_SIZE];
} Walk;

static guint
index_of (const Walk *walk, GbRecordKind kind, gint64 id)
{
  const GbRecord *record = gb_boat_get (walk->boat, kind, id);

  return record != NULL ? record->index : G_MAXUINT;
}

/* The first tin of a material. */
static guint
tin_of (const Walk *walk, gint64 material)
{
  for (guint s = 0; s < walk->stock->len; s++)
    {
      const GbStock *stock = walk->stock->pdata[s];

      if (stock->form == GB_FORM_TIN && stock->material == material)
        return s;
    }
  return G_MAXUINT;
}

/* The index of the record that @id names; of a material, the index of the tin that it comes in. */
static guint
cached (Walk *walk, CacheSlot *cache, GbRecordKind kind, gint64 id)
{
  CacheSlot *slot = &cache[id & (CACHE_SIZE - 1)];

  if (id == 0)
    return G_MAXUINT;
  if (slot->id != id)
    *slot = (CacheSlot){ id, kind == GB_RECORD_MATERIAL ? tin_of (walk, id) : index_of (walk, kind, id) };
  return slot->index;
}

/* The part takes @pieces of a stock, for one of it: what that costs, and the need for it unless the part was
 * bought ready. */
static gint64
take_stock (Walk *walk, guint index, double pieces, const Frame *part)
{
  const GbStock *stock = walk->stock->pdata[index];
  GbStockNeed *need = &walk->costs->stock[index];
  gboolean is_cut
      = stock->form == GB_FORM_SHEET || stock->form == GB_FORM_LENGTH || stock->form == GB_FORM_BLOCK;
  double all = pieces * part->copies * (is_cut ? walk->cutting : 1);

  need->n_parts++;
  if (!part->named && !isfinite (all))
    need->n_unknown++;
  else if (!part->named)
    need->need += all;
  if (stock->origin != GB_ORIGIN_SHOP)
    return 0;
  return gb_money_times (stock->price, all / gb_stock_pack (stock));
}

static gint64
take_resin (Walk *walk, const GbPart *part, const GbMass *mass, const Frame *frame)
{
  guint tin = cached (walk, walk->tin_cache, GB_RECORD_MATERIAL, part->resin);

  if (tin == G_MAXUINT)
    return 0;
  return take_stock (walk, tin, gb_tins_of_resin (walk->stock->pdata[tin], walk->densities[tin], part, mass),
                     frame);
}

/* What has a price of its own, part or kit, is to be bought as such until it is there. */
static void
buy_as_such (Walk *walk, const GbPart *part, const Frame *frame, GbPartCost *cost)
{
  GbHead *head = &walk->costs->heads[frame->head];

  cost->planned = gb_money_times (part->price, frame->copies);
  cost->to_buy = 0;
  if (frame->there || frame->named)
    return;
  cost->to_buy = cost->planned;
  walk->costs->others++;
  if (cost->to_buy == GB_MONEY_UNKNOWN)
    walk->costs->n_no_price++;
  gb_costs_add_known (&head->to_buy, cost->to_buy);
}

static void
find_leaf (Walk *walk, const GbPart *part, const Frame *frame, GbPartCost *cost)
{
  const GbMass *mass = &walk->rollup->parts[part->rec.index];
  gboolean is_cloth = part->takeoff == GB_TAKEOFF_COATING && part->coating == GB_COATING_CLOTH;
  guint index = part->takeoff != GB_TAKEOFF_LUMP
                    ? cached (walk, walk->stock_cache, GB_RECORD_STOCK, part->stock)
                    : G_MAXUINT;
  const GbStock *stock = index != G_MAXUINT ? walk->stock->pdata[index] : NULL;

  if (frame->copies == 0)
    {
      cost->planned = cost->to_buy = 0;
      return;
    }
  if (stock != NULL)
    {
      cost->to_buy = 0;
      cost->planned
          = take_stock (walk, index, gb_pieces_of_stock (stock, walk->densities[index], part, mass), frame);
      if (cost->planned == GB_MONEY_UNKNOWN)
        cost->planned = gb_money_times (part->price, frame->copies);
    }
  else if (part->price == GB_MONEY_UNKNOWN && frame->is_kit)
    cost->to_buy = 0;
  else
    buy_as_such (walk, part, frame, cost);
  if (is_cloth && (stock == NULL || stock->form != GB_FORM_TIN))
    cost->planned = gb_money_add (cost->planned, take_resin (walk, part, mass, frame));
}

/* Adds the part's costs to those of the group that is open. */
static void
hand_up (Walk *walk, guint index)
{
  const GbPartCost *cost = &walk->costs->parts[index];
  guint above = g_array_index (walk->open, Frame, walk->open->len - 1).index;

  if (above == G_MAXUINT)
    return;
  gb_costs_add_known (&walk->costs->parts[above].planned, cost->planned);
  gb_costs_add_known (&walk->costs->parts[above].to_buy, cost->to_buy);
  gb_costs_add_known (&walk->costs->parts[above].bought, cost->bought);
}

static void
close_frame (Walk *walk)
{
  guint index = g_array_index (walk->open, Frame, walk->open->len - 1).index;

  g_array_set_size (walk->open, walk->open->len - 1);
  hand_up (walk, index);
}

static Frame
enter (Walk *walk, const GbPart *part)
{
  const Frame *above = &g_array_index (walk->open, Frame, walk->open->len - 1);
  guint head = cached (walk, walk->head_cache, GB_RECORD_CATEGORY, part->category);

  return (Frame){
    .index = part->rec.index,
    .end = part->rec.index + 1 + part->n_below,
    .copies = above->copies * gb_part_copies (part),
    .there = above->there || part->state > GB_STATE_PLANNED,
    .named = above->named || walk->costs->parts[part->rec.index].n_bought > 0,
    .is_kit = above->is_kit || (part->kind == GB_KIND_GROUP && part->price != GB_MONEY_UNKNOWN),
    .head = head != G_MAXUINT ? head : above->head,
  };
}

/* Parts and their amounts lie far apart in memory: asks for those that come soon while there is other work.
 * It nearly halves the time. Always inlined, because a function that does nothing else counts as doing
 * nothing. */
G_ALWAYS_INLINE static inline void
ask_ahead (const Walk *walk, const GPtrArray *parts, guint i)
{
  const GbPart *part;

  if (i >= parts->len)
    return;
  part = parts->pdata[i];
  __builtin_prefetch (&part->kind);
  __builtin_prefetch (&part->stock);
  __builtin_prefetch (&part->price);
  __builtin_prefetch (&walk->rollup->parts[i].amount);
}

static void
walk_parts (Walk *walk)
{
  const GPtrArray *parts = gb_boat_all (walk->boat, GB_RECORD_PART);

  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];
      GbPartCost *cost = &walk->costs->parts[i];
      Frame frame;

      ask_ahead (walk, parts, i + 16);
      while (g_array_index (walk->open, Frame, walk->open->len - 1).end <= i)
        close_frame (walk);
      frame = enter (walk, part);
      if (part->kind != GB_KIND_GROUP)
        find_leaf (walk, part, &frame, cost);
      else if (part->price != GB_MONEY_UNKNOWN && frame.copies != 0)
        buy_as_such (walk, part, &frame, cost);
      else if (part->n_below == 0)
        cost->to_buy = 0;
      if (part->n_below > 0)
        g_array_append_val (walk->open, frame);
      else
        hand_up (walk, i);
    }
  while (walk->open->len > 1)
    close_frame (walk);
}

void
gb_costs_find_parts (GbCosts *costs, const GbBoat *boat, const GbRollup *rollup)
{
  double allowance = gb_boat_build (boat)->cutting_allowance;
  Walk walk = {
    .costs = costs,
    .boat = boat,
    .rollup = rollup,
    .stock = gb_boat_all (boat, GB_RECORD_STOCK),
    .cutting = 1 + (allowance > 0 ? allowance : 0),
    .open = g_array_new (FALSE, FALSE, sizeof (Frame)),
  };
  Frame whole = { .index = G_MAXUINT, .end = G_MAXUINT, .copies = 1, .head = costs->n_heads - 1 };
  g_autofree double *densities = g_new (double, walk.stock->len + 1);

  walk.densities = densities;
  for (guint s = 0; s < walk.stock->len; s++)
    {
      const GbStock *stock = walk.stock->pdata[s];
      const GbMaterial *material
          = stock->form == GB_FORM_TIN ? gb_boat_material (boat, stock->material) : NULL;

      densities[s] = material != NULL ? gb_material_figures (material).density : NAN;
    }
  g_array_append_val (walk.open, whole);
  walk_parts (&walk);
  g_array_unref (walk.open);
}
