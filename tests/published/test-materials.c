/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Materials other than wood of the table that ships, against printed figures. */

#include "catalogue-figures.h"

/* kg/m3. Where one figure is printed, half a per cent either way. */
#define ONE(v) 0.995 * (v), 1.005 * (v)

static void
test_printed_densities (void)
{
  static const struct
  {
    const char *name;
    double low, high;
  } cases[] = {
    /* wermac.org, typical densities of metals and alloys */
    { "Aluminium 6061-T6", 2700, 2720 },
    { "Copper", ONE (8940) },
    { "Brass, rolled or drawn", 8430, 8730 },
    { "Phosphor bronze", 8780, 8920 },
    { "Aluminium bronze", 7700, 8700 },
    { "Lead", ONE (11340) },
    { "Lead, antimonial", ONE (10900) },
    /* simetric.co.uk, density of metals */
    { "Cast iron, grey", 6800, 7800 },
    { "Steel, structural", ONE (7850) },
    { "Stainless steel 304 (1.4301)", 7480, 8000 },
    { "Stainless steel 316 (1.4401)", 7480, 8000 },
    { "Titanium, commercially pure", ONE (4500) },
    { "Zinc", ONE (7135) },
    { "Nickel-copper alloy 400", 8360, 8840 },
    { "Magnesium alloy, anodes", 1760, 1870 },
    /* ASM / Aluminum Association data sheet: 0.0961 lb/in3 */
    { "Aluminium 5083", ONE (0.0961 * 27679.9) },
    /* Copper Development Association, C65500: 0.308 lb/in3 (from memory) */
    { "Silicon bronze", ONE (0.308 * 27679.9) },
    /* Tables of plastics */
    { "PVC, rigid", 1300, 1450 },
    { "HDPE", 940, 970 },
    { "ABS", 1020, 1080 },
    { "Polycarbonate", 1190, 1220 },
    { "Acrylic", 1170, 1200 },
    { "Nylon 6", 1130, 1160 },
    { "Polypropylene", 900, 915 },
    { "PTFE", 2140, 2200 },
    { "Acetal (POM)", 1410, 1430 },
    /* Jang, in ASM (1994): fibres, g/cm3 */
    { "Glass fibre (E)", ONE (2540) },
    { "Carbon fibre, high strength", 1770, 1800 },
    { "Aramid fibre", 1440, 1470 },
    /* A maker's page: 9.23 lb per US gallon */
    { "Epoxy, mixed, liquid", ONE (9.23 * 0.45359237 / 0.003785411784) },
    /* 33 CFR 183 and USCG Boatbuilder's Handbook: 2 lb/ft3 */
    { "Polyurethane foam, poured in place", ONE (2 * 16.01846) },
    /* EN 13164 data sheets */
    { "XPS foam board", 24, 40 },
    /* EN 228 and EN 590 at 15 degrees C (from memory) */
    { "Petrol", 720, 775 },
    { "Diesel fuel", 820, 845 },
    /* IAPWS at 15 degrees C */
    { "Fresh water", ONE (999.103) },
    /* Ship practice: 64 lb/ft3 */
    { "Sea water", ONE (64 * 16.01846) },
    { "Ice", ONE (917) },
    /* Jang: glass */
    { "Glass, window", ONE (2500) },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double got = shipped_density (cases[i].name);

      if (!(got >= cases[i].low && got <= cases[i].high))
        g_error ("%s: got %g, expected %g to %g", cases[i].name, got, cases[i].low, cases[i].high);
    }
}

/* USCG Boatbuilder's Handbook, Flotation: factors K for the weight of boat materials under water, as printed. K = 1 - 1/SG; negative
 * where the material floats. (The printed figures are from memory but for aluminium, laminate, ABS and fir plywood.) */
static void
test_flotation_factors (void)
{
  static const struct
  {
    const char *name;
    double k;
  } cases[] = {
    { "Lead", 0.91 },          { "Copper", 0.89 },
    { "Steel, structural", 0.88 }, { "Brass, rolled or drawn", 0.88 },
    { "Aluminium 5083", 0.63 }, { "Glass, window", 0.62 },
    { "Concrete", 0.58 },      { "Rubber, filled", 0.34 },
    { "Acrylic", 0.15 },       { "Hardboard", 0.14 },
    { "GRP laminate, chopped strand mat, 30 % glass", 0.33 },
    { "Fir plywood, marine", -0.81 },
    { "Cork", -3.17 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double k = 1 - 1000 / shipped_density (cases[i].name);

      if (fabs (k - cases[i].k) > 0.04)
        g_error ("%s: got %.3f, expected %.2f", cases[i].name, k, cases[i].k);
    }
}

static void
test_plywood_sheets (void)
{
  static const struct
  {
    const char *name;
    double thickness, areal_mass, tolerance;
  } cases[] = {
    /* A maker's figures of okoume plywood, kg/m2 */
    { "Okoume plywood", 0.004, 1.8, 0.02 },
    { "Okoume plywood", 0.006, 2.7, 0.02 },
    { "Okoume plywood", 0.009, 4.1, 0.02 },
    { "Okoume plywood", 0.012, 5.4, 0.02 },
    { "Okoume plywood", 0.018, 8.1, 0.02 },
    /* US fir plywood, lb/ft2 */
    { "Douglas fir plywood", 0.25 * 0.0254, 0.80 * 4.882428, 0.08 },
    { "Douglas fir plywood", 0.375 * 0.0254, 1.13 * 4.882428, 0.03 },
    { "Douglas fir plywood", 0.5 * 0.0254, 1.53 * 4.882428, 0.03 },
    { "Douglas fir plywood", 0.75 * 0.0254, 2.23 * 4.882428, 0.03 },
    /* Hoop pine: sheets of 1.2 x 2.4 m */
    { "Hoop pine plywood", 0.006, 10.5 / 2.88, 0.02 },
    { "Hoop pine plywood", 0.009, 15.5 / 2.88, 0.02 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_within (cases[i].name, shipped_density (cases[i].name) * cases[i].thickness, cases[i].areal_mass, cases[i].tolerance);
}

/* ISO 12215-5 annex C: a laminate's density from the shares of glass and resin by mass. */
static void
test_laminates (void)
{
  static const struct
  {
    const char *name, *fibre, *resin;
    double share;
  } cases[] = {
    { "GRP laminate, chopped strand mat, 30 % glass", "Glass fibre (E)", "Polyester resin, cured", 0.30 },
    { "GRP laminate, woven roving, 50 % glass", "Glass fibre (E)", "Polyester resin, cured", 0.50 },
    { "Glass and epoxy laminate, 50 % glass", "Glass fibre (E)", "Epoxy, cured", 0.50 },
    { "Carbon and epoxy laminate, 50 % fibre", "Carbon fibre, high strength", "Epoxy, cured", 0.50 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double expected
          = 1 / (cases[i].share / shipped_density (cases[i].fibre) + (1 - cases[i].share) / shipped_density (cases[i].resin));

      assert_within (cases[i].name, shipped_density (cases[i].name), expected, 0.01);
    }
}

/* Cloth by the ounce: 4, 6 and 10 oz/yd2 are 136, 203 and 339 g/m2 as shops round them. */
static void
test_cloths (void)
{
  static const struct
  {
    const char *name;
    double grams;
  } cases[] = { { "Glass cloth, 4 oz/yd2", 136 }, { "Glass cloth, 6 oz/yd2", 203 }, { "Glass cloth, 10 oz/yd2", 339 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const GbMaterial *material = gb_catalogue_find (cases[i].name);

      g_assert_nonnull (material);
      assert_within (cases[i].name, 1000 * gb_material_figures (material).areal_mass, cases[i].grams, 0.005);
    }
}

int
main (int argc, char *argv[])
{
  use_shipped_table_only ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published/materials/printed-densities", test_printed_densities);
  g_test_add_func ("/published/materials/flotation-factors", test_flotation_factors);
  g_test_add_func ("/published/materials/plywood-sheets", test_plywood_sheets);
  g_test_add_func ("/published/materials/laminates", test_laminates);
  g_test_add_func ("/published/materials/cloths", test_cloths);
  return g_test_run ();
}
