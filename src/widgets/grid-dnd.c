/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-grid-dnd"

/* Rows dragged: within the table to another place or into a group, and into the table of another window,
 * where they are copied. One drag source and one drop target sit on the view; the row under the pointer is
 * found there, because rows come and go. */

#include "grid-private.h"

#include <glib/gi18n-lib.h>

#include "project/verbs-paste.h"

/* What is dragged. */
#define GB_TYPE_GRID_DRAG (gb_grid_drag_get_type ())
G_DECLARE_FINAL_TYPE (GbGridDrag, gb_grid_drag, GB, GRID_DRAG, GObject)

struct _GbGridDrag
{
  GObject parent_instance;
  GbProject *project; /* weak: the display server may keep what was dragged for long */
  GbRecordKind kind;
  gint64 *ids;
  guint n_ids;
};

G_DEFINE_FINAL_TYPE (GbGridDrag, gb_grid_drag, G_TYPE_OBJECT)

static void
gb_grid_drag_finalize (GObject *object)
{
  GbGridDrag *self = GB_GRID_DRAG (object);

  g_clear_weak_pointer (&self->project);
  g_free (self->ids);
  G_OBJECT_CLASS (gb_grid_drag_parent_class)->finalize (object);
}

static void
gb_grid_drag_class_init (GbGridDragClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = gb_grid_drag_finalize;
}

static void
gb_grid_drag_init (GbGridDrag *self)
{
}

/* The source --------------------------------------------------------------------------------------------- */

static GdkContentProvider *
prepare_cb (GbGrid *self, double x, double y)
{
  GbCell *cell = gb_grid_pick_cell (self, x, y);
  GbGridRow *row = cell != NULL ? gb_cell_get_item (cell) : NULL;
  g_autoptr (GbGridDrag) drag = NULL;
  g_autofree char *text = NULL;
  GdkContentProvider *coats[2];
  guint position;

  if (row == NULL || gb_grid_row_get_id (row) == 0 || gb_cell_is_editing (cell) || !gb_grid_commit (self))
    return NULL;
  position = gb_cell_get_position (cell);
  if (!gtk_selection_model_is_selected (GTK_SELECTION_MODEL (self->selection), position))
    gtk_selection_model_select_item (GTK_SELECTION_MODEL (self->selection), position, TRUE);
  drag = g_object_new (GB_TYPE_GRID_DRAG, NULL);
  g_set_weak_pointer (&drag->project, self->project);
  drag->kind = self->type->kind;
  drag->ids = gb_grid_dup_selected_tops (self, &drag->n_ids);
  text = gb_grid_rows_as_text (self, drag->ids, drag->n_ids);
  coats[0] = gdk_content_provider_new_typed (GB_TYPE_GRID_DRAG, drag);
  coats[1] = gdk_content_provider_new_typed (G_TYPE_STRING, text);
  return gdk_content_provider_new_union (coats, 2);
}

static void
drag_begin_cb (GbGrid *self, GdkDrag *drag)
{
  g_autofree gint64 *ids = NULL;
  g_autofree char *words = NULL;
  GtkWidget *label;
  guint n;

  ids = gb_grid_dup_selected_tops (self, &n);
  if (n == 1)
    words = gb_record_dup_title (gb_boat_get (gb_project_get_boat (self->project), self->type->kind, ids[0]));
  else
    words = g_strdup_printf (ngettext ("%u row", "%u rows", n), n);
  label = gtk_label_new (words);
  gtk_widget_add_css_class (label, "gb-drag");
  gtk_drag_icon_set_child (GTK_DRAG_ICON (gtk_drag_icon_get_for_drag (drag)), label);
}

/* The target --------------------------------------------------------------------------------------------- */

/* Where a drop goes. */
typedef struct
{
  gint64 owner, before;
  graphene_rect_t mark; /* in the grid: a line between rows, or a frame around a group's row */
} Drop;

/* The id of the sibling after the row's record; 0 for the last. */
static gint64
next_sibling (GbGrid *self, const GbRecord *record)
{
  return gb_grid_sibling_after (self, (GbGridSpot){ record->owner, record->id });
}

static gint64
first_child (const GbRecord *group)
{
  const GPtrArray *children = gb_record_children (group);

  return children->len > 0 ? ((const GbRecord *) children->pdata[0])->id : 0;
}

static void
mark_line (Drop *drop, double y)
{
  drop->mark.origin.y = (float) y - 1;
  drop->mark.size.height = 2;
}

static void
drop_on_record (GbGrid *self, GbGridRow *row, double share, Drop *drop)
{
  const GbRecord *record = gb_grid_row_get_record (row);
  gboolean group = gb_grid_row_can_open (row);
  double top = drop->mark.origin.y, bottom = top + drop->mark.size.height;

  if (group && share > 0.25 && share < 0.75)
    *drop = (Drop){ record->id, 0, drop->mark };
  else if (share < 0.5)
    {
      *drop = (Drop){ record->owner, record->id, drop->mark };
      mark_line (drop, top);
    }
  else if (group && gb_grid_row_is_open (row))
    {
      *drop = (Drop){ record->id, first_child (record), drop->mark };
      mark_line (drop, bottom);
    }
  else
    {
      *drop = (Drop){ record->owner, next_sibling (self, record), drop->mark };
      mark_line (drop, bottom);
    }
}

/* FALSE if nothing can be dropped at this place. */
static gboolean
find_drop (GbGrid *self, double x, double y, Drop *drop)
{
  GbCell *cell = gb_grid_pick_cell (self, x, y);
  GbGridRow *row = cell != NULL ? gb_cell_get_item (cell) : NULL;
  graphene_rect_t bounds;
  graphene_point_t pointer = GRAPHENE_POINT_INIT ((float) x, (float) y);
  graphene_point_t own;

  if (row == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (cell), GTK_WIDGET (self), &bounds)
      || !gtk_widget_compute_point (GTK_WIDGET (self->view), GTK_WIDGET (self), &pointer, &own))
    return FALSE;
  drop->mark = GRAPHENE_RECT_INIT (0, bounds.origin.y, (float) gtk_widget_get_width (GTK_WIDGET (self)),
                                   bounds.size.height);
  if (gb_grid_row_is_blank (row))
    {
      drop->owner = gb_grid_row_get_spot (row).owner;
      drop->before = 0;
      mark_line (drop, bounds.origin.y);
      return TRUE;
    }
  if (gb_grid_row_is_boat (row))
    {
      drop->owner = drop->before = 0;
      return TRUE;
    }
  drop_on_record (self, row, (own.y - bounds.origin.y) / bounds.size.height, drop);
  return TRUE;
}

/* Rows of other sorts, and groups into themselves, are turned away while they hover. */
static gboolean
may_drop (GbGrid *self, const GbGridDrag *drag, const Drop *drop)
{
  if (drag == NULL || drag->project == NULL || drag->kind != self->type->kind
      || gb_project_get_read_only_reason (self->project) != NULL)
    return FALSE;
  if (drag->project != self->project)
    return self->type->kind == GB_RECORD_PART;
  if (self->type->kind != GB_RECORD_PART)
    return TRUE;
  for (guint i = 0; i < drag->n_ids; i++)
    if (gb_boat_is_below (gb_project_get_boat (self->project), drop->owner, drag->ids[i]))
      return FALSE;
  return TRUE;
}

static GbGridDrag *
hovering (GtkDropTarget *target)
{
  const GValue *value = gtk_drop_target_get_value (target);

  return value != NULL && G_VALUE_HOLDS (value, GB_TYPE_GRID_DRAG) ? g_value_get_object (value) : NULL;
}

static void
hide_mark (GbGrid *self)
{
  self->drop_shown = FALSE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static GdkDragAction
motion_cb (GbGrid *self, double x, double y, GtkDropTarget *target)
{
  GbGridDrag *drag = hovering (target);
  Drop drop;

  hide_mark (self);
  if (self->project == NULL || !find_drop (self, x, y, &drop) || !may_drop (self, drag, &drop))
    return 0;
  self->drop_shown = TRUE;
  self->drop_mark = drop.mark;
  return drag->project == self->project ? GDK_ACTION_MOVE : GDK_ACTION_COPY;
}

static void
take_drop (GbGrid *self, const GbGridDrag *drag, const Drop *drop)
{
  g_autoptr (GArray) copies = NULL;
  g_autoptr (GError) error = NULL;
  gboolean done;

  if (drag->project == self->project)
    done = gb_project_move (self->project, drag->kind, drag->ids, drag->n_ids, drop->owner, drop->before,
                            &error);
  else
    done = gb_project_paste_from (self->project, gb_project_get_boat (drag->project), drag->ids, drag->n_ids,
                                  drop->owner, drop->before, &copies, &error);
  if (!done)
    gb_grid_refuse (self, g_steal_pointer (&error));
  else if (copies != NULL)
    gb_grid_go_to_all (self, (const gint64 *) (gpointer) copies->data, copies->len);
  else
    gb_grid_go_to_all (self, drag->ids, drag->n_ids);
}

static gboolean
drop_cb (GbGrid *self, const GValue *value, double x, double y)
{
  GbGridDrag *drag = g_value_get_object (value);
  Drop drop;

  hide_mark (self);
  if (self->project == NULL || !find_drop (self, x, y, &drop) || !may_drop (self, drag, &drop))
    return FALSE;
  take_drop (self, drag, &drop);
  return TRUE;
}

void
gb_grid_dnd_snapshot (GbGrid *self, GtkSnapshot *snapshot)
{
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (self));
  GskRoundedRect frame;
  GdkRGBA color;

  if (!self->drop_shown)
    return;
  if (!gtk_style_context_lookup_color (style, "accent_color", &color))
    gtk_style_context_get_color (style, &color);
  gsk_rounded_rect_init_from_rect (&frame, &self->drop_mark, 0);
  gtk_snapshot_append_border (snapshot, &frame, (float[4]){ 2, 2, 2, 2 },
                              (GdkRGBA[4]){ color, color, color, color });
}

void
gb_grid_dnd_init (GbGrid *self)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (GB_TYPE_GRID_DRAG, GDK_ACTION_MOVE | GDK_ACTION_COPY);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE | GDK_ACTION_COPY);
  g_signal_connect_object (source, "prepare", G_CALLBACK (prepare_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (source, "drag-begin", G_CALLBACK (drag_begin_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self->view), GTK_EVENT_CONTROLLER (source));

  gtk_drop_target_set_preload (target, TRUE);
  g_signal_connect_object (target, "motion", G_CALLBACK (motion_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (target, "leave", G_CALLBACK (hide_mark), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (target, "drop", G_CALLBACK (drop_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (self->view), GTK_EVENT_CONTROLLER (target));
}
