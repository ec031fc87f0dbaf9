# SPDX-License-Identifier: GPL-3.0-or-later
# TAP from a shell: check "what is tried" command...

tap_n=0

# Runs the command; its output is shown only where it fails.
check ()
{
  words=$1
  shift
  tap_n=$((tap_n + 1))
  if output=$("$@" 2>&1); then
    echo "ok $tap_n $words"
  else
    echo "not ok $tap_n $words"
    printf '%s\n' "$output" | sed 's/^/# /'
  fi
}

finish ()
{
  echo "1..$tap_n"
}
