package raster

import (
	"sync/atomic"

	"tsugime/repeat/geom"
)

// A curve is an outline where it stands.
type curve struct {
	shape *outline
	move  geom.Point
}

// An outline keeps its straight pieces for the zooms at which it was seen.
type outline struct {
	of     geom.Outline
	box    geom.Box
	sign   float64 // 1 where the outer line turns clockwise on the sheet
	pieces int     // at the coarsest
	flat   [chordLevels]atomic.Pointer[[][]vec]
}

// A vec is a point in millimetres.
type vec struct{ x, y float64 }

// Straight pieces stay within chordPx of the true curve; on average they are a
// third nearer. Along a pixel's whole diagonal they are wrong by a third of a
// level: 0.0015·⅔·√2·255.
const chordPx = 0.0015

// The pieces are made for zooms in steps of two: level 0 serves up to 1.5 px/mm,
// with a chord of 1 µm, the last from 380 px/mm with 2 nm, twice the grid.
const (
	chordLevels = 10
	chordFirst  = geom.Micrometre
)

func newOutline(o geom.Outline) *outline {
	c := &outline{of: o, box: o.Bounds(), sign: 1}
	var area float64
	for _, r := range o.Rings(chordFirst) {
		area += r.Area2()
		c.pieces += len(r)
	}
	if area < 0 {
		c.sign = -1
	}
	return c
}

// rings returns the straight pieces that are fine enough at a scale.
func (o *outline) rings(pxPerMM float64) [][]vec {
	level, chord := 0, chordFirst
	for level < chordLevels-1 && chord.MM()*pxPerMM > chordPx {
		level, chord = level+1, max(chord/2, 2*geom.Nanometre)
	}
	if r := o.flat[level].Load(); r != nil {
		return *r
	}
	var rings [][]vec
	for _, r := range o.of.Rings(chord) {
		ring := make([]vec, len(r))
		for i, p := range r {
			ring[i] = vec{p.X.MM(), p.Y.MM()}
		}
		rings = append(rings, ring)
	}
	// Two goroutines may both get here: they make the same pieces.
	o.flat[level].Store(&rings)
	return rings
}

// outline adds an outline that is brought onto the grid by m.
func (g *grid[T]) outline(o *outline, m place, pxPerMM float64) {
	g.room()
	for _, ring := range o.rings(pxPerMM) {
		if len(ring) < 3 {
			continue
		}
		p := ring[len(ring)-1]
		x, y := m.a*p.x-m.b*p.y+m.e, m.b*p.x+m.a*p.y+m.f
		for _, p := range ring {
			nx, ny := m.a*p.x-m.b*p.y+m.e, m.b*p.x+m.a*p.y+m.f
			if o.sign > 0 {
				g.edge(x, y, nx, ny)
			} else {
				g.edge(nx, ny, x, y)
			}
			x, y = nx, ny
		}
	}
}

// room makes sure that there is room for what outlines add.
func (g *grid[T]) room() {
	if g.rises == nil {
		g.rises = make([]T, (len(g.y.edge)-1)*len(g.x.edge))
	}
}

// ring adds a closed run of straight pieces that is on the grid already; sign is
// −1 where its inside is on the other hand.
func (g *grid[T]) ring(ring []vec, sign float64) {
	a := ring[len(ring)-1]
	for _, b := range ring {
		if sign > 0 {
			g.edge(a.x, a.y, b.x, b.y)
		} else {
			g.edge(b.x, b.y, a.x, a.y)
		}
		a = b
	}
}
