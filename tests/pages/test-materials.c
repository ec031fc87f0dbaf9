/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Materials and stock by keyboard: out of the table, of one's own, weighed, and what the shop sells. */

#include <math.h>

#include "boat/catalogue.h"
#include "engine/density.h"
#include "pages/grid-pane.h"
#include "pages/materials-page.h"
#include "support.h"
#include "widgets/field-editor.h"
#include "widgets/inspector.h"

typedef struct
{
  Support *support;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->support = support_new (NULL);
  support_show (fixture->support, g_object_new (GB_TYPE_MATERIALS_PAGE, NULL), 1200, 760);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  support_free (fixture->support);
}

static const GbMaterial *
material_named (Fixture *fixture, const char *name)
{
  const GPtrArray *materials
    = gb_boat_roots (gb_project_get_boat (fixture->support->project), GB_RECORD_MATERIAL);

  for (guint i = 0; i < materials->len; i++)
    if (g_str_equal (((const GbMaterial *) materials->pdata[i])->name, name))
      return materials->pdata[i];
  return NULL;
}

static void
start_blank (Fixture *fixture, GbRecordKind kind)
{
  gb_grid_start_blank (support_grid (fixture->support->page, kind));
  support_until (support_is_editing (fixture->support));
}

static void
test_out_of_the_table (Fixture *fixture, gconstpointer data)
{
  const GbMaterial *known = g_ptr_array_index (gb_catalogue_get (), 3);
  const GbMaterial *material;

  start_blank (fixture, GB_RECORD_MATERIAL);
  support_type (fixture->support, known->name);
  support_keys (fixture->support, "Return");
  support_until (material_named (fixture, known->name) != NULL);
  material = material_named (fixture, known->name);
  g_assert_cmpfloat (gb_material_figures (material).density, ==, gb_material_figures (known).density);
  g_assert_cmpstr (material->source, ==, known->source);
  g_assert_cmpint (material->family, ==, known->family);
}

static void
test_of_ones_own (Fixture *fixture, gconstpointer data)
{
  GbGrid *grid = support_grid (fixture->support->page, GB_RECORD_MATERIAL);
  const GbMaterial *material;

  start_blank (fixture, GB_RECORD_MATERIAL);
  support_type (fixture->support, "Driftwood");
  support_keys (fixture->support, "Return");
  support_until (material_named (fixture, "Driftwood") != NULL);
  material = material_named (fixture, "Driftwood");
  g_assert_true (isnan (material->density));
  g_assert_cmpstr (support_cell (grid, GB_RECORD_MATERIAL, material->rec.id, "figure"), ==, "–");

  /* The figure goes into the details beside the list. */
  gtk_widget_grab_focus (gb_field_editor_get_input (GB_FIELD_EDITOR (
    gb_inspector_find (GB_INSPECTOR (support_find (fixture->support->page, GB_TYPE_INSPECTOR)), "density"))));
  support_type (fixture->support, "430");
  support_keys (fixture->support, "Return");
  support_until (material->density == 430);
  g_assert_cmpstr (support_cell (grid, GB_RECORD_MATERIAL, material->rec.id, "figure"), ==, "430 kg/m³");
}

/* 1 m x 0.5 m x 10 mm of it weigh 3 kg: 600 kg/m3, whatever was said before. */
static void
test_weigh_a_sample (Fixture *fixture, gconstpointer data)
{
  GbGrid *grid = support_grid (fixture->support->page, GB_RECORD_MATERIAL);
  GbGrid *samples;

  gb_grid_go_to (grid, GB_RECORD_MATERIAL, 1, NULL, TRUE);
  samples = support_grid (fixture->support->page, GB_RECORD_SAMPLE);
  support_until (gb_grid_get_owner (samples) == 1);
  start_blank (fixture, GB_RECORD_SAMPLE);
  support_type (fixture->support, "3");
  support_keys (fixture->support, "Return");
  support_until (!support_is_editing (fixture->support));
  for (guint i = 0; i < 3; i++)
    {
      static const char *const sides[] = { "1 m", "500", "10" };

      support_type (fixture->support, sides[i]);
      support_until (support_is_editing (fixture->support));
      support_keys (fixture->support, "Return");
      support_until (!support_is_editing (fixture->support));
    }
  support_until (gb_material_figures (material_named (fixture, "Test ply")).n_samples == 1);
  g_assert_cmpfloat_with_epsilon (gb_material_figures (material_named (fixture, "Test ply")).density, 600,
                                  1e-9);
  g_assert_cmpstr (support_cell (grid, GB_RECORD_MATERIAL, 1, "figure"), ==, "600 kg/m³");
}

static void
test_stock (Fixture *fixture, gconstpointer data)
{
  const GbBoat *boat = gb_project_get_boat (fixture->support->project);
  GtkStack *views = GTK_STACK (support_find (fixture->support->page, GTK_TYPE_STACK));
  GtkWidget *inspector = support_find (fixture->support->page, GB_TYPE_INSPECTOR);
  const GbStock *stock;

  gtk_stack_set_visible_child_name (views, "stock");
  gtk_widget_activate_action (fixture->support->page, "materials.add", NULL);
  support_until (support_is_editing (fixture->support));
  support_type (fixture->support, "Ply sheet 6 mm");
  support_keys (fixture->support, "Return");
  support_until (gb_boat_n (boat, GB_RECORD_STOCK) == 1);
  stock = gb_boat_roots (boat, GB_RECORD_STOCK)->pdata[0];
  g_assert_cmpstr (stock->name, ==, "Ply sheet 6 mm");

  /* The material is picked from the list that drops down. */
  gtk_widget_grab_focus (
    gb_field_editor_get_input (GB_FIELD_EDITOR (gb_inspector_find (GB_INSPECTOR (inspector), "material"))));
  support_type (fixture->support, "test");
  support_keys (fixture->support, "Down Return");
  support_until (stock->material == 1);

  gtk_widget_grab_focus (
    gb_field_editor_get_input (GB_FIELD_EDITOR (gb_inspector_find (GB_INSPECTOR (inspector), "price"))));
  support_type (fixture->support, "-5");
  support_keys (fixture->support, "Return");
  support_until (
    gb_field_editor_get_complaint (GB_FIELD_EDITOR (gb_inspector_find (GB_INSPECTOR (inspector), "price")))
    != NULL);
  g_assert_cmpint (stock->price, ==, GB_MONEY_UNKNOWN);
  support_keys (fixture->support, "ctrl+a");
  support_type (fixture->support, "48.50");
  support_keys (fixture->support, "Return");
  support_until (stock->price == 4850);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
  ADD ("/materials/out-of-the-table", test_out_of_the_table);
  ADD ("/materials/of-ones-own", test_of_ones_own);
  ADD ("/materials/weigh-a-sample", test_weigh_a_sample);
  ADD ("/materials/stock", test_stock);
  return g_test_run ();
}
