#!/usr/bin/env bash
# Rest ends on time while the window is hidden: a stand-in for the system's player writes down when it was called.
# Takes three minutes. Not part of `cargo test`; needs what drive.sh needs.
#
#   cargo build --release && bash tests/window/rest.sh target/release/rungwright /tmp/pictures
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
home=$(mktemp -d)
export DISPLAY=":${DISPLAY_NUMBER:-77}"
mkdir -p "$pictures" "$home/bin"
export HOME=$home XDG_STATE_HOME=$home/state XDG_DATA_HOME=$home/data XDG_CACHE_HOME=$home/cache XDG_CONFIG_HOME=$home/config
export RUNGWRIGHT_DEVICE=bench LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY || true
# The first player that is looked for, so that a real one stays silent.
printf '#!/bin/sh\ndate +%%s.%%N >>"%s/played"\n' "$home" >"$home/bin/pw-play"
chmod +x "$home/bin/pw-play"
export PATH=$home/bin:$PATH

Xvfb "$DISPLAY" -screen 0 1440x900x24 -nolisten tcp >/dev/null 2>&1 &
xvfb=$!
app=
clean() {
    [ -n "$app" ] && kill "$app" 2>/dev/null || true
    kill "$xvfb" 2>/dev/null || true
    rm -rf "$home"
}
trap clean EXIT
for _ in $(seq 100); do [ -S "/tmp/.X11-unix/X${DISPLAY#:}" ] && break; sleep 0.1; done

# The lowest rung of this ladder asks for three to five minutes.
day=$(date -d '3 days ago' +%F)
printf 'athlete,date,movement,reps,bodyweight_kg,ladder,rung\nAna,%s,,,70,first-pull-up,row\n' "$day" >"$home/own.csv"
"$program" import "$home/own.csv" --logbook "$home/own" >/dev/null
"$program" --logbook "$home/own" &
app=$!
window=$(xdotool search --sync --onlyvisible --name Rungwright | tail -1)
xdotool windowfocus "$window"
sleep 1.5
xdotool key alt+2
sleep 1
began=$(date +%s.%N)
xdotool key Return
sleep 1
xdotool windowunmap "$window"
for _ in $(seq 240); do [ -s "$home/played" ] && break; sleep 1; done
[ -s "$home/played" ] || { echo "FAILED: nothing was heard" >&2; exit 1; }
xdotool windowmap "$window"
sleep 1.5
import -window "$window" "$pictures/rest-over.png"
awk -v a="$began" 'NR == 1 { printf "the sound came %.1f s after the set; 180 were asked\n", $1 - a }' "$home/played"
