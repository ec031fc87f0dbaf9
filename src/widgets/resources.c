/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "resources.h"

#include <gtk/gtk.h>

#include "gb-ui-resources.h"

#define BASE "/org/garboard/Garboard"

void
gb_resources_register (void)
{
  g_resources_register (gb_ui_get_resource ());
}

void
gb_widgets_init (void)
{
  GdkDisplay *display = gdk_display_get_default ();
  g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();

  gb_resources_register ();
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (display), BASE "/icons");
  gtk_css_provider_load_from_resource (provider, BASE "/style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}
