/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-weighing-log"

#include "weighing-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "pages/grid-pane.h"

struct _GbWeighingLog
{
  GtkBox parent_instance;

  GbGridPane *weighings;
  GbGridPane *readings;
};

G_DEFINE_FINAL_TYPE (GbWeighingLog, gb_weighing_log, GTK_TYPE_BOX)

/* Columns ----------------------------------------------------------------------------------------------------------- */

static const GbWeighed *
find_weighed (GbGrid *grid, const GbRecord *record)
{
  const GbRollup *rollup = &gb_project_get_findings (gb_grid_get_project (grid))->rollup;

  return record->index < rollup->n_weighings ? &rollup->weighings[record->index] : NULL;
}

static char *
show_mass (GbGrid *grid, double mass)
{
  return gb_quantity_format (mass, GB_DIM_MASS, gb_project_get_build (gb_grid_get_project (grid))->units);
}

static void
look_part (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbWeighing *weighing = (const GbWeighing *) record;

  if (weighing->part == 0)
    look->text = g_strdup (_ ("The whole boat"));
  else
    look->text = gb_project_display (gb_grid_get_project (grid), gb_field (GB_RECORD_WEIGHING, "part"), record);
}

static void
look_result (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbWeighed *weighed = find_weighed (grid, record);

  if (weighed == NULL || isnan (weighed->mass))
    {
      look->text = g_strdup ("–");
      look->note = g_strdup (_ ("No reading yet: enter what the scale says below."));
      look->flags = GB_CELL_TROUBLE;
      return;
    }
  look->text = gb_quantity_format_with_sd (weighed->mass, weighed->mass_sd, GB_DIM_MASS,
                                           gb_project_get_build (gb_grid_get_project (grid))->units);
  look->flags = weighed->stands ? GB_CELL_STRONG : GB_CELL_DIM;
  look->note = weighed->stands ? NULL : g_strdup (_ ("A later weighing stands instead."));
}

static void
look_listed (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbWeighed *weighed = find_weighed (grid, record);

  look->text = show_mass (grid, weighed != NULL ? weighed->listed : NAN);
}

static void
look_difference (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbWeighed *weighed = find_weighed (grid, record);
  double difference = weighed != NULL ? weighed->mass - weighed->listed : NAN;
  g_autofree char *mass = show_mass (grid, fabs (difference));

  if (isnan (difference))
    look->text = g_strdup ("–");
  else
    look->text = g_strdup_printf ("%s%s", difference < 0 ? "−" : "+", mass);
}

static void
look_centre (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbWeighed *weighed = find_weighed (grid, record);
  GbUnits units = gb_project_get_build (gb_grid_get_project (grid))->units;
  g_autofree char *x = gb_quantity_format (weighed != NULL ? weighed->x : NAN, GB_DIM_LENGTH, units);
  g_autofree char *y = gb_quantity_format (weighed != NULL ? weighed->y : NAN, GB_DIM_LENGTH, units);

  if (weighed == NULL || (isnan (weighed->x) && isnan (weighed->y)))
    look->text = g_strdup ("–");
  else if (isnan (weighed->y))
    look->text = g_strdup_printf ("x %s", x);
  else if (isnan (weighed->x))
    look->text = g_strdup_printf ("y %s", y);
  else
    look->text = g_strdup_printf ("x %s, y %s", x, y);
}

static gint64
add_weighing (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_WEIGHING);
  gboolean boat = chosen != NULL && chosen->id == 0;

  ((GbWeighing *) draft)->date = gb_today ();
  return gb_grid_add_draft (grid, draft, "part", boat ? "" : text, boat ? NULL : chosen, spot, error);
}

static GPtrArray *
offer_things (GbGrid *grid)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify) gb_choice_item_free);

  g_ptr_array_add (choices, gb_choice_item_new (_ ("The whole boat"), NULL, GB_N_RECORDS, 0));
  gb_choices_add_records (choices, gb_grid_get_project (grid), GB_RECORD_PART);
  return choices;
}

static const GbGridColumn weighing_columns[] = {
  { .name = "part", .width = 24, .look = look_part },
  { .name = "result", .title = N_ ("Scale says"), .width = 15, .is_number = TRUE, .look = look_result },
  { .name = "listed", .title = N_ ("Expected"), .width = 10, .is_number = TRUE, .look = look_listed },
  { .name = "difference", .title = N_ ("Difference"), .width = 10, .is_number = TRUE, .look = look_difference },
  { .name = "centre", .title = N_ ("Centre"), .width = 18, .look = look_centre },
  { NULL },
};
static const char *const weighing_shown[]
    = { "part", "date", "result", "listed", "difference", "centre", "on_scale", "tare", NULL };
static const GbGridType weighing_type = {
  .kind = GB_RECORD_WEIGHING,
  .shown = weighing_shown,
  .main_column = "part",
  .blank_text = N_ ("Type what was weighed"),
  .columns = weighing_columns,
  .add = add_weighing,
  .add_choices = offer_things,
};

static gint64
add_reading (GbGrid *grid, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GbPartKind kind, GError **error)
{
  return gb_grid_add_record (grid, "mass", text, chosen, spot, error);
}

static const char *const reading_shown[] = { "mass", "x", "y", NULL };
static const GbGridType reading_type = {
  .kind = GB_RECORD_READING,
  .shown = reading_shown,
  .main_column = "mass",
  .blank_text = N_ ("Type what the scale says"),
  .add = add_reading,
};

/* Object ------------------------------------------------------------------------------------------------------------ */

static void
selection_changed_cb (GbGrid *grid, GbWeighingLog *self)
{
  guint n;
  g_autofree gint64 *ids = gb_grid_dup_selected (grid, &n);

  gtk_widget_set_visible (GTK_WIDGET (self->readings), n == 1);
  gb_grid_set_owner (gb_grid_pane_get_grid (self->readings), n == 1 ? ids[0] : -1);
}

void
gb_weighing_log_go_to (GbWeighingLog *self, const GbPlace *place)
{
  GbGrid *weighings = gb_grid_pane_get_grid (self->weighings);
  const GbRecord *record;

  g_return_if_fail (GB_IS_WEIGHING_LOG (self));
  record = gb_boat_get (gb_project_get_boat (gb_grid_get_project (weighings)), place->kind, place->id);
  if (record == NULL)
    return;
  if (place->kind == GB_RECORD_WEIGHING)
    {
      gb_grid_go_to (weighings, place->kind, place->id, place->field, FALSE);
      return;
    }
  gb_grid_go_to (weighings, GB_RECORD_WEIGHING, record->owner, NULL, FALSE);
  gb_grid_go_to (gb_grid_pane_get_grid (self->readings), place->kind, place->id, place->field, FALSE);
}

void
gb_weighing_log_set_project (GbWeighingLog *self, GbProject *project)
{
  g_return_if_fail (GB_IS_WEIGHING_LOG (self));
  gb_grid_pane_set_project (self->weighings, project);
  gb_grid_pane_set_project (self->readings, project);
  if (project != NULL)
    gb_grid_pane_select_first (self->weighings, gb_boat_roots (gb_project_get_boat (project), GB_RECORD_WEIGHING));
}

static void
gb_weighing_log_class_init (GbWeighingLogClass *klass)
{
}

static void
gb_weighing_log_init (GbWeighingLog *self)
{
  GtkWidget *paned = gtk_paned_new (GTK_ORIENTATION_VERTICAL);

  self->weighings = gb_grid_pane_new (&weighing_type, _ ("Weighing log"), _ ("Weigh Something"));
  self->readings = gb_grid_pane_new (&reading_type, _ ("Readings"), NULL);
  gb_grid_pane_set_hint (self->readings, _ ("On one scale, one reading without a place. On two or three supports, a reading and a place for each; "
                                            "they give the centre as well."));
  gtk_widget_set_visible (GTK_WIDGET (self->readings), FALSE);
  gb_grid_pane_set_nothing (self->weighings, _ ("Nothing weighed yet"),
                            _ ("Whatever comes off the bench goes on the scale: what it weighs then stands instead of what was reckoned, and the "
                               "forecast follows."),
                            _ ("_Weigh Something"), NULL);
  gb_grid_set_owner (gb_grid_pane_get_grid (self->readings), -1);
  g_signal_connect_object (gb_grid_pane_get_grid (self->weighings), "selection-changed", G_CALLBACK (selection_changed_cb), self, 0);

  gtk_paned_set_start_child (GTK_PANED (paned), GTK_WIDGET (self->weighings));
  gtk_paned_set_end_child (GTK_PANED (paned), GTK_WIDGET (self->readings));
  gtk_paned_set_shrink_start_child (GTK_PANED (paned), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (paned), FALSE);
  gtk_widget_set_size_request (GTK_WIDGET (self->weighings), -1, 160);
  gtk_widget_set_size_request (GTK_WIDGET (self->readings), -1, 140);
  gtk_widget_set_vexpand (paned, TRUE);
  gtk_widget_set_hexpand (paned, TRUE);
  gtk_box_append (GTK_BOX (self), paned);
}
