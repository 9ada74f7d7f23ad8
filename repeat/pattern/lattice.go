package pattern

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// A Lattice is the two ways by which a unit repeats. The zero Lattice repeats
// nothing and is refused by Check.
type Lattice struct{ A, B geom.Point }

// Limits of a lattice. MinPitch is far below what an awl can cut; MaxPitch keeps
// every product of the package exact.
const (
	MinPitch = 10 * geom.Micrometre
	MaxPitch = 1500 * geom.Millimetre
)

// Check returns an error where l can't repeat a unit: a vector missing or out of
// bounds, or the two in line.
func (l Lattice) Check() error {
	for _, v := range []geom.Point{l.A, l.B} {
		if v.X.Abs() > MaxPitch || v.Y.Abs() > MaxPitch {
			return fmt.Errorf("lattice: a vector reaches %s, %s mm; keep it within %s mm", v.X, v.Y, MaxPitch)
		}
	}
	r := l.Reduced()
	if r.A.Norm() < float64(MinPitch) || l.A.Cross(l.B) == 0 {
		return fmt.Errorf("lattice: the vectors %s, %s and %s, %s mm span no area; give two that differ in direction",
			l.A.X, l.A.Y, l.B.X, l.B.Y)
	}
	if height := math.Abs(float64(r.A.Cross(r.B))) / r.B.Norm(); height < float64(MinPitch) {
		return fmt.Errorf("lattice: the rows are %.6f mm apart; keep them at least %s mm apart",
			height/float64(geom.Millimetre), MinPitch)
	}
	return nil
}

// CellMM2 returns the area of one cell in square millimetres.
func (l Lattice) CellMM2() float64 {
	return math.Abs(float64(l.A.Cross(l.B))) / float64(geom.Millimetre*geom.Millimetre)
}

// Reduced returns the shortest two vectors that make the same lattice
// (Lagrange–Gauss reduction), the shorter one first.
func (l Lattice) Reduced() Lattice {
	a, b := l.A, l.B
	for range 200 { // each turn halves the longer vector at least
		if a.Dot(a) > b.Dot(b) {
			a, b = b, a
		}
		if a.Dot(a) == 0 {
			break
		}
		along, length := float64(a.Dot(b)), float64(a.Dot(a))
		if 2*math.Abs(along) <= length {
			break // a half stays, or the two would take turns
		}
		b = b.Sub(a.Times(int(math.Round(along / length))))
	}
	return Lattice{a, b}
}

// Pitch returns the distance between a place and its nearest copy.
func (l Lattice) Pitch() geom.Length { return l.Reduced().A.Distance(geom.Point{}) }

// At returns the place m times A and n times B from the origin.
func (l Lattice) At(m, n int) geom.Point { return l.A.Times(m).Add(l.B.Times(n)) }

// coordinates returns p in units of A and B.
func (l Lattice) coordinates(p geom.Point) (u, v float64) {
	ax, ay, bx, by := float64(l.A.X), float64(l.A.Y), float64(l.B.X), float64(l.B.Y)
	det := float64(l.A.Cross(l.B))
	x, y := float64(p.X), float64(p.Y)
	return (float64(x*by) - float64(y*bx)) / det, (float64(ax*y) - float64(ay*x)) / det
}

// Nearest returns the place of l nearest to p, as m times A and n times B, and
// the way from it to p. Where several are equally near, the one whose way Less
// puts first is taken, so that the answer is the same for p and any copy of it.
func (l Lattice) Nearest(p geom.Point) (m, n int, rest geom.Point) {
	r := l.Reduced()
	u, v := r.coordinates(p)
	mu, nv := int(math.Round(u)), int(math.Round(v))
	rest = p.Sub(r.At(mu, nv))
	best := rest
	// In a reduced basis the nearest place is among the neighbours of the rounded
	// one.
	for i := -1; i <= 1; i++ {
		for j := -1; j <= 1; j++ {
			q := rest.Sub(r.At(i, j))
			if d, e := q.Dot(q), best.Dot(best); d < e || d == e && q.Less(best) {
				best = q
			}
		}
	}
	fm, fn := l.coordinates(p.Sub(best))
	return int(math.Round(fm)), int(math.Round(fn)), best
}

// Holds reports whether p is a place of l: exactly, to the nanometre.
func (l Lattice) Holds(p geom.Point) bool {
	_, _, rest := l.Nearest(p)
	return rest == geom.Point{}
}

// Into returns the copy of p that lies in the cell: the one nearest to the
// cell's first corner by Nearest. Two points are copies of each other exactly
// when Into gives the same.
func (l Lattice) Into(p geom.Point) geom.Point {
	_, _, rest := l.Nearest(p)
	return rest
}

// Places returns the places of l that lie in the window, row by row of B.
func (l Lattice) Places(window geom.Box) []geom.Point {
	if window.Empty() {
		return nil
	}
	r := l.Reduced()
	corners := [4]geom.Point{
		window.Min, window.Max,
		{X: window.Min.X, Y: window.Max.Y}, {X: window.Max.X, Y: window.Min.Y},
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		_, v := r.coordinates(c)
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	var places []geom.Point
	for n := int(math.Floor(lo)); n <= int(math.Ceil(hi)); n++ {
		from, to, ok := r.run(n, window)
		if !ok {
			continue
		}
		for m := from; m <= to; m++ {
			if p := r.At(m, n); window.Holds(p) {
				places = append(places, p)
			}
		}
	}
	return places
}

// run returns which m keep row n in the window, with one to spare on each side.
func (l Lattice) run(n int, window geom.Box) (from, to int, ok bool) {
	lo, hi := math.Inf(-1), math.Inf(1)
	o := l.B.Times(n)
	clip := func(start, step, low, high geom.Length) {
		if step == 0 {
			if start < low || start > high {
				ok, lo, hi = false, 1, 0
			}
			return
		}
		a, b := float64(low-start)/float64(step), float64(high-start)/float64(step)
		lo, hi = math.Max(lo, math.Min(a, b)), math.Min(hi, math.Max(a, b))
	}
	clip(o.X, l.A.X, window.Min.X, window.Max.X)
	clip(o.Y, l.A.Y, window.Min.Y, window.Max.Y)
	if lo > hi+2 || math.IsInf(lo, 0) || math.IsInf(hi, 0) {
		return 0, 0, false
	}
	return int(math.Floor(lo)), int(math.Ceil(hi)), true
}

// Count returns about how many cells of l cover an area of the given size, for
// bounding work before it is begun.
func (l Lattice) Count(width, height geom.Length) float64 {
	return width.MM() * height.MM() / l.CellMM2()
}
