/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "project/project.h"

G_BEGIN_DECLS

/* Shows what a table would bring in before it comes in: which column goes into which field and in which unit, what each row becomes, and which rows are
 * refused and why. "Import" makes it one edit, one undo. @kind: GB_RECORD_PART or GB_RECORD_LINE. A file that cannot be read is told in @parent
 * ("win.tell"). */
void gb_import_dialog_present (GtkWindow *parent, GbProject *project, GbRecordKind kind, GFile *file);

G_END_DECLS
