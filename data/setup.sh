#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs what Debian 12 lacks for building Garboard ("build") or for testing it as well ("test").
# Quick and silent when all is there; needs root or sudo only when something is missing.
set -eu

build_packages="gcc libc6-dev meson ninja-build pkg-config gettext python3-minimal git
  libgtk-4-dev libadwaita-1-dev libsqlite3-dev libjson-glib-dev libxlsxwriter-dev libcsv-dev libglib2.0-dev-bin libglib2.0-bin
  desktop-file-utils gtk-update-icon-cache shared-mime-info adwaita-icon-theme gsettings-desktop-schemas
  fonts-cantarell fonts-dejavu-core"
test_packages="clang libclang-rt-14-dev llvm-14 xvfb xauth xdotool dbus dbus-daemon appstream libudunits2-dev libgsl-dev
  poppler-utils librsvg2-bin libxml2-utils mandoc unzip procps"

case "${1:-build}" in
  build) packages=$build_packages ;;
  test) packages="$build_packages $test_packages" ;;
  *) echo "setup.sh: expected 'build' or 'test', not '$1'" >&2; exit 64 ;;
esac

missing=
for package in $packages; do
  case "$(dpkg-query -W -f '${Status}' "$package" 2>/dev/null || true)" in
    "install ok installed") ;;
    *) missing="$missing $package" ;;
  esac
done
[ -n "$missing" ] || exit 0

if [ "$(id -u)" -eq 0 ]; then
  as_root=
elif command -v sudo >/dev/null 2>&1; then
  as_root=sudo
else
  echo "These packages are missing, and neither root nor sudo is at hand to install them:$missing" >&2
  exit 1
fi
echo "Installing:$missing"
log=$(mktemp)
if ! { $as_root apt-get update -qq &&
       $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing; } >"$log" 2>&1; then
  cat "$log" >&2
  rm -f "$log"
  exit 1
fi
rm -f "$log"
