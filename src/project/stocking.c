/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-stocking"

#include "project/stocking.h"

#include "project/edit-private.h"

/* What each form of stock says of the part that is cut from it. */
static const char *const of_all[] = { "material", NULL };
static const char *const of_flat[] = { "thickness", NULL };
static const char *const of_lengths[] = { "section", "width", "thickness", "diameter", "wall", "linear_mass", NULL };
static const char *const of_pieces[] = { "unit_mass", NULL };

static const char *const *
fields_of_form (GbForm form)
{
  switch (form)
    {
    case GB_FORM_SHEET:
    case GB_FORM_BLOCK:
      return of_flat;
    case GB_FORM_LENGTH:
      return of_lengths;
    case GB_FORM_PIECE:
      return of_pieces;
    case GB_FORM_TIN:
    default:
      return NULL;
    }
}

/* Where the edit leaves the field as it was and the stock knows it. */
static void
let_go (GbRecord *part, const GbRecord *before, const GbRecord *stock, const char *name)
{
  const GbField *field = gb_field (GB_RECORD_PART, name);
  g_auto (GbValue) unknown = gb_field_unknown (field);
  const GbField *from = gb_field_find (GB_RECORD_STOCK, g_str_equal (name, "unit_mass") ? "mass" : name);

  if (gb_field_is_unknown (from, stock) || !gb_field_equal (field, part, before))
    return;
  if (field->dim == GB_DIM_CHOICE)
    unknown.integer = gb_field_get_integer (from, stock);
  gb_field_set (field, part, &unknown);
}

static void
follow_stock (GbRecord *part, const GbRecord *before, const GbRecord *stock)
{
  const char *const *fields = fields_of_form ((GbForm) ((const GbStock *) stock)->form);

  for (guint i = 0; of_all[i] != NULL; i++)
    let_go (part, before, stock, of_all[i]);
  for (guint i = 0; fields != NULL && fields[i] != NULL; i++)
    let_go (part, before, stock, fields[i]);
}

void
gb_stocking_complete (GbEdit *edit, const GbBoat *boat)
{
  const GPtrArray *puts = gb_edit_puts (edit);

  for (guint i = 0; i < puts->len; i++)
    {
      GbRecord *record = puts->pdata[i];
      const GbRecord *before, *stock;

      if (record->kind != GB_RECORD_PART)
        continue;
      before = gb_boat_get (boat, GB_RECORD_PART, record->id);
      stock = gb_edit_after (edit, boat, GB_RECORD_STOCK, ((const GbPart *) record)->stock);
      if (before != NULL && stock != NULL && ((const GbPart *) before)->stock != ((const GbPart *) record)->stock)
        follow_stock (record, before, stock);
    }
}
