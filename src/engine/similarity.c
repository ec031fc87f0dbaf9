/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-similarity"

#include "similarity-private.h"

#include "afloat-private.h"
#include "sentences.h"
#include "water.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const struct
{
  double power;
  gboolean has_mass;
} likes[] = {
  [GB_LIKE_LENGTH] = { 1, FALSE }, [GB_LIKE_AREA] = { 2, FALSE },    [GB_LIKE_VOLUME] = { 3, FALSE },
  [GB_LIKE_TIME] = { 0.5, FALSE }, [GB_LIKE_SPEED] = { 0.5, FALSE }, [GB_LIKE_ANGLE] = { 0, FALSE },
  [GB_LIKE_MASS] = { 3, TRUE },    [GB_LIKE_FORCE] = { 3, TRUE },    [GB_LIKE_MOMENT] = { 4, TRUE },
  [GB_LIKE_INERTIA] = { 5, TRUE }, [GB_LIKE_PRESSURE] = { 1, TRUE }, [GB_LIKE_POWER] = { 3.5, TRUE },
};

double
gb_similarity_power (GbLike like)
{
  return likes[like].power;
}

double
gb_similarity_factor (GbLike like, double scale, double density_ratio)
{
  return pow (scale, likes[like].power) * (likes[like].has_mass ? density_ratio : 1);
}

/* Masses with their moments, model size. */
typedef struct
{
  double mass;
  GbVec3 moment;
  guint n_no_mass;
} Sum;

static void
add_mass (Sum *sum, double mass, double x, double y, double z)
{
  sum->mass += mass;
  sum->moment.x += mass * x;
  sum->moment.y += mass * y;
  sum->moment.z += mass * z;
}

static Sum
sum_of_model (const GbTub *tub)
{
  const GPtrArray *loads = gb_record_children (&tub->rec);
  Sum sum = { 0 };

  add_mass (&sum, tub->mass, tub->x, 0, tub->z);
  for (guint i = 0; i < loads->len; i++)
    {
      const GbTubLoad *load = loads->pdata[i];

      if (load->mass > 0)
        add_mass (&sum, load->mass, load->x, load->y, load->z);
      else
        sum.n_no_mass++;
    }
  return sum;
}

static GbVec3
scaled (GbVec3 v, double factor)
{
  return (GbVec3){ v.x * factor, v.y * factor, v.z * factor };
}

static void
find_model (GbTubbed *tubbed, const Sum *sum)
{
  tubbed->model_mass = sum->mass;
  tubbed->mass = sum->mass * gb_similarity_factor (GB_LIKE_MASS, tubbed->scale, tubbed->density_ratio);
  tubbed->centre = scaled (sum->moment, tubbed->scale / sum->mass);
}

/* Trim that two draughts tell. The slope of the waterline along the boat is tan trim / cos heel. */
static double
trim_of (const GbTubbed *tubbed)
{
  double heel = isnan (tubbed->heel) ? 0 : tubbed->heel;
  double run = tubbed->fore_x - tubbed->aft_x;

  return run != 0 ? atan ((tubbed->draught_fore - tubbed->draught_aft) / run * cos (heel)) : NAN;
}

static void
find_read (GbTubbed *tubbed, const GbTub *tub, const GbAfloat *afloat)
{
  tubbed->fore_x = tub->fore_x * tubbed->scale;
  tubbed->aft_x = tub->aft_x * tubbed->scale;
  if (isnan (tub->fore_x) && afloat != NULL)
    tubbed->fore_x = afloat->fore_x;
  if (isnan (tub->aft_x) && afloat != NULL)
    tubbed->aft_x = afloat->aft_x;
  tubbed->draught_fore = tub->fore_draught * tubbed->scale;
  tubbed->draught_aft = tub->aft_draught * tubbed->scale;
  tubbed->heel = tub->heel;
  tubbed->trim = trim_of (tubbed);
}

static void
find_computed (GbTubbed *tubbed, const GbAfloat *afloat)
{
  tubbed->computed_fore = gb_draught_at (afloat->attitude, afloat->keel, tubbed->fore_x);
  tubbed->computed_aft = gb_draught_at (afloat->attitude, afloat->keel, tubbed->aft_x);
  tubbed->computed_heel = afloat->heel;
  tubbed->computed_trim = afloat->trim;
}

/* What the model must weigh, and what must be put into the bare one for that. */
static void
find_wanted (GbTubbed *tubbed, const GbTub *tub, const GbAfloat *afloat)
{
  GbVec3 moment;

  tubbed->wanted_mass
      = afloat->total / gb_similarity_factor (GB_LIKE_MASS, tubbed->scale, tubbed->density_ratio);
  tubbed->wanted_centre = scaled (afloat->gravity, 1 / tubbed->scale);
  tubbed->ballast = tubbed->wanted_mass - tub->mass;
  if (!(tubbed->ballast > 0))
    return;
  moment = scaled (tubbed->wanted_centre, tubbed->wanted_mass);
  tubbed->ballast_centre
      = scaled ((GbVec3){ moment.x - tub->mass * tub->x, moment.y, moment.z - tub->mass * tub->z },
                1 / tubbed->ballast);
}

static void
say_model (GString *trouble, const GbTubbed *tubbed, guint n_no_mass)
{
  if (isnan (tubbed->scale))
    gb_sentences_add (trouble, _ ("The model has no scale yet."));
  if (isnan (tubbed->model_mass))
    gb_sentences_add (trouble, _ ("The bare model's mass is not known: put it on a scale."));
  else if (isnan (tubbed->centre.x) && !isnan (tubbed->scale))
    gb_sentences_add (trouble,
                      _ ("Where the model's weight lies along it is not known: balance it on an edge."));
  if (n_no_mass > 0)
    {
      g_autofree char *words
          = g_strdup_printf (ngettext ("%u load of the model has no mass and is left out.",
                                       "%u loads of the model have no mass and are left out.", n_no_mass),
                             n_no_mass);

      gb_sentences_add (trouble, words);
    }
  if (isnan (tubbed->draught_fore) && isnan (tubbed->draught_aft) && isnan (tubbed->heel)
      && !isnan (tubbed->scale))
    gb_sentences_add (trouble, _ ("No draught was read yet."));
}

static void
explanation_free (gpointer explanation)
{
  g_free (((GbExplanation *) explanation)->words);
  g_free (explanation);
}

static GbTubbed
start_of (const GbBoat *boat, const GbTub *tub)
{
  const GbVec3 nowhere = { NAN, NAN, NAN };
  double scale = tub->scale > 0 && isfinite (tub->scale) ? tub->scale : NAN;
  double model_density = tub->water_density > 0 ? tub->water_density : gb_water_density_eos80 (0, 15);

  return (GbTubbed){
    .tub = tub->rec.id,
    .scale = scale,
    .density_ratio = gb_build_water_density (gb_boat_build (boat)) / model_density,
    .model_density = model_density,
    .computed_fore = NAN,
    .computed_aft = NAN,
    .computed_heel = NAN,
    .computed_trim = NAN,
    .own_fore = NAN,
    .own_aft = NAN,
    .explanations = g_ptr_array_new_with_free_func (explanation_free),
    .wanted_mass = NAN,
    .wanted_centre = nowhere,
    .ballast = NAN,
    .ballast_centre = nowhere,
    .time_factor = gb_similarity_factor (GB_LIKE_TIME, scale, 1),
    .speed_factor = gb_similarity_factor (GB_LIKE_SPEED, scale, 1),
  };
}

/* Beside the condition, as far as that is known. */
static void
compare (GbTubbed *tubbed,
         GString *trouble,
         const GbBoat *boat,
         const GbTub *tub,
         const GbCase *case_,
         const GbAfloat *afloat)
{
  g_autofree char *sentence = NULL;

  if (afloat == NULL || case_ == NULL)
    {
      gb_sentences_add (trouble, _ ("Choose the condition that the model stands for."));
      return;
    }
  find_wanted (tubbed, tub, afloat);
  if (!isfinite (afloat->attitude.height))
    {
      gb_sentences_add (trouble, afloat->sentence != NULL
                                     ? afloat->sentence
                                     : _ ("It is not known how she floats in that condition."));
      return;
    }
  find_computed (tubbed, afloat);
  sentence = gb_tubbed_explain (tubbed, (GbUnits) gb_boat_build (boat)->units, case_, afloat);
  if (sentence != NULL)
    gb_sentences_add (trouble, sentence);
}

void
gb_tubbed_find (
    GbTubbed *tubbed, const GbBoat *boat, const GbTub *tub, const GbCase *case_, const GbAfloat *afloat)
{
  g_autoptr (GString) trouble = g_string_new (NULL);
  Sum sum = sum_of_model (tub);

  gb_tubbed_clear (tubbed);
  *tubbed = start_of (boat, tub);
  find_model (tubbed, &sum);
  find_read (tubbed, tub, afloat);
  say_model (trouble, tubbed, sum.n_no_mass);
  compare (tubbed, trouble, boat, tub, case_, afloat);
  if (trouble->len > 0)
    tubbed->trouble = g_strdup (trouble->str);
}

void
gb_tubbed_clear (GbTubbed *tubbed)
{
  g_clear_pointer (&tubbed->trouble, g_free);
  g_clear_pointer (&tubbed->explanations, g_ptr_array_unref);
}
