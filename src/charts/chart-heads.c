/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-charts"

/* Each budget head: what is spent, what is still to buy, and its budget. */

#include "bars.h"
#include "boat/money.h"
#include "chart-private.h"
#include "words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef struct
{
  char *currency;
  GbPiece pieces[3];
  GArray *rows;     /* of GbBarRow */
  GPtrArray *tells; /* sentences by row */
} Heads;

static void
heads_free (gpointer data)
{
  Heads *heads = data;

  g_free (heads->currency);
  g_array_unref (heads->rows);
  g_ptr_array_unref (heads->tells);
  g_free (heads);
}

static Heads *
heads_new (const char *currency)
{
  Heads *heads = g_new0 (Heads, 1);

  heads->currency = g_strdup (currency);
  heads->pieces[0] = (GbPiece){ _ ("Spent"), GB_ROLE_SPENT };
  heads->pieces[1] = (GbPiece){ _ ("Still to buy"), GB_ROLE_TO_BUY };
  heads->pieces[2] = (GbPiece){ _ ("Allowance"), GB_ROLE_ALLOWANCE };
  heads->rows = g_array_new (FALSE, FALSE, sizeof (GbBarRow));
  g_array_set_clear_func (heads->rows, (GDestroyNotify) gb_bar_row_clear);
  heads->tells = g_ptr_array_new_with_free_func (g_free);
  return heads;
}

static char *
say_money (double value, gconstpointer data)
{
  return gb_money_words (value, data);
}

/* How far the forecast goes over the budget; 0 where it does not, or where one of the two is unknown. */
static gint64
over_by (gint64 budget, gint64 forecast)
{
  if (budget == GB_MONEY_UNKNOWN || forecast == GB_MONEY_UNKNOWN || forecast <= budget)
    return 0;
  return forecast - budget;
}

static char *
row_words (const char *currency, gint64 budget, gint64 forecast)
{
  g_autofree char *forecast_text = gb_money_format_full (forecast, currency);
  g_autofree char *budget_text = NULL;
  gint64 over = over_by (budget, forecast);

  if (budget == GB_MONEY_UNKNOWN)
    return g_steal_pointer (&forecast_text);
  budget_text = gb_money_format_full (over > 0 ? over : budget, currency);
  if (over > 0)
    return g_strdup_printf (_ ("%s over"), budget_text);
  return g_strdup_printf (_ ("%s of %s"), forecast_text, budget_text);
}

static char *
tell_row (const Heads *heads, const GbBarRow *row, gint64 budget, gint64 forecast)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *budget_text = gb_money_format_full (budget, heads->currency);
  g_autofree char *forecast_text = gb_money_format_full (forecast, heads->currency);

  g_string_append_printf (text, "%s:", row->name);
  for (guint i = 0; i < G_N_ELEMENTS (heads->pieces); i++)
    if (row->values[i] != 0)
      {
        g_autofree char *part = gb_money_words (row->values[i], heads->currency);

        gb_say (text, "%s %s.", heads->pieces[i].label, part);
      }
  gb_say (text, _ ("Forecast %s."), forecast_text);
  if (budget == GB_MONEY_UNKNOWN)
    gb_say (text, "%s", _ ("No budget."));
  else
    gb_say (text, _ ("Budget %s."), budget_text);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
add_row (Heads *heads, const char *name, const gint64 parts[3], gint64 budget, gint64 forecast)
{
  GbBarRow row = {
    .name = g_strdup (name),
    .words = row_words (heads->currency, budget, forecast),
    .values = { gb_money_value (parts[0]), gb_money_value (parts[1]), gb_money_value (parts[2]) },
    .mark = gb_money_value (budget),
    .over = over_by (budget, forecast) > 0,
  };

  g_ptr_array_add (heads->tells, tell_row (heads, &row, budget, forecast));
  g_array_append_val (heads->rows, row);
}

/* What is under no head is shown only where there is some. */
static gboolean
is_shown (const GbHead *head)
{
  return head->category != 0 || (head->spent != 0 && head->spent != GB_MONEY_UNKNOWN)
         || (head->to_buy != 0 && head->to_buy != GB_MONEY_UNKNOWN);
}

static char *
head_name (const GbBoat *boat, const GbHead *head)
{
  const GbRecord *category = gb_boat_get (boat, GB_RECORD_CATEGORY, head->category);

  return category != NULL ? gb_record_dup_title (category) : g_strdup (_ ("Under no head"));
}

static void
add_heads (Heads *heads, const GbBoat *boat, const GbCosts *costs)
{
  for (guint i = 0; i < costs->n_heads; i++)
    {
      const GbHead *head = &costs->heads[i];
      g_autofree char *name = head_name (boat, head);

      if (is_shown (head))
        add_row (heads, name, (const gint64[]){ head->spent, head->to_buy, 0 }, head->budget, head->forecast);
    }
}

static void
say_over (GString *title, const char *name, gint64 most, guint n_over, const char *currency)
{
  g_autofree char *over = gb_money_format_full (most, currency);

  if (n_over == 1)
    g_string_append_printf (title, _ ("%s goes %s over its budget"), name, over);
  else
    g_string_append_printf (title,
                            ngettext ("%u head goes over its budget, %s the most: by %s",
                                      "%u heads go over their budgets, %s the most: by %s", n_over),
                            n_over, name, over);
}

static void
say_within (GString *title, gint64 all_over, const char *currency)
{
  g_autofree char *over = gb_money_format_full (all_over, currency);

  if (all_over > 0)
    g_string_append_printf (title, _ ("Every head keeps within its budget, but all together go %s over"),
                            over);
  else
    g_string_append (title, _ ("Every head keeps within its budget"));
}

static void
say_title (GString *title, const GbBoat *boat, const GbCosts *costs)
{
  const char *currency = gb_boat_build (boat)->currency;
  const GbHead *worst = NULL;
  gint64 most = 0;
  guint n_over = 0, n_budgets = 0;

  for (guint i = 0; i < costs->n_heads; i++)
    {
      gint64 over = over_by (costs->heads[i].budget, costs->heads[i].forecast);

      n_budgets += costs->heads[i].budget != GB_MONEY_UNKNOWN;
      n_over += over > 0;
      if (over > most)
        {
          most = over;
          worst = &costs->heads[i];
        }
    }
  if (n_budgets == 0)
    g_string_append (title, _ ("No head has a budget yet"));
  else if (worst == NULL)
    say_within (title, over_by (costs->budget, costs->forecast), currency);
  else
    {
      g_autofree char *name = head_name (boat, worst);

      say_over (title, name, most, n_over, currency);
    }
}

static gboolean
has_money (const GbCosts *costs)
{
  for (guint i = 0; i < costs->n_heads; i++)
    if (is_shown (&costs->heads[i]))
      return TRUE;
  return FALSE;
}

static gpointer
make (const GbChartSource *source, GbChartWords *words)
{
  const GbCosts *costs = &source->findings->costs;
  Heads *heads;

  if (!has_money (costs))
    {
      g_string_append (words->title,
                       _ ("Each budget head stands here, once there is a head, a price or a receipt"));
      return NULL;
    }
  say_title (words->title, source->boat, costs);
  gb_say (words->subtitle, "%s",
          _ ("What is spent and what is still to buy, by budget head; the stroke is the budget."));
  gb_say_no_price (words->subtitle, costs->n_no_price);

  heads = heads_new (gb_boat_build (source->boat)->currency);
  add_row (heads, _ ("In all"), (const gint64[]){ costs->spent, costs->to_buy, costs->allowance },
           costs->budget, costs->forecast);
  add_heads (heads, source->boat, costs);
  for (guint i = 0; i < heads->tells->len; i++)
    gb_say (words->description, "%s", (char *) g_ptr_array_index (heads->tells, i));
  return heads;
}

static void
draw (gconstpointer data, GbCanvas *canvas, GbBox box)
{
  const Heads *heads = data;
  const GbBars bars = {
    .rows = heads->rows,
    .pieces = heads->pieces,
    .n_pieces = G_N_ELEMENTS (heads->pieces),
    .factor = pow (10, gb_currency_exponent (heads->currency)),
    .unit = heads->currency != NULL ? heads->currency : "",
    .say = say_money,
    .data = heads->currency,
  };

  gb_bars_draw (&bars, canvas, box);
}

static char *
tell (gconstpointer data, guint what)
{
  return g_strdup (g_ptr_array_index (((const Heads *) data)->tells, what));
}

const GbChartMethod gb_chart_heads = {
  .name = "heads",
  .label = N_ ("Budget heads"),
  .make = make,
  .draw = draw,
  .tell = tell,
  .free = heads_free,
};
