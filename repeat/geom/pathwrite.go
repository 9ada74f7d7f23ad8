package geom

import "math"

// PathData writes o as SVG path data in millimetres with at most places
// decimals; what ParsePathData has read comes back the same with six. An arc is
// written as one A command or more, so that its height keeps the decimals too.
func (o Outline) PathData(places int) string { return string(o.AppendPathData(nil, places)) }

// AppendPathData appends PathData to dst.
func (o Outline) AppendPathData(dst []byte, places int) []byte {
	point := func(p Point) {
		dst = p.X.AppendMM(dst, places)
		dst = append(dst, ' ')
		dst = p.Y.AppendMM(dst, places)
	}
	for _, c := range o {
		dst = append(dst, 'M')
		point(c.Start)
		at := c.Start
		for i, s := range c.Segments {
			switch {
			case s.straight(at):
				if i == len(c.Segments)-1 && s.End == c.Start {
					break // Z draws it
				}
				dst = append(dst, 'L')
				point(s.End)
			case s.Kind == Arc:
				dst = s.appendArc(dst, at, places)
			default:
				dst = append(dst, 'C')
				point(s.C1)
				dst = append(dst, ' ')
				point(s.C2)
				dst = append(dst, ' ')
				point(s.End)
			}
			at = s.End
		}
		dst = append(dst, 'Z')
	}
	return dst
}

// appendArc writes an arc as one A command where the rounded radius gives back
// its height, and as two halves where it does not: near a half circle the height
// follows the root of a rounding of the radius.
func (s Segment) appendArc(dst []byte, a Point, places int) []byte {
	unit := float64(Millimetre)
	for range places {
		unit /= 10
	}
	snap := func(v float64) float64 { return math.Round(v/unit) * unit }
	_, _, radius, _, _ := s.arc(a)
	r := snap(radius)
	height := s.End.Sub(a).Norm() / 2 * math.Abs(s.Bulge)
	half := math.Hypot(snap(float64(s.End.X))-snap(float64(a.X)), snap(float64(s.End.Y))-snap(float64(a.Y))) / 2
	read := half * flatBulge(half, r) // the height that a reader gets
	middle := s.point(a, 0.5)
	switch flat := math.Abs(s.Bulge) <= 1; {
	case flat && (r > maxRadius*float64(Millimetre) || read < unit/2):
		dst = append(dst, 'L')
		return s.appendEnd(dst, places)
	case !flat || math.Abs(read-height) > 2*unit && middle != a && middle != s.End:
		first := Segment{Kind: Arc, Bulge: math.Tan(math.Atan(s.Bulge) / 2), End: middle}
		second := first
		second.End = s.End
		return second.appendArc(first.appendArc(dst, a, places), middle, places)
	}
	dst = append(dst, 'A')
	dst = Length(math.Round(r)).AppendMM(dst, places)
	dst = append(dst, ' ')
	dst = Length(math.Round(r)).AppendMM(dst, places)
	dst = append(dst, " 0 0 "...)
	if s.Bulge > 0 {
		dst = append(dst, "1 "...)
	} else {
		dst = append(dst, "0 "...)
	}
	return s.appendEnd(dst, places)
}

func (s Segment) appendEnd(dst []byte, places int) []byte {
	dst = s.End.X.AppendMM(dst, places)
	dst = append(dst, ' ')
	return s.End.Y.AppendMM(dst, places)
}
