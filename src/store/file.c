/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "gb-file"

/* All or nothing on the disk: a new file is made beside its place under a name of its own, synced, and then renamed. */

#include "store-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static gboolean
fail_errno (const char *path, GError **error)
{
  int number = errno;

  switch (number)
    {
    case ENOSPC:
    case EDQUOT:
      return gb_store_fail (error, GB_STORE_ERROR_FULL, _ ("The disk is full: “%s” could not be written."), path);
    case EACCES:
    case EPERM:
    case EROFS:
      return gb_store_fail (error, GB_STORE_ERROR_READ_ONLY, _ ("“%s” cannot be written: its folder may only be read."), path);
    case ENOENT:
    case ENOTDIR:
      return gb_store_fail (error, GB_STORE_ERROR_NOT_FOUND, _ ("“%s” cannot be written: there is no such folder."), path);
    case EEXIST:
      return gb_store_fail (error, GB_STORE_ERROR_EXISTS, _ ("There is a file called “%s” already."), path);
    default:
      /* Translators: file; the system's words for what failed */
      return gb_store_fail (error, GB_STORE_ERROR_IO, _ ("“%s” cannot be written: %s."), path, g_strerror (number));
    }
}

char *
gb_file_beside (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *temporary = g_build_filename (folder, ".garboard-new-XXXXXX", NULL);
  int fd = g_mkstemp_full (temporary, O_RDWR | O_CLOEXEC, 0666);

  if (fd < 0)
    {
      fail_errno (path, error);
      return NULL;
    }
  close (fd);
  return g_steal_pointer (&temporary);
}

static gboolean
sync_path (const char *name, int flags)
{
  int fd = g_open (name, flags | O_CLOEXEC, 0);
  gboolean synced;

  if (fd < 0)
    return FALSE;
  /* Some file systems cannot sync a folder; they say EINVAL. */
  synced = fsync (fd) == 0 || errno == EINVAL;
  close (fd);
  return synced;
}

/* A journal that belonged to an earlier file of this name would be played back into the new one. */
static void
remove_stale_journals (const char *path)
{
  static const char *const endings[] = { "-journal", "-wal", "-shm" };

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *journal = g_strconcat (path, endings[i], NULL);

      g_unlink (journal);
    }
}

static gboolean
rename_file (const char *from, const char *to, gboolean replace)
{
  if (replace)
    return g_rename (from, to) == 0;
  if (renameat2 (AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE) == 0)
    return TRUE;
  /* Not every file system can refuse to replace. */
  if (errno != EINVAL && errno != ENOSYS)
    return FALSE;
  if (g_file_test (to, G_FILE_TEST_EXISTS))
    {
      errno = EEXIST;
      return FALSE;
    }
  return g_rename (from, to) == 0;
}

gboolean
gb_file_put_in_place (const char *temporary, const char *path, gboolean replace, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (!sync_path (temporary, O_RDWR))
    return fail_errno (path, error);
  if (replace || !g_file_test (path, G_FILE_TEST_EXISTS))
    remove_stale_journals (path);
  if (!rename_file (temporary, path, replace) || !sync_path (folder, O_RDONLY | O_DIRECTORY))
    return fail_errno (path, error);
  return TRUE;
}
