/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-takeoff"

#include "takeoff-book.h"

#include <math.h>
#include <string.h>

/* Ids are small numbers counted from 1, so their last bits spread them well. */
#define N_SLOTS 256

typedef struct
{
  gint64 id;
  const GbRecord *record;
} Slot;

typedef struct
{
  char *text;
  GbOutlineProperties properties;
  gboolean readable;
  guint asked; /* the opening at which it was last asked for */
} Outline;

typedef struct
{
  gint64 hull;
  double above, below;
  GbMoments moments;
} Skin;

struct _GbBook
{
  const GbBoat *boat;
  const GbHullSet *hulls;
  GArray *figures; /* of GbMaterialFigures, by index */
  Slot materials[N_SLOTS];
  Slot stock[N_SLOTS];
  GArray *skins; /* of Skin */
  GHashTable
      *outlines; /* where the part keeps the text -> Outline; what stands there now may be another one */
  guint opening;
};

static void
outline_free (gpointer outline)
{
  g_free (((Outline *) outline)->text);
  g_free (outline);
}

GbBook *
gb_book_new (void)
{
  GbBook *book = g_new0 (GbBook, 1);

  book->figures = g_array_new (FALSE, FALSE, sizeof (GbMaterialFigures));
  book->skins = g_array_new (FALSE, FALSE, sizeof (Skin));
  book->outlines = g_hash_table_new_full (NULL, NULL, NULL, outline_free);
  return book;
}

void
gb_book_free (GbBook *book)
{
  if (book == NULL)
    return;
  g_array_unref (book->figures);
  g_array_unref (book->skins);
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
  g_array_set_size (book->skins, 0);
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

  outline->text = g_strdup (text);
  outline->readable = parsed != NULL;
  if (parsed != NULL)
    outline->properties = gb_outline_properties (parsed);
  return outline;
}

const GbOutlineProperties *
gb_book_outline (GbBook *book, const char *text)
{
  Outline *outline = g_hash_table_lookup (book->outlines, text);

  if (outline == NULL || strcmp (outline->text, text) != 0)
    {
      outline = read_outline (text);
      g_hash_table_replace (book->outlines, (gpointer) text, outline);
    }
  outline->asked = book->opening;
  return outline->readable ? &outline->properties : NULL;
}

static GbMoments
surface_moments (const GbMesh *mesh, double above, double below)
{
  GbSurface surface = gb_mesh_surface (mesh, above, below);
  GbAxes to_centre = gb_axes_none;
  GbMoments moments = { .m = surface.area,
                        .xx = surface.xx,
                        .yy = surface.yy,
                        .zz = surface.zz,
                        .xy = surface.xy,
                        .yz = surface.yz,
                        .zx = surface.zx };

  if (!(surface.area > 0))
    return (GbMoments){ 0 };
  to_centre.origin[0] = surface.centre.x;
  to_centre.origin[1] = surface.centre.y;
  to_centre.origin[2] = surface.centre.z;
  gb_moments_move (&moments, &to_centre);
  return moments;
}

static GbMoments
measure_skin (const GbHullShape *hull, double above, double below)
{
  GbMoments moments = surface_moments (hull->mesh, above, below);

  if (hull->mirrored != NULL)
    {
      GbMoments other = surface_moments (hull->mirrored, above, below);

      gb_moments_add (&moments, &other);
    }
  return moments;
}

GbMoments
gb_book_skin (GbBook *book, const GbPart *part)
{
  Skin skin = { .hull = part->hull,
                .above = part->extent == GB_EXTENT_ABOVE ? part->height : -INFINITY,
                .below = part->extent == GB_EXTENT_BELOW ? part->height : INFINITY };

  for (guint i = 0; i < book->skins->len; i++)
    {
      const Skin *known = &g_array_index (book->skins, Skin, i);

      if (known->hull == skin.hull && known->above == skin.above && known->below == skin.below)
        return known->moments;
    }
  skin.moments = measure_skin (gb_book_hull (book, part->hull), skin.above, skin.below);
  g_array_append_val (book->skins, skin);
  return skin.moments;
}
