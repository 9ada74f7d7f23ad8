package ui

import (
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A planKey tells which order and which rack a plan belongs to.
type planKey struct{ built, cutter int }

// A planned is the bench of a work, with each pass ready to be painted.
type planned struct {
	key    planKey
	bench  repeat.Bench
	passes [][]passGround // of each sheet
	found  []benchFinding
}

// A passGround is what one pass cuts.
type passGround struct {
	ground *raster.Ground
	places []geom.Point // where its cuts begin, in the order of the work
}

// A benchFinding is what the bench found, on which sheet and about which motif.
type benchFinding struct {
	check.Finding
	sheet   int
	motif   pattern.ID // 0 for none
	missing *bench.Missing
}

// planOf plans the bench of a work.
func planOf(work repeat.Work, key planKey, rack bench.Rack, rates bench.Rates) planned {
	p := planned{key: key, bench: work.Bench(rack, rates)}
	for i, s := range p.bench.Sheets {
		var grounds []passGround
		for _, pass := range s.Plan.Passes {
			places := pass.Places(s.Sheet, s.Number)
			grounds = append(grounds, passGround{raster.NewGround(shapesOf(s, pass, places)), places})
		}
		p.passes = append(p.passes, grounds)
		on := ""
		if len(p.bench.Sheets) > 1 {
			on = " on the " + [2]string{"first", "second"}[i] + " sheet"
		}
		p.found = append(p.found, benchFindings(s, i, on)...)
	}
	return p
}

// shapesOf are the holes of a pass, in the order of the work.
func shapesOf(s repeat.BenchSheet, pass bench.Pass, places []geom.Point) []geom.Shape {
	shapes := make([]geom.Shape, len(pass.Order))
	for i, k := range pass.Order {
		if pass.Stage == bench.Stars {
			shapes[i] = geom.DiscShape(places[i], s.Assignment.Star.Size)
			continue
		}
		shapes[i] = s.Sheet.CutOuts[k].Shape
	}
	return shapes
}

// benchFindings are what the bench finds on one sheet, the missing tools last, as
// check.Bench has them.
func benchFindings(s repeat.BenchSheet, sheet int, on string) []benchFinding {
	var found []benchFinding
	all := check.Bench(s.Assignment, s.Plan, on)
	for i, f := range all {
		b := benchFinding{Finding: f, sheet: sheet}
		if n := i - (len(all) - len(s.Assignment.Missing)); n >= 0 {
			b.missing = &s.Assignment.Missing[n]
			b.motif = b.missing.Motif
		}
		found = append(found, b)
	}
	return found
}

// A planner plans the bench in the background, only while it is shown; the newest
// wins.
type planner struct {
	w       *Window
	plan    planned // that is shown; its key is zero before the first
	running bool
	shown   func() // shows a new plan
}

// wanted is what a plan belongs to now.
func (p *planner) wanted() planKey { return planKey{p.w.built, p.w.cutterRead} }

// fresh reports whether the plan belongs to what is shown.
func (p *planner) fresh() bool { return p.w.built > 0 && p.plan.key == p.wanted() }

// freshen begins to plan what is shown, unless that is planned already.
func (p *planner) freshen() {
	cutter := p.w.cutterNow()
	if p.running || p.w.built == 0 || p.fresh() {
		return
	}
	key, work := p.wanted(), p.w.work
	p.running = true
	go func() {
		plan := planOf(work, key, cutter.Rack, cutter.Rates())
		later(func() {
			p.running = false
			if key != p.wanted() { // another is wanted by now
				p.freshen()
				return
			}
			p.plan = plan
			p.shown()
		})
	}()
}
