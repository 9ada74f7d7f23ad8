package raster

import (
	"math"

	"tsugime/repeat/geom"
)

// Paint adds the cut area of one laying of the ground to the plane. Where two
// layings lie over one another their areas are added up to a whole pixel.
func (g *Ground) Paint(p *Plane, v View, lay Lay) { g.PaintAll(p, v, lay) }

// PaintAll adds several layings of the ground, as Paint does one by one, but at
// the price of one where many small ones are in view.
func (g *Ground) PaintAll(p *Plane, v View, lays ...Lay) {
	if !(v.PxPerMM > 0) || p.W == 0 || p.H == 0 {
		return
	}
	for _, lay := range lays {
		g.direct(p, v, lay)
	}
}

// direct paints each cut-out in view on the pixels.
func (g *Ground) direct(p *Plane, v View, lay Lay) {
	shown := v.shown(p, lay)
	if shown.empty() {
		return
	}
	m := v.place(lay)
	xs, x0 := pixelEdges(shown.x0, shown.x1)
	x := newAxis(xs)
	inBands(int(shown.y0), int(math.Ceil(shown.y1)), func(b0, b1 int) {
		ys, y0 := pixelEdges(math.Max(shown.y0, float64(b0)), math.Min(shown.y1, float64(b1)))
		band := &grid[float32]{
			x: x, y: newAxis(ys), cells: p.sum[y0*p.W+x0:], width: p.W,
			exact: g.unit.reach*v.PxPerMM > tableRadius,
		}
		window := m.back(rect{xs[0], ys[0], xs[len(xs)-1], ys[len(ys)-1]})
		g.copies(g.unit, window, func(d geom.Point) { band.store(g.unit, m.moved(d), window.moved(d.Neg()), v.PxPerMM) })
		if band.rises != nil {
			band.raise()
		}
		p.settle(x0, y0, x0+len(xs)-1, y0+len(ys)-1)
	})
}

func (r rect) moved(d geom.Point) rect {
	x, y := d.X.MM(), d.Y.MM()
	return rect{r.x0 + x, r.y0 + y, r.x1 + x, r.y1 + y}
}

// store adds what of s lies in the window, brought onto the grid by m.
func (g *grid[T]) store(s *store, m place, window rect, pxPerMM float64) {
	scale := m.scale()
	s.near(window, func(run []disc) {
		for _, d := range run {
			g.disc(m.a*d.x-m.b*d.y+m.e, m.b*d.x+m.a*d.y+m.f, d.r*scale)
		}
	})
	s.curvesIn(window, func(c curve) { g.outline(c.shape, m.moved(c.move), pxPerMM) })
}
