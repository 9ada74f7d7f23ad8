package geom

import "math"

// A Kind says how a Segment runs to its end.
type Kind uint8

// The kinds of segments.
const (
	Line  Kind = iota // straight
	Arc               // part of a circle, given by Bulge
	Cubic             // a cubic Bézier with the controls C1 and C2
)

// A Segment runs from the end of the one before it to End.
type Segment struct {
	Kind   Kind
	End    Point
	C1, C2 Point // Cubic: the control points
	// Bulge is tan(θ/4) of an Arc that turns by θ: 1 is a half circle. It is
	// positive where the arc turns clockwise on the sheet (x to y).
	Bulge float64
}

// A Contour is one closed line of an outline. The last segment ends at Start;
// where it does not, a straight segment is understood.
type Contour struct {
	Start    Point
	Segments []Segment
}

// An Outline is a set of contours. A place is inside where the contours wind
// around it a number of times that is not zero (the non-zero rule of SVG 1.1,
// section 11.3), so a contour that turns the other way cuts a hole.
type Outline []Contour

// Moved returns o moved by d.
func (o Outline) Moved(d Point) Outline {
	moved := make(Outline, len(o))
	for i, c := range o {
		segments := make([]Segment, len(c.Segments))
		for j, s := range c.Segments {
			s.End = s.End.Add(d)
			if s.Kind == Cubic {
				s.C1, s.C2 = s.C1.Add(d), s.C2.Add(d)
			}
			segments[j] = s
		}
		moved[i] = Contour{c.Start.Add(d), segments}
	}
	return moved
}

// Mapped returns o under m. Arcs stay arcs where m keeps circles round and
// become cubics where it does not.
func (o Outline) Mapped(m Affine) Outline {
	round := m.Similar()
	mirror := m.Det() < 0
	mapped := make(Outline, len(o))
	for i, c := range o {
		out := Contour{Start: m.Apply(c.Start)}
		at := c.Start
		for _, s := range c.Segments {
			pieces := []Segment{s}
			if s.Kind == Arc && !round {
				pieces = arcCubics(at, s)
			}
			for _, p := range pieces {
				p.End = m.Apply(p.End)
				if p.Kind == Cubic {
					p.C1, p.C2 = m.Apply(p.C1), m.Apply(p.C2)
				}
				if mirror {
					p.Bulge = -p.Bulge
				}
				out.Segments = append(out.Segments, p)
			}
			at = s.End
		}
		mapped[i] = out
	}
	return mapped
}

// Bounds returns the box around o, exact for lines and within a nanometre for
// arcs and cubics.
func (o Outline) Bounds() Box {
	var b Box
	for _, c := range o {
		b = b.With(c.Start)
		at := c.Start
		for _, s := range c.Segments {
			b = b.Union(s.bounds(at))
			at = s.End
		}
	}
	return b
}

// AreaMM2 returns the area that the contours enclose, in square millimetres:
// closed forms for lines, arcs and cubics, summed with the sign of their turn.
// It is the area of the inside where no contour crosses itself or another, and
// holes turn against their rim.
func (o Outline) AreaMM2() float64 {
	var sum float64
	for _, c := range o {
		at := c.Start
		for _, s := range c.Segments {
			sum += s.area2(at, c.Start)
			at = s.End
		}
		sum += cross(at, c.Start, c.Start)
	}
	return math.Abs(sum) / 2 / float64(Millimetre*Millimetre)
}

// Rings returns the contours as straight pieces no farther from the true curve
// than chord.
func (o Outline) Rings(chord Length) []Ring {
	rings := make([]Ring, 0, len(o))
	for _, c := range o {
		ring := Ring{c.Start}
		at := c.Start
		for _, s := range c.Segments {
			ring = s.appendPoints(ring, at, chord)
			at = s.End
		}
		if n := len(ring); n > 1 && ring[n-1] == ring[0] {
			ring = ring[:n-1]
		}
		rings = append(rings, ring)
	}
	return rings
}

// cross is twice the signed area of the triangle o, a, b in float64.
func cross(a, b, o Point) float64 {
	a, b = a.Sub(o), b.Sub(o)
	return float64(float64(a.X)*float64(b.Y)) - float64(float64(a.Y)*float64(b.X))
}
