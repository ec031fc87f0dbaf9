#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# Sets up, builds with gcc, runs the suite; builds with clang and sanitizers, runs it again. Closes with "N passed, N failed", counted
# from the test cases that ran in both.
set -eu
cd "$(dirname "$0")/.."

sh data/setup.sh test

passed=0
failed=0

# run_suite FOLDER [meson test options]: tests of a build folder, in a display and a session bus of their own.
run_suite ()
{
  folder=$1
  shift
  status=0
  home=$(mktemp -d)
  HOME=$home XDG_DATA_HOME=$home/data XDG_CONFIG_HOME=$home/config XDG_CACHE_HOME=$home/cache XDG_RUNTIME_DIR=$home \
    xvfb-run -a -s "-screen 0 1280x900x24" dbus-run-session -- \
    meson test -C "$folder" --no-rebuild --print-errorlogs --num-processes 2 "$@" || status=$?
  rm -rf "$home"

  # Control characters that a test let slip would not be XML.
  log=$folder/meson-logs/testlog.clean.xml
  tr -d '\000-\010\013\014\016-\037' <"$folder/meson-logs/testlog.junit.xml" >"$log"
  bad=$(xmllint --xpath 'count(//testcase[failure or error])' "$log")
  skipped=$(xmllint --xpath 'count(//testcase[skipped])' "$log")
  all=$(xmllint --xpath 'count(//testcase)' "$log")
  # A program that died has no failing case to show for it.
  if [ "$status" -ne 0 ] && [ "$bad" -eq 0 ]; then
    bad=1
    all=$((all + 1))
  fi
  passed=$((passed + all - bad - skipped))
  failed=$((failed + bad))
}

# build FOLDER [meson options]
build ()
{
  folder=$1
  shift
  [ -f "$folder/build.ninja" ] || meson setup "$folder" -Dwerror=true "$@"
  ninja -C "$folder"
}

CC=gcc build build-gcc
run_suite build-gcc

CC=clang build build-sanitized -Db_sanitize=address,undefined -Db_lundef=false
ASAN_SYMBOLIZER_PATH=$(command -v llvm-symbolizer-14 || command -v llvm-symbolizer || true)
export ASAN_SYMBOLIZER_PATH
export LSAN_OPTIONS="suppressions=$PWD/tests/lsan.supp:print_suppressions=0"
export UBSAN_OPTIONS="print_stacktrace=1:halt_on_error=1"
export ASAN_OPTIONS="detect_leaks=1:strict_string_checks=1"
run_suite build-sanitized --timeout-multiplier 5 --no-suite pages
# The toolkit keeps memory of modules that it has unloaded, which no list can name: leaks of windows and pages are found by their own
# tests, which see each object go.
export ASAN_OPTIONS="detect_leaks=0:strict_string_checks=1"
run_suite build-sanitized --timeout-multiplier 5 --suite pages

echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
