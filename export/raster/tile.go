package raster

import (
	"math"

	"tsugime/repeat/geom"
)

// A tile is what is summed up once and read off everywhere: a store and the
// upright rectangle by which it repeats.
type tile struct {
	*store
	domain     rect       // one repeat; across an axis without a period, the box of the store
	wide, high float64    // the periods along x and y, zero for none
	u, v       geom.Point // the true periods that wide and high stand for
}

// Limits of a tile. A true period may point aside: a lean of 1.5e-6 for each
// millimetre along comes, over half a picture of 2600 pixels, to 0.002 of a pixel,
// half a level where paper meets an opening edge on, and a fifth of that in a
// ground of dots. Most lattices have short periods straight along both axes and
// lean not at all. Where such periods span more than mostTile dots, more lean is
// taken, step by step.
const (
	leastLean = 1.5e-6
	mostLean  = 1e-3
	mostTile  = 400_000
)

// cell returns periods of a lattice that run along x and along y, near enough
// that what they span costs at most mostTile, and how many cells that is; zero
// where there are none.
func cell(a, b geom.Point, cost float64) (u, v geom.Point, cells int) {
	for lean := leastLean; lean <= mostLean; lean *= 2 {
		u, v = level(a, b, lean), upon(a, b, lean)
		if n := math.Round(math.Abs(cross(u, v) / cross(a, b))); n >= 1 && n*cost <= mostTile {
			return u, v, int(n)
		}
	}
	return u, v, 0
}

// level returns the shortest period found that leans so little from x. The more a
// way aside counts, the nearer to its axis is the shortest period.
func level(a, b geom.Point, lean float64) (u geom.Point) {
	for i, weight := 0, 1.0; i < 48; i, weight = i+1, 2*weight {
		u, _ = shortest(a, b, 1, weight)
		if u.X != 0 && math.Abs(float64(u.Y)) <= lean*math.Abs(float64(u.X)) {
			return u
		}
	}
	return geom.Point{}
}

// upon is level along y.
func upon(a, b geom.Point, lean float64) geom.Point {
	v := level(geom.Point{X: a.Y, Y: a.X}, geom.Point{X: b.Y, Y: b.X}, lean)
	return geom.Point{X: v.Y, Y: v.X}
}

// representatives returns one lattice place for each cell of a and b that a tile
// of u and v holds, brought into the tile.
func representatives(a, b, u, v geom.Point, cells int) []geom.Point {
	det := cross(a, b)
	m1 := int(math.Round(cross(u, b) / det))
	m2 := int(math.Round(cross(v, b) / det))
	// The sublattice of u and v has a basis (g, ·), (0, cells/g) in units of a
	// and b (Hermite's normal form), with g the common divisor of what u and v
	// hold of a.
	g := gcd(m1, m2)
	places := make([]geom.Point, 0, cells)
	for i := range g {
		for j := range cells / g {
			p := a.Times(i).Add(b.Times(j))
			m, n := cross(p, v)/cross(u, v), cross(u, p)/cross(u, v)
			places = append(places, p.Sub(u.Times(int(math.Floor(m)))).Sub(v.Times(int(math.Floor(n)))))
		}
	}
	return places
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// tiled returns the ground's tile, made when it is first asked for, or nil where
// the ground has none that is worth it.
func (g *Ground) tiled() *tile {
	g.once.Do(func() { g.tile = g.makeTile() })
	return g.tile
}

func (g *Ground) makeTile() *tile {
	t := &tile{store: g.unit, domain: g.unit.box}
	switch {
	case len(g.periods) == 1 && g.periods[0].X == 0:
		t.v = g.periods[0]
	case len(g.periods) == 1 && g.periods[0].Y == 0:
		t.u = g.periods[0]
	case len(g.periods) == 2:
		a, b := g.periods[0], g.periods[1]
		u, v, cells := cell(a, b, g.unit.cost)
		if cells == 0 {
			return nil
		}
		t.u, t.v = u, v
		t.store = g.unit.repeated(representatives(a, b, u, v, cells))
	}
	if w := math.Abs(t.u.X.MM()); w > 0 {
		t.wide, t.domain.x0, t.domain.x1 = w, 0, w
	}
	if h := math.Abs(t.v.Y.MM()); h > 0 {
		t.high, t.domain.y0, t.domain.y1 = h, 0, h
	}
	return t
}

// repeated returns the store once for each place.
func (s *store) repeated(places []geom.Point) *store {
	discs := make([]disc, 0, len(s.discs)*len(places))
	curves := make([]curve, 0, len(s.curves)*len(places))
	for _, p := range places {
		x, y := p.X.MM(), p.Y.MM()
		for _, d := range s.discs {
			discs = append(discs, disc{d.x + x, d.y + y, d.r})
		}
		for _, c := range s.curves {
			curves = append(curves, curve{c.shape, c.move.Add(p)})
		}
	}
	return newStore(discs, curves)
}
