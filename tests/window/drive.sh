#!/usr/bin/env bash
# Drives the real window in a virtual display, by keyboard only, and takes pictures to look at.
# Not part of `cargo test`. It needs what common.sh needs.
#
#   cargo build --release && bash tests/window/drive.sh target/release/rungwright /tmp/pictures
#
# Exit 0 when everything that was logged is there after a restart and after a kill.
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
display_number=77
PAUSE=${PAUSE:-0.35}
. "$(dirname "$0")/common.sh"

# A fresh start offers the ways in; the demo is the lowest rung.
open
shot first
key Return
logbook=$home/state/rungwright/demo-1
for _ in $(seq 300); do [ -d "$logbook/athletes" ] && break; sleep 0.1; done
sleep "${SETTLE:-3}"
shot demo-roster
[ -d "$logbook" ] || fail "no demo gym at $logbook"

# The first who may step up, with both hands: two groups down.
key g g Return
sleep 0.5
shot next

# Three sets on two sides, one of them taken back.
key Return; sleep 0.4
key Return; sleep 0.4
key Return; sleep 0.4
sets=$(records 'what: Set(')
[ "$sets" = 3 ] || fail "three sets: found $sets"
key u; sleep 0.4
expect 1 'what: Retract(' "one undone"
shot next-logged

# Weigh in, report pain 4.
key k; sleep 0.4; xdotool type --delay 120 '60.3'; sleep 0.4; key Return; sleep 0.6
expect 1 'what: WeighIn(' "weigh-in"
key p; sleep 0.4
key 4
shot pain
key Return; sleep 0.4
expect 1 'what: Pain(' "pain"
grep -rq 'score: 4' "$logbook/athletes" || fail "pain 4"
shot next-after

# At the bar, and Ladders.
key F11; sleep 0.6; shot bar; key Escape
key alt+3; sleep 0.6; shot ladders
key alt+9; sleep 0.4; shot settings
key alt+3

# Themes, sizes, zoom.
places="alt+1 alt+2 alt+3 alt+4 alt+9"
for place in $places; do
    key "$place"; sleep 0.5
    shot "light-1440-${place#alt+}"
done
size 1024 700
for place in $places; do key "$place"; sleep 0.5; shot "light-1024-${place#alt+}"; done
key ctrl+t ctrl+t; sleep 0.5
for place in $places; do key "$place"; sleep 0.5; shot "dark-1024-${place#alt+}"; done
size 1440 900
for place in $places; do key "$place"; sleep 0.5; shot "dark-1440-${place#alt+}"; done
for _ in $(seq 10); do key ctrl+plus; done
for place in $places; do key "$place"; sleep 0.5; shot "dark-200-${place#alt+}"; done
key ctrl+0; sleep 1
close

# An own logbook: everything is there again at the next start, also after a kill right after a set.
printf 'athlete,date,movement,reps,bodyweight_kg,ladder,rung\nAna,%s,,,70,front-lever,tuck\nAna,%s,pull-up,8,,,\n' \
    "$(date -d '3 days ago' +%F)" "$(date -d '3 days ago' +%F)" >"$home/own.csv"
"$program" import "$home/own.csv" --logbook "$home/own" >/dev/null
logbook=$home/own
open --logbook "$logbook"
key alt+2; sleep 0.5
shot own-hold
key F11; sleep 0.4; shot bar-hold-before
key space; sleep 1.2; shot bar-hold-count; sleep 8.5; shot bar-hold; key space; sleep 0.5
expect 1 'Hold(' "a hold from the bar view"
key Escape; key Return; sleep 0.25
kill -9 "$app"; wait "$app" 2>/dev/null || true; app=
[ "$(records 'what: Set(.*\|Hold(')" -ge 1 ] || fail "the set was lost by the kill"
before=$(records 'what: ')
open
shot again
after=$(records 'what: ')
[ "$before" = "$after" ] || fail "a start changed the journal"

# Idle: no processor time.
sleep 2
ticks() { awk '{print $14 + $15}' "/proc/$app/stat"; }
one=$(ticks); sleep 5; two=$(ticks)
echo "idle: $((two - one)) ticks of 1/100 s in 5 s"
[ $((two - one)) -le 2 ] || fail "the idle window works"
close
echo "all there; pictures in $pictures"
