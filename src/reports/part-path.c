/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-part-path"

#include "part-path.h"

static char *
escape (const char *name)
{
  GString *text = g_string_new (NULL);

  for (const char *p = name; *p != '\0'; p++)
    {
      if (*p == '/' || *p == '\\')
        g_string_append_c (text, '\\');
      g_string_append_c (text, *p);
    }
  return g_string_free (text, FALSE);
}

char *
gb_path_join (const char *path, const char *name)
{
  g_autofree char *escaped = escape (name);

  return *path != '\0' ? g_strconcat (path, "/", escaped, NULL) : g_steal_pointer (&escaped);
}

char *
gb_path_of (char *const *names)
{
  char *path = g_strdup ("");

  for (guint i = 0; names[i] != NULL; i++)
    {
      char *longer = gb_path_join (path, names[i]);

      g_free (path);
      path = longer;
    }
  return path;
}

char *
gb_part_path (const GbBoat *boat, const GbPart *part, const GbPart *top)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  g_ptr_array_add (names, NULL);
  while (part != top && part->rec.owner != 0)
    {
      part = gb_boat_part (boat, part->rec.owner);
      if (part == NULL)
        break;
      g_ptr_array_insert (names, 0, part->name);
    }
  return gb_path_of ((char *const *) names->pdata);
}

GStrv
gb_path_split (const char *path)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GString) name = g_string_new (NULL);

  for (const char *p = path;; p++)
    {
      if (*p == '\\' && p[1] != '\0')
        g_string_append_c (name, *++p);
      else if (*p != '/' && *p != '\0')
        g_string_append_c (name, *p);
      else
        {
          g_autofree char *stripped = g_strstrip (g_strdup (name->str));

          if (*stripped != '\0')
            g_strv_builder_add (names, stripped);
          g_string_truncate (name, 0);
          if (*p == '\0')
            break;
        }
    }
  return g_strv_builder_end (names);
}
