/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-afloat-facts"

#include "afloat-facts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "boat/deviation.h"
#include "boat/quantity.h"
#include "engine/working.h"
#include "pages/afloat-words.h"
#include "pages/fact-list.h"

typedef enum
{
  FACT_STATE,
  FACT_TOTAL,
  FACT_DRAUGHTS,
  FACT_TRIM,
  FACT_HEEL,
  FACT_FREEBOARD,
  FACT_WHERE,
  FACT_CHANCE,
  FACT_ROOM,
  FACT_RESERVE,
  /* the second list from here on */
  FACT_GM,
  FACT_GM_LONG,
  FACT_LIQUIDS,
  FACT_PER_CM,
  FACT_PER_TRIM,
  FACT_PER_DEGREE,
  FACT_PLANE,
  FACT_GRAVITY,
  FACT_BUOYANCY,
  FACT_FLOTATION,
  FACT_HEIGHTS,
  N_FACTS
} Fact;
#define FIRST_OF_SECOND FACT_GM

struct _GbAfloatFacts
{
  GtkBox parent_instance;

  GbProject *project; /* borrowed */
  gint64 condition;
  GtkLabel *notice;
  GbFactRow *facts[N_FACTS];
};

G_DEFINE_FINAL_TYPE (GbAfloatFacts, gb_afloat_facts, GTK_TYPE_BOX)

static GbWorking *
ask_working (gpointer data)
{
  GbAfloatFacts *self = data;

  return gb_working_afloat (gb_project_get_boat (self->project), gb_project_get_findings (self->project),
                            self->condition);
}

static const GbFactSpec specs[N_FACTS] = {
  [FACT_STATE] = { N_ ("In short"), NULL },
  [FACT_TOTAL] = { N_ ("Weighs in all"), ask_working },
  [FACT_DRAUGHTS] = { N_ ("Draught forward, amidships, aft"), ask_working },
  [FACT_TRIM] = { N_ ("Trim"), ask_working },
  [FACT_HEEL] = { N_ ("Heel"), ask_working },
  [FACT_FREEBOARD] = { N_ ("Least freeboard"), ask_working },
  [FACT_WHERE] = { N_ ("Where that is"), NULL },
  [FACT_CHANCE] = { N_ ("Chance of passing the flotation limit"), ask_working },
  [FACT_ROOM] = { N_ ("Room aboard, to the flotation limit"), ask_working },
  [FACT_RESERVE] = { N_ ("Reserve of buoyancy"), ask_working },
  [FACT_GM] = { N_ ("Stiffness across: GM"), ask_working },
  [FACT_GM_LONG] = { N_ ("Stiffness lengthwise: GM"), ask_working },
  [FACT_LIQUIDS] = { N_ ("Of GM, lost to loose liquids"), ask_working },
  [FACT_PER_CM] = { N_ ("For 1 cm deeper"), ask_working },
  [FACT_PER_TRIM] = { N_ ("For 1 cm of trim"), ask_working },
  [FACT_PER_DEGREE] = { N_ ("For 1° of heel"), ask_working },
  [FACT_PLANE] = { N_ ("Waterplane"), ask_working },
  [FACT_GRAVITY] = { N_ ("Centre of gravity"), ask_working },
  [FACT_BUOYANCY] = { N_ ("Centre of buoyancy"), ask_working },
  [FACT_FLOTATION] = { N_ ("Centre of the waterplane"), ask_working },
  [FACT_HEIGHTS] = { N_ ("Above the keel: KB, BM, KG"), ask_working },
};

/* Words -----------------------------------------------------------------------------------------------------
 */

static char *
room_words (const GbAfloat *afloat, GbUnits units)
{
  g_autofree char *mass = gb_quantity_format (afloat->room, GB_DIM_MASS, units);
  g_autofree char *place = gb_afloat_place_words (afloat->room_at.x, afloat->room_at.y, units);

  if (!(afloat->room > 0) || isnan (afloat->room_at.x))
    return g_steal_pointer (&mass);
  /* Translators: a mass, and on a line of its own where it brings the boat level. */
  return g_strdup_printf (_ ("%s, level at\n%s"), mass, place);
}

static char *
quantity (double value, GbDimension dim, GbUnits units)
{
  return gb_quantity_format (value, dim, units);
}

/* Showing ---------------------------------------------------------------------------------------------------
 */

static void
show_floating (GbAfloatFacts *self, const GbAfloat *a, const GbBuild *build, const GbEdgeSet *edges)
{
  GbUnits units = build->units;
  gboolean passed = FALSE;
  char *state = gb_afloat_state_words (a, build, &passed);

  gb_fact_list_set (self->facts[FACT_STATE], state, passed);
  gb_fact_list_set (self->facts[FACT_TOTAL],
                    gb_quantity_format_with_sd (a->total, a->total_sd, GB_DIM_MASS, units), FALSE);
  gb_fact_list_set (self->facts[FACT_DRAUGHTS],
                    gb_afloat_lengths_words (a->draught_fore, a->draught_mid, a->draught_aft, units), FALSE);
  gb_fact_list_set (self->facts[FACT_TRIM], gb_afloat_trim_words (a->trim), FALSE);
  gb_fact_list_set (self->facts[FACT_HEEL], gb_afloat_heel_words (a->heel), FALSE);
  gb_fact_list_set (self->facts[FACT_FREEBOARD], gb_length_format (a->least.freeboard, units),
                    a->least.freeboard < build->freeboard);
  gb_fact_list_set (self->facts[FACT_WHERE], gb_afloat_edge_words (a, edges, units), FALSE);
  gb_fact_list_set (self->facts[FACT_CHANCE], gb_afloat_chance_words (a->chance), a->chance > GB_TOO_LIKELY);
  gb_fact_list_set (self->facts[FACT_ROOM], room_words (a, units), a->left < 0);
  gb_fact_list_set (self->facts[FACT_RESERVE], quantity (a->reserve, GB_DIM_VOLUME, units), FALSE);
}

static void
show_stiffness (GbAfloatFacts *self, const GbAfloat *a, GbUnits units)
{
  gb_fact_list_set (self->facts[FACT_GM], gb_length_format (a->gm, units), a->gm < 0);
  gb_fact_list_set (self->facts[FACT_GM_LONG], gb_length_format (a->gm_long, units), FALSE);
  gb_fact_list_set (self->facts[FACT_LIQUIDS], gb_length_format (a->free_surface, units), FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->facts[FACT_LIQUIDS]), a->free_surface > 0);
  gb_fact_list_set (self->facts[FACT_PER_CM], quantity (a->per_cm, GB_DIM_MASS, units), FALSE);
  gb_fact_list_set (self->facts[FACT_PER_TRIM], quantity (a->trim_moment, GB_DIM_MOMENT, units), FALSE);
  gb_fact_list_set (self->facts[FACT_PER_DEGREE], quantity (a->heel_moment, GB_DIM_MOMENT, units), FALSE);
  gb_fact_list_set (self->facts[FACT_PLANE], quantity (a->waterplane, GB_DIM_AREA, units), FALSE);
  gb_fact_list_set (self->facts[FACT_GRAVITY], gb_afloat_point_words (a->gravity, units), FALSE);
  gb_fact_list_set (self->facts[FACT_BUOYANCY], gb_afloat_point_words (a->buoyancy, units), FALSE);
  gb_fact_list_set (self->facts[FACT_FLOTATION],
                    gb_afloat_place_words (a->flotation.x, a->flotation.y, units), FALSE);
  gb_fact_list_set (self->facts[FACT_HEIGHTS], gb_afloat_lengths_words (a->kb, a->bm, a->kg, units), FALSE);
}

/* Why she does not float, and what is wrong with the loads. */
static void
show_notice (GbAfloatFacts *self, const GbAfloat *afloat)
{
  g_autoptr (GString) text = g_string_new (afloat->sentence);

  for (guint i = 0; i < afloat->troubles->len; i++)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "",
                            (const char *) afloat->troubles->pdata[i]);
  gtk_label_set_text (self->notice, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->notice), text->len > 0);
}

void
gb_afloat_facts_show (GbAfloatFacts *self, GbProject *project, const GbAfloat *afloat)
{
  const GbBuild *build;

  g_return_if_fail (GB_IS_AFLOAT_FACTS (self));
  self->project = project;
  gtk_widget_set_sensitive (GTK_WIDGET (self), project != NULL && afloat != NULL);
  if (project == NULL || afloat == NULL)
    return;
  self->condition = afloat->condition;
  build = gb_project_get_build (project);
  show_notice (self, afloat);
  show_floating (self, afloat, build, &gb_project_get_findings (project)->edges);
  show_stiffness (self, afloat, build->units);
}

static void
gb_afloat_facts_class_init (GbAfloatFactsClass *klass)
{
}

static void
gb_afloat_facts_init (GbAfloatFacts *self)
{
  GtkWidget *floating = gb_fact_list_new (NULL, specs, FIRST_OF_SECOND, self, self->facts);
  GtkWidget *stiffness = gb_fact_list_new (NULL, specs + FIRST_OF_SECOND, N_FACTS - FIRST_OF_SECOND, self,
                                           self->facts + FIRST_OF_SECOND);
  GtkWidget *caution;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->notice = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->notice, TRUE);
  gtk_label_set_xalign (self->notice, 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->notice), "notice");
  gtk_widget_set_visible (GTK_WIDGET (self->notice), FALSE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->notice));
  gtk_box_append (GTK_BOX (self), gb_fact_lists_new (floating, stiffness));
  caution = gb_quiet_label_new (gb_caution_afloat ());
  gtk_widget_set_margin_start (caution, 12);
  gtk_widget_set_margin_end (caution, 12);
  gtk_widget_set_margin_bottom (caution, 6);
  gtk_box_append (GTK_BOX (self), caution);
}

GtkWidget *
gb_afloat_facts_new (void)
{
  return g_object_new (GB_TYPE_AFLOAT_FACTS, NULL);
}
