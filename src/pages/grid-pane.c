/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-pane"

#include "grid-pane.h"

#include <glib/gi18n-lib.h>

#include "boat/quantity.h"

struct _GbGridPane
{
  GtkBox parent_instance;

  GbGrid *grid;
  GtkLabel *hint;
};

G_DEFINE_FINAL_TYPE (GbGridPane, gb_grid_pane, GTK_TYPE_BOX)

/* Adding rows ------------------------------------------------------------------------------------------------------- */

/* The sibling that stands after @spot's; 0 at the end. */
static gint64
sibling_after (GbGrid *grid, GbRecordKind kind, GbGridSpot spot)
{
  const GbBoat *boat = gb_project_get_boat (gb_grid_get_project (grid));
  const GbRecord *owner = gb_boat_get (boat, gb_record_type (kind)->owner, spot.owner);
  const GPtrArray *siblings = spot.owner != 0 && owner != NULL ? gb_record_children (owner) : gb_boat_roots (boat, kind);

  for (guint i = 0; i + 1 < siblings->len; i++)
    if (((const GbRecord *) siblings->pdata[i])->id == spot.after)
      return ((const GbRecord *) siblings->pdata[i + 1])->id;
  return 0;
}

gint64
gb_grid_add_draft (GbGrid *grid, GbRecord *draft, const char *field_name, const char *text, const GbChoiceItem *chosen,
                   GbGridSpot spot, GError **error)
{
  g_autoptr (GbRecord) record = draft;
  GbProject *project = gb_grid_get_project (grid);
  const GbField *field = gb_field (record->kind, field_name);

  if (field->dim == GB_DIM_REF)
    {
      if (chosen == NULL && *text != '\0')
        {
          g_set_error (error, GB_FIELD_ERROR, GB_FIELD_ERROR_VALUE, _ ("There is no \"%s\" in this build."), text);
          return 0;
        }
      gb_field_set_integer (field, record, chosen != NULL ? chosen->id : 0);
    }
  else
    {
      g_auto (GbValue) value = { 0 };

      if (!gb_field_parse (field, text, gb_project_get_build (project), &value, error))
        return 0;
      gb_field_set (field, record, &value);
    }
  return gb_project_add (project, g_steal_pointer (&record), spot.owner, sibling_after (grid, draft->kind, spot), error);
}

gint64
gb_grid_add_record (GbGrid *grid, const char *field, const char *text, const GbChoiceItem *chosen, GbGridSpot spot, GError **error)
{
  return gb_grid_add_draft (grid, gb_record_new (gb_grid_get_type_data (grid)->kind), field, text, chosen, spot, error);
}

/* The pane ---------------------------------------------------------------------------------------------------------- */

static void
removed_cb (GbGrid *grid, guint n, const char *title, GbGridPane *self)
{
  g_autofree char *words = n == 1 ? g_strdup_printf (_ ("\"%s\" deleted"), title)
                                  : g_strdup_printf (ngettext ("%u row deleted", "%u rows deleted", n), n);

  gtk_widget_activate_action (GTK_WIDGET (self), "win.toast-undo", "s", words);
}

static void
refused_cb (GbGrid *grid, const char *sentence, GbGridPane *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.tell", "s", sentence);
}

static GtkWidget *
make_header (GbGridPane *self, const char *heading, const char *add_label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (heading);
  GtkWidget *columns = gtk_menu_button_new ();

  gtk_widget_add_css_class (box, "page-toolbar");
  gtk_widget_add_css_class (label, "heading");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), label);
  if (add_label != NULL)
    {
      GtkWidget *add = gtk_button_new_with_label (add_label);

      g_signal_connect_object (add, "clicked", G_CALLBACK (gb_grid_start_blank), self->grid, G_CONNECT_SWAPPED);
      gtk_box_append (GTK_BOX (box), add);
    }
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (columns), "view-more-symbolic");
  gtk_menu_button_set_menu_model (GTK_MENU_BUTTON (columns), gb_grid_get_columns_menu (self->grid));
  gtk_widget_set_tooltip_text (columns, _ ("Columns"));
  gtk_widget_add_css_class (columns, "flat");
  gtk_box_append (GTK_BOX (box), columns);
  return box;
}

void
gb_grid_pane_set_hint (GbGridPane *self, const char *hint)
{
  g_return_if_fail (GB_IS_GRID_PANE (self));
  gtk_label_set_text (self->hint, hint);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), *hint != '\0');
}

GbGrid *
gb_grid_pane_get_grid (GbGridPane *self)
{
  g_return_val_if_fail (GB_IS_GRID_PANE (self), NULL);
  return self->grid;
}

static void
gb_grid_pane_class_init (GbGridPaneClass *klass)
{
}

static void
gb_grid_pane_init (GbGridPane *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
}

GbGridPane *
gb_grid_pane_new (const GbGridType *type, const char *heading, const char *add_label)
{
  GbGridPane *self = g_object_new (GB_TYPE_GRID_PANE, NULL);

  self->grid = GB_GRID (gb_grid_new (type));
  self->hint = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->hint, 0);
  gtk_label_set_wrap (self->hint, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "pane-hint");
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "dim-label");
  gtk_widget_set_visible (GTK_WIDGET (self->hint), FALSE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->grid), TRUE);

  gtk_box_append (GTK_BOX (self), make_header (self, heading, add_label));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->hint));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->grid));
  /* The columns' menu names actions of the grid, which the button stands beside. */
  gtk_widget_insert_action_group (GTK_WIDGET (self), "grid", gb_grid_get_actions (self->grid));
  g_signal_connect_object (self->grid, "removed", G_CALLBACK (removed_cb), self, 0);
  g_signal_connect_object (self->grid, "refused", G_CALLBACK (refused_cb), self, 0);
  return self;
}
