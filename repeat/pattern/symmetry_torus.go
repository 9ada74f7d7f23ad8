package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// An item is a motif as symmetry sees it: a figure in a stance at a place.
type item struct {
	figure int
	stance stance
	x, y   float64 // nanometres
}

func (g *gallery) item(m Motif) item {
	n := g.add(m.Shape)
	s := stance{degrees(m.TurnDeg), m.Mirrored}
	x, y := s.apply(g.figures[n].x, g.figures[n].y)
	return item{n, s, x + float64(m.At.X), y + float64(m.At.Y)}
}

// A torus holds items by their place in a cell, so that one is found without
// looking at all.
type torus struct {
	gallery *gallery
	cell    frame
	nu, nv  int     // buckets along the vectors of the cell
	ru, rv  float64 // Alike as a share of the cell
	buckets map[[2]int][]int
	items   []item
}

func newTorus(g *gallery, cell frame, expected int) *torus {
	t := &torus{gallery: g, cell: cell, buckets: map[[2]int][]int{}}
	area := math.Abs(cell.det())
	t.ru = float64(geom.Alike) * math.Hypot(cell.bx, cell.by) / area
	t.rv = float64(geom.Alike) * math.Hypot(cell.ax, cell.ay) / area
	side := max(1, int(math.Sqrt(float64(expected))))
	t.nu, t.nv = max(1, min(side, int(0.25/t.ru))), max(1, min(side, int(0.25/t.rv)))
	return t
}

// near calls see for each item that may lie within Alike of a place; see answers
// whether to go on.
func (t *torus) near(x, y float64, see func(i int) bool) {
	u, v := t.cell.into(x, y)
	lo, hi := int(math.Floor((u-t.ru)*float64(t.nu))), int(math.Floor((u+t.ru)*float64(t.nu)))
	down, up := int(math.Floor((v-t.rv)*float64(t.nv))), int(math.Floor((v+t.rv)*float64(t.nv)))
	for a := lo; a <= hi; a++ {
		for b := down; b <= up; b++ {
			for _, i := range t.buckets[[2]int{modulo(a, t.nu), modulo(b, t.nv)}] {
				if t.off(x-t.items[i].x, y-t.items[i].y) <= float64(geom.Alike) && !see(i) {
					return
				}
			}
		}
	}
}

// off returns how far a way is from a place of the lattice, for ways that are
// near one.
func (t *torus) off(x, y float64) float64 {
	u, v := t.cell.into(x, y)
	return math.Hypot(t.cell.out(u-math.Round(u), v-math.Round(v)))
}

// find returns the item that looks like it at the same place, or −1.
func (t *torus) find(it item) int {
	found := -1
	t.near(it.x, it.y, func(i int) bool {
		if have := t.items[i]; t.gallery.same(it.figure, it.stance, have.figure, have.stance) {
			found = i
		}
		return found < 0
	})
	return found
}

// add puts an item in.
func (t *torus) add(it item) {
	u, v := t.cell.into(it.x, it.y)
	at := [2]int{modulo(int(math.Floor(u*float64(t.nu))), t.nu), modulo(int(math.Floor(v*float64(t.nv))), t.nv)}
	t.buckets[at] = append(t.buckets[at], len(t.items))
	t.items = append(t.items, it)
}

func modulo(a, n int) int { return ((a % n) + n) % n }
