package geom

import "math"

// A lift says which copy of a thing is meant: the one moved by m·a + n·b.
type lift struct{ m, n int32 }

// An entry is a copy of a thing that reaches into a cell.
type entry struct {
	id   int32
	lift lift
}

// A cover is the box, or the straight line, that a thing covers, in coordinates
// of cells.
type cover struct {
	u0, v0, u1, v1 float64
	slanted        bool // the line from (u0, v0) to (u1, v1), with v0 <= v1
}

// A grid finds what lies near what on a torus. It parts one cell of the torus
// into smaller ones, about two for each thing.
type grid struct {
	t       torus
	nx, ny  int
	covers  []cover
	only    []bool // the cells that are filled; nil where all are
	start   []int32
	entries []entry // of cell c: entries[start[c]:start[c+1]]
}

// newGrid returns an empty grid for n things that are usually side long.
func newGrid(t torus, n int, side float64) *grid {
	most := float64(n + 1)
	cell := math.Max(side, math.Sqrt(t.area()/most))
	count := func(v Point) int { return int(math.Min(math.Max(v.Norm()/cell, 1), most)) }
	return &grid{t: t, nx: count(t.a), ny: count(t.b)}
}

// spare widens what a thing covers, in cells, to outweigh rounding.
const spare = 1e-6

// box returns what b covers.
func (g *grid) box(b Box) cover {
	ux, uy := g.t.ux*float64(g.nx), g.t.uy*float64(g.nx)
	vx, vy := g.t.vx*float64(g.ny), g.t.vy*float64(g.ny)
	low := func(kx, ky float64) float64 {
		return math.Min(kx*float64(b.Min.X), kx*float64(b.Max.X)) + math.Min(ky*float64(b.Min.Y), ky*float64(b.Max.Y)) - spare
	}
	high := func(kx, ky float64) float64 {
		return math.Max(kx*float64(b.Min.X), kx*float64(b.Max.X)) + math.Max(ky*float64(b.Min.Y), ky*float64(b.Max.Y)) + spare
	}
	return cover{u0: low(ux, uy), v0: low(vx, vy), u1: high(ux, uy), v1: high(vx, vy)}
}

// line returns what the straight line from p to q covers.
func (g *grid) line(p, q Point) cover {
	u0, v0 := g.place(p)
	u1, v1 := g.place(q)
	if v0 > v1 {
		u0, v0, u1, v1 = u1, v1, u0, v0
	}
	return cover{u0, v0, u1, v1, true}
}

// place returns p in cells.
func (g *grid) place(p Point) (u, v float64) {
	u, v = g.t.coordinates(p)
	return u * float64(g.nx), v * float64(g.ny)
}

// rows returns the first and last row that c covers.
func (c cover) rows() (from, to int) {
	return int(math.Floor(c.v0 - spare)), int(math.Floor(c.v1 + spare))
}

// row returns the first and last cell of row y that c covers.
func (c cover) row(y int) (from, to int) {
	u0, u1 := c.u0, c.u1
	if c.slanted {
		lo, hi := max(c.v0, float64(y)-spare), min(c.v1, float64(y+1)+spare)
		if k := c.v1 - c.v0; k > spare {
			slope := (c.u1 - c.u0) / k
			u0, u1 = c.u0+(lo-c.v0)*slope, c.u0+(hi-c.v0)*slope
		}
		u0, u1 = min(u0, u1)-spare, max(u0, u1)+spare
	}
	return int(math.Floor(u0)), int(math.Floor(u1))
}

// fill sorts what the covers cover into cells: count, sum up, place.
func (g *grid) fill(covers []cover) {
	g.covers = covers
	g.start = make([]int32, g.nx*g.ny+1)
	for _, c := range covers {
		from, to := c.rows()
		for y := from; y <= to; y++ {
			row := wrap(y, g.ny) * g.nx
			x0, x1 := c.row(y)
			for x := x0; x <= x1; x++ {
				if c := row + wrap(x, g.nx); g.only == nil || g.only[c] {
					g.start[c+1]++
				}
			}
		}
	}
	for c := 1; c < len(g.start); c++ {
		g.start[c] += g.start[c-1]
	}
	g.entries = make([]entry, g.start[len(g.start)-1])
	next := append([]int32(nil), g.start...)
	for i, c := range covers {
		from, to := c.rows()
		for y := from; y <= to; y++ {
			wy := wrap(y, g.ny)
			x0, x1 := c.row(y)
			for x := x0; x <= x1; x++ {
				wx := wrap(x, g.nx)
				if g.only != nil && !g.only[wy*g.nx+wx] {
					continue
				}
				at := &next[wy*g.nx+wx]
				g.entries[*at] = entry{int32(i), lift{int32((x - wx) / g.nx), int32((y - wy) / g.ny)}}
				*at++
			}
		}
	}
}

// mark lets fill pass by every cell that no marked thing covers.
func (g *grid) mark(c cover) {
	if g.only == nil {
		g.only = make([]bool, g.nx*g.ny)
	}
	from, to := c.rows()
	for y := from; y <= to; y++ {
		x0, x1 := c.row(y)
		for x := x0; x <= x1; x++ {
			g.only[wrap(y, g.ny)*g.nx+wrap(x, g.nx)] = true
		}
	}
}

// pairs calls found with things that share a cell: thing j moved by the shift
// may meet thing i, and i <= j. Boxes come once a pair, lines once a cell.
func (g *grid) pairs(found func(i, j int32, shift Point)) { g.pairsIn(0, g.nx*g.ny, found) }

// pairsIn is pairs for the cells from … to.
func (g *grid) pairsIn(from, to int, found func(i, j int32, shift Point)) {
	for cell := from; cell < to; cell++ {
		entries := g.entries[g.start[cell]:g.start[cell+1]]
		for k := 1; k < len(entries); k++ {
			f := entries[k]
			for _, e := range entries[:k] {
				if e == f || !g.first(e, f, cell) {
					continue
				}
				if e.id <= f.id {
					found(e.id, f.id, g.t.at(e.lift.m-f.lift.m, e.lift.n-f.lift.n))
				} else {
					found(f.id, e.id, g.t.at(f.lift.m-e.lift.m, f.lift.n-e.lift.n))
				}
			}
		}
	}
}

// first reports whether what two things cover overlaps, and shares no cell before
// this one. Of lines it says yes.
func (g *grid) first(e, f entry, cell int) bool {
	c, d := &g.covers[e.id], &g.covers[f.id]
	if c.slanted {
		return true
	}
	cu, cv := float64(int(e.lift.m)*g.nx), float64(int(e.lift.n)*g.ny)
	du, dv := float64(int(f.lift.m)*g.nx), float64(int(f.lift.n)*g.ny)
	u, v := max(c.u0-cu, d.u0-du), max(c.v0-cv, d.v0-dv)
	if u > min(c.u1-cu, d.u1-du)+spare || v > min(c.v1-cv, d.v1-dv)+spare {
		return false
	}
	start := func(lo, move float64) int { return int(math.Floor(lo)) - int(move) }
	return max(start(c.u0, cu), start(d.u0, du)) == cell%g.nx &&
		max(start(c.v0-spare, cv), start(d.v0-spare, dv)) == cell/g.nx
}

// near calls found with the things in the cell of p: p moved by the shift lies
// about thing i.
func (g *grid) near(p Point, found func(i int32, shift Point)) {
	u, v := g.place(p)
	x, y := int(math.Floor(u)), int(math.Floor(v))
	wx, wy := wrap(x, g.nx), wrap(y, g.ny)
	m, n := int32((x-wx)/g.nx), int32((y-wy)/g.ny)
	cell := wy*g.nx + wx
	for _, e := range g.entries[g.start[cell]:g.start[cell+1]] {
		found(e.id, g.t.at(e.lift.m-m, e.lift.n-n))
	}
}

// wrap returns i modulo n, never negative.
func wrap(i, n int) int {
	if uint(i) < uint(n) {
		return i
	}
	if i %= n; i < 0 {
		i += n
	}
	return i
}
