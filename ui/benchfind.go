package ui

import (
	"fmt"

	"tsugime/repeat/bench"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// findings are those of the work, and of the bench while it is shown.
func (w *Window) findings() []check.Finding {
	found := w.found()
	if b := w.shownBench(); b != nil {
		found = found[:len(found):len(found)]
		for _, f := range b.planner.plan.found {
			found = append(found, f.Finding)
		}
	}
	return found
}

// shownBench is the bench while it is shown, else nil.
func (w *Window) shownBench() *benchPlan {
	if s := w.stations[w.at]; w.at == sheetsAt && s.(*sheetsStation).benchShown() {
		return s.(*sheetsStation).plan
	}
	return nil
}

// finding is what the bench knows of one of its findings.
func (b *benchPlan) finding(f check.Finding) (benchFinding, bool) {
	for _, own := range b.planner.plan.found {
		if own.Finding == f {
			return own, true
		}
	}
	return benchFinding{}, false
}

// look goes to the first cut that a finding of the bench is about.
func (b *benchPlan) look(f check.Finding) {
	own, ok := b.finding(f)
	if !ok {
		return
	}
	b.s.toBench(own.sheet)
	s := b.sheet()
	for i, p := range s.Plan.Passes {
		for n, k := range p.Order {
			star := p.Stage == bench.Stars
			switch {
			case own.missing != nil && own.motif == 0 && star,
				own.missing != nil && !star && s.Sheet.CutOuts[k].Motif == own.motif,
				own.missing == nil && b.planner.plan.passes[b.number][i].places[n] == f.At:
				b.goTo(workStep{i, n}, true)
				return
			}
		}
	}
	if f.Code == "bench-web" {
		x, y := b.w.work.Scale.Cut()
		b.w.board.Near(geom.Point{X: f.At.X.Times(x), Y: f.At.Y.Times(y)}, 20)
	}
}

// benchRemedies are what can be done about a finding of the bench.
func benchRemedies(f check.Finding) []remedy {
	rack := remedy{named("Limits of Your Own…"), nil, (*Window).openLimits}
	switch f.Code {
	case "bench-tool":
		return []remedy{
			{named("Enter It in the Rack…"), nil, func(w *Window) { w.enterTool(f) }},
			{named("Snap the Dots to the Rack"), nil, (*Window).snapToRack},
		}
	case "bench-pile":
		return []remedy{{named("Bind Only as Many"), nil, (*Window).bindFewer}, rack}
	}
	return []remedy{rack}
}

// enterTool opens the rack with a tool that it lacks, ready to be added.
func (w *Window) enterTool(f check.Finding) {
	b := w.shownBench()
	if b == nil {
		return
	}
	own, ok := b.finding(f)
	if !ok || own.missing == nil {
		return
	}
	m := own.missing
	w.openRack()
	w.rack.write(bench.Tool{Kind: m.Kind, Number: w.cutter.Rack.FreeNumber(), Size: m.Size, Outline: m.Outline, Condition: bench.Sharp})
}

// snapToRack gives every dot the size that is cut by the nearest awl that the cutter
// or the order has.
func (w *Window) snapToRack() {
	rack := w.cutterNow().Rack.With(w.Order().OwnTools()...)
	var punches []document.Punch
	for _, t := range rack.Tools {
		if t.Kind == bench.Awl && t.Condition != bench.Broken {
			punches = append(punches, document.Punch{Name: t.Number, Diameter: w.cutScale(t.Size)})
		}
	}
	w.Edit("Snap the Dots to the Rack", func(o document.Order) (document.Order, error) { return document.SnapDotsTo(o, punches) })
}

// bindFewer makes the pile one that the methods are trusted with.
func (w *Window) bindFewer() {
	b := w.shownBench()
	if b == nil {
		return
	}
	w.Edit("Change Pile", func(o document.Order) (document.Order, error) {
		p := o.Sheet.Paper
		for _, s := range b.planner.plan.bench.Sheets {
			p.Pile = min(p.Pile, s.Plan.PileMost)
		}
		if p.Pile < 1 {
			return o, fmt.Errorf("pile: no method is trusted with a sheet; put limits of your own into the rack")
		}
		return document.SetPaper(o, p)
	})
}
