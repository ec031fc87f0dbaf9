/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures of a material: given, by the wood formula, by weighed samples, and how far they are to be trusted. */

#include "engine/density.h"

#include <math.h>

#define EPSILON 1e-12

static GbBoat *
new_boat (GbMeasure measure)
{
  GbBoat *boat = gb_boat_new ();
  GbMaterial *material = (GbMaterial *) gb_record_new (GB_RECORD_MATERIAL);

  material->rec.id = 1;
  material->measure = measure;
  gb_boat_take (boat, &material->rec);
  gb_boat_settle (boat);
  return boat;
}

static GbMaterial *
material_of (GbBoat *boat)
{
  return (GbMaterial *) gb_boat_material (boat, 1);
}

static void
add_sample (GbBoat *boat, double mass, double mass_sd, double length, double width, double thickness, double pieces)
{
  GbSample *sample = (GbSample *) gb_record_new (GB_RECORD_SAMPLE);

  sample->rec.id = gb_boat_n (boat, GB_RECORD_SAMPLE) + 1;
  sample->rec.owner = 1;
  sample->rec.position = (double) sample->rec.id;
  sample->mass = mass;
  sample->mass_sd = mass_sd;
  sample->length = length;
  sample->width = width;
  sample->thickness = thickness;
  sample->pieces = pieces;
  gb_boat_take (boat, &sample->rec);
  gb_boat_settle (boat);
}

static void
test_unknown (void)
{
  for (int measure = GB_MEASURE_DENSITY; measure <= GB_MEASURE_LINEAR; measure++)
    {
      g_autoptr (GbBoat) boat = new_boat ((GbMeasure) measure);
      GbMaterialFigures figures = gb_material_figures (material_of (boat));

      g_assert_true (isnan (figures.density) && isnan (figures.areal_mass) && isnan (figures.linear_mass));
      g_assert_cmpuint (figures.n_samples, ==, 0);
    }
}

static void
test_given (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);
  GbMaterial *material = material_of (boat);
  GbMaterialFigures figures;

  material->density = 450;
  material->areal_mass = 3; /* left over from before the measure was changed: not a figure of this material */
  material->linear_mass = 4;
  figures = gb_material_figures (material);
  g_assert_cmpfloat (figures.density, ==, 450);
  g_assert_true (isnan (figures.areal_mass) && isnan (figures.linear_mass));
  g_assert_cmpfloat (figures.spread, ==, 0.05);
  material->spread = 0.02;
  g_assert_cmpfloat (gb_material_figures (material).spread, ==, 0.02);

  material->measure = GB_MEASURE_AREAL;
  figures = gb_material_figures (material);
  g_assert_cmpfloat (figures.density, ==, 450);
  g_assert_cmpfloat (figures.areal_mass, ==, 3);
  material->measure = GB_MEASURE_LINEAR;
  figures = gb_material_figures (material);
  g_assert_true (isnan (figures.areal_mass));
  g_assert_cmpfloat (figures.linear_mass, ==, 4);
}

static void
test_wood (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_WOOD);
  GbMaterial *material = material_of (boat);

  material->basic_gravity = 0.37;
  material->moisture = 0.12;
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material).density, 1000 * 0.37 / (1 - 0.265 * 0.6 * 0.37) * 1.12, 1e-9);
  g_assert_cmpfloat (gb_material_figures (material).spread, ==, 0.10);
  material->moisture = NAN;
  g_assert_true (isnan (gb_material_figures (material).density));
  /* Above the point of fibre saturation wood does not swell any more. */
  g_assert_cmpfloat_with_epsilon (gb_wood_gravity (0.5, 0.30), 0.5, EPSILON);
  g_assert_cmpfloat_with_epsilon (gb_wood_density (0.5, 1.0), 1000, 1e-9);
}

static void
test_one_sample (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);
  GbMaterialFigures figures;

  material_of (boat)->density = 600;
  add_sample (boat, 9.8, NAN, 2.44, 1.22, 0.006, 1);
  figures = gb_material_figures (material_of (boat));
  g_assert_cmpfloat_with_epsilon (figures.density, 9.8 / (2.44 * 1.22 * 0.006), 1e-9);
  g_assert_cmpfloat (figures.spread, ==, 0.05); /* one sample does not tell how others differ */
  g_assert_cmpuint (figures.n_samples, ==, 1);
}

static void
test_scale_of_one_sample (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);

  add_sample (boat, 9.8, 0.049, 2.44, 1.22, 0.006, 1);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material_of (boat)).spread, 0.005, EPSILON);
}

static void
test_mean_and_standard_error (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);
  GbMaterialFigures figures;

  /* Figures 400, 410, 420: mean 410, standard deviation 10, of the mean 10/sqrt (3). */
  add_sample (boat, 400, 0.4, 1, 1, 1, 1);
  add_sample (boat, 205, 0.2, 1, 1, 0.5, 1);
  add_sample (boat, 840, 0.8, 1, 1, 1, 2);
  figures = gb_material_figures (material_of (boat));
  g_assert_cmpfloat_with_epsilon (figures.density, 410, 1e-9);
  g_assert_cmpfloat_with_epsilon (figures.spread, 10 / sqrt (3) / 410, 1e-9);
  g_assert_cmpuint (figures.n_samples, ==, 3);
}

static void
test_coarse_scale_outweighs_agreement (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_AREAL);

  add_sample (boat, 0.2, 0.01, 1, 1, NAN, 1);
  add_sample (boat, 0.2, 0.01, 1, 1, NAN, 1);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material_of (boat)).areal_mass, 0.2, EPSILON);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material_of (boat)).spread, 0.05, EPSILON);
}

/* Samples that agree do not make the material certain. */
static void
test_equal_samples (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);

  for (int i = 0; i < 3; i++)
    add_sample (boat, 9.8, NAN, 2.44, 1.22, 0.006, 1);
  g_assert_cmpfloat (gb_material_figures (material_of (boat)).spread, ==, 0.05);
}

static void
test_sides_by_measure (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_LINEAR);
  GbMaterial *material = material_of (boat);

  material->linear_mass = 1;
  add_sample (boat, 0.5, NAN, 10, NAN, NAN, 1);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material).linear_mass, 0.05, EPSILON);
  material->measure = GB_MEASURE_AREAL; /* the sample has no width */
  material->areal_mass = 0.3;
  g_assert_cmpfloat (gb_material_figures (material).areal_mass, ==, 0.3);
  g_assert_cmpuint (gb_material_figures (material).n_samples, ==, 0);
}

static void
test_sample_of_wood (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_WOOD);
  GbMaterial *material = material_of (boat);

  material->basic_gravity = 0.37;
  add_sample (boat, 1.68, NAN, 2, 0.1, 0.02, 1);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material).density, 420, 1e-9);
}

static void
test_useless_samples_are_left_out (void)
{
  g_autoptr (GbBoat) boat = new_boat (GB_MEASURE_DENSITY);

  material_of (boat)->density = 450;
  add_sample (boat, NAN, NAN, 1, 1, 1, 1);
  add_sample (boat, 5, NAN, 1, 1, NAN, 1);
  add_sample (boat, 5, NAN, 1, 1, 0, 1);
  add_sample (boat, 5, NAN, 1, 1, 1, NAN);
  add_sample (boat, -5, NAN, 1, 1, 1, 1);
  g_assert_cmpfloat (gb_material_figures (material_of (boat)).density, ==, 450);
  g_assert_cmpuint (gb_material_figures (material_of (boat)).n_samples, ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/density/unknown", test_unknown);
  g_test_add_func ("/density/given", test_given);
  g_test_add_func ("/density/wood", test_wood);
  g_test_add_func ("/density/one-sample", test_one_sample);
  g_test_add_func ("/density/scale-of-one-sample", test_scale_of_one_sample);
  g_test_add_func ("/density/mean-and-standard-error", test_mean_and_standard_error);
  g_test_add_func ("/density/coarse-scale-outweighs-agreement", test_coarse_scale_outweighs_agreement);
  g_test_add_func ("/density/equal-samples", test_equal_samples);
  g_test_add_func ("/density/sides-by-measure", test_sides_by_measure);
  g_test_add_func ("/density/sample-of-wood", test_sample_of_wood);
  g_test_add_func ("/density/useless-samples-are-left-out", test_useless_samples_are_left_out);
  return g_test_run ();
}
