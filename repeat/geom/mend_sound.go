package geom

import "math"

// fewCurves is the number of curves below which comparing each with each is
// faster than an index.
const fewCurves = 160

// crossedAt returns a place where the contours may cross or come within Snap of
// themselves or each other. It may find one where they don't, never miss one.
func crossedAt(contours [][]curve) (Point, bool) {
	total := 0
	for _, c := range contours {
		total += max(len(c), 6)
	}
	all := make([]curve, 0, total)
	next := make([]int, 0, total) // the curve that follows in its contour
	for _, c := range contours {
		first := len(all)
		all = append(all, thrice(c)...)
		for k := first; k < len(all); k++ {
			next = append(next, k+1)
		}
		if len(all) > first {
			next[len(all)-1] = first
		}
	}
	boxes := make([]Box, len(all))
	for i, v := range all {
		boxes[i] = v.hull().Grown(Snap)
		if !v.selfApart(8) {
			return v.from, true
		}
	}
	clash := func(i, j int) bool {
		a, b := &all[i], &all[j]
		switch {
		case next[i] == j:
			return !jointApart(*a, *b, 8)
		case next[j] == i:
			return !jointApart(*b, *a, 8)
		}
		steps := 512
		return !apartCurves(*a, *b, &steps)
	}
	if len(all) <= fewCurves {
		for i := range all {
			b := boxes[i]
			for j := range i {
				c := &boxes[j]
				if b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y && clash(i, j) {
					return all[i].from, true
				}
			}
		}
		return Point{}, false
	}
	index := NewIndex(boxes)
	for i := range all {
		found := false
		index.Visit(boxes[i], func(j int) bool {
			found = j < i && clash(i, j)
			return !found
		})
		if found {
			return all[i].from, true
		}
	}
	return Point{}, false
}

// thrice returns curves in at least three parts, so that no two share both ends.
func thrice(curves []curve) []curve {
	if len(curves) >= 3 {
		return curves
	}
	var parts []curve
	for _, v := range curves {
		a, b := v.halves()
		c, d := b.halves()
		parts = append(parts, a, c, d)
	}
	return parts
}

// halves cuts c at its middle.
func (c curve) halves() (curve, curve) {
	m := c.point(c.from, 0.5)
	return curve{c.from, c.part(0, 0.5, c.from, m)}, curve{m, c.part(0.5, 1, m, c.End)}
}

// selfApart reports whether c does not meet itself: its controls go one way.
func (c curve) selfApart(depth int) bool {
	if c.Kind != Cubic {
		return true
	}
	way := c.End.Sub(c.from)
	legs := [3]Point{c.C1.Sub(c.from), c.C2.Sub(c.C1), c.End.Sub(c.C2)}
	forward := way != Point{}
	for _, l := range legs {
		forward = forward && (l == Point{} || way.Dot(l) > 0)
	}
	if forward {
		return true
	}
	if depth == 0 {
		return false
	}
	a, b := c.halves()
	return a.selfApart(depth-1) && b.selfApart(depth-1) && jointApart(a, b, depth-1)
}

// apartCurves reports whether two curves surely stay more than Snap apart, in so
// many steps.
func apartCurves(a, b curve, steps *int) bool {
	p, q := a.hull().Grown(Snap), b.hull()
	if !p.Meets(q) {
		return true
	}
	if a.Kind == Line && b.Kind == Line {
		return !nearby(a.from, a.End, b.from, b.End)
	}
	if *steps--; *steps <= 0 {
		return false
	}
	large := p.Width()+p.Height() >= q.Width()+q.Height()
	if b.Kind == Line || large && a.Kind != Line {
		if p.Width()+p.Height() < 4*Snap {
			return false
		}
		c, d := a.halves()
		return apartCurves(c, b, steps) && apartCurves(d, b, steps)
	}
	if q.Width()+q.Height() < 4*Snap {
		return false
	}
	c, d := b.halves()
	return apartCurves(a, c, steps) && apartCurves(a, d, steps)
}

// jointApart reports whether two curves, the second of which starts where the
// first ends, surely meet only there: a line through that place parts them.
func jointApart(a, b curve, depth int) bool {
	if a.Kind == Line && b.Kind == Line {
		return !folded(a.from, a.End, b.End)
	}
	_, in := a.heading()
	out, _ := b.heading()
	l, m := in.Norm(), out.Norm()
	if l == 0 || m == 0 {
		return false
	}
	ux, uy := float64(in.X)/l+float64(out.X)/m, float64(in.Y)/l+float64(out.Y)/m
	if math.Hypot(ux, uy) > 1e-3 && a.ahead(a.End, -ux, -uy) && b.ahead(b.from, ux, uy) {
		return true
	}
	if depth == 0 {
		return false
	}
	a1, a2 := a.halves()
	b1, b2 := b.halves()
	steps := 128
	return apartCurves(a1, b1, &steps) && apartCurves(a1, b2, &steps) && apartCurves(a2, b2, &steps) &&
		jointApart(a2, b1, depth-1)
}

// ahead reports whether all of c but p lies on the side of p to which ux, uy points.
func (c curve) ahead(p Point, ux, uy float64) bool {
	side := func(q Point) bool {
		return q == p || ux*float64(q.X-p.X)+uy*float64(q.Y-p.Y) > 0
	}
	switch c.Kind {
	case Cubic:
		return side(c.from) && side(c.C1) && side(c.C2) && side(c.End)
	case Arc:
		if math.Abs(c.Bulge) > 0.5 {
			return false
		}
		// The tangents at the ends meet over the middle of the chord.
		h := math.Tan(2*math.Atan(c.Bulge)) / 2
		d := c.End.Sub(c.from)
		apex := Point{
			c.from.X + d.X/2 + d.Y.Times(h), c.from.Y + d.Y/2 - d.X.Times(h),
		}
		return side(c.from) && side(apex) && side(c.End)
	}
	return side(c.from) && side(c.End)
}
