package raster

import (
	"context"
	"math"
	"sync"

	"tsugime/repeat/geom"
)

// A Ground is cut-outs made ready to be painted at any zoom. It does not change
// and serves any number of goroutines at a time.
type Ground struct {
	unit    *store
	periods []geom.Point // none, one, or a reduced pair
	// patch is the unit or, where that is but a few dots, a block of them, with
	// its own periods: what is painted dot by dot is painted in runs.
	patch *store
	steps []geom.Point

	once sync.Once
	tile *tile

	pitch float64 // from hole to hole, about, in millimetres
	tones tones
}

// NewGround returns shapes ready to be painted: with no period as they are, with
// one repeated along it without end, with two as a plain pattern. A period of no
// length, or in line with the one before, is left out. Where shapes lie over one
// another, or over their own copies, what they cover together counts once.
func NewGround(shapes []geom.Shape, periods ...geom.Point) *Ground {
	g, err := MakeReady(context.Background(), shapes, periods...)
	if err != nil {
		panic(err) // nothing gives up what is in the background of all
	}
	return g
}

// MakeReady is NewGround that can be given up, for shapes of which so many may lie over
// one another that it takes seconds; its error is the context's.
func MakeReady(ctx context.Context, shapes []geom.Shape, periods ...geom.Point) (*Ground, error) {
	periods = reduced(periods)
	c := newCrowd(shapes, periods)
	var discs []disc
	var curves []curve
	for i, s := range shapes {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if s.Round() && s.Disc.Diameter <= 0 || c.boxes[i].Empty() {
			continue
		}
		if o, ok := c.part(i); ok {
			if o.pieces > 0 {
				curves = append(curves, curve{shape: o})
			}
		} else if s.Round() {
			discs = append(discs, disc{s.Disc.Centre.X.MM(), s.Disc.Centre.Y.MM(), s.Disc.RadiusMM()})
		} else {
			curves = append(curves, curve{shape: newOutline(s.Outline)})
		}
	}
	g := &Ground{unit: newStore(discs, curves), periods: periods}
	g.pitch = g.between(c.boxes)
	g.patch, g.steps = g.unit, g.periods
	if n := blockSide(g.unit.cost); len(g.periods) == 2 && n > 1 {
		a, b := g.periods[0], g.periods[1]
		var places []geom.Point
		for i := range n * n {
			places = append(places, a.Times(i%n).Add(b.Times(i/n)))
		}
		g.patch, g.steps = g.unit.repeated(places), []geom.Point{a.Times(n), b.Times(n)}
	}
	return g, nil
}

// between returns about how far it is from one hole to the next, in millimetres: the
// least of the side of a square that holds one, and of how far a line across or along
// goes for each hole that it meets.
func (g *Ground) between(boxes []geom.Box) float64 {
	b := g.unit.box
	area := (b.x1 - b.x0) * (b.y1 - b.y0)
	switch len(g.periods) {
	case 1:
		p := g.periods[0]
		area = math.Max(math.Abs(p.Y.MM())*(b.x1-b.x0), math.Abs(p.X.MM())*(b.y1-b.y0))
	case 2:
		area = math.Abs(cross(g.periods[0], g.periods[1])) / 1e12
	}
	n, across, along := 0.0, 0.0, 0.0
	for _, o := range boxes {
		if !o.Empty() {
			n, across, along = n+1, across+o.Width().MM(), along+o.Height().MM()
		}
	}
	if n == 0 || !(area > 0) {
		return math.Inf(1)
	}
	return math.Min(math.Sqrt(area/n), math.Min(area/across, area/along))
}

// blockSide returns how many units a block is wide and high so that it holds
// about a hundred dots.
func blockSide(cost float64) int {
	const dots = 100
	return int(math.Sqrt(dots / math.Max(cost, 1)))
}

// reduced returns the shortest one or two vectors that make the same lattice
// (Lagrange–Gauss), nil for none.
func reduced(periods []geom.Point) []geom.Point {
	var v []geom.Point
	for _, p := range periods {
		if p == (geom.Point{}) || len(v) == 2 || len(v) == 1 && cross(v[0], p) == 0 {
			continue
		}
		v = append(v, p)
	}
	if len(v) < 2 {
		return v
	}
	a, b := shortest(v[0], v[1], 1, 1)
	return []geom.Point{a, b}
}

// shortest returns the reduced basis of the lattice of a and b, measured with x
// taken wx and y taken wy times, the shorter vector first.
func shortest(a, b geom.Point, wx, wy float64) (geom.Point, geom.Point) {
	dot := func(p, q geom.Point) float64 {
		return wx*float64(p.X)*wx*float64(q.X) + wy*float64(p.Y)*wy*float64(q.Y)
	}
	for range 200 { // each turn halves the longer vector at least
		if dot(a, a) > dot(b, b) {
			a, b = b, a
		}
		n := math.Round(dot(a, b) / dot(a, a))
		if n == 0 || math.Abs(n) > 1<<40 {
			break
		}
		b = b.Sub(a.Times(int(n)))
	}
	return a, b
}

// cross is twice the area between two vectors, in square nanometres, near enough
// for vectors of any length.
func cross(a, b geom.Point) float64 {
	return float64(float64(a.X)*float64(b.Y)) - float64(float64(a.Y)*float64(b.X))
}

// copies calls do with each repeat along the periods, as the way it is moved,
// that puts something of a box into w.
func copies(box rect, periods []geom.Point, w rect, do func(d geom.Point)) {
	if w.empty() || !(box.x0 <= box.x1) {
		return
	}
	// A copy meets w where its move lies in the box of moves that bring one edge
	// of it to the opposite edge of w.
	r := rect{w.x0 - box.x1, w.y0 - box.y1, w.x1 - box.x0, w.y1 - box.y0}
	switch len(periods) {
	case 0:
		if r.x0 <= 0 && 0 <= r.x1 && r.y0 <= 0 && 0 <= r.y1 {
			do(geom.Point{})
		}
	case 1:
		from, to := along(vec{}, periods[0], r)
		for m := from; m <= to; m++ {
			do(periods[0].Times(m))
		}
	case 2:
		rows(periods[0], periods[1], r, do)
	}
}

// rows goes through the places of a lattice in r, row by row of its second vector.
func rows(a, b geom.Point, r rect, do func(d geom.Point)) {
	det := a.X.MM()*b.Y.MM() - a.Y.MM()*b.X.MM()
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, c := range [4]vec{{r.x0, r.y0}, {r.x1, r.y0}, {r.x0, r.y1}, {r.x1, r.y1}} {
		n := (a.X.MM()*c.y - a.Y.MM()*c.x) / det
		lo, hi = math.Min(lo, n), math.Max(hi, n)
	}
	for n := int(math.Floor(lo)); n <= int(math.Ceil(hi)); n++ {
		row := b.Times(n)
		from, to := along(vec{row.X.MM(), row.Y.MM()}, a, r)
		for m := from; m <= to; m++ {
			do(row.Add(a.Times(m)))
		}
	}
}

// along returns for which m the place o + m·step lies in r, one to spare at each
// end where rounding could matter.
func along(o vec, step geom.Point, r rect) (from, to int) {
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, c := range [2][4]float64{{o.x, step.X.MM(), r.x0, r.x1}, {o.y, step.Y.MM(), r.y0, r.y1}} {
		at, by, low, high := c[0], c[1], c[2], c[3]
		if by == 0 {
			if at < low || at > high {
				return 0, -1
			}
			continue
		}
		a, b := (low-at)/by, (high-at)/by
		lo, hi = math.Max(lo, math.Min(a, b)), math.Min(hi, math.Max(a, b))
	}
	const spare = 1e-9
	return int(math.Ceil(lo - spare)), int(math.Floor(hi + spare))
}
