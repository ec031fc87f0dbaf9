/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "fault-vfs.h"

#include <sqlite3.h>
#include <string.h>
#include <unistd.h>

typedef struct
{
  sqlite3_file base;
  sqlite3_file *real; /* lies right behind */
  gboolean is_journal;
} FaultFile;

/* Bytes that were written and not synced, and what was there before. */
typedef struct
{
  FaultFile *file;
  sqlite3_int64 offset;
  GBytes *before;
} Unsynced;

static struct
{
  FaultCalls calls;
  guint n; /* counts down; 0: no fault */
  int code;
  gboolean lasting, crash, fired;
  guint32 seed;
} fault;

static GArray *unsynced;
static sqlite3_vfs *real_vfs;

static void
unsynced_clear (gpointer data)
{
  g_bytes_unref (((Unsynced *) data)->before);
}

/* The power goes -------------------------------------------------------------------------------------------------- */

/* The same for all writes to one place, so that an older one never comes to lie over a newer. */
static guint
fate (const Unsynced *write)
{
  guint64 x = ((guint64) write->offset * 2 + (guint64) write->file->is_journal) * 2654435761u ^ (guint64) fault.seed * 40503u;

  x ^= x >> 17;
  x *= 0x9e3779b97f4a7c15u;
  return (guint) (x >> 40) % 3;
}

static void
spoil (const Unsynced *write)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (fault.seed);
  gsize n = g_bytes_get_size (write->before);
  g_autofree guint8 *rubbish = g_malloc (n);

  for (gsize i = 0; i < n; i++)
    rubbish[i] = (guint8) g_rand_int (rand);
  write->file->real->pMethods->xWrite (write->file->real, rubbish, (int) n, write->offset);
}

G_GNUC_NORETURN
static void
crash (void)
{
  for (guint i = unsynced->len; i > 0; i--)
    {
      const Unsynced *write = &g_array_index (unsynced, Unsynced, i - 1);
      sqlite3_file *real = write->file->real;

      if (fate (write) == 1)
        real->pMethods->xWrite (real, g_bytes_get_data (write->before, NULL), (int) g_bytes_get_size (write->before),
                                write->offset);
      else if (fate (write) == 2)
        spoil (write);
    }
  _exit (FAULT_EXIT);
}

/* Counts a call. TRUE if it must fail. */
static gboolean
strikes (FaultCalls calls)
{
  if (fault.n == 0 || fault.calls != calls)
    return FALSE;
  if (fault.n > 1)
    {
      fault.n--;
      return FALSE;
    }
  if (fault.crash)
    crash ();
  fault.n = fault.lasting ? 1 : 0;
  fault.fired = TRUE;
  return TRUE;
}

static void
forget (FaultFile *file)
{
  for (guint i = unsynced->len; i > 0; i--)
    if (g_array_index (unsynced, Unsynced, i - 1).file == file)
      g_array_remove_index (unsynced, i - 1);
}

static void
remember (FaultFile *file, int n, sqlite3_int64 offset)
{
  Unsynced write = { file, offset, NULL };
  guint8 *before;

  if (!fault.crash || fault.n == 0)
    return;
  before = g_malloc0 ((gsize) n);
  file->real->pMethods->xRead (file->real, before, n, offset); /* a short read fills up with zeros */
  write.before = g_bytes_new_take (before, (gsize) n);
  g_array_append_val (unsynced, write);
}

/* Files ------------------------------------------------------------------------------------------------------------ */

#define REAL(file) (((FaultFile *) (file))->real)

static int
file_close (sqlite3_file *file)
{
  forget ((FaultFile *) file);
  return REAL (file)->pMethods->xClose (REAL (file));
}

static int
file_read (sqlite3_file *file, void *bytes, int n, sqlite3_int64 offset)
{
  if (strikes (FAULT_READS))
    return SQLITE_IOERR_READ;
  return REAL (file)->pMethods->xRead (REAL (file), bytes, n, offset);
}

static int
file_write (sqlite3_file *file, const void *bytes, int n, sqlite3_int64 offset)
{
  if (strikes (FAULT_WRITES))
    {
      REAL (file)->pMethods->xWrite (REAL (file), bytes, n / 2, offset);
      return fault.code;
    }
  remember ((FaultFile *) file, n, offset);
  return REAL (file)->pMethods->xWrite (REAL (file), bytes, n, offset);
}

static int
file_truncate (sqlite3_file *file, sqlite3_int64 size)
{
  return strikes (FAULT_WRITES) ? SQLITE_IOERR_TRUNCATE : REAL (file)->pMethods->xTruncate (REAL (file), size);
}

static int
file_sync (sqlite3_file *file, int flags)
{
  if (strikes (FAULT_WRITES))
    return SQLITE_IOERR_FSYNC;
  forget ((FaultFile *) file);
  /* The machine stays on: a real sync would only take its time. */
  return SQLITE_OK;
}

static int
file_size (sqlite3_file *file, sqlite3_int64 *size)
{
  return REAL (file)->pMethods->xFileSize (REAL (file), size);
}

static int
file_lock (sqlite3_file *file, int lock)
{
  return REAL (file)->pMethods->xLock (REAL (file), lock);
}

static int
file_unlock (sqlite3_file *file, int lock)
{
  return REAL (file)->pMethods->xUnlock (REAL (file), lock);
}

static int
file_check_lock (sqlite3_file *file, int *reserved)
{
  return REAL (file)->pMethods->xCheckReservedLock (REAL (file), reserved);
}

static int
file_control (sqlite3_file *file, int op, void *arg)
{
  return REAL (file)->pMethods->xFileControl (REAL (file), op, arg);
}

static int
file_sector_size (sqlite3_file *file)
{
  return REAL (file)->pMethods->xSectorSize (REAL (file));
}

static int
file_characteristics (sqlite3_file *file)
{
  return REAL (file)->pMethods->xDeviceCharacteristics (REAL (file));
}

static const sqlite3_io_methods methods = {
  .iVersion = 1,
  .xClose = file_close,
  .xRead = file_read,
  .xWrite = file_write,
  .xTruncate = file_truncate,
  .xSync = file_sync,
  .xFileSize = file_size,
  .xLock = file_lock,
  .xUnlock = file_unlock,
  .xCheckReservedLock = file_check_lock,
  .xFileControl = file_control,
  .xSectorSize = file_sector_size,
  .xDeviceCharacteristics = file_characteristics,
};

/* The layer -------------------------------------------------------------------------------------------------------- */

static int
vfs_open (sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out_flags)
{
  FaultFile *self = (FaultFile *) file;
  int code;

  self->base.pMethods = NULL;
  self->real = (sqlite3_file *) (self + 1);
  self->is_journal = (flags & SQLITE_OPEN_MAIN_JOURNAL) != 0;
  if (self->is_journal && strikes (FAULT_WRITES))
    return SQLITE_CANTOPEN;
  code = real_vfs->xOpen (real_vfs, name, self->real, flags, out_flags);
  if (code == SQLITE_OK)
    self->base.pMethods = &methods;
  return code;
}

static int
vfs_delete (sqlite3_vfs *vfs, const char *name, int sync_folder)
{
  return strikes (FAULT_WRITES) ? SQLITE_IOERR_DELETE : real_vfs->xDelete (real_vfs, name, sync_folder);
}

void
fault_install (void)
{
  static sqlite3_vfs vfs;

  real_vfs = sqlite3_vfs_find (NULL);
  unsynced = g_array_new (FALSE, FALSE, sizeof (Unsynced));
  g_array_set_clear_func (unsynced, unsynced_clear);
  vfs = *real_vfs;
  vfs.zName = "fault";
  vfs.szOsFile = (int) sizeof (FaultFile) + real_vfs->szOsFile;
  vfs.pNext = NULL;
  vfs.xOpen = vfs_open;
  vfs.xDelete = vfs_delete;
  g_assert_cmpint (sqlite3_vfs_register (&vfs, 1), ==, SQLITE_OK);
}

void
fault_set (FaultCalls calls, guint n, int code, gboolean lasting)
{
  fault.calls = calls;
  fault.n = n;
  fault.code = code;
  fault.lasting = lasting;
  fault.crash = fault.fired = FALSE;
}

void
fault_set_crash (guint n, guint32 seed)
{
  fault_set (FAULT_WRITES, n, 0, FALSE);
  fault.crash = TRUE;
  fault.seed = seed;
}

gboolean
fault_clear (void)
{
  fault.n = 0;
  return fault.fired;
}
