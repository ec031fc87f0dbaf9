/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A picture of the whole window for each page and each of its views, in light and in dark, large and small, for a demo and for an empty
 * build. They are there to be looked at; the test is that all of them can be drawn. */

#include "window-support.h"

static const struct
{
  const char *page;
  const char *views[6];
} pages[] = {
  { "parts", { NULL } },
  { "materials", { "materials", "stock", NULL } },
  { "purchases", { NULL } },
  { "hulls", { "hulls", "loads", "draught", NULL } },
  { "weight", { "summary", "drawing", "groups", "history", "weighings", NULL } },
  { "money", { "summary", "budget", "to-buy", "course", NULL } },
};

static const struct
{
  const char *name;
  int width, height;
} sizes[] = { { "1280", 1280, 800 }, { "900", 900, 600 } };

static void
picture (WindowSupport *self, const char *build, const char *page, const char *view, const char *size)
{
  g_autofree char *name = g_strjoin ("-", "window", build, size, page, view, NULL);

  window_support_page (self, page, view);
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
