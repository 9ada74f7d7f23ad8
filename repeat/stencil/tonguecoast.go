package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A coast is one line between an opening and paper, laid out in the plane: once
// around, or where it runs around the torus, two periods of it.
type coast struct {
	scene
	closed bool
	lap    int       // sides in one period
	sums   []float64 // of the crosses of the sides before each, from the first corner
	ways   []float64 // of their lengths
}

// A neck is a web between two places of a coast and the paper that it cuts off,
// which lies along the coast from p on to q.
type neck struct {
	*coast
	p, q       place
	from, to   landing
	width      float64
	root       bool    // no web: the paper beyond grows narrower
	area       float64 // square nanometres
	reach      float64
	tip        place
	start, end float64 // along the coast, in nanometres; end is the greater
}

// A landing is where on a coast a place is.
type landing struct {
	side  int
	share float64
}

func newCoast(b geom.Boundary) *coast {
	c := &coast{closed: b.Closed()}
	ring := b.Points
	box := b.Bounds()
	if !c.closed {
		ring = slices.Concat(b.Points, b.Points.Moved(b.Wrap), geom.Ring{b.Points[0].Add(b.Wrap.Times(2))})
		box = ring.Bounds()
	}
	f := frameIn(box)
	c.frame = &f
	sides := f.appendSides(nil, ring, 0)
	if c.lap = len(sides); !c.closed {
		// The last side goes back over all periods and is none.
		sides = sides[:len(sides)-1]
		c.lap = len(sides) / 2
		sides[0].before, sides[len(sides)-1].next = 0, int32(len(sides)-1)
	}
	c.scene.sides = f.sideGrid(sides)
	c.sums, c.ways = make([]float64, len(sides)+1), make([]float64, len(sides)+1)
	for i, s := range sides {
		c.sums[i+1] = c.sums[i] + s.a.sub(sides[0].a).cross(s.b.sub(sides[0].a))
		c.ways[i+1] = c.ways[i] + s.b.sub(s.a).norm()
	}
	return c
}

// frameIn returns a frame of the plane whose cell is the box.
func frameIn(box geom.Box) frame {
	f := frame{corner: placeOf(box.Min), a: place{float64(box.Width()) + 1, 0}, b: place{0, float64(box.Height()) + 1}}
	f.det, f.tallA, f.tallB = f.a.x*f.b.y, f.a.x, f.b.y
	return f
}

// necks returns the webs of the coast that cut off paper which reaches far enough.
func (c *coast) necks() []neck {
	sides := c.scene.sides.sides
	if c.closed && convex(sides) {
		return nil
	}
	w := &search{scene: &c.scene, reach: float64(TongueNeck)}
	for v := range sides {
		if !c.closed && v == 0 {
			continue // the coast is broken off here; its copy one lap on tells
		}
		w.fromCorner(int32(v))
	}
	var all []neck
	for _, l := range w.found {
		if n, ok := c.neckOf(l); ok {
			all = append(all, n)
		}
	}
	for _, l := range c.roots(float64(TongueNeck)) {
		if n, ok := c.neckOf(l); ok {
			n.root = true
			all = append(all, n)
		}
	}
	return all
}

// convex reports whether a line never turns towards the paper, so that no paper
// lies between two places of it.
func convex(sides []side) bool {
	return !slices.ContainsFunc(sides, func(s side) bool {
		in := sides[s.before]
		return in.b.sub(in.a).cross(s.b.sub(s.a)) < 0
	})
}

// neckOf returns the paper that a web of the coast cuts off, and whether it is
// paper and reaches far enough.
func (c *coast) neckOf(l link) (neck, bool) {
	n := neck{coast: c, p: l.p, q: l.q, width: l.width, from: c.land(l.p, l.ea), to: c.land(l.q, l.eb)}
	if n.from.at() > n.to.at() {
		n = n.turned()
	}
	area := c.area(n)
	if c.closed && area >= 0 {
		n = n.turned()
		area = c.area(n)
	}
	if area >= 0 || n.width <= grain || !c.closed && (n.from.at() == 0 || n.from.at() > float64(c.lap)) {
		return n, false
	}
	n.area = -area
	n.start = c.ways[n.from.side] + n.p.sub(c.scene.sides.sides[n.from.side].a).norm()
	n.end = n.start + c.way(n)
	if !c.closed && n.end-n.start >= c.ways[c.lap] || (n.end-n.start)/2 < TongueRatio*n.width {
		return n, false
	}
	n.tip, n.reach = n.farthest()
	return n, n.reach >= TongueRatio*n.width
}

func (n neck) turned() neck {
	n.p, n.q, n.from, n.to = n.q, n.p, n.to, n.from
	return n
}

func (s landing) at() float64 { return float64(s.side) + s.share }

// land returns where p lies on side i.
func (c *coast) land(p place, i int32) landing {
	s := &c.scene.sides.sides[i]
	d := s.b.sub(s.a)
	share := min(max(p.sub(s.a).dot(d)/d.dot(d), 0), 1)
	if share == 1 && (c.closed || int(s.next) > int(i)) {
		return landing{int(s.next), 0}
	}
	return landing{int(i), share}
}

// area returns the signed area of the coast from p on to q and back over the neck.
func (c *coast) area(n neck) float64 {
	sides := c.scene.sides.sides
	o := sides[0].a
	p, q := n.p.sub(o), n.q.sub(o)
	sum := c.sums[n.to.side] - c.sums[n.from.side]
	if n.to.at() < n.from.at() {
		sum += c.sums[len(sides)]
	}
	// The sums go from the start of p's side to the start of q's.
	a, b := sides[n.from.side].a.sub(o), sides[n.to.side].a.sub(o)
	return (sum - a.cross(p) + b.cross(q) + q.cross(p)) / 2
}

// way returns how long the coast is from p on to q.
func (c *coast) way(n neck) float64 {
	sides := c.scene.sides.sides
	way := c.ways[n.to.side] - c.ways[n.from.side] + n.q.sub(sides[n.to.side].a).norm() - n.p.sub(sides[n.from.side].a).norm()
	if n.to.at() < n.from.at() {
		way += c.ways[len(sides)]
	}
	return way
}

// corners goes through the corners between p and q.
func (n neck) corners(visit func(p place)) {
	sides := n.scene.sides.sides
	for i := n.from.side; i != n.to.side; {
		i = int(sides[i].next)
		visit(sides[i].a)
	}
}

// farthest returns the corner farthest from the neck, and how far it is.
func (n neck) farthest() (tip place, reach float64) {
	over := side{a: n.p, b: n.q}
	n.corners(func(p place) {
		x, _ := over.nearest(p)
		if d := x.sub(p).norm(); d > reach {
			tip, reach = p, d
		}
	})
	return tip, reach
}

// paper returns the ring around the paper that the neck cuts off.
func (n neck) paper() geom.Ring {
	ring := geom.Ring{n.p.point()}
	n.corners(func(p place) { ring = append(ring, p.point()) })
	return append(ring, n.q.point())
}

// onRim reports whether p is a corner of the coast.
func (n neck) onRim(p geom.Point) bool {
	at := placeOf(p)
	on := false
	n.scene.sides.visit(n.scene.sides.within(at, 1), func(i int32, by place) bool {
		on = n.scene.sides.sides[i].a.add(by) == at
		return !on
	})
	return on
}

// readiest drops paper that is told by another neck: what lies on a tongue that
// lifts as readily, and what is little more than one that it holds.
func readiest(found []neck) []neck {
	slices.SortFunc(found, func(n, o neck) int {
		return cmp.Or(cmp.Compare(o.reach/o.width, n.reach/n.width), cmp.Compare(o.area, n.area),
			cmp.Compare(n.p.y, o.p.y), cmp.Compare(n.p.x, o.p.x))
	})
	kept := map[*coast][]neck{}
	var all []neck
	for _, n := range found {
		within, held, most := false, 0, 0.0
		for _, o := range kept[n.coast] {
			if o.holds(n) {
				within = true
				break
			}
			if n.holds(o) {
				held, most = held+1, math.Max(most, o.area)
			}
		}
		if !within && (held == 0 || held > 1 || n.area >= 2*most) {
			kept[n.coast] = append(kept[n.coast], n)
			all = append(all, n)
		}
	}
	return all
}

// holds reports whether the paper of o lies within n's, but for the width of a
// touch.
func (n neck) holds(o neck) bool {
	const touch = float64(geom.Touch)
	lap := n.ways[n.lap]
	for _, by := range [3]float64{-lap, 0, lap} {
		if o.start+by >= n.start-touch && o.end+by <= n.end+touch {
			return true
		}
	}
	return false
}
