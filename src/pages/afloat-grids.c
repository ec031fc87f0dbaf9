/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "afloat-grids.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/loads.h"
#include "pages/afloat-page.h"
#include "pages/afloat-words.h"
#include "pages/grid-pane.h"

static GbUnits
units_of (GbGrid *grid)
{
  return gb_project_get_build (gb_grid_get_project (grid))->units;
}

static gint64
add_named (GbGrid *grid,
           const char *text,
           const GbChoiceItem *chosen,
           GbGridSpot spot,
           GbPartKind kind,
           GError **error)
{
  return gb_grid_add_record (grid, "name", text, NULL, spot, error);
}

/* Conditions -------------------------------------------------------------------------------------------- */

/* How she floats is the point of a condition, so it is said right beside its name. */
static void
look_state (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  GbProject *project = gb_grid_get_project (grid);
  const GbAfloat *afloat = gb_findings_afloat (gb_project_get_findings (project), record->id);
  gboolean passed = FALSE;

  if (afloat == NULL)
    return;
  look->text = gb_afloat_state_words (afloat, gb_project_get_build (project), &passed);
  look->note = g_strdup (afloat->sentence);
  if (passed || afloat->troubles->len > 0)
    look->flags = GB_CELL_TROUBLE;
  else if (afloat->state == GB_AFLOAT_UNKNOWN)
    look->flags = GB_CELL_DIM;
  if (look->note == NULL && afloat->troubles->len > 0)
    look->note = g_strdup (afloat->troubles->pdata[0]);
}

static const GbGridColumn condition_columns[] = {
  { .name = "name", .width = 9 },
  { .name = "state", .title = N_ ("How she floats"), .width = 17, .look = look_state },
  { NULL },
};
static const char *const condition_shown[] = { "name", "state", NULL };
const GbGridType gb_condition_grid_type = {
  .kind = GB_RECORD_CONDITION,
  .shown = condition_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add a condition"),
  .columns = condition_columns,
  .add = add_named,
};

/* Loads ------------------------------------------------------------------------------------------------- */

static void
look_load_mass (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbLoad *load = (const GbLoad *) record;

  look->text = gb_field_display (gb_field (GB_RECORD_LOAD, "mass"), record,
                                 gb_project_get_build (gb_grid_get_project (grid)));
  if (isnan (load->mass))
    {
      look->flags = GB_CELL_TROUBLE;
      look->note = g_strdup (_ ("No mass yet, so it is not counted."));
    }
}

static void
look_load_sum (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  look->text = gb_quantity_format (gb_load_weight ((const GbLoad *) record), GB_DIM_MASS, units_of (grid));
  look->flags = GB_CELL_STRONG;
}

/* Most loads are people, and people sit. */
static gint64
add_load (GbGrid *grid,
          const char *text,
          const GbChoiceItem *chosen,
          GbGridSpot spot,
          GbPartKind kind,
          GError **error)
{
  GbRecord *draft = gb_record_new (GB_RECORD_LOAD);

  ((GbLoad *) draft)->posture = GB_POSTURE_SITTING;
  return gb_grid_add_draft (grid, draft, "name", text, NULL, spot, error);
}

static const GbGridColumn load_columns[] = {
  { .name = "name", .width = 11 },
  { .name = "mass", .width = 6, .is_number = TRUE, .look = look_load_mass },
  { .name = "x", .width = 7, .is_number = TRUE },
  { .name = "y", .width = 7, .is_number = TRUE },
  { .name = "z", .width = 7, .is_number = TRUE },
  { .name = "sum", .title = N_ ("In all"), .width = 9, .is_number = TRUE, .look = look_load_sum },
  { NULL },
};
static const char *const load_shown[] = { "name", "mass", "x", "y", "z", "kind", "quantity", "sum", NULL };
const GbGridType gb_load_grid_type = {
  .kind = GB_RECORD_LOAD,
  .shown = load_shown,
  .main_column = "name",
  .settings_key = "loads-columns",
  .blank_text = N_ ("Type a name to add a load"),
  .columns = load_columns,
  .add = add_load,
};

/* Inclining tests --------------------------------------------------------------------------------------- */

/* Of the page that @grid is in; 0: none. */
static gint64
condition_at_hand (GbGrid *grid)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (grid), GB_TYPE_AFLOAT_PAGE);

  return page != NULL ? gb_afloat_page_get_condition (GB_AFLOAT_PAGE (page)) : 0;
}

static const GbInclined *
find_inclined (GbGrid *grid, const GbRecord *record)
{
  const GbFindings *findings = gb_project_get_findings (gb_grid_get_project (grid));

  return record->index < findings->n_inclined ? &findings->inclined[record->index] : NULL;
}

/* A reference that is not given stands for an empty boat. */
static void
look_aboard (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbField *field = gb_field (record->kind, "condition");

  if (gb_field_is_unknown (field, record))
    look->text = g_strdup (_ ("Nobody aboard"));
  else
    look->text = gb_project_display (gb_grid_get_project (grid), field, record);
}

static void
look_gm (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbInclined *inclined = find_inclined (grid, record);

  if (inclined == NULL || inclined->trouble != NULL)
    {
      look->text = g_strdup ("–");
      look->note = g_strdup (inclined != NULL ? inclined->trouble : NULL);
      look->flags = GB_CELL_TROUBLE;
      return;
    }
  look->text = gb_quantity_format_with_sd (inclined->gm, inclined->gm_sd, GB_DIM_LENGTH, units_of (grid));
  look->flags = GB_CELL_STRONG;
}

/* What names nobody is a word on the test, and that is of the condition at hand. */
static gint64
add_inclining (GbGrid *grid,
               const char *text,
               const GbChoiceItem *chosen,
               GbGridSpot spot,
               GbPartKind kind,
               GError **error)
{
  GbInclining *draft = (GbInclining *) gb_record_new (GB_RECORD_INCLINING);

  draft->date = gb_today ();
  if (chosen == NULL)
    {
      draft->condition = condition_at_hand (grid);
      return gb_grid_add_draft (grid, &draft->rec, "notes", text, NULL, spot, error);
    }
  return gb_grid_add_draft (grid, &draft->rec, "condition", "", chosen->id != 0 ? chosen : NULL, spot, error);
}

static GPtrArray *
offer_conditions (GbGrid *grid)
{
  GPtrArray *choices = g_ptr_array_new_with_free_func ((GDestroyNotify)gb_choice_item_free);

  g_ptr_array_add (choices, gb_choice_item_new (_ ("Nobody aboard"), NULL, GB_N_RECORDS, 0));
  gb_choices_add_records (choices, gb_grid_get_project (grid), GB_RECORD_CONDITION);
  return choices;
}

static const GbGridColumn inclining_columns[] = {
  { .name = "condition", .width = 10, .look = look_aboard },
  { .name = "gm", .title = N_ ("GM"), .width = 15, .is_number = TRUE, .look = look_gm },
  { NULL },
};
static const char *const inclining_shown[] = { "condition", "gm", "date", "mass", "pendulum", NULL };
const GbGridType gb_inclining_grid_type = {
  .kind = GB_RECORD_INCLINING,
  .shown = inclining_shown,
  .main_column = "condition",
  .blank_text = N_ ("Type who was aboard"),
  .columns = inclining_columns,
  .add = add_inclining,
  .add_choices = offer_conditions,
};

static gint64
add_shift (GbGrid *grid,
           const char *text,
           const GbChoiceItem *chosen,
           GbGridSpot spot,
           GbPartKind kind,
           GError **error)
{
  return gb_grid_add_record (grid, "mass", text, chosen, spot, error);
}

static const GbGridColumn shift_columns[] = {
  { .name = "mass", .width = 8, .is_number = TRUE },
  { .name = "distance", .width = 8, .is_number = TRUE },
  { .name = "angle", .width = 5, .is_number = TRUE },
  { .name = "deflection", .width = 8, .is_number = TRUE },
  { NULL },
};
static const char *const shift_shown[] = { "mass", "distance", "angle", "deflection", NULL };
const GbGridType gb_shift_grid_type = {
  .kind = GB_RECORD_SHIFT,
  .shown = shift_shown,
  .main_column = "mass",
  .blank_text = N_ ("Type a mass"),
  .columns = shift_columns,
  .add = add_shift,
};

/* The model in the tub ---------------------------------------------------------------------------------- */

/* A model stands for the condition at hand, and is as large as the one before. */
static gint64
add_tub (GbGrid *grid,
         const char *text,
         const GbChoiceItem *chosen,
         GbGridSpot spot,
         GbPartKind kind,
         GError **error)
{
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  const GPtrArray *tubs = gb_boat_roots (boat, GB_RECORD_TUB);
  const GbTub *last = tubs->len > 0 ? tubs->pdata[tubs->len - 1] : NULL;
  GbTub *draft = (GbTub *) gb_record_new (GB_RECORD_TUB);

  draft->date = gb_today ();
  draft->condition = condition_at_hand (grid);
  if (last != NULL)
    {
      draft->scale = last->scale;
      draft->mass = last->mass;
      draft->x = last->x;
      draft->z = last->z;
    }
  return gb_grid_add_draft (grid, &draft->rec, "name", text, NULL, spot, error);
}

static void
look_tub_name (GbGrid *grid, const GbRecord *record, GbCellLook *look)
{
  const GbFindings *findings = gb_project_get_findings (gb_grid_get_project (grid));
  const char *trouble = record->index < findings->n_tubbed ? findings->tubbed[record->index].trouble : NULL;

  look->text = g_strdup (((const GbTub *) record)->name);
  look->note = g_strdup (trouble);
  look->flags = trouble != NULL ? GB_CELL_TROUBLE : 0;
}

static const GbGridColumn tub_columns[] = {
  { .name = "name", .width = 12, .look = look_tub_name },
  { .name = "condition", .width = 12, .look = look_aboard },
  { NULL },
};
static const char *const tub_shown[]
    = { "name", "condition", "scale", "mass", "fore_draught", "aft_draught", "heel", NULL };
const GbGridType gb_tub_grid_type = {
  .kind = GB_RECORD_TUB,
  .shown = tub_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add a test"),
  .columns = tub_columns,
  .add = add_tub,
};

static const GbGridColumn tub_load_columns[] = {
  { .name = "name", .width = 12 },
  { .name = "mass", .width = 8, .is_number = TRUE },
  { .name = "x", .width = 8, .is_number = TRUE },
  { .name = "y", .width = 8, .is_number = TRUE },
  { .name = "z", .width = 8, .is_number = TRUE },
  { NULL },
};
static const char *const tub_load_shown[] = { "name", "mass", "x", "y", "z", NULL };
const GbGridType gb_tub_load_grid_type = {
  .kind = GB_RECORD_TUB_LOAD,
  .shown = tub_load_shown,
  .main_column = "name",
  .blank_text = N_ ("Type a name to add a load"),
  .columns = tub_load_columns,
  .add = add_named,
};
