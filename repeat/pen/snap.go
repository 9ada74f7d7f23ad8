package pen

import (
	"math"

	"tsugime/repeat/geom"
)

// A Mark is a place to snap to: a node, a centre, a lattice place.
type Mark struct {
	At   geom.Point
	Name string
}

// A Guide is a straight line without end to snap to: a mirror line, an axis.
type Guide struct {
	At, Along geom.Point
	Name      string
}

// An Edge is a piece of an outline to snap to; it starts at From.
type Edge struct {
	From    geom.Point
	Segment geom.Segment
	Name    string
}

// Guides are all that a place may snap to. The zero Guides leave it on Fine alone.
type Guides struct {
	Marks []Mark
	Lines []Guide
	Edges []Edge
	// Grid is the distance of a square grid through the origin; zero for none.
	Grid geom.Length
	// Fine is what a place that snaps to nothing is rounded to; zero for the
	// nanometre.
	Fine geom.Length
}

// A Snapped is where a place has come to, and the names of what holds it there: none,
// one, or the two lines that cross.
type Snapped struct {
	At    geom.Point
	Names []string
}

// On reports whether the place is held by something of a name.
func (s Snapped) On(name string) bool {
	for _, n := range s.Names {
		if n == name {
			return true
		}
	}
	return false
}

// GridName is the name of the grid in Snapped.
const GridName = "grid"

// From returns g with the lines along which a place lies level with another, upright
// over it, or aslant by 45°.
func (g Guides) From(at geom.Point) Guides {
	lines := []Guide{
		{at, geom.Point{X: 1}, "level"}, {at, geom.Point{Y: 1}, "upright"},
		{at, geom.Point{X: 1, Y: 1}, "45°"}, {at, geom.Point{X: 1, Y: -1}, "45°"},
	}
	g.Lines = append(g.Lines[:len(g.Lines):len(g.Lines)], lines...)
	return g
}

// Snap returns where p comes to. Of what is within reach a mark comes first, then a
// crossing of two lines, an edge, a line (with the grid, where its crossing with
// that is in reach), the grid. The nearest of a kind is taken, of equally near ones
// the first.
func (g Guides) Snap(p geom.Point, reach geom.Length) Snapped {
	within := float64(reach)
	for _, find := range []func(geom.Point, float64) (Snapped, bool){g.mark, g.crossing, g.edge, g.line, g.grid} {
		if s, ok := find(p, within); ok {
			return s
		}
	}
	return Snapped{At: geom.Point{X: rounded(p.X, g.Fine), Y: rounded(p.Y, g.Fine)}}
}

// rounded puts a coordinate on the nearest multiple of a step; halves go away from
// zero.
func rounded(x, step geom.Length) geom.Length {
	if step <= 1 {
		return x
	}
	return geom.Length(math.Round(float64(x)/float64(step))) * step
}

func far(p, q geom.Point) float64 { return p.Sub(q).Norm() }

func (g Guides) mark(p geom.Point, within float64) (s Snapped, ok bool) {
	for _, m := range g.Marks {
		if d := far(p, m.At); d <= within && (!ok || d < far(p, s.At)) {
			s, ok = Snapped{m.At, []string{m.Name}}, true
		}
	}
	return s, ok
}

func (g Guides) edge(p geom.Point, within float64) (s Snapped, ok bool) {
	for _, e := range g.Edges {
		_, at := e.Segment.Nearest(e.From, p)
		if d := far(p, at); d <= within && (!ok || d < far(p, s.At)) {
			s, ok = Snapped{at, []string{e.Name}}, true
		}
	}
	return s, ok
}

// crossing finds the nearest place where two lines cross, both near enough.
func (g Guides) crossing(p geom.Point, within float64) (s Snapped, ok bool) {
	var near []Guide
	for _, l := range g.Lines {
		if far(p, l.foot(p)) <= within {
			near = append(near, l)
		}
	}
	for i, l := range near {
		for _, m := range near[:i] {
			at, cross := m.meets(l)
			if d := far(p, at); cross && d <= within && (!ok || d < far(p, s.At)) {
				s, ok = Snapped{at, []string{m.Name, l.Name}}, true
			}
		}
	}
	return s, ok
}

// foot is the place of a line nearest to p.
func (l Guide) foot(p geom.Point) geom.Point {
	ux, uy := float64(l.Along.X), float64(l.Along.Y)
	d := p.Sub(l.At)
	t := (float64(d.X)*ux + float64(d.Y)*uy) / (ux*ux + uy*uy)
	return l.on(t)
}

// Distance returns how far p is from the line.
func (l Guide) Distance(p geom.Point) geom.Length { return p.Distance(l.foot(p)) }

// on is the place of a line that lies t times its direction from where it is given.
func (l Guide) on(t float64) geom.Point {
	return l.At.Add(geom.Point{X: l.Along.X.Times(t), Y: l.Along.Y.Times(t)})
}

// meets returns where two lines cross; not ok for lines that are all but parallel.
func (l Guide) meets(m Guide) (geom.Point, bool) {
	ax, ay, bx, by := float64(l.Along.X), float64(l.Along.Y), float64(m.Along.X), float64(m.Along.Y)
	det := ax*by - ay*bx
	if math.Abs(det) < 0.01*math.Hypot(ax, ay)*math.Hypot(bx, by) {
		return geom.Point{}, false
	}
	d := m.At.Sub(l.At)
	return l.on((float64(d.X)*by - float64(d.Y)*bx) / det), true
}

// line finds the nearest line, and slides along it to the grid where that is near.
func (g Guides) line(p geom.Point, within float64) (s Snapped, ok bool) {
	var best Guide
	for _, l := range g.Lines {
		if at := l.foot(p); far(p, at) <= within && (!ok || far(p, at) < far(p, s.At)) {
			best, s, ok = l, Snapped{at, []string{l.Name}}, true
		}
	}
	if !ok || g.Grid <= 0 {
		return s, ok
	}
	slid, found := s, false
	for _, rule := range [2]Guide{
		{geom.Point{X: rounded(s.At.X, g.Grid)}, geom.Point{Y: 1}, GridName},
		{geom.Point{Y: rounded(s.At.Y, g.Grid)}, geom.Point{X: 1}, GridName},
	} {
		at, cross := best.meets(rule)
		if cross && far(p, at) <= within && (!found || far(p, at) < far(p, slid.At)) {
			slid, found = Snapped{at, []string{best.Name, GridName}}, true
		}
	}
	return slid, true
}

func (g Guides) grid(p geom.Point, within float64) (Snapped, bool) {
	if g.Grid <= 0 {
		return Snapped{}, false
	}
	at := geom.Point{X: rounded(p.X, g.Grid), Y: rounded(p.Y, g.Grid)}
	return Snapped{at, []string{GridName}}, far(p, at) <= within
}
