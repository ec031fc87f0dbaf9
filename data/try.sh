#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Sets up, builds, and opens a demo build in the window. Without a display it prints the demo's weight statement, writes its
# charts, and says where.
set -eu
cd "$(dirname "$0")/.."

sh data/setup.sh build
mkdir -p build
run () { "$@" >build/try.log 2>&1 || { cat build/try.log >&2; exit 1; }; }
[ -f build/build.ninja ] || run meson setup build
run ninja -C build

# The program finds its settings, tables and words in the build folder.
export GSETTINGS_SCHEMA_DIR="$PWD/build/data"
export GARBOARD_DATA_DIR="$PWD/data"
export GARBOARD_LOCALE_DIR="$PWD/build/po"
export GARBOARD_DEMO_DIR="$PWD/build/demo-projects"

# A copy to play with, which keeps what is changed in it; the one that the build made stays as it is.
folder=build/tried
mkdir -p "$folder"
demo="$folder/plover.garboard"
[ -f "$demo" ] || cp build/demo-projects/plover.garboard "$demo"

if [ -n "${WAYLAND_DISPLAY:-}${DISPLAY:-}" ]; then
  exec build/src/garboard "$demo"
fi

build/src/garboard report weights "$demo"
for chart in limit groups history boat draught course heads floating freeboard crew righting swamped; do
  build/src/garboard report "$chart" "$demo" --format=svg --output="$folder/$chart.svg"
done
echo
echo "No display here, so no window. The charts of this build are in $PWD/$folder:"
ls "$folder"/*.svg
