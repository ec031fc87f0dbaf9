/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Dates as they are typed. The tests' locale is C, which puts the month first. */

#include "boat/quantity.h"

static void
test_entries (void)
{
  static const struct
  {
    const char *text, *date;
  } cases[] = {
    { "2025-03-31", "2025-03-31" },  { "2025/3/1", "2025-03-01" },    { " 2025 3 1 ", "2025-03-01" }, { "31.3.2025", "2025-03-31" },
    { "1. 3. 2025", "2025-03-01" },  { "3.4.25", "2025-04-03" },      { "3/4/2025", "2025-03-04" },   { "31/3/2025", "2025-03-31" },
    { "2024-02-29", "2024-02-29" },  { "1900-01-01", "1900-01-01" },  { "2199-12-31", "2199-12-31" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *date = NULL;
      gint64 julian = 0;

      if (!gb_date_parse (cases[i].text, &julian, &error))
        g_error ("%s", error->message);
      date = gb_date_format (julian);
      g_assert_cmpstr (date, ==, cases[i].date);
    }
}

static void
test_refusals (void)
{
  static const char *const texts[]
      = { "",          "2025",      "2025-02-29", "2025-13-01",  "31/31/2025", "2025-03-31 x", "1899-12-31", "2200-01-01", "2025-3/1",
          "3.13.2025", "99999-1-1", "1e3-1-1",    "-2025-03-31", "\xff",       "2025-00-10",   "2025--10" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 julian = 0;

      if (gb_date_parse (texts[i], &julian, &error))
        g_error ("“%s” was read as a date", texts[i]);
    }
}

static void
test_display (void)
{
  g_autofree char *none = gb_date_format (0);
  g_autofree char *negative = gb_date_format (-5);
  g_autofree char *absurd = gb_date_format (G_MAXINT64);
  /* Day 2,451,545 of the astronomers' count is 1 January 2000; GLib's begins at 1 January of the year 1. */
  g_autofree char *millennium = gb_date_format (730120);

  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (negative, ==, "");
  g_assert_cmpstr (absurd, ==, "");
  g_assert_cmpstr (millennium, ==, "2000-01-01");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/date/entries", test_entries);
  g_test_add_func ("/date/refusals", test_refusals);
  g_test_add_func ("/date/display", test_display);
  return g_test_run ();
}
