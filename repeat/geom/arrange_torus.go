package geom

import (
	"errors"
	"fmt"
	"math"
)

// A torus is the plane in which places that differ by periods are one place.
// Two vectors a and b span a cell. Where fewer periods are given, the others are
// stand-ins so long that nothing reaches its own copy.
type torus struct {
	a, b Point
	rank int // how many of a, b are periods: 0, 1 (a) or 2
	det  int64
	// The coordinates of a place in a and b are (x·ux + y·uy, x·vx + y·vy).
	ux, uy, vx, vy float64
}

// maxPeriod bounds a period's coordinates, so that the area of a cell and the
// products about it stay exact (2·1.5e9² < 2⁶³).
const maxPeriod = 1_500_000_000 * Nanometre

// newTorus returns the torus of the periods for things that lie in all.
func newTorus(all Box, periods []Point) (torus, error) {
	var t torus
	for _, p := range periods {
		if p.X.Abs() > maxPeriod || p.Y.Abs() > maxPeriod {
			return t, fmt.Errorf("period: %s, %s mm is out of bounds; keep it within %s mm", p.X, p.Y, maxPeriod)
		}
		if p == (Point{}) {
			return t, errors.New("period: 0, 0 mm repeats nothing; leave it out")
		}
	}
	const spare = 64
	across, along := all.Width()+spare, all.Height()+spare
	switch len(periods) {
	case 0:
		t.a, t.b = Point{X: across}, Point{Y: along}
	case 1:
		t.rank, t.a = 1, periods[0]
		// Square to the period and longer than everything.
		k := (float64(across) + float64(along)) / t.a.Norm()
		t.b = Point{-t.a.Y.Times(k), t.a.X.Times(k)}
	case 2:
		t.rank = 2
		t.a, t.b = reduced(periods[0], periods[1])
		if t.det = t.a.Cross(t.b); t.det < 0 {
			t.b, t.det = t.b.Neg(), -t.det
		}
		if t.det == 0 {
			return t, fmt.Errorf("periods: %s, %s and %s, %s mm are in line; give two that differ in direction",
				periods[0].X, periods[0].Y, periods[1].X, periods[1].Y)
		}
	default:
		return t, fmt.Errorf("periods: %d are too many; give two at most", len(periods))
	}
	det := t.area()
	t.ux, t.uy = float64(t.b.Y)/det, -float64(t.b.X)/det
	t.vx, t.vy = -float64(t.a.Y)/det, float64(t.a.X)/det
	return t, nil
}

// area returns the area of a cell in square nanometres.
func (t torus) area() float64 { return cross(t.a, t.b, Point{}) }

// reduced returns the shortest two vectors that make the lattice of a and b
// (Lagrange–Gauss reduction).
func reduced(a, b Point) (Point, Point) {
	for {
		if a.Dot(a) > b.Dot(b) {
			a, b = b, a
		}
		if a == (Point{}) {
			return a, b
		}
		n := int(math.Round(float64(a.Dot(b)) / float64(a.Dot(a))))
		shorter := b.Sub(a.Times(n))
		if n == 0 || shorter.Dot(shorter) >= b.Dot(b) {
			return a, b
		}
		b = shorter
	}
}

// at returns m times a and n times b.
func (t torus) at(m, n int32) Point { return t.a.Times(int(m)).Add(t.b.Times(int(n))) }

// coordinates returns p in units of a and b.
func (t torus) coordinates(p Point) (u, v float64) {
	x, y := float64(p.X), float64(p.Y)
	return float64(x*t.ux) + float64(y*t.uy), float64(x*t.vx) + float64(y*t.vy)
}

// canon returns the one copy of p that stands for all, exactly: two places are
// copies of each other where canon gives the same.
func (t torus) canon(p Point) Point {
	switch t.rank {
	case 0:
		return p
	case 1:
		if t.a.X.Abs() >= t.a.Y.Abs() {
			return p.Sub(t.a.Times(int(floorDiv(int64(p.X), int64(t.a.X)))))
		}
		return p.Sub(t.a.Times(int(floorDiv(int64(p.Y), int64(t.a.Y)))))
	}
	u, v := t.coordinates(p)
	p = p.Sub(t.at(int32(math.Floor(u)), int32(math.Floor(v))))
	// Rounding may have left p just outside the cell; whole numbers decide.
	m, n := floorDiv(p.Cross(t.b), t.det), floorDiv(t.a.Cross(p), t.det)
	if m == 0 && n == 0 {
		return p
	}
	return p.Sub(t.at(int32(m), int32(n)))
}

func floorDiv(a, m int64) int64 {
	q := a / m
	if a%m != 0 && (a < 0) != (m < 0) {
		q--
	}
	return q
}
