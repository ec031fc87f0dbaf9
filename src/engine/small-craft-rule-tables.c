/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-small-craft-rule"

/* The method's two tables: factors of materials, and outboard motors.
 *
 * Factors: Boatbuilder's Handbook of the United States Coast Guard, flotation, dry weight into weight under
 * water; the figures of fibreglass, plywood, aluminium and ABS were read there, the others are from memory.
 * Motors: 33 CFR 183.75 with the table of ABYC S-30 that it names, as from 2018 (82 FR 16512).
 */

#include "small-craft-rule.h"

#include "density.h"

#include <math.h>
#include <string.h>

/* A material that is heavier than its row by more than this is reckoned by its own density: birch plywood
 * lifts less than fir's, and aluminium bronze is no aluminium. A lighter one keeps its row, which then errs
 * on the safe side. Common practice, no source. */
#define HEAVIER 1.1

#define IN(family) (1u << GB_FAMILY_##family)
#define WOODS (IN (WOOD) | IN (OTHER))
#define METALS (IN (METAL) | IN (OTHER))
#define PLASTICS (IN (PLASTIC) | IN (OTHER))
#define BOARDS (IN (PLYWOOD) | IN (WOOD) | IN (OTHER))

typedef struct
{
  const char *names; /* parted by ';'; of one all words must stand in the material's name, in any order */
  guint families;    /* in which the names mean this */
  double gravity;    /* specific */
  double factor;
} FactorRow;

/* The first that fits is taken, so what is made of another thing comes before it. */
static const FactorRow plywood = { "plywood", BOARDS, 0.55, -0.81 }; /* marine fir plywood */
static const FactorRow factors[] = {
  { "hardboard;masonite", BOARDS, 1.16, 0.14 },
  { "fibreglass laminate;fiberglass laminate;fibreglass;fiberglass;grp;frp", PLASTICS, 1.50, 0.33 },
  { "acrylic;plexiglas;plexiglass", PLASTICS, 1.18, 0.15 },
  { "abs", PLASTICS, 1.12, 0.11 },
  { "lead", METALS, 11.34, 0.91 },
  { "aluminium;aluminum", METALS, 2.73, 0.63 },
  { "copper", METALS, 8.91, 0.89 },
  { "brass", METALS, 8.56, 0.88 },
  { "steel", METALS, 7.85, 0.88 },
  { "glass", IN (OTHER), 2.60, 0.62 },
  { "concrete", IN (FILLER) | IN (OTHER), 2.40, 0.58 },
  { "rubber", IN (RUBBER) | IN (OTHER), 1.51, 0.34 },
  { "teak", WOODS, 0.82, -0.22 },
  { "hard maple;sugar maple", WOODS, 0.70, -0.43 },
  { "white oak", WOODS, 0.63, -0.59 },
  { "yellow birch", WOODS, 0.62, -0.61 },
  { "larch", WOODS, 0.59, -0.69 },
  { "philippine mahogany", WOODS, 0.58, -0.72 },
  { "honduras mahogany", WOODS, 0.56, -0.78 },
  { "ash", WOODS, 0.56, -0.78 },
  { "fir", WOODS, 0.51, -0.95 },
  { "cypress", WOODS, 0.48, -1.08 },
  { "spruce", WOODS, 0.43, -1.33 },
  { "white pine", WOODS, 0.42, -1.38 },
  { "red cedar;redcedar", WOODS, 0.33, -2.03 },
  { "cork", IN (FOAM) | WOODS, 0.24, -3.17 },
  { "balsa", IN (FOAM) | WOODS, 0.16, -5.24 },
};

static gboolean
has_word (const char *const *words, const char *word, gsize length)
{
  for (guint i = 0; words[i] != NULL; i++)
    if (strncmp (words[i], word, length) == 0 && words[i][length] == '\0')
      return TRUE;
  return FALSE;
}

/* Reads the names where they stand, since every part of a boat asks. */
static gboolean
is_named (const FactorRow *row, const char *const *words)
{
  const char *at = row->names;
  gboolean all = TRUE;

  for (;; at++)
    {
      gsize length = strcspn (at, " ;");

      all = all && has_word (words, at, length);
      at += length;
      if (*at == ' ')
        continue;
      if (all || *at == '\0')
        return all;
      all = TRUE;
    }
}

/* Plywood is plywood, whatever its faces or its name in another language; then by name. NULL where the table
 * has nothing like it. */
static const FactorRow *
row_of (const GbMaterial *material)
{
  g_auto (GStrv) words = g_str_tokenize_and_fold (material->name != NULL ? material->name : "", NULL, NULL);
  const char *const *folded = (const char *const *) words;
  guint family = 1u << CLAMP (material->family, 0, GB_FAMILY_OTHER);

  if ((plywood.families & family) != 0 && is_named (&plywood, folded))
    return &plywood;
  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    if ((factors[i].families & family) != 0 && is_named (&factors[i], folded))
      return &factors[i];
  return material->family == GB_FAMILY_PLYWOOD ? &plywood : NULL;
}

double
gb_rule_factor (const GbMaterial *material, double density, gboolean *from_table)
{
  const FactorRow *row = material != NULL ? row_of (material) : NULL;

  if (!(density > 0) && material != NULL)
    density = gb_material_figures (material).density;
  *from_table = row != NULL && !(density > HEAVIER * row->gravity * GB_RULE_DENSITY);
  if (*from_table)
    return row->factor;
  if (!(density > 0))
    return NAN;
  return 1 - GB_RULE_DENSITY / density;
}

/* Up to most_hp: weight dry, running and swamped; controls and rigging; battery dry and under water; full
 * portable tank. All lb. */
static const GbRuleMotor motors[] = {
  { 2.0, 30, 32, 27, 0, 0, 0, 0 },           { 3.9, 42, 44, 37, 0, 0, 0, 0 },
  { 6.9, 66, 69, 59, 0, 0, 0, 25 },          { 10.9, 105, 110, 94, 5, 20, 11, 50 },
  { 22.9, 127, 133, 113, 6, 45, 25, 50 },    { 34.9, 187, 196, 167, 9, 45, 25, 100 },
  { 64.9, 286, 300, 255, 14, 45, 25, 100 },  { 94.9, 439, 461, 392, 22, 45, 25, 100 },
  { 104.9, 458, 481, 409, 23, 45, 25, 100 }, { 144.9, 526, 552, 469, 26, 45, 25, 100 },
  { 194.9, 561, 589, 501, 28, 45, 25, 100 }, { 209.9, 652, 685, 582, 33, 45, 25, 100 },
  { 300.0, 699, 734, 624, 35, 45, 25, 100 }, { 350.0, 884, 928, 789, 44, 45, 25, 100 },
};

const GbRuleMotor *
gb_rule_motor (double horsepower)
{
  if (!(horsepower > 0))
    return NULL;
  for (guint i = 0; i < G_N_ELEMENTS (motors); i++)
    if (horsepower <= motors[i].most_hp)
      return &motors[i];
  return NULL;
}

const GbRuleMotor *
gb_rule_motor_by_weight (double dry)
{
  for (guint i = 0; i < G_N_ELEMENTS (motors) - 1; i++)
    if (dry <= motors[i].dry)
      return &motors[i];
  return &motors[G_N_ELEMENTS (motors) - 1];
}
