#!/usr/bin/env bash
# A coach's evening in the real window, by keyboard only: find who can step up, mark five, print their sheet, type the results
# back, add an athlete; then archive, rename, lose the window while typing, take a whole class back; then how all that looks.
# Prints how long it took. Not part of `cargo test`; needs what common.sh needs, and pdftotext.
#
#   cargo build --release && bash tests/window/coach.sh target/release/rungwright /tmp/pictures 36
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
athletes=${3:-36}
display_number=78
. "$(dirname "$0")/common.sh"

day=2026-11-26
logbook=$home/gym
"$program" demo "$logbook" --athletes "$athletes" --on $day
shows() { shot "coach-$athletes-$1"; }
now() { date +%s.%N; }
since() { awk -v a="$1" -v b="$(now)" 'BEGIN { printf "%.1f s", b - a }'; }

open --logbook "$logbook" --on $day
# 500 athletes are read on a thread; the roster is there once the first picture has colours of rows.
sleep "${READS:-2}"

began=$(now)
shows roster
key 3 # only those who step up
shows step-up
key x x x x x
shows marked
key 0 s
shows sheet
key Return
pdf=$home/sheet-$day.pdf
for _ in $(seq 600); do [ -s "$pdf" ] && break; sleep 0.1; done
[ -s "$pdf" ] || fail "no sheet"
shows printed
[ "$(pdfinfo "$pdf" | awk '/^Pages/ { print $2 }')" -ge 5 ] || fail "a sheet of fewer than five pages"
# "4 × 2–3" asks four sets.
asked=$(pdftotext "$pdf" - | grep -oE '^[0-9]+ ?× ?[0-9]' | awk '{ sets += $1 } END { print sets }')
key t
shows results
# As the sheet asked: Enter takes each set, as fast as a hand can press it; the last Enter is the button's.
PAUSE=0.03
for _ in $(seq "$asked"); do key Return; done
unset PAUSE
shows typed
key Return
expect "$asked" 'what: Set(' "sets of the class"
evening=$(since "$began")
shows saved

began=$(now)
key a
write "Noor Haddad"
key Tab
write "front"
key Tab
write "61.5"
key Return
expect 1 'name: "Noor Haddad"' "a new athlete"
new=$(since "$began")
expect 1 'WeighIn(bodyweight: kg(61.5)' "her bodyweight"
shows added
echo "$athletes athletes: find, mark, print, type $asked sets back in $evening; a new athlete in $new (pauses for pictures in both)"

# Off the roster and back, another name and back: records, each undone by one key.
key e Tab Tab Return
expect 1 'Archive(archived: true)' "an athlete archived"
shows archived
key ctrl+z
expect 1 'what: Retract(' "archived, undone"
key e
write "Somebody Else"
key Return
expect 1 'name: "Somebody Else"' "a rename"
shows renamed
key ctrl+z
expect 2 'what: Retract(' "renamed, undone"

# Typed and not saved: a kill costs nothing but the cell that is being typed.
key x x t
sleep 0.5
key Return Return Return
sleep 1
close -9
before=$(records 'what: Set(')
[ "$before" = "$asked" ] || fail "something was saved that nobody saved"
open --logbook "$logbook" --on $day
sleep "${READS:-2}"
shows typed-before
key t
sleep 0.5
shows typed-again
key ctrl+Return
expect $((asked + 3)) 'what: Set(' "what was typed before the kill"
key ctrl+z
expect 5 'what: Retract(' "a class taken back by one key"
shows taken-back

# How it looks, in both themes, at the desk and on a small laptop.
key ctrl+t
for theme in light dark; do
    for wide in 1440x900 1024x700; do
        size "${wide%x*}" "${wide#*x}"
        look() { shows "$1-$theme-${wide%x*}"; }
        key alt+1; look look-roster
        key a; look look-new; key Escape
        key e; look look-edit; key Escape
        key s; look look-sheet; key Escape
        key n; look look-note; key Escape
        key t; look look-results; key Escape
        key alt+9; look look-settings
        # The machines lie further down.
        xdotool mousemove 700 500; for _ in $(seq 12); do xdotool click 5; done; look look-machines
    done
    key ctrl+t
done
close
"$program" check "$logbook" >/dev/null || fail "check found something"
cp "$pdf" "$pictures/coach-$athletes.pdf"
echo "all there; pictures in $pictures"
