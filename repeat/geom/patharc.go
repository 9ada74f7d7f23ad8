package geom

import "math"

// maxRadius is the largest radius that path data may name, mm. An arc that is
// flatter is written as a line, which is off by 3 µm over a length of 1.5 m.
const maxRadius = 100_000_000

// arc reads one elliptical arc of path data.
func (p *pathReader) arc(relative bool) error {
	var in [3]float64
	for i := range in {
		v, err := p.numberWithin(maxRadius)
		if err != nil {
			return err
		}
		in[i] = v
	}
	large, err := p.flag()
	if err != nil {
		return err
	}
	sweep, err := p.flag()
	if err != nil {
		return err
	}
	end, err := p.numbers(2, relative)
	if err != nil {
		return err
	}
	p.ellipse(math.Abs(in[0]), math.Abs(in[1]), in[2], large, sweep, end[0], end[1])
	return nil
}

// ellipse goes along an elliptical arc to x, y, by the conversion from end points
// to centre of SVG 1.1, appendix F.6.5; too small radii are scaled up (F.6.6).
func (p *pathReader) ellipse(rx, ry, degrees float64, large, sweep bool, x, y float64) {
	if rx == 0 || ry == 0 {
		p.line(x, y)
		return
	}
	if x == p.x && y == p.y {
		return
	}
	if math.Abs(rx-ry) <= 1e-9*rx {
		p.circle(rx, large, sweep, x, y)
		return
	}
	sin, cos := sincosDegrees(degrees)
	// The chord's half in the ellipse's own frame, scaled to the unit circle.
	hx, hy := (p.x-x)/2, (p.y-y)/2
	ux, uy := (cos*hx+sin*hy)/rx, (cos*hy-sin*hx)/ry
	l2 := ux*ux + uy*uy
	if l2 > 1 {
		l := math.Sqrt(l2)
		rx, ry, ux, uy, l2 = rx*l, ry*l, ux/l, uy/l, 1
	}
	h := math.Sqrt(math.Max(0, 1/l2-1))
	if large == sweep {
		h = -h
	}
	// Centre on the unit circle's frame; the angles at both ends.
	cx, cy := h*uy, -h*ux
	from := math.Atan2(uy-cy, ux-cx)
	turn := math.Atan2(-uy-cy, -ux-cx) - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	ox := (p.x+x)/2 + cos*rx*cx - sin*ry*cy
	oy := (p.y+y)/2 + sin*rx*cx + cos*ry*cy
	at := func(px, py float64) (float64, float64) {
		return ox + cos*rx*px - sin*ry*py, oy + sin*rx*px + cos*ry*py
	}
	n := int(math.Ceil(math.Abs(turn)/(math.Pi/2) - 1e-9))
	step := turn / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(from + float64(i)*step)
		s1, c1 := math.Sincos(from + float64(i+1)*step)
		x1, y1 := at(c0-k*s0, s0+k*c0)
		x2, y2 := at(c1+k*s1, s1-k*c1)
		x3, y3 := at(c1, s1)
		if i == n-1 {
			x3, y3 = x, y
		}
		p.cubic(x1, y1, x2, y2, x3, y3)
	}
}

// circle goes along a circular arc to x, y. It works on the grid that the ends
// are put on, so that what PathData writes comes back to the bit.
func (p *pathReader) circle(r float64, large, sweep bool, x, y float64) {
	half := PtMM(x, y).Sub(PtMM(p.x, p.y)).Norm() / 2
	bulge := flatBulge(half, r*float64(Millimetre))
	if large {
		bulge = 1 / bulge
	}
	if !sweep {
		bulge = -bulge
	}
	if half == 0 { // both ends on one grid point: the arc has no extent
		bulge = 0
	}
	p.add(Segment{Kind: Arc, Bulge: bulge}, x, y)
}

// flatBulge returns tan(θ/4) of the arc of radius r over half a chord that turns
// by at most a half circle; a radius that is too small counts as half the chord.
// With q = half/r = sin(θ/2) it is q/(1+√(1−q²)), which loses nothing to rounding
// where the arc is flat.
func flatBulge(half, r float64) float64 {
	q := math.Min(half/r, 1)
	return q / (1 + math.Sqrt((1-q)*(1+q)))
}

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
