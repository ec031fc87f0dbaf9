/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-complaint"

#include "complaint.h"

struct _GbComplaint
{
  GtkPopover parent_instance;
  GtkWidget *label;
  gboolean says;
};

G_DEFINE_FINAL_TYPE (GbComplaint, gb_complaint, GTK_TYPE_POPOVER)

static void
gb_complaint_class_init (GbComplaintClass *klass)
{
}

static void
gb_complaint_init (GbComplaint *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *icon = gtk_image_new_from_icon_name ("dialog-warning-symbolic");

  self->label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->label), 44);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), self->label);
  gtk_popover_set_child (GTK_POPOVER (self), box);
  gtk_popover_set_autohide (GTK_POPOVER (self), FALSE);
  gtk_popover_set_position (GTK_POPOVER (self), GTK_POS_BOTTOM);
  gtk_widget_set_can_focus (GTK_WIDGET (self), FALSE);
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (self), "gb-complaint");
}

GbComplaint *
gb_complaint_new (GtkWidget *parent)
{
  GbComplaint *self = g_object_new (GB_TYPE_COMPLAINT, NULL);

  gtk_widget_set_parent (GTK_WIDGET (self), parent);
  return self;
}

void
gb_complaint_say (GbComplaint *self, const char *sentence)
{
  self->says = sentence != NULL;
  if (sentence == NULL)
    {
      gtk_popover_popdown (GTK_POPOVER (self));
      return;
    }
  gtk_label_set_text (GTK_LABEL (self->label), sentence);
  gtk_popover_popup (GTK_POPOVER (self));
}

const char *
gb_complaint_get_sentence (GbComplaint *self)
{
  return self->says ? gtk_label_get_text (GTK_LABEL (self->label)) : NULL;
}
