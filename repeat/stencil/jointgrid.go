package stencil

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A jointGrid is the band of the joint with the distance from each of its nodes
// to the nearest cut-out. Whoever keeps a clearance at the nodes keeps it
// between them but for a third of the grid's step.
type jointGrid struct {
	left, top float64 // nanometres
	h         float64 // between nodes
	nx, ny    int
	clear     []float32 // nanometres, negative within a cut-out, at most far
}

// newJointGrid lays the grid fine enough that the widest line, moved to the
// nodes, still keeps keptClearance of its clearance, as far as jointCells allow.
func newJointGrid(n *neighbourhood, field Field, band geom.Length, clearance float64) *jointGrid {
	w, tall := float64(field.Width), 2*float64(band)
	h := max((1-keptClearance)*clearance/math.Sqrt2, math.Sqrt(w*tall/jointCells))
	g := &jointGrid{left: float64(field.Left), top: -float64(band)}
	g.nx = int(math.Ceil(w/h)) + 1
	g.h = w / float64(g.nx-1)
	g.ny = 2*int(float64(band)/g.h) + 1
	g.top = -float64(g.ny/2) * g.h
	g.clear = make([]float32, g.nx*g.ny)
	far := max(clearance, 4*g.h)
	for i := range g.clear {
		g.clear[i] = float32(far)
	}
	for _, e := range n.rims {
		g.near(e, far)
	}
	g.sink(n)
	return g
}

// near lowers the nodes about a rim to their distance from it.
func (g *jointGrid) near(e rim, far float64) {
	x0, x1 := e.ax-e.r, e.ax+e.r
	y0, y1 := e.ay-e.r, e.ay+e.r
	if !e.round {
		x0, x1 = min(e.ax, e.bx), max(e.ax, e.bx)
		y0, y1 = min(e.ay, e.by), max(e.ay, e.by)
	}
	i0, i1 := g.span(x0-far-g.left, x1+far-g.left, g.nx)
	j0, j1 := g.span(y0-far-g.top, y1+far-g.top, g.ny)
	for j := j0; j <= j1; j++ {
		y := g.top + float64(j)*g.h
		for i := i0; i <= i1; i++ {
			d := float32(e.distance(g.left+float64(i)*g.h, y))
			if k := j*g.nx + i; d < g.clear[k] {
				g.clear[k] = d
			}
		}
	}
}

// span returns the nodes from lo to hi along one axis, inside the grid.
func (g *jointGrid) span(lo, hi float64, n int) (from, to int) {
	return max(0, int(math.Ceil(lo/g.h))), min(n-1, int(math.Floor(hi/g.h)))
}

// sink makes the distances within outlines negative: discs are so already.
func (g *jointGrid) sink(n *neighbourhood) {
	for i, c := range n.cuts {
		shape := c.Shape
		if shape.Round() {
			continue
		}
		rings := shape.Outline.Rings(geom.Chord)
		b := n.boxes[i]
		i0, i1 := g.span(float64(b.Min.X)-g.left, float64(b.Max.X)-g.left, g.nx)
		j0, j1 := g.span(float64(b.Min.Y)-g.top, float64(b.Max.Y)-g.top, g.ny)
		for j := j0; j <= j1; j++ {
			for i := i0; i <= i1; i++ {
				p := g.at(j*g.nx + i)
				turns := 0
				for _, r := range rings {
					turns += r.Winding(p)
				}
				if k := j*g.nx + i; turns != 0 && g.clear[k] > 0 {
					g.clear[k] = -g.clear[k]
				}
			}
		}
	}
}

// at returns the place of a node.
func (g *jointGrid) at(k int) geom.Point {
	return geom.Point{
		X: geom.Length(math.Round(g.left + float64(k%g.nx)*g.h)),
		Y: geom.Length(math.Round(g.top + float64(k/g.nx)*g.h)),
	}
}

// crossCost is how much longer a way within a cut-out counts than one through
// paper, where a cut-out must be crossed.
const crossCost = 50

// path returns the shortest way over the nodes from the left edge to the right
// that keeps the clearance, or, with cross, one that may go through cut-outs and
// does so as little as it can (A*; the straight way right is a lower bound). Of
// equal ways one that begins near the middle of the band is taken.
func (g *jointGrid) path(clearance float64, cross bool) ([]geom.Point, bool) {
	cost := make([]float64, len(g.clear))
	from := make([]int32, len(g.clear))
	for k := range cost {
		cost[k] = math.Inf(1)
	}
	q := frontier{}
	open := func(k int, c float64, before int32) {
		if !cross && float64(g.clear[k]) < clearance || c >= cost[k] {
			return
		}
		cost[k], from[k] = c, before
		q.push(ahead{c + float64(g.nx-1-k%g.nx), int32(k)})
	}
	for j := range g.ny {
		// A start off the middle costs a little, so that the line lies near y = 0.
		open(j*g.nx, math.Abs(float64(j-g.ny/2))*0.2, -1)
	}
	for len(q) > 0 {
		top := q.pop()
		k := int(top.node)
		x, y := k%g.nx, k/g.nx
		if top.cost > cost[k]+float64(g.nx-1-x)+1e-6 {
			continue
		}
		if x == g.nx-1 {
			return g.back(k, from), true
		}
		for dy := -1; dy <= 1; dy++ {
			for dx := -1; dx <= 1; dx++ {
				if nx, ny := x+dx, y+dy; nx >= 0 && nx < g.nx && ny >= 0 && ny < g.ny && (dx != 0 || dy != 0) {
					way := math.Sqrt(float64(dx*dx + dy*dy))
					if g.clear[ny*g.nx+nx] <= 0 {
						way *= crossCost
					}
					open(ny*g.nx+nx, cost[k]+way, int32(k))
				}
			}
		}
	}
	return nil, false
}

// back follows a way from its end to its start.
func (g *jointGrid) back(k int, from []int32) []geom.Point {
	var path []geom.Point
	for i := int32(k); i >= 0; i = from[i] {
		path = append(path, g.at(int(i)))
	}
	slices.Reverse(path)
	return path
}
