/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-divided-layout"

#include "divided-layout.h"

typedef struct
{
  GtkPaned *paned; /* lives in the page */
  double share;
  int wanted;
  int stood; /* where it was once the room was shared out */
} Divider;

struct _GbDividedLayout
{
  GtkLayoutManager parent_instance;

  GArray *dividers;  /* of Divider */
  int width, height; /* as last shared out */
};

G_DEFINE_FINAL_TYPE (GbDividedLayout, gb_divided_layout, GTK_TYPE_LAYOUT_MANAGER)

static int
extent (const Divider *divider, int width, int height)
{
  gboolean across
      = gtk_orientable_get_orientation (GTK_ORIENTABLE (divider->paned)) == GTK_ORIENTATION_HORIZONTAL;

  return across ? width : height;
}

static void
share_out (GbDividedLayout *self, int width, int height)
{
  for (guint i = 0; i < self->dividers->len; i++)
    {
      Divider *divider = &g_array_index (self->dividers, Divider, i);
      int stands = gtk_paned_get_position (divider->paned);
      int room = extent (divider, width, height);

      if (self->width > 0 && stands != divider->stood)
        {
          divider->share = stands / (double) extent (divider, self->width, self->height);
          divider->wanted = 0;
        }
      gtk_paned_set_position (divider->paned,
                              CLAMP ((int) (divider->share * room), 0, MAX (room - divider->wanted, 0)));
    }
}

static void
gb_divided_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height, int baseline)
{
  GbDividedLayout *self = GB_DIVIDED_LAYOUT (manager);
  gboolean resized = width != self->width || height != self->height;

  if (resized)
    share_out (self, width, height);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_should_layout (child))
      gtk_widget_size_allocate (child, &(GtkAllocation){ 0, 0, width, height }, baseline);
  for (guint i = 0; i < self->dividers->len && resized; i++)
    {
      Divider *divider = &g_array_index (self->dividers, Divider, i);

      divider->stood = gtk_paned_get_position (divider->paned);
    }
  self->width = width;
  self->height = height;
}

static void
gb_divided_layout_measure (GtkLayoutManager *manager,
                           GtkWidget *widget,
                           GtkOrientation orientation,
                           int for_size,
                           int *minimum,
                           int *natural,
                           int *minimum_baseline,
                           int *natural_baseline)
{
  *minimum = *natural = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int least, wished;

      gtk_widget_measure (child, orientation, for_size, &least, &wished, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, wished);
    }
}

static GtkSizeRequestMode
gb_divided_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

void
gb_divided_layout_add (GbDividedLayout *self, GtkPaned *divider, double share, int wanted)
{
  Divider added = { divider, share, wanted, 0 };

  g_return_if_fail (GB_IS_DIVIDED_LAYOUT (self));
  g_return_if_fail (GTK_IS_PANED (divider));
  g_array_append_val (self->dividers, added);
}

static void
gb_divided_layout_finalize (GObject *object)
{
  g_array_unref (GB_DIVIDED_LAYOUT (object)->dividers);
  G_OBJECT_CLASS (gb_divided_layout_parent_class)->finalize (object);
}

static void
gb_divided_layout_class_init (GbDividedLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gb_divided_layout_finalize;
  layout_class->allocate = gb_divided_layout_allocate;
  layout_class->measure = gb_divided_layout_measure;
  layout_class->get_request_mode = gb_divided_layout_get_request_mode;
}

static void
gb_divided_layout_init (GbDividedLayout *self)
{
  self->dividers = g_array_new (FALSE, FALSE, sizeof (Divider));
}

GtkLayoutManager *
gb_divided_layout_new (void)
{
  return g_object_new (GB_TYPE_DIVIDED_LAYOUT, NULL);
}
