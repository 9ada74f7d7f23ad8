package geom

import "math"

// arc reads one elliptical arc of path data.
func (p *pathReader) arc(relative bool) error {
	var in [3]float64
	for i := range in {
		v, err := p.number()
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
	if math.Abs(rx-ry) <= 1e-9*rx {
		p.add(Segment{Kind: Arc, Bulge: math.Tan(turn / 4)}, x, y)
		return
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

// PathData writes o as SVG path data in millimetres with at most places
// decimals; ParsePathData reads it back the same with six. An arc is written as
// one or, beyond a half circle, two A commands.
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

func (s Segment) appendArc(dst []byte, a Point, places int) []byte {
	if math.Abs(s.Bulge) > 1 { // beyond a half circle: two arcs are unmistakable
		half := Segment{Kind: Arc, Bulge: math.Tan(math.Atan(s.Bulge) / 2)}
		middle := s.point(a, 0.5)
		half.End = middle
		dst = half.appendArc(dst, a, places)
		half.End = s.End
		return half.appendArc(dst, middle, places)
	}
	_, _, r, _, _ := s.arc(a)
	dst = append(dst, 'A')
	radius := Length(math.Ceil(r)) // never too small for its chord
	dst = radius.AppendMM(dst, places)
	dst = append(dst, ' ')
	dst = radius.AppendMM(dst, places)
	dst = append(dst, " 0 0 "...)
	if s.Bulge > 0 {
		dst = append(dst, '1')
	} else {
		dst = append(dst, '0')
	}
	dst = append(dst, ' ')
	dst = s.End.X.AppendMM(dst, places)
	dst = append(dst, ' ')
	return s.End.Y.AppendMM(dst, places)
}
