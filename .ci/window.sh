#!/usr/bin/env bash
# The main story in a real window under Xvfb: draft, place a dot, drag, nudge,
# undo, all stations, save, and a kill after an edit. It fails where the saved order is not the one that the
# story makes. Screenshots stay in out/window.
#   .ci/window.sh            the story
#   .ci/window.sh pictures   also copies the stations to assets/pictures
set -euo pipefail
cd "$(dirname "$0")/.."
for tool in Xvfb xdotool import; do
  command -v "$tool" >/dev/null || { echo "$tool is missing: apt-get install -y xvfb xdotool imagemagick"; exit 3; }
done

go build -o out/tsugime-desktop ./cmd/tsugime-desktop
CGO_ENABLED=0 go build -o out/tsugime ./cmd/tsugime

out=out/window
state=$(mktemp -d)
mkdir -p "$out"
# A display number that is free, told by the server itself.
exec 5<>"$state/display" 
Xvfb -displayfd 5 -screen 0 1600x1000x24 +extension GLX >/dev/null 2>&1 &
server=$!
program=
cleanup() {
  # The program may write its settings while it goes: wait until it has gone.
  [ -z "$program" ] || { kill "$program" && wait "$program"; } 2>/dev/null || true
  kill "$server" 2>/dev/null || true
  rm -rf "$state" || true
}
trap cleanup EXIT
for _ in $(seq 50); do [ -s "$state/display" ] && break; sleep 0.2; done
export DISPLAY=":$(head -1 "$state/display")" LANG=en_GB.UTF-8
export XDG_STATE_HOME="$state/state" XDG_CONFIG_HOME="$state/config" XDG_CACHE_HOME="$state/cache" FYNE_SCALE=1
mkdir -p "$XDG_STATE_HOME" "$XDG_CONFIG_HOME" "$XDG_CACHE_HOME"

order="$state/coat.tsugime"
out/tsugime start small-dot -o "$order"
cp "$order" "$state/before.tsugime"

# Opens the program on the order and gives its window place, size and focus: there is
# no window manager here.
begin() {
  out/tsugime-desktop "$order" >>"$out/log.txt" 2>&1 &
  program=$!
  local window=
  for _ in $(seq 100); do
    window=$(xdotool search --onlyvisible --name 'Tsugime$' 2>/dev/null | head -1) && [ -n "$window" ] && break
    sleep 0.2
  done
  [ -n "$window" ] || { echo "the window did not open:"; cat "$out/log.txt"; exit 1; }
  xdotool windowmove "$window" 0 0 windowsize "$window" 1600 1000 windowfocus "$window"
  sleep 3
}
: >"$out/log.txt"
begin

shot() { import -window root "$out/$1.png"; }
say() { printf -- '-- %s\n' "$*"; }
press() { local k; for k in "$@"; do xdotool key --clearmodifiers "$k"; sleep "${pause:-0.7}"; done; }
# In this size the surface lies between 303, 93 and 1272, 948; the whole view has
# the middle of the unit in its middle.
mid_x=800 mid_y=533
check_x=25 check_y=321 # "A click places a motif"
click() { xdotool mousemove "$1" "$2"; sleep 0.3; xdotool click 1; sleep 0.7; }
fail() { echo "$*"; shot failed; cat "$out/log.txt"; exit 1; }
# Saves and waits until the file is another than before.
save() {
  local before; before=$(stat -c %Y%i "$order")
  press ctrl+s
  for _ in $(seq 40); do [ "$(stat -c %Y%i "$order")" != "$before" ] && return; sleep 0.25; done
  fail "Ctrl+S saved nothing"
}
# The place of the newest disc, "x y" in mm.
place() { grep '"disc"' "$order" | tail -1 | sed -E 's/.*"at_mm": \[([-0-9.]+), ([-0-9.]+)\].*/\1 \2/'; }
discs() { grep -c '"disc"' "$order" || true; }
compare() { awk -v a="$1" -v b="$2" -v c="$3" -v d="$4" "BEGIN { exit !($5) }"; }

say "draft"
shot 1-draft
save
cmp "$order" "$state/before.tsugime" || fail "saving an order that was only opened has changed it"

say "place a dot in the middle of the unit"
click "$check_x" "$check_y"
click "$mid_x" "$mid_y"
click "$check_x" "$check_y"
save
[ "$(discs)" = 2 ] || fail "the saved order holds $(discs) motifs, not 2"
read -r x0 y0 < <(place)

say "drag it to the right"
xdotool mousemove "$mid_x" "$mid_y" mousedown 1
for step in 10 20 30 40; do xdotool mousemove $((mid_x + step)) "$mid_y"; sleep 0.1; done
shot 2-drag
xdotool mouseup 1
sleep 0.7
save
read -r x1 y1 < <(place)
compare "$x0" "$y0" "$x1" "$y1" 'c - a > 0.2 && c - a < 1.2 && d == b' || fail "dragged from $x0, $y0 to $x1, $y1"

say "nudge it down"
press Down
save
read -r x2 y2 < <(place)
compare "$x1" "$y1" "$x2" "$y2" 'c == a && d - b > 0.0099 && d - b < 0.0101' || fail "nudged from $x1, $y1 to $x2, $y2"

say "undo all of it"
press ctrl+z ctrl+z ctrl+z
save
cmp "$order" "$state/before.tsugime" || { diff "$order" "$state/before.tsugime" || true; fail "three undos did not lead back to the start"; }
say "and do it again"
press ctrl+shift+z ctrl+y ctrl+shift+z
save
read -r x3 y3 < <(place)
[ "$x3 $y3" = "$x2 $y2" ] || fail "done again at $x3, $y3, not $x2, $y2"

say "see every station"
press ctrl+z ctrl+z ctrl+z
pause=3 press ctrl+2; shot 3-stencil
click 148 319; sleep 2; shot 4-joint
pause=3 press ctrl+3; shot 5-bolt
pause=3 press ctrl+4; shot 6-garment
pause=3 press ctrl+5; shot 7-sheets
press ctrl+1
save
cmp "$order" "$state/before.tsugime" || fail "looking at the stations has changed the order"
out/tsugime check "$order" --fail-on fault >/dev/null || fail "the saved order has a fault"

say "killed after an edit, it offers what was kept"
kept="$XDG_STATE_HOME/tsugime/present"
click "$check_x" "$check_y"
click "$mid_x" "$mid_y"
click "$check_x" "$check_y"
for _ in $(seq 40); do [ "$(grep -c '"disc"' "$kept" 2>/dev/null)" = 2 ] && break; sleep 0.25; done
kill -9 "$program"
wait "$program" 2>/dev/null || true
cmp "$order" "$state/before.tsugime" || fail "the edit was saved before it was asked for"
begin
shot 8-kept
press Tab Tab space
save
[ "$(discs)" = 2 ] || fail "taken up, the saved order holds $(discs) motifs, not 2"
[ ! -e "$kept" ] || fail "what was saved is still kept"
grep -qi 'panic\|fyne error' "$out/log.txt" && fail "the program complained"

if [ "${1:-}" = pictures ]; then
  mkdir -p assets/pictures
  for station in 1-draft 3-stencil 4-joint 5-bolt 6-garment 7-sheets; do cp "$out/$station.png" "assets/pictures/window-${station#*-}.png"; done
fi
say "the window does what it should; its pictures are in $out"
