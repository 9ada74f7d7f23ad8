package geom

import "math"

// A curve is a segment together with where it starts.
type curve struct {
	from Point
	Segment
}

// curves appends the segments of c that have a length, its closing line included.
// Arcs that are straight become lines.
func (c Contour) curves(to []curve) []curve {
	at := c.Start
	for _, s := range c.Segments {
		if s.straight(at) {
			s = Segment{Kind: Line, End: s.End}
		}
		if !s.still(at) {
			to = append(to, curve{at, s})
		}
		at = s.End
	}
	if at != c.Start {
		to = append(to, curve{at, Segment{Kind: Line, End: c.Start}})
	}
	return to
}

// still reports whether s stays where it starts.
func (s Segment) still(a Point) bool {
	return s.End == a && (s.Kind != Cubic || s.C1 == a && s.C2 == a)
}

// hull returns a box that holds c: around the controls of a cubic, and around the
// chord of an arc grown by its height, which no point of it is farther from.
func (c curve) hull() Box {
	lo := Point{min(c.from.X, c.End.X), min(c.from.Y, c.End.Y)}
	hi := Point{max(c.from.X, c.End.X), max(c.from.Y, c.End.Y)}
	switch c.Kind {
	case Cubic:
		lo = Point{min(lo.X, c.C1.X, c.C2.X), min(lo.Y, c.C1.Y, c.C2.Y)}
		hi = Point{max(hi.X, c.C1.X, c.C2.X), max(hi.Y, c.C1.Y, c.C2.Y)}
	case Arc:
		height := Length(math.Ceil(math.Abs(c.Bulge)*c.End.Sub(c.from).Norm()/2)) + Grid
		m := Point{height, height}
		lo, hi = lo.Sub(m), hi.Add(m)
	}
	return Box{lo, hi, true}
}

// part returns what c does between the parameters t0 and t1, put between p and q.
func (c curve) part(t0, t1 float64, p, q Point) Segment {
	switch {
	case t0 == 0 && t1 == 1:
		return c.Segment
	case c.Kind == Arc:
		return c.arcPart(t1-t0, p, q)
	case c.Kind == Cubic:
		return Segment{Kind: Cubic, C1: c.blossom(t0, t0, t1), C2: c.blossom(t0, t1, t1), End: q}
	}
	return Segment{Kind: Line, End: q}
}

// arcPart returns the arc from p to q that is the given share of c. Where the
// chord says the turn well, the radius is kept exactly; near a half
// circle the share says it better.
func (c curve) arcPart(share float64, p, q Point) Segment {
	_, _, r, _, turn := c.arc(c.from)
	turn *= share
	if sin := q.Sub(p).Norm() / 2 / r; sin < 0.9 {
		half := math.Asin(sin)
		if math.Abs(turn) > math.Pi {
			half = math.Pi - half
		}
		turn = math.Copysign(2*half, turn)
	}
	if p == q && math.Abs(turn) < 1 || turn == 0 {
		return Segment{Kind: Line, End: q}
	}
	return Segment{Kind: Arc, Bulge: math.Tan(turn / 4), End: q}
}

// blossom returns polar on the grid.
func (c curve) blossom(u, v, w float64) Point {
	x, y := c.polar(u, v, w)
	return Point{Length(math.Round(x)), Length(math.Round(y))}
}

// polar returns the polar form of a cubic at three parameters: the control points
// of each part of it (L. Ramshaw, Blossoms are polar forms, 1989).
func (c curve) polar(u, v, w float64) (x, y float64) {
	axis := func(x0, x1, x2, x3 float64) float64 {
		y0, y1, y2 := x0+u*(x1-x0), x1+u*(x2-x1), x2+u*(x3-x2)
		z0, z1 := y0+v*(y1-y0), y1+v*(y2-y1)
		return z0 + w*(z1-z0)
	}
	return axis(float64(c.from.X), float64(c.C1.X), float64(c.C2.X), float64(c.End.X)),
		axis(float64(c.from.Y), float64(c.C1.Y), float64(c.C2.Y), float64(c.End.Y))
}

// heading returns the direction in which c runs at its start and at its end.
func (c curve) heading() (first, last Point) {
	switch c.Kind {
	case Cubic:
		controls := [4]Point{c.from, c.C1, c.C2, c.End}
		for i := 1; i < 4 && first == (Point{}); i++ {
			first = controls[i].Sub(c.from)
		}
		for i := 2; i >= 0 && last == (Point{}); i-- {
			last = c.End.Sub(controls[i])
		}
		return first, last
	case Arc:
		// The tangents turn by half the arc's turn from the chord.
		half := 2 * math.Atan(c.Bulge)
		chord := c.End.Sub(c.from)
		turned := func(a float64) Point {
			sin, cos := math.Sincos(a)
			x, y := float64(chord.X), float64(chord.Y)
			return Point{Length(math.Round(x*cos - y*sin)), Length(math.Round(x*sin + y*cos))}
		}
		return turned(-half), turned(half)
	}
	return c.End.Sub(c.from), c.End.Sub(c.from)
}

// winding returns what c adds to how often its contour goes around x, y: the
// crossings with the ray to the right, downward ones counted up. It cuts the
// curve where the place lies in its hull until the piece is a nanometre small.
func (c *curve) winding(x, y float64) int {
	ly, hy, lx, hx := min(c.from.Y, c.End.Y), max(c.from.Y, c.End.Y), min(c.from.X, c.End.X), max(c.from.X, c.End.X)
	if c.Kind == Cubic {
		ly, hy = min(ly, c.C1.Y, c.C2.Y), max(hy, c.C1.Y, c.C2.Y)
		lx, hx = min(lx, c.C1.X, c.C2.X), max(hx, c.C1.X, c.C2.X)
	}
	if c.Kind != Arc && (y < float64(ly) || y > float64(hy) || x > float64(hx)) {
		return 0
	}
	if c.Kind != Arc && x < float64(lx) {
		return falling(y, float64(c.from.Y), float64(c.End.Y))
	}
	return c.windingOf(x, y, 0, 1, float64(c.from.X), float64(c.from.Y), float64(c.End.X), float64(c.End.Y))
}

// windingOf is winding for the part from t0 to t1, which runs from a to b.
func (c *curve) windingOf(x, y, t0, t1, ax, ay, bx, by float64) int {
	lx, ly, hx, hy := c.partHull(t0, t1, ax, ay, bx, by)
	if x > hx || y < ly || y > hy {
		return 0
	}
	small := hx-lx < float64(Grid)/2 && hy-ly < float64(Grid)/2
	if x >= lx && c.Kind != Line && !small {
		t := (t0 + t1) / 2
		mx, my := c.at(c.from, t)
		return c.windingOf(x, y, t0, t, ax, ay, mx, my) + c.windingOf(x, y, t, t1, mx, my, bx, by)
	}
	if (ay > y) == (by > y) {
		return 0
	}
	side := float64((bx-ax)*(y-ay)) - float64((by-ay)*(x-ax))
	if x < lx || side != 0 && (side > 0) == (by > ay) {
		return falling(y, ay, by)
	}
	return 0
}

// falling is 1 where y lies from ay down to before by, -1 from by to before ay.
func falling(y, ay, by float64) int {
	switch {
	case ay <= y && y < by:
		return 1
	case by <= y && y < ay:
		return -1
	}
	return 0
}

// partHull returns the box of the part of c from t0 to t1.
func (c *curve) partHull(t0, t1, ax, ay, bx, by float64) (lx, ly, hx, hy float64) {
	lx, ly, hx, hy = min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)
	switch c.Kind {
	case Arc:
		turn := 4 * math.Atan(c.Bulge) * (t1 - t0)
		height := math.Abs(math.Tan(turn/4))*math.Hypot(bx-ax, by-ay)/2 + 1e-3*float64(Grid)
		return lx - height, ly - height, hx + height, hy + height
	case Cubic:
		px, py := c.polar(t0, t0, t1)
		qx, qy := c.polar(t0, t1, t1)
		return min(lx, px, qx), min(ly, py, qy), max(hx, px, qx), max(hy, py, qy)
	}
	return lx, ly, hx, hy
}

// speed returns how c moves as its parameter grows, at t.
func (c *curve) speed(t float64) (x, y float64) {
	switch c.Kind {
	case Arc:
		_, _, r, start, turn := c.arc(c.from)
		sin, cos := math.Sincos(start + t*turn)
		return -r * turn * sin, r * turn * cos
	case Cubic:
		axis := func(a, b, p, q Length) float64 {
			d0, d1, d2 := float64(b-a), float64(p-b), float64(q-p)
			return 3 * ((1-t)*(1-t)*d0 + 2*t*(1-t)*d1 + t*t*d2)
		}
		return axis(c.from.X, c.C1.X, c.C2.X, c.End.X), axis(c.from.Y, c.C1.Y, c.C2.Y, c.End.Y)
	}
	return float64(c.End.X - c.from.X), float64(c.End.Y - c.from.Y)
}
