/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-similarity"

/* Why the model's draughts are others than the computed ones. The boat is let float with the model's mass,
 * then with its centre as well: each step's change is what that makes of the draughts, and what is left is
 * reading or shape. */

#include "similarity-private.h"

#include "afloat-private.h"
#include "boat/quantity.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* On the model: what a ruler tells apart, and what is not worth a word. */
#define MISREAD_METRIC 0.001
#define MISREAD_FEET (0.0254 / 16)
#define WORTH_A_WORD 0.0005
#define MASS_WORTH_A_WORD 0.001 /* as a share */
#define HEEL_MISREAD (G_PI / 360)

/* How she floats: draughts at the marks, and heel. Or the difference of two such. */
typedef struct
{
  double fore, aft, heel;
} Reading;

typedef struct
{
  GbTubbed *tubbed;
  GbUnits units;
  const GbFloater *floater; /* of the condition */
  const GbAfloat *afloat;
} Explainer;

static Reading
less (Reading a, Reading b)
{
  return (Reading){ a.fore - b.fore, a.aft - b.aft, a.heel - b.heel };
}

/* Words -------------------------------------------------------------------------------------------------- */

/* Puts "4 mm deeper" or its contrary into @list; nothing where the amount is. */
static void
tell (const Explainer *self,
      GString *list,
      double amount,
      double least,
      GbDimension dim,
      const char *more,
      const char *other)
{
  g_autofree char *figure = NULL;

  if (!(fabs (amount) >= least))
    return;
  figure = gb_quantity_format (fabs (amount), dim, self->units);
  if (list->len > 0)
    g_string_append (list, ", ");
  g_string_append_printf (list, amount > 0 ? more : other, figure);
}

static char *
change_text (const Explainer *self, Reading change)
{
  const double least = WORTH_A_WORD / 5 * self->tubbed->scale;
  g_autoptr (GString) list = g_string_new (NULL);

  if (fabs (change.fore - change.aft) < least)
    {
      /* Translators: a length; how much deeper or less deep she floats. */
      tell (self, list, (change.fore + change.aft) / 2, least, GB_DIM_LENGTH, _ ("%s deeper"),
            _ ("%s less deep"));
    }
  else
    {
      tell (self, list, change.fore, least, GB_DIM_LENGTH, _ ("%s deeper forward"),
            _ ("%s less deep forward"));
      tell (self, list, change.aft, least, GB_DIM_LENGTH, _ ("%s deeper aft"), _ ("%s less deep aft"));
    }
  /* Translators: an angle of heel. */
  tell (self, list, change.heel, G_PI / 1800, GB_DIM_ANGLE, _ ("%s more to starboard"),
        _ ("%s more to port"));
  return g_strdup (list->len > 0 ? list->str : _ ("nothing that could be read"));
}

static void
explain (const Explainer *self, Reading change, char *take_words)
{
  GbExplanation *explanation = g_new (GbExplanation, 1);

  *explanation = (GbExplanation){ take_words, change.fore, change.aft };
  g_ptr_array_add (self->tubbed->explanations, explanation);
}

static void
explain_mass (const Explainer *self, double over, Reading change)
{
  g_autofree char *mass = NULL, *makes = NULL;

  if (!(fabs (over) > MASS_WORTH_A_WORD * self->afloat->total))
    return;
  mass = gb_quantity_format (fabs (over), GB_DIM_MASS, self->units);
  makes = change_text (self, change);
  /* Translators: a mass, and what that makes of the draughts, as "4 mm deeper". */
  explain (self, change,
           g_strdup_printf (over > 0
                                ? _ ("In the boat's size the model is %s too heavy for this condition: %s.")
                                : _ ("In the boat's size the model is %s too light for this condition: %s."),
                            mass, makes));
}

static void
explain_place (const Explainer *self, GbVec3 off, Reading change)
{
  const double least = WORTH_A_WORD * self->tubbed->scale;
  g_autoptr (GString) where = g_string_new (NULL);
  g_autofree char *makes = NULL;

  tell (self, where, off.x, least, GB_DIM_LENGTH, _ ("%s further forward"), _ ("%s further aft"));
  tell (self, where, off.y, least, GB_DIM_LENGTH, _ ("%s further to port"), _ ("%s further to starboard"));
  tell (self, where, off.z, least, GB_DIM_LENGTH, _ ("%s higher"), _ ("%s lower"));
  if (where->len == 0)
    return;
  makes = change_text (self, change);
  /* Translators: where the weight lies, as "40 mm further aft", and what that makes of the draughts. */
  explain (self, change,
           g_strdup_printf (_ ("In the boat's size the model's weight lies %s: %s."), where->str, makes));
}

static double
misread (const Explainer *self)
{
  return self->units == GB_UNITS_FEET ? MISREAD_FEET : MISREAD_METRIC;
}

static void
explain_reading (const Explainer *self)
{
  double least = misread (self);
  g_autofree char *model = gb_quantity_format (least, GB_DIM_LENGTH, self->units);
  g_autofree char *boat = gb_quantity_format (least * self->tubbed->scale, GB_DIM_LENGTH, self->units);

  /* Translators: two lengths, as 1 mm and 8 mm. */
  explain (self, (Reading){ NAN, NAN, NAN },
           g_strdup_printf (_ ("Each %s misread on the model is %s on the boat."), model, boat));
}

/* A reading that was not taken is NAN and makes no difference here. */
static gboolean
is_readable (const Explainer *self, double difference)
{
  return fabs (difference) > misread (self) * self->tubbed->scale;
}

static void
explain_rest (const Explainer *self, Reading rest)
{
  g_autofree char *left = NULL;

  if (!is_readable (self, rest.fore) && !is_readable (self, rest.aft) && !(fabs (rest.heel) > HEEL_MISREAD))
    {
      explain (self, rest, g_strdup (_ ("What is left is no more than that.")));
      return;
    }
  left = change_text (self, rest);
  /* Translators: a change of draughts, as "5 mm deeper forward". */
  explain (self, rest,
           g_strdup_printf (_ ("What is left, %s, is the reading or the shape: measure the model against the "
                               "boat's lines."),
                            left));
}

/* What the boat has in this condition and the model cannot have. */
static void
explain_ropes (const Explainer *self, Reading change)
{
  g_autofree char *makes = NULL;

  if (self->floater->pulls->len == 0)
    return;
  makes = change_text (self, change);
  /* Translators: what that makes of the draughts, as "4 mm deeper aft". */
  explain (self, change, g_strdup_printf (_ ("What pulls the boat does not pull the model: %s."), makes));
}

static void
explain_tanks (const Explainer *self)
{
  if (self->floater->tanks->len > 0)
    explain (self, (Reading){ NAN, NAN, NAN },
             g_strdup (_ ("In the boat liquids run to the lower side of their tanks; in the model they stand "
                          "still, unless its loads are liquids too.")));
}

/* Floating ----------------------------------------------------------------------------------------------- */

static GbRest
rest_with (const Explainer *self, double mass, GbVec3 centre)
{
  g_autoptr (GbFloater) floater = gb_floater_new (self->floater->density);

  for (guint i = 0; i < self->floater->hulls->len; i++)
    {
      const GbFloatHull *hull = &g_array_index (self->floater->hulls, GbFloatHull, i);

      gb_floater_add_hull (floater, hull->body, hull->mirrored);
    }
  gb_floater_add_mass (floater, mass, centre);
  return gb_floater_rest (floater, self->afloat->attitude, GB_HOLD_NOTHING, NULL, NULL);
}

static Reading
reading_of (const Explainer *self, GbAttitude attitude)
{
  return (Reading){ gb_draught_at (attitude, self->afloat->keel, self->tubbed->fore_x),
                    gb_draught_at (attitude, self->afloat->keel, self->tubbed->aft_x),
                    gb_attitude_heel (attitude) };
}

/* The model's centre, and where it is not known, the condition's. */
static GbVec3
own_centre (const Explainer *self)
{
  GbVec3 own = self->tubbed->centre, gravity = self->afloat->gravity;

  return (GbVec3){ isnan (own.x) ? gravity.x : own.x, isnan (own.y) ? gravity.y : own.y,
                   isnan (own.z) ? gravity.z : own.z };
}

/* Three boats beside each other: of the condition, as heavy as the model, and with the model's centre too.
 * Water in tanks stands still in all of them, and nothing pulls. @expected becomes how the last floats. A
 * sentence where she would not. */
static char *
explain_weight (const Explainer *self, Reading *expected)
{
  GbVec3 gravity = self->afloat->gravity, centre = own_centre (self);
  GbVec3 off = { centre.x - gravity.x, centre.y - gravity.y, centre.z - gravity.z };
  double mass = self->tubbed->mass;
  GbRest as_computed = rest_with (self, self->afloat->total, gravity);
  GbRest as_heavy = rest_with (self, mass, gravity);
  GbRest own = rest_with (self, mass, centre);
  Reading before, between;

  if (as_heavy.kind == GB_REST_SINKS)
    return g_strdup (_ ("With the model's own mass, in the boat's size, she would sink."));
  if (as_computed.kind != GB_REST_FOUND || as_heavy.kind != GB_REST_FOUND || own.kind != GB_REST_FOUND)
    return NULL;
  before = reading_of (self, as_computed.attitude);
  between = reading_of (self, as_heavy.attitude);
  explain_ropes (self, less (before, *expected));
  *expected = reading_of (self, own.attitude);
  explain_mass (self, mass - self->afloat->total, less (between, before));
  explain_place (self, off, less (*expected, between));
  self->tubbed->own_fore = expected->fore;
  self->tubbed->own_aft = expected->aft;
  return NULL;
}

char *
gb_tubbed_explain (GbTubbed *tubbed, GbUnits units, const GbCase *case_, const GbAfloat *afloat)
{
  Explainer self = { tubbed, units, gb_case_floater (case_), afloat };
  Reading expected = { tubbed->computed_fore, tubbed->computed_aft, tubbed->computed_heel };
  Reading read = { tubbed->draught_fore, tubbed->draught_aft, tubbed->heel };
  char *trouble = NULL;

  if (isnan (tubbed->scale))
    return NULL;
  if (!isnan (tubbed->mass) && !isnan (tubbed->centre.x))
    trouble = explain_weight (&self, &expected);
  if (isnan (read.fore) && isnan (read.aft) && isnan (read.heel))
    return trouble;
  explain_reading (&self);
  explain_rest (&self, less (read, expected));
  explain_tanks (&self);
  return trouble;
}
