#!/usr/bin/env bash
# The main story in a real window under Xvfb, with a real pointer and real keys: place a
# dot, drag it over the edge of the unit, nudge, undo, draw a motif, see every station and
# the joint, walk the bench, write the job folder, change language and look, save, be
# killed and take up again, leave in the middle of work. It fails where the saved order is
# not the one that the story makes. Screenshots stay in out/window.
#   .ci/window.sh            the story
#   .ci/window.sh pictures   also copies the stations to assets/pictures
set -euo pipefail
cd "$(dirname "$0")/.."
for tool in Xvfb xdotool import compare pdftotext pdftoppm; do
  command -v "$tool" >/dev/null || { echo "$tool is missing: apt-get install -y xvfb xdotool imagemagick poppler-utils"; exit 3; }
done
if [ -z "${TSUGIME_DISPLAY_OWN:-}" ]; then
  go build -o out/tsugime-desktop ./cmd/tsugime-desktop
  CGO_ENABLED=0 go build -o out/tsugime ./cmd/tsugime
  CGO_ENABLED=0 go build -o out/windowbench ./cmd/tsugime-desktop/windowbench
  TSUGIME_DISPLAY_OWN=1 exec .ci/display "$0" "$@"
fi

out=$PWD/out/window
rm -rf "$out"
mkdir -p "$out"
bin=$PWD/out
state=$(mktemp -d)
program=
cleanup() {
  # The program may write its settings while it goes: wait until it has gone.
  [ -z "$program" ] || { kill "$program" && wait "$program"; } 2>/dev/null || true
  rm -rf "$state" || true
}
trap cleanup EXIT
export LANG=en_GB.UTF-8 FYNE_SCALE=1 HOME="$state/home" TSUGIME_SIGNS="$state/signs"
export XDG_STATE_HOME="$state/state" XDG_CONFIG_HOME="$state/config" XDG_CACHE_HOME="$state/cache"
mkdir -p "$HOME" "$XDG_STATE_HOME" "$XDG_CONFIG_HOME" "$XDG_CACHE_HOME"
# Someone who has gone the first steps: the strip that tells them has tests of its own.
mkdir -p "$XDG_CONFIG_HOME/fyne/org.tsugime.Tsugime"
echo '{"first-steps":true}' >"$XDG_CONFIG_HOME/fyne/org.tsugime.Tsugime/preferences.json"
order="$HOME/coat.tsugime"
log="$out/log.txt"
: >"$log"

. .ci/window-hand

out/tsugime start small-dot -o "$order"
cp "$order" "$state/before.tsugime"
say "what can't be opened is told, with no window"
wrong() {
  local want=$1 words=$2 code=0
  shift 2
  "$@" >"$state/said" 2>&1 || code=$?
  [ "$code" = "$want" ] && grep -e "$words" "$state/said" >/dev/null || { cat "$state/said"; fail "$* leaves with $code, not with $want and the words: $words"; }
  ! grep -e 'panic\|goroutine' "$state/said" || fail "$* panics"
}
wrong 0 'tsugime-desktop' "$bin/tsugime-desktop" --version
wrong 0 'Use: tsugime-desktop' "$bin/tsugime-desktop" --help
wrong 2 '--help' "$bin/tsugime-desktop" --unknown
wrong 2 'give one' "$bin/tsugime-desktop" "$order" "$order"
wrong 3 'no such file' "$bin/tsugime-desktop" "$HOME/gone.tsugime"
wrong 3 'is a folder' "$bin/tsugime-desktop" "$HOME"
head -c 300 "$order" >"$HOME/half.tsugime"
wrong 3 'half.tsugime' "$bin/tsugime-desktop" "$HOME/half.tsugime"
wrong 3 'no display' env -u DISPLAY "$bin/tsugime-desktop" "$order"
wrong 3 "can't be opened" env DISPLAY=:987 "$bin/tsugime-desktop" "$order"
without_gl() { .ci/display --without-gl "$@"; }
wrong 3 'no OpenGL' without_gl "$bin/tsugime-desktop" "$order"
rm "$HOME/half.tsugime"

started=$(date +%s%3N)
begin
say "ready after $(($(date +%s%3N) - started)) ms"

say "draft"
shot 1-draft
save
same "saving an order that was only opened has changed it"

say "place a dot between the others"
read -r ax ay bx by < <(lattice)
read -r mx my < <(motif 1)
# The middle of a cell of the lattice is as far from the dots as can be. Which cell: the
# one that lies in the middle of the surface.
read -r cx cy < <(near_middle "$(sum "$mx" "$ax" "$bx" 0.5)" "$(sum "$my" "$ay" "$by" 0.5)")
press w
click_at "$cx" "$cy"
press w
until_sign 'changed=true' built
save
[ "$(motifs)" = 2 ] || fail "the saved order holds $(motifs) motifs, not 2"
read -r x0 y0 < <(motif 2)
on_lattice "$x0" "$y0" "$cx" "$cy" 0.02 || fail "clicked at $cx, $cy the dot is placed at $x0, $y0"

say "drag it over the edge of the unit: what leaves on one side enters on the other"
zoom=$(sign zoom)
read -r px py < <(on_screen "$cx" "$cy")
# By 0.8 of the lattice's first vector, with Shift held, so that nothing catches it.
gx=$(number "$ax * 0.8 * $zoom") gy=$(number "$ay * 0.8 * $zoom")
xdotool mousemove "$px" "$py" mousedown 1 keydown shift
for part in 0.1 0.3 0.5 0.7 0.9 1; do
  xdotool mousemove "$(round "$px + $part * $gx")" "$(round "$py + $part * $gy")"
  sleep 0.05
done
still
shot 2-drag
xdotool mouseup 1 keyup shift
until_sign 'changed=true' built
save
read -r x1 y1 < <(motif 2)
on_lattice "$(sum "$x0" "$(number "$ax * 0.8")")" "$(sum "$y0" "$(number "$ay * 0.8")")" "$x1" "$y1" 0.03 ||
  fail "dragged by 0.8 of $ax, $ay the dot went from $x0, $y0 to $x1, $y1"
read -r hx hy < <(near_middle "$x1" "$y1")
shot 3-dragged

say "nudge it down"
press Down
until_sign 'changed=true' built
save
read -r x2 y2 < <(motif 2)
compare_numbers "$x1" "$y1" "$x2" "$y2" 'c == a && d - b > 0.0099 && d - b < 0.0101' || fail "nudged from $x1, $y1 to $x2, $y2"
cp "$order" "$state/nudged.tsugime"

say "undo all of it, and do it again"
press ctrl+z ctrl+z ctrl+z
until_sign 'changed=true' built
save
same "three undos did not lead back to the start"
press ctrl+shift+z ctrl+y ctrl+shift+z
until_sign 'changed=true' built
save
cmp "$order" "$state/nudged.tsugime" || fail "done again, the order is another"
press ctrl+z ctrl+z ctrl+z
until_sign built

say "see every station"
go_to 2 Stencil
shot 4-stencil
press v
until_sign 'view="joint"'
shot 5-joint
go_to 3 Bolt
shot 6-bolt
go_to 4 Garment
shot 7-garment
go_to 5 Sheets
shot 8-sheets

say "walk the bench"
press ctrl+6
still
press Next
shot 9-bench
press Next
still
import -window root "$state/pass.png"
! compare -metric AE "$out/9-bench.png" "$state/pass.png" null: 2>/dev/null || fail "the next pass looks like the one before"

say "draw a motif with the pen: a triangle"
go_to 1 Draft
press d l g
read -r px py < <(on_screen "$cx" "$cy")
for corner in "-20 14" "20 14" "0 -22"; do
  read -r dx dy <<<"$corner"
  click $((px + dx)) $((py + dy))
done
still
shot 10-draw
press Return
until_sign 'changed=true' built
press Escape
save
shot 11-drawn
[ "$(motifs)" = 2 ] || fail "with the drawn motif the order holds $(motifs) motifs, not 2"
drawn_as_clicked "$px" "$py" "-20 14" "20 14" "0 -22" || fail "the drawn motif is not the triangle that was clicked"
cp "$order" "$state/drawn.tsugime"

say "write the job folder"
job="$HOME/coat-job"
write_job
until_true "the job folder is written" [ -s "$job/README.txt" ]
until_sign asking=false
shot 12-job
"$bin/tsugime" sheets "$order" -o "$state/job" >/dev/null 2>&1
diff -r "$job" "$state/job" || fail "the window's job folder is another than the command line's"
check_square "$job/transfer.pdf" || fail "the check square of the marking sheets does not measure 100 mm"
pdftotext -layout "$job/register.pdf" - | grep '= 6.0000 kane sun' >/dev/null || fail "the register sheet does not tell the step"

say "Japanese and back, lamp light and back"
go_to 1 Draft
import -window root "$state/day.png"
press ctrl+alt+j
shot 13-japanese
press ctrl+shift+d
shot 14-japanese-lamp
press ctrl+alt+e
shot 15-lamp
press ctrl+shift+l
still
import -window root "$state/day-again.png"
for other in 13-japanese 15-lamp; do
  ! compare -metric AE "$out/$other.png" "$state/day.png" null: 2>/dev/null || fail "$other looks as before"
done
cmp "$order" "$state/drawn.tsugime" || fail "looking at things has changed the order"
until_sign changed=false
press ctrl+z
until_sign changed=true built
save
same "with the drawn motif undone the order is not the one from the start"
"$bin/tsugime" check "$order" --fail-on fault >/dev/null || fail "the saved order has a fault"

say "killed in the midst of edits, it offers all but the last three seconds"
read -r px py < <(on_screen "$(awk "BEGIN { print $(number "$cx - ($ax + $bx) / 2") }")" "$(number "$cy - ($ay + $by) / 2")")
click "$px" "$py"
read -r x0 y0 < <(motif 1)
: >"$state/nudges"
for _ in $(seq 40); do
  xdotool key Down
  echo "${EPOCHREALTIME/./}" >>"$state/nudges"
  sleep 0.1
done
kill -9 "$program"
died=${EPOCHREALTIME/./}
wait "$program" 2>/dev/null || true
same "the edits were saved before it was asked for"
begin
until_sign asking=true
shot 16-kept
take_up
save
read -r x1 y1 < <(motif 1)
# What was nudged more than three seconds before the end is there; half a second more for
# the writing on a busy machine.
owed=$(awk -v end="$died" '$1 < end - 3.5e6' "$state/nudges" | wc -l)
got=$(awk -v a="$y0" -v b="$y1" 'BEGIN { printf "%d", (b - a) / 0.01 + 0.5 }')
say "   of $(wc -l <"$state/nudges") nudges $owed are owed, $got came back"
[ "$got" -ge "$owed" ] && [ "$owed" -gt 0 ] && [ "$x1" = "$x0" ] || fail "of $owed nudges $got came back"
[ -z "$(find "$XDG_STATE_HOME" -type f -exec grep -l '"motifs"' {} +)" ] || fail "what was saved is still kept"

for way in keys delete term int; do
  say "leaving by $way while the job folder is written"
  [ -n "$program" ] || begin
  rm -rf "$job"
  write_job
  until_sign busy=true
  sleep 0.2
  left=${EPOCHREALTIME/./}
  case "$way" in
    keys) press ctrl+q ;;
    delete) "$bin/windowbench" close ;;
    term) kill -TERM "$program" ;;
    int) kill -INT "$program" ;;
  esac
  gone
  whole_or_none
done

say "leaving while a picture is painted, and at rest"
begin
for _ in 1 2 3 4 5 6; do xdotool click 4; done
left=${EPOCHREALTIME/./}
press ctrl+q
gone

! grep -i 'panic\|fyne error.*thread\|error in fyne call' "$log" || fail "the program complained"

if [ "${1:-}" = pictures ]; then
  mkdir -p assets/pictures
  for station in 1-draft 4-stencil 5-joint 6-bolt 7-garment 8-sheets; do cp "$out/$station.png" "assets/pictures/window-${station#*-}.png"; done
fi
say "the window does what it should; its pictures are in $out"
