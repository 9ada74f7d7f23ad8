package pen

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// ToLine returns s with a straight piece for a segment.
func (s Stroke) ToLine(segment int) (Stroke, error) {
	if err := s.checkSegment(segment); err != nil {
		return s, err
	}
	g := s.Segments[segment]
	if g.End == s.Node(segment) {
		return s, fmt.Errorf("the piece comes back to where it starts; a straight one would be nothing")
	}
	next := s.edited()
	next.Segments[segment] = LineTo(g.End)
	if next.Closed && next.bare() {
		return s, fmt.Errorf("two straight pieces enclose nothing; insert a node first")
	}
	return next, nil
}

// quarter is the bulge of an arc that turns by 90°.
var quarter = math.Tan(math.Pi / 8)

// ToArc returns s with an arc for a segment: through the middle of a cubic, and for
// a line one that turns by 90°.
func (s Stroke) ToArc(segment int) (Stroke, error) {
	if err := s.checkSegment(segment); err != nil {
		return s, err
	}
	from, g := s.Node(segment), s.Segments[segment]
	arc := geom.Segment{Kind: geom.Arc, Bulge: quarter, End: g.End}
	switch g.Kind {
	case geom.Arc:
		return s, nil
	case geom.Cubic:
		var err error
		if arc, err = ArcThrough(from, g.At(from, 0.5), g.End); err != nil {
			return s, err
		}
	}
	next := s.edited()
	next.Segments[segment] = arc
	if next.Closed && next.bare() {
		return s, fmt.Errorf("the curve is straight in its middle, and two straight pieces enclose nothing")
	}
	return next, nil
}

// ToCurve returns s with cubics for a segment: for a line exactly, for an arc one
// for each started quarter circle, off by at most 2.8e-4 of the radius.
func (s Stroke) ToCurve(segment int) (Stroke, error) {
	if err := s.checkSegment(segment); err != nil {
		return s, err
	}
	from, g := s.Node(segment), s.Segments[segment]
	pieces := []geom.Segment{g}
	switch g.Kind {
	case geom.Cubic:
		return s, nil
	case geom.Arc:
		pieces = g.Cubics(from)
	case geom.Line:
		pieces[0] = cubicOf(from, g)
	}
	next := Stroke{Start: s.Start, Closed: s.Closed}
	next.Segments = append(next.Segments, s.Segments[:segment]...)
	next.Segments = append(next.Segments, pieces...)
	next.Segments = append(next.Segments, s.Segments[segment+1:]...)
	return next, nil
}
