# For scripts that drive the real window in a virtual display; sourced, with `program`, `pictures` and `display_number` set.
# It makes a home of its own and a display, and takes both away at the end. It needs:
#   xvfb xdotool imagemagick libxcursor1 libxi6 libxkbcommon-x11-0

home=$(mktemp -d)
display=":${DISPLAY_NUMBER:-$display_number}"
mkdir -p "$pictures"
export HOME=$home XDG_STATE_HOME=$home/state XDG_DATA_HOME=$home/data XDG_CACHE_HOME=$home/cache XDG_CONFIG_HOME=$home/config
export RUNGWRIGHT_DEVICE=bench LIBGL_ALWAYS_SOFTWARE=1
unset WAYLAND_DISPLAY || true

Xvfb "$display" -screen 0 1440x900x24 -nolisten tcp -noreset >/dev/null 2>&1 &
xvfb=$!
for _ in $(seq 100); do [ -S "/tmp/.X11-unix/X${display#:}" ] && break; sleep 0.1; done
export DISPLAY=$display
app=
window=
clean() {
    [ -n "$app" ] && kill "$app" 2>/dev/null || true
    kill "$xvfb" 2>/dev/null || true
    rm -rf "$home"
}
trap clean EXIT

fail() { echo "FAILED: $*" >&2; exit 1; }
# Opens the window and waits until it is there; arguments of the program.
open() {
    "$program" "$@" >/dev/null &
    app=$!
    for _ in $(seq 600); do
        window=$(xdotool search --onlyvisible --name Rungwright 2>/dev/null | tail -1) || true
        [ -n "$window" ] && break
        sleep 0.1
    done
    [ -n "$window" ] || fail "no window"
    xdotool windowfocus "$window"
    xdotool windowsize "$window" 1440 900
    sleep "${SETTLE:-2}"
}
close() { kill "${1:--TERM}" "$app"; wait "$app" 2>/dev/null || true; app=; sleep 0.3; }
size() { xdotool windowsize "$window" "$1" "$2"; sleep 0.8; }
key() { for k in "$@"; do xdotool key "$k"; sleep "${PAUSE:-0.12}"; done; }
write() { xdotool type --delay 40 "$1"; sleep "${PAUSE:-0.12}"; }
# A picture of what stands once the window has come to rest.
shot() { sleep "${REST:-0.5}"; import -window "$window" "$pictures/$1.png"; }
# How many records of this device match a pattern.
records() { find "$logbook" -name 'journal-bench.ron' -exec cat {} + 2>/dev/null | grep -c "$1" || true; }
# Waits, a minute at most, until as many records as said match a pattern; then says what they are.
expect() { # how many, pattern, what
    for _ in $(seq 600); do [ "$(records "$2")" -ge "$1" ] && break; sleep 0.1; done
    local found
    found=$(records "$2")
    [ "$found" = "$1" ] || fail "$3: expected $1, found $found"
}
