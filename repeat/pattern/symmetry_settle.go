package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// settle returns the group whose operations, on some axes and about some origin,
// are those that were found.
func settle(found []symmetry, t *torus) (Recognised, bool) {
	axes := t.cell.axes()
	origins := t.origins(found)
	for _, e := range table {
		cells := 1.0
		if e.system == centredAxes {
			cells = 2
		}
		if len(e.ops) != int(cells)*len(found) {
			continue
		}
		for _, f := range axes {
			if math.Abs(math.Abs(f.det()/t.cell.det())-cells) > 1e-6 || !f.suits(e.system) || !t.turns(e, f, found) {
				continue
			}
			for _, o := range origins {
				if t.carries(e, f, o, found) {
					at := geom.Point{X: geom.Length(math.Round(o[0])), Y: geom.Length(math.Round(o[1]))}
					return Recognised{Group: e.group, Cell: f.lattice(), Origin: t.cell.lattice().Into(at)}, true
				}
			}
		}
	}
	return Recognised{}, false
}

// axes returns every pair of short vectors of the lattice.
func (f frame) axes() []frame {
	var short [][2]float64
	for _, c := range [][2]float64{{1, 0}, {0, 1}, {1, 1}, {1, -1}, {-1, 2}, {1, 2}, {2, 1}, {2, -1}} {
		x, y := f.out(c[0], c[1])
		short = append(short, [2]float64{x, y})
	}
	var pairs []frame
	for i, a := range short {
		for j, b := range short {
			if i != j {
				pairs = append(pairs, frame{a[0], a[1], b[0], b[1]}, frame{a[0], a[1], -b[0], -b[1]})
			}
		}
	}
	return pairs
}

// origins returns the places that some operation, with a shift of the lattice or
// none, leaves where they are or on their line.
func (t *torus) origins(found []symmetry) [][2]float64 {
	places := [][2]float64{{0, 0}}
	for _, s := range found {
		a, b, c, d := 1-float64(s.op.M[0][0]), -float64(s.op.M[0][1]), -float64(s.op.M[1][0]), 1-float64(s.op.M[1][1])
		det := a*d - b*c
		u, v := t.cell.into(s.x, s.y)
		for n := range 9 {
			p, q := u+float64(n%3-1), v+float64(n/3-1)
			switch {
			case det != 0: // a turn: (1 − M)·o = shift
				p, q = (d*p-b*q)/det, (a*q-c*p)/det
			case s.op.det() < 0: // a mirror: half the part across the line
				p, q = (a*p+b*q)/4, (c*p+d*q)/4
			default:
				continue
			}
			x, y := t.cell.out(p, q)
			places = append(places, [2]float64{x, y})
		}
	}
	return places
}

// linear returns o's linear part, written on f, in the vectors of t's cell.
func (t *torus) linear(f frame, o Op) (m [2][2]int, whole bool) {
	whole = true
	for j, c := range [2][2]float64{{1, 0}, {0, 1}} {
		x, y := t.cell.out(c[0], c[1])
		u, v := t.cell.into(f.image(Op{M: o.M}, x, y))
		m[0][j], m[1][j] = int(math.Round(u)), int(math.Round(v))
		whole = whole && math.Abs(u-math.Round(u)) < 0.01 && math.Abs(v-math.Round(v)) < 0.01
	}
	return m, whole
}

// turns reports whether each operation's linear part is among those found.
func (t *torus) turns(e groupEntry, f frame, found []symmetry) bool {
	for _, o := range e.ops {
		m, whole := t.linear(f, o)
		if _, ok := withTurn(found, m); !ok || !whole {
			return false
		}
	}
	return true
}

func withTurn(found []symmetry, m [2][2]int) (symmetry, bool) {
	for _, s := range found {
		if s.op.M == m {
			return s, true
		}
	}
	return symmetry{}, false
}

// carries reports whether each operation of e, on f about the origin, is one
// that was found. A shift is measured between two items and an origin follows
// from one, so each may be off by Alike, and both ends of it.
func (t *torus) carries(e groupEntry, f frame, origin [2]float64, found []symmetry) bool {
	for _, o := range e.ops {
		m, _ := t.linear(f, o)
		s, _ := withTurn(found, m)
		x, y := f.image(o, -origin[0], -origin[1]) // where (0, 0) goes, about the origin
		if t.off(x+origin[0]-s.x, y+origin[1]-s.y) > 4*float64(geom.Alike) {
			return false
		}
	}
	return true
}
