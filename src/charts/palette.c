/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

#include "palette.h"

#include <math.h>

#define RGB(hex)                                                                                             \
  {                                                                                                          \
    ((hex) >> 16 & 0xff) / 255.0, ((hex) >> 8 & 0xff) / 255.0, ((hex) &0xff) / 255.0                         \
  }

/* Okabe and Ito's colours, as they stand on white and on black: darkened or lightened where theirs are too
 * faint there. On black their sky blue stands for blue, which cannot be lightened without coming near the
 * green. */
#define ORANGE RGB (0xAC7700), RGB (0xE69F00)         /* E69F00 */
#define SKY_BLUE RGB (0x4087AF), RGB (0x56B4E9)       /* 56B4E9 */
#define BLUISH_GREEN RGB (0x009E73), RGB (0x009E73)   /* 009E73 */
#define BLUE RGB (0x0072B2), RGB (0x56B4E9)           /* 0072B2 */
#define VERMILION RGB (0xC05500), RGB (0xDB7626)      /* D55E00 */
#define REDDISH_PURPLE RGB (0xB86D96), RGB (0xCC79A7) /* CC79A7 */

#define GREY(level)                                                                                          \
  {                                                                                                          \
    (level), (level), (level)                                                                                \
  }

static const struct
{
  GbColour on_white, on_black, in_print;
  GbPattern pattern;
} looks[GB_N_ROLES] = {
  [GB_ROLE_BACKGROUND] = { RGB (0xFFFFFF), RGB (0x1E1E1E), GREY (1), GB_PATTERN_SOLID },
  [GB_ROLE_TEXT] = { RGB (0x1E1E1E), RGB (0xF0F0F0), GREY (0), GB_PATTERN_SOLID },
  [GB_ROLE_QUIET] = { RGB (0x5E5E5E), RGB (0xB4B4B4), GREY (0.3), GB_PATTERN_SOLID },
  [GB_ROLE_LINE] = { RGB (0x6E6E6E), RGB (0xA0A0A0), GREY (0.3), GB_PATTERN_SOLID },
  [GB_ROLE_GRID] = { RGB (0xE4E4E4), RGB (0x3A3A3A), GREY (0.87), GB_PATTERN_SOLID },
  [GB_ROLE_LIMIT] = { VERMILION, GREY (0), GB_PATTERN_SOLID },
  [GB_ROLE_LIGHT_CRAFT] = { BLUE, GREY (0.35), GB_PATTERN_SOLID },
  [GB_ROLE_MARGIN] = { ORANGE, GREY (0.35), GB_PATTERN_HATCH },
  [GB_ROLE_LOADS] = { BLUISH_GREEN, GREY (0.5), GB_PATTERN_DOTS },
  [GB_ROLE_WEIGHED] = { BLUE, GREY (0.35), GB_PATTERN_SOLID },
  [GB_ROLE_CALCULATED] = { BLUISH_GREEN, GREY (0.4), GB_PATTERN_LEVEL },
  [GB_ROLE_ESTIMATED] = { ORANGE, GREY (0.4), GB_PATTERN_HATCH },
  [GB_ROLE_SPENT] = { BLUE, GREY (0.35), GB_PATTERN_SOLID },
  [GB_ROLE_TO_BUY] = { ORANGE, GREY (0.4), GB_PATTERN_HATCH },
  [GB_ROLE_ALLOWANCE] = { REDDISH_PURPLE, GREY (0.5), GB_PATTERN_DOTS },
  [GB_ROLE_COURSE] = { BLUE, GREY (0.1), GB_PATTERN_SOLID },
  [GB_ROLE_WATER] = { SKY_BLUE, GREY (0.45), GB_PATTERN_LEVEL },
  [GB_ROLE_UNDER] = { VERMILION, GREY (0), GB_PATTERN_HATCH },
  [GB_ROLE_PART] = { BLUE, GREY (0.35), GB_PATTERN_SOLID },
  [GB_ROLE_PICKED] = { ORANGE, GREY (0), GB_PATTERN_SOLID },
};

GbColour
gb_colour_mix (GbColour a, GbColour b, double share)
{
  return (GbColour){ share * a.r + (1 - share) * b.r, share * a.g + (1 - share) * b.g,
                     share * a.b + (1 - share) * b.b };
}

GbColour
gb_role_colour (GbRole role, GbChartStyle style)
{
  g_return_val_if_fail (role < GB_N_ROLES, looks[GB_ROLE_TEXT].on_white);

  if (style == GB_CHART_DARK)
    return looks[role].on_black;
  return style == GB_CHART_PRINT ? looks[role].in_print : looks[role].on_white;
}

GbPattern
gb_role_pattern (GbRole role)
{
  g_return_val_if_fail (role < GB_N_ROLES, GB_PATTERN_SOLID);

  return looks[role].pattern;
}

static double
linear (double channel)
{
  return channel <= 0.03928 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (GbColour colour)
{
  return 0.2126 * linear (colour.r) + 0.7152 * linear (colour.g) + 0.0722 * linear (colour.b);
}

double
gb_colour_contrast (GbColour a, GbColour b)
{
  double la = luminance (a), lb = luminance (b);

  return (fmax (la, lb) + 0.05) / (fmin (la, lb) + 0.05);
}
