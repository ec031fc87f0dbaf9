#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Every string can be translated, the German is whole, and the program speaks it.
# Usage: test-words.sh SOURCE BUILD
set -eu
source=$1
build=$2
. "$source/tests/packaging/tap.sh"
cd "$source"

# Files that hold words: C with a gettext macro, templates, and what the desktop reads.
files_with_words ()
{
  grep -rlE '\b(_|N_|C_|ngettext) ?\(' src --include='*.c' --include='*.h' || true
  grep -rl 'translatable="yes"' ui --include='*.ui' || true
  ls data/*.desktop.in data/*.metainfo.xml.in data/*.gschema.xml
}

potfiles_whole ()
{
  files_with_words | LC_ALL=C sort >"$work/have"
  grep -v '^#' po/POTFILES | LC_ALL=C sort >"$work/listed"
  diff "$work/have" "$work/listed"
}

# Nothing new in the sources that the German lacks.
german_whole ()
{
  xgettext --from-code=UTF-8 --files-from=po/POTFILES --keyword=_ --keyword=N_ --keyword=C_:1c,2 --keyword=NC_:1c,2 \
    --keyword=ngettext:1,2 -o "$work/now.pot"
  msgmerge --quiet --no-fuzzy-matching -o "$work/de.po" po/de.po "$work/now.pot"
  missing=$(msgattrib --untranslated --no-obsolete "$work/de.po" | grep -c '^msgid' || true)
  fuzzy=$(msgattrib --only-fuzzy --no-obsolete "$work/de.po" | grep -c '^msgid' || true)
  if [ "$missing" -ne 0 ] || [ "$fuzzy" -ne 0 ]; then
    msgattrib --untranslated --no-obsolete "$work/de.po" | head -60
    echo "$missing missing, $fuzzy fuzzy"
    return 1
  fi
}

speaks_german ()
{
  GARBOARD_LOCALE_DIR=$build/po LC_ALL=C.UTF-8 LANGUAGE=de "$build/src/garboard" --help | grep -q 'Gewicht'
}

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
check "POTFILES lists every file with words" potfiles_whole
check "German is well formed" msgfmt --check -o /dev/null po/de.po
check "German is whole" german_whole
check "the command line speaks German" speaks_german
finish
