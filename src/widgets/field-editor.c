/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-field-editor"

#include "field-editor.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "boat/outline.h"
#include "boat/part-size.h"
#include "boat/quantity.h"
#include "complaint.h"
#include "completion.h"
#include "outline-editor.h"

struct _GbFieldEditor
{
  GtkWidget parent_instance;
  const GbField *field;
  GtkWidget *input;   /* entry, drop-down, check button, text view or button */
  GtkWidget *outside; /* child that holds it: itself, or a frame with scrollbars */
  GbCompletion *completion;
  GbComplaint *complaint;

  GbProject *project;
  GArray *ids;   /* of gint64 */
  char *shown;   /* the text as it was shown, so that only a change is kept */
  gboolean busy; /* the input is being filled, or its entry kept */
};

G_DEFINE_FINAL_TYPE (GbFieldEditor, gb_field_editor, GTK_TYPE_WIDGET)

static const GbRecord *
first_record (GbFieldEditor *self)
{
  if (self->project == NULL || self->ids->len == 0)
    return NULL;
  return gb_boat_get (gb_project_get_boat (self->project), self->field->kind, g_array_index (self->ids, gint64, 0));
}

static gboolean
same_value (const GbField *field, const GbRecord *a, const GbRecord *b)
{
  g_auto (GbValue) u = gb_field_get (field, a);
  g_auto (GbValue) v = gb_field_get (field, b);

  if (g_strcmp0 (u.typed, v.typed) != 0)
    return FALSE;
  if (u.storage == GB_STORAGE_TEXT)
    return g_strcmp0 (u.text, v.text) == 0;
  if (u.storage == GB_STORAGE_INTEGER)
    return u.integer == v.integer;
  return u.real == v.real || (isnan (u.real) && isnan (v.real));
}

/* TRUE if the records do not all hold the same. */
static gboolean
is_mixed (GbFieldEditor *self)
{
  const GbRecord *first = first_record (self);

  for (guint i = 1; first != NULL && i < self->ids->len; i++)
    {
      const GbRecord *other
        = gb_boat_get (gb_project_get_boat (self->project), self->field->kind, g_array_index (self->ids, gint64, i));

      if (other != NULL && !same_value (self->field, first, other))
        return TRUE;
    }
  return FALSE;
}

/* Saying what is wrong -------------------------------------------------------------------------------------------------- */

static void
complain (GbFieldEditor *self, const char *sentence)
{
  if (sentence == NULL && self->complaint == NULL)
    return;
  if (self->completion != NULL)
    gb_completion_close (self->completion);
  if (self->complaint == NULL)
    self->complaint = gb_complaint_new (GTK_WIDGET (self));
  gb_complaint_say (self->complaint, sentence);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->input, "error");
  else
    gtk_widget_remove_css_class (self->input, "error");
}

const char *
gb_field_editor_get_complaint (GbFieldEditor *self)
{
  return self->complaint != NULL ? gb_complaint_get_sentence (self->complaint) : NULL;
}

/* Entries --------------------------------------------------------------------------------------------------------------- */

static char *
entry_text (GbFieldEditor *self, const GbRecord *record)
{
  char *text;

  if (!gb_field_has_choices (self->field))
    return gb_field_edit_text (self->field, record, gb_project_get_build (self->project));
  text = gb_field_is_unknown (self->field, record) ? NULL : gb_project_display (self->project, self->field, record);
  return text != NULL ? text : g_strdup ("");
}

static void
set_shown (GbFieldEditor *self, char *text)
{
  g_free (self->shown);
  self->shown = text;
}

static char *
text_of_view (GbFieldEditor *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static char *
typed_text (GbFieldEditor *self)
{
  return GTK_IS_TEXT_VIEW (self->input) ? text_of_view (self) : g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->input)));
}

static void
put_text (GbFieldEditor *self, const char *text)
{
  self->busy = TRUE;
  if (GTK_IS_TEXT_VIEW (self->input))
    gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input)), text, -1);
  else
    gtk_editable_set_text (GTK_EDITABLE (self->input), text);
  self->busy = FALSE;
  complain (self, NULL);
}

static gboolean
is_half_typed (GbFieldEditor *self)
{
  g_autofree char *typed = typed_text (self);

  return self->shown != NULL && strcmp (typed, self->shown) != 0;
}

/* What a part has from its stock where it says nothing itself; NULL: nothing. */
static char *
inherited_text (GbFieldEditor *self, const GbRecord *record)
{
  const GbBoat *boat = gb_project_get_boat (self->project);
  g_autoptr (GbRecord) filled = NULL;
  GbPart *part;
  GbPartSize size;

  if (record->kind != GB_RECORD_PART || ((const GbPart *) record)->stock == 0 || !gb_field_is_unknown (self->field, record))
    return NULL;
  size = gb_part_size (boat, (const GbPart *) record);
  filled = gb_record_copy (record);
  part = (GbPart *) filled;
  part->material = size.material;
  part->width = size.width;
  part->thickness = size.thickness;
  part->diameter = size.diameter;
  part->wall = size.wall;
  part->linear_mass = size.linear_mass;
  part->unit_mass = size.unit_mass;
  return gb_field_is_unknown (self->field, filled) ? NULL : gb_project_display (self->project, self->field, filled);
}

static void
show_in_text (GbFieldEditor *self)
{
  const GbRecord *record = first_record (self);
  gboolean mixed = is_mixed (self);
  g_autofree char *text = record != NULL && !mixed ? entry_text (self, record) : NULL;
  g_autofree char *inherited = record != NULL && !mixed ? inherited_text (self, record) : NULL;

  if (!GTK_IS_TEXT_VIEW (self->input))
    gtk_entry_set_placeholder_text (GTK_ENTRY (self->input), mixed ? _ ("various") : inherited);
  set_shown (self, text != NULL ? g_steal_pointer (&text) : g_strdup (""));
  put_text (self, self->shown);
}

static gboolean
keep (GbFieldEditor *self, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean kept;

  self->busy = TRUE;
  kept = gb_project_enter (self->project, self->field->kind, (const gint64 *) (gpointer) self->ids->data, self->ids->len, self->field,
                           text, &error);
  self->busy = FALSE;
  if (!kept)
    complain (self, error->message);
  return kept;
}

gboolean
gb_field_editor_commit (GbFieldEditor *self)
{
  g_autofree char *text = NULL;

  if (self->busy || self->project == NULL || self->ids->len == 0
      || !(GTK_IS_ENTRY (self->input) || GTK_IS_TEXT_VIEW (self->input)) || !is_half_typed (self))
    return TRUE;
  text = typed_text (self);
  if (!keep (self, text))
    return FALSE;
  show_in_text (self);
  return TRUE;
}

static void
activate_cb (GbFieldEditor *self)
{
  if (gb_field_editor_commit (self))
    gtk_widget_child_focus (GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self))), GTK_DIR_TAB_FORWARD);
}

/* Another window having the focus is not leaving. */
static void
focus_left_cb (GbFieldEditor *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus == NULL || !gtk_widget_is_ancestor (focus, GTK_WIDGET (self)))
    gb_field_editor_commit (self);
}

static void
text_changed_cb (GbFieldEditor *self)
{
  if (!self->busy)
    complain (self, NULL);
}

static gboolean
key_pressed_cb (GbFieldEditor *self, guint keyval, guint keycode, GdkModifierType state)
{
  if (self->completion != NULL && gb_completion_key (self->completion, keyval, state))
    return GDK_EVENT_STOP;
  if (keyval == GDK_KEY_Escape && is_half_typed (self))
    {
      put_text (self, self->shown);
      return GDK_EVENT_STOP;
    }
  return GDK_EVENT_PROPAGATE;
}

static void
watch_text (GbFieldEditor *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (self->input, focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->input, keys);
}

static void
open_list_cb (GbFieldEditor *self)
{
  if (self->project == NULL)
    return;
  gtk_widget_grab_focus (self->input);
  gb_completion_open (self->completion);
}

static void
chosen_cb (GbFieldEditor *self)
{
  gb_field_editor_commit (self);
}

static void
make_entry (GbFieldEditor *self)
{
  self->input = gtk_entry_new ();
  gtk_editable_set_width_chars (GTK_EDITABLE (self->input), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->input), 12);
  if (gb_field_storage (self->field) == GB_STORAGE_REAL || self->field->dim == GB_DIM_MONEY)
    gtk_widget_add_css_class (self->input, "numeric");
  g_signal_connect_swapped (self->input, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->input, "changed", G_CALLBACK (text_changed_cb), self);
  watch_text (self);
  if (self->field->dim != GB_DIM_REF)
    return;
  gtk_entry_set_icon_from_icon_name (GTK_ENTRY (self->input), GTK_ENTRY_ICON_SECONDARY, "pan-down-symbolic");
  gtk_entry_set_icon_tooltip_text (GTK_ENTRY (self->input), GTK_ENTRY_ICON_SECONDARY, _ ("Show the list"));
  g_signal_connect_swapped (self->input, "icon-press", G_CALLBACK (open_list_cb), self);
  self->completion = gb_completion_new (GTK_WIDGET (self), GTK_EDITABLE (self->input));
  g_signal_connect_swapped (self->completion, "chosen", G_CALLBACK (chosen_cb), self);
}

static void
make_text_view (GbFieldEditor *self)
{
  self->input = gtk_text_view_new ();
  gtk_text_view_set_wrap_mode (GTK_TEXT_VIEW (self->input), GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (self->input), FALSE);
  g_object_set (self->input, "top-margin", 6, "bottom-margin", 6, "left-margin", 6, "right-margin", 6, NULL);
  self->outside = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->outside), 72);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->outside), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->outside), self->input);
  gtk_widget_add_css_class (self->outside, "gb-note");
  g_signal_connect_swapped (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->input)), "changed", G_CALLBACK (text_changed_cb), self);
  watch_text (self);
}

/* Choices and flags ----------------------------------------------------------------------------------------------------- */

static void
set_all (GbFieldEditor *self, gint64 value)
{
  GbValue whole = GB_VALUE_INTEGER (value);
  g_autoptr (GError) error = NULL;

  if (self->busy || self->project == NULL || self->ids->len == 0)
    return;
  if (!gb_project_set_all (self->project, self->field->kind, (const gint64 *) (gpointer) self->ids->data, self->ids->len, self->field,
                           &whole, &error))
    complain (self, error->message);
}

static void
selected_cb (GbFieldEditor *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->input));

  if (selected != GTK_INVALID_LIST_POSITION)
    set_all (self, selected);
}

static void
choice_setup_cb (GtkListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (list_item, label);
}

static void
choice_bind_cb (GtkListItemFactory *factory, GtkListItem *list_item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (list_item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (list_item)));
}

/* A long choice must not widen all that it stands in. */
static void
let_shrink (GtkDropDown *drop_down)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (choice_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (choice_bind_cb), NULL);
  gtk_drop_down_set_factory (drop_down, factory);
}

static void
make_drop_down (GbFieldEditor *self)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  for (guint i = 0; i < gb_field_n_choices (self->field); i++)
    g_ptr_array_add (labels, (gpointer) _ (self->field->choices[i].label));
  g_ptr_array_add (labels, NULL);
  self->input = gtk_drop_down_new_from_strings ((const char *const *) labels->pdata);
  let_shrink (GTK_DROP_DOWN (self->input));
  g_signal_connect_swapped (self->input, "notify::selected", G_CALLBACK (selected_cb), self);
}

static void
toggled_cb (GbFieldEditor *self)
{
  if (self->busy)
    return;
  gtk_check_button_set_inconsistent (GTK_CHECK_BUTTON (self->input), FALSE);
  set_all (self, gtk_check_button_get_active (GTK_CHECK_BUTTON (self->input)));
}

static void
make_check (GbFieldEditor *self)
{
  self->input = gtk_check_button_new ();
  gtk_widget_set_halign (self->input, GTK_ALIGN_START);
  g_signal_connect_swapped (self->input, "toggled", G_CALLBACK (toggled_cb), self);
}

static void
show_in_choice (GbFieldEditor *self)
{
  const GbRecord *record = first_record (self);
  gboolean mixed = is_mixed (self);
  gint64 value = record != NULL ? gb_field_get_integer (self->field, record) : 0;

  self->busy = TRUE;
  if (GTK_IS_DROP_DOWN (self->input))
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->input), record == NULL || mixed ? GTK_INVALID_LIST_POSITION : (guint) value);
  else
    {
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->input), value != 0 && !mixed);
      gtk_check_button_set_inconsistent (GTK_CHECK_BUTTON (self->input), mixed);
    }
  self->busy = FALSE;
}

/* Outlines -------------------------------------------------------------------------------------------------------------- */

static void
outline_done_cb (GbFieldEditor *self, const char *text)
{
  keep (self, text);
}

static void
draw_cb (GbFieldEditor *self)
{
  const GbRecord *record = first_record (self);
  GtkWidget *window;

  if (record == NULL)
    return;
  window = gb_outline_editor_new (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), gb_project_get_build (self->project)->units,
                                  gb_field_get_text (self->field, record));
  g_signal_connect_object (window, "done", G_CALLBACK (outline_done_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (window));
}

static void
show_outline (GbFieldEditor *self)
{
  const GbRecord *record = first_record (self);
  const char *text = record != NULL ? gb_field_get_text (self->field, record) : NULL;
  g_autoptr (GbOutline) outline = text != NULL ? gb_outline_parse (text, NULL) : NULL;
  g_autofree char *area = NULL;

  if (outline != NULL)
    area = gb_quantity_format (gb_outline_properties (outline).area, GB_DIM_AREA, gb_project_get_build (self->project)->units);
  gtk_button_set_label (GTK_BUTTON (self->input), area != NULL ? area : text != NULL ? _ ("Mend…") : _ ("Draw…"));
  gtk_widget_set_sensitive (self->input, self->ids->len == 1);
}

static void
make_outline_button (GbFieldEditor *self)
{
  self->input = gtk_button_new ();
  g_signal_connect_swapped (self->input, "clicked", G_CALLBACK (draw_cb), self);
}

/* The widget ------------------------------------------------------------------------------------------------------------ */

static void
make_input (GbFieldEditor *self)
{
  switch (self->field->dim)
    {
    case GB_DIM_CHOICE:
      make_drop_down (self);
      break;
    case GB_DIM_FLAG:
      make_check (self);
      break;
    case GB_DIM_NOTE:
      make_text_view (self);
      break;
    case GB_DIM_OUTLINE:
      make_outline_button (self);
      break;
    default:
      make_entry (self);
      break;
    }
  if (self->outside == NULL)
    self->outside = self->input;
  gtk_widget_set_hexpand (self->outside, TRUE);
  gtk_widget_set_tooltip_text (self->input, _ (self->field->help));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->input), GTK_ACCESSIBLE_PROPERTY_LABEL, _ (self->field->label),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, _ (self->field->help), -1);
  gtk_widget_set_parent (self->outside, GTK_WIDGET (self));
}

/* The list is made when it may be wanted: a large build has long ones. */
static void
fill_choices_cb (GbFieldEditor *self)
{
  if (self->project != NULL)
    gb_completion_set_choices (self->completion, gb_choices_for_field (self->project, self->field), FALSE);
}

static void
gb_field_editor_dispose (GObject *object)
{
  GbFieldEditor *self = GB_FIELD_EDITOR (object);

  if (self->completion != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->completion)));
  if (self->complaint != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->complaint)));
  g_clear_pointer (&self->outside, gtk_widget_unparent);
  self->input = NULL;
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_field_editor_parent_class)->dispose (object);
}

static void
gb_field_editor_finalize (GObject *object)
{
  GbFieldEditor *self = GB_FIELD_EDITOR (object);

  g_array_unref (self->ids);
  g_free (self->shown);
  G_OBJECT_CLASS (gb_field_editor_parent_class)->finalize (object);
}

static void
gb_field_editor_class_init (GbFieldEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_field_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_field_editor_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gb-field");
}

static void
gb_field_editor_init (GbFieldEditor *self)
{
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
}

GtkWidget *
gb_field_editor_new (const GbField *field)
{
  GbFieldEditor *self = g_object_new (GB_TYPE_FIELD_EDITOR, NULL);

  self->field = field;
  make_input (self);
  if (self->completion != NULL)
    {
      GtkEventController *focus = gtk_event_controller_focus_new ();

      g_signal_connect_swapped (focus, "enter", G_CALLBACK (fill_choices_cb), self);
      gtk_widget_add_controller (self->input, focus);
    }
  return GTK_WIDGET (self);
}

const GbField *
gb_field_editor_get_field (GbFieldEditor *self)
{
  return self->field;
}

GtkWidget *
gb_field_editor_get_input (GbFieldEditor *self)
{
  return self->input;
}

static gboolean
same_ids (GbFieldEditor *self, GbProject *project, const gint64 *ids, guint n_ids)
{
  return self->project == project && self->ids->len == n_ids
         && (n_ids == 0 || memcmp (self->ids->data, ids, n_ids * sizeof *ids) == 0);
}

void
gb_field_editor_show (GbFieldEditor *self, GbProject *project, const gint64 *ids, guint n_ids)
{
  gboolean is_text = GTK_IS_ENTRY (self->input) || GTK_IS_TEXT_VIEW (self->input);

  if (same_ids (self, project, ids, n_ids) && (self->busy || (is_text && is_half_typed (self))))
    return;
  g_set_object (&self->project, project);
  g_array_set_size (self->ids, 0);
  g_array_append_vals (self->ids, ids, n_ids);
  if (project != NULL)
    gtk_widget_set_sensitive (self->input, gb_project_get_read_only_reason (project) == NULL);
  if (self->field->dim == GB_DIM_OUTLINE)
    show_outline (self);
  else if (is_text)
    show_in_text (self);
  else
    show_in_choice (self);
}
