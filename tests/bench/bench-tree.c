/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The tree of parts on screen: first paint, scrolling as frame times, one edit, the filter. Needs a display.
 */

#include <stdlib.h>

#include "generate.h"
#include "pages/parts-page.h"
#include "support.h"

#define N_FRAMES 200
#define FRAME_LIMIT 33.0 /* ms */

typedef struct
{
  gint64 began;
  GArray *times; /* of double, ms */
} Frames;

static void
before_paint_cb (GdkFrameClock *clock, Frames *frames)
{
  frames->began = g_get_monotonic_time ();
}

static void
after_paint_cb (GdkFrameClock *clock, Frames *frames)
{
  double took = (double) (g_get_monotonic_time () - frames->began) / 1000;

  g_array_append_val (frames->times, took);
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  double u = *(const double *) a, v = *(const double *) b;

  return u < v ? -1 : u > v;
}

static double
quantile (GArray *times, double share)
{
  return g_array_index (times, double, (guint) (share * (times->len - 1)));
}

/* Moves on by @step pixels, and turns round at the ends. */
static void
move_on (GtkAdjustment *adjustment, double *step)
{
  double last = gtk_adjustment_get_upper (adjustment) - gtk_adjustment_get_page_size (adjustment);
  double value = gtk_adjustment_get_value (adjustment);

  if (value + *step > last || value + *step < 0)
    *step = -*step;
  gtk_adjustment_set_value (adjustment, CLAMP (value + *step, 0, last));
}

/* Scrolls by @step pixels a frame and prints how long the frames took, the work between them included. */
static void
scroll (Support *support, GbGrid *grid, double step, const char *words)
{
  GtkWidget *scrolled = support_find (GTK_WIDGET (grid), GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (double));

  gtk_adjustment_set_value (adjustment, 0);
  support_wait_for_draw (GTK_WIDGET (support->window));
  for (guint i = 0; i < N_FRAMES; i++)
    {
      Frames frames = { 0, g_array_new (FALSE, FALSE, sizeof (double)) };
      GdkFrameClock *clock = gtk_widget_get_frame_clock (scrolled);
      gulong before = g_signal_connect (clock, "before-paint", G_CALLBACK (before_paint_cb), &frames);
      gulong after = g_signal_connect (clock, "after-paint", G_CALLBACK (after_paint_cb), &frames);
      gint64 start = g_get_monotonic_time ();
      double took;

      move_on (adjustment, &step);
      took = (double) (g_get_monotonic_time () - start) / 1000;
      support_until (frames.times->len > 0);
      took += g_array_index (frames.times, double, 0);
      g_array_append_val (times, took);
      g_signal_handler_disconnect (clock, before);
      g_signal_handler_disconnect (clock, after);
      g_array_unref (frames.times);
    }
  g_array_sort (times, compare_times);
  g_print ("# %s: median %.1f ms, 95 %% %.1f ms, longest %.1f ms (aim: none over %.0f)\n", words,
           quantile (times, 0.5), quantile (times, 0.95), quantile (times, 1), FRAME_LIMIT);
}

static void
time_edit (Support *support, GbGrid *grid)
{
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (support->project), GB_RECORD_PART);
  gint64 id = 0;
  gint64 start;

  for (guint i = 10; i < parts->len && id == 0; i++)
    if (((const GbPart *) parts->pdata[i])->kind == GB_KIND_PART)
      id = ((const GbRecord *) parts->pdata[i])->id;
  start = g_get_monotonic_time ();
  g_assert_true (gb_project_enter (support->project, GB_RECORD_PART, &id, 1,
                                   gb_field (GB_RECORD_PART, "quantity"), "3", NULL));
  g_print ("# an edit, findings, file and cells: %.1f ms\n",
           (double) (g_get_monotonic_time () - start) / 1000);
  start = g_get_monotonic_time ();
  g_assert_true (gb_project_undo (support->project, NULL));
  g_print ("# its undo: %.1f ms\n", (double) (g_get_monotonic_time () - start) / 1000);
}

static void
time_filter (GbGrid *grid)
{
  gint64 start = g_get_monotonic_time ();

  gb_grid_rows_set_filter (GB_GRID_ROWS (gb_grid_get_rows (grid)), "oak");
  g_print ("# filter: %.1f ms, %u rows left\n", (double) (g_get_monotonic_time () - start) / 1000,
           g_list_model_get_n_items (gb_grid_get_rows (grid)));
  start = g_get_monotonic_time ();
  gb_grid_rows_set_filter (GB_GRID_ROWS (gb_grid_get_rows (grid)), NULL);
  g_print ("# filter off: %.1f ms\n", (double) (g_get_monotonic_time () - start) / 1000);
}

static void
measure (guint n_parts)
{
  g_autoptr (GbBoat) boat = generate_boat (n_parts, 1);
  g_autoptr (Support) support = support_new_for (boat);
  GtkWidget *page = gb_parts_page_new ();
  gint64 start = g_get_monotonic_time ();
  GbGrid *grid;

  support_show (support, page, 1280, 800);
  g_print ("# %u parts\n# first paint: %.1f ms\n", n_parts,
           (double) (g_get_monotonic_time () - start) / 1000);
  grid = gb_parts_page_get_grid (GB_PARTS_PAGE (page));
  scroll (support, grid, 30, "scrolling by a row");
  scroll (support, grid, 700, "scrolling by a page");
  scroll (support, grid, 20000, "scrolling by leaps");
  time_edit (support, grid);
  time_filter (grid);
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  measure (argc > 1 ? (guint) atoi (argv[1]) : 100);
  if (argc == 1)
    {
      measure (10000);
      measure (100000);
    }
  return 0;
}
