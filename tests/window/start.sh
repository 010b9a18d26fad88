#!/usr/bin/env bash
# Measures the time from start to the first window on screen, of the program and of a bare eframe window in turn.
# Needs xvfb and xdotool.
#
#   cargo build --release --bin rungwright --example bare_window && bash tests/window/start.sh
set -euo pipefail
program=${1:-target/release/rungwright}
bare=${2:-target/release/examples/bare_window}
home=$(mktemp -d)
export XDG_STATE_HOME=$home/state XDG_DATA_HOME=$home/data XDG_CACHE_HOME=$home/cache RUNGWRIGHT_DEVICE=bench
export LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY || true
display=":${DISPLAY_NUMBER:-78}"
Xvfb "$display" -screen 0 1440x900x24 -nolisten tcp >/dev/null 2>&1 &
xvfb=$!
export DISPLAY=$display
trap 'kill $xvfb 2>/dev/null; rm -rf "$home"' EXIT
for _ in $(seq 100); do [ -S "/tmp/.X11-unix/X${display#:}" ] && break; sleep 0.1; done
"$program" demo "$home/demo" --athletes 36 >/dev/null

# eframe shows its window once the first frame is painted, so a visible window is a first frame.
one() { # title, command …
    local title=$1 begun ended pid
    shift
    begun=$(date +%s%N)
    "$@" >/dev/null 2>&1 &
    pid=$!
    xdotool search --sync --onlyvisible --name "$title" >/dev/null
    ended=$(date +%s%N)
    kill "$pid"
    wait "$pid" 2>/dev/null || true
    echo $(((ended - begun) / 1000000))
}
median() { sort -n | awk '{ v[NR] = $1 } END { print (v[int((NR + 1) / 2)] + v[int(NR / 2) + 1]) / 2 }'; }
for _ in $(seq 10); do
    one '^Bare$' "$bare" >>"$home/bare"
    one 'Rungwright' "$program" --logbook "$home/demo" >>"$home/ours"
done
echo "bare window: $(median <"$home/bare") ms; Rungwright on 36 athletes: $(median <"$home/ours") ms (medians of 10)"
