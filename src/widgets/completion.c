/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-completion"

#include "completion.h"

#include <string.h>

#define MAX_SHOWN 200
#define PAGE 8

struct _GbCompletion
{
  GtkPopover parent_instance;
  GtkEditable *entry; /* weak */
  GtkWidget *view;
  GtkStringList *texts;
  GtkSingleSelection *selection;

  GPtrArray *choices; /* of GbChoiceItem, owned */
  GPtrArray *matches; /* borrowed out of choices, as shown */
  gboolean strict;
  const GbChoiceItem *chosen;
  gboolean setting; /* the entry's text is being set from the list */
};

enum
{
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbCompletion, gb_completion, GTK_TYPE_POPOVER)

/* The list itself ---------------------------------------------------------------------------------------- */

static void
setup_cb (GbCompletion *self, GtkListItem *list_item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *text = gtk_label_new (NULL);
  GtkWidget *note = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_label_set_ellipsize (GTK_LABEL (text), PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (GTK_LABEL (text), 36);
  gtk_widget_add_css_class (note, "dim-label");
  gtk_widget_add_css_class (note, "numeric");
  gtk_box_append (GTK_BOX (box), text);
  gtk_box_append (GTK_BOX (box), note);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_cb (GbCompletion *self, GtkListItem *list_item)
{
  GtkWidget *text = gtk_widget_get_first_child (gtk_list_item_get_child (list_item));
  GtkWidget *note = gtk_widget_get_next_sibling (text);
  guint position = gtk_list_item_get_position (list_item);
  const GbChoiceItem *item;

  if (position >= self->matches->len)
    return;
  item = self->matches->pdata[position];
  gtk_label_set_text (GTK_LABEL (text), item->text);
  gtk_label_set_text (GTK_LABEL (note), item->note != NULL ? item->note : "");
}

static void
pick_out (GbCompletion *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (self->view, "list.scroll-to-item", "u", position);
}

static void
show_matches (GbCompletion *self, GPtrArray *matches)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  if (matches->len > MAX_SHOWN)
    g_ptr_array_set_size (matches, MAX_SHOWN);
  g_clear_pointer (&self->matches, g_ptr_array_unref);
  self->matches = matches;
  for (guint i = 0; i < matches->len; i++)
    g_ptr_array_add (texts, ((const GbChoiceItem *) matches->pdata[i])->text);
  g_ptr_array_add (texts, NULL);
  gtk_string_list_splice (self->texts, 0, g_list_model_get_n_items (G_LIST_MODEL (self->texts)),
                          (const char *const *) texts->pdata);
  if (matches->len == 0)
    gb_completion_close (self);
  else if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    gtk_popover_popup (GTK_POPOVER (self));
}

static void
text_changed_cb (GbCompletion *self)
{
  const char *typed = gtk_editable_get_text (self->entry);

  if (self->setting || self->choices == NULL)
    return;
  self->chosen = NULL;
  if (*typed == '\0' && !gtk_widget_get_visible (GTK_WIDGET (self)))
    return;
  show_matches (self, gb_choices_match (self->choices, typed));
  pick_out (self, self->strict && self->matches->len > 0 ? 0 : GTK_INVALID_LIST_POSITION);
}

static void
take (GbCompletion *self, guint position)
{
  if (self->entry == NULL || self->matches == NULL || position >= self->matches->len)
    return;
  self->chosen = self->matches->pdata[position];
  self->setting = TRUE;
  gtk_editable_set_text (self->entry, self->chosen->text);
  gtk_editable_set_position (self->entry, -1);
  self->setting = FALSE;
  gb_completion_close (self);
  g_signal_emit (self, signals[CHOSEN], 0, self->chosen);
}

static void
activate_cb (GbCompletion *self, guint position)
{
  take (self, position);
}

/* The object --------------------------------------------------------------------------------------------- */

static void
gb_completion_dispose (GObject *object)
{
  GbCompletion *self = GB_COMPLETION (object);

  if (self->entry != NULL)
    g_signal_handlers_disconnect_by_data (self->entry, self);
  g_clear_weak_pointer (&self->entry);
  g_clear_pointer (&self->matches, g_ptr_array_unref);
  g_clear_pointer (&self->choices, g_ptr_array_unref);
  G_OBJECT_CLASS (gb_completion_parent_class)->dispose (object);
}

static void
gb_completion_class_init (GbCompletionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gb_completion_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_POINTER);
}

static void
gb_completion_init (GbCompletion *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  self->texts = gtk_string_list_new (NULL);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (self->texts));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  g_signal_connect_swapped (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), self);
  self->view = gtk_list_view_new (GTK_SELECTION_MODEL (self->selection), factory);
  gtk_list_view_set_single_click_activate (GTK_LIST_VIEW (self->view), TRUE);
  gtk_widget_set_can_focus (self->view, FALSE);
  g_signal_connect_swapped (self->view, "activate", G_CALLBACK (activate_cb), self);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 280);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->view);

  gtk_popover_set_child (GTK_POPOVER (self), scrolled);
  gtk_popover_set_autohide (GTK_POPOVER (self), FALSE);
  gtk_popover_set_has_arrow (GTK_POPOVER (self), FALSE);
  gtk_popover_set_position (GTK_POPOVER (self), GTK_POS_BOTTOM);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_START);
  gtk_widget_set_can_focus (GTK_WIDGET (self), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "menu");
  gtk_widget_add_css_class (GTK_WIDGET (self), "gb-completion");
}

GbCompletion *
gb_completion_new (GtkWidget *parent, GtkEditable *entry)
{
  GbCompletion *self = g_object_new (GB_TYPE_COMPLETION, NULL);

  g_set_weak_pointer (&self->entry, entry);
  g_signal_connect_object (entry, "changed", G_CALLBACK (text_changed_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_parent (GTK_WIDGET (self), parent);
  return self;
}

void
gb_completion_set_choices (GbCompletion *self, GPtrArray *choices, gboolean strict)
{
  gb_completion_close (self);
  self->chosen = NULL;
  g_clear_pointer (&self->matches, g_ptr_array_unref);
  g_clear_pointer (&self->choices, g_ptr_array_unref);
  self->choices = choices;
  self->strict = strict;
}

void
gb_completion_open (GbCompletion *self)
{
  const char *typed = gtk_editable_get_text (self->entry);

  if (self->choices == NULL || self->choices->len == 0)
    return;
  show_matches (self, gb_choices_match (self->choices, ""));
  pick_out (self, GTK_INVALID_LIST_POSITION);
  for (guint i = 0; i < self->matches->len; i++)
    if (strcmp (((const GbChoiceItem *) self->matches->pdata[i])->text, typed) == 0)
      {
        pick_out (self, i);
        break;
      }
}

void
gb_completion_close (GbCompletion *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self)))
    gtk_popover_popdown (GTK_POPOVER (self));
}

static void
walk (GbCompletion *self, int by)
{
  int n = (int) self->matches->len;
  guint at = gtk_single_selection_get_selected (self->selection);
  int to = at == GTK_INVALID_LIST_POSITION ? (by > 0 ? 0 : n - 1) : (int) at + by;

  if (n > 0)
    pick_out (self, (guint) CLAMP (to, 0, n - 1));
}

gboolean
gb_completion_key (GbCompletion *self, guint keyval, GdkModifierType state)
{
  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    {
      if ((keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down) && (state & GDK_ALT_MASK) != 0)
        {
          gb_completion_open (self);
          return TRUE;
        }
      return FALSE;
    }
  switch (keyval)
    {
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      walk (self, 1);
      return TRUE;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      walk (self, -1);
      return TRUE;
    case GDK_KEY_Page_Down:
      walk (self, PAGE);
      return TRUE;
    case GDK_KEY_Page_Up:
      walk (self, -PAGE);
      return TRUE;
    case GDK_KEY_Escape:
      gb_completion_close (self);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
    case GDK_KEY_ISO_Enter:
    case GDK_KEY_Tab:
      take (self, gtk_single_selection_get_selected (self->selection));
      return FALSE;
    default:
      return FALSE;
    }
}

const GbChoiceItem *
gb_completion_get_chosen (GbCompletion *self)
{
  const char *typed = self->entry != NULL ? gtk_editable_get_text (self->entry) : NULL;

  if (typed == NULL || self->choices == NULL)
    return NULL;
  if (self->chosen != NULL && strcmp (typed, self->chosen->text) == 0)
    return self->chosen;
  return gb_choices_find (self->choices, typed);
}
