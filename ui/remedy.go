package ui

import (
	"fmt"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/stencil"
)

// A remedy is what can be done about a finding: in one edit at once, or in one
// that is worked out first.
type remedy struct {
	name func(w *Window) string
	when func(o document.Order) bool // nil for always
	do   func(w *Window)
}

// edited is a remedy by an edit.
func edited(name string, edit func(document.Order) (document.Order, error)) remedy {
	return remedy{named(name), nil, func(w *Window) { w.Edit(name, edit) }}
}

// remedies are what mends a finding from the window.
func remedies(f check.Finding) []remedy {
	ties := remedy{named("Propose Ties"), nil, (*Window).proposeTies}
	parts := remedy{named("Part into Two Sheets"), unsplit, (*Window).proposeSplit}
	switch f.Code {
	case "joint-step":
		again := edited("Lay the Ground Again", document.LayAgain)
		again.when = func(o document.Order) bool { return o.Ground.Ground != "" }
		return []remedy{again, edited("Fit to the Step", fitFirst)}
	case "ground-bent":
		return []remedy{edited("Change the Ground's Size", document.EaseGround), edited("Let It Repeat as It Comes", document.FreeGround)}
	case "star-turned":
		return []remedy{edited("Three Stars an End", threeStars)}
	case "back-centre-phase":
		return []remedy{edited("Match the Back Centre", matchBackCentre)}
	case "bolt-turn", "turn-unavoided", "seam-unmatched", "motif-unplaced", "bolt-short":
		return layingRemedies(f.Code)
	case "island", "band":
		return []remedy{ties, parts}
	case "tongue", "ribbon":
		return []remedy{{named("Draw a Tie There"), nil, func(w *Window) { w.drawTieAt(f) }}}
	case "web-thin":
		return []remedy{parts}
	case "tie-idle", "tie-open":
		return []remedy{{named("Take the Idle Ties Away"), nil, (*Window).takeIdleTies}}
	case "tie-hinge":
		return []remedy{ties, {named("Draw a Tie There"), nil, func(w *Window) { w.drawTieAt(f) }}}
	case "split-misses", "split-exceeds":
		return []remedy{{named("Propose the Split Anew"), nil, (*Window).proposeSplit}}
	case "split-lap":
		return []remedy{{lapName, nil, (*Window).lapEnough}}
	case "bench-tool", "bench-hole", "bench-web", "bench-pile":
		return benchRemedies(f)
	case "joint-crosses", "joint-thin", "joint-hand":
		return []remedy{{named("Let It Be Chosen"), byHand, (*Window).letJointBeChosen}}
	}
	return nil
}

func lapName(w *Window) string {
	return say("Lap by %s", w.unit().Format(w.Order().Limits.Joint, 3))
}

// remediesOf returns what can be done about a finding now.
func (w *Window) remediesOf(f check.Finding) []remedy {
	var can []remedy
	for _, r := range append(remedies(f), w.driftRemedies(f)...) {
		if r.when == nil || r.when(w.Order()) {
			can = append(can, r)
		}
	}
	return can
}

// firstMend is the first remedy for a finding of the station.
func (w *Window) firstMend() (remedy, bool) {
	for _, f := range w.findings() {
		if can := w.remediesOf(f); len(can) > 0 && w.stations[w.at].owns(f) {
			return can[0], true
		}
	}
	return remedy{}, false
}

func (w *Window) mendable() bool {
	_, ok := w.firstMend()
	return ok && w.Ready()
}

func (w *Window) mendFirst() {
	if r, ok := w.firstMend(); ok {
		r.do(w)
	}
}

func fitFirst(o document.Order) (document.Order, error) {
	fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step})
	if err != nil {
		return o, err
	}
	if len(fits) == 0 {
		return o, fmt.Errorf("fit: no lattice vector lies near the step; change the pitch or the step")
	}
	return document.ApplyFit(o, fits[0])
}

func threeStars(o document.Order) (document.Order, error) {
	stars := o.Sheet.Stars
	stars.PerEnd, stars.At = 3, nil
	return document.SetStars(o, stars)
}

func matchBackCentre(o document.Order) (document.Order, error) {
	g := o.Garment
	g.MatchBackCentre = true
	return document.SetGarment(o, g)
}

func unsplit(o document.Order) bool { return o.Sheet.Hold.Way != stencil.Split }

func byHand(o document.Order) bool { return len(o.Sheet.Joint.Line) > 0 }

// drawTieAt shows the place of a finding and lets a drag draw a tie.
func (w *Window) drawTieAt(f check.Finding) {
	s := w.stencilStation()
	s.look(f)
	s.draws.SetChecked(true)
	w.Say(say("Drag from paper to paper across the cut-out; T ends it."))
}

// lapEnough lets the second sheet lap by as much as a joint may be off.
func (w *Window) lapEnough() {
	w.Edit("Change Lap", func(o document.Order) (document.Order, error) {
		h := o.Sheet.Hold
		h.Second.Lap = o.Limits.Joint
		return document.SetHold(o, h)
	})
}
