/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-tub-log"

#include "tub-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/afloat-grids.h"
#include "pages/afloat-words.h"
#include "pages/fact-list.h"

typedef enum
{
  LINE_FORE,
  LINE_AFT,
  LINE_TRIM,
  LINE_HEEL,
  N_LINES
} Line;

typedef enum
{
  COLUMN_READ,
  COLUMN_COMPUTED,
  COLUMN_DIFFERENCE,
  N_COLUMNS
} Column;

typedef enum
{
  FACT_WEIGH,
  FACT_BALLAST,
  FACT_BALLAST_AT,
  FACT_SECOND,
  N_FACTS
} Fact;

struct _GbTubLog
{
  GtkBox parent_instance;

  GbTestLog *log;
  GtkWidget *result;
  GtkLabel *trouble;
  GtkLabel *values[N_LINES][N_COLUMNS];
  GtkLabel *explanations;
  GbFactRow *facts[N_FACTS];
};

G_DEFINE_FINAL_TYPE (GbTubLog, gb_tub_log, GTK_TYPE_BOX)

static GbWorking *
ask_working (gpointer data)
{
  GbTubLog *self = data;
  GbProject *project = gb_test_log_get_project (self->log);

  return gb_working_tubbed (gb_project_get_boat (project), gb_project_get_findings (project),
                            gb_test_log_at_hand (self->log));
}

static const GbFactSpec specs[N_FACTS] = {
  [FACT_WEIGH] = { N_ ("It must weigh in all"), ask_working },
  [FACT_BALLAST] = { N_ ("To be put into the bare model"), ask_working },
  [FACT_BALLAST_AT] = { N_ ("With its centre, on the model, at"), ask_working },
  [FACT_SECOND] = { N_ ("A second of the model is"), ask_working },
};

/* Showing ----------------------------------------------------------------------------------------------- */

static char *
difference_text (double read, double computed, GbDimension dim, GbUnits units)
{
  double by = read - computed;
  g_autofree char *size = gb_quantity_format (fabs (by), dim, units);

  return isnan (by) ? g_strdup ("–") : g_strdup_printf ("%s%s", by < 0 ? "−" : "+", size);
}

static void
show_line (GbTubLog *self, Line line, double read, double computed, GbDimension dim, GbUnits units)
{
  g_autofree char *left = gb_quantity_format (read, dim, units);
  g_autofree char *right = gb_quantity_format (computed, dim, units);
  g_autofree char *difference = difference_text (read, computed, dim, units);

  gtk_label_set_text (self->values[line][COLUMN_READ], left);
  gtk_label_set_text (self->values[line][COLUMN_COMPUTED], right);
  gtk_label_set_text (self->values[line][COLUMN_DIFFERENCE], difference);
}

static void
show_explanations (GbTubLog *self, const GbTubbed *tubbed)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < tubbed->explanations->len; i++)
    {
      const GbExplanation *explanation = tubbed->explanations->pdata[i];

      g_string_append_printf (text, "%s• %s", i > 0 ? "\n" : "", explanation->words);
    }
  gtk_label_set_text (self->explanations, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->explanations), text->len > 0);
}

static char *
ballast_words (double ballast, GbUnits units)
{
  g_autofree char *size = gb_quantity_format (fabs (ballast), GB_DIM_MASS, units);

  if (isnan (ballast) || ballast >= 0)
    return g_steal_pointer (&size);
  return g_strdup_printf (_ ("nothing: it is %s too heavy already"), size);
}

static void
show_wanted (GbTubLog *self, const GbTubbed *t, GbUnits units)
{
  char *second = isnan (t->time_factor) ? g_strdup ("–")
                                        : g_strdup_printf (_ ("%.2f s of the boat"), t->time_factor);

  gb_fact_list_set (self->facts[FACT_WEIGH], gb_quantity_format (t->wanted_mass, GB_DIM_MASS, units), FALSE);
  gb_fact_list_set (self->facts[FACT_BALLAST], ballast_words (t->ballast, units), t->ballast < 0);
  gb_fact_list_set (self->facts[FACT_BALLAST_AT], gb_afloat_point_words (t->ballast_centre, units), FALSE);
  gb_fact_list_set (self->facts[FACT_SECOND], second, FALSE);
}

static void
show_result (GbTubLog *self)
{
  const GbRecord *test = gb_test_log_get_record (self->log);
  GbProject *project = gb_test_log_get_project (self->log);
  const GbFindings *findings = project != NULL ? gb_project_get_findings (project) : NULL;
  const GbTubbed *t
      = test != NULL && test->index < findings->n_tubbed ? &findings->tubbed[test->index] : NULL;
  GbUnits units;

  gtk_widget_set_visible (self->result, t != NULL);
  if (t == NULL)
    return;
  units = gb_project_get_build (project)->units;
  gtk_label_set_text (self->trouble, t->trouble != NULL ? t->trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), t->trouble != NULL);
  show_line (self, LINE_FORE, t->draught_fore, t->computed_fore, GB_DIM_LENGTH, units);
  show_line (self, LINE_AFT, t->draught_aft, t->computed_aft, GB_DIM_LENGTH, units);
  show_line (self, LINE_TRIM, t->trim, t->computed_trim, GB_DIM_ANGLE, units);
  show_line (self, LINE_HEEL, t->heel, t->computed_heel, GB_DIM_ANGLE, units);
  show_explanations (self, t);
  show_wanted (self, t, units);
}

/* Object ------------------------------------------------------------------------------------------------ */

GbTestLog *
gb_tub_log_get_tables (GbTubLog *self)
{
  g_return_val_if_fail (GB_IS_TUB_LOG (self), NULL);
  return self->log;
}

static void
gb_tub_log_class_init (GbTubLogClass *klass)
{
}

static GtkWidget *
attach_label (GtkGrid *grid, const char *text, int column, int row, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  gtk_widget_set_hexpand (label, column == 0);
  gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (grid, label, column, row, 1, 1);
  return label;
}

/* In boat size: what the model says against what was computed for the condition. */
static GtkWidget *
make_comparison (GbTubLog *self)
{
  static const char *const lines[N_LINES]
      = { N_ ("Draught forward"), N_ ("Draught aft"), N_ ("Trim by the bow"), N_ ("Heel to starboard") };
  static const char *const columns[N_COLUMNS] = { N_ ("Model says"), N_ ("Computed"), N_ ("Difference") };
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  gtk_grid_set_column_spacing (grid, 18);
  gtk_grid_set_row_spacing (grid, 4);
  attach_label (grid, _ ("In boat size"), 0, 0, "heading");
  for (int c = 0; c < N_COLUMNS; c++)
    attach_label (grid, _ (columns[c]), c + 1, 0, "dim-label");
  for (int l = 0; l < N_LINES; l++)
    {
      attach_label (grid, _ (lines[l]), 0, l + 1, "comparison");
      for (int c = 0; c < N_COLUMNS; c++)
        self->values[l][c] = GTK_LABEL (attach_label (grid, NULL, c + 1, l + 1, "figure"));
    }
  return GTK_WIDGET (grid);
}

static void
gb_tub_log_init (GbTubLog *self)
{
  static const GbTestLogType type = {
    .tests = &gb_tub_grid_type,
    .heading = N_ ("The model in the tub"),
    .readings = &gb_tub_load_grid_type,
    .readings_heading = N_ ("In the model"),
    .nothing = N_ ("No model in the tub yet"),
    .sentence = N_ ("Make a small model of paper or wood, float it with coins for the crew, and read how "
                    "deep it lies: that shows early whether the "
                    "figures here are right."),
  };

  self->result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  self->trouble = GTK_LABEL (gb_quiet_label_new (NULL));
  self->explanations = GTK_LABEL (gb_quiet_label_new (NULL));
  gtk_box_append (GTK_BOX (self->result), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (self->result), make_comparison (self));
  gtk_box_append (GTK_BOX (self->result), GTK_WIDGET (self->explanations));
  gtk_box_append (GTK_BOX (self->result),
                  gb_fact_list_new (_ ("What the model must be, to stand for the condition"), specs, N_FACTS,
                                    self, self->facts));
  self->log = gb_test_log_new (&type, self->result);
  g_signal_connect_object (self->log, "shown", G_CALLBACK (show_result), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->log));
}
