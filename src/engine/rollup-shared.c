/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-rollup"

#include "rollup-shared.h"

void
gb_shared_errors_start (GbSharedErrors *errors, guint n_materials)
{
  if (errors->stack == NULL)
    {
      errors->stack = g_array_new (FALSE, FALSE, sizeof (GbSharedError));
      errors->where = g_array_new (FALSE, FALSE, sizeof (guint));
    }
  g_array_set_size (errors->stack, 0);
  g_array_set_size (errors->where, n_materials);
  for (guint i = 0; i < n_materials; i++)
    g_array_index (errors->where, guint, i) = GB_NO_ENTRY;
}

void
gb_shared_errors_clear (GbSharedErrors *errors)
{
  g_clear_pointer (&errors->stack, g_array_unref);
  g_clear_pointer (&errors->where, g_array_unref);
}

static void
add_to (GbSharedError *entry, const GbFirst *first, double loose)
{
  entry->first.m += first->m;
  entry->first.x += first->x;
  entry->first.y += first->y;
  entry->first.z += first->z;
  entry->loose += loose;
}

static gboolean
lies_in (guint entry, guint bottom)
{
  return entry != GB_NO_ENTRY && entry >= bottom;
}

void
gb_shared_errors_add (
    GbSharedErrors *errors, guint bottom, guint material, const GbFirst *first, double loose)
{
  guint *where = &g_array_index (errors->where, guint, material);

  if (lies_in (*where, bottom))
    {
      add_to (&g_array_index (errors->stack, GbSharedError, *where), first, loose);
    }
  else
    {
      GbSharedError entry = { material, *where, *first, loose };

      *where = errors->stack->len;
      g_array_append_val (errors->stack, entry);
    }
}

void
gb_shared_errors_close (GbSharedErrors *errors, guint outer, guint bottom)
{
  GbSharedError *entries = (GbSharedError *) (void *) errors->stack->data;
  guint kept = bottom;

  for (guint i = bottom; i < errors->stack->len; i++)
    {
      GbSharedError entry = entries[i];
      guint *where = &g_array_index (errors->where, guint, entry.material);

      if (lies_in (entry.covers, outer))
        {
          add_to (&entries[entry.covers], &entry.first, entry.loose);
          *where = entry.covers;
        }
      else
        {
          entries[kept] = entry;
          *where = kept++;
        }
    }
  g_array_set_size (errors->stack, kept);
}

void
gb_shared_errors_drop (GbSharedErrors *errors, guint bottom)
{
  for (guint i = bottom; i < errors->stack->len; i++)
    {
      const GbSharedError *entry = &g_array_index (errors->stack, GbSharedError, i);

      g_array_index (errors->where, guint, entry->material) = entry->covers;
    }
  g_array_set_size (errors->stack, bottom);
}
