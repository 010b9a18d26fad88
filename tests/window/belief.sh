#!/usr/bin/env bash
# Drives everything that shows a belief, in the real window in a virtual display, by keyboard only, and takes pictures to look
# at: a slip that one key mends from Totals, what holds a hand back, each number's explanation by Tab.
# Not part of `cargo test`. It needs what common.sh needs.
#
#   cargo build --release && bash tests/window/belief.sh target/release/rungwright /tmp/pictures
#
# Exit 0 when the slip was amended once, to what fits, and the belief moved back.
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
display_number=78
PAUSE=${PAUSE:-0.35}
. "$(dirname "$0")/common.sh"

on=2026-03-18
logbook=$home/own
{
    echo 'athlete,date,movement,side,bodyweight_kg,added_kg,reps,hold_s,rir,outcome,ladder,rung,height_cm,sex,note'
    echo 'Ana Brook,2025-10-01,,,,,,,,,weighted-pull-up,plus-25,172,female,'
    echo 'Ben Ruiz,2025-10-01,,,,,,,,,one-arm-pull-up,fingers-3,180,male,'
    for nth in $(seq 0 39); do
        day=$(date -d "$on -$((160 - 4 * nth)) days" +%F)
        for set in 1 2 3; do
            echo "Ana Brook,$day,pull-up,,62,20,5,,1,success,weighted-pull-up,plus-25,,,"
            echo "Ben Ruiz,$day,pull-up,,75,$((60 + nth / 4)),3,,1,success,,,,,"
        done
    done
    echo "Ana Brook,2026-03-16,pull-up,,62,200,5,,1,success,weighted-pull-up,plus-25,,,"
    echo "Ben Ruiz,2026-03-13,one-arm-hang,L,75,,,4,0,success,,,,,"
    echo "Ben Ruiz,2026-03-13,one-arm-pull-up,R,75,,2,,,fail,one-arm-pull-up,fingers-3,,,stuck at the top"
} >"$home/own.csv"
"$program" import "$home/own.csv" --logbook "$logbook" >/dev/null
believed() { "$program" strength --logbook "$logbook" --on "$on" --athlete "$1" --format json; }
believed 'Ana Brook' | grep -q '"probability"' || fail "the slip is not seen"

open --logbook "$logbook" --on "$on"
key alt+2; sleep 0.5
shot belief-next
key alt+4; sleep 0.5
shot belief-totals
key t; shot belief-slip
key Tab; shot belief-how
key Tab Left Left; shot belief-walked
key m
expect 1 'what: Amend(.*Added(kg(20))' "the slip amended by one key"
shot belief-mended
believed 'Ana Brook' | grep -q '"probability"' && fail "the slip is still there"
key Escape alt+Down; sleep 0.5

for look in light dark; do
    for width in 1440 1024; do
        size "$width" $((width == 1440 ? 900 : 700))
        key alt+2; sleep 0.5; shot "belief-$look-$width-next"
        key alt+3; sleep 0.5; shot "belief-$look-$width-ladder"
        key t; shot "belief-$look-$width-strength"; key Escape
        key alt+4; sleep 0.5; shot "belief-$look-$width-totals"
    done
    key ctrl+t ctrl+t; sleep 0.5
done
close
echo "amended; pictures in $pictures"
