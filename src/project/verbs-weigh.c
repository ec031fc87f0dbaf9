/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/verbs-weigh.h"

#include "project/project-private.h"
#include "project/words.h"

#include <glib/gi18n-lib.h>

static gint64
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, GB_STORE_ERROR, GB_STORE_ERROR_REFUSED, sentence);
  return 0;
}

static GbEdit *
new_weighing (const GbRecord *weighed)
{
  g_autofree char *title = gb_words_title (weighed);
  /* Translators: after "Undo:". "weighing of Bottom" */
  g_autofree char *words = g_strdup_printf (C_ ("undo", "weighing of %s"), title);

  return gb_edit_new (words, weighed->kind, weighed->id, NULL);
}

gint64
gb_project_weigh (GbProject *self, gint64 part_id, gint64 date, double mass, GbOnScale on_scale,
                  GError **error)
{
  g_autoptr (GbEdit) edit = NULL;
  const GbRecord *weighed;
  GbWeighing *weighing;
  GbReading *reading;

  g_return_val_if_fail (GB_IS_PROJECT (self), 0);

  weighed
    = part_id != 0 ? gb_boat_get (self->boat, GB_RECORD_PART, part_id) : &gb_boat_build (self->boat)->rec;
  if (weighed == NULL)
    return refuse (error, _ ("What is to be weighed is no longer in this build."));
  if (!(mass > 0))
    return refuse (error, _ ("Scale says: must be more than 0."));

  edit = new_weighing (weighed);
  weighing = (GbWeighing *) gb_record_new (GB_RECORD_WEIGHING);
  weighing->part = part_id;
  weighing->date = date;
  weighing->on_scale = on_scale;
  gb_edit_put (edit, &weighing->rec);
  reading = (GbReading *) gb_record_new (GB_RECORD_READING);
  reading->rec.owner = weighing->rec.id;
  reading->mass = mass;
  gb_edit_put (edit, &reading->rec);
  return gb_project_apply_keep (self, edit, error) ? weighing->rec.id : 0;
}

gint64
gb_project_weigh_sample (GbProject *self, gint64 material_id, GbRecord *draft, GError **error)
{
  g_autoptr (GbRecord) sample = draft;
  const GbRecord *material = gb_boat_get (self->boat, GB_RECORD_MATERIAL, material_id);
  g_autoptr (GbEdit) edit = NULL;
  GbRecord *put;

  g_return_val_if_fail (draft->kind == GB_RECORD_SAMPLE, 0);

  if (material == NULL)
    return refuse (error, _ ("What is to be weighed is no longer in this build."));
  if (!(((GbSample *) sample)->mass > 0))
    return refuse (error, _ ("Scale says: must be more than 0."));
  edit = new_weighing (material);
  put = g_steal_pointer (&sample);
  put->id = 0;
  put->owner = material_id;
  gb_edit_put (edit, put);
  return gb_project_apply_keep (self, edit, error) ? put->id : 0;
}

/* The thickness of the flat piece that has the width and the area of the stock's section. */
static double
mean_thickness (const GbStock *stock)
{
  switch (stock->section)
    {
    case GB_SECTION_ROUND:
      return G_PI / 4 * stock->diameter;
    case GB_SECTION_TUBE:
      return G_PI * (stock->diameter - stock->wall) * stock->wall / stock->diameter;
    case GB_SECTION_RECTANGLE:
    default:
      return stock->thickness;
    }
}

/* The sides of one piece of @stock, as far as the material's measure asks for them. FALSE if one is missing.
 */
static gboolean
take_sides (GbSample *sample, const GbStock *stock, const GbMaterial *material)
{
  gboolean is_length = stock->form == GB_FORM_LENGTH;
  gboolean is_round = is_length && (stock->section == GB_SECTION_ROUND || stock->section == GB_SECTION_TUBE);

  if (stock->form == GB_FORM_TIN || stock->form == GB_FORM_PIECE)
    return FALSE;
  sample->length = stock->length;
  if (material->measure == GB_MEASURE_LINEAR)
    return sample->length > 0;
  sample->width = is_round ? stock->diameter : stock->width;
  if (material->measure == GB_MEASURE_AREAL)
    return sample->length > 0 && sample->width > 0 && !is_length;
  sample->thickness = is_length ? mean_thickness (stock) : stock->thickness;
  return sample->length > 0 && sample->width > 0 && sample->thickness > 0;
}

gint64
gb_project_weigh_stock (GbProject *self, gint64 stock_id, gint64 date, double mass, double pieces,
                        GError **error)
{
  const GbStock *stock = gb_boat_stock (self->boat, stock_id);
  const GbMaterial *material = stock != NULL ? gb_boat_material (self->boat, stock->material) : NULL;
  g_autoptr (GbRecord) draft = gb_record_new (GB_RECORD_SAMPLE);
  GbSample *sample = (GbSample *) draft;

  g_return_val_if_fail (GB_IS_PROJECT (self), 0);

  if (stock == NULL)
    return refuse (error, _ ("What is to be weighed is no longer in this build."));
  if (material == NULL)
    return refuse (error, _ ("Say first what material this stock is made of; a sample is a sample of that."));
  if (!take_sides (sample, stock, material))
    return refuse (error,
                   _ ("The sides of this stock are not known, so its mass says nothing about the material. "
                      "Enter its length, width and thickness first."));
  sample->date = date;
  sample->mass = mass;
  sample->pieces = pieces;
  gb_field_set_text (gb_field (GB_RECORD_SAMPLE, "notes"), draft, stock->name);
  return gb_project_weigh_sample (self, material->rec.id, g_steal_pointer (&draft), error);
}
