package geom

import "math"

// rawParallel returns the curves of a contour moved by so much to their outer side,
// joined: by arcs about the corner where they part, cut at their crossing where
// they overlap. Where they overlap and don't cross, plain is false and all are joined
// by arcs, backwards ones too: then the line goes around a place as often as parallel
// says.
func rawParallel(c []curve, by float64) (raw []curve, plain bool) {
	raw, ends, gone := moved(c, by)
	trimmed, ok := trim(raw, ends, c, by)
	if ok && !gone {
		return trimmed, true
	}
	out := make([]curve, 0, 2*len(raw))
	for i, v := range raw {
		out = append(out, v)
		if !ends[i].last {
			continue
		}
		out = append(out, join(v.End, raw[(i+1)%len(raw)].from, ends[i].turn)...)
	}
	return out, false
}

// join returns the arc about a corner from p to q that turns by so much.
func join(p, q Point, turn float64) []curve {
	if p == q {
		return nil
	}
	return []curve{{p, Segment{Kind: Arc, Bulge: math.Tan(turn / 4), End: q}}}
}

// An end says of a moved curve which one it came from, whether it is the last that
// did, and by what angle the contour turns there.
type end struct {
	of   int
	last bool
	turn float64
}

// moved returns each curve moved to its outer side. gone is true where one vanished
// or came out backwards.
func moved(c []curve, by float64) (raw []curve, ends []end, gone bool) {
	raw, ends = make([]curve, 0, 2*len(c)), make([]end, 0, 2*len(c))
	for i, v := range c {
		first := len(raw)
		switch v.Kind {
		case Arc:
			m, kept := v.movedArc(by)
			raw, gone = append(raw, m), gone || !kept
		case Cubic:
			raw = v.appendMoved(raw, 0, 1, by, maxHalvings)
		default:
			ux, uy := v.speed(0)
			raw = append(raw, curve{aside(v.from, ux, uy, by), Segment{Kind: Line, End: aside(v.End, ux, uy, by)}})
		}
		for len(ends) < len(raw) {
			ends = append(ends, end{of: i})
		}
		next := c[(i+1)%len(c)]
		_, in := v.heading()
		out, _ := next.heading()
		ends[len(ends)-1].last = true
		ends[len(ends)-1].turn = turnBetween(in, out)
		for k := first + 1; k < len(raw); k++ {
			raw[k].from = raw[k-1].End
		}
	}
	return raw, ends, gone
}

// aside returns p moved to the outer side of the direction ux, uy.
func aside(p Point, ux, uy, by float64) Point {
	l := math.Hypot(ux, uy)
	return Point{p.X + Length(math.Round(by*uy/l)), p.Y - Length(math.Round(by*ux/l))}
}

// movedArc returns the arc about the same centre; kept is false where its radius
// came out negative.
func (c curve) movedArc(by float64) (m curve, kept bool) {
	cx, cy, r, start, turn := c.arc(c.from)
	grown := r + by
	if turn < 0 {
		grown = r - by
	}
	put := func(angle float64) Point {
		sin, cos := math.Sincos(angle)
		return Point{Length(math.Round(cx + grown*cos)), Length(math.Round(cy + grown*sin))}
	}
	m = curve{put(start), Segment{Kind: Arc, Bulge: c.Bulge, End: put(start + turn)}}
	if m.from == m.End {
		m.Segment = Segment{Kind: Line, End: m.End}
	}
	return m, grown > float64(Snap)
}

// maxHalvings bounds how often a cubic is halved for its parallel; only at a cusp,
// where the parallel turns back, is it reached.
const maxHalvings = 6

// appendMoved appends cubics that stand for the parallel of c from t0 to t1: with
// the places and the directions of the parallel at both ends (Hermite's form), and
// halved where a quarter, the middle or three quarters are off.
func (c curve) appendMoved(to []curve, t0, t1, by float64, halvings int) []curve {
	ax, ay, ux, uy := c.parallelAt(t0, by)
	bx, by1, vx, vy := c.parallelAt(t1, by)
	h := (t1 - t0) / 3
	px, py, qx, qy := ax+ux*h, ay+uy*h, bx-vx*h, by1-vy*h
	for _, s := range [3]float64{0.5, 0.25, 0.75} {
		if halvings == 0 {
			break
		}
		x, y, _, _ := c.parallelAt(t0+s*(t1-t0), by)
		u := 1 - s
		mx := u*u*u*ax + 3*u*u*s*px + 3*u*s*s*qx + s*s*s*bx
		my := u*u*u*ay + 3*u*u*s*py + 3*u*s*s*qy + s*s*s*by1
		if math.Hypot(mx-x, my-y) > float64(Parallel)/2 {
			t := (t0 + t1) / 2
			return c.appendMoved(c.appendMoved(to, t0, t, by, halvings-1), t, t1, by, halvings-1)
		}
	}
	put := func(x, y float64) Point { return Point{Length(math.Round(x)), Length(math.Round(y))} }
	return append(to, curve{put(ax, ay), Segment{Kind: Cubic, C1: put(px, py), C2: put(qx, qy), End: put(bx, by1)}})
}

// parallelAt returns the place of the parallel of a cubic at t and how it moves:
// like the curve, times 1 + by·curvature (do Carmo, Differential Geometry, 1-5).
func (c curve) parallelAt(t, by float64) (x, y, dx, dy float64) {
	x, y = c.at(c.from, t)
	dx, dy = c.speed(t)
	l := math.Hypot(dx, dy)
	if l < float64(Grid) { // a control on the end: the heading is that of the chord
		first, last := c.heading()
		if t > 0.5 {
			first = last
		}
		dx, dy = float64(first.X), float64(first.Y)
		l = math.Hypot(dx, dy)
		return x + by*dy/l, y - by*dx/l, 0, 0
	}
	ex, ey := c.bend(t)
	k := (float64(dx*ey) - float64(dy*ex)) / (l * l * l)
	x, y = x+by*dy/l, y-by*dx/l
	return x, y, dx * (1 + by*k), dy * (1 + by*k)
}

// bend returns how the speed of a cubic changes at t.
func (c curve) bend(t float64) (x, y float64) {
	axis := func(a, b, p, q Length) float64 {
		return 6 * ((1-t)*float64(p-2*b+a) + t*float64(q-2*p+b))
	}
	return axis(c.from.X, c.C1.X, c.C2.X, c.End.X), axis(c.from.Y, c.C1.Y, c.C2.Y, c.End.Y)
}
