/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-command-line"

#include "command-line-private.h"

#include "engine/working.h"
#include "project/project.h"
#include "store/store.h"
#include "store/text-form.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

GbExit
gb_command_complain (GbExit status, const char *format, ...)
{
  va_list args;
  g_autofree char *sentence = NULL;

  va_start (args, format);
  sentence = g_strdup_vprintf (format, args);
  va_end (args);
  g_printerr ("garboard: %s\n", sentence);
  return status;
}

gboolean
gb_command_write (const char *output, GBytes *bytes)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  g_autofree char *folder = output != NULL ? g_path_get_dirname (output) : NULL;
  g_autoptr (GError) error = NULL;

  if (output == NULL)
    {
      if (fwrite (data, 1, size, stdout) == size && fflush (stdout) == 0)
        return TRUE;
      gb_command_complain (GB_EXIT_FAULT, _ ("Standard output cannot be written: %s."), g_strerror (errno));
      return FALSE;
    }
  if (!g_file_test (folder, G_FILE_TEST_IS_DIR))
    {
      gb_command_complain (GB_EXIT_FAULT, _ ("There is no folder called “%s”."), folder);
      return FALSE;
    }
  if (g_file_set_contents (output, data, (gssize) size, &error))
    return TRUE;
  gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  return FALSE;
}

/* TRUE with a sentence if a file is in the way. */
static gboolean
is_taken (const char *path, GHashTable *options)
{
  if (g_hash_table_contains (options, "replace") || !g_file_test (path, G_FILE_TEST_EXISTS))
    return FALSE;
  gb_command_complain (
    GB_EXIT_FAULT, _ ("There is a file called “%s” already; --replace puts the new one in its place."), path);
  return TRUE;
}

/* Commands ----------------------------------------------------------------------------------------------- */

static GbExit
run_pack (GStrv words, GHashTable *options)
{
  g_autofree char *text = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  if (is_taken (words[1], options))
    return GB_EXIT_FAULT;
  if (!g_file_get_contents (words[0], &text, &length, &error))
    return gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  boat = gb_text_form_read (text, (gssize) length, &error);
  if (boat == NULL)
    return gb_command_complain (GB_EXIT_FAULT, "%s: %s", words[0], error->message);
  if (!gb_store_create (words[1], boat, g_hash_table_contains (options, "replace"), &error))
    return gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  return GB_EXIT_DONE;
}

static GbExit
run_unpack (GStrv words, GHashTable *options)
{
  g_autoptr (GbStore) store = NULL;
  g_autoptr (GbBoat) boat = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  char *text;

  if (words[1] != NULL && is_taken (words[1], options))
    return GB_EXIT_FAULT;
  store = gb_store_open (words[0], TRUE, &error);
  boat = store != NULL ? gb_store_load (store, &error) : NULL;
  if (boat == NULL)
    return gb_command_complain (GB_EXIT_FAULT, "%s", error->message);
  text = gb_text_form_write (boat);
  bytes = g_bytes_new_take (text, strlen (text));
  return gb_command_write (words[1], bytes) ? GB_EXIT_DONE : GB_EXIT_FAULT;
}

/* Why it is not known how she floats: a sentence; NULL: it is. */
static const char *
why_unchecked (const GbFindings *findings)
{
  for (guint i = 0; i < findings->n_afloat; i++)
    if (findings->afloat[i].state == GB_AFLOAT_UNKNOWN)
      return findings->afloat[i].sentence;
  return NULL;
}

/* The last word on a build that passes no limit. */
static void
say_sound (GbProject *project)
{
  const char *why = why_unchecked (gb_project_get_findings (project));

  if (why == NULL)
    g_print (_ ("“%s” is sound and within its limits.\n"), gb_project_get_path (project));
  else
    /* Translators: the name of a file, and a sentence that says why. */
    g_print (_ ("“%s” is sound; its limits could not be checked: %s\n"), gb_project_get_path (project), why);
}

/* Says what is passed and what is not known. */
static GbExit
check_limits (GbProject *project)
{
  g_autoptr (GPtrArray) verdicts
    = gb_findings_verdicts (gb_project_get_boat (project), gb_project_get_findings (project));
  GbExit status = GB_EXIT_DONE;

  for (guint i = 0; i < verdicts->len; i++)
    {
      const GbVerdict *verdict = verdicts->pdata[i];

      g_print ("%s\n", verdict->sentence);
      if (verdict->kind == GB_VERDICT_PASSED)
        status = GB_EXIT_LIMIT;
    }
  if (status == GB_EXIT_DONE)
    say_sound (project);
  /* Nothing else says it to somebody who reads no more than this. */
  if (gb_boat_n (gb_project_get_boat (project), GB_RECORD_HULL) > 0)
    g_print ("\n%s\n", gb_caution_afloat ());
  return status;
}

static GbExit
run_check (GStrv words, GHashTable *options)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GbProject) project = gb_project_open (words[0], TRUE, &error);
  g_autoptr (GPtrArray) faults = NULL;

  if (project == NULL)
    {
      g_print ("%s\n", error->message);
      return GB_EXIT_FAULT;
    }
  faults = gb_project_check (project);
  for (guint i = 0; i < faults->len; i++)
    g_print ("%s\n", (const char *) faults->pdata[i]);
  return faults->len > 0 ? GB_EXIT_FAULT : check_limits (project);
}

/* The line itself ---------------------------------------------------------------------------------------- */

static const GbCommand commands[] = {
  { "pack", N_ ("TEXT.json FILE.garboard"), N_ ("Makes a build from its text form."), run_pack, "replace", 2,
    2 },
  { "unpack", N_ ("FILE.garboard [TEXT.json]"), N_ ("Writes the text form of a build."), run_unpack,
    "replace", 1, 2 },
  { "report", N_ ("KIND FILE.garboard"), N_ ("Writes a report or a chart."), gb_command_report,
    "format output condition load", 2, 2 },
  { "check", N_ ("FILE.garboard"), N_ ("Is the file sound, and is the boat within its limits?"), run_check,
    "", 1, 1 },
};

static void
print_help (void)
{
  g_autofree char *kinds = gb_command_report_kinds ();

  g_print ("%s\n", _ ("Usage:"));
  g_print ("  garboard [%s ...]\n      %s\n", _ ("FILE.garboard"), _ ("Opens the window."));
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_print ("  garboard %s %s\n      %s\n", commands[i].name, _ (commands[i].arguments),
             _ (commands[i].summary));
  g_print ("  garboard --help\n  garboard --version\n");
  g_print ("\n%s %s\n", _ ("KIND is one of:"), kinds);
  g_print ("\n%s\n", _ ("Options:"));
  g_print ("  --format=F    %s\n",
           _ ("report: text, csv, json, xlsx or pdf; a chart: text, svg, png or pdf"));
  g_print ("  --output=OUT  %s\n", _ ("report: the file to write; without it, standard output"));
  g_print ("  --condition=C %s\n", _ ("charts of floating: the condition, by its name; without it, the first"));
  g_print ("  --load=L      %s\n", _ ("crew: the load that moves, by its name; without it, the first person"));
  g_print ("  --replace     %s\n", _ ("pack and unpack: put the new file in the place of one that is there"));
  g_print ("\n%s\n", _ ("The manual page garboard(1) says the rest."));
}

static gboolean
takes_option (const GbCommand *command, const char *name)
{
  g_auto (GStrv) names = g_strsplit (command->options, " ", -1);

  return *name != '\0' && g_strv_contains ((const char *const *) names, name);
}

/* Takes "--name", "--name=value" or "--name value" at *@word into @options, and steps over it. */
static gboolean
read_option (const GbCommand *command, char ***word, char **end, GHashTable *options)
{
  const char *option = *(*word)++ + 2;
  const char *equals = strchr (option, '=');
  g_autofree char *name = equals != NULL ? g_strndup (option, (gsize) (equals - option)) : g_strdup (option);
  gboolean is_flag = strcmp (name, "replace") == 0;
  const char *value = equals != NULL ? equals + 1 : NULL;

  if (!takes_option (command, name))
    {
      gb_command_complain (GB_EXIT_USAGE, _ ("“%s” knows no option “--%s”; see garboard --help."),
                           command->name, name);
      return FALSE;
    }
  if (!is_flag && value == NULL && *word < end)
    value = *(*word)++;
  if (is_flag != (value == NULL) || (value != NULL && *value == '\0'))
    {
      gb_command_complain (
        GB_EXIT_USAGE, is_flag ? _ ("The option --%s takes no value.") : _ ("The option --%s needs a value."),
        name);
      return FALSE;
    }
  g_hash_table_replace (options, g_steal_pointer (&name), g_strdup (value));
  return TRUE;
}

static GbExit
run_command (const GbCommand *command, int argc, char *argv[])
{
  g_autoptr (GHashTable) options = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  gboolean only_words = FALSE;

  for (char **word = argv, **end = argv + argc; word < end;)
    {
      if (only_words || !g_str_has_prefix (*word, "--"))
        g_ptr_array_add (words, *word++);
      else if (strcmp (*word, "--") == 0)
        {
          only_words = TRUE;
          word++;
        }
      else if (strcmp (*word, "--help") == 0)
        {
          print_help ();
          return GB_EXIT_DONE;
        }
      else if (!read_option (command, &word, end, options))
        return GB_EXIT_USAGE;
    }
  if (words->len < command->min_words || words->len > command->max_words)
    return gb_command_complain (GB_EXIT_USAGE, _ ("Expected: garboard %s %s"), command->name,
                                _ (command->arguments));
  g_ptr_array_add (words, NULL);
  return command->run ((GStrv) words->pdata, options);
}

/* TRUE for a single word that can only be a slip: no file, and nothing that looks like one. */
static gboolean
is_slip (const char *word)
{
  return strpbrk (word, "./:-") == NULL && !g_file_test (word, G_FILE_TEST_EXISTS);
}

gboolean
gb_command_line_run (int argc, char *argv[], int *status)
{
  const char *word = argc > 1 ? argv[1] : "";

  *status = GB_EXIT_DONE;
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (word, commands[i].name) == 0)
      {
        *status = run_command (&commands[i], argc - 2, argv + 2);
        return TRUE;
      }
  if (strcmp (word, "--help") == 0 || strcmp (word, "-h") == 0)
    print_help ();
  else if (strcmp (word, "--version") == 0)
    g_print ("garboard %s\n", GB_VERSION);
  else if (*word != '\0' && is_slip (word))
    *status = gb_command_complain (GB_EXIT_USAGE,
                                   _ ("“%s” is neither a command nor a file; see garboard --help."), word);
  else
    return FALSE;
  return TRUE;
}
