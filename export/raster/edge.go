package raster

// edge adds one straight piece of an outline, run from (x0, y0) to (x1, y1).
// Where it runs down, everything to its right in the rows it crosses loses the
// height crossed; where it runs up, it gains. Around a closed outline that turns
// clockwise on the sheet the inside remains. What it adds to a cell is the exact
// area between the piece and the cell's right edge.
func (g *grid[T]) edge(x0, y0, x1, y1 float64) {
	if y0 == y1 {
		return
	}
	sign := -1.0
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, 1
	}
	ys := g.y.edge
	top, bottom := ys[0], ys[len(ys)-1]
	if y1 <= top || y0 >= bottom {
		return
	}
	slope := (x1 - x0) / (y1 - y0)
	at, x := y0, x0
	if at < top {
		at, x = top, x0+(top-y0)*slope
	}
	end := min(y1, bottom)
	for j := g.y.find(at); at < end; j++ {
		to, xTo := ys[j+1], 0.0
		if to >= end {
			to = end
		}
		if to == y1 {
			xTo = x1
		} else {
			xTo = x0 + (to-y0)*slope
		}
		if to > at {
			g.run(j, x, xTo, sign*(to-at))
		}
		at, x = to, xTo
	}
}

// run adds a piece that crosses row j from xa to xb, rising by height there.
func (g *grid[T]) run(j int, xa, xb, height float64) {
	if xa > xb {
		xa, xb = xb, xa
	}
	xs := g.x.edge
	last := len(xs) - 1
	row := g.rises[j*(last+1):][: last+1 : last+1]
	if xb <= xs[0] {
		row[0] += T(height)
		return
	}
	if xa >= xs[last] {
		return
	}
	i := g.x.find(xa)
	if xb <= xs[i+1] && xa >= xs[i] {
		w := xs[i+1] - xs[i]
		right := height * (xs[i+1] - (xa+xb)/2) / w
		row[i] += T(right)
		row[i+1] += T(height - right)
		return
	}
	each := height / (xb - xa)
	if xa < xs[0] {
		part := (xs[0] - xa) * each
		row[0] += T(part)
		height -= part
		xa, i = xs[0], 0
	}
	for ; i < last && xa < xb; i++ {
		to := min(xb, xs[i+1])
		part := (to - xa) * each
		if to == xb {
			part = height
		}
		right := part * (xs[i+1] - (xa+to)/2) / (xs[i+1] - xs[i])
		row[i] += T(right)
		row[i+1] += T(part - right)
		height -= part
		xa = to
	}
}

// raise turns what outlines have added into area and adds it to the cells.
func (g *grid[T]) raise() {
	xs := g.x.edge
	columns := len(xs) - 1
	for j := range len(g.y.edge) - 1 {
		rises := g.rises[j*(columns+1):][:columns]
		row := g.cells[j*g.width:][:columns]
		var height T
		for i, r := range rises {
			height += r
			row[i] += height * T(xs[i+1]-xs[i])
		}
	}
}
