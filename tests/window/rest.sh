#!/usr/bin/env bash
# Rest ends on time while the window is hidden: a stand-in for the system's player writes down when it was called.
# Takes three minutes. Not part of `cargo test`; needs what common.sh needs.
#
#   cargo build --release && bash tests/window/rest.sh target/release/rungwright /tmp/pictures
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
display_number=79
. "$(dirname "$0")/common.sh"
mkdir "$home/bin"
# The first player that is looked for, so that a real one stays silent.
printf '#!/bin/sh\ndate +%%s.%%N >>"%s/played"\n' "$home" >"$home/bin/pw-play"
chmod +x "$home/bin/pw-play"
export PATH=$home/bin:$PATH

# The lowest rung of this ladder asks for three to five minutes.
day=$(date -d '3 days ago' +%F)
printf 'athlete,date,movement,reps,bodyweight_kg,ladder,rung\nAna,%s,,,70,first-pull-up,row\n' "$day" >"$home/own.csv"
"$program" import "$home/own.csv" --logbook "$home/own" >/dev/null
open --logbook "$home/own"
key alt+2
sleep 1
began=$(date +%s.%N)
key Return
sleep 1
xdotool windowunmap "$window"
for _ in $(seq 240); do [ -s "$home/played" ] && break; sleep 1; done
[ -s "$home/played" ] || fail "nothing was heard"
xdotool windowmap "$window"
shot rest-over
awk -v a="$began" 'NR == 1 { printf "the sound came %.1f s after the set; 180 were asked\n", $1 - a }' "$home/played"
