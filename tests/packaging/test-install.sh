#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs into a folder of its own and lets each file's own validator judge it.
# Usage: test-install.sh SOURCE BUILD PREFIX
set -eu
source=$1
build=$2
prefix=$3
. "$source/tests/packaging/tap.sh"

id=org.garboard.Garboard
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT
dest=$root$prefix
share=$dest/share

installs () { DESTDIR=$root meson install -C "$build" --no-rebuild; }
is_there () { test -s "$1"; }
prints () { want=$1; shift; "$@" | grep -q -- "$want"; }

# A demo without its ending is known by its bytes.
known_by_content ()
{
  update-mime-database "$share/mime" &&
  cp "$share/garboard/demos/plover.garboard" "$root/no-ending" &&
  XDG_DATA_DIRS=$share:/usr/share XDG_DATA_HOME=$root/home gio info -a standard::content-type "$root/no-ending" \
    | grep -q 'application/x-garboard'
}

check "meson install" installs
check "the program is there and says its version" prints garboard "$dest/bin/garboard" --version
check "settings schema" glib-compile-schemas --strict --dry-run "$share/glib-2.0/schemas"
check "desktop file" desktop-file-validate "$share/applications/$id.desktop"
check "desktop file in German" prints "Comment\[de\]=" cat "$share/applications/$id.desktop"
check "metainfo" appstreamcli validate --no-net "$share/metainfo/$id.metainfo.xml"
check "MIME type is well formed" xmllint --noout "$share/mime/packages/$id.xml"
check "a build is known by its bytes" known_by_content
check "icon" rsvg-convert -o "$root/icon.png" "$share/icons/hicolor/scalable/apps/$id.svg"
check "symbolic icon" rsvg-convert -o "$root/symbolic.png" "$share/icons/hicolor/symbolic/apps/$id-symbolic.svg"
check "man page" mandoc -T lint -W warning "$share/man/man1/garboard.1"
check "German words" is_there "$share/locale/de/LC_MESSAGES/garboard.mo"
check "materials table" is_there "$share/garboard/materials.tsv"
for demo in plover reedling petrel; do
  check "demo $demo is sound" sh -c '"$1" check "$2" >/dev/null; test $? -le 1' - "$dest/bin/garboard" "$share/garboard/demos/$demo.garboard"
done
finish
