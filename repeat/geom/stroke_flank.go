package geom

import "math"

// A flank is one side of a stroke as far as it is drawn.
type flank struct {
	curves []curve
	at     Point
}

// line draws on to p.
func (e *flank) line(p Point) {
	if p != e.at {
		e.add(curve{e.at, Segment{Kind: Line, End: p}})
	}
}

// add draws on along v, which starts where e stands or within Snap of it.
func (e *flank) add(v curve) {
	if len(e.curves) > 0 {
		v.from = e.at
	}
	e.at = v.End
	if v.from != v.End || v.Kind != Line {
		e.curves = append(e.curves, v)
	}
}

// closed returns e with its last end on its first.
func (e *flank) closed() []curve {
	first := e.curves[0].from
	if n := len(e.curves); n > 1 && first.Sub(e.at).Norm() <= float64(Snap) {
		e.curves[n-1].End, e.at = first, first
	}
	e.line(first)
	return e.curves
}

// ribbon draws both sides of one curve. An arc that bends more tightly than h has
// its inner side drawn over its centre; what its normal sweeps beyond that is a
// contour of its own.
func ribbon(left, right *flank, v curve, h float64) (beyond Outline) {
	for i, e := range [2]*flank{left, right} {
		by := h
		if i == 1 {
			by = -h
		}
		raw, _, _ := moved([]curve{v}, by)
		if len(e.curves) == 0 {
			e.at = raw[0].from
		}
		if v.Kind == Arc {
			cx, cy, r, _, turn := v.arc(v.from)
			if grown := r + math.Copysign(by, by*turn); grown <= float64(Snap) {
				centre := Point{Length(math.Round(cx)), Length(math.Round(cy))}
				e.line(centre)
				e.line(raw[0].End)
				if grown < -float64(Snap) {
					beyond = append(beyond, sector(centre, raw[0]))
				}
				continue
			}
		}
		for _, p := range raw {
			e.add(p)
		}
	}
	return beyond
}

// sector is the piece of a disc between its centre and an arc, turning clockwise.
func sector(centre Point, arc curve) Contour {
	c := []curve{{centre, Segment{Kind: Line, End: arc.from}}, arc, {arc.End, Segment{Kind: Line, End: centre}}}
	if arc.Bulge < 0 {
		c = reversedCurves(c)
	}
	return contourOf(c)
}

// corner draws both sides from the end of a to the start of b: on the outer side the
// join, on the inner side over the corner itself.
func (s Stroke) corner(left, right *flank, a, b curve, h float64) {
	_, in := a.heading()
	out, _ := b.heading()
	turn := turnBetween(in, out)
	p := a.End
	side := func(e *flank, d Point, by float64) (to Point, near bool) {
		to = aside(p, float64(d.X), float64(d.Y), by)
		return to, to.Sub(e.at).Norm() <= float64(Snap)
	}
	l, lNear := side(left, out, h)
	r, rNear := side(right, out, -h)
	if lNear && rNear { // it runs on; the next curve starts where this one ended
		return
	}
	outer, inner, tip, foot := left, right, l, r
	if turn < 0 {
		outer, inner, tip, foot = right, left, r, l
	}
	s.join(outer, p, tip, turn, h)
	inner.line(p)
	inner.line(foot)
}

// join draws the outer side of a corner at p, from where e stands to tip.
func (s Stroke) join(e *flank, p, tip Point, turn, h float64) {
	switch s.Join {
	case RoundJoin:
		e.add(curve{e.at, Segment{Kind: Arc, Bulge: math.Tan(turn / 4), End: tip}})
		return
	case MiterJoin:
		// The ratio of SVG 1.1, section 11.4: 1/sin of half the angle between the lines.
		cos := math.Cos(turn / 2)
		if cos > 0 && 1/cos <= s.Miter {
			mx := float64(e.at.X-p.X) + float64(tip.X-p.X)
			my := float64(e.at.Y-p.Y) + float64(tip.Y-p.Y)
			k := h / cos / math.Hypot(mx, my)
			e.line(Point{p.X + Length(math.Round(mx*k)), p.Y + Length(math.Round(my*k))})
		}
	}
	e.line(tip)
}

// cap returns the way from one side to the other around an end that is left in the
// direction ahead.
func (s Stroke) cap(from, to, ahead Point, h float64) []curve {
	e := flank{at: from}
	switch s.Cap {
	case RoundCap:
		return []curve{{from, Segment{Kind: Arc, Bulge: 1, End: to}}}
	case SquareCap:
		l := ahead.Norm()
		d := Point{Length(math.Round(float64(ahead.X) / l * h)), Length(math.Round(float64(ahead.Y) / l * h))}
		e.line(from.Add(d))
		e.line(to.Add(d))
	}
	e.line(to)
	return e.curves
}
