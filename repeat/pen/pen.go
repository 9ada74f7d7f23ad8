// Package pen is the geometry of drawing a motif by hand: a line that grows place
// by place, is bent, parted and closed, and at last bounds a cut-out. It knows no
// pointer and no screen.
//
//	Stroke ── Add, MoveNode, Smooth, Close … ──► Stroke ── Wreath ──► geom.Outline
//
// Everything is a value: an edit returns the next stroke and leaves the one before
// as it was. Lengths are nanometres, x to the right, y down. Arcs stay arcs.
package pen

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
)

// A Stroke is one line as it is drawn, open or closed. Node 0 is Start, node i ends
// segment i−1; the last segment of a closed stroke ends at Start, which is counted
// once. A stroke without segments is a single place. Nobody writes to Segments.
type Stroke struct {
	Start    geom.Point
	Segments []geom.Segment
	Closed   bool
}

// Begin returns the stroke that is a single place.
func Begin(at geom.Point) Stroke { return Stroke{Start: at} }

// Add returns s with one segment more at its end. A closed stroke and a segment
// that stays where it starts are refused.
func (s Stroke) Add(next geom.Segment) (Stroke, error) {
	if s.Closed {
		return s, fmt.Errorf("the line is closed; part it at a node before it is drawn on")
	}
	if at := s.End(); next.End == at && (next.Kind != geom.Cubic || next.C1 == at && next.C2 == at) {
		return s, fmt.Errorf("the next place is where the line is already; go on to another")
	}
	s.Segments = append(slices.Clip(s.Segments), next)
	return s, nil
}

// Back returns s without its last segment, and whether there was one. A closed
// stroke is open again.
func (s Stroke) Back() (Stroke, bool) {
	n := len(s.Segments)
	if n == 0 {
		return s, false
	}
	return Stroke{Start: s.Start, Segments: s.Segments[:n-1]}, true
}

// End is where the next segment starts.
func (s Stroke) End() geom.Point {
	if n := len(s.Segments); n > 0 {
		return s.Segments[n-1].End
	}
	return s.Start
}

// Nodes returns the places that s runs through.
func (s Stroke) Nodes() []geom.Point {
	nodes := make([]geom.Point, 0, len(s.Segments)+1)
	nodes = append(nodes, s.Start)
	for _, g := range s.Segments {
		nodes = append(nodes, g.End)
	}
	return nodes[:s.count()]
}

// count is how many nodes s has.
func (s Stroke) count() int {
	if s.Closed {
		return len(s.Segments)
	}
	return len(s.Segments) + 1
}

// Node returns where node i is.
func (s Stroke) Node(i int) geom.Point {
	if i == 0 {
		return s.Start
	}
	return s.Segments[i-1].End
}

// before and after return the segments that end and start at a node; not ok at an
// open end.
func (s Stroke) before(node int) (segment int, ok bool) {
	if node == 0 {
		return len(s.Segments) - 1, s.Closed
	}
	return node - 1, true
}

func (s Stroke) after(node int) (segment int, ok bool) { return node, node < len(s.Segments) }

// next returns the node at which a segment ends.
func (s Stroke) next(segment int) int { return (segment + 1) % s.count() }

// edited returns s with segments that may be written to.
func (s Stroke) edited() Stroke {
	s.Segments = slices.Clone(s.Segments)
	return s
}

// checkNode and checkSegment refuse numbers that s doesn't have.
func (s Stroke) checkNode(i int) error {
	if i < 0 || i >= s.count() {
		return fmt.Errorf("there is no node %d; the line has %d", i+1, s.count())
	}
	return nil
}

func (s Stroke) checkSegment(i int) error {
	if i < 0 || i >= len(s.Segments) {
		return fmt.Errorf("there is no piece %d; the line has %d", i+1, len(s.Segments))
	}
	return nil
}

// Reversed returns s run the other way; a closed stroke keeps its start.
func (s Stroke) Reversed() Stroke {
	back := Stroke{Start: s.End(), Closed: s.Closed}
	for i := len(s.Segments) - 1; i >= 0; i-- {
		g := s.Segments[i]
		back.Segments = append(back.Segments,
			geom.Segment{Kind: g.Kind, C1: g.C2, C2: g.C1, Bulge: -g.Bulge, End: s.Node(i)})
	}
	return back
}

// Mapped returns s under a map that turns, mirrors and moves but keeps sizes.
func (s Stroke) Mapped(m geom.Affine) Stroke {
	c := geom.Outline{{Start: s.Start, Segments: s.Segments}}.Mapped(m)[0]
	return Stroke{c.Start, c.Segments, s.Closed}
}

// Points returns s as places no farther from it than chord when joined by straight
// lines, for showing it; the last one is its end.
func (s Stroke) Points(chord geom.Length) []geom.Point {
	points := []geom.Point(geom.Outline{{Start: s.Start, Segments: s.Segments}}.Rings(chord)[0])
	if s.End() == s.Start && len(s.Segments) > 0 {
		points = append(points, s.Start)
	}
	return points
}
