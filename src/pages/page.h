/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* What the pages of the window have in common: the property "project" (GbProject, may be NULL), and when its signals are let go. */
#define GB_TYPE_PAGE (gb_page_get_type ())
G_DECLARE_DERIVABLE_TYPE (GbPage, gb_page, GB, PAGE, GtkBox)

struct _GbPageClass
{
  GtkBoxClass parent_class;

  /* Shows @project, and connects to it with the page as data; NULL: shows nothing. The page's handlers of the one before are gone already, and
   * that one lives until this returns. */
  void (*show) (GbPage *self, GbProject *project);
};

/* A page calls it with NULL in its dispose, before its template goes. */
void gb_page_set_project (GbPage *self, GbProject *project);
GbProject *gb_page_get_project (GbPage *self);

/* Says through the window, with an Undo, that @n rows went, or the one called @title. @inside: any widget of a page. */
void gb_page_tell_removed (GtkWidget *inside, guint n, const char *title);

G_END_DECLS
