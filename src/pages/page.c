/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-page"

#include "page.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GbProject *project;
} GbPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (GbPage, gb_page, GTK_TYPE_BOX)

enum
{
  PROP_0,
  PROP_PROJECT,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

void
gb_page_set_project (GbPage *self, GbProject *project)
{
  GbPagePrivate *priv = gb_page_get_instance_private (self);
  g_autoptr (GbProject) before = NULL;

  g_return_if_fail (GB_IS_PAGE (self));

  if (priv->project == project)
    return;
  before = g_steal_pointer (&priv->project);
  if (before != NULL)
    g_signal_handlers_disconnect_by_data (before, self);
  g_set_object (&priv->project, project);
  GB_PAGE_GET_CLASS (self)->show (self, project);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PROJECT]);
}

GbProject *
gb_page_get_project (GbPage *self)
{
  GbPagePrivate *priv = gb_page_get_instance_private (self);

  g_return_val_if_fail (GB_IS_PAGE (self), NULL);
  return priv->project;
}

void
gb_page_tell_removed (GtkWidget *inside, guint n, const char *title)
{
  g_autofree char *words = n == 1 ? g_strdup_printf (_ ("“%s” deleted"), title)
                                  : g_strdup_printf (ngettext ("%u row deleted", "%u rows deleted", n), n);

  gtk_widget_activate_action (inside, "win.toast-undo", "s", words);
}

static void
gb_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_PROJECT:
      gb_page_set_project (GB_PAGE (object), g_value_get_object (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_PROJECT:
      g_value_set_object (value, gb_page_get_project (GB_PAGE (object)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gb_page_class_init (GbPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->set_property = gb_page_set_property;
  object_class->get_property = gb_page_get_property;
  properties[PROP_PROJECT] = g_param_spec_object ("project", NULL, NULL, GB_TYPE_PROJECT,
                                                  G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gb_page_init (GbPage *self)
{
}
