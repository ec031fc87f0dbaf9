/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-inclining-log"

#include "inclining-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/afloat-grids.h"
#include "pages/fact-list.h"

typedef enum
{
  FACT_GM,
  FACT_COMPUTED_GM,
  FACT_Z,
  FACT_COMPUTED_Z,
  N_FACTS
} Fact;

struct _GbIncliningLog
{
  GtkBox parent_instance;

  GbTestLog *log;
  GtkWidget *result;
  GtkLabel *trouble;
  GbFactRow *facts[N_FACTS];
};

G_DEFINE_FINAL_TYPE (GbIncliningLog, gb_inclining_log, GTK_TYPE_BOX)

static GbWorking *
ask_working (gpointer data)
{
  GbIncliningLog *self = data;
  GbProject *project = gb_test_log_get_project (self->log);

  return gb_working_inclined (gb_project_get_boat (project), gb_project_get_findings (project),
                              gb_test_log_at_hand (self->log));
}

static const GbFactSpec specs[N_FACTS] = {
  [FACT_GM] = { N_ ("GM, by the test"), ask_working },
  [FACT_COMPUTED_GM] = { N_ ("GM, computed"), NULL },
  [FACT_Z] = { N_ ("Centre of gravity above the baseline, by the test"), ask_working },
  [FACT_COMPUTED_Z] = { N_ ("The same, computed"), NULL },
};

static void
show_result (GbIncliningLog *self)
{
  const GbRecord *test = gb_test_log_get_record (self->log);
  GbProject *project = gb_test_log_get_project (self->log);
  const GbFindings *findings = project != NULL ? gb_project_get_findings (project) : NULL;
  const GbInclined *found
      = test != NULL && test->index < findings->n_inclined ? &findings->inclined[test->index] : NULL;
  GbUnits units;

  gtk_widget_set_visible (self->result, found != NULL);
  if (found == NULL)
    return;
  units = gb_project_get_build (project)->units;
  gtk_label_set_text (self->trouble, found->trouble != NULL ? found->trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), found->trouble != NULL);
  gb_fact_list_set (self->facts[FACT_GM],
                    gb_quantity_format_with_sd (found->gm, found->gm_sd, GB_DIM_LENGTH, units),
                    found->gm < 0);
  gb_fact_list_set (self->facts[FACT_COMPUTED_GM], gb_length_format (found->computed_gm, units), FALSE);
  gb_fact_list_set (self->facts[FACT_Z],
                    gb_quantity_format_with_sd (found->z, found->z_sd, GB_DIM_LENGTH, units), FALSE);
  gb_fact_list_set (self->facts[FACT_COMPUTED_Z], gb_length_format (found->computed_z, units), FALSE);
}

GbTestLog *
gb_inclining_log_get_tables (GbIncliningLog *self)
{
  g_return_val_if_fail (GB_IS_INCLINING_LOG (self), NULL);
  return self->log;
}

static void
gb_inclining_log_class_init (GbIncliningLogClass *klass)
{
}

static void
gb_inclining_log_init (GbIncliningLog *self)
{
  static const GbTestLogType type = {
    .tests = &gb_inclining_grid_type,
    .heading = N_ ("Inclining tests"),
    .readings = &gb_shift_grid_type,
    .readings_heading = N_ ("Readings"),
    .nothing = N_ ("Not inclined yet"),
    .sentence = N_ ("Afloat in calm water, move a known weight across and read how far she leans: that tells "
                    "how stiff she is and how high her "
                    "weight lies."),
  };

  self->result = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->trouble = GTK_LABEL (gb_quiet_label_new (NULL));
  gtk_box_append (GTK_BOX (self->result), GTK_WIDGET (self->trouble));
  gtk_box_append (GTK_BOX (self->result), gb_fact_list_new (NULL, specs, N_FACTS, self, self->facts));
  gtk_box_append (
      GTK_BOX (self->result),
      gb_quiet_label_new (_ ("Move the weight out and back, to both sides, and enter each reading against "
                             "the start. With one reading alone there is no telling how sure it is.")));
  self->log = gb_test_log_new (&type, self->result);
  g_signal_connect_object (self->log, "shown", G_CALLBACK (show_result), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->log));
}
