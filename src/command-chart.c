/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-command-line"

/* Charts on the command line: which condition and load they show, what they are found from, and their bytes.
 */

#include "command-line-private.h"

#include "charts/chart.h"
#include "engine/study.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

/* A chart's size, in points. */
#define CHART_WIDTH 800
#define CHART_HEIGHT 520

int
gb_command_chart_by_name (const char *name)
{
  for (guint i = 0; i < GB_N_CHARTS; i++)
    if (strcmp (gb_chart_kind_name (i), name) == 0)
      return (int) i;
  return -1;
}

gboolean
gb_command_chart_takes (int kind, const char *option)
{
  switch (kind)
    {
    case GB_CHART_CREW:
      return TRUE;
    case GB_CHART_FLOATING:
    case GB_CHART_FREEBOARD:
    case GB_CHART_RIGHTING:
    case GB_CHART_SWAMPED:
      return strcmp (option, "condition") == 0;
    default:
      return FALSE;
    }
}

/* What is shown ------------------------------------------------------------------------------------------ */

/* The names of @records, for a complaint: each of them once. */
static char *
list_titles (const GPtrArray *records)
{
  g_autoptr (GPtrArray) titles = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < records->len; i++)
    {
      g_autofree char *title = gb_record_dup_title (records->pdata[i]);

      if (!g_ptr_array_find_with_equal_func (titles, title, g_str_equal, NULL))
        g_ptr_array_add (titles, g_steal_pointer (&title));
    }
  g_ptr_array_add (titles, NULL);
  return g_strjoinv (", ", (char **) titles->pdata);
}

static const GbRecord *
find_titled (const GPtrArray *records, const char *wanted)
{
  g_autofree char *folded = g_utf8_casefold (wanted, -1);

  for (guint i = 0; i < records->len; i++)
    {
      g_autofree char *title = gb_record_dup_title (records->pdata[i]), *other = g_utf8_casefold (title, -1);

      if (strcmp (folded, other) == 0)
        return records->pdata[i];
    }
  return NULL;
}

/* The condition that --condition names, or the first; NULL where there is none. FALSE with a sentence for a
 * name that is not there. */
static gboolean
choose_condition (const GbBoat *boat, GHashTable *options, const GbRecord **condition)
{
  const GPtrArray *conditions = gb_boat_roots (boat, GB_RECORD_CONDITION);
  const char *name = g_hash_table_lookup (options, "condition");
  g_autofree char *names = NULL;

  *condition = name != NULL          ? find_titled (conditions, name)
               : conditions->len > 0 ? conditions->pdata[0]
                                     : NULL;
  if (name == NULL || *condition != NULL)
    return TRUE;
  names = list_titles (conditions);
  gb_command_complain (GB_EXIT_USAGE, _ ("There is no condition “%s”. There is: %s."), name, names);
  return FALSE;
}

/* Somebody is more likely to move than a thing is. */
static const GbRecord *
likely_to_move (const GPtrArray *loads)
{
  for (guint i = 0; i < loads->len; i++)
    if (((const GbLoad *) loads->pdata[i])->kind == GB_LOAD_PERSON)
      return loads->pdata[i];
  return loads->len > 0 ? loads->pdata[0] : NULL;
}

static void
complain_of_load (const GbBoat *boat, const GbRecord *condition, const char *name)
{
  const GPtrArray *loads
    = condition != NULL ? gb_record_children (condition) : gb_boat_all (boat, GB_RECORD_LOAD);
  g_autofree char *names = list_titles (loads), *title = NULL;

  if (condition == NULL && loads->len == 0)
    gb_command_complain (GB_EXIT_USAGE, _ ("There is no load “%s”: there is none in any condition."), name);
  else if (condition == NULL)
    gb_command_complain (GB_EXIT_USAGE, _ ("There is no load “%s” in any condition. There is: %s."), name,
                         names);
  if (condition == NULL)
    return;
  title = gb_record_dup_title (condition);
  /* Translators: the names of a load and of a condition. */
  if (loads->len == 0)
    gb_command_complain (GB_EXIT_USAGE, _ ("There is no load “%s” in “%s”, where there is none at all."), name,
                         title);
  else
    gb_command_complain (GB_EXIT_USAGE, _ ("There is no load “%s” in “%s”. There is: %s."), name, title,
                         names);
}

/* The load that --load names: in the condition that --condition names, or in the first that has it, which
 * becomes the *@condition. FALSE with a sentence for a name that is not there. */
static gboolean
find_load (const GbBoat *boat, GHashTable *options, const char *name, const GbRecord **condition,
           const GbRecord **load)
{
  const GPtrArray *conditions = gb_boat_roots (boat, GB_RECORD_CONDITION);
  gboolean is_given = g_hash_table_contains (options, "condition");

  *load = is_given ? find_titled (gb_record_children (*condition), name) : NULL;
  for (guint i = 0; !is_given && *load == NULL && i < conditions->len; i++)
    {
      *load = find_titled (gb_record_children (conditions->pdata[i]), name);
      if (*load != NULL)
        *condition = conditions->pdata[i];
    }
  if (*load == NULL)
    complain_of_load (boat, is_given ? *condition : NULL, name);
  return *load != NULL;
}

static gboolean
choose_load (const GbBoat *boat, GHashTable *options, const GbRecord **condition, const GbRecord **load)
{
  const char *name = g_hash_table_lookup (options, "load");

  if (name != NULL)
    return find_load (boat, options, name, condition, load);
  *load = *condition != NULL ? likely_to_move (gb_record_children (*condition)) : NULL;
  return TRUE;
}

/* Its bytes ---------------------------------------------------------------------------------------------- */

static GBytes *
chart_text (GbChart *chart)
{
  char *text = g_strconcat (gb_chart_title (chart), "\n", gb_chart_subtitle (chart), "\n\n",
                            gb_chart_description (chart), "\n", NULL);

  return g_bytes_new_take (text, strlen (text));
}

/* The chart's file, which is made in the temporary folder and taken from there. */
static GBytes *
chart_file (GbChart *chart, const char *format, GError **error)
{
  g_autofree char *path = NULL;
  g_autofree char *contents = NULL;
  gboolean made;
  gsize length;
  int fd = g_file_open_tmp ("garboard-chart-XXXXXX", &path, error);

  if (fd < 0)
    return NULL;
  close (fd);
  made = gb_chart_export (chart, path, format, CHART_WIDTH, CHART_HEIGHT, GB_CHART_LIGHT, error)
         && g_file_get_contents (path, &contents, &length, error);
  g_unlink (path);
  return made ? g_bytes_new_take (g_steal_pointer (&contents), length) : NULL;
}

static GbCrewMap *
find_map (const GbBoat *boat, const GbFindings *f, const GbRecord *condition, const GbRecord *load)
{
  g_autoptr (GbCase) floating = NULL;

  if (load == NULL)
    return NULL;
  floating = gb_case_new (boat, &f->hulls, &f->edges, &f->rollup, &f->flotation, condition->id);
  return gb_crew_map_find (floating, load->id, NULL, NULL, NULL);
}

static GBytes *
draw (GbProject *project, GbChartKind kind, const char *format, const GbRecord *condition,
      const GbRecord *load, GError **error)
{
  const GbBoat *boat = gb_project_get_boat (project);
  const GbFindings *findings = gb_project_get_findings (project);
  gint64 id = condition != NULL ? condition->id : 0;
  gboolean studied = kind == GB_CHART_RIGHTING || kind == GB_CHART_SWAMPED;
  g_autoptr (GbHistory) history = kind == GB_CHART_HISTORY ? gb_history_find (boat, NULL, NULL) : NULL;
  g_autoptr (GbStudy) study = studied ? gb_study_find (boat, findings, id, NULL, NULL) : NULL;
  g_autoptr (GbCrewMap) map = kind == GB_CHART_CREW ? find_map (boat, findings, condition, load) : NULL;
  const GbChartSource source = { .boat = boat,
                                 .findings = findings,
                                 .history = history,
                                 .condition = id,
                                 .moved = kind == GB_CHART_CREW && load != NULL ? load->id : 0,
                                 .moved_to = { NAN, NAN, NAN },
                                 .righting = study != NULL ? study->righting : NULL,
                                 .swamped = study != NULL ? study->swamped : NULL,
                                 .crew_map = map };
  g_autoptr (GbChart) chart = gb_chart_new (kind, &source);

  return strcmp (format, "text") == 0 ? chart_text (chart) : chart_file (chart, format, error);
}

GbExit
gb_command_chart (GbProject *project, int kind, const char *format, GHashTable *options, GBytes **bytes)
{
  const GbRecord *condition, *load;
  g_autoptr (GError) error = NULL;

  if (!choose_condition (gb_project_get_boat (project), options, &condition)
      || !choose_load (gb_project_get_boat (project), options, &condition, &load))
    return GB_EXIT_USAGE;
  *bytes = draw (project, (GbChartKind) kind, format, condition, load, &error);
  return *bytes != NULL ? GB_EXIT_DONE : gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
}
