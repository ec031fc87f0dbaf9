/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The commands as a person runs them: the program itself, without a display, with every exit code. The first
 * argument names it. */

#include "scratch.h"

#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static char *program;

typedef struct
{
  int status;
  GBytes *out;
  char *err;
} Result;

static void
result_clear (Result *result)
{
  g_clear_pointer (&result->out, g_bytes_unref);
  g_clear_pointer (&result->err, g_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Result, result_clear)

static char *
text_of (GBytes *bytes)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);

  return data != NULL ? g_strndup (data, size) : g_strdup ("");
}

/* The text on standard output. */
static char *
out_text (const Result *result)
{
  return text_of (result->out);
}

/* Runs "garboard" with the words of @line, in the folder of @scratch. */
static Result
run_to (Scratch *scratch, int terminal, const char *line)
{
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (
    G_SUBPROCESS_FLAGS_STDERR_PIPE | (terminal < 0 ? G_SUBPROCESS_FLAGS_STDOUT_PIPE : 0));
  g_autoptr (GSubprocess) process = NULL;
  g_autofree char *whole = g_strdup_printf ("garboard %s", line);
  g_auto (GStrv) words = NULL;
  g_autoptr (GBytes) err = NULL;
  g_autoptr (GError) error = NULL;
  Result result = { 0 };

  g_shell_parse_argv (whole, NULL, &words, &error);
  g_assert_no_error (error);
  g_free (words[0]);
  words[0] = g_strdup (program);
  g_subprocess_launcher_set_cwd (launcher, scratch->folder);
  g_subprocess_launcher_unsetenv (launcher, "DISPLAY");
  g_subprocess_launcher_unsetenv (launcher, "WAYLAND_DISPLAY");
  if (terminal >= 0)
    g_subprocess_launcher_take_stdout_fd (launcher, terminal);
  process = g_subprocess_launcher_spawnv (launcher, (const char *const *) words, &error);
  g_assert_no_error (error);
  g_subprocess_communicate (process, NULL, NULL, terminal < 0 ? &result.out : NULL, &err, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_if_exited (process));
  result.status = g_subprocess_get_exit_status (process);
  result.err = text_of (err);
  return result;
}

static Result
run (Scratch *scratch, const char *line)
{
  return run_to (scratch, -1, line);
}

/* Leaves with @status; a complaint holds @words. */
static void
assert_run (Scratch *scratch, const char *line, int status, const char *words)
{
  g_auto (Result) result = run (scratch, line);

  if (result.status != status)
    g_error ("“%s” left with %d, not %d: %s", line, result.status, status, result.err);
  if (words != NULL && strstr (result.err, words) == NULL)
    g_error ("“%s” complains “%s”, which does not hold “%s”", line, result.err, words);
  if (words == NULL)
    g_assert_cmpstr (result.err, ==, "");
  else
    g_assert_true (g_str_has_prefix (result.err, "garboard: ") && g_str_has_suffix (result.err, "\n"));
}

static Scratch *
scratch_with_demos (void)
{
  static const char *const names[] = { "plover", "reedling", "petrel" };
  Scratch *scratch = scratch_new ();

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *line = g_strdup_printf ("pack '%s/../demo-projects/%s.json' %s.garboard",
                                               g_getenv ("G_TEST_SRCDIR"), names[i], names[i]);

      assert_run (scratch, line, 0, NULL);
    }
  return scratch;
}

static void
write_file (Scratch *scratch, const char *name, const char *text)
{
  g_autofree char *path = g_build_filename (scratch->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static GBytes *
take_file (Scratch *scratch, const char *name)
{
  g_autofree char *path = g_build_filename (scratch->folder, name, NULL);
  char *text = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_unlink (path);
  return g_bytes_new_take (text, length);
}

static gboolean
begins_with (GBytes *bytes, const char *start)
{
  return g_bytes_get_size (bytes) > strlen (start)
         && memcmp (g_bytes_get_data (bytes, NULL), start, strlen (start)) == 0;
}

static void
test_help_and_version (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();
  static const char *const lines[] = { "--help", "-h", "check --help", "report --help whatever" };
  g_auto (Result) version = run (scratch, "--version");
  g_autofree char *said = out_text (&version);

  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      g_auto (Result) help = run (scratch, lines[i]);
      g_autofree char *text = out_text (&help);

      g_assert_cmpint (help.status, ==, 0);
      g_assert_nonnull (strstr (text, "garboard unpack FILE.garboard [TEXT.json]"));
      g_assert_nonnull (strstr (text, "weights, materials, purchases, money, afloat, limit, groups, history, boat"));
    }
  g_assert_cmpint (version.status, ==, 0);
  g_assert_true (g_str_has_prefix (said, "garboard ") && g_ascii_isdigit (said[strlen ("garboard ")]));
}

static void
test_what_is_not_understood (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();

  assert_run (scratch, "repport", 64, "“repport” is neither a command nor a file");
  assert_run (scratch, "pack", 64, "Expected: garboard pack TEXT.json FILE.garboard");
  assert_run (scratch, "pack a.json b.garboard c", 64, "Expected: ");
  assert_run (scratch, "check", 64, "Expected: garboard check FILE.garboard");
  assert_run (scratch, "unpack", 64, "Expected: ");
  assert_run (scratch, "report parts", 64, "Expected: ");
  assert_run (scratch, "check x.garboard --format=text", 64, "“check” knows no option “--format”");
  assert_run (scratch, "pack a.json b.garboard --replace=yes", 64, "--replace takes no value");
  assert_run (scratch, "report parts x.garboard --format", 64, "--format needs a value");
  assert_run (scratch, "report parts x.garboard --output=", 64, "--output needs a value");
  assert_run (scratch, "report keels x.garboard", 64, "There is no report “keels”. There is: parts, ");
  assert_run (scratch, "report parts x.garboard --format=docx", 64, "“parts” cannot be written as “docx”");
  assert_run (scratch, "report parts x.garboard --format=svg", 64, "cannot be written as “svg”");
  assert_run (scratch, "report limit x.garboard --format=csv", 64, "cannot be written as “csv”");
  assert_run (scratch, "report limit x.garboard --condition=any", 64, "“limit” has no use for the option --condition");
  assert_run (scratch, "report righting x.garboard --load=any", 64, "“righting” has no use for the option --load");
  assert_run (scratch, "report afloat x.garboard --condition=any", 64, "“afloat” has no use for the option --condition");
}

static void
test_pack (void)
{
  g_autoptr (Scratch) scratch = scratch_new ();

  write_file (scratch, "good.garboard", "{ \"garboard\": 1, \"build\": { \"name\": \"Wren\" } }");
  write_file (scratch, "bad.garboard",
              "{ \"garboard\": 1,\n  \"part\": [ { \"name\": \"Keel\", \"mass\": \"heavy\" } ] }");
  assert_run (scratch, "pack good.garboard wren.garboard", 0, NULL);
  assert_run (scratch, "pack good.garboard wren.garboard", 2, "already; --replace");
  assert_run (scratch, "pack --replace good.garboard wren.garboard", 0, NULL);
  assert_run (scratch, "pack good.garboard --replace wren.garboard", 0, NULL);
  assert_run (scratch, "pack nothing.json new.garboard", 2, "nothing.json");
  assert_run (scratch, "pack bad.garboard new.garboard", 2, "bad.garboard: ");
  assert_run (scratch, "pack bad.garboard new.garboard", 2, "2");
  assert_run (scratch, "pack good.garboard no/such/folder.garboard", 2, "folder");
  assert_run (scratch, "check wren.garboard", 0, NULL);
}

static void
test_unpack (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();
  g_auto (Result) first = run (scratch, "unpack plover.garboard");
  g_autoptr (GBytes) second = NULL;

  g_assert_cmpint (first.status, ==, 0);
  assert_run (scratch, "unpack plover.garboard text.garboard", 0, NULL);
  assert_run (scratch, "unpack plover.garboard text.garboard", 2, "already");
  assert_run (scratch, "unpack --replace plover.garboard text.garboard", 0, NULL);
  assert_run (scratch, "pack text.garboard again.garboard", 0, NULL);
  assert_run (scratch, "unpack again.garboard -- text2.garboard", 0, NULL);
  second = take_file (scratch, "text2.garboard");
  g_assert_true (g_bytes_equal (first.out, second));
  assert_run (scratch, "unpack nothing.garboard", 2, "There is no file called");
  assert_run (scratch, "unpack text.garboard", 2, "text.garboard");
}

static void
test_check (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();
  g_auto (Result) within = run (scratch, "check plover.garboard");
  g_auto (Result) over = run (scratch, "check petrel.garboard");
  g_autofree char *within_said = out_text (&within), *over_said = out_text (&over);
  g_autofree char *path = g_build_filename (scratch->folder, "reedling.garboard", NULL);
  g_auto (Result) nothing = run (scratch, "check nothing.garboard");
  g_autofree char *nothing_said = out_text (&nothing);

  g_assert_cmpint (within.status, ==, 0);
  g_assert_nonnull (strstr (within_said, "is sound and within its limits."));
  g_assert_nonnull (strstr (within_said, "Local rules and a qualified person decide"));
  g_assert_nonnull (strstr (over_said, "Local rules and a qualified person decide"));
  g_assert_cmpint (over.status, ==, 1);
  g_assert_null (strstr (over_said, "is sound"));
  g_assert_cmpuint (strlen (over_said), >, 40);
  g_assert_cmpint (nothing.status, ==, 2);
  g_assert_nonnull (strstr (nothing_said, "There is no file called"));
  /* Nothing to float her is a note. */
  write_file (scratch, "bare.json", "{ \"garboard\": 1, \"build\": { \"name\": \"Bare\" } }");
  assert_run (scratch, "pack bare.json bare.garboard", 0, NULL);
  {
    g_auto (Result) bare = run (scratch, "check bare.garboard");
    g_autofree char *said = out_text (&bare);

    g_assert_cmpint (bare.status, ==, 0);
    g_assert_nonnull (strstr (said, "is sound; its limits could not be checked: There is no hull yet"));
    g_assert_null (strstr (said, "within its limits"));
    g_assert_null (strstr (said, "qualified person"));
  }
  g_bytes_unref (take_file (scratch, "bare.json"));
  /* Another condition than the first. */
  scratch_sql (path, "UPDATE load SET mass = 900 WHERE owner = (SELECT max (id) FROM condition)");
  {
    g_auto (Result) sunk = run (scratch, "check reedling.garboard");
    g_autofree char *said = out_text (&sunk);

    g_assert_cmpint (sunk.status, ==, 1);
    g_assert_nonnull (strstr (said, ": She sinks: "));
  }

  /* A part in itself: SQL can do it, a build cannot have it. */
  scratch_sql (path, "UPDATE part SET owner = id WHERE id = 1");
  {
    g_auto (Result) unsound = run (scratch, "check reedling.garboard");

    g_assert_cmpint (unsound.status, ==, 2);
    g_assert_cmpuint (g_bytes_get_size (unsound.out), >, 20);
  }
  write_file (scratch, "noise.garboard", "no database at all");
  assert_run (scratch, "check noise.garboard", 2, NULL);
}

static const struct
{
  const char *kind, *format, *start;
} written[] = {
  { "parts", "text", "Parts list" }, { "parts", "csv", NULL },      { "weights", "json", "{" },
  { "weights", "pdf", "%PDF-1." },   { "materials", "xlsx", "PK" }, { "purchases", "csv", NULL },
  { "money", "text", "Money" },      { "limit", "svg", "<?xml" },   { "groups", "png", "\x89PNG" },
  { "boat", "pdf", "%PDF-1." },      { "history", "svg", "<?xml" }, { "draught", "text", NULL },
  { "course", "svg", "<?xml" },      { "heads", "png", "\x89PNG" },  { "afloat", "text", "Afloat" },
  { "afloat", "json", "{" },         { "afloat", "pdf", "%PDF-1." }, { "afloat", "xlsx", "PK" },
  { "afloat", "csv", NULL },         { "floating", "svg", "<?xml" }, { "freeboard", "png", "\x89PNG" },
  { "crew", "svg", "<?xml" },        { "righting", "pdf", "%PDF-1." }, { "swamped", "svg", "<?xml" },
};

static void
test_report (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();

  for (guint i = 0; i < G_N_ELEMENTS (written); i++)
    {
      g_autofree char *line
        = g_strdup_printf ("report %s petrel.garboard --format=%s", written[i].kind, written[i].format);
      g_autofree char *file = g_strconcat (line, " --output out.tmp", NULL);
      g_auto (Result) result = run (scratch, line);
      g_autoptr (GBytes) bytes = NULL;

      g_assert_cmpstr (result.err, ==, "");
      g_assert_cmpint (result.status, ==, 0);
      g_assert_cmpuint (g_bytes_get_size (result.out), >, 100);
      g_assert_true (written[i].start == NULL || begins_with (result.out, written[i].start));
      assert_run (scratch, file, 0, NULL);
      bytes = take_file (scratch, "out.tmp");
      g_assert_cmpuint (g_bytes_get_size (bytes), >, 100);
    }
}

/* The chart of plover, in words, is about @what. */
static void
assert_chart_of (Scratch *scratch, const char *options, const char *what)
{
  g_autofree char *line = g_strdup_printf ("report %s plover.garboard --format=text", options);
  g_auto (Result) result = run (scratch, line);
  g_autofree char *said = out_text (&result);

  g_assert_cmpstr (result.err, ==, "");
  g_assert_cmpint (result.status, ==, 0);
  if (strstr (said, what) == NULL)
    g_error ("“%s” is not in “%s”", what, said);
}

static void
test_which_condition (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();

  assert_chart_of (scratch, "floating", "Two up on the lake"); /* the first */
  assert_chart_of (scratch, "floating --condition='rower ALONE'", "Rower alone");
  assert_chart_of (scratch, "righting --condition 'Rower alone'", "Rower alone");
  assert_chart_of (scratch, "crew", "“Rower”"); /* the first person in it */
  assert_chart_of (scratch, "crew --load='Bag and lunch'", "“Bag and lunch”");
  assert_chart_of (scratch, "crew --load=angler", "“Angler”"); /* aboard in another condition */
  assert_run (scratch, "report crew plover.garboard --condition=Nobody", 64,
              "There is no condition “Nobody”. There is: Two up on the lake, Rower alone");
  assert_run (scratch, "report crew plover.garboard --load=Piano", 64, "There is no load “Piano” in any condition. There is: Rower, ");
  assert_run (scratch, "report crew plover.garboard --load=Piano --condition='Rower alone'", 64,
              "There is no load “Piano” in “Rower alone”. There is: Rower");
}

static void
test_format_by_ending (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();
  static const struct
  {
    const char *kind, *file, *start;
  } cases[] = { { "parts", "list.PDF", "%PDF-1." }, { "parts", "list.txt", "Parts list" },
                { "parts", "list", "Parts list" },  { "boat", "boat.png", "\x89PNG" },
                { "boat", "boat", "<?xml" },        { "boat", "./a.b/boat", "<?xml" } };
  g_autofree char *folder = g_build_filename (scratch->folder, "a.b", NULL);

  g_mkdir (folder, 0777);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *line
        = g_strdup_printf ("report %s plover.garboard --output=%s", cases[i].kind, cases[i].file);
      g_autoptr (GBytes) bytes = NULL;

      assert_run (scratch, line, 0, NULL);
      bytes = take_file (scratch, cases[i].file);
      g_assert_true (begins_with (bytes, cases[i].start));
    }
  g_rmdir (folder);
}

static void
test_report_that_cannot_be (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();

  assert_run (scratch, "report parts nothing.garboard", 2, "There is no file called");
  assert_run (scratch, "report boat nothing.garboard", 2, "There is no file called");
  assert_run (scratch, "report parts plover.garboard --output=no/such/folder.txt", 2, "There is no folder called “no/such”.");
  assert_run (scratch, "report boat plover.garboard --output=no/such/folder.svg", 2, "There is no folder called “no/such”.");
  write_file (scratch, "noise.garboard", "no database at all");
  assert_run (scratch, "report weights noise.garboard", 2, "noise.garboard");
}

/* Bytes that are no text are not poured into a terminal. */
static void
test_terminal (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();
  int master = posix_openpt (O_RDWR | O_NOCTTY | O_CLOEXEC);
  int terminal;

  g_assert_cmpint (master, >=, 0);
  g_assert_cmpint (grantpt (master) + unlockpt (master), ==, 0);
  terminal = g_open (ptsname (master), O_RDWR | O_NOCTTY | O_CLOEXEC, 0);
  g_assert_cmpint (terminal, >=, 0);
  {
    g_auto (Result) result = run_to (scratch, terminal, "report parts plover.garboard --format=xlsx");

    g_assert_cmpint (result.status, ==, 64);
    g_assert_nonnull (strstr (result.err, "not for a terminal"));
  }
  close (master);
}

/* A command reads; the file is as it was, to the byte. */
static void
test_reading_changes_nothing (void)
{
  g_autoptr (Scratch) scratch = scratch_with_demos ();
  g_autofree char *path = g_build_filename (scratch->folder, "plover.garboard", NULL);
  g_autofree char *before = NULL, *after = NULL;
  gsize n_before, n_after;

  g_assert_true (g_file_get_contents (path, &before, &n_before, NULL));
  assert_run (scratch, "check plover.garboard", 0, NULL);
  assert_run (scratch, "report weights plover.garboard", 0, NULL);
  assert_run (scratch, "unpack plover.garboard", 0, NULL);
  g_assert_true (g_file_get_contents (path, &after, &n_after, NULL));
  g_assert_cmpmem (before, n_before, after, n_after);
}

int
main (int argc, char *argv[])
{
  int status;

  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  program = g_canonicalize_filename (argv[1], NULL);
  g_test_add_func ("/command-line/help", test_help_and_version);
  g_test_add_func ("/command-line/not-understood", test_what_is_not_understood);
  g_test_add_func ("/command-line/pack", test_pack);
  g_test_add_func ("/command-line/unpack", test_unpack);
  g_test_add_func ("/command-line/check", test_check);
  g_test_add_func ("/command-line/report", test_report);
  g_test_add_func ("/command-line/which-condition", test_which_condition);
  g_test_add_func ("/command-line/format-by-ending", test_format_by_ending);
  g_test_add_func ("/command-line/cannot-be", test_report_that_cannot_be);
  g_test_add_func ("/command-line/terminal", test_terminal);
  g_test_add_func ("/command-line/reads-only", test_reading_changes_nothing);
  status = g_test_run ();
  g_free (program);
  return status;
}
