/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures of the whole window: opening to the first paint, scrolling the tree, and an edit to fresh findings and strip. Needs a display. */

#include "generate.h"

#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>

#include "application.h"
#include "pages/parts-page.h"
#include "store/store.h"
#include "window.h"

#define N_FRAMES 120
#define STEP 400 /* pixels scrolled a frame: a quick hand */

static double
ms_since (gint64 start)
{
  return (double) (g_get_monotonic_time () - start) / 1000;
}

static void
painted_cb (GdkFrameClock *clock, gboolean *painted)
{
  *painted = TRUE;
}

/* Until the next frame is painted. */
static void
wait_for_frame (GtkWidget *window)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  gboolean painted = FALSE;
  gulong id = g_signal_connect (clock, "after-paint", G_CALLBACK (painted_cb), &painted);

  gtk_widget_queue_draw (window);
  while (!painted)
    g_main_context_iteration (NULL, TRUE);
  g_signal_handler_disconnect (clock, id);
}

static int
compare (gconstpointer a, gconstpointer b)
{
  return *(const double *) a < *(const double *) b ? -1 : *(const double *) a > *(const double *) b;
}

static GtkScrolledWindow *
find_scroller (GtkWidget *widget)
{
  if (GTK_IS_SCROLLED_WINDOW (widget))
    return GTK_SCROLLED_WINDOW (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkScrolledWindow *found = find_scroller (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* From the change of the adjustment until that is painted. The frame clock sets the pace: a frame that is in time takes 16.7 ms. */
static void
bench_scrolling (GbWindow *window, guint n_parts)
{
  GtkWidget *page = gb_window_get_page (window, "parts");
  GtkScrolledWindow *scroller = find_scroller (GTK_WIDGET (gb_parts_page_get_grid (GB_PARTS_PAGE (page))));
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (scroller);
  double times[N_FRAMES];

  for (guint i = 0; i < N_FRAMES; i++)
    {
      gint64 start = g_get_monotonic_time ();

      gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + STEP);
      wait_for_frame (GTK_WIDGET (window));
      times[i] = ms_since (start);
    }
  qsort (times, N_FRAMES, sizeof *times, compare);
  printf ("%8u parts: scrolled by %.0f of %.0f pixels, frame: median %.1f ms, 95 %% %.1f ms, worst %.1f ms\n", n_parts,
          gtk_adjustment_get_value (adjustment), gtk_adjustment_get_upper (adjustment), times[N_FRAMES / 2],
          times[N_FRAMES * 95 / 100], times[N_FRAMES - 1]);
}

static void
bench_edit (GbWindow *window, guint n_parts)
{
  GbProject *project = gb_window_get_project (window);
  const GPtrArray *parts = gb_boat_all (gb_project_get_boat (project), GB_RECORD_PART);
  gint64 id = ((const GbRecord *) parts->pdata[parts->len / 2])->id;
  gint64 start = g_get_monotonic_time ();
  double found;

  if (!gb_project_enter (project, GB_RECORD_PART, &id, 1, gb_field (GB_RECORD_PART, "quantity"), "3", NULL))
    return;
  found = ms_since (start);
  wait_for_frame (GTK_WIDGET (window));
  printf ("%8u parts: an edit: findings and widgets %.1f ms, with the commit; painted after %.1f ms\n", n_parts, found, ms_since (start));
}

static void
bench (GbApplication *application, const char *folder, guint n_parts)
{
  g_autoptr (GbBoat) boat = generate_boat (n_parts, 1);
  g_autofree char *path = g_build_filename (folder, "bench.garboard", NULL);
  g_autoptr (GError) error = NULL;
  GbWindow *window;
  gint64 start;
  double opened;

  if (!gb_store_create (path, boat, TRUE, &error))
    g_error ("%s", error->message);
  start = g_get_monotonic_time ();
  window = gb_window_new (application);
  gb_window_open (window, path);
  opened = ms_since (start);
  gtk_window_present (GTK_WINDOW (window));
  while (!gtk_widget_get_mapped (GTK_WIDGET (window)))
    g_main_context_iteration (NULL, TRUE);
  wait_for_frame (GTK_WIDGET (window));
  printf ("%8u parts: opened in %.0f ms, first paint after %.0f ms\n", n_parts, opened, ms_since (start));
  bench_scrolling (window, n_parts);
  bench_edit (window, n_parts);
  gtk_window_destroy (GTK_WINDOW (window));
  g_remove (path);
}

int
main (void)
{
  static const guint sizes[] = { 100, 10000, 100000 };
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("garboard-bench-XXXXXX", NULL);
  g_autoptr (GbApplication) application = NULL;

  g_setenv ("HOME", folder, TRUE);
  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  application = gb_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  if (!g_application_register (G_APPLICATION (application), NULL, &error))
    g_error ("%s", error->message);
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    bench (application, folder, sizes[i]);
  return EXIT_SUCCESS;
}
