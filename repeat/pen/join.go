package pen

import (
	"fmt"

	"tsugime/repeat/geom"
)

// alike reports whether two places count as one.
func alike(p, q geom.Point) bool { return p.Sub(q).Norm() <= float64(geom.Alike) }

// Close returns s closed: its end is laid on its start where the two count as one
// place, and else joined to it by a straight piece. What encloses nothing is refused.
func (s Stroke) Close() (Stroke, error) {
	if s.Closed {
		return s, nil
	}
	next := s.edited()
	next.Closed = true
	if n := len(next.Segments); n > 0 && alike(s.End(), s.Start) {
		next.Segments[n-1].End = s.Start
	} else {
		next.Segments = append(next.Segments, LineTo(s.Start))
	}
	if next.bare() {
		return s, fmt.Errorf("the line encloses nothing yet; it needs three places, or an arc or a curve")
	}
	return next, nil
}

// Join returns two open strokes as one, from the two ends that are nearest to each
// other: laid together where they count as one place, else with a straight piece
// between. The result runs as s does.
func (s Stroke) Join(t Stroke) (Stroke, error) {
	if s.Closed || t.Closed {
		return s, fmt.Errorf("a closed line has no end to join; part it at a node first")
	}
	gap := func(a, b geom.Point) float64 { return a.Sub(b).Norm() }
	here, back := s, t
	least := gap(s.End(), t.Start)
	for _, try := range []struct{ here, back Stroke }{{s, t.Reversed()}, {t, s}, {t.Reversed(), s}} {
		if d := gap(try.here.End(), try.back.Start); d < least {
			here, back, least = try.here, try.back, d
		}
	}
	next := here.edited()
	switch n := len(next.Segments); {
	case alike(here.End(), back.Start) && n > 0:
		next.Segments[n-1].End = back.Start
	case here.End() != back.Start:
		next.Segments = append(next.Segments, LineTo(back.Start))
	}
	next.Segments = append(next.Segments, back.Segments...)
	return next, nil
}

// Part returns s opened at a node, which becomes both its ends; an open stroke is
// parted in two.
func (s Stroke) Part(i int) ([]Stroke, error) {
	if err := s.checkNode(i); err != nil {
		return nil, err
	}
	if s.Closed {
		open := Stroke{Start: s.Node(i)}
		open.Segments = append(open.Segments, s.Segments[i:]...)
		open.Segments = append(open.Segments, s.Segments[:i]...)
		return []Stroke{open}, nil
	}
	if i == 0 || i == len(s.Segments) {
		return nil, fmt.Errorf("node %d is an end of the line already; part it between its ends", i+1)
	}
	return []Stroke{{Start: s.Start, Segments: s.Segments[:i:i]}, {Start: s.Node(i), Segments: s.Segments[i:]}}, nil
}
