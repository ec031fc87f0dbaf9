/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A picture of the whole window for each page and each of its views, in light and in dark, large and small, for a demo and for an empty
 * build. They are there to be looked at; the test is that all of them can be drawn. */

#include "project/project-study.h"
#include "window-support.h"

static const struct
{
  const char *page;
  const char *views[8];
} pages[] = {
  { "parts", { NULL } },
  { "materials", { "materials", "stock", NULL } },
  { "purchases", { NULL } },
  { "hulls", { "hulls", "openings", "draught", NULL } },
  { "afloat", { "figures", "freeboard", "crew", "righting", "swamped", "inclining", "model", NULL } },
  { "weight", { "summary", "drawing", "groups", "history", "weighings", NULL } },
  { "money", { "summary", "budget", "to-buy", "course", NULL } },
};

static const struct
{
  const char *name;
  int width, height;
} sizes[] = { { "1280", 1280, 800 }, { "900", 900, 600 } };

/* What is dear is found on a worker, which the page has asked already. */
static void
wait_for_studies (GbProject *project)
{
  const GPtrArray *conditions = gb_boat_roots (gb_project_get_boat (project), GB_RECORD_CONDITION);
  const GbRecord *first = conditions->len > 0 ? conditions->pdata[0] : NULL;
  const GPtrArray *loads = first != NULL ? gb_record_children (first) : NULL;

  if (first == NULL)
    return;
  support_until (gb_project_get_study (project, first->id) != NULL);
  if (loads->len > 0 && gb_findings_afloat (gb_project_get_findings (project), first->id)->state != GB_AFLOAT_UNKNOWN)
    {
      gint64 load = ((const GbRecord *) loads->pdata[0])->id;
      const GbCrewMap *map;

      support_until ((map = gb_project_get_crew_map (project, first->id, load)) != NULL && map->n_rows_found == GB_MAP_ROWS);
    }
}

static void
picture (WindowSupport *self, const char *build, const char *page, const char *view, const char *size)
{
  g_autofree char *name = g_strjoin ("-", "window", build, size, page, view, NULL);

  window_support_page (self, page, view);
  if (g_strcmp0 (page, "afloat") == 0)
    wait_for_studies (gb_window_get_project (self->window));
  if (g_strcmp0 (view, "history") == 0)
    support_until (gb_project_get_history (gb_window_get_project (self->window)) != NULL);
  support_picture (&self->input, name);
}

static void
picture_pages (const char *path, const char *build)
{
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      WindowSupport self;

      window_support_open (&self, path, sizes[s].width, sizes[s].height);
      for (guint p = 0; p < G_N_ELEMENTS (pages); p++)
        {
          if (pages[p].views[0] == NULL)
            picture (&self, build, pages[p].page, NULL, sizes[s].name);
          for (guint v = 0; pages[p].views[v] != NULL; v++)
            picture (&self, build, pages[p].page, pages[p].views[v], sizes[s].name);
        }
      window_support_close (&self);
    }
}

static void
test_demo (void)
{
  g_autofree char *path = window_support_demo ("petrel");

  picture_pages (path, "petrel");
}

static void
test_empty (void)
{
  g_autofree char *path = window_support_make ("empty.garboard", NULL);

  picture_pages (path, "empty");
}

static void
test_welcome (void)
{
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      WindowSupport self;
      g_autofree char *name = g_strjoin ("-", "window-welcome", sizes[s].name, NULL);

      window_support_open (&self, NULL, sizes[s].width, sizes[s].height);
      support_picture (&self.input, name);
      window_support_close (&self);
    }
}

int
main (int argc, char **argv)
{
  window_support_init (&argc, &argv);
  g_test_add_func ("/pictures/welcome", test_welcome);
  g_test_add_func ("/pictures/demo", test_demo);
  g_test_add_func ("/pictures/empty", test_empty);
  return window_support_run ();
}
