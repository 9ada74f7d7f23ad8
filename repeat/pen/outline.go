package pen

import (
	"fmt"

	"tsugime/repeat/geom"
)

// Of returns the contours of an outline as strokes, each closed and without pieces
// that stay where they start.
func Of(o geom.Outline) []Stroke {
	var strokes []Stroke
	for _, c := range o {
		s := Begin(c.Start)
		for _, g := range c.Segments {
			if next, err := s.Add(g); err == nil {
				s = next
			}
		}
		if closed, err := s.closedExactly(); err == nil {
			strokes = append(strokes, closed)
		}
	}
	return strokes
}

// closedExactly closes s as an outline is understood: where its end is not its
// start, however near, a straight piece leads there.
func (s Stroke) closedExactly() (Stroke, error) {
	if s.End() != s.Start {
		s.Segments = append(s.Segments[:len(s.Segments):len(s.Segments)], LineTo(s.Start))
	}
	s.Closed = true
	if s.bare() {
		return s, fmt.Errorf("the line encloses nothing")
	}
	return s, nil
}

// Outline returns the outline that closed strokes bound, sound as geom.Mended makes
// it, and what had to be mended but for the sense in which a stroke was drawn. An open stroke is
// refused, and strokes that enclose nothing.
func Outline(strokes ...Stroke) (geom.Outline, []geom.Mend, error) {
	var drawn geom.Outline
	for _, s := range strokes {
		if !s.Closed {
			return nil, nil, fmt.Errorf("the line is open: its ends are %s mm apart; close it, or let it end on a mirror line", s.End().Distance(s.Start))
		}
		drawn = append(drawn, geom.Contour{Start: s.Start, Segments: s.Segments})
	}
	o, found := drawn.Mended()
	var mends []geom.Mend
	for _, m := range found {
		switch m.Flaw {
		case geom.TooWide:
			return nil, nil, fmt.Errorf("the line reaches farther than any sheet; draw it smaller")
		case geom.Reversed:
		default:
			mends = append(mends, m)
		}
	}
	if len(o) == 0 || !(o.AreaMM2() > 0) {
		return nil, nil, fmt.Errorf("the line encloses nothing; draw it around some paper")
	}
	return o, mends, nil
}

// Parts returns the pieces of a sound outline that don't hang together, each with its
// own holes, in the order of their rims.
func Parts(o geom.Outline) []geom.Outline {
	var parts []geom.Outline
	for _, c := range o {
		if !hole(c) {
			parts = append(parts, geom.Outline{c})
		}
	}
	for _, c := range o {
		if !hole(c) {
			continue
		}
		// The hole is of the innermost rim around it: the smallest.
		best := -1
		for i, p := range parts {
			rim := geom.Shape{Outline: p[:1]}
			if rim.Contains(c.Start) && (best < 0 || rim.AreaMM2() < parts[best][:1].AreaMM2()) {
				best = i
			}
		}
		if best >= 0 {
			parts[best] = append(parts[best], c)
		}
	}
	return parts
}

// hole reports whether a contour of a sound outline turns against the clock.
func hole(c geom.Contour) bool { return geom.Outline{c}.Rings(geom.Chord)[0].Area2() < 0 }
