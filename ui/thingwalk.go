package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// thingCommands go through what can be pointed at, and through the findings.
func thingCommands() []command {
	step := func(by int, kinds bool) func(*Window) { return func(w *Window) { w.stepThing(by, kinds) } }
	return []command{
		{"View", named("The Next Thing"), keys(key(fyne.KeyF6, 0)), canPoint, step(1, false)},
		{"View", named("The Thing Before"), keys(key(fyne.KeyF6, shift)), canPoint, step(-1, false)},
		{"View", named("The Next Kind of Thing"), keys(key(fyne.KeyF7, 0)), canPoint, step(1, true)},
		{"View", named("The Kind of Thing Before"), keys(key(fyne.KeyF7, shift)), canPoint, step(-1, true)},
		{"View", named("Show the Next Finding"), keys(key(fyne.KeyF8, 0)), findable, func(w *Window) { w.stepFinding(1) }},
		{"View", named("Show the Finding Before"), keys(key(fyne.KeyF8, shift)), findable, func(w *Window) { w.stepFinding(-1) }},
	}
}

// canPoint reports whether there are things to go through.
func canPoint(w *Window) bool {
	_, ok := w.stations[w.at].(pointable)
	return ok && w.craft() == nil && !w.board.Held()
}

// stepThing goes to the next thing or the one before, or to the first of the next kind.
func (w *Window) stepThing(by int, kinds bool) {
	all := w.things()
	if len(all) == 0 {
		w.Say(say("There is nothing to point at here yet."))
		return
	}
	at := slices.IndexFunc(all, func(t thing) bool { return t.key == w.pointing.at })
	next := at + by
	if at < 0 && by < 0 {
		next = -1
	}
	next = (next + len(all)) % len(all)
	for kinds && at >= 0 && all[next].key.kind == all[at].key.kind && next != at {
		next = (next + by + len(all)) % len(all)
	}
	for first := next - 1; kinds && by < 0 && first >= 0 && all[first].key.kind == all[next].key.kind; first-- {
		next = first
	}
	t := all[next]
	w.point(t)
	if t.choose != nil {
		t.choose()
	}
	w.show(t)
	w.Say(say("%d of %d: %s", next+1, len(all), t.words))
}

// point makes a thing the one that is pointed at.
func (w *Window) point(t thing) {
	w.pointing.at, w.pointing.lay = t.key, &t
	if slices.ContainsFunc(w.things(), func(o thing) bool { return o.key == t.key }) {
		w.pointing.lay = nil
	}
	w.repaint()
}

// leastThingPx is how large a thing is shown at least when the view goes to it.
const leastThingPx = 40

// show brings a thing into what is seen, large enough to be told.
func (w *Window) show(t thing) {
	b, box := w.board, t.box()
	seen := b.Seen()
	inner := seen.Grown(-min(seen.Width(), seen.Height()) / 16)
	size := max(box.Width(), box.Height()).MM()
	small := size > 0 && size*b.Scale() < leastThingPx
	switch {
	case inner.HoldsBox(box) && !small:
		w.repaint()
	case box.Width() > inner.Width() || box.Height() > inner.Height():
		b.Frame(box)
		w.repaint()
	case small:
		b.Near(box.Centre(), leastThingPx/size)
		w.repaint()
	default:
		b.Near(box.Centre(), b.Scale())
		w.repaint()
	}
}

// shownFindings are those of the station, in the order of the panel at the right.
func (w *Window) shownFindings() []check.Finding {
	var all []check.Finding
	for _, severity := range []check.Severity{check.Fault, check.Warning, check.Note} {
		for _, f := range w.findings() {
			if f.Severity == severity && w.stations[w.at].owns(f) {
				all = append(all, f)
			}
		}
	}
	return all
}

func findable(w *Window) bool { return w.craft() == nil && len(w.shownFindings()) > 0 }

// stepFinding shows the place of the next finding, or of the one before.
func (w *Window) stepFinding(by int) {
	all := w.shownFindings()
	at := slices.Index(all, w.foundAt)
	next := at + by
	if at < 0 && by < 0 {
		next = -1
	}
	next = (next + len(all)) % len(all)
	w.foundAt = all[next]
	w.stations[w.at].look(w.foundAt)
	w.Say(say("%d of %d: %s", next+1, len(all), severityShape(w.foundAt.Severity)+" "+told(w.foundAt.Text)+" "+told(w.foundAt.Remedy)))
}

// A pointer is the hand of a station that also tells and chooses what lies there.
type pointer struct {
	board.Hand
	w *Window
}

// Hover names what lies under the pointer, before its place.
func (p pointer) Hover(at geom.Point) {
	p.Hand.Hover(at)
	if t, ok := p.w.under(at, p.w.reach()); ok {
		p.w.pointer.SetText(t.words + "    " + p.w.pointer.Text)
	}
}

// Tap chooses what lies there, as the station does and as what is pointed at.
func (p pointer) Tap(at geom.Point, reach geom.Length, more bool) {
	before := p.w.status.Text
	p.Hand.Tap(at, reach, more)
	if more || p.w.craft() != nil {
		return
	}
	t, ok := p.w.under(at, reach)
	if !ok {
		p.w.pointing.at = thingKey{}
		p.w.repaint()
		return
	}
	p.w.point(t)
	if p.w.status.Text == before || p.w.status.Text == "" {
		p.w.Say(t.words)
	}
}
