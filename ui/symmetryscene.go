package ui

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// markShare is how large a rotation point is shown, in pitches of the lattice.
const markShare = 0.035

// markSymmetry shows what the order's plane group does: the part to draw in
// hatched, rotation points by the shape of their order, mirrors solid, glides
// dashed.
func (s *draft) markSymmetry(sc *board.Scene) {
	o := s.w.Order()
	l := o.Unit.Lattice
	if o.Group == pattern.P1 || s.symmetry.hidden {
		return
	}
	domain, err := o.Group.Domain(l)
	if err != nil {
		return
	}
	elements, err := o.Group.Elements(l)
	if err != nil {
		return
	}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Hatch, Points: domain, Colour: worn().onCloth, Width: 0.7},
		board.Mark{Shape: board.Loop, Points: domain, Colour: worn().onCloth, Width: 2})
	window := geom.BoxOf(append([]geom.Point{{}, l.A, l.B, l.A.Add(l.B)}, domain...)...)
	for _, line := range runs(l, elements.Mirrors, window) {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: line[:], Colour: worn().onPaper, Width: 1.5})
	}
	for _, line := range runs(l, elements.Glides, window) {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line[:], Colour: worn().onPaper, Width: 1.5})
	}
	radius := float64(l.Pitch()) * markShare
	for _, p := range points(l, elements.Points, window) {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: turnShape(p, radius), Colour: worn().onPaper, Width: 2.5})
	}
}

// points returns the rotation points that lie in a window, each once.
func points(l pattern.Lattice, of []pattern.RotationPoint, window geom.Box) []pattern.RotationPoint {
	var out []pattern.RotationPoint
	met := map[geom.Point]bool{}
	window = window.Grown(geom.Alike)
	for _, p := range of {
		for _, shift := range l.Places(window.Moved(p.At.Neg())) {
			at := p.At.Add(shift)
			if window.Holds(at) && !met[at] && len(out) < mostMarks {
				met[at] = true
				out = append(out, pattern.RotationPoint{At: at, Order: p.Order})
			}
		}
	}
	return out
}

// runs returns the pieces of lines that cross a window, each once.
func runs(l pattern.Lattice, of []pattern.MirrorLine, window geom.Box) [][2]geom.Point {
	var out [][2]geom.Point
	met := map[[2]geom.Point]bool{}
	near := window.Grown(window.Width() + window.Height())
	for _, m := range of {
		for _, shift := range l.Places(near.Moved(m.At.Neg())) {
			piece, ok := across(m.At.Add(shift), m.Along, window)
			key := [2]geom.Point{coarse(piece[0]), coarse(piece[1])}
			if !ok || met[key] || len(out) == mostMarks {
				continue
			}
			met[key] = true
			out = append(out, piece)
		}
	}
	return out
}

// across cuts a line without end to a window; it is not ok where it misses it or
// only touches a corner.
func across(at, along geom.Point, window geom.Box) (piece [2]geom.Point, ok bool) {
	from, to := math.Inf(-1), math.Inf(1)
	clip := func(at, along, low, high geom.Length) bool {
		if along == 0 {
			return low-geom.Alike <= at && at <= high+geom.Alike
		}
		a, b := float64(low-at)/float64(along), float64(high-at)/float64(along)
		from, to = math.Max(from, math.Min(a, b)), math.Min(to, math.Max(a, b))
		return true
	}
	if !clip(at.X, along.X, window.Min.X, window.Max.X) || !clip(at.Y, along.Y, window.Min.Y, window.Max.Y) {
		return piece, false
	}
	if (to-from)*along.Norm() <= float64(geom.Alike) {
		return piece, false
	}
	on := func(t float64) geom.Point {
		return at.Add(geom.Point{X: along.X.Times(t), Y: along.Y.Times(t)})
	}
	return [2]geom.Point{on(from), on(to)}, true
}

// coarse puts a place on the micrometre, so that one line met twice is known.
func coarse(p geom.Point) geom.Point {
	round := func(x geom.Length) geom.Length {
		return geom.Length(math.Round(float64(x) / float64(geom.Micrometre)))
	}
	return geom.Point{X: round(p.X), Y: round(p.Y)}
}

// turnShape is the outline that stands for a rotation point: a lens for half
// turns, else the polygon with as many corners as the order.
func turnShape(p pattern.RotationPoint, radius float64) []geom.Point {
	at := func(x, y float64) geom.Point {
		return p.At.Add(geom.Point{X: geom.Length(math.Round(x * radius)), Y: geom.Length(math.Round(y * radius))})
	}
	if p.Order == 2 {
		return []geom.Point{at(0, -1.2), at(0.45, -0.5), at(0.6, 0), at(0.45, 0.5), at(0, 1.2), at(-0.45, 0.5), at(-0.6, 0), at(-0.45, -0.5)}
	}
	var ring []geom.Point
	for k := range p.Order {
		turn := 2 * math.Pi * (float64(k)/float64(p.Order) - 0.25)
		if p.Order == 4 {
			turn += math.Pi / 4
		}
		ring = append(ring, at(1.2*math.Cos(turn), 1.2*math.Sin(turn)))
	}
	return ring
}
