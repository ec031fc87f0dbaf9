/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-takeoff"

#include "takeoff-book.h"

/* Ids are small numbers counted from 1, so their last bits spread them well. */
#define N_SLOTS 256

typedef struct
{
  gint64 id;
  const GbRecord *record;
} Slot;

typedef struct
{
  GbOutlineProperties properties;
  gboolean readable;
  guint asked; /* the opening at which it was last asked for */
} Outline;

struct _GbBook
{
  const GbBoat *boat;
  const GbHullSet *hulls;
  GArray *figures; /* of GbMaterialFigures, by index */
  Slot materials[N_SLOTS];
  Slot stock[N_SLOTS];
  GHashTable *outlines; /* text -> Outline */
  guint opening;
};

GbBook *
gb_book_new (void)
{
  GbBook *book = g_new0 (GbBook, 1);

  book->figures = g_array_new (FALSE, FALSE, sizeof (GbMaterialFigures));
  book->outlines = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  return book;
}

void
gb_book_free (GbBook *book)
{
  if (book == NULL)
    return;
  g_array_unref (book->figures);
  g_hash_table_unref (book->outlines);
  g_free (book);
}

static void
forget (Slot *slots)
{
  for (guint i = 0; i < N_SLOTS; i++)
    slots[i] = (Slot){ 0, NULL };
}

void
gb_book_open (GbBook *book, const GbBoat *boat, const GbHullSet *hulls)
{
  const GPtrArray *materials = gb_boat_all (boat, GB_RECORD_MATERIAL);

  book->boat = boat;
  book->hulls = hulls;
  book->opening++;
  forget (book->materials);
  forget (book->stock);
  g_array_set_size (book->figures, materials->len);
  for (guint i = 0; i < materials->len; i++)
    g_array_index (book->figures, GbMaterialFigures, i) = gb_material_figures (materials->pdata[i]);
}

static gboolean
is_old_cb (gpointer text, gpointer outline, gpointer book)
{
  return ((Outline *) outline)->asked != ((GbBook *) book)->opening;
}

void
gb_book_close (GbBook *book)
{
  g_hash_table_foreach_remove (book->outlines, is_old_cb, book);
}

const GbMaterialFigures *
gb_book_figures (const GbBook *book, guint material)
{
  return &g_array_index (book->figures, GbMaterialFigures, material);
}

static const GbRecord *
look_up (const GbBoat *boat, Slot *slots, GbRecordKind kind, gint64 id)
{
  Slot *slot = &slots[id % N_SLOTS];

  if (slot->id != id)
    *slot = (Slot){ id, gb_boat_get (boat, kind, id) };
  return slot->record;
}

const GbMaterial *
gb_book_material (GbBook *book, gint64 id)
{
  return (const GbMaterial *) look_up (book->boat, book->materials, GB_RECORD_MATERIAL, MAX (id, 0));
}

const GbStock *
gb_book_stock (GbBook *book, gint64 id)
{
  return (const GbStock *) look_up (book->boat, book->stock, GB_RECORD_STOCK, MAX (id, 0));
}

const GbHullShape *
gb_book_hull (GbBook *book, gint64 id)
{
  const GbHull *hull = gb_boat_hull (book->boat, id);

  if (hull == NULL || book->hulls == NULL || hull->rec.index >= book->hulls->n_hulls)
    return NULL;
  return &book->hulls->hulls[hull->rec.index];
}

static Outline *
read_outline (const char *text)
{
  g_autoptr (GbOutline) parsed = gb_outline_parse (text, NULL);
  Outline *outline = g_new0 (Outline, 1);

  outline->readable = parsed != NULL;
  if (parsed != NULL)
    outline->properties = gb_outline_properties (parsed);
  return outline;
}

const GbOutlineProperties *
gb_book_outline (GbBook *book, const char *text)
{
  Outline *outline = g_hash_table_lookup (book->outlines, text);

  if (outline == NULL)
    {
      outline = read_outline (text);
      g_hash_table_insert (book->outlines, g_strdup (text), outline);
    }
  outline->asked = book->opening;
  return outline->readable ? &outline->properties : NULL;
}
