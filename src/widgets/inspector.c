/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-inspector"

#include "inspector.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "field-editor.h"

/* Fields that stand under a heading of their own; the rest stand above all headings, in the order of the
 * table. */
typedef struct
{
  GbRecordKind kind;
  const char *heading;
  const char *const *fields;
  gboolean closed; /* seldom needed: folded away at first */
} Section;

static const char *const part_place[] = { "x", "y", "z", NULL };
static const char *const part_turns[] = { "turn_x", "turn_y", "turn_z", NULL };
static const char *const part_sure[] = { "basis", "spread", "place_spread", NULL };
static const char *const part_money[] = { "price", "category", NULL };
static const char *const notes[] = { "notes", NULL };
static const char *const stock_price[]
  = { "pack", "price", "supplier", "on_hand", "origin", "category", NULL };
static const char *const hull_place[] = { "x", "y", "z", NULL };
static const char *const load_sure[] = { "spread", NULL };
static const char *const condition_more[] = { "heeling_moment", "holding", NULL };
static const char *const tub_marks[] = { "fore_x", "fore_draught", "aft_x", "aft_draught", "heel", NULL };
static const char *const build_water[]
  = { "water", "salinity", "temperature", "water_density", "freeboard", NULL };
static const char *const build_margin[]
  = { "margin_estimated", "margin_calculated", "margin_weighed", "margin_mass", NULL };
static const char *const build_spread[] = { "spread_estimated", "spread_calculated", "place_spread", NULL };
static const char *const build_allowance[] = { "cutting_allowance", "cost_allowance", NULL };

static const Section sections[] = {
  { GB_RECORD_PART, N_ ("Place"), part_place, FALSE },
  { GB_RECORD_PART, N_ ("Turned"), part_turns, TRUE },
  { GB_RECORD_PART, N_ ("How sure"), part_sure, TRUE },
  { GB_RECORD_PART, N_ ("Money"), part_money, FALSE },
  { GB_RECORD_PART, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_MATERIAL, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_STOCK, N_ ("Price and shed"), stock_price, FALSE },
  { GB_RECORD_STOCK, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_HULL, N_ ("Place"), hull_place, FALSE },
  { GB_RECORD_HULL, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_CONDITION, N_ ("Wind, and swamped"), condition_more, FALSE },
  { GB_RECORD_CONDITION, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_LOAD, N_ ("How sure"), load_sure, TRUE },
  { GB_RECORD_LOAD, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_INCLINING, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_TUB, N_ ("Read off the model"), tub_marks, FALSE },
  { GB_RECORD_TUB, N_ ("Notes"), notes, FALSE },
  { GB_RECORD_BUILD, N_ ("Afloat"), build_water, FALSE },
  { GB_RECORD_BUILD, N_ ("Growth margin"), build_margin, FALSE },
  { GB_RECORD_BUILD, N_ ("How sure"), build_spread, FALSE },
  { GB_RECORD_BUILD, N_ ("Allowances"), build_allowance, FALSE },
  { GB_RECORD_BUILD, N_ ("Notes"), notes, FALSE },
};

/* One field with its label. */
typedef struct
{
  GtkWidget *row;
  GtkWidget *label;
  GtkWidget *editor;
  guint section; /* index of its box */
} Line;

struct _GbInspector
{
  GtkWidget parent_instance;
  GtkWidget *box;
  GArray *lines;   /* of Line */
  GPtrArray *tops; /* (element-type GtkWidget) a section with its heading; the first has none */

  GbProject *project;
  gulong changed_id;
  GbRecordKind kind; /* that the lines are made for; GB_N_RECORDS: none */
  GArray *ids;       /* of gint64 */
};

G_DEFINE_FINAL_TYPE (GbInspector, gb_inspector, GTK_TYPE_WIDGET)

/* Making the lines --------------------------------------------------------------------------------------- */

static const Section *
section_of (const GbField *field)
{
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    if (sections[i].kind == field->kind && g_strv_contains (sections[i].fields, field->name))
      return &sections[i];
  return NULL;
}

static GtkWidget *
make_label (const GbField *field)
{
  GtkWidget *label = gtk_label_new (_ (field->label));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 11);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 11);
  gtk_widget_set_tooltip_text (label, _ (field->help));
  gtk_widget_add_css_class (label, "dim-label");
  return label;
}

/* A note has its section's heading for a label, and all the width. */
static Line
make_line (const GbField *field, guint section)
{
  Line line = { .section = section };

  line.row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  line.editor = gb_field_editor_new (field);
  gtk_widget_set_hexpand (line.editor, TRUE);
  if (field->dim != GB_DIM_NOTE)
    {
      line.label = make_label (field);
      gtk_box_append (GTK_BOX (line.row), line.label);
    }
  gtk_box_append (GTK_BOX (line.row), line.editor);
  return line;
}

/* All labels are as wide as the widest. */
static void
align_labels (GbInspector *self)
{
  int widest = 0;

  for (guint i = 0; i < self->lines->len; i++)
    {
      GtkWidget *label = g_array_index (self->lines, Line, i).label;
      int width = 0;

      if (label != NULL)
        gtk_widget_measure (label, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
      widest = MAX (widest, width);
    }
  for (guint i = 0; i < self->lines->len; i++)
    if (g_array_index (self->lines, Line, i).label != NULL)
      gtk_widget_set_size_request (g_array_index (self->lines, Line, i).label, widest, -1);
}

static void
add_top (GbInspector *self, GtkWidget *top)
{
  g_ptr_array_add (self->tops, top);
  gtk_box_append (GTK_BOX (self->box), top);
}

/* The box that holds the lines of a section; made when it is first asked for. */
static GtkWidget *
section_box (GbInspector *self, const Section *section)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *top = box;

  if (section != NULL)
    {
      top = gtk_expander_new (_ (section->heading));
      gtk_expander_set_expanded (GTK_EXPANDER (top), !section->closed);
      gtk_expander_set_child (GTK_EXPANDER (top), box);
      gtk_widget_add_css_class (top, "gb-section");
      gtk_widget_set_margin_top (box, 6);
    }
  add_top (self, top);
  return box;
}

static void
add_fields (GbInspector *self, const Section *section)
{
  const GbRecordType *type = gb_record_type (self->kind);
  GtkWidget *box = section_box (self, section);

  for (guint i = 0; i < type->n_fields; i++)
    {
      const GbField *field = &type->fields[i];
      Line line;

      if (section_of (field) != section)
        continue;
      line = make_line (field, self->tops->len - 1);
      gtk_box_append (GTK_BOX (box), line.row);
      g_array_append_val (self->lines, line);
    }
}

static void
clear_lines (GbInspector *self)
{
  for (guint i = 0; i < self->tops->len; i++)
    gtk_box_remove (GTK_BOX (self->box), self->tops->pdata[i]);
  g_ptr_array_set_size (self->tops, 0);
  g_array_set_size (self->lines, 0);
}

static void
make_lines (GbInspector *self, GbRecordKind kind)
{
  clear_lines (self);
  self->kind = kind;
  add_fields (self, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (sections); i++)
    if (sections[i].kind == kind)
      add_fields (self, &sections[i]);
  align_labels (self);
}

/* Showing ------------------------------------------------------------------------------------------------ */

/* TRUE if the field matters for all the records that are shown. */
static gboolean
applies_to_all (GbInspector *self, const GbField *field)
{
  for (guint i = 0; i < self->ids->len; i++)
    {
      const GbRecord *record
        = gb_boat_get (gb_project_get_boat (self->project), self->kind, g_array_index (self->ids, gint64, i));

      if (record == NULL || !gb_field_applies (field, record))
        return FALSE;
    }
  return self->ids->len > 0;
}

static void
refresh (GbInspector *self)
{
  g_autofree gboolean *used = g_new0 (gboolean, self->tops->len);

  for (guint i = 0; i < self->lines->len; i++)
    {
      Line *line = &g_array_index (self->lines, Line, i);
      gboolean applies = applies_to_all (self, gb_field_editor_get_field (GB_FIELD_EDITOR (line->editor)));

      gtk_widget_set_visible (line->row, applies);
      if (applies)
        gb_field_editor_show (GB_FIELD_EDITOR (line->editor), self->project,
                              (const gint64 *) (gpointer) self->ids->data, self->ids->len);
      used[line->section] = used[line->section] || applies;
    }
  for (guint i = 0; i < self->tops->len; i++)
    gtk_widget_set_visible (self->tops->pdata[i], used[i]);
}

/* Records that are gone are let go, so that what is left still can be edited. */
static void
changed_cb (GbInspector *self)
{
  for (guint i = self->ids->len; i > 0; i--)
    if (gb_boat_get (gb_project_get_boat (self->project), self->kind,
                     g_array_index (self->ids, gint64, i - 1))
        == NULL)
      g_array_remove_index (self->ids, i - 1);
  refresh (self);
}

static void
set_project (GbInspector *self, GbProject *project)
{
  if (self->project == project)
    return;
  g_clear_signal_handler (&self->changed_id, self->project);
  g_set_object (&self->project, project);
  if (project != NULL)
    self->changed_id
      = g_signal_connect_object (project, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
}

void
gb_inspector_show (GbInspector *self, GbProject *project, GbRecordKind kind, const gint64 *ids, guint n_ids)
{
  set_project (self, project);
  if (kind != self->kind)
    make_lines (self, kind);
  g_array_set_size (self->ids, 0);
  if (project != NULL)
    g_array_append_vals (self->ids, ids, n_ids);
  refresh (self);
}

gboolean
gb_inspector_commit (GbInspector *self)
{
  gboolean kept = TRUE;

  for (guint i = 0; i < self->lines->len; i++)
    kept = gb_field_editor_commit (GB_FIELD_EDITOR (g_array_index (self->lines, Line, i).editor)) && kept;
  return kept;
}

GtkWidget *
gb_inspector_find (GbInspector *self, const char *field)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      Line *line = &g_array_index (self->lines, Line, i);

      if (gtk_widget_get_visible (line->row)
          && strcmp (gb_field_editor_get_field (GB_FIELD_EDITOR (line->editor))->name, field) == 0)
        return line->editor;
    }
  return NULL;
}

/* The widget --------------------------------------------------------------------------------------------- */

static gboolean
close_request_cb (GbInspector *self)
{
  gb_inspector_commit (self);
  return GDK_EVENT_PROPAGATE;
}

static void
gb_inspector_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gb_inspector_parent_class)->root (widget);
  if (GTK_IS_WINDOW (gtk_widget_get_root (widget)))
    g_signal_connect_object (gtk_widget_get_root (widget), "close-request", G_CALLBACK (close_request_cb),
                             widget, G_CONNECT_SWAPPED);
}

static void
gb_inspector_unroot (GtkWidget *widget)
{
  g_signal_handlers_disconnect_by_func (gtk_widget_get_root (widget), close_request_cb, widget);
  GTK_WIDGET_CLASS (gb_inspector_parent_class)->unroot (widget);
}

static void
gb_inspector_dispose (GObject *object)
{
  GbInspector *self = GB_INSPECTOR (object);

  set_project (self, NULL);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_array_set_size (self->lines, 0);
  g_ptr_array_set_size (self->tops, 0);
  G_OBJECT_CLASS (gb_inspector_parent_class)->dispose (object);
}

static void
gb_inspector_finalize (GObject *object)
{
  GbInspector *self = GB_INSPECTOR (object);

  g_array_unref (self->lines);
  g_array_unref (self->ids);
  g_ptr_array_unref (self->tops);
  G_OBJECT_CLASS (gb_inspector_parent_class)->finalize (object);
}

static void
gb_inspector_class_init (GbInspectorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_inspector_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_inspector_finalize;
  widget_class->root = gb_inspector_root;
  widget_class->unroot = gb_inspector_unroot;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "gb-inspector");
}

static void
gb_inspector_init (GbInspector *self)
{
  self->kind = GB_N_RECORDS;
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->lines = g_array_new (FALSE, FALSE, sizeof (Line));
  self->tops = g_ptr_array_new ();
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
gb_inspector_new (void)
{
  return g_object_new (GB_TYPE_INSPECTOR, NULL);
}
