package outlinefile

import (
	"math"

	"tsugime/repeat/geom"
)

// A weighted is a control point in homogeneous coordinates: x·w, y·w, w.
type weighted struct{ x, y, w float64 }

func (p weighted) mix(q weighted, t float64) weighted {
	return weighted{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y), p.w + t*(q.w-p.w)}
}

func (p weighted) place() place { return place{p.x / p.w, p.y / p.w} }

const (
	mostDegree   = 25
	mostControls = 100_000
)

// splineRun reads a SPLINE: a B-spline, perhaps a rational one, taken apart into its
// Bézier pieces by blossoming (L. Ramshaw, Blossoms are polar forms, 1989). Pieces
// up to the third degree without weights are cubics exactly. Where it gives only
// points to pass through there is no run.
func splineRun(e entity) (run, error) {
	var knots, weights []float64
	var controls []weighted
	for _, p := range e.groups {
		switch p.code {
		case 10, 20, 40, 41:
		default:
			continue
		}
		v, err := p.float()
		if err != nil {
			return run{}, err
		}
		switch {
		case p.code == 40:
			knots = append(knots, v)
		case p.code == 10:
			controls = append(controls, weighted{v, 0, 1})
		case p.code == 20 && len(controls) > 0:
			controls[len(controls)-1].y = v
		case p.code == 41:
			weights = append(weights, v)
		}
	}
	degree := e.int(71, 3)
	switch {
	case len(controls) == 0:
		return run{}, nil
	case degree < 1 || degree > mostDegree:
		return run{}, faultf(e.line, "SPLINE: a degree of %d is out of bounds; give 1 to %d", degree, mostDegree)
	case len(controls) > mostControls:
		return run{}, faultf(e.line, "SPLINE: %d control points are too many; it may have %d", len(controls), mostControls)
	case len(controls) <= degree || len(knots) != len(controls)+degree+1:
		return run{}, faultf(e.line, "SPLINE: %d knots don't go with %d control points of degree %d; save it again", len(knots), len(controls), degree)
	}
	for i, k := range knots {
		if i > 0 && k < knots[i-1] {
			return run{}, faultf(e.line, "SPLINE: its knots don't rise; save it again")
		}
	}
	if len(weights) > 0 && len(weights) != len(controls) {
		return run{}, faultf(e.line, "SPLINE: %d weights don't go with %d control points; save it again", len(weights), len(controls))
	}
	for i, c := range controls {
		if len(weights) > 0 {
			c.w = weights[i]
		}
		if c.w <= 0 {
			return run{}, faultf(e.line, "SPLINE: a weight of %g; weights must be more than 0", c.w)
		}
		controls[i] = weighted{c.x * c.w, c.y * c.w, c.w}
	}
	return splinePieces(degree, knots, controls), nil
}

// splinePieces returns the run along the pieces between the knots.
func splinePieces(degree int, knots []float64, controls []weighted) run {
	var r run
	slack := 1e-7 * spread(controls)
	for k := degree; k < len(controls); k++ {
		u0, u1 := knots[k], knots[k+1]
		if u1 <= u0 {
			continue
		}
		bezier := make([]weighted, degree+1)
		for j := range bezier {
			bezier[j] = blossom(degree, knots, controls, k, u0, u1, j)
		}
		if len(r.steps) == 0 {
			r.start = bezier[0].place()
		}
		r.steps = appendBezier(r.steps, bezier, slack, 10)
	}
	if n := len(r.steps); n > 0 {
		end := r.steps[n-1].to
		r.closed = math.Hypot(end.x-r.start.x, end.y-r.start.y) <= slack
	}
	return r
}

// spread is how far control points lie apart.
func spread(controls []weighted) float64 {
	lo, hi := controls[0].place(), controls[0].place()
	for _, c := range controls {
		p := c.place()
		lo, hi = place{min(lo.x, p.x), min(lo.y, p.y)}, place{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return math.Hypot(hi.x-lo.x, hi.y-lo.y)
}

// blossom is the polar form of the piece between knots k and k+1, at u1 taken j
// times and u0 the rest: the Bézier control point number j.
func blossom(degree int, knots []float64, controls []weighted, k int, u0, u1 float64, j int) weighted {
	d := make([]weighted, degree+1)
	copy(d, controls[k-degree:k+1])
	for r := 1; r <= degree; r++ {
		u := u0
		if r <= j {
			u = u1
		}
		for i := degree; i >= r; i-- {
			left, right := knots[i+k-degree], knots[i+1+k-r]
			d[i] = d[i-1].mix(d[i], (u-left)/(right-left))
		}
	}
	return d[degree]
}

// appendBezier appends a Bézier piece of any degree as cubics: exactly up to the third
// degree without weights, else by cubics with its places and directions at both ends,
// halved until a quarter, the middle and three quarters are near enough.
func appendBezier(steps []step, b []weighted, slack float64, halvings int) []step {
	if c1, c2, ok := exactCubic(b); ok {
		return append(steps, step{kind: geom.Cubic, c1: c1, c2: c2, to: b[len(b)-1].place()})
	}
	a, ax, ay := bezierAt(b, 0)
	z, zx, zy := bezierAt(b, 1)
	s := step{kind: geom.Cubic, c1: place{a.x + ax/3, a.y + ay/3}, c2: place{z.x - zx/3, z.y - zy/3}, to: z}
	near := true
	for _, t := range [3]float64{0.25, 0.5, 0.75} {
		p, _, _ := bezierAt(b, t)
		u := 1 - t
		x := u*u*u*a.x + 3*u*u*t*s.c1.x + 3*u*t*t*s.c2.x + t*t*t*z.x
		y := u*u*u*a.y + 3*u*u*t*s.c1.y + 3*u*t*t*s.c2.y + t*t*t*z.y
		near = near && math.Hypot(x-p.x, y-p.y) <= slack
	}
	if near || halvings == 0 {
		return append(steps, s)
	}
	left, right := halved(b)
	return appendBezier(appendBezier(steps, left, slack, halvings-1), right, slack, halvings-1)
}

// exactCubic returns the inner controls of the cubic that a piece is.
func exactCubic(b []weighted) (c1, c2 place, ok bool) {
	for _, p := range b {
		if p.w != b[0].w {
			return c1, c2, false
		}
	}
	at := func(i int) place { return b[i].place() }
	third := func(p, q place) place { return place{p.x + (q.x-p.x)/3, p.y + (q.y-p.y)/3} }
	switch len(b) {
	case 2:
		return third(at(0), at(1)), third(at(1), at(0)), true
	case 3:
		return third(at(1), at(0)), third(at(1), at(2)), true
	case 4:
		return at(1), at(2), true
	}
	return c1, c2, false
}

// bezierAt returns the place at t and how it moves, by de Casteljau's steps.
func bezierAt(b []weighted, t float64) (p place, dx, dy float64) {
	d := append([]weighted(nil), b...)
	n := len(d) - 1
	for r := n; r > 1; r-- {
		for i := range r {
			d[i] = d[i].mix(d[i+1], t)
		}
	}
	at := d[0].mix(d[1], t)
	w := float64(n)
	vx, vy, vw := w*(d[1].x-d[0].x), w*(d[1].y-d[0].y), w*(d[1].w-d[0].w)
	p = at.place()
	return p, (vx - vw*p.x) / at.w, (vy - vw*p.y) / at.w
}

// halved cuts a Bézier piece at its middle.
func halved(b []weighted) (left, right []weighted) {
	d := append([]weighted(nil), b...)
	left, right = make([]weighted, len(b)), make([]weighted, len(b))
	for r := range b {
		left[r], right[len(b)-1-r] = d[0], d[len(b)-1-r]
		for i := range len(b) - 1 - r {
			d[i] = d[i].mix(d[i+1], 0.5)
		}
	}
	return left, right
}
