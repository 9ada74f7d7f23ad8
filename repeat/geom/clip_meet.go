package geom

import "math"

// meets appends the parameters in 0…1 at which c is on the line through p and q.
// A curve that runs along the line is on it at its ends only.
func (c curve) meets(p, q Point, ts []float64) []float64 {
	switch c.Kind {
	case Arc:
		return c.arcMeets(p, q, ts)
	case Cubic:
		var d [4]float64
		for i, control := range [4]Point{c.from, c.C1, c.C2, c.End} {
			d[i] = float64(Orient(p, q, control))
		}
		return bernsteinRoots(d, float64(Grid)/4*q.Sub(p).Norm(), ts)
	}
	a, b := float64(Orient(p, q, c.from)), float64(Orient(p, q, c.End))
	if a != b && (a <= 0) != (b < 0) || a != b && (a < 0) != (b <= 0) {
		ts = append(ts, a/(a-b))
	}
	return ts
}

// arcMeets cuts the circle of c with the line through p and q.
func (c curve) arcMeets(p, q Point, ts []float64) []float64 {
	cx, cy, r, start, turn := c.arc(c.from)
	way := q.Sub(p)
	length := way.Norm()
	nx, ny := -float64(way.Y)/length, float64(way.X)/length
	off := nx*(float64(p.X)-cx) + ny*(float64(p.Y)-cy)
	if math.Abs(off) > r+float64(Grid) {
		return ts
	}
	middle, spread := math.Atan2(ny, nx), math.Acos(max(-1, min(1, off/r)))
	slack := float64(Grid) / r
	for _, angle := range [2]float64{middle - spread, middle + spread} {
		way := modulo(math.Copysign(1, turn)*(angle-start), 2*math.Pi)
		if way > 2*math.Pi-slack {
			way = 0
		}
		if way <= math.Abs(turn)+slack {
			ts = append(ts, min(1, way/math.Abs(turn)))
		}
	}
	return ts
}

// bernsteinRoots appends the roots in 0…1 of the cubic with the Bernstein
// coefficients d, each once; where it comes within slack of zero and turns back is
// a root too. Between the places where it stands still it is monotone, so that
// bisection can't miss a root.
func bernsteinRoots(d [4]float64, slack float64, ts []float64) []float64 {
	if d[0] > slack && d[1] > slack && d[2] > slack && d[3] > slack ||
		d[0] < -slack && d[1] < -slack && d[2] < -slack && d[3] < -slack {
		return ts
	}
	value := func(t float64) float64 {
		u := 1 - t
		return u*u*(u*d[0]+3*t*d[1]) + t*t*(3*u*d[2]+t*d[3])
	}
	stops := append([]float64{0}, stillPoints(d[1]-d[0], d[2]-d[1], d[3]-d[2])...)
	stops = append(stops, 1)
	for i, t := range stops {
		v := value(t)
		if math.Abs(v) <= slack {
			ts = append(ts, t)
			continue
		}
		if i == 0 {
			continue
		}
		if w := value(stops[i-1]); math.Abs(w) > slack && (w < 0) != (v < 0) {
			ts = append(ts, bisected(value, stops[i-1], t))
		}
	}
	return ts
}

// stillPoints returns the parameters in (0, 1), in order, where a cubic whose
// Bernstein coefficients differ by d0, d1, d2 stands still.
func stillPoints(d0, d1, d2 float64) []float64 {
	a, b, c := d0-2*d1+d2, 2*(d1-d0), d0
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	var roots []float64
	if t := q / a; t > 0 && t < 1 {
		roots = append(roots, t)
	}
	if t := c / q; t > 0 && t < 1 {
		roots = append(roots, t)
	}
	if len(roots) == 2 && roots[0] > roots[1] {
		roots[0], roots[1] = roots[1], roots[0]
	}
	return roots
}

// bisected returns the zero of f between lo and hi, where its signs differ: secant
// steps kept inside by halving (the Illinois rule; Dowell & Jarratt 1971).
func bisected(f func(float64) float64, lo, hi float64) float64 {
	fl, fh := f(lo), f(hi)
	for range 100 {
		t := hi - fh*(hi-lo)/(fh-fl)
		if !(t > min(lo, hi) && t < max(lo, hi)) {
			t = (lo + hi) / 2
		}
		ft := f(t)
		switch {
		case ft == 0 || math.Abs(hi-lo) < 1e-15:
			return t
		case (ft < 0) != (fh < 0):
			lo, fl = hi, fh
		default:
			fl /= 2
		}
		if math.Abs(t-hi) < 1e-16 {
			return t
		}
		hi, fh = t, ft
	}
	return hi
}
