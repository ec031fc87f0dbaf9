/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

/* How a material's figure came about: as given, from a wood's gravity and moisture, or from samples on a
 * scale. */

#include "engine/density.h"
#include "working-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static GbDimension
dimension_of (GbMeasure measure)
{
  switch (measure)
    {
    case GB_MEASURE_AREAL:
      return GB_DIM_AREAL;
    case GB_MEASURE_LINEAR:
      return GB_DIM_LINEAR;
    case GB_MEASURE_DENSITY:
    case GB_MEASURE_WOOD:
    default:
      return GB_DIM_DENSITY;
    }
}

static double
figure_of (const GbMaterialFigures *figures, GbMeasure measure)
{
  if (measure == GB_MEASURE_AREAL)
    return figures->areal_mass;
  return measure == GB_MEASURE_LINEAR ? figures->linear_mass : figures->density;
}

static void
show_wood (GbHand *hand, const GbMaterial *material)
{
  double m = material->moisture, g = gb_wood_gravity (material->basic_gravity, m);
  GbTerm terms[] = { { NULL, 1000 * g, GB_DIM_DENSITY }, { GB_TIMES, 1 + m, GB_DIM_RATIO } };
  g_autofree char *basic = gb_hand_show (hand, material->basic_gravity, GB_DIM_COUNT),
                  *moisture = gb_hand_show (hand, m, GB_DIM_RATIO);
  g_autofree char *gravity = gb_hand_show (hand, g, GB_DIM_COUNT);
  g_autofree char *share = gb_hand_show (hand, m < 0.3 ? (0.3 - m) / 0.3 : 0, GB_DIM_COUNT);

  gb_hand_step (hand, _ ("Share of the shrinkage that has happened: (30 % − moisture) ÷ 30 %"),
                g_strdup_printf ("(30 %% − %s) ÷ 30 %% = %s", moisture, share), NULL);
  gb_hand_step (hand,
                _ ("Specific gravity at that moisture: basic gravity ÷ (1 − 0.265 × share × basic gravity)"),
                g_strdup_printf ("%s ÷ (1 − 0.265 × %s × %s) = %s", basic, share, basic, gravity),
                _ ("Simpson, FPL-GTR-76 (1993); Wood Handbook, FPL-GTR-190 (2010), chapter 4"));
  gb_hand_step (hand, _ ("Density: gravity × that of water × (1 + moisture)"),
                gb_hand_sum (hand, terms, 2, gb_wood_density (material->basic_gravity, m), GB_DIM_DENSITY),
                material->source);
}

static void
show_given (GbHand *hand, const GbMaterial *material)
{
  GbMeasure measure = (GbMeasure) material->measure;
  double given = measure == GB_MEASURE_AREAL    ? material->areal_mass
                 : measure == GB_MEASURE_LINEAR ? material->linear_mass
                                                : material->density;

  gb_hand_step (hand, isnan (given) ? _ ("No figure is given yet") : _ ("As given"),
                gb_hand_show (hand, given, dimension_of (measure)),
                material->source != NULL ? material->source : _ ("no source is given"));
}

static char *
size_text (const GbHand *hand, const GbSample *sample)
{
  const double sides[] = { sample->length, sample->width, sample->thickness };
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *pieces = gb_hand_show (hand, sample->pieces, GB_DIM_COUNT);

  if (sample->pieces != 1)
    g_string_append (text, pieces);
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    if (!isnan (sides[i]))
      {
        g_autofree char *side = gb_hand_show (hand, sides[i], GB_DIM_LENGTH);

        g_string_append_printf (text, "%s%s", text->len > 0 ? " × " : "", side);
      }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
show_samples (GbHand *hand, const GbMaterial *material, const GbMaterialFigures *figures)
{
  const GPtrArray *samples = gb_record_children (&material->rec);
  GbMeasure measure = (GbMeasure) material->measure;
  GbDimension dim = dimension_of (measure);

  gb_hand_step (hand, _ ("Samples on the scale stand instead: the mean of mass ÷ size"),
                gb_hand_show (hand, figure_of (figures, measure), dim), NULL);
  gb_hand_columns (hand, _ ("Weighed on"), _ ("Size"), _ ("Mass"), _ ("Figure"), NULL);
  for (guint i = 0; i < samples->len; i++)
    {
      const GbSample *sample = samples->pdata[i];

      gb_hand_row (hand, gb_date_format (sample->date), size_text (hand, sample),
                   gb_hand_show (hand, sample->mass, GB_DIM_MASS),
                   gb_hand_show (hand, gb_sample_figure (sample, measure), dim), NULL);
    }
  gb_hand_row (hand, g_strdup (_ ("Mean")), g_strdup (""), g_strdup (""),
               gb_hand_show (hand, figure_of (figures, measure), dim), NULL);
}

GbWorking *
gb_working_material (const GbBoat *boat, gint64 material_id)
{
  const GbMaterial *material = gb_boat_material (boat, material_id);
  g_autofree char *name = NULL;
  GbMaterialFigures figures;
  GbHand hand;

  if (material == NULL)
    return gb_hand_of_nothing (boat);
  figures = gb_material_figures (material);
  name = gb_record_dup_title (&material->rec);
  /* Translators: the name of a material. */
  hand = gb_hand_start (boat, NULL, g_strdup_printf (_ ("Figure of %s"), name));
  if (material->measure == GB_MEASURE_WOOD)
    show_wood (&hand, material);
  else
    show_given (&hand, material);
  if (figures.n_samples > 0)
    show_samples (&hand, material, &figures);
  gb_hand_step (&hand, _ ("Spread from piece to piece, common to all that is made of it"),
                gb_hand_show (&hand, figures.spread, GB_DIM_RATIO), NULL);
  return hand.working;
}
