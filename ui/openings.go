package ui

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// An openings is a plain pattern made ready to be asked what lies where, as often
// as a pointer moves.
type openings struct {
	unit  pattern.Unit
	all   geom.Box
	index *geom.Index
}

func openingsOf(u pattern.Unit) openings {
	boxes := make([]geom.Box, len(u.Motifs))
	o := openings{unit: u}
	for i, m := range u.Motifs {
		boxes[i] = m.Placed().Bounds()
		o.all = o.all.Union(boxes[i])
	}
	o.index = geom.NewIndex(boxes)
	return o
}

// visit calls met with each motif and the lattice vector that takes box to where
// the motif stands in the unit, for all copies whose boxes meet box.
func (o openings) visit(box geom.Box, met func(m pattern.Motif, shift geom.Point) bool) {
	if len(o.unit.Motifs) == 0 {
		return
	}
	reach := geom.BoxOf(o.all.Min.Sub(box.Max), o.all.Max.Sub(box.Min))
	for _, shift := range o.unit.Lattice.Places(reach) {
		on := true
		o.index.Visit(box.Moved(shift), func(i int) bool {
			on = met(o.unit.Motifs[i], shift)
			return on
		})
		if !on {
			return
		}
	}
}

// open reports whether a place lies in a cut-out.
func (o openings) open(p geom.Point) bool {
	in := false
	o.visit(geom.BoxOf(p), func(m pattern.Motif, shift geom.Point) bool {
		in = m.Placed().Contains(p.Add(shift))
		return !in
	})
	return in
}

// homed returns a tie under the motif of which it takes most, moved by a lattice
// vector to where that motif stands in the unit, and the way back from there. It
// reports whether the tie takes anything.
func (o openings) homed(t stencil.Tie) (home stencil.Tie, back geom.Point, ok bool) {
	box := geom.Strip{From: t.From, To: t.To, Width: t.Width}.Ring().Bounds()
	var most float64
	o.visit(box, func(m pattern.Motif, shift geom.Point) bool {
		at := t
		at.Motif, at.From, at.To = m.ID, t.From.Add(shift), t.To.Add(shift)
		part, err := m.Placed().Within(geom.Strip{From: at.From, To: at.To, Width: at.Width})
		if err != nil {
			return true
		}
		if area := part.AreaMM2(); area > most {
			most, home, back = area, at, shift.Neg()
		}
		return true
	})
	return home, back, most > 0
}

// How an end of a tie looks for paper.
const (
	landReach = 15 * geom.Millimetre // how far beyond where it was let go
	landStep  = 8                    // steps in a width of the tie
)

// landed returns a tie whose ends reach just into paper: one that lies in a cut-out
// goes on, the way the tie was drawn, to the rim and half a width beyond. It
// reports whether both ends lie in paper.
func (o openings) landed(t stencil.Tie) (stencil.Tie, bool) {
	way := t.To.Sub(t.From)
	length := way.Norm()
	if length == 0 {
		return t, false
	}
	x, y := float64(way.X)/length, float64(way.Y)/length
	from, okFrom := o.land(t.From, -x, -y, t.Width)
	to, okTo := o.land(t.To, x, y, t.Width)
	t.From, t.To = snapped(from), snapped(to)
	return t, okFrom && okTo
}

// land goes from p the way x, y until half a width of the tie lies in paper.
func (o openings) land(p geom.Point, x, y float64, width geom.Length) (geom.Point, bool) {
	if !o.open(p) {
		return p, true
	}
	on := func(d geom.Length) geom.Point {
		return p.Add(geom.Point{X: geom.Length(math.Round(x * float64(d))), Y: geom.Length(math.Round(y * float64(d)))})
	}
	step := max(width/landStep, 10*geom.Micrometre)
	for d := step; d <= landReach; d += step {
		if o.open(on(d)) {
			continue
		}
		open, shut := d-step, d
		for shut-open > geom.Micrometre {
			if half := (open + shut) / 2; o.open(on(half)) {
				open = half
			} else {
				shut = half
			}
		}
		if beyond := on(shut + width/2); !o.open(beyond) {
			return beyond, true
		}
	}
	return p, false
}

// clear returns how far p is from the nearest cut-out that lies whole in the field,
// up to within; negative in a cut-out.
func (o openings) clear(p geom.Point, field stencil.Field, within geom.Length) geom.Length {
	best := within
	o.visit(geom.BoxOf(p).Grown(within), func(m pattern.Motif, shift geom.Point) bool {
		shape := m.Placed().Moved(shift.Neg())
		if b := shape.Bounds(); b.Min.X < field.Left || b.Max.X > field.Right() {
			return true
		}
		if d := distance(p, shape); d < best {
			best = d
		}
		return true
	})
	return best
}

// distance is the way from p to the rim of a shape, negative inside.
func distance(p geom.Point, s geom.Shape) geom.Length {
	if s.Round() {
		return p.Distance(s.Disc.Centre) - s.Disc.Diameter/2
	}
	best := math.Inf(1)
	for _, ring := range s.Rings(geom.Chord) {
		for i, b := range ring {
			best = math.Min(best, beside(p, ring[(i+len(ring)-1)%len(ring)], b))
		}
	}
	if s.Contains(p) {
		best = -best
	}
	return geom.Length(math.Round(best))
}

// beside is how far p is from the piece a–b, in nanometres.
func beside(p, a, b geom.Point) float64 {
	way, to := b.Sub(a), p.Sub(a)
	t := 0.0
	if l := way.Norm(); l > 0 {
		t = math.Min(math.Max((float64(to.X)*float64(way.X)+float64(to.Y)*float64(way.Y))/l/l, 0), 1)
	}
	return math.Hypot(float64(to.X)-t*float64(way.X), float64(to.Y)-t*float64(way.Y))
}
