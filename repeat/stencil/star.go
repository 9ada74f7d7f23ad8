package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// An End says at which end of the sheet a star stands.
type End string

// The ends of a sheet.
const (
	Leading  End = "leading"  // set on the print before
	Trailing End = "trailing" // prints the mark for the next placement
)

// A Star is a register hole. Every feed star comes twice: leading at p, trailing
// at p one step on.
type Star struct {
	End      End
	At       geom.Point
	Diameter geom.Length
	Hidden   bool        // the seam covers it, or it lies within a motif's hole
	Clear    geom.Length // from its rim to the nearest cut-out's; negative within a hole
}

// A StarSet is the feed stars of a sheet and what was measured on them.
type StarSet struct {
	// Stars holds the leading ones, the outer left and right first, then their
	// trailing ones in the same order.
	Stars    []Star
	Baseline geom.Length // the longest distance between two leading stars
	// TurnedMisfit is by how much the set fails to fit in the best of the three
	// wrong ways to lay the sheet: turned, mirrored, upside down.
	TurnedMisfit geom.Length
	Square       SquareCheck
	Match        []MatchStar // of a set of sheets
}

// Leading returns the places of the leading stars.
func (s StarSet) Leading() []geom.Point {
	var at []geom.Point
	for _, star := range s.Stars {
		if star.End == Leading {
			at = append(at, star.At)
		}
	}
	return at
}

// Marking returns the places of the leading stars that leave a mark of their own on
// the cloth: one that lies within a cut-out leaves none.
func (s StarSet) Marking() []geom.Point {
	var at []geom.Point
	for _, star := range s.Stars {
		if star.End == Leading && star.Clear > -star.Diameter {
			at = append(at, star.At)
		}
	}
	return at
}

// A SquareCheck is the six measures by which a setter-out proves the four outer
// stars: widths along both ends, heights on both sides, and the two diagonals.
// In a true rectangle each pair is equal.
type SquareCheck struct {
	Top, Bottom geom.Length // left to right
	Left, Right geom.Length // leading to trailing
	Down, Up    geom.Length // the diagonals: top left to bottom right, bottom left to top right
}

// squareOf measures the outer stars; fewer than two a side give the zero check.
func squareOf(s StarSet) SquareCheck {
	n := len(s.Stars) / 2
	if n < 2 {
		return SquareCheck{}
	}
	a, b, c, d := s.Stars[0].At, s.Stars[1].At, s.Stars[n].At, s.Stars[n+1].At
	return SquareCheck{
		Top: a.Distance(b), Bottom: c.Distance(d),
		Left: a.Distance(c), Right: b.Distance(d),
		Down: a.Distance(d), Up: c.Distance(b),
	}
}

// longest returns the greatest distance between two of the points.
func longest(at []geom.Point) geom.Length {
	var most geom.Length
	for i, p := range at {
		for _, q := range at[:i] {
			most = max(most, p.Distance(q))
		}
	}
	return most
}

// turnedMisfit lays the stars in the three wrong ways and returns the least
// distance by which the worst star then misses, after the best shift. It is
// enough to match leading stars: trailing ones are the same a step on. Two
// stars an end always fit when turned by half a turn, so their misfit is zero.
func turnedMisfit(leading []geom.Point) geom.Length {
	if len(leading) == 0 {
		return 0
	}
	least := math.Inf(1)
	for _, way := range []geom.Affine{geom.Rotate(180), geom.Scale(-1, 1), geom.Scale(1, -1)} {
		wrong := make([]geom.Point, len(leading))
		for i, p := range leading {
			wrong[i] = way.Apply(p)
		}
		permute(wrong, 0, func() {
			shifts := make([]geom.Point, len(leading))
			for i, p := range leading {
				shifts[i] = p.Sub(wrong[i])
			}
			least = min(least, enclosingRadius(shifts))
		})
	}
	return geom.Length(math.Round(least))
}

// permute calls visit with p in every order; p is as it was afterwards.
func permute(p []geom.Point, from int, visit func()) {
	if from >= len(p)-1 {
		visit()
		return
	}
	for i := from; i < len(p); i++ {
		p[from], p[i] = p[i], p[from]
		permute(p, from+1, visit)
		p[from], p[i] = p[i], p[from]
	}
}

// enclosingRadius returns the radius of the smallest circle around the points,
// in nanometres. With so few points every circle on two or three of them is
// tried.
func enclosingRadius(p []geom.Point) float64 {
	best := math.Inf(1)
	try := func(cx, cy float64) {
		r := 0.0
		for _, q := range p {
			r = math.Max(r, math.Hypot(float64(q.X)-cx, float64(q.Y)-cy))
		}
		best = math.Min(best, r)
	}
	try(float64(p[0].X), float64(p[0].Y))
	for i, a := range p {
		for j, b := range p[:i] {
			try(float64(a.X+b.X)/2, float64(a.Y+b.Y)/2)
			for _, c := range p[:j] {
				if cx, cy, ok := circumcentre(a, b, c); ok {
					try(cx, cy)
				}
			}
		}
	}
	return best
}

// circumcentre returns the centre of the circle through three points that are
// not in line.
func circumcentre(a, b, c geom.Point) (x, y float64, ok bool) {
	bx, by := float64(b.X-a.X), float64(b.Y-a.Y)
	cx, cy := float64(c.X-a.X), float64(c.Y-a.Y)
	d := 2 * (float64(bx*cy) - float64(by*cx))
	if d == 0 {
		return 0, 0, false
	}
	b2, c2 := bx*bx+by*by, cx*cx+cy*cy
	return float64(a.X) + (cy*b2-by*c2)/d, float64(a.Y) + (bx*c2-cx*b2)/d, true
}
