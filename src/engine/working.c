/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-working"

#include "working-private.h"

#include "engine/density.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *
gb_caution_afloat (void)
{
  return _ ("These figures are an aid to the builder and no more. Test her in sheltered, shallow water near "
            "the shore, and wear a buoyancy "
            "aid. Local rules and a qualified person decide what is safe.");
}

const char *
gb_caution_swamped (void)
{
  return _ ("What carries a swamped boat is reckoned here, not tested. Swamp her on purpose in warm, shallow "
            "water with helpers near, before anyone relies on it. The published rule is one country's and may not "
            "be yours: local rules decide.");
}

const char *
gb_caution_lifting (void)
{
  return _ ("Lift with enough people, a straight back and a clear way. Slings, trestles and roof racks must "
            "be made for more than this "
            "load; ask a qualified person where a life may hang on them.");
}

static void
step_free (gpointer data)
{
  GbWorkingStep *step = data;

  g_free (step->words);
  g_free (step->numbers);
  g_free (step->source);
  g_free (step);
}

void
gb_working_free (GbWorking *working)
{
  if (working == NULL)
    return;
  g_free (working->title);
  g_ptr_array_unref (working->steps);
  g_clear_pointer (&working->columns, g_ptr_array_unref);
  g_clear_pointer (&working->rows, g_ptr_array_unref);
  g_free (working->caution);
  g_free (working);
}

GbHand
gb_hand_start (const GbBoat *boat, const GbFindings *findings, char *take_title)
{
  GbWorking *working = g_new0 (GbWorking, 1);

  working->title = take_title;
  working->steps = g_ptr_array_new_with_free_func (step_free);
  return (GbHand){ working, boat, findings, (GbUnits) gb_boat_build (boat)->units };
}

GbWorking *
gb_hand_of_nothing (const GbBoat *boat)
{
  return gb_hand_start (boat, NULL, g_strdup (_ ("This is no longer there."))).working;
}

char *
gb_hand_title (const char *format, const GbPart *part)
{
  g_autofree char *name = gb_record_dup_title (&part->rec);

  return g_strdup_printf (format, name);
}

char *
gb_hand_heading (const char *label, const char *unit)
{
  /* Translators: what a column holds, and its unit. */
  return g_strdup_printf (_ ("%s, %s"), label, unit);
}

const GbWeighing *
gb_hand_weighing (const GbHand *hand, gint64 part)
{
  const GPtrArray *all = gb_boat_all (hand->boat, GB_RECORD_WEIGHING);
  const GbRollup *rollup = &hand->findings->rollup;

  for (guint i = 0; i < MIN (all->len, rollup->n_weighings); i++)
    if (rollup->weighings[i].stands && rollup->weighings[i].part == part)
      return all->pdata[i];
  return NULL;
}

void
gb_hand_step (GbHand *hand, const char *words, char *take_numbers, const char *source)
{
  GbWorkingStep *step = g_new (GbWorkingStep, 1);

  *step = (GbWorkingStep){ g_strdup (words), take_numbers, g_strdup (source) };
  g_ptr_array_add (hand->working->steps, step);
}

void
gb_hand_say (GbHand *hand, const char *sentence)
{
  if (sentence != NULL)
    gb_hand_step (hand, sentence, NULL, NULL);
}

void
gb_hand_say_all (GbHand *hand, const GPtrArray *sentences)
{
  for (guint i = 0; i < sentences->len; i++)
    gb_hand_say (hand, sentences->pdata[i]);
}

char *
gb_hand_show (const GbHand *hand, double value, GbDimension dim)
{
  return gb_quantity_format (value, dim, hand->units);
}

char *
gb_hand_money (const GbHand *hand, gint64 amount)
{
  return gb_money_format_full (amount, gb_boat_build (hand->boat)->currency);
}

char *
gb_hand_sum (const GbHand *hand, const GbTerm *terms, guint n_terms, double result, GbDimension dim)
{
  GString *text = g_string_new (NULL);
  g_autofree char *last = gb_hand_show (hand, result, dim);

  for (guint i = 0; i < n_terms; i++)
    {
      g_autofree char *term = gb_hand_show (hand, terms[i].value, terms[i].dim);

      if (i > 0)
        g_string_append_printf (text, " %s ", terms[i].sign);
      g_string_append (text, term);
    }
  g_string_append_printf (text, " = %s", last);
  return g_string_free (text, FALSE);
}

void
gb_hand_columns (GbHand *hand, const char *first, ...)
{
  va_list rest;

  hand->working->columns = g_ptr_array_new_with_free_func (g_free);
  hand->working->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  va_start (rest, first);
  for (const char *heading = first; heading != NULL; heading = va_arg (rest, const char *))
    g_ptr_array_add (hand->working->columns, g_strdup (heading));
  va_end (rest);
}

void
gb_hand_row (GbHand *hand, char *take_first, ...)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  va_list rest;

  va_start (rest, take_first);
  for (char *cell = take_first; cell != NULL; cell = va_arg (rest, char *))
    g_ptr_array_add (cells, cell);
  va_end (rest);
  g_assert (cells->len == hand->working->columns->len);
  g_ptr_array_add (cells, NULL);
  g_ptr_array_add (hand->working->rows, g_ptr_array_steal (cells, NULL));
}

GbColumnFormat
gb_column_format (double largest, double factor)
{
  double shown = fabs (largest) / factor;
  int whole = shown >= 1 && isfinite (shown) ? (int) floor (log10 (shown)) + 1 : 1;

  return (GbColumnFormat){ factor, CLAMP (5 - whole, 0, 3) };
}

char *
gb_column_show (GbColumnFormat format, double value)
{
  double shown = value / format.factor;

  if (isnan (shown))
    return g_strdup ("–");
  /* No minus before nothing. */
  return g_strdup_printf ("%.*f", format.decimals,
                          fabs (shown) * pow (10, format.decimals) < 0.5 ? 0.0 : shown);
}

char *
gb_hand_source (const GbHand *hand, const GbMaterial *material)
{
  GbMaterialFigures figures = gb_material_figures (material);
  g_autofree char *title = gb_record_dup_title (&material->rec);

  if (figures.n_samples > 0)
    /* Translators: the name of a material, and how many samples of it were put on a scale. */
    return g_strdup_printf (
        ngettext ("%s: %u weighed sample", "%s: mean of %u weighed samples", figures.n_samples), title,
        figures.n_samples);
  /* Translators: the name of a material, and where its density comes from. */
  return g_strdup_printf (_ ("%s: %s"), title,
                          material->source != NULL ? material->source : _ ("no source is given"));
}

/* As text ----------------------------------------------------------------------------------- */

static void
append_step (GString *text, const GbWorkingStep *step)
{
  if (step->words != NULL)
    g_string_append_printf (text, "%s\n", step->words);
  if (step->numbers != NULL)
    g_string_append_printf (text, "  %s\n", step->numbers);
  if (step->source != NULL)
    g_string_append_printf (text, "  (%s)\n", step->source);
}

/* Names to the left, figures to the right, as wide as the widest of the column. */
static void
append_cell (GString *text, const char *cell, glong width, gboolean name)
{
  glong padding = width - g_utf8_strlen (cell, -1);

  if (name)
    g_string_append (text, cell);
  for (glong i = 0; i < padding; i++)
    g_string_append_c (text, ' ');
  if (!name)
    g_string_append (text, cell);
}

static void
append_row (GString *text, const char *const *cells, const GArray *widths)
{
  for (guint c = 0; c < widths->len; c++)
    {
      if (c > 0)
        g_string_append (text, "  ");
      append_cell (text, cells[c], g_array_index (widths, glong, c), c == 0);
    }
  while (text->len > 0 && text->str[text->len - 1] == ' ')
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static GArray *
column_widths (const GbWorking *working)
{
  GArray *widths = g_array_new (FALSE, TRUE, sizeof (glong));

  for (guint c = 0; c < working->columns->len; c++)
    {
      glong width = g_utf8_strlen (working->columns->pdata[c], -1);

      for (guint r = 0; r < working->rows->len; r++)
        width = MAX (width, g_utf8_strlen (((char **) working->rows->pdata[r])[c], -1));
      g_array_append_val (widths, width);
    }
  return widths;
}

static void
append_table (GString *text, const GbWorking *working)
{
  g_autoptr (GArray) widths = column_widths (working);

  g_string_append_c (text, '\n');
  append_row (text, (const char *const *) working->columns->pdata, widths);
  for (guint r = 0; r < working->rows->len; r++)
    append_row (text, working->rows->pdata[r], widths);
}

char *
gb_working_to_text (const GbWorking *working)
{
  GString *text = g_string_new (working->title);

  g_string_append (text, "\n\n");
  for (guint i = 0; i < working->steps->len; i++)
    append_step (text, working->steps->pdata[i]);
  if (working->columns != NULL)
    append_table (text, working);
  if (working->caution != NULL)
    g_string_append_printf (text, "\n%s\n", working->caution);
  return g_string_free (text, FALSE);
}
