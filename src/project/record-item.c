/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-project"

#include "project/project-private.h"
#include "project/record-hub.h"

struct _GbRecordItem
{
  GObject parent_instance;

  GbProject *project; /* holds the hub that knows this item */
  GbRecordKind kind;
  gint64 id;
  guint version;
  GbRecordList *children; /* NULL until asked for */
};

enum
{
  PROP_0,
  PROP_VERSION,
  N_PROPS
};
static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (GbRecordItem, gb_record_item, G_TYPE_OBJECT)

static void
gb_record_item_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_VERSION)
    g_value_set_uint (value, GB_RECORD_ITEM (object)->version);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
gb_record_item_finalize (GObject *object)
{
  GbRecordItem *self = GB_RECORD_ITEM (object);

  if (self->project != NULL)
    gb_record_hub_remove_item (self->project->hub, self);
  g_clear_object (&self->children);
  g_clear_object (&self->project);
  G_OBJECT_CLASS (gb_record_item_parent_class)->finalize (object);
}

static void
gb_record_item_class_init (GbRecordItemClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->get_property = gb_record_item_get_property;
  object_class->finalize = gb_record_item_finalize;
  properties[PROP_VERSION]
    = g_param_spec_uint ("version", NULL, NULL, 0, G_MAXUINT, 0,
                         G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gb_record_item_init (GbRecordItem *self)
{
}

GbRecordItem *
gb_record_item_get (GbProject *project, GbRecordKind kind, gint64 id)
{
  GbRecordHub *hub = gb_project_get_hub (project);
  GbRecordItem *self = gb_record_hub_find (hub, kind, id);

  if (self != NULL)
    return g_object_ref (self);
  self = g_object_new (GB_TYPE_RECORD_ITEM, NULL);
  self->project = g_object_ref (project);
  self->kind = kind;
  self->id = id;
  gb_record_hub_add_item (hub, self);
  return self;
}

void
gb_record_item_tell (GbRecordItem *self)
{
  self->version++;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VERSION]);
}

GbProject *
gb_record_item_get_project (GbRecordItem *self)
{
  return self->project;
}

GbRecordKind
gb_record_item_get_kind (GbRecordItem *self)
{
  return self->kind;
}

gint64
gb_record_item_get_id (GbRecordItem *self)
{
  return self->id;
}

const GbRecord *
gb_record_item_get_record (GbRecordItem *self)
{
  return gb_boat_get (gb_project_get_boat (self->project), self->kind, self->id);
}

guint
gb_record_item_get_version (GbRecordItem *self)
{
  return self->version;
}

/* The kind that lives in @kind; GB_N_RECORDS if none does. The top-level parts live in the boat. */
static GbRecordKind
kind_inside (GbRecordKind kind)
{
  if (kind == GB_RECORD_BUILD)
    return GB_RECORD_PART;
  for (guint k = 0; k < GB_N_RECORDS; k++)
    if (gb_record_type (k)->owner == kind)
      return k;
  return GB_N_RECORDS;
}

GListModel *
gb_record_item_get_children (GbRecordItem *self)
{
  GbRecordKind inside = kind_inside (self->kind);
  const GbRecord *record = gb_record_item_get_record (self);

  if (inside == GB_N_RECORDS || record == NULL)
    return NULL;
  if (self->kind == GB_RECORD_PART && ((const GbPart *) record)->kind != GB_KIND_GROUP)
    return NULL;
  if (self->children == NULL)
    self->children = gb_record_list_new (self->project, inside, self->kind == GB_RECORD_BUILD ? 0 : self->id);
  return G_LIST_MODEL (self->children);
}
