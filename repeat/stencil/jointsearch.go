package stencil

import (
	"context"
	"math"

	"tsugime/repeat/geom"
)

// A corridor is a grid over the band of a route, whose nodes are looked at only
// when the search comes to them: for paper that winds between long rims, where
// the webs alone don't tell the way from one to the next.
type corridor struct {
	*neighbourhood
	outlines  *geom.Index
	left, top float64 // nanometres
	h         float64 // between nodes
	nx, ny    int
	clearance float64
	level     int // the row of y = 0
	cost      []float32
	from      []int32
}

// corridorNodes bounds the grid of a corridor.
const corridorNodes = 8_000_000

// windingMost is the greatest share of the clearance that a winding line is sought
// with: with all of it no node but those on the very middle would do.
const windingMost = 0.95

// winding returns the line that keeps the share, up to windingMost, and winds
// through the paper about y = 0, and whether there is one. It is sought in the
// narrowest of the bands first, so that the sheet need not be high, and at last
// about a route.
func (w *jointWays) winding(ctx context.Context, m *clothMap, share float64) (Joint, bool, error) {
	at, found := w.cloth.across(m, w.field, share*m.widest, math.Inf(1))
	if !found {
		return Joint{}, false, nil
	}
	heights := make([]geom.Length, 0, len(bandShares)+1)
	for _, band := range bandShares {
		heights = append(heights, w.step.Times(band))
	}
	var far geom.Length
	for _, p := range at {
		far = max(far, p.point().Y.Abs()+jointBand)
	}
	for _, height := range append(heights, far) {
		j, ok, err := w.windingIn(ctx, height, m.widest/2, min(share, windingMost))
		if ok || err != nil {
			return j, ok, err
		}
	}
	return Joint{}, false, nil
}

// windingIn looks for a winding line no farther than height from y = 0.
func (w *jointWays) windingIn(ctx context.Context, height geom.Length, widest, share float64) (Joint, bool, error) {
	box := geom.BoxOf(geom.Point{X: w.field.Left, Y: -height}, geom.Point{X: w.field.Right(), Y: height})
	n := w.near(box)
	clearance := share * widest
	path, err := n.corridorIn(box, clearance, (1-share)*widest).path(ctx)
	if err != nil || path == nil {
		return Joint{}, false, err
	}
	kept := clearance - 2*grain
	line := n.pulled(path, kept)
	if tight := n.tightened(line, kept); w.keeps(n, tight) {
		line = tight
	}
	if few := n.fewer(line, kept); w.keeps(n, few) {
		line = few
	}
	j := Joint{Widest: geom.Length(math.Round(widest))}.along(n, line)
	return j, j.Clearance > 0 && w.keeps(n, j.Line), nil
}

// corridorIn lays the grid over a box. spare is how much more than the clearance
// the widest line has: two thirds of it between nodes let the grid follow it.
func (n *neighbourhood) corridorIn(box geom.Box, clearance, spare float64) *corridor {
	wide, tall := float64(box.Width()), float64(box.Height())
	h := max(spare*2/3, math.Sqrt(wide*tall/corridorNodes))
	g := &corridor{neighbourhood: n, outlines: n.outlineIndex(), left: float64(box.Min.X), top: float64(box.Min.Y)}
	g.nx = int(math.Ceil(wide/h)) + 1
	g.h = wide / float64(g.nx-1)
	g.ny = int(tall/g.h) + 1
	g.level = int(math.Round(-g.top / g.h))
	// Between two nodes that have this the line comes no nearer than clearance.
	g.clearance = math.Sqrt(clearance*clearance + g.h*g.h/2)
	g.cost, g.from = make([]float32, g.nx*g.ny), make([]int32, g.nx*g.ny)
	return g
}

// free reports whether a node keeps the clearance. Steps are shorter than that,
// so from paper no way leads over a rim into a cut-out.
func (g *corridor) free(k int32) bool {
	x, y := g.at(k)
	ok := true
	g.index.Visit(boxAround(x, y, g.clearance), func(e int) bool {
		ok = g.rims[e].distance(x, y) >= g.clearance
		return ok
	})
	return ok
}

func (g *corridor) at(k int32) (x, y float64) {
	return g.left + float64(int(k)%g.nx)*g.h, g.top + float64(int(k)/g.nx)*g.h
}

// path returns the shortest way over free nodes from the left edge to the right
// (A*; the straight way right is a lower bound), nil where there is none. Of equal
// ways one that begins near y = 0 is taken.
func (g *corridor) path(ctx context.Context) ([]geom.Point, error) {
	const shut = -1
	var q frontier
	offer := func(k int32, c float64, before int32) {
		switch old := g.cost[k]; {
		case old == shut || old > 0 && float64(old) <= c+1e-4:
			return
		case old == 0 && !g.free(k):
			g.cost[k] = shut
			return
		}
		g.cost[k], g.from[k] = float32(c), before
		q.push(ahead{c + float64(g.nx-1-int(k)%g.nx), k})
	}
	for j := range g.ny {
		k := int32(j * g.nx)
		if x, y := g.at(k); g.outlines == nil || g.paper(x, y, g.outlines) {
			// Costs begin at one, so that zero stands for a node not yet seen.
			offer(k, 1+math.Abs(float64(j-g.level))*offMiddle, -1)
		}
	}
	for seen := 0; len(q) > 0; seen++ {
		if seen%4096 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		top := q.pop()
		x, y := int(top.node)%g.nx, int(top.node)/g.nx
		c := float64(g.cost[top.node])
		if top.cost > c+float64(g.nx-1-x)+1e-3 {
			continue
		}
		if x == g.nx-1 {
			return g.back(top.node), nil
		}
		for dy := -1; dy <= 1; dy++ {
			for dx := -1; dx <= 1; dx++ {
				if nx, ny := x+dx, y+dy; nx >= 0 && nx < g.nx && ny >= 0 && ny < g.ny && (dx != 0 || dy != 0) {
					offer(int32(ny*g.nx+nx), c+math.Sqrt(float64(dx*dx+dy*dy)), top.node)
				}
			}
		}
	}
	return nil, nil
}

// back follows a way from its end to its start.
func (g *corridor) back(k int32) []geom.Point {
	var path []geom.Point
	for ; k >= 0; k = g.from[k] {
		x, y := g.at(k)
		path = append(path, place{x, y}.point())
	}
	for i, j := 0, len(path)-1; i < j; i, j = i+1, j-1 {
		path[i], path[j] = path[j], path[i]
	}
	return path
}
