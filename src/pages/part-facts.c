/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-facts"

#include "part-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/part-sums.h"
#include "project/verbs-weigh.h"
#include "widgets/complaint.h"
#include "widgets/working-popover.h"

struct _GbPartFacts
{
  GtkBox parent_instance;
  GbProject *project;
  gint64 part; /* 0: the boat */
  gboolean single;

  GtkLabel *title;
  GtkWidget *mass_row;
  GtkLabel *mass;
  GtkLabel *origin; /* estimated, calculated, weighed */
  GtkWidget *trouble_row;
  GtkLabel *trouble;
  GtkWidget *centre_row;
  GtkLabel *centre;
  GtkLabel *cost;
  GtkWidget *scale_row;
  GtkWidget *scale;
  GtkWidget *on_scale;
  GtkLabel *scale_unit;
  GbComplaint *complaint;
};

G_DEFINE_FINAL_TYPE (GbPartFacts, gb_part_facts, GTK_TYPE_BOX)

static GbUnits
units_of (GbPartFacts *self)
{
  return gb_project_get_build (self->project)->units;
}

static const GbPart *
part_of (GbPartFacts *self)
{
  return gb_boat_part (gb_project_get_boat (self->project), self->part);
}

static const GbMass *
mass_of (GbPartFacts *self)
{
  const GbRollup *rollup = &gb_project_get_findings (self->project)->rollup;
  const GbPart *part = part_of (self);

  return part != NULL ? gb_rollup_part (rollup, part) : &rollup->boat;
}

/* Showing ------------------------------------------------------------------------------------------------ */

static void
show_mass (GbPartFacts *self, const GbMass *mass)
{
  g_autofree char *text
    = gb_quantity_format_with_sd (mass->mass, mass->mass_sd, GB_DIM_MASS, units_of (self));

  gtk_label_set_text (self->mass, isnan (mass->mass) ? _ ("No mass yet") : text);
}

/* How the mass is known, and what the scale made of it. */
static void
show_origin (GbPartFacts *self, const GbMass *mass)
{
  static const char *const words[GB_N_AS] = { N_ ("estimated"), N_ ("calculated"), N_ ("weighed") };
  const GbPart *part = part_of (self);
  g_autofree char *text = NULL;

  if (mass->weighed && !isnan (mass->listed_mass))
    {
      g_autofree char *listed = gb_quantity_format (mass->listed_mass, GB_DIM_MASS, units_of (self));

      /* Translators: %s is a mass. */
      text = g_strdup_printf (_ ("weighed; the take-off said %s"), listed);
    }
  else if (mass->weighed || (part != NULL && part->kind == GB_KIND_PART && !isnan (mass->mass)))
    text = g_strdup (_ (words[mass->weighed ? GB_AS_WEIGHED : mass->as]));
  else if (mass->n_parts > 0)
    text = g_strdup_printf (ngettext ("sum of %u part", "sum of %u parts", mass->n_parts), mass->n_parts);
  gtk_label_set_text (self->origin, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->origin), text != NULL);
}

static void
show_trouble (GbPartFacts *self, const GbMass *mass)
{
  g_autofree char *counted = NULL;
  const char *sentence = NULL;

  if (mass->trouble != GB_TROUBLE_NONE)
    sentence = gb_trouble_sentence (mass->trouble);
  else if (mass->n_no_mass > 0)
    sentence = counted = g_strdup_printf (
      ngettext ("%u part has no mass yet.", "%u parts have no mass yet.", mass->n_no_mass), mass->n_no_mass);
  else if (mass->n_no_place > 0)
    sentence = counted = g_strdup_printf (
      ngettext ("%u part has no place yet, so it does not count for the centre.",
                "%u parts have no place yet, so they do not count for the centre.", mass->n_no_place),
      mass->n_no_place);
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (self->trouble_row, sentence != NULL);
}

static void
show_centre (GbPartFacts *self, const GbMass *mass)
{
  g_autofree char *x = gb_quantity_format_bare (mass->x, GB_DIM_LENGTH, units_of (self));
  g_autofree char *y = gb_quantity_format_bare (mass->y, GB_DIM_LENGTH, units_of (self));
  g_autofree char *z = gb_quantity_format_bare (mass->z, GB_DIM_LENGTH, units_of (self));
  /* Translators: the centre of gravity: three lengths, and their unit. */
  g_autofree char *text = g_strdup_printf (_ ("Centre x %s, y %s, z %s %s"), x, y, z,
                                           gb_quantity_unit (GB_DIM_LENGTH, units_of (self)));

  gtk_label_set_text (self->centre, text);
  gtk_widget_set_visible (self->centre_row, !isnan (mass->x) || !isnan (mass->z));
}

static void
show_scale (GbPartFacts *self)
{
  const GbPart *part = part_of (self);
  gboolean several = part != NULL && part->kind == GB_KIND_PART && (part->pair != 0 || part->quantity > 1);

  gtk_label_set_text (self->scale_unit, gb_quantity_unit (GB_DIM_MASS, units_of (self)));
  gtk_widget_set_visible (self->on_scale, several);
  if (!several)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->on_scale), GB_ON_SCALE_ALL);
  gtk_widget_set_sensitive (self->scale_row, gb_project_get_read_only_reason (self->project) == NULL);
}

static void
show_one (GbPartFacts *self)
{
  const GbPart *part = part_of (self);
  const GbMass *mass = mass_of (self);
  g_autofree char *cost = part != NULL ? gb_part_sums_cost (self->project, part) : NULL;

  gtk_label_set_text (self->title, part != NULL ? part->name : gb_project_get_title (self->project));
  show_mass (self, mass);
  show_origin (self, mass);
  show_trouble (self, mass);
  show_centre (self, mass);
  gtk_label_set_text (self->cost, cost != NULL ? cost : "");
  gtk_widget_set_visible (GTK_WIDGET (self->cost), cost != NULL);
  show_scale (self);
}

static void
show_several (GbPartFacts *self, const gint64 *ids, guint n_ids)
{
  g_autofree char *words = gb_part_sums_selected (self->project, ids, n_ids);

  gtk_label_set_text (self->title, words);
  gtk_widget_set_visible (GTK_WIDGET (self->origin), FALSE);
  gtk_widget_set_visible (self->trouble_row, FALSE);
  gtk_widget_set_visible (self->centre_row, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->cost), FALSE);
}

void
gb_part_facts_show (GbPartFacts *self, GbProject *project, const gint64 *ids, guint n_ids, gboolean boat)
{
  gint64 part = n_ids == 1 && !boat ? ids[0] : 0;

  g_set_object (&self->project, project);
  if (part != self->part)
    gtk_editable_set_text (GTK_EDITABLE (self->scale), "");
  self->part = part;
  self->single = project != NULL && (boat || n_ids == 1);
  gtk_widget_set_visible (GTK_WIDGET (self), project != NULL && (boat || n_ids > 0));
  gtk_widget_set_visible (self->mass_row, self->single);
  gtk_widget_set_visible (self->scale_row, self->single);
  if (self->single)
    show_one (self);
  else if (project != NULL && n_ids > 1)
    show_several (self, ids, n_ids);
}

/* Doing -------------------------------------------------------------------------------------------------- */

static void
complain (GbPartFacts *self, const char *sentence)
{
  if (sentence == NULL && self->complaint == NULL)
    return;
  if (self->complaint == NULL)
    self->complaint = gb_complaint_new (self->scale_row);
  gb_complaint_say (self->complaint, sentence);
  if (sentence != NULL)
    gtk_widget_add_css_class (self->scale, "error");
  else
    gtk_widget_remove_css_class (self->scale, "error");
}

static void
weigh_cb (GbPartFacts *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->scale));
  g_autoptr (GError) error = NULL;
  double mass;

  if (self->project == NULL || *text == '\0')
    return;
  if (!gb_quantity_parse (text, GB_DIM_MASS, units_of (self), &mass, &error)
      || gb_project_weigh (self->project, self->part, gb_today (), mass,
                           gtk_drop_down_get_selected (GTK_DROP_DOWN (self->on_scale)), &error)
           == 0)
    {
      complain (self, error->message);
      return;
    }
  gtk_editable_set_text (GTK_EDITABLE (self->scale), "");
}

static void
scale_changed_cb (GbPartFacts *self)
{
  complain (self, NULL);
}

static void
mass_how_cb (GbPartFacts *self, GtkWidget *button)
{
  gb_working_popover_show (button, gb_working_mass (gb_project_get_boat (self->project),
                                                    gb_project_get_findings (self->project), self->part));
}

static void
centre_how_cb (GbPartFacts *self, GtkWidget *button)
{
  gb_working_popover_show (button, gb_working_centre (gb_project_get_boat (self->project),
                                                      gb_project_get_findings (self->project), self->part));
}

/* The widget --------------------------------------------------------------------------------------------- */

static void
gb_part_facts_dispose (GObject *object)
{
  GbPartFacts *self = GB_PART_FACTS (object);

  if (self->complaint != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->complaint)));
  g_clear_object (&self->project);
  gtk_widget_dispose_template (GTK_WIDGET (self), GB_TYPE_PART_FACTS);
  G_OBJECT_CLASS (gb_part_facts_parent_class)->dispose (object);
}

static void
gb_part_facts_class_init (GbPartFactsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gb_part_facts_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/garboard/Garboard/part-facts.ui");
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, title);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, mass_row);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, mass);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, origin);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, trouble_row);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, trouble);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, centre_row);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, centre);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, cost);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, scale_row);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, scale);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, on_scale);
  gtk_widget_class_bind_template_child (widget_class, GbPartFacts, scale_unit);
  gtk_widget_class_bind_template_callback (widget_class, weigh_cb);
  gtk_widget_class_bind_template_callback (widget_class, scale_changed_cb);
}

static void
add_how (GbPartFacts *self, GtkWidget *row, GCallback callback)
{
  GtkWidget *how = gb_how_button_new ();

  g_signal_connect_object (how, "clicked", callback, self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (row), how);
}

static void
gb_part_facts_init (GbPartFacts *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_how (self, self->mass_row, G_CALLBACK (mass_how_cb));
  add_how (self, self->centre_row, G_CALLBACK (centre_how_cb));
}
