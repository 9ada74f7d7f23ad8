package raster

import (
	"math"
	"sync"
)

// tones keeps what a ground looks like through the wide footprint: for a few zooms,
// made as they are asked for. It serves any number of goroutines.
type tones struct {
	once sync.Once
	of   *upright // nil where the ground can't be set upright
	fine fineCells

	mu   sync.Mutex
	made map[int]*tone
	kept []int // the stages that are made, the one longest unused first
}

// fineCells is the cut area of an upright ground in even cells that are several times
// finer than its holes lie.
type fineCells struct {
	nx, ny int
	dx, dy float64 // of a cell, millimetres
	cut    []float32
}

// Limits of what is kept.
const (
	discCells  = 6    // fine cells from disc to disc
	lineCells  = 8    // where there are outlines, whose straight edges have more short waves
	mostFine   = 12e6 // fine cells
	mostTones  = 9    // stages: zooms up to 22 times each other
	mostTone   = 12e6 // cells of a tone
	finestTone = 40.0 // pixels to a millimetre, for straight pieces of curves
)

// cells paints the ground on its fine cells.
func (t *upright) cells(pitch float64) fineCells {
	per := discCells
	if len(t.curves) > 0 {
		per = lineCells
	}
	w, h := t.domain.x1-t.domain.x0, t.domain.y1-t.domain.y0
	side := math.Max(pitch/float64(per), math.Sqrt(w*h/mostFine))
	f := fineCells{nx: max(int(math.Ceil(w/side)), 1), ny: max(int(math.Ceil(h/side)), 1)}
	f.dx, f.dy = w/float64(f.nx), h/float64(f.ny)
	f.cut = make([]float32, f.nx*f.ny)
	edges := func(from, step float64, n int) []float64 {
		e := make([]float64, n+1)
		for i := range e {
			e[i] = from + float64(i)*step
		}
		return e
	}
	x := newAxis(edges(t.domain.x0, f.dx, f.nx))
	inBands(0, f.ny, func(j0, j1 int) {
		y := newAxis(edges(t.domain.y0+float64(j0)*f.dy, f.dy, j1-j0))
		g := &grid[float32]{x: x, y: y, cells: f.cut[j0*f.nx:], width: f.nx, exact: t.reach > tableRadius*side}
		t.around(rect{x.edge[0], y.edge[0], x.edge[f.nx], y.edge[j1-j0]}, func(dx, dy float64, w rect) {
			g.store(t.store, place{a: 1, e: dx, f: dy}, w, finestTone)
		})
		if g.rises != nil {
			g.raise()
		}
		part := 1 / float32(f.dx*f.dy)
		for i, v := range f.cut[j0*f.nx : j1*f.nx] {
			// What lies over one another is open, and no more.
			f.cut[j0*f.nx+i] = min(v*part, 1)
		}
	})
	return f
}

// A tone is a ground through the footprint of one stage, at the crossings of even
// lines of the upright ground. Between them it goes straight.
type tone struct {
	of     *upright
	x0, y0 float64 // the first line each way, millimetres
	dx, dy float64 // between lines
	nx, ny int     // lines, one more than cells; where there is a period the last is the first
	at     []int16 // row by row, whole is open
}

// whole is what an open crossing has. The footprint can be over it by a hair.
const whole = 32000

// tone returns the ground's tone for a zoom, or nil where there is none.
func (g *Ground) tone(pxPerMM float64) *tone {
	c := &g.tones
	c.once.Do(func() {
		if c.of = g.setUpright(); c.of != nil {
			c.fine, c.made = c.of.cells(g.pitch), map[int]*tone{}
		}
	})
	if c.of == nil {
		return nil
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	k, knot := stage(pxPerMM)
	for i, o := range c.kept {
		if o == k {
			c.kept = append(append(c.kept[:i:i], c.kept[i+1:]...), k)
			return c.made[k]
		}
	}
	if len(c.kept) == mostTones {
		delete(c.made, c.kept[0])
		c.kept = c.kept[1:]
	}
	t := c.of.tone(&c.fine, knot)
	c.made[k], c.kept = t, append(c.kept, k)
	return t
}

// tone returns the tone of knots so far apart; nil where it would be too large.
func (t *upright) tone(f *fineCells, knot float64) *tone {
	cell := knot / knotCells
	line := func(from, to, period float64) (at, step float64, n int) {
		if period > 0 {
			n = int(math.Ceil(period / cell))
			return from, period / float64(n), n + 1
		}
		from, to = from-2*knot, to+2*knot
		n = int(math.Ceil((to - from) / cell))
		return from, (to - from) / float64(n), n + 1
	}
	o := &tone{of: t}
	o.x0, o.dx, o.nx = line(t.domain.x0, t.domain.x1, t.wide)
	o.y0, o.dy, o.ny = line(t.domain.y0, t.domain.y1, t.high)
	if float64(o.nx)*float64(o.ny) > mostTone {
		return nil
	}
	across := weigh(o.nx, o.x0-t.domain.x0, o.dx, f.nx, f.dx, knot, t.wide > 0)
	along := weigh(o.ny, o.y0-t.domain.y0, o.dy, f.ny, f.dy, knot, t.high > 0)
	half := f.across(across)
	o.at = make([]int16, o.nx*o.ny)
	inBands(0, o.ny, func(j0, j1 int) {
		row := make([]float32, o.nx)
		for j := j0; j < j1; j++ {
			clear(row)
			f.along(row, half, along[j])
			for i, v := range row {
				// To the nearest; the whole number added keeps it above nought.
				o.at[j*o.nx+i] = int16(int32(min(v, 1.02)*whole+whole+0.5) - whole)
			}
		}
	})
	return o
}

// across weighs every row of the fine cells.
func (f *fineCells) across(by []weights) []float32 {
	n, most := len(by), 0
	for _, w := range by {
		most = max(most, len(w.by))
	}
	half := make([]float32, n*f.ny)
	inBands(0, f.ny, func(j0, j1 int) {
		row := make([]float32, f.nx+most) // the begin once more at the end
		for j := j0; j < j1; j++ {
			copy(row, f.cut[j*f.nx:][:f.nx])
			for i := f.nx; i < len(row); i++ {
				row[i] = row[i-f.nx]
			}
			out := half[j*n:][:n]
			for i := range by {
				out[i] = product(by[i].by, row[by[i].from:])
			}
		}
	})
	return half
}

// along adds rows of half as they are weighed, four at a time.
func (f *fineCells) along(to, half []float32, w weights) {
	at := func(k int) []float32 { return half[(w.from+k)%f.ny*len(to):][:len(to)] }
	k := 0
	for ; k+4 <= len(w.by); k += 4 {
		a, b, c, d := at(k), at(k+1), at(k+2), at(k+3)
		wa, wb, wc, wd := w.by[k], w.by[k+1], w.by[k+2], w.by[k+3]
		for i := range to {
			to[i] += (wa*a[i] + wb*b[i]) + (wc*c[i] + wd*d[i])
		}
	}
	for ; k < len(w.by); k++ {
		for i, v := range at(k) {
			to[i] += w.by[k] * v
		}
	}
}

// product is the sum of a times v, in four sums side by side.
func product(a, v []float32) float32 {
	v = v[:len(a)]
	var s0, s1, s2, s3 float32
	for len(a) >= 4 && len(v) >= 4 {
		s0, s1, s2, s3 = s0+a[0]*v[0], s1+a[1]*v[1], s2+a[2]*v[2], s3+a[3]*v[3]
		a, v = a[4:], v[4:]
	}
	for i, b := range a {
		s0 += b * v[i]
	}
	return (s0 + s1) + (s2 + s3)
}
