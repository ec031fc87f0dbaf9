/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Text (UTF-8) on its way into a spreadsheet and back. A cell that begins with = + - @ or a tab or line
 * break, spaces aside, may be run as a formula, so it gets an apostrophe before it, which is what
 * spreadsheets themselves take for "this is text". Text that begins with apostrophes and then one of those
 * gets one more, so that each comes back as it was. */
char *gb_text_make_safe (const char *text);
/* The reverse: takes one apostrophe off where gb_text_make_safe() would have put it. Borrowed from @text. */
const char *gb_text_unmake_safe (const char *text);

G_END_DECLS
