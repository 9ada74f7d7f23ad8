package ui

import (
	"slices"
	"strconv"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// A workStep is where one is in the work: a pass of the sheet, and one of its cuts; none
// for the sheet as a whole.
type workStep struct{ pass, cut int }

var wholeSheet = workStep{none, 0}

// passes are those of the sheet that is shown.
func (b *benchPlan) passes() []bench.Pass { return b.sheet().Plan.Passes }

// stepPass goes to the next pass, or the one before.
func (b *benchPlan) stepPass(by int) {
	n := len(b.passes())
	if n == 0 {
		return
	}
	pass := (b.walk.pass + by + n) % n
	if b.walk.pass == none && by < 0 {
		pass = n - 1
	}
	b.goTo(workStep{pass, 0}, false)
}

// stepCut goes to the next cut, or the one before, out of one pass into the other.
func (b *benchPlan) stepCut(by int) {
	passes := b.passes()
	if len(passes) == 0 {
		return
	}
	to := workStep{b.walk.pass, b.walk.cut + by}
	if b.walk.pass == none {
		to = workStep{}
	}
	for to.cut >= passes[to.pass].Count && to.pass+1 < len(passes) {
		to = workStep{to.pass + 1, to.cut - passes[to.pass].Count}
	}
	for to.cut < 0 && to.pass > 0 {
		to = workStep{to.pass - 1, to.cut + passes[to.pass-1].Count}
	}
	to.cut = min(max(to.cut, 0), passes[to.pass].Count-1)
	b.goTo(to, true)
}

// goTo shows a place of the work; near brings the cut into what is seen.
func (b *benchPlan) goTo(to workStep, near bool) {
	b.walk = to
	if near && to.pass != none && !b.w.board.Seen().Holds(b.place()) {
		b.w.board.Near(b.place(), max(b.w.board.Scale(), nearCut))
	}
	b.list.show(to.pass)
	b.chooseCut()
	b.w.repaint()
	b.w.right.show(b.s)
	b.w.Say(b.told())
}

// nearCut is how closely a cut is looked at at least, in pixels a millimetre.
const nearCut = 4

// place is where the present cut begins.
func (b *benchPlan) place() geom.Point {
	return b.planner.plan.passes[b.number][b.walk.pass].places[b.walk.cut]
}

// cutOut is the cut-out of the sheet that is cut now; not ok for a star or none.
func (b *benchPlan) cutOut() (int, bool) {
	if b.walk.pass == none || b.passes()[b.walk.pass].Stage == bench.Stars {
		return 0, false
	}
	return b.passes()[b.walk.pass].Order[b.walk.cut], true
}

// chooseCut makes the motif of the present cut the chosen one.
func (b *benchPlan) chooseCut() {
	var ids []pattern.ID
	if k, ok := b.cutOut(); ok {
		id, _ := drawnFrom(b.w.Order(), b.sheet().Sheet.CutOuts[k].Motif)
		ids = kept(b.w.Order(), []pattern.ID{id})
	}
	if !slices.Equal(ids, b.w.chosen) {
		b.w.choose(ids...)
	}
	b.form.refresh()
	b.showReason()
}

// told says where the work is.
func (b *benchPlan) told() string {
	if b.walk.pass == none {
		return say("The whole sheet.")
	}
	passes := b.passes()
	p := passes[b.walk.pass]
	return say("Pass %d of %d, %s with %s: cut %d of %d.", b.walk.pass+1, len(passes), say(string(p.Method)),
		toolWords(b.sheet(), p, b.w.unit()), b.walk.cut+1, p.Count)
}

// toolWords names the tool of a pass.
func toolWords(s repeat.BenchSheet, p bench.Pass, u geom.Unit) string {
	t, ok := s.Assignment.Rack.Tool(p.Tool)
	switch {
	case ok && (t.Kind == bench.Punch || strings.Contains(t.Number, u.Number(t.Size, 3))):
		return t.Number
	case ok:
		return t.Number + " (" + u.Format(t.Size, 3) + ")"
	case p.Size > 0:
		return say("%s, not in the rack", u.Format(p.Size, 3))
	}
	return say("not in the rack")
}

// hoursSoFar is how long the work has gone on when the present cut begins.
func (b *benchPlan) hoursSoFar() (hours float64) {
	for i, p := range b.passes() {
		if i == b.walk.pass {
			return hours + p.Hours*float64(b.walk.cut)/float64(max(p.Count, 1))
		}
		hours += p.Hours
	}
	return hours
}

// wayCuts is how many cuts before and after the present one the way is drawn.
const wayCuts = 600

// markWalk draws the way of the pass about the present cut: what was cut in dashes,
// what comes in a line, the present cut ringed and the next one pointed at.
func (b *benchPlan) markWalk(sc *board.Scene) {
	if b.walk.pass == none {
		return
	}
	places := b.planner.plan.passes[b.number][b.walk.pass].places
	at := b.walk.cut
	before, after := places[max(at-wayCuts, 0):at+1], places[at:min(at+wayCuts+1, len(places))]
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Dashes, Points: before, Colour: worn().soot, Width: 1},
		board.Mark{Shape: board.Line, Points: after, Colour: worn().soot, Width: 1.25})
	if len(after) > 1 {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Wedge, Points: after[1:2], Colour: worn().madder, Width: 2})
	}
	radius := b.sheet().Assignment.Star.Size / 2
	if k, ok := b.cutOut(); ok {
		radius = b.sheet().Assignment.Choices[k].Size * 3 / 4
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: places[at : at+1], Radius: radius, Colour: worn().madder, Width: 2.5})
	sc.Labels = append(sc.Labels, board.Label{
		At: places[at], Align: board.Above, Text: strconv.Itoa(at + 1), Colour: worn().fault, Bold: true, Size: 13, Shield: worn().shield,
	})
}
