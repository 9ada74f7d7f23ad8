package report

import (
	"math"
	"slices"

	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// A reinforcing is what holds the paper of one sheet besides itself. Places are as
// cut, from the paper's top left corner.
type reinforcing struct {
	way     stencil.RibbonHold // what the ribbons ask for; "" where they are still enough
	every   geom.Length        // how far apart threads may lie along a ribbon
	level   []geom.Length      // threads across the sheet, by their distance from the top
	upright []geom.Length      // threads along the sheet, by their distance from the left
	gauze   geom.Box           // where gauze is stuck on; empty for nowhere
	ties    []tieCopy          // that may be cut away once the gauze is on
}

// How far gauze and threads reach beyond the field, and how many threads are drawn
// each way at most: our recommendation, no source.
const (
	gauzeBeyond  = 8 * geom.Millimetre
	threadBeyond = 8 * geom.Millimetre
	mostThreads  = 200
)

// reinforced reports whether an order has anything to reinforce.
func reinforced(w repeat.Work) bool {
	if ties(w) || skewed(w) {
		return true
	}
	return slices.ContainsFunc(w.Sheet.Set(), func(s stencil.Sheet) bool {
		return stencil.HoldRibbons(s.Ribbons, s.Unit.Lattice, w.Order.Limits.Joint) != ""
	})
}

// ties reports whether the order has ties that show on the cloth.
func ties(w repeat.Work) bool {
	return w.Order.Sheet.Hold.Way == stencil.WithTies && len(w.Order.Sheet.Hold.Ties) > 0
}

// skewed reports whether the sheet leans when it is pulled straight, which gauze mends.
func skewed(w repeat.Work) bool {
	return slices.ContainsFunc(w.Findings, func(f check.Finding) bool { return f.Code == "skew" })
}

// reinforcingOf proposes what holds a sheet: threads square to the ribbons, as far
// apart as they may be so that none moves by more than a joint may be off; gauze
// over the whole field where ribbons are many, the sheet leans, or ties are to go.
func reinforcingOf(w repeat.Work, s setSheet) reinforcing {
	limit := w.Order.Limits.Joint
	r := reinforcing{way: stencil.HoldRibbons(s.Ribbons, s.Unit.Lattice, limit)}
	field := patternField(s.Sheet)
	if ties(w) {
		r.ties = tieCopies(w, s)
	}
	if r.way == stencil.ByGauze || skewed(w) || len(r.ties) > 0 {
		r.gauze = field.Grown(gauzeBeyond).Intersect(s.Paper.Grown(-geom.Millimetre))
	}
	if r.way == "" || r.way == stencil.ByTies {
		return r
	}
	r.every = geom.Length(math.MaxInt64)
	var way geom.Point
	for _, x := range s.Ribbons {
		if x.Deflection > limit {
			if e := x.HeldEvery(limit); e < r.every {
				r.every, way = e, x.Along
			}
		}
	}
	x, y := ribbonWay(s.Sheet, way)
	r.lay(x, y, field)
	return r
}

// alike is how near the sheet's two moduli are where ribbons run neither way.
const alike = 1.1

// ribbonWay returns the way in which ribbons run, of length 1: a band's own; else
// that in which the sheet is stiffer; 0 where neither tells.
func ribbonWay(s stencil.Sheet, along geom.Point) (x, y float64) {
	if n := along.Norm(); n > 0 {
		return float64(along.X) / n, float64(along.Y) / n
	}
	across, down := s.Stiff.Across.Modulus, s.Stiff.Along.Modulus
	switch {
	case s.StiffFound && down > alike*across:
		return 0, 1
	case s.StiffFound && across > alike*down:
		return 1, 0
	}
	return 0, 0
}

// lay places threads evenly over a field, level ones where ribbons run rather along
// the sheet, upright ones where they run across it, both where the way isn't known.
func (r *reinforcing) lay(x, y float64, field geom.Box) {
	x, y = math.Abs(x), math.Abs(y)
	if y >= x {
		r.level = evenly(field.Min.Y, field.Max.Y, r.every, y)
	}
	if x > y || x == 0 && y == 0 {
		r.upright = evenly(field.Min.X, field.Max.X, r.every, x)
	}
}

// evenly parts a stretch by threads, as few as keep ribbons that lean to them by a
// share held every so far; 0 for a share that isn't known is taken for 1.
func evenly(from, to, every geom.Length, share float64) []geom.Length {
	if share > 0 {
		every = every.Times(share)
	}
	n := min((to-from+every-1)/max(every, 1), mostThreads+1)
	var at []geom.Length
	for i := geom.Length(1); i < n; i++ {
		at = append(at, from+(to-from)*i/n)
	}
	return at
}
