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
	even := make([]Lay, 0, len(lays))
	for _, lay := range lays {
		if lay.TurnDeg != 0 || lay.Grown != 0 {
			g.direct(p, v, lay)
			continue
		}
		even = append(even, lay)
	}
	if !g.summed(p, v, even) {
		for _, lay := range even {
			g.direct(p, v, lay)
		}
	}
}

// What the two ways cost, in nanoseconds, measured; only their ratios matter.
const (
	dotCost   = 15   // of a dot, of the pixels or of the tile
	pixelCost = 5    // more for each pixel that a dot may meet
	cellCost  = 9    // of a cell: cleared, painted, summed, read
	fewCost   = 1e6  // nothing is gained by summing what costs less
	mostCells = 4e6  // in one table: 32 MB
	partCost  = 60e3 // of beginning another part
)

// A summing is how lays are painted by way of the tile's sums.
type summing struct {
	tile    *tile
	windows []window
	parts   int
	whole   *sums // of all windows
}

// bySums returns how the lays are painted by way of the tile's sums, where that is quicker.
func (g *Ground) bySums(p *Plane, v View, lays []Lay) (summing, bool) {
	for _, lay := range lays {
		if lay.TurnDeg != 0 || lay.Grown != 0 {
			return summing{}, false
		}
	}
	side := 2*g.unit.reach*v.PxPerMM + 1
	single := g.dotsIn(p, v, lays) * (dotCost + pixelCost*side*side)
	if single < fewCost {
		return summing{}, false
	}
	t := g.tiled()
	if t == nil {
		return summing{}, false
	}
	s := summing{tile: t, windows: g.windows(t, p, v, lays)}
	cost := 0.0
	s.parts, s.whole, cost = t.parts(s.windows, p.H, sameLine/v.PxPerMM)
	return s, cost <= single
}

// summed paints the lays by way of the tile's sums where that is quicker, and
// reports whether it has.
func (g *Ground) summed(p *Plane, v View, lays []Lay) bool {
	s, ok := g.bySums(p, v, lays)
	switch {
	case !ok:
		return false
	case s.parts == 1:
		s.tile.paintOn(s.whole, p, v, s.windows, 0, p.H)
		return true
	}
	for i := range s.parts {
		s.tile.paint(p, v, s.windows, p.H*i/s.parts, p.H*(i+1)/s.parts)
	}
	return true
}

// parts returns into how many parts the rows of the plane are best cut, the lines of
// all windows as one part has them, and what the parts cost. More parts paint the tile more often, but on fewer lines: those of
// the windows that the part shows.
func (t *tile) parts(windows []window, rows int, same float64) (parts int, whole *sums, cost float64) {
	whole = t.fold(windows, same)
	parts, cost = 1, math.Inf(1)
	for n := 1; n <= 64 && n <= rows; n *= 2 {
		sum := float64(n) * (dotCost*t.cost + partCost)
		for i := range n {
			across, along := 0, 0
			for _, w := range windows {
				if from, to := w.rows(rows*i/n, rows*(i+1)/n); from < to {
					across, along = across+len(w.xs), along+to-from+1
				}
			}
			// Lines of several windows may be one.
			cells := float64(min(across, len(whole.xs))) * float64(min(along, len(whole.ys)))
			if cells > mostCells {
				sum = math.Inf(1)
			}
			sum += cellCost * cells
		}
		if sum < cost {
			parts, cost = n, sum
		}
	}
	return parts, whole, cost
}

// paint adds rows y0 up to y1 of the windows.
func (t *tile) paint(p *Plane, v View, windows []window, y0, y1 int) {
	var seen []window
	for _, w := range windows {
		if from, to := w.rows(y0, y1); from < to {
			w.ys, w.y0 = w.ys[from-w.y0:to-w.y0+1], from
			seen = append(seen, w)
		}
	}
	if len(seen) == 0 {
		return
	}
	t.paintOn(t.fold(seen, sameLine/v.PxPerMM), p, v, seen, y0, y1)
}

// paintOn adds rows y0 up to y1 of the windows, whose lines are those of s.
func (t *tile) paintOn(s *sums, p *Plane, v View, windows []window, y0, y1 int) {
	p.table = s.paint(t, v.PxPerMM, p.table)
	inBands(y0, y1, func(y0, y1 int) {
		for k, w := range windows {
			s.read(p, w, k, v.PxPerMM*v.PxPerMM, y0, y1)
			from, to := w.rows(y0, y1)
			p.settle(w.x0, from, w.x0+len(w.xs)-1, to)
		}
	})
}

// rows returns which of the rows y0 up to y1 the window shows.
func (w window) rows(y0, y1 int) (from, to int) { return max(y0, w.y0), min(y1, w.y0+len(w.ys)-1) }

// dotsIn returns about how many dots the lays would paint one by one.
func (g *Ground) dotsIn(p *Plane, v View, lays []Lay) float64 {
	dots := 0.0
	for _, lay := range lays {
		m := v.place(lay)
		if shown := g.within(m, v.shown(p, lay)); !shown.empty() {
			dots += g.dots(m.back(shown))
		}
	}
	return dots
}

// dots returns about how many dots of the ground lie in r.
func (g *Ground) dots(r rect) float64 {
	b := g.unit.box
	across := math.Max(math.Min(r.x1, b.x1)-math.Max(r.x0, b.x0), 0)
	along := math.Max(math.Min(r.y1, b.y1)-math.Max(r.y0, b.y0), 0)
	w, h := b.x1-b.x0, b.y1-b.y0
	switch len(g.periods) {
	case 0:
		if w > 0 && h > 0 {
			return g.unit.cost * across * along / (w * h)
		}
	case 1:
		d := g.periods[0]
		return g.unit.cost * math.Min((r.x1-r.x0+w)/math.Abs(d.X.MM()), (r.y1-r.y0+h)/math.Abs(d.Y.MM()))
	case 2:
		return g.unit.cost * (r.x1 - r.x0) * (r.y1 - r.y0) * 1e12 / math.Abs(cross(g.periods[0], g.periods[1]))
	}
	return 0
}

// windows returns what is seen of the tile in each lay. A ground whose one period
// leans has a window for each of its copies.
func (g *Ground) windows(t *tile, p *Plane, v View, lays []Lay) []window {
	var windows []window
	for _, lay := range lays {
		m := v.place(lay)
		shown := g.within(m, v.shown(p, lay))
		if shown.empty() {
			continue
		}
		if len(g.periods) == 1 && t.wide == 0 && t.high == 0 {
			copies(g.unit.box, g.periods, m.back(shown), func(d geom.Point) {
				if in := m.moved(d).over(t.box).and(shown); !in.empty() {
					windows = append(windows, t.window(m.moved(d), in))
				}
			})
		} else {
			windows = append(windows, t.window(m, shown))
		}
	}
	return windows
}

// A seen ground is painted cut-out by cut-out, where a lay shows it.
type seen struct {
	ground *Ground
	m      place
	shown  rect
	scale  float64
}

// seen returns what a lay shows, and whether it shows anything.
func (g *Ground) seen(p *Plane, v View, lay Lay) (seen, bool) {
	s := seen{ground: g, m: v.place(lay), scale: v.PxPerMM}
	s.shown = g.within(s.m, v.shown(p, lay))
	return s, !s.shown.empty()
}

// direct paints each cut-out in view on the pixels.
func (g *Ground) direct(p *Plane, v View, lay Lay) {
	s, ok := g.seen(p, v, lay)
	if !ok {
		return
	}
	x0, x1 := int(s.shown.x0), int(math.Ceil(s.shown.x1))
	inBands(int(s.shown.y0), int(math.Ceil(s.shown.y1)), func(y0, y1 int) {
		s.add(p, y0, y1)
		p.settle(x0, y0, x1, y1)
	})
}

// add adds what is shown in rows y0 up to y1.
func (s *seen) add(p *Plane, y0, y1 int) {
	top, bottom := math.Max(s.shown.y0, float64(y0)), math.Min(s.shown.y1, float64(y1))
	if top >= bottom {
		return
	}
	x, x0 := pixelAxis(s.shown.x0, s.shown.x1)
	y, from := pixelAxis(top, bottom)
	band := &grid[float32]{
		x: x, y: y, cells: p.sum[from*p.W+x0:], width: p.W,
		exact: s.ground.unit.reach*s.m.scale() > tableRadius,
	}
	window := s.m.back(rect{s.shown.x0, top, s.shown.x1, bottom})
	copies(s.ground.patch.box, s.ground.steps, window, func(d geom.Point) {
		band.store(s.ground.patch, s.m.moved(d), window.moved(d.Neg()), s.scale)
	})
	if band.rises != nil {
		band.raise()
	}
}

// within returns shown, cut down to the whole pixels that m puts the ground on.
func (g *Ground) within(m place, shown rect) rect {
	if len(g.unit.discs)+len(g.unit.curves) == 0 {
		return rect{}
	}
	on := m.over(g.unit.box)
	across := len(g.periods) == 0 || len(g.periods) == 1 && g.periods[0].X == 0 && m.b == 0
	along := len(g.periods) == 0 || len(g.periods) == 1 && g.periods[0].Y == 0 && m.b == 0
	if across {
		shown.x0, shown.x1 = math.Max(shown.x0, on.x0), math.Min(shown.x1, on.x1)
	}
	if along {
		shown.y0, shown.y1 = math.Max(shown.y0, on.y0), math.Min(shown.y1, on.y1)
	}
	return shown
}

// over returns the whole pixels that m puts a box of the ground on.
func (m place) over(r rect) rect {
	var out rect
	for i, c := range [4]vec{{r.x0, r.y0}, {r.x1, r.y0}, {r.x0, r.y1}, {r.x1, r.y1}} {
		x, y := m.a*c.x-m.b*c.y+m.e, m.b*c.x+m.a*c.y+m.f
		px := rect{math.Floor(x), math.Floor(y), math.Ceil(x), math.Ceil(y)}
		if i == 0 {
			out = px
		}
		out = out.with(px)
	}
	return out
}

func (r rect) moved(d geom.Point) rect {
	x, y := d.X.MM(), d.Y.MM()
	return rect{r.x0 + x, r.y0 + y, r.x1 + x, r.y1 + y}
}

// store adds what of s lies in the window, brought onto the grid by m.
func (g *grid[T]) store(s *store, m place, window rect, pxPerMM float64) {
	if len(s.discs) > 0 {
		g.discs(s, m, window)
	}
	s.curvesIn(window, func(c curve) { g.outline(c.shape, m.moved(c.move), pxPerMM) })
}

func (g *grid[T]) discs(s *store, m place, window rect) {
	scale := m.scale()
	s.near(window, func(run []disc) {
		for _, d := range run {
			g.weigh(m.a*d.x-m.b*d.y+m.e, m.b*d.x+m.a*d.y+m.f, d.r*scale, 1)
		}
	})
}
