/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page "Afloat" by keys and clicks: conditions and who is in them, a load dragged in the drawing, each of
 * the views, an inclining test and a model in the tub. */

#include "pages/afloat-page.h"
#include "project/project-study.h"
#include "support.h"
#include "widgets/chart-area.h"

#include <adwaita.h>
#include <math.h>

/* A box of 2.4 m x 1.2 m x 0.5 m that weighs 40 kg at its middle, 0.2 m up. */
static GbBoat *
box_boat (void)
{
  GbBoat *boat = gb_boat_new ();
  GbHull *hull = (GbHull *) gb_record_new (GB_RECORD_HULL);
  GbPart *part = (GbPart *) gb_record_new (GB_RECORD_PART);

  hull->rec.id = part->rec.id = 1;
  hull->rec.position = part->rec.position = 1;
  hull->name = g_strdup ("Box");
  hull->form = GB_HULL_BLOCK;
  hull->length = 2.4;
  hull->width = 1.2;
  hull->height = 0.5;
  gb_boat_take (boat, &hull->rec);
  part->name = g_strdup ("All of it");
  part->takeoff = GB_TAKEOFF_LUMP;
  part->mass = 40;
  part->x = 1.2;
  part->z = 0.2;
  gb_boat_take (boat, &part->rec);
  gb_boat_settle (boat);
  return boat;
}

/* With two up: Anna a little aft, Bert before her. */
static GbBoat *
crewed_boat (void)
{
  static const struct
  {
    const char *name;
    double mass, x;
  } crew[] = { { "Anna", 70, 1.0 }, { "Bert", 60, 1.5 } };
  GbBoat *boat = box_boat ();
  GbCondition *condition = (GbCondition *) gb_record_new (GB_RECORD_CONDITION);

  condition->rec.id = condition->rec.position = 1;
  condition->name = g_strdup ("Two up");
  gb_boat_take (boat, &condition->rec);
  for (guint i = 0; i < G_N_ELEMENTS (crew); i++)
    {
      GbLoad *load = (GbLoad *) gb_record_new (GB_RECORD_LOAD);

      load->rec.id = i + 1;
      load->rec.owner = 1;
      load->rec.position = i + 1;
      load->name = g_strdup (crew[i].name);
      load->mass = crew[i].mass;
      load->posture = GB_POSTURE_SITTING;
      load->x = crew[i].x;
      load->z = 0.15;
      gb_boat_take (boat, &load->rec);
    }
  gb_boat_settle (boat);
  return boat;
}

static void
show (Support *support)
{
  support_show (support, g_object_new (GB_TYPE_AFLOAT_PAGE, NULL), 1100, 700);
}

static gpointer
child (Support *support, const char *name)
{
  return gtk_widget_get_template_child (support->page, GB_TYPE_AFLOAT_PAGE, name);
}

static void
show_view (Support *support, const char *name)
{
  gtk_stack_set_visible_child_name (child (support, "views"), name);
  support_settle ();
}

static guint
count (Support *support, GbRecordKind kind)
{
  return gb_boat_n (gb_project_get_boat (support->project), kind);
}

static const GbLoad *
load_of (Support *support, gint64 id)
{
  return (const GbLoad *) gb_boat_get (gb_project_get_boat (support->project), GB_RECORD_LOAD, id);
}

static const GbAfloat *
afloat (Support *support)
{
  return &gb_project_get_findings (support->project)->afloat[0];
}

/* Types @text into the blank row of the table of @kind; one more record is there then. */
static void
enter (Support *support, GbRecordKind kind, const char *text)
{
  guint before = count (support, kind);

  gb_grid_start_blank (support_grid (support->page, kind));
  support_until (support_is_editing (support));
  support_type (support, text);
  support_keys (support, "Return");
  support_until (count (support, kind) == before + 1);
}

static void
fill (Support *support, GbRecordKind kind, gint64 id, const char *column, const char *text)
{
  const GbField *field = gb_field (kind, column);

  gb_grid_go_to (support_grid (support->page, kind), kind, id, column, TRUE);
  support_type (support, text);
  support_keys (support, "Return");
  support_until (
      !gb_field_is_unknown (field, gb_boat_get (gb_project_get_boat (support->project), kind, id)));
}

/* From nothing to a person aboard: the first load brings its condition, and starts as somebody who sits and
 * whose mass nobody knows. */
static void
test_first_load (void)
{
  g_autoptr (GbBoat) boat = box_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  GtkWidget *button;

  show (support);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (child (support, "main")), ==, "nothing");
  button = support_find (gtk_stack_get_visible_child (child (support, "main")), GTK_TYPE_BUTTON);
  support_click (support, button, 0.5, 0.5, 1);
  support_until (support_is_editing (support));
  support_type (support, "Anna");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_LOAD) == 1);
  g_assert_cmpuint (count (support, GB_RECORD_CONDITION), ==, 1);
  g_assert_cmpint (load_of (support, 1)->posture, ==, GB_POSTURE_SITTING);
  g_assert_true (isnan (load_of (support, 1)->mass));

  /* The keys go on to what is not known yet. */
  support_type (support, "80");
  support_keys (support, "Return");
  support_until (load_of (support, 1)->mass == 80);
  support_type (support, "1200");
  support_keys (support, "Return");
  support_until (load_of (support, 1)->x == 1.2);
  fill (support, GB_RECORD_LOAD, 1, "z", "100");
  support_until (afloat (support)->state == GB_AFLOAT_FLOATS);
  /* Amidships and in the middle: level and upright, and T = m / (rho L B) deep. */
  g_assert_cmpfloat_with_epsilon (afloat (support)->heel, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (afloat (support)->trim, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (
      afloat (support)->draught_mid,
      afloat (support)->total
          / (2.4 * 1.2 * gb_project_get_findings (support->project)->flotation.water_density),
      1e-6);
}

static void
test_conditions (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  g_autoptr (GError) error = NULL;
  GbGrid *conditions;

  show (support);
  conditions = support_grid (support->page, GB_RECORD_CONDITION);
  g_assert_true (g_str_has_prefix (support_cell (conditions, GB_RECORD_CONDITION, 1, "state"), "floats, "));
  g_assert_cmpint (gb_grid_get_owner (support_grid (support->page, GB_RECORD_LOAD)), ==, 1);

  /* The new one is at hand at once, so that what is typed next goes aboard in it. */
  enter (support, GB_RECORD_CONDITION, "Far too much");
  support_until (gb_grid_get_owner (support_grid (support->page, GB_RECORD_LOAD)) == 2);
  enter (support, GB_RECORD_LOAD, "Stones");
  fill (support, GB_RECORD_LOAD, 3, "mass", "5000");
  fill (support, GB_RECORD_LOAD, 3, "x", "1200");
  fill (support, GB_RECORD_LOAD, 3, "z", "100");
  g_assert_cmpstr (support_cell (conditions, GB_RECORD_CONDITION, 2, "state"), ==, "sinks");
  support_picture (support, "afloat-sinks");

  /* Undo leads to the load, and so to its condition. */
  gb_grid_go_to (conditions, GB_RECORD_CONDITION, 1, "name", TRUE);
  support_until (gb_grid_get_owner (support_grid (support->page, GB_RECORD_LOAD)) == 1);
  gb_project_undo (support->project, &error);
  g_assert_no_error (error);
  support_until (gb_grid_get_owner (support_grid (support->page, GB_RECORD_LOAD)) == 2);
}

/* Dragging --------------------------------------------------------------------------------------------------
 */

typedef struct
{
  double x, y; /* shares of the area */
  GbChartSpot spot;
} Spot;

/* Where the chart of @area shows a load, in a view in which @wanted says that the axes are known. */
static gboolean
find_load (GbChartArea *area, gint64 load, gboolean (*wanted) (const GbChartSpot *), Spot *found)
{
  GbChart *chart = gb_chart_area_get_chart (area);
  GtkWidget *drawing = support_find (GTK_WIDGET (area), GTK_TYPE_DRAWING_AREA);
  int width = gtk_widget_get_width (drawing);
  int height = gtk_widget_get_height (drawing);

  for (int y = 0; y < height; y += 4)
    for (int x = 0; x < width; x += 4)
      if (gb_chart_locate (chart, width, height, x, y, -1, &found->spot) && found->spot.kind == GB_RECORD_LOAD
          && found->spot.id == load && wanted (&found->spot))
        {
          found->x = (x + 1.0) / width;
          found->y = (y + 1.0) / height;
          return TRUE;
        }
  return FALSE;
}

static gboolean
is_plan (const GbChartSpot *spot)
{
  return isnan (spot->at.z);
}

static void
test_drag (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  g_autoptr (GError) error = NULL;
  GbChartArea *area;
  GtkWidget *drawing;
  const char *title;
  Spot at;
  double z;

  show (support);
  area = child (support, "drawing");
  drawing = support_find (GTK_WIDGET (area), GTK_TYPE_DRAWING_AREA);
  g_assert_true (find_load (area, 1, is_plan, &at));
  z = load_of (support, 1)->z;

  /* While it is dragged nothing is changed yet, but the chart is another one. Escape leaves all as it was. */
  support_press_and_move (support, drawing, at.x, at.y, at.x + 0.1, at.y);
  g_assert_cmpfloat (load_of (support, 1)->x, ==, 1.0);
  title = gtk_label_get_text (child (support, "details_title"));
  g_assert_true (g_str_has_prefix (title, "Anna at x "));
  support_picture (support, "afloat-drag");
  support_keys (support, "Escape");
  support_release ();
  g_assert_cmpfloat (load_of (support, 1)->x, ==, 1.0);
  g_assert_null (gb_project_get_undo_words (support->project));
  g_assert_cmpstr (gtk_label_get_text (child (support, "details_title")), ==, "Anna");

  /* Forward, and she trims by the bow; the seat stays as high as it is. */
  g_assert_true (find_load (area, 1, is_plan, &at));
  support_press_and_move (support, drawing, at.x, at.y, at.x + 0.1, at.y);
  support_release ();
  support_until (load_of (support, 1)->x > 1.0);
  g_assert_cmpfloat (load_of (support, 1)->z, ==, z);
  g_assert_cmpint (load_of (support, 1)->posture, ==, GB_POSTURE_SITTING);
  g_assert_cmpfloat (afloat (support)->trim, >, 0);
  g_assert_cmpstr (gb_project_get_undo_words (support->project), ==, "place of Anna");
  gb_project_undo (support->project, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (load_of (support, 1)->x, ==, 1.0);
  g_assert_null (gb_project_get_undo_words (support->project));
  /* The load stays at hand. */
  g_assert_cmpstr (gtk_label_get_text (child (support, "details_title")), ==, "Anna");

  /* What was pressed is picked, and the keys move it. */
  gtk_widget_grab_focus (drawing);
  support_keys (support, "Right");
  support_until (fabs (load_of (support, 1)->x - 1.01) < 1e-9);
  support_keys (support, "shift+Up");
  support_until (fabs (load_of (support, 1)->y - 0.1) < 1e-9);
  g_assert_cmpfloat (afloat (support)->heel, <, 0);
}

/* Views ------------------------------------------------------------------------------------------------- */

static void
test_views (void)
{
  static const char *const names[]
      = { "figures", "freeboard", "crew", "righting", "swamped", "inclining", "model" };
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);

  show (support);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *picture = g_strconcat ("afloat-", names[i], NULL);

      show_view (support, names[i]);
      g_assert_cmpstr (gtk_stack_get_visible_child_name (child (support, "views")), ==, names[i]);
      support_until (gb_project_get_study (support->project, 1) != NULL);
      support_settle ();
      support_picture (support, picture);
    }
}

/* The visible label below @top whose text starts with @words, or NULL. */
static GtkWidget *
find_label (GtkWidget *top, const char *words)
{
  if (!gtk_widget_get_visible (top))
    return NULL;
  if (GTK_IS_LABEL (top) && g_str_has_prefix (gtk_label_get_text (GTK_LABEL (top)), words))
    return top;
  for (GtkWidget *at = gtk_widget_get_first_child (top); at != NULL; at = gtk_widget_get_next_sibling (at))
    {
      GtkWidget *found = find_label (at, words);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* All of her is a mass without a material: nobody knows whether she sinks, and that is said first. */
static void
test_swamped_unknown (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  GtkWidget *swamped;

  show (support);
  show_view (support, "swamped");
  support_until (gb_project_get_study (support->project, 1) != NULL);
  support_settle ();
  swamped = child (support, "swamped");
  g_assert_nonnull (find_label (swamped, "Not known: 40 kg"));
  g_assert_nonnull (find_label (swamped, "not known"));
  g_assert_null (find_label (swamped, "she sinks"));
}

static void
test_crew_map (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  GtkWidget *crew, *mover;
  const GbCrewMap *map;
  GbChartArea *area;
  Spot at;

  show (support);
  show_view (support, "crew");
  crew = child (support, "crew");
  area = GB_CHART_AREA (support_find (crew, GB_TYPE_CHART_AREA));
  support_until ((map = gb_project_get_crew_map (support->project, 1, 1)) != NULL
                 && map->n_rows_found == GB_MAP_ROWS);
  support_until (!gb_chart_is_empty (gb_chart_area_get_chart (area)));
  support_picture (support, "afloat-crew-whole");

  /* Another one moves. */
  mover = support_find (crew, GTK_TYPE_DROP_DOWN);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (mover), 1);
  support_until ((map = gb_project_get_crew_map (support->project, 1, 2)) != NULL
                 && map->n_rows_found == GB_MAP_ROWS);
  support_until (find_load (area, 2, is_plan, &at));
  support_press_and_move (support, support_find (GTK_WIDGET (area), GTK_TYPE_DRAWING_AREA), at.x, at.y,
                          at.x - 0.1, at.y);
  support_release ();
  support_until (load_of (support, 2)->x < 1.5);
}

/* Tests ------------------------------------------------------------------------------------------------- */

/* The button of a table in which there is nothing yet. */
static void
start_first (Support *support, const char *log)
{
  GtkWidget *nothing = support_find (child (support, log), ADW_TYPE_STATUS_PAGE);

  support_click (support, support_find (nothing, GTK_TYPE_BUTTON), 0.5, 0.5, 1);
  support_until (support_is_editing (support));
}

/* 10 kg moved by 0.5 m, and a plumb line of 1 m that moves by 50 mm: GM = w d / (m tan phi). */
static void
test_inclining (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  g_autoptr (GError) error = NULL;
  const GbInclined *inclined;

  show (support);
  show_view (support, "inclining");
  start_first (support, "inclining");
  support_type (support, "Two up");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_INCLINING) == 1);
  fill (support, GB_RECORD_INCLINING, 1, "pendulum", "1 m");
  enter (support, GB_RECORD_SHIFT, "10");
  fill (support, GB_RECORD_SHIFT, 1, "distance", "500");
  fill (support, GB_RECORD_SHIFT, 1, "deflection", "50");
  inclined = &gb_project_get_findings (support->project)->inclined[0];
  g_assert_null (inclined->trouble);
  g_assert_cmpfloat_with_epsilon (inclined->gm, 10 * 0.5 / (afloat (support)->total * 0.05), 1e-9);
  support_picture (support, "afloat-inclining-read");

  show_view (support, "figures");
  gb_project_undo (support->project, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (child (support, "views")), ==, "inclining");
}

/* A name of one's own: the condition at hand is taken, and the words are kept. */
static void
test_inclining_named (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  const GbInclining *test;

  show (support);
  show_view (support, "inclining");
  start_first (support, "inclining");
  support_type (support, "First test");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_INCLINING) == 1);
  test = (const GbInclining *) gb_boat_get (gb_project_get_boat (support->project), GB_RECORD_INCLINING, 1);
  g_assert_cmpint (test->condition, ==, 1);
  g_assert_cmpstr (test->notes, ==, "First test");
}

/* A model at 1 to 10 weighs a thousandth of the boat in the same water: Froude's law. */
static void
test_tub (void)
{
  g_autoptr (GbBoat) boat = crewed_boat ();
  g_autoptr (Support) support = support_new_for (boat);
  const GbTubbed *tubbed;

  show (support);
  show_view (support, "model");
  start_first (support, "tub");
  support_type (support, "In the bath");
  support_keys (support, "Return");
  support_until (count (support, GB_RECORD_TUB) == 1);
  fill (support, GB_RECORD_TUB, 1, "scale", "10");
  fill (support, GB_RECORD_TUB, 1, "mass", "30 g");
  enter (support, GB_RECORD_TUB_LOAD, "Coins");
  fill (support, GB_RECORD_TUB_LOAD, 1, "mass", "100 g");
  tubbed = &gb_project_get_findings (support->project)->tubbed[0];
  g_assert_cmpfloat_with_epsilon (tubbed->wanted_mass, afloat (support)->total / 1000 / tubbed->density_ratio,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (tubbed->model_mass, 0.13, 1e-9);
  support_picture (support, "afloat-model-read");
}

/* Workings ---------------------------------------------------------------------------------------------- */

/* The first button below @top that says "how?" and is in sight. */
static GtkWidget *
find_how (GtkWidget *top)
{
  if (!gtk_widget_get_visible (top))
    return NULL;
  if (GTK_IS_BUTTON (top) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (top)), "how?") == 0)
    return top;
  for (GtkWidget *below = gtk_widget_get_first_child (top); below != NULL;
       below = gtk_widget_get_next_sibling (below))
    {
      GtkWidget *found = find_how (below);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The popover at @how is no higher than its window, with the copy button below what scrolls, has the keys, and can be read to its end by them. */
static void
check_popover (Support *support, GtkWidget *how)
{
  GtkWidget *popover = support_find (how, GTK_TYPE_POPOVER);
  GtkWidget *scroller = support_find (popover, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  GtkWidget *window = GTK_WIDGET (gtk_widget_get_root (how));
  double end = gtk_adjustment_get_upper (down) - gtk_adjustment_get_page_size (down);

  g_assert_true (gtk_widget_is_focus (scroller));
  g_assert_cmpint (gtk_widget_get_height (popover), <=, gtk_widget_get_height (window));
  g_assert_cmpint (gtk_widget_get_height (scroller), <, gtk_widget_get_height (popover) - 32);
  support_keys (support, "End");
  support_until (gtk_adjustment_get_value (down) >= end - 1);
  support_keys (support, "Home");
  support_until (gtk_adjustment_get_value (down) <= 1);
}

/* Every view with figures opens a working by keyboard, and closes it again. */
static void
open_workings (const char *demo, const char *const *views, int width, int height)
{
  g_autoptr (Support) support = support_new (demo);

  support_show (support, g_object_new (GB_TYPE_AFLOAT_PAGE, NULL), width, height);
  for (guint i = 0; views[i] != NULL; i++)
    {
      GtkWidget *how;

      show_view (support, views[i]);
      support_until (gb_project_get_study (support->project, 1) != NULL);
      support_settle ();
      how = find_how (gtk_stack_get_visible_child (child (support, "views")));
      g_assert_nonnull (how);
      gtk_widget_grab_focus (how);
      support_keys (support, "Return");
      support_until (support_find (how, GTK_TYPE_POPOVER) != NULL);
      support_settle ();
      check_popover (support, how);
      support_keys (support, "Escape");
      support_until (support_find (how, GTK_TYPE_POPOVER) == NULL);
    }
}

static void
test_workings (void)
{
  static const char *const with_test[] = { "figures", "righting", "swamped", "inclining", NULL };
  static const char *const with_model[] = { "model", NULL };

  open_workings ("petrel", with_test, 1100, 700);
  open_workings ("petrel", with_test, 900, 600);
  open_workings ("plover", with_model, 900, 600);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  g_test_add_func ("/afloat/first-load", test_first_load);
  g_test_add_func ("/afloat/conditions", test_conditions);
  g_test_add_func ("/afloat/drag", test_drag);
  g_test_add_func ("/afloat/views", test_views);
  g_test_add_func ("/afloat/swamped-unknown", test_swamped_unknown);
  g_test_add_func ("/afloat/crew-map", test_crew_map);
  g_test_add_func ("/afloat/inclining", test_inclining);
  g_test_add_func ("/afloat/inclining-named", test_inclining_named);
  g_test_add_func ("/afloat/tub", test_tub);
  g_test_add_func ("/afloat/workings", test_workings);
  return g_test_run ();
}
