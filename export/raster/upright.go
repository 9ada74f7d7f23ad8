package raster

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// An upright is a ground whose periods have been set upright by a small shear: X =
// xx·x + xy·y and Y = yx·x + yy·y. With straight periods, as most grounds have, it is
// the ground itself.
type upright struct {
	tile
	xx, xy, yx, yy float64
}

// Limits of an upright. A lean of a hundredth turns a disc into an ellipse whose
// axes are a hundredth apart, which no tone shows.
const (
	uprightLean = 0.012
	uprightMost = 20_000 // discs in one repeat, where there is a choice
)

// setUpright returns the ground with upright periods; nil where none lie near the axes.
func (g *Ground) setUpright() *upright {
	one, two := geom.Point{X: geom.Millimetre}, geom.Point{Y: geom.Millimetre}
	u, v, s := one, two, g.unit
	across, along := false, false
	switch len(g.periods) {
	case 1:
		p := g.periods[0]
		switch {
		case math.Abs(float64(p.X)) <= uprightLean*math.Abs(float64(p.Y)):
			v, along = p, true
		case math.Abs(float64(p.Y)) <= uprightLean*math.Abs(float64(p.X)):
			u, across = p, true
		default:
			return nil
		}
	case 2:
		a, b := g.periods[0], g.periods[1]
		cells := 0
		if u, v, cells = nearUpright(a, b, g.unit.cost); cells == 0 {
			return nil
		}
		across, along = true, true
		s = g.unit.repeated(representatives(a, b, u, v, cells))
	}
	if u.X < 0 {
		u = u.Neg()
	}
	if v.Y < 0 {
		v = v.Neg()
	}
	ux, uy, vx, vy := u.X.MM(), u.Y.MM(), v.X.MM(), v.Y.MM()
	det := ux*vy - uy*vx
	t := &upright{xx: ux * vy / det, xy: -ux * vx / det, yx: -vy * uy / det, yy: vy * ux / det}
	if t.store = s; uy != 0 || vx != 0 {
		t.store = t.sheared(s)
	}
	t.domain = t.box
	if across {
		t.wide, t.domain.x0, t.domain.x1 = ux, 0, ux
	}
	if along {
		t.high, t.domain.y0, t.domain.y1 = vy, 0, vy
	}
	return t
}

// nearUpright returns periods of a lattice near x and y, as near as they can be
// without too many cells between them, and how many that is; zero for none.
func nearUpright(a, b geom.Point, cost float64) (u, v geom.Point, cells int) {
	for lean := leastLean; ; lean = math.Min(3*lean, uprightLean) {
		u, v = level(a, b, lean), upon(a, b, lean)
		n := math.Round(math.Abs(cross(u, v) / cross(a, b)))
		if n >= 1 && (n*cost <= uprightMost || n == 1) {
			return u, v, int(n)
		}
		if lean == uprightLean {
			if n >= 1 && n*cost <= mostTile {
				return u, v, int(n)
			}
			return u, v, 0
		}
	}
}

// sheared returns the store with the upright's shear. Discs stay discs.
func (t *upright) sheared(s *store) *store {
	put := func(x, y float64) vec { return vec{t.xx*x + t.xy*y, t.yx*x + t.yy*y} }
	discs := slices.Clone(s.discs)
	for i, d := range discs {
		p := put(d.x, d.y)
		discs[i] = disc{p.x, p.y, d.r}
	}
	curves := make([]curve, len(s.curves))
	for i, c := range s.curves {
		o := &outline{sign: c.shape.sign, pieces: c.shape.pieces}
		x, y := c.move.X.MM(), c.move.Y.MM()
		var rings [][]vec
		for _, r := range c.shape.rings(finestTone) {
			ring := make([]vec, len(r))
			for j, p := range r {
				ring[j] = put(p.x+x, p.y+y)
				o.box = o.box.Union(geom.BoxOf(geom.PtMM(ring[j].x, ring[j].y)))
			}
			rings = append(rings, ring)
		}
		for l := range o.flat {
			o.flat[l].Store(&rings)
		}
		curves[i] = curve{shape: o}
	}
	return newStore(discs, curves)
}
