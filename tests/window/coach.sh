#!/usr/bin/env bash
# A coach's evening in the real window, by keyboard only: find who can step up, mark five, print their sheet, type the results
# back, add an athlete, archive one. Prints how long it took. Not part of `cargo test`; needs what drive.sh needs, and pdftotext.
#
#   cargo build --release && bash tests/window/coach.sh target/release/rungwright /tmp/pictures 36
set -euo pipefail

program=$(realpath "${1:-target/release/rungwright}")
pictures=${2:-/tmp/rungwright-pictures}
athletes=${3:-36}
home=$(mktemp -d)
display=":${DISPLAY_NUMBER:-78}"
day=2026-11-26
mkdir -p "$pictures"
export HOME=$home XDG_STATE_HOME=$home/state XDG_DATA_HOME=$home/data XDG_CACHE_HOME=$home/cache XDG_CONFIG_HOME=$home/config
export RUNGWRIGHT_DEVICE=bench LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY || true
logbook=$home/gym
"$program" demo "$logbook" --athletes "$athletes" --on $day

Xvfb "$display" -screen 0 1440x900x24 -nolisten tcp >/dev/null 2>&1 &
xvfb=$!
for _ in $(seq 100); do [ -S "/tmp/.X11-unix/X${display#:}" ] && break; sleep 0.1; done
export DISPLAY=$display
app=
clean() {
    [ -n "$app" ] && kill "$app" 2>/dev/null || true
    kill "$xvfb" 2>/dev/null || true
    rm -rf "$home"
}
trap clean EXIT
fail() { echo "FAILED: $*" >&2; exit 1; }
key() { for k in "$@"; do xdotool key "$k"; sleep 0.35; done; }
write() { xdotool type --delay 40 "$1"; sleep 0.35; }
shot() { sleep 0.5; import -window "$window" "$pictures/coach-$athletes-$1.png"; }
sets() { cat "$logbook"/athletes/*/journal-bench.ron 2>/dev/null | grep -c 'what: Set' || true; }

"$program" --logbook "$logbook" --on $day &
app=$!
for _ in $(seq 200); do
    window=$(xdotool search --onlyvisible --name Rungwright 2>/dev/null | tail -1) || true
    [ -n "$window" ] && break
    sleep 0.1
done
[ -n "$window" ] || fail "no window"
xdotool windowfocus "$window"
xdotool windowsize "$window" 1440 900
sleep 2

began=$(date +%s.%N)
shot roster
key 3 # only those who step up
shot step-up
key x x x x x
shot marked
key 0 s
shot sheet
key Return
shot printed
pdf=$home/sheet-$day.pdf
for _ in $(seq 50); do [ -s "$pdf" ] && break; sleep 0.1; done
[ -s "$pdf" ] || fail "no sheet"
key t
shot results
# As the sheet asked: Enter takes each set; then Enter on the button saves.
for _ in $(seq 240); do xdotool key Return; sleep 0.25; [ "$(sets)" -gt 0 ] && break; done
sleep 0.5
shot saved
ended=$(date +%s.%N)
typed=$(sets)
[ "$typed" -gt 4 ] || fail "only $typed sets were saved"
key Escape a
began_new=$(date +%s.%N)
write "Noor Haddad"
key Tab
write "front"
key Tab
write "61.5"
shot new
key Return
sleep 0.5
ended_new=$(date +%s.%N)
shot added
grep -qs 'Noor Haddad' "$logbook"/athletes/*/journal-bench.ron || fail "no new athlete"
key e Tab Tab Return
sleep 0.5
shot archived
grep -qs 'Archive(archived: true)' "$logbook"/athletes/*/journal-bench.ron || fail "nobody was archived"
kill "$app"
wait "$app" 2>/dev/null || true
app=
"$program" check "$logbook" >/dev/null || fail "check found something"
cp "$pdf" "$pictures/coach-$athletes.pdf"
awk -v a="$began" -v b="$ended" -v c="$began_new" -v d="$ended_new" -v s="$typed" \
    'BEGIN { printf "find, mark, print, type %d sets back: %.1f s; a new athlete: %.1f s (pauses for pictures in both)\n", s, b - a, d - c }'
