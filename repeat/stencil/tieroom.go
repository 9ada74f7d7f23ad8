package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// A tieRoom is the room that ties leave one another: no two middle lines, of their
// copies either, come nearer than apart. Ties of one width w that keep twice w have
// a tie's width of cut-out between them, so that no thin sliver is left.
type tieRoom struct {
	mesh
	apart float64 // nanometres
	lines []side
	met   [][]meeting // of each part of the mesh
	parts [][]int     // that each line was put in
}

// roomFor returns the room for ties of that width about so many pieces of paper.
func (m *paperMap) roomFor(width geom.Length, pieces int) *tieRoom {
	size := math.Max(8*float64(width), math.Sqrt(m.det/float64(4*pieces+1)))
	r := &tieRoom{mesh: m.meshOf(size, 4*pieces+1)}
	r.met = make([][]meeting, r.nu*r.nv)
	return r
}

func (r *tieRoom) len() int { return len(r.lines) }

// take adds a tie if there is room for it.
func (r *tieRoom) take(t Tie) bool {
	a, b := placeOf(t.From), placeOf(t.To)
	home := r.home(a)
	s := side{a: home, b: b.add(home.sub(a))}
	if !r.free(s) {
		return false
	}
	r.lines = append(r.lines, s)
	r.parts = append(r.parts, nil)
	k := len(r.lines) - 1
	w := r.about(s, 0)
	for j := w.j0; j <= w.j1; j++ {
		row, tv := wrap(j, r.nv)
		for i := w.i0; i <= w.i1; i++ {
			col, tu := wrap(i, r.nu)
			part := row*r.nu + col
			r.met[part] = append(r.met[part], meeting{int32(k), int32(-tu), int32(-tv)})
			r.parts[k] = append(r.parts[k], part)
		}
	}
	return true
}

// giveBack takes out what was added last, down to so many.
func (r *tieRoom) giveBack(n int) {
	for k := len(r.lines) - 1; k >= n; k-- {
		for _, part := range r.parts[k] {
			r.met[part] = r.met[part][:len(r.met[part])-1]
		}
	}
	r.lines, r.parts = r.lines[:n], r.parts[:n]
}

// about returns the parts that a line meets, grown by so much.
func (r *tieRoom) about(s side, grown float64) window {
	lo := place{math.Min(s.a.x, s.b.x) - grown, math.Min(s.a.y, s.b.y) - grown}
	hi := place{math.Max(s.a.x, s.b.x) + grown, math.Max(s.a.y, s.b.y) + grown}
	return r.over(lo, hi)
}

// free reports whether a line keeps apart from all others.
func (r *tieRoom) free(s side) bool {
	if r.apart == 0 {
		return true
	}
	w := r.about(s, r.apart)
	for j := w.j0; j <= w.j1; j++ {
		row, tv := wrap(j, r.nv)
		for i := w.i0; i <= w.i1; i++ {
			col, tu := wrap(i, r.nu)
			for _, m := range r.met[row*r.nu+col] {
				o, by := &r.lines[m.i], r.shift(int(m.tu)+tu, int(m.tv)+tv)
				a, b := o.a.add(by), o.b.add(by)
				if lineGap(s.a, s.b, a, b) < r.apart {
					return false
				}
			}
		}
	}
	return true
}

// lineGap returns how far the pieces ab and cd lie apart.
func lineGap(a, b, c, d place) float64 {
	return pieces(rim{ax: a.x, ay: a.y, bx: b.x, by: b.y}, rim{ax: c.x, ay: c.y, bx: d.x, by: d.y}).width
}
