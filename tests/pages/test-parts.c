/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pages/parts-page.h"
#include "support.h"

static void
test_pictures (void)
{
  static const struct
  {
    const char *name;
    int width, height;
  } sizes[] = { { "parts-1280", 1280, 800 }, { "parts-900", 900, 600 } };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (Support) support = support_new ("plover");

      support_show (support, gb_parts_page_new (), sizes[i].width, sizes[i].height);
      gb_parts_page_show_part (GB_PARTS_PAGE (support->page), support_part (support, "Bottom panel"));
      support_picture (support, sizes[i].name);
    }
}

int
main (int argc, char **argv)
{
  support_init (&argc, &argv);
  g_test_add_func ("/parts/pictures", test_pictures);
  return g_test_run ();
}
