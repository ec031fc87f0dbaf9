/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-cells"

#include "import-cells.h"

#include <glib/gi18n-lib.h>

static void
set_class (GtkWidget *widget, const char *name, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

static GtkWidget *
make_label (void)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  return label;
}

static void
set_text (GtkWidget *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (GTK_LABEL (label)), text))
    gtk_label_set_text (GTK_LABEL (label), text);
}

static GtkWidget *
make_line_cell (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = make_label ();

  gtk_widget_add_css_class (box, "cell");
  gtk_widget_add_css_class (label, "numeric");
  gtk_label_set_xalign (GTK_LABEL (label), 1);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (box), gtk_image_new ());
  gtk_box_append (GTK_BOX (box), label);
  return box;
}

static void
fill_line (GtkWidget *cell, const GbImport *import, guint row, guint column)
{
  gboolean refused = gb_import_refusal (import, row) != NULL;
  const char *icon = refused ? "dialog-warning-symbolic" : "object-select-symbolic";
  GtkWidget *image = gtk_widget_get_first_child (cell);
  g_autofree char *line = g_strdup_printf ("%u", gb_import_line (import, row));

  set_text (gtk_widget_get_last_child (cell), line);
  if (g_strcmp0 (gtk_image_get_icon_name (GTK_IMAGE (image)), icon) == 0)
    return;
  gtk_image_set_from_icon_name (GTK_IMAGE (image), icon);
  gtk_accessible_update_property (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_PROPERTY_LABEL, refused ? _ ("Refused") : _ ("Comes in"), -1);
  set_class (image, "error", refused);
  set_class (image, "dim-label", !refused);
  set_class (cell, "refused", refused);
}

const GbImportCellType gb_import_line_cell = { make_line_cell, fill_line };

/* A sentence has room for three lines. */
static GtkWidget *
make_outcome_cell (void)
{
  GtkWidget *label = make_label ();

  gtk_widget_add_css_class (label, "cell");
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_lines (GTK_LABEL (label), 3);
  return label;
}

static void
fill_outcome (GtkWidget *cell, const GbImport *import, guint row, guint column)
{
  const char *refusal = gb_import_refusal (import, row);
  g_autofree char *outcome = refusal == NULL ? gb_import_outcome (import, row) : g_strdup (refusal);

  set_text (cell, outcome);
  set_class (cell, "error", refusal != NULL);
  set_class (cell, "refused", refusal != NULL);
}

const GbImportCellType gb_import_outcome_cell = { make_outcome_cell, fill_outcome };

/* A label would lay its text out to find its size: too dear for some thousand cells, most of which are never seen. */
static GtkWidget *
make_text_cell (void)
{
  GtkInscription *inscription = GTK_INSCRIPTION (gtk_inscription_new (""));

  gtk_widget_add_css_class (GTK_WIDGET (inscription), "cell");
  gtk_inscription_set_min_chars (inscription, 0);
  gtk_inscription_set_text_overflow (inscription, GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  return GTK_WIDGET (inscription);
}

/* One line, and no more of it than fits any column. */
static char *
one_line (const char *text)
{
  const char *end = text;

  for (guint n = 0; *end != '\0' && n < GB_IMPORT_MOST_CHARACTERS; n++)
    end = g_utf8_next_char (end);
  return g_strdelimit (*end != '\0' ? g_strdup_printf ("%.*s…", (int) (end - text), text) : g_strdup (text), "\n\t", ' ');
}

static gboolean
is_number (const GbField *field)
{
  return field != NULL && (gb_field_storage (field) == GB_STORAGE_REAL || field->dim == GB_DIM_MONEY);
}

static void
fill_text (GtkWidget *cell, const GbImport *import, guint row, guint column)
{
  const GbField *field = gb_import_get_field (import, column);
  g_autofree char *text = one_line (gb_import_cell (import, row, column));

  gtk_inscription_set_text (GTK_INSCRIPTION (cell), text);
  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), is_number (field) ? 1 : 0);
  set_class (cell, "numeric", is_number (field));
  set_class (cell, "left-out", field == NULL);
  set_class (cell, "refused", gb_import_refusal (import, row) != NULL);
}

const GbImportCellType gb_import_text_cell = { make_text_cell, fill_text };

static gboolean
is_cut (GtkInscription *cell)
{
  return g_utf8_strlen (gtk_inscription_get_text (cell), -1) * GB_IMPORT_CHARACTER_WIDTH > gtk_widget_get_width (GTK_WIDGET (cell));
}

const char *
gb_import_cell_cut_text (GtkWidget *cell)
{
  if (GTK_IS_LABEL (cell) && pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (cell))))
    return gtk_label_get_text (GTK_LABEL (cell));
  if (GTK_IS_INSCRIPTION (cell) && is_cut (GTK_INSCRIPTION (cell)))
    return gtk_inscription_get_text (GTK_INSCRIPTION (cell));
  return NULL;
}
