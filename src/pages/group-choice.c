/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-group-choice"

#include "group-choice.h"

#include <glib/gi18n-lib.h>

#define INDENT 18 /* for each group inside another */
#define MOST_UNSEARCHED 12

#define GROUP_TYPE_ITEM (group_item_get_type ())
G_DECLARE_FINAL_TYPE (GroupItem, group_item, GROUP, ITEM, GObject)

struct _GroupItem
{
  GObject parent_instance;
  gint64 id;
  guint depth;
  char *name;
};

G_DEFINE_FINAL_TYPE (GroupItem, group_item, G_TYPE_OBJECT)

static void
group_item_finalize (GObject *object)
{
  g_free (GROUP_ITEM (object)->name);
  G_OBJECT_CLASS (group_item_parent_class)->finalize (object);
}

static void
group_item_class_init (GroupItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = group_item_finalize;
}

static void
group_item_init (GroupItem *self)
{
}

/* Takes @name. */
static void
append_item (GListStore *store, gint64 id, guint depth, char *name)
{
  g_autoptr (GroupItem) item = g_object_new (GROUP_TYPE_ITEM, NULL);

  item->id = id;
  item->depth = depth;
  item->name = name;
  g_list_store_append (store, item);
}

/* Looks --------------------------------------------------------------------------------------------------------------- */

static char *
dup_name (GroupItem *item)
{
  return g_strdup (item->name);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer indent)
{
  GtkWidget *label = gtk_list_item_get_child (item);
  GroupItem *group = gtk_list_item_get_item (item);

  gtk_label_set_text (GTK_LABEL (label), group->name);
  gtk_widget_set_margin_start (label, GPOINTER_TO_INT (indent) * (int) group->depth);
}

static GtkListItemFactory *
make_factory (int indent)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GINT_TO_POINTER (indent));
  return factory;
}

/* The door ------------------------------------------------------------------------------------------------------------ */

void
gb_group_choice_init (GtkDropDown *drop_down)
{
  g_autoptr (GtkListItemFactory) button = make_factory (0);
  g_autoptr (GtkListItemFactory) list = make_factory (INDENT);
  g_autoptr (GtkExpression) name = gtk_cclosure_expression_new (G_TYPE_STRING, NULL, 0, NULL, G_CALLBACK (dup_name), NULL, NULL);

  gtk_drop_down_set_factory (drop_down, button);
  gtk_drop_down_set_list_factory (drop_down, list);
  gtk_drop_down_set_expression (drop_down, name);
}

static void
add_groups (GListStore *store, const GPtrArray *parts, guint depth)
{
  for (guint i = 0; i < parts->len; i++)
    {
      const GbPart *part = parts->pdata[i];

      if (part->kind != GB_KIND_GROUP)
        continue;
      append_item (store, part->rec.id, depth, gb_record_dup_title (&part->rec));
      add_groups (store, gb_record_children (&part->rec), depth + 1);
    }
}

guint
gb_group_choice_fill (GtkDropDown *drop_down, const GbBoat *boat)
{
  g_autoptr (GListStore) store = g_list_store_new (GROUP_TYPE_ITEM);
  gint64 picked = gb_group_choice_get (drop_down);
  guint at = 0, n_groups;

  append_item (store, 0, 0, g_strdup (_ ("No group")));
  add_groups (store, gb_boat_roots (boat, GB_RECORD_PART), 0);
  n_groups = g_list_model_get_n_items (G_LIST_MODEL (store)) - 1;
  for (guint i = 1; i <= n_groups && at == 0; i++)
    {
      g_autoptr (GroupItem) item = g_list_model_get_item (G_LIST_MODEL (store), i);

      at = item->id == picked ? i : 0;
    }
  gtk_drop_down_set_model (drop_down, G_LIST_MODEL (store));
  gtk_drop_down_set_selected (drop_down, at);
  gtk_drop_down_set_enable_search (drop_down, n_groups > MOST_UNSEARCHED);
  return n_groups;
}

gint64
gb_group_choice_get (GtkDropDown *drop_down)
{
  GroupItem *item = gtk_drop_down_get_selected_item (drop_down);

  return item != NULL ? item->id : 0;
}
