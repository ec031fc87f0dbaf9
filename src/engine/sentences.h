/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Puts @sentence behind what is said already. */
static inline void
gb_sentences_add (GString *said, const char *sentence)
{
  if (said->len > 0)
    g_string_append_c (said, ' ');
  g_string_append (said, sentence);
}

G_END_DECLS
