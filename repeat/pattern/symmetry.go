package pattern

import (
	"errors"
	"math"

	"tsugime/repeat/geom"
)

// Recognised says which plane group a finished pattern has.
type Recognised struct {
	Group Group
	// Cell is the conventional cell, rounded to the grid: g's axes.
	Cell Lattice
	// Origin is where the group's table has its origin.
	Origin geom.Point
	// Primitive is the smallest cell that repeats, rounded to the grid, and
	// Copies how many of it the unit holds: 1 where the unit is as small as it
	// can be.
	Primitive Lattice
	Copies    int
}

// A symmetry is an operation that a pattern has: Op's linear part in the
// vectors of the primitive cell, and a shift in nanometres.
type symmetry struct {
	op   Op
	x, y float64
}

// Recognise returns the plane group of u: every turn, mirror and glide that
// takes each motif to one that looks the same, to geom.Alike. Shapes look the
// same where their contours do, segment by segment; the same rim drawn with
// other segments counts as another shape, and what overlaps is not united first.
func Recognise(u Unit) (Recognised, error) {
	if err := u.Lattice.Check(); err != nil {
		return Recognised{}, err
	}
	if len(u.Motifs) == 0 {
		return Recognised{}, errors.New("symmetry: the unit is empty; place a motif first")
	}
	whole := u.torus(frameOf(u.Lattice.Reduced()))
	cell, copies := whole.primitive()
	small := u.torus(cell)
	found := small.symmetries()
	r, ok := settle(found, small)
	if !ok {
		return Recognised{}, errors.New("symmetry: the pattern is just short of symmetric; put its motifs on their places to the micrometre")
	}
	r.Copies, r.Primitive = copies, cell.lattice()
	return r, nil
}

func (f frame) lattice() Lattice { return Lattice{f.point(1, 0), f.point(0, 1)} }

// torus returns the motifs of u on the torus of a cell, each once.
func (u Unit) torus(cell frame) *torus {
	g := newGallery()
	t := newTorus(g, cell, len(u.Motifs))
	for _, m := range u.Motifs {
		if it := g.item(m); t.find(it) < 0 {
			t.add(it)
		}
	}
	return t
}

// rarest returns the items that could be an image of each other, fewest first:
// those of the figure that is there least often.
func (t *torus) rarest() []int {
	var kinds [][]int
	for i, it := range t.items {
		k := 0
		for k < len(kinds) && !t.gallery.congruent(t.items[kinds[k][0]].figure, it.figure) {
			k++
		}
		if k == len(kinds) {
			kinds = append(kinds, nil)
		}
		kinds[k] = append(kinds[k], i)
	}
	best := kinds[0]
	for _, k := range kinds {
		if len(k) < len(best) {
			best = k
		}
	}
	return best
}

// has reports whether the operation takes every item to one that is there.
func (t *torus) has(s symmetry, turned stance) bool {
	for _, it := range t.items {
		x, y := t.cell.image(s.op, it.x, it.y)
		if t.find(item{it.figure, it.stance.under(turned), x + s.x, y + s.y}) < 0 {
			return false
		}
	}
	return true
}

// shifts goes through the ways that would take the first of the items to each
// other one under the linear part of o, and yields those that t has.
func (t *torus) shifts(o Op, among []int, yield func(symmetry) bool) {
	deg, mirrored := t.cell.turn(o)
	turned := stance{deg, mirrored}
	first := t.items[among[0]]
	x, y := t.cell.image(o, first.x, first.y)
	for _, i := range among {
		to := t.items[i]
		if !t.gallery.same(first.figure, first.stance.under(turned), to.figure, to.stance) {
			continue
		}
		if s := (symmetry{o, to.x - x, to.y - y}); t.has(s, turned) && !yield(s) {
			return
		}
	}
}

// primitive returns the smallest cell that repeats, its vectors the shortest,
// and how many of it t's cell holds.
func (t *torus) primitive() (cell frame, copies int) {
	var ways []symmetry
	t.shifts(Op{M: [2][2]int{{1, 0}, {0, 1}}}, t.rarest(), func(s symmetry) bool {
		ways = append(ways, s)
		return true
	})
	n := len(ways)
	// Every shift is a whole number of n-th parts of the cell. Rows (p, q) and
	// (0, r) span them all: Hermite's normal form.
	p, q, r := n, 0, n
	for _, s := range ways {
		u, v := t.cell.into(s.x, s.y)
		i, j := int(math.Round(u*float64(n))), int(math.Round(v*float64(n)))
		for i != 0 {
			k := p / i
			p, q, i, j = i, j, p-k*i, q-k*j
		}
		r = gcd(r, j)
		q = modulo(q, r)
	}
	ax, ay := t.cell.out(float64(p)/float64(n), float64(q)/float64(n))
	bx, by := t.cell.out(0, float64(r)/float64(n))
	return frame{ax, ay, bx, by}.reduced(), n
}

// reduced is Lattice.Reduced for vectors that are off the grid.
func (f frame) reduced() frame {
	for range 200 {
		if math.Hypot(f.ax, f.ay) > math.Hypot(f.bx, f.by) {
			f = frame{f.bx, f.by, f.ax, f.ay}
		}
		k := math.Round((f.ax*f.bx + f.ay*f.by) / (f.ax*f.ax + f.ay*f.ay))
		if k == 0 {
			break
		}
		g := frame{f.ax, f.ay, f.bx - k*f.ax, f.by - k*f.ay}
		if math.Hypot(g.bx, g.by) >= math.Hypot(f.bx, f.by) {
			break
		}
		f = g
	}
	return f
}

// rigid reports whether o keeps lengths on f, to Alike.
func (f frame) rigid(o Op) bool {
	deg, mirrored := f.turn(o)
	for _, c := range [2][2]float64{{1, 0}, {0, 1}} {
		x, y := f.out(c[0], c[1])
		wantX, wantY := stance{deg, mirrored}.apply(x, y)
		gotX, gotY := f.image(Op{M: o.M}, x, y)
		if math.Hypot(gotX-wantX, gotY-wantY) > float64(geom.Alike) {
			return false
		}
	}
	return true
}

// symmetries returns one operation of t for every linear part that has one; t's
// cell is primitive and reduced, so its entries are −1, 0 and 1.
func (t *torus) symmetries() []symmetry {
	var found []symmetry
	among := t.rarest()
	for n := range 81 {
		o := Op{M: [2][2]int{{n%3 - 1, n/3%3 - 1}, {n/9%3 - 1, n/27 - 1}}}
		if d := o.det(); d != 1 && d != -1 || !t.cell.rigid(o) {
			continue
		}
		t.shifts(o, among, func(s symmetry) bool {
			found = append(found, s)
			return false
		})
	}
	return found
}
