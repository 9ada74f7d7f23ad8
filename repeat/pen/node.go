package pen

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

func errNoHandle(node int) error {
	return fmt.Errorf("node %d has no handle there; turn the piece into a curve first", node+1)
}

// SmoothAt reports whether s runs through a node without a corner: the end of each
// heading lies within geom.Alike of the line of the other.
func (s Stroke) SmoothAt(i int) bool {
	if i < 0 || i >= s.count() {
		return false
	}
	in, out := s.sides(i)
	if in == nil || out == nil {
		return false
	}
	before, _ := s.before(i)
	_, a := in.Headings(s.Node(before))
	b, _ := out.Headings(s.Node(i))
	least := math.Min(a.Norm(), b.Norm())
	if least == 0 {
		return false
	}
	ax, ay, bx, by := float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)
	return ax*bx+ay*by > 0 && math.Abs(ax*by-ay*bx)/least <= float64(geom.Alike)
}

// InsertNode returns s with a node at the parameter t of a segment, which stays as it
// runs. The new node is number segment+1, or the last where that is counted first.
func (s Stroke) InsertNode(segment int, t float64) (Stroke, error) {
	if err := s.checkSegment(segment); err != nil {
		return s, err
	}
	from, g := s.Node(segment), s.Segments[segment]
	if at := g.At(from, t); at == from || at == g.End {
		return s, fmt.Errorf("there is a node at that place already; choose another between two nodes")
	}
	first, second := g.Split(from, t)
	next := Stroke{Start: s.Start, Closed: s.Closed}
	next.Segments = append(next.Segments, s.Segments[:segment]...)
	next.Segments = append(next.Segments, first, second)
	next.Segments = append(next.Segments, s.Segments[segment+1:]...)
	return next, nil
}

// DeleteNode returns s without a node. One piece takes the place of the two beside
// it: straight where both were, the one arc where both lay on a circle, a cubic with
// their far handles where one was a cubic, else the arc that passes where the node
// was. What would enclose nothing, or be nothing, is refused.
func (s Stroke) DeleteNode(i int) (Stroke, error) {
	if err := s.checkNode(i); err != nil {
		return s, err
	}
	if s.count() <= 2 {
		return s, fmt.Errorf("a line needs two nodes; delete the whole line instead")
	}
	before, arrives := s.before(i)
	after, leaves := s.after(i)
	switch {
	case !arrives:
		return Stroke{Start: s.Node(1), Segments: s.Segments[1:]}, nil
	case !leaves:
		return Stroke{Start: s.Start, Segments: s.Segments[:before]}, nil
	}
	merged, err := s.merged(before, after)
	if err != nil {
		return s, err
	}
	next := s.edited()
	next.Segments[before] = merged
	next.Segments = append(next.Segments[:after], next.Segments[after+1:]...)
	if i == 0 {
		next.Start = next.Segments[len(next.Segments)-1].End
	}
	if next.Closed && next.bare() {
		return s, fmt.Errorf("two straight pieces enclose nothing; delete the whole line instead")
	}
	return next, nil
}

// bare reports whether a closed stroke is straight there and straight back.
func (s Stroke) bare() bool {
	for _, g := range s.Segments {
		if g.Kind != geom.Line {
			return false
		}
	}
	return len(s.Segments) < 3
}

// merged returns the one segment for two that follow each other.
func (s Stroke) merged(first, second int) (geom.Segment, error) {
	a, g := s.Node(first), s.Segments[first]
	m, h := g.End, s.Segments[second]
	b := h.End
	switch {
	case g.Kind == geom.Cubic || h.Kind == geom.Cubic:
		c1, _ := handlesOf(a, g)
		_, c2 := handlesOf(m, h)
		if l, r := handleLength(g.C2, m), handleLength(h.C1, m); g.Kind == h.Kind && l > 0 && r > 0 {
			// The two parts of one cubic have handles in the ratio of their shares.
			c1, c2 = between(a, c1, (l+r)/l), between(b, c2, (l+r)/r)
		}
		return CurveTo(a, c1, c2, b), nil
	case g.Kind == geom.Line && h.Kind == geom.Line:
		return LineTo(b), nil
	}
	return ArcThrough(a, m, b)
}

func handleLength(handle, node geom.Point) float64 { return handle.Sub(node).Norm() }

// handlesOf returns the handles of a cubic, or those that a line or an arc would
// have as a cubic: exact for a line, and for an arc by (4/3)·tan(θ/4) of its radius.
func handlesOf(a geom.Point, g geom.Segment) (c1, c2 geom.Point) {
	switch g.Kind {
	case geom.Cubic:
		return g.C1, g.C2
	case geom.Arc:
		// The radius is chord·(1+b²)/(4·|b|) and b = tan(θ/4).
		far := g.End.Sub(a).Norm() * (1 + g.Bulge*g.Bulge) / 3
		first, last := g.Headings(a)
		return leaning(a, first, far), leaning(g.End, last.Neg(), far)
	}
	return between(a, g.End, 1.0/3), between(a, g.End, 2.0/3)
}

// Corner returns s with a corner at a node: each handle there points straight at
// the next node, a third of the way.
func (s Stroke) Corner(i int) (Stroke, error) {
	if err := s.checkNode(i); err != nil {
		return s, err
	}
	next := s.edited()
	in, out := next.sides(i)
	before, _ := s.before(i)
	bent := false
	if in != nil && in.Kind == geom.Cubic {
		in.C2, bent = between(s.Node(i), s.Node(before), 1.0/3), true
	}
	if out != nil && out.Kind == geom.Cubic {
		out.C1, bent = between(s.Node(i), out.End, 1.0/3), true
	}
	if !bent {
		return s, errNoHandle(i)
	}
	return next, nil
}

// Smooth returns s running smoothly through a node. Two handles are laid in line,
// along the way from the node before to the node after where they were not; a lone
// one continues the line or arc on the other side; of two lines both become cubics.
// Between two arcs, or an arc and a line, one must be turned into a curve first.
func (s Stroke) Smooth(i int) (Stroke, error) {
	if err := s.checkNode(i); err != nil {
		return s, err
	}
	next := s.edited()
	in, out := next.sides(i)
	if in == nil || out == nil {
		return s, fmt.Errorf("node %d is an open end; close the line first", i+1)
	}
	before, _ := s.before(i)
	if in.Kind != geom.Cubic && out.Kind != geom.Cubic {
		if in.Kind == geom.Arc || out.Kind == geom.Arc {
			return s, fmt.Errorf("an arc keeps its circle; turn one of the pieces beside node %d into a curve first", i+1)
		}
		*in, *out = cubicOf(s.Node(before), *in), cubicOf(s.Node(i), *out)
	}
	if in.Kind != out.Kind {
		return next.aligned(i), nil
	}
	at := s.Node(i)
	way := out.End.Sub(s.Node(before))
	if way == (geom.Point{}) {
		way = out.C1.Sub(in.C2)
	}
	l, r := handleLength(in.C2, at), handleLength(out.C1, at)
	if l == 0 {
		l = s.Node(before).Sub(at).Norm() / 3
	}
	if r == 0 {
		r = out.End.Sub(at).Norm() / 3
	}
	in.C2, out.C1 = leaning(at, way.Neg(), l), leaning(at, way, r)
	return next, nil
}

// cubicOf returns a line or a small arc as one cubic.
func cubicOf(a geom.Point, g geom.Segment) geom.Segment {
	c1, c2 := handlesOf(a, g)
	return geom.Segment{Kind: geom.Cubic, C1: c1, C2: c2, End: g.End}
}
