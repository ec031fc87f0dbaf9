/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-import-head"

#include "import-head.h"

#include <glib/gi18n-lib.h>

#include "boat/money.h"
#include "boat/quantity.h"

struct _GbImportHead
{
  GtkWidget parent_instance;
  int width;
  GtkWidget *box;
  GtkWidget *heading;

  const GPtrArray *fields; /* (element-type GbField) */
  GtkDropDown *field_input;
  GtkDropDown *unit_input;
  GtkLabel *unit_label; /* where there is nothing to choose */
  GStrv units;          /* what the drop-down holds */
  const GbField *units_for;
  gboolean filling;
};

enum
{
  FIELD_CHOSEN,
  UNIT_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (GbImportHead, gb_import_head, GTK_TYPE_WIDGET)

/* Units ------------------------------------------------------------------------------------------------------------- */

/* What tables of parts are written in. Others that a heading names are taken as well. */
static const char *const *
usual_units (GbDimension dim)
{
  static const char *const length[] = { "mm", "cm", "m", "in", "ft", NULL };
  static const char *const area[] = { "mm²", "cm²", "m²", "in²", "ft²", NULL };
  static const char *const volume[] = { "ml", "l", "cm³", "m³", "in³", "ft³", "gal", NULL };
  static const char *const mass[] = { "g", "kg", "t", "oz", "lb", NULL };
  static const char *const density[] = { "kg/m³", "g/cm³", "lb/ft³", NULL };
  static const char *const areal[] = { "g/m²", "kg/m²", "oz/yd²", "oz/ft²", "lb/ft²", NULL };
  static const char *const linear[] = { "g/m", "kg/m", "oz/ft", "lb/ft", NULL };
  static const char *const coverage[] = { "m²/l", "ft²/gal", NULL };
  static const char *const moment[] = { "kg·m", "lb·ft", NULL };
  static const char *const angle[] = { "°", "rad", NULL };
  static const char *const share[] = { "%", NULL };
  static const char *const none[] = { NULL };

  switch (dim)
    {
    case GB_DIM_LENGTH:
      return length;
    case GB_DIM_AREA:
      return area;
    case GB_DIM_VOLUME:
      return volume;
    case GB_DIM_MASS:
      return mass;
    case GB_DIM_DENSITY:
      return density;
    case GB_DIM_AREAL:
      return areal;
    case GB_DIM_LINEAR:
      return linear;
    case GB_DIM_COVERAGE:
      return coverage;
    case GB_DIM_MOMENT:
      return moment;
    case GB_DIM_ANGLE:
      return angle;
    case GB_DIM_RATIO:
      return share;
    default:
      return none;
    }
}

/* TRUE if both say the same: "inches" and "in", "€" and "EUR". */
static gboolean
same_unit (const GbField *field, const char *a, const char *b, const GbBuild *build)
{
  g_autofree char *one_a = g_strconcat ("1 ", a, NULL);
  g_autofree char *one_b = g_strconcat ("1 ", b, NULL);
  gint64 money_a, money_b;
  double real_a, real_b;

  if (g_ascii_strcasecmp (a, b) == 0)
    return TRUE;
  if (field->dim == GB_DIM_MONEY)
    return gb_money_parse (one_a, build->currency, &money_a, NULL) && gb_money_parse (one_b, build->currency, &money_b, NULL);
  return gb_quantity_parse (one_a, field->dim, build->units, &real_a, NULL)
         && gb_quantity_parse (one_b, field->dim, build->units, &real_b, NULL) && real_a == real_b;
}

/* The unit that bare numbers have when nothing is said. */
static const char *
own_unit (const GbField *field, const GbBuild *build)
{
  if (field->dim == GB_DIM_MONEY)
    return build->currency;
  return gb_field_storage (field) == GB_STORAGE_REAL ? gb_quantity_unit (field->dim, build->units) : "";
}

/* The place of @unit among @units; their number if it is not there. */
static guint
find_unit (const GbField *field, const char *const *units, const char *unit, const GbBuild *build)
{
  guint at = 0;

  while (units[at] != NULL && !same_unit (field, units[at], unit, build))
    at++;
  return at;
}

/* The units to choose from: the build's own, the usual ones, and @unit. */
static GStrv
list_units (const GbField *field, const char *unit, const GbBuild *build)
{
  g_autoptr (GStrvBuilder) units = g_strv_builder_new ();
  const char *const *usual = usual_units (field->dim);
  const char *const own[] = { field->dim == GB_DIM_MONEY ? build->currency : NULL, NULL };

  g_strv_builder_addv (units, (const char **) own);
  g_strv_builder_addv (units, (const char **) usual);
  if (find_unit (field, own, unit, build) == g_strv_length ((GStrv) own)
      && find_unit (field, usual, unit, build) == g_strv_length ((GStrv) usual))
    g_strv_builder_add (units, unit);
  return g_strv_builder_end (units);
}

static void
set_units (GbImportHead *self, const GbField *field, GStrv units)
{
  g_autoptr (GtkStringList) model = gtk_string_list_new ((const char *const *) units);

  gtk_drop_down_set_model (self->unit_input, G_LIST_MODEL (model));
  g_strfreev (self->units);
  self->units = units;
  self->units_for = field;
}

/* A list that holds the unit stays as it is: this may come of a choice from that very list. */
static void
show_units (GbImportHead *self, const GbField *field, const char *unit, const GbBuild *build)
{
  const char *set = unit != NULL || field == NULL ? unit : own_unit (field, build);
  guint at = 0, n = 0;

  if (set != NULL && *set != '\0')
    {
      if (self->units_for != field
          || find_unit (field, (const char *const *) self->units, set, build) == g_strv_length (self->units))
        set_units (self, field, list_units (field, set, build));
      at = find_unit (field, (const char *const *) self->units, set, build);
      n = g_strv_length (self->units);
    }
  if (n > 1)
    gtk_drop_down_set_selected (self->unit_input, at);
  gtk_label_set_text (self->unit_label, n == 1 ? self->units[0] : "");
  gtk_widget_set_visible (GTK_WIDGET (self->unit_input), n > 1);
  gtk_widget_set_visible (GTK_WIDGET (self->unit_label), n <= 1);
}

/* Fields ------------------------------------------------------------------------------------------------------------ */

static void
show_field (GbImportHead *self, const GbField *field)
{
  g_autofree char *tooltip = field != NULL ? g_strdup_printf ("%s: %s", _ (field->label), _ (field->help))
                                           : g_strdup (_ ("This column is left out. Choose what it holds to bring it in."));
  guint at = 0;

  if (field != NULL && g_ptr_array_find ((GPtrArray *) self->fields, field, &at))
    at++;
  gtk_drop_down_set_selected (self->field_input, at);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->field_input), tooltip);
  if (field == NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self), "left-out");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "left-out");
}

void
gb_import_head_show (GbImportHead *self, const GbField *field, const char *unit, const GbBuild *build)
{
  g_return_if_fail (GB_IS_IMPORT_HEAD (self));
  g_return_if_fail (self->fields != NULL);
  self->filling = TRUE;
  show_field (self, field);
  show_units (self, field, unit, build);
  self->filling = FALSE;
}

static void
field_selected_cb (GbImportHead *self)
{
  guint at = gtk_drop_down_get_selected (self->field_input);

  if (!self->filling && at != GTK_INVALID_LIST_POSITION)
    g_signal_emit (self, signals[FIELD_CHOSEN], 0, at > 0 ? self->fields->pdata[at - 1] : NULL);
}

static void
unit_selected_cb (GbImportHead *self)
{
  guint at = gtk_drop_down_get_selected (self->unit_input);

  if (!self->filling && at != GTK_INVALID_LIST_POSITION)
    g_signal_emit (self, signals[UNIT_CHOSEN], 0, self->units[at]);
}

/* Making ------------------------------------------------------------------------------------------------------------ */

static void
setup_choice_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_list_item_set_child (item, label);
}

static void
bind_choice_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

/* A drop-down whose button may be narrower than its words; its list shows them whole. */
static GtkDropDown *
make_drop_down (GListModel *model)
{
  GtkExpression *string = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");
  GtkWidget *drop_down = gtk_drop_down_new (model != NULL ? g_object_ref (model) : NULL, string);
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_choice_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_choice_cb), NULL);
  gtk_drop_down_set_list_factory (GTK_DROP_DOWN (drop_down), gtk_drop_down_get_factory (GTK_DROP_DOWN (drop_down)));
  gtk_drop_down_set_factory (GTK_DROP_DOWN (drop_down), factory);
  return GTK_DROP_DOWN (drop_down);
}

static GtkWidget *
find_search_entry (GtkWidget *widget)
{
  GtkWidget *found = GTK_IS_SEARCH_ENTRY (widget) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_search_entry (child);
  return found;
}

/* By itself its search entry must be gone to before anything can be typed; so what is typed in the list goes there. */
static void
search_by_typing (GtkDropDown *drop_down)
{
  GtkWidget *entry = find_search_entry (GTK_WIDGET (drop_down));

  gtk_drop_down_set_enable_search (drop_down, TRUE);
  if (entry == NULL)
    return;
  gtk_search_entry_set_search_delay (GTK_SEARCH_ENTRY (entry), 0);
  gtk_search_entry_set_key_capture_widget (GTK_SEARCH_ENTRY (entry), gtk_widget_get_ancestor (entry, GTK_TYPE_POPOVER));
}

static void
add_inputs (GbImportHead *self, const char *heading, GListModel *names)
{
  /* Translators: for a screen reader; the heading of a column in a table. */
  g_autofree char *field_label = g_strdup_printf (_ ("What the column “%s” holds"), heading);
  g_autofree char *unit_label = g_strdup_printf (_ ("Unit of the column “%s”"), heading);

  self->field_input = make_drop_down (names);
  search_by_typing (self->field_input);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->field_input), GTK_ACCESSIBLE_PROPERTY_LABEL, field_label, -1);
  self->unit_input = make_drop_down (NULL);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->unit_input), _ ("The unit of numbers that do not say theirs"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->unit_input), GTK_ACCESSIBLE_PROPERTY_LABEL, unit_label, -1);
  gtk_widget_set_visible (GTK_WIDGET (self->unit_input), FALSE);
  self->unit_label = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->unit_label), "unit");
  gtk_widget_add_css_class (GTK_WIDGET (self->unit_label), "dim-label");
  gtk_label_set_xalign (self->unit_label, 0);

  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->field_input));
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->unit_input));
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->unit_label));
  g_signal_connect_object (self->field_input, "notify::selected", G_CALLBACK (field_selected_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->unit_input, "notify::selected", G_CALLBACK (unit_selected_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
gb_import_head_new (const char *heading, int width, const GPtrArray *fields, GListModel *names)
{
  GbImportHead *self = g_object_new (GB_TYPE_IMPORT_HEAD, NULL);

  self->width = width;
  self->fields = fields;
  gtk_label_set_text (GTK_LABEL (self->heading), heading);
  gtk_widget_set_tooltip_text (self->heading, *heading != '\0' ? heading : NULL);
  if (fields != NULL)
    add_inputs (self, heading, names);
  return GTK_WIDGET (self);
}

GtkDropDown *
gb_import_head_get_field_input (GbImportHead *self)
{
  return self->field_input;
}

GtkDropDown *
gb_import_head_get_unit_input (GbImportHead *self)
{
  return self->unit_input;
}

/* Object ------------------------------------------------------------------------------------------------------------ */

/* Exactly as wide as the column below it. */
static void
gb_import_head_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline,
                        int *natural_baseline)
{
  GbImportHead *self = GB_IMPORT_HEAD (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = self->width;
  else
    gtk_widget_measure (self->box, orientation, self->width, minimum, natural, NULL, NULL);
}

static void
gb_import_head_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  gtk_widget_allocate (GB_IMPORT_HEAD (widget)->box, width, height, baseline, NULL);
}

static void
gb_import_head_dispose (GObject *object)
{
  GbImportHead *self = GB_IMPORT_HEAD (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (gb_import_head_parent_class)->dispose (object);
}

static void
gb_import_head_finalize (GObject *object)
{
  g_strfreev (GB_IMPORT_HEAD (object)->units);
  G_OBJECT_CLASS (gb_import_head_parent_class)->finalize (object);
}

static void
gb_import_head_class_init (GbImportHeadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_import_head_dispose;
  G_OBJECT_CLASS (klass)->finalize = gb_import_head_finalize;
  widget_class->measure = gb_import_head_measure;
  widget_class->size_allocate = gb_import_head_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "gb-import-head");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[FIELD_CHOSEN] = g_signal_new ("field-chosen", GB_TYPE_IMPORT_HEAD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                        G_TYPE_POINTER);
  signals[UNIT_CHOSEN] = g_signal_new ("unit-chosen", GB_TYPE_IMPORT_HEAD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                       G_TYPE_STRING);
}

static void
gb_import_head_init (GbImportHead *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  self->heading = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->heading, "heading");
  gtk_label_set_xalign (GTK_LABEL (self->heading), 0);
  gtk_label_set_ellipsize (GTK_LABEL (self->heading), PANGO_ELLIPSIZE_END);
  gtk_label_set_single_line_mode (GTK_LABEL (self->heading), TRUE);
  gtk_box_append (GTK_BOX (self->box), self->heading);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}
