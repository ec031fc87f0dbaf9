/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-cell"

#include "cell.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "complaint.h"
#include "completion.h"

#define INDENT 18 /* pixels a level */

struct _GbCell
{
  GtkWidget parent_instance;
  GtkWidget *opener; /* the arrow; NULL in columns without */
  GtkWidget *label;
  GtkWidget *icon; /* of trouble; made when first needed */
  GtkWidget *editor;
  GbCompletion *completion;
  GbComplaint *complaint;
  GtkWidget *retired; /* an editor that has ended, see gb_cell_stop() */
  guint retire_id;

  GtkListItem *list_item; /* borrowed while bound */
  guint column;
  char *note;
  GbCellFlags flags;
  gboolean is_number;
};

enum
{
  OPENER_CLICKED,
  EDITOR_LEFT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbCell, gb_cell, GTK_TYPE_WIDGET)

void
gb_cell_look_clear (GbCellLook *look)
{
  g_clear_pointer (&look->text, g_free);
  g_clear_pointer (&look->note, g_free);
}

/* The toolkit -------------------------------------------------------------------------------------------- */

static gboolean
gb_cell_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  GbCell *self = GB_CELL (widget);

  if (self->editor != NULL)
    return FALSE;
  if (self->note != NULL)
    gtk_tooltip_set_text (tooltip, self->note);
  else if (pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (self->label))))
    gtk_tooltip_set_text (tooltip, gtk_label_get_text (GTK_LABEL (self->label)));
  else
    return FALSE;
  return TRUE;
}

static void
drop_retired (GbCell *self)
{
  g_clear_handle_id (&self->retire_id, g_source_remove);
  g_clear_pointer (&self->retired, gtk_widget_unparent);
}

static void
gb_cell_dispose (GObject *object)
{
  GbCell *self = GB_CELL (object);

  gb_cell_stop (self);
  drop_retired (self);
  g_clear_pointer (&self->opener, gtk_widget_unparent);
  g_clear_pointer (&self->icon, gtk_widget_unparent);
  g_clear_pointer (&self->label, gtk_widget_unparent);
  self->list_item = NULL;
  G_OBJECT_CLASS (gb_cell_parent_class)->dispose (object);
}

static void
gb_cell_finalize (GObject *object)
{
  g_free (GB_CELL (object)->note);
  G_OBJECT_CLASS (gb_cell_parent_class)->finalize (object);
}

static void
gb_cell_class_init (GbCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_cell_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_cell_finalize;
  widget_class->query_tooltip = gb_cell_query_tooltip;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gb-cell");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GRID_CELL);

  signals[OPENER_CLICKED] = g_signal_new ("opener-clicked", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                          NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EDITOR_LEFT] = g_signal_new ("editor-left", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 0);
}

static void
gb_cell_init (GbCell *self)
{
  self->label = gtk_label_new (NULL);
  gtk_label_set_ellipsize (GTK_LABEL (self->label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (self->label, TRUE);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

static void
opener_pressed_cb (GbCell *self, int n_press, double x, double y, GtkGestureClick *gesture)
{
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  g_signal_emit (self, signals[OPENER_CLICKED], 0);
}

GtkWidget *
gb_cell_new (gboolean is_number, gboolean has_opener)
{
  GbCell *self = g_object_new (GB_TYPE_CELL, NULL);

  self->is_number = is_number;
  gtk_label_set_xalign (GTK_LABEL (self->label), is_number ? 1 : 0);
  if (is_number)
    gtk_widget_add_css_class (self->label, "numeric");
  if (has_opener)
    {
      GtkGesture *click = gtk_gesture_click_new ();

      self->opener = gtk_image_new ();
      gtk_widget_add_css_class (self->opener, "opener");
      gtk_widget_insert_before (self->opener, GTK_WIDGET (self), self->label);
      g_signal_connect_swapped (click, "pressed", G_CALLBACK (opener_pressed_cb), self);
      gtk_widget_add_controller (self->opener, GTK_EVENT_CONTROLLER (click));
    }
  return GTK_WIDGET (self);
}

void
gb_cell_set_least_chars (GbCell *self, int chars)
{
  gtk_label_set_width_chars (GTK_LABEL (self->label), chars);
}

/* Place and look ----------------------------------------------------------------------------------------- */

void
gb_cell_set_place (GbCell *self, GtkListItem *list_item, guint column)
{
  self->list_item = list_item;
  self->column = column;
}

guint
gb_cell_get_position (GbCell *self)
{
  return self->list_item != NULL ? gtk_list_item_get_position (self->list_item) : GTK_INVALID_LIST_POSITION;
}

gpointer
gb_cell_get_item (GbCell *self)
{
  return self->list_item != NULL ? gtk_list_item_get_item (self->list_item) : NULL;
}

guint
gb_cell_get_column (GbCell *self)
{
  return self->column;
}

static void
set_class (GtkWidget *widget, const char *css_class, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

static void
show_icon (GbCell *self, gboolean show)
{
  if (self->icon == NULL && show)
    {
      self->icon = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
      gtk_widget_add_css_class (self->icon, "trouble");
      gtk_widget_insert_after (self->icon, GTK_WIDGET (self), self->is_number ? self->opener : self->label);
    }
  if (self->icon == NULL)
    return;
  gtk_widget_set_visible (self->icon, show && self->editor == NULL);
  /* Beside a number it stands close to the figures. */
  gtk_widget_set_halign (self->icon, GTK_ALIGN_END);
  gtk_widget_set_hexpand (self->icon, self->is_number);
  gtk_widget_set_hexpand (self->label, !(self->is_number && show));
}

void
gb_cell_set_look (GbCell *self, const GbCellLook *look)
{
  GbCellFlags differ = self->flags ^ look->flags;

  self->flags = look->flags;
  gtk_label_set_text (GTK_LABEL (self->label), look->text != NULL ? look->text : "");
  if ((differ & GB_CELL_DIM) != 0)
    set_class (self->label, "dim-label", (look->flags & GB_CELL_DIM) != 0);
  if ((differ & GB_CELL_STRONG) != 0)
    set_class (self->label, "sum", (look->flags & GB_CELL_STRONG) != 0);
  if ((differ & GB_CELL_TROUBLE) != 0)
    show_icon (self, (look->flags & GB_CELL_TROUBLE) != 0);
  if (g_strcmp0 (self->note, look->note) != 0)
    {
      g_free (self->note);
      self->note = g_strdup (look->note);
      if (self->note != NULL)
        gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                        self->note, -1);
      else
        gtk_accessible_reset_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
    }
}

const char *
gb_cell_get_text (GbCell *self)
{
  return gtk_label_get_text (GTK_LABEL (self->label));
}

void
gb_cell_set_opener (GbCell *self, guint depth, gboolean can_open, gboolean is_open)
{
  g_return_if_fail (self->opener != NULL);

  gtk_widget_set_margin_start (self->opener, (int) MIN (depth, 40) * INDENT);
  gtk_image_set_from_icon_name (GTK_IMAGE (self->opener),
                                !can_open ? NULL : is_open ? "pan-down-symbolic" : "pan-end-symbolic");
  gtk_widget_set_can_target (self->opener, can_open);
  if (can_open)
    gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED, is_open, -1);
  else
    gtk_accessible_reset_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED);
}

/* Editing ------------------------------------------------------------------------------------------------ */

/* Losing the focus to another window is not leaving: the builder may be reading a figure there. */
static void
focus_left_cb (GbCell *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (self->editor != NULL && (root == NULL || gtk_root_get_focus (root) != self->editor))
    g_signal_emit (self, signals[EDITOR_LEFT], 0);
}

static void
entry_changed_cb (GbCell *self)
{
  gb_cell_complain (self, NULL);
}

static void
make_editor (GbCell *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->editor = gtk_text_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->editor), 1);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->editor), 1);
  gtk_widget_set_hexpand (self->editor, TRUE);
  gtk_editable_set_alignment (GTK_EDITABLE (self->editor), self->is_number ? 1 : 0);
  if (self->is_number)
    gtk_widget_add_css_class (self->editor, "numeric");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->editor), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Entry"),
                                  -1);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (self->editor, focus);
  gtk_widget_insert_after (self->editor, GTK_WIDGET (self), self->label);
}

void
gb_cell_edit (GbCell *self, const char *text, GPtrArray *choices, gboolean strict)
{
  gb_cell_stop (self);
  make_editor (self);
  gtk_editable_set_text (GTK_EDITABLE (self->editor), text);
  g_signal_connect_swapped (self->editor, "changed", G_CALLBACK (entry_changed_cb), self);
  if (choices != NULL)
    {
      self->completion = gb_completion_new (GTK_WIDGET (self), GTK_EDITABLE (self->editor));
      gb_completion_set_choices (self->completion, choices, strict);
    }
  gtk_widget_set_visible (self->label, FALSE);
  show_icon (self, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "editing");
  gtk_widget_grab_focus (self->editor);
}

gboolean
gb_cell_is_editing (GbCell *self)
{
  return self->editor != NULL;
}

GtkWidget *
gb_cell_get_editor (GbCell *self)
{
  return self->editor;
}

const char *
gb_cell_get_entry (GbCell *self)
{
  g_return_val_if_fail (self->editor != NULL, "");
  return gtk_editable_get_text (GTK_EDITABLE (self->editor));
}

const GbChoiceItem *
gb_cell_get_chosen (GbCell *self)
{
  return self->completion != NULL ? gb_completion_get_chosen (self->completion) : NULL;
}

void
gb_cell_open_choices (GbCell *self)
{
  if (self->completion != NULL)
    gb_completion_open (self->completion);
}

gboolean
gb_cell_choices_key (GbCell *self, guint keyval, GdkModifierType state)
{
  return self->completion != NULL && gb_completion_key (self->completion, keyval, state);
}

void
gb_cell_complain (GbCell *self, const char *sentence)
{
  if (sentence != NULL && self->completion != NULL)
    gb_completion_close (self->completion);
  if (sentence == NULL && self->complaint == NULL)
    return;
  if (self->complaint == NULL)
    self->complaint = gb_complaint_new (GTK_WIDGET (self));
  gb_complaint_say (self->complaint, sentence);
  set_class (GTK_WIDGET (self), "error", sentence != NULL);
  if (self->editor != NULL)
    gtk_accessible_update_state (
      GTK_ACCESSIBLE (self->editor), GTK_ACCESSIBLE_STATE_INVALID,
      sentence != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

const char *
gb_cell_get_complaint (GbCell *self)
{
  return self->complaint != NULL ? gb_complaint_get_sentence (self->complaint) : NULL;
}

static gboolean
retire_cb (gpointer user_data)
{
  GbCell *self = user_data;

  self->retire_id = 0;
  drop_retired (self);
  return G_SOURCE_REMOVE;
}

/* The editor may be ending because the focus is just leaving it, and the toolkit is not done with it then: it is
 * hidden now and taken away in a moment. */
void
gb_cell_stop (GbCell *self)
{
  GtkWidget *editor = g_steal_pointer (&self->editor);
  GbCompletion *completion = g_steal_pointer (&self->completion);
  GbComplaint *complaint = g_steal_pointer (&self->complaint);

  if (editor == NULL)
    return;
  if (completion != NULL)
    gtk_widget_unparent (GTK_WIDGET (completion));
  if (complaint != NULL)
    gtk_widget_unparent (GTK_WIDGET (complaint));
  gtk_widget_remove_css_class (GTK_WIDGET (self), "editing");
  gtk_widget_remove_css_class (GTK_WIDGET (self), "error");
  /* The focus goes to the cell first, so that it does not wander off to the first thing in the window. */
  if (gtk_widget_has_focus (editor))
    gtk_widget_grab_focus (GTK_WIDGET (self));
  gtk_widget_set_visible (editor, FALSE);
  drop_retired (self);
  self->retired = editor;
  self->retire_id = g_idle_add (retire_cb, self);
  gtk_widget_set_visible (self->label, TRUE);
  show_icon (self, (self->flags & GB_CELL_TROUBLE) != 0);
}
