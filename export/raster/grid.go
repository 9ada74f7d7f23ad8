package raster

import "math"

// A grid is cells on two axes, to which the area of shapes is added. The unit
// of the axes is the grid's own: pixels, or millimetres of a repeat.
type grid[T float32 | float64] struct {
	x, y  axis
	cells []T // row j begins at j·stride
	width int // stride
	// rises holds what outlines add, as steps along each row; nil while there
	// was none. A row has one cell more than columns.
	rises []T
	exact bool // discs too large for the table

	cuts []cut
	last []float64
}

// weigh adds the area of a disc times sign.
func (g *grid[T]) weigh(cx, cy, r, sign float64) {
	x0, x1, y0, y1 := cx-r, cx+r, cy-r, cy+r
	xs, ys := g.x.edge, g.y.edge
	if x1 <= xs[0] || x0 >= xs[len(xs)-1] || y1 <= ys[0] || y0 >= ys[len(ys)-1] {
		return
	}
	i0, i1, j0, j1 := g.x.find(x0), g.x.find(x1), g.y.find(y0), g.y.find(y1)
	if i1-i0 > 1 || j1-j0 > 1 || x0 < xs[0] || y0 < ys[0] || x1 > xs[len(xs)-1] || y1 > ys[len(ys)-1] {
		g.wide(cx, cy, r, sign, i0, i1, j0, j1)
		return
	}
	// At most two by two cells: the usual dot of a fine ground.
	rr := r * r * sign
	at := j0*g.width + i0
	if i0 == i1 && j0 == j1 {
		g.cells[at] += T(math.Pi * rr)
		return
	}
	if j0 == j1 {
		c := cutAt((xs[i1]-cx)/r, !g.exact)
		left := math.Pi/2 + 2*(c.p+c.s*(math.Pi/8))
		g.cells[at] += T(rr * left)
		g.cells[at+1] += T(rr * (math.Pi - left))
		return
	}
	d := cutAt((ys[j1]-cy)/r, !g.exact)
	above := math.Pi/2 + 2*(d.p+d.s*(math.Pi/8))
	if i0 == i1 {
		g.cells[at] += T(rr * above)
		g.cells[at+g.width] += T(rr * (math.Pi - above))
		return
	}
	c := cutAt((xs[i1]-cx)/r, !g.exact)
	left := math.Pi/2 + 2*(c.p+c.s*(math.Pi/8))
	first := corner(&c, &d) + (left+above)/2 - math.Pi/4
	g.cells[at] += T(rr * first)
	g.cells[at+1] += T(rr * (above - first))
	g.cells[at+g.width] += T(rr * (left - first))
	g.cells[at+g.width+1] += T(rr * (math.Pi - left - above + first))
}

// wide adds a disc to the cells from (i0, j0) to (i1, j1), row by row.
func (g *grid[T]) wide(cx, cy, r, sign float64, i0, i1, j0, j1 int) {
	n := i1 - i0 + 1
	if len(g.cuts) <= n {
		g.cuts, g.last = make([]cut, 2*n+8), make([]float64, 2*n+8)
	}
	cuts, last := g.cuts[:n+1], g.last[:n+1]
	d := cutAt((g.y.edge[j0]-cy)/r, !g.exact)
	for k := range cuts {
		cuts[k] = cutAt((g.x.edge[i0+k]-cx)/r, !g.exact)
		last[k] = corner(&cuts[k], &d)
	}
	rr := r * r * sign
	for j := j0; j <= j1; j++ {
		d = cutAt((g.y.edge[j+1]-cy)/r, !g.exact)
		row := g.cells[j*g.width+i0:][:n]
		before := corner(&cuts[0], &d)
		step := before - last[0]
		last[0] = before
		for k := range row {
			q := corner(&cuts[k+1], &d)
			next := q - last[k+1]
			last[k+1] = q
			row[k] += T(rr * (next - step))
			step = next
		}
	}
}
