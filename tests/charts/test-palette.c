/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Colours against published formulas. */

#include "charts/palette.h"

#include <math.h>

static const GbChartStyle styles[] = { GB_CHART_LIGHT, GB_CHART_DARK, GB_CHART_PRINT };

/* Values of well-known pairs, from W3C's formula: black on white is 21 (WCAG 2.1, definition of contrast
 * ratio); #767676 on white is the lightest grey that reaches 4.5 (W3C, Understanding SC 1.4.3; from memory).
 */
static void
test_contrast_formula (void)
{
  GbColour black = { 0, 0, 0 }, white = { 1, 1, 1 };
  GbColour grey = { 0x76 / 255.0, 0x76 / 255.0, 0x76 / 255.0 },
           paler = { 0x77 / 255.0, 0x77 / 255.0, 0x77 / 255.0 };

  g_assert_cmpfloat_with_epsilon (gb_colour_contrast (black, white), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (gb_colour_contrast (white, black), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (gb_colour_contrast (grey, grey), 1, 1e-9);
  g_assert_cmpfloat (gb_colour_contrast (grey, white), >=, 4.5);
  g_assert_cmpfloat (gb_colour_contrast (paler, white), <, 4.5);
}

/* WCAG 2.1: 4.5 for text (SC 1.4.3), 3 for graphics that carry meaning (SC 1.4.11). The grid carries none. */
static void
test_contrast_of_roles (void)
{
  static const GbRole text[] = { GB_ROLE_TEXT, GB_ROLE_QUIET, GB_ROLE_LIMIT };

  for (guint s = 0; s < G_N_ELEMENTS (styles); s++)
    {
      GbColour background = gb_role_colour (GB_ROLE_BACKGROUND, styles[s]);

      for (guint i = 0; i < G_N_ELEMENTS (text); i++)
        g_assert_cmpfloat (gb_colour_contrast (gb_role_colour (text[i], styles[s]), background), >=, 4.5);
      for (guint role = GB_ROLE_TEXT; role < GB_N_ROLES; role++)
        if (role != GB_ROLE_GRID)
          g_assert_cmpfloat (gb_colour_contrast (gb_role_colour ((GbRole) role, styles[s]), background), >=,
                             3);
    }
}

/* How people without one of the three sorts of cones see linear RGB: Machado, Oliveira and Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency" (2009), severity 1.0. From memory;
 * each row sums to 1, which the test checks. */
static const double machado[][3][3] = {
  { { 0.152286, 1.052583, -0.204868 },
    { 0.114503, 0.786281, 0.099216 },
    { -0.003882, -0.048116, 1.051998 } }, /* protanopia */
  { { 0.367322, 0.860646, -0.227968 },
    { 0.280085, 0.672501, 0.047413 },
    { -0.011820, 0.042940, 0.968881 } }, /* deuteranopia */
  { { 1.255528, -0.076749, -0.178779 },
    { -0.078411, 0.930809, 0.147602 },
    { 0.004733, 0.691367, 0.303900 } }, /* tritanopia */
};

static double
to_linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

/* CIE 1976 L*a*b* under D65, by IEC 61966-2-1's matrix. */
static void
to_lab (const double rgb[3], double lab[3])
{
  static const double xyz_of[3][3]
      = { { 0.4124, 0.3576, 0.1805 }, { 0.2126, 0.7152, 0.0722 }, { 0.0193, 0.1192, 0.9505 } };
  static const double white[3] = { 0.9505, 1, 1.089 };
  double f[3];

  for (guint i = 0; i < 3; i++)
    {
      double t = (xyz_of[i][0] * rgb[0] + xyz_of[i][1] * rgb[1] + xyz_of[i][2] * rgb[2]) / white[i];

      f[i] = t > 216.0 / 24389 ? cbrt (t) : (24389.0 / 27 * t + 16) / 116;
    }
  lab[0] = 116 * f[1] - 16;
  lab[1] = 500 * (f[0] - f[1]);
  lab[2] = 200 * (f[1] - f[2]);
}

static double
distance_as_seen (GbColour a, GbColour b, const double sight[3][3])
{
  const GbColour colours[2] = { a, b };
  double lab[2][3], sum = 0;

  for (guint c = 0; c < 2; c++)
    {
      const double in[3] = { to_linear (colours[c].r), to_linear (colours[c].g), to_linear (colours[c].b) };
      double out[3];

      for (guint i = 0; i < 3; i++)
        out[i] = CLAMP (sight[i][0] * in[0] + sight[i][1] * in[1] + sight[i][2] * in[2], 0, 1);
      to_lab (out, lab[c]);
    }
  for (guint i = 0; i < 3; i++)
    sum += pow (lab[0][i] - lab[1][i], 2);
  return sqrt (sum);
}

/* Roles that stand side by side in one chart, and must be told apart by colour or by pattern; here by colour,
 * at well over the least difference that an eye can see (about 2.3 in these units: Mahy et al. 1994), and by
 * pattern as well. */
static void
test_colour_blind (void)
{
  static const GbRole together[][2] = {
    { GB_ROLE_LIGHT_CRAFT, GB_ROLE_MARGIN },   { GB_ROLE_MARGIN, GB_ROLE_LOADS },
    { GB_ROLE_LIGHT_CRAFT, GB_ROLE_LOADS },    { GB_ROLE_WEIGHED, GB_ROLE_CALCULATED },
    { GB_ROLE_CALCULATED, GB_ROLE_ESTIMATED }, { GB_ROLE_WEIGHED, GB_ROLE_ESTIMATED },
    { GB_ROLE_SPENT, GB_ROLE_TO_BUY },         { GB_ROLE_TO_BUY, GB_ROLE_ALLOWANCE },
    { GB_ROLE_SPENT, GB_ROLE_ALLOWANCE },
  };
  static const GbRole lines[][2] = {
    { GB_ROLE_LIMIT, GB_ROLE_COURSE }, { GB_ROLE_LIMIT, GB_ROLE_WATER }, { GB_ROLE_LIMIT, GB_ROLE_SPENT },
    { GB_ROLE_PICKED, GB_ROLE_PART },  { GB_ROLE_PART, GB_ROLE_LOADS },   { GB_ROLE_UNDER, GB_ROLE_COURSE },
    { GB_ROLE_UNDER, GB_ROLE_WATER },  { GB_ROLE_MARGIN, GB_ROLE_COURSE },
  };

  for (guint m = 0; m < G_N_ELEMENTS (machado); m++)
    for (guint row = 0; row < 3; row++)
      g_assert_cmpfloat_with_epsilon (machado[m][row][0] + machado[m][row][1] + machado[m][row][2], 1, 2e-6);
  for (guint s = 0; s < 2; s++)
    for (guint m = 0; m < G_N_ELEMENTS (machado); m++)
      {
        for (guint i = 0; i < G_N_ELEMENTS (together); i++)
          g_assert_cmpfloat (distance_as_seen (gb_role_colour (together[i][0], styles[s]),
                                               gb_role_colour (together[i][1], styles[s]), machado[m]),
                             >, 10);
        for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
          g_assert_cmpfloat (distance_as_seen (gb_role_colour (lines[i][0], styles[s]),
                                               gb_role_colour (lines[i][1], styles[s]), machado[m]),
                             >, 10);
      }
  for (guint i = 0; i < G_N_ELEMENTS (together); i++)
    g_assert_cmpint (gb_role_pattern (together[i][0]), !=, gb_role_pattern (together[i][1]));
}

static void
test_mix (void)
{
  GbColour a = { 1, 0, 0.5 }, b = { 0, 1, 0.5 }, mixed = gb_colour_mix (a, b, 0.25);

  g_assert_cmpfloat_with_epsilon (mixed.r, 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (mixed.g, 0.75, 1e-12);
  g_assert_cmpfloat_with_epsilon (mixed.b, 0.5, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/charts/palette/contrast-formula", test_contrast_formula);
  g_test_add_func ("/charts/palette/contrast-of-roles", test_contrast_of_roles);
  g_test_add_func ("/charts/palette/colour-blind", test_colour_blind);
  g_test_add_func ("/charts/palette/mix", test_mix);
  return g_test_run ();
}
