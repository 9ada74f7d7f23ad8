package geom

import (
	"fmt"
	"math"
	"slices"
)

// mostDashes bounds how many dashes one stroke may have.
const mostDashes = 100_000

// dashed reports whether any dash and gap has a length.
func (s Stroke) dashed() bool {
	var sum Length
	for _, d := range s.Dash {
		if d < 0 {
			return false
		}
		sum += d
	}
	return sum > 0
}

// dashes cuts the tracks into dashes (SVG 1.1, section 11.4). A closed track whose
// first and last dash meet at its start has them as one.
func (s Stroke) dashes(tracks []Track) ([]Track, error) {
	dash := s.Dash
	if len(dash)%2 == 1 {
		dash = slices.Concat(dash, dash)
	}
	var period Length
	for _, d := range dash {
		period += d
	}
	var cut []Track
	for _, t := range tracks {
		c := t.curves()
		var length float64
		for i := range c {
			length += c[i].length(0, 1)
		}
		if n := length / float64(period) * float64(len(dash)); n > mostDashes {
			return nil, fmt.Errorf("a line of %s mm would have %.0f dashes; it may have %d, so lengthen them",
				Length(length), n, mostDashes)
		}
		cut = append(cut, dashAlong(t, c, dash, s.DashFrom, period)...)
	}
	return cut, nil
}

// dashAlong cuts one track.
func dashAlong(t Track, c []curve, dash []Length, from, period Length) []Track {
	k, left := dashStart(dash, from, period)
	var all []Track
	var open []curve // the dash that is being drawn
	firstOn := k%2 == 0
	end := func() {
		if len(open) > 0 {
			all = append(all, Track{contourOf(open), true})
		}
		open = nil
	}
	for i := range c {
		v := &c[i]
		at, t0 := v.from, 0.0
		rest := v.length(0, 1)
		for rest > left {
			t1 := v.along(t0, left)
			p := v.point(v.from, t1)
			if k%2 == 0 {
				open = append(open, curve{at, v.part(t0, t1, at, p)})
				end()
			}
			rest -= left
			at, t0 = p, t1
			k = (k + 1) % len(dash)
			left = float64(dash[k])
		}
		if k%2 == 0 && rest > 0 && at != v.End {
			open = append(open, curve{at, v.part(t0, 1, at, v.End)})
		}
		left -= rest
	}
	if !t.Open && firstOn && len(open) > 0 && len(all) > 0 {
		for _, s := range all[0].Segments {
			open = append(open, curve{open[len(open)-1].End, s})
		}
		all = all[1:]
	}
	if !t.Open && firstOn && len(all) == 0 && open != nil && open[len(open)-1].End == open[0].from {
		return []Track{t} // one dash all around
	}
	end()
	return all
}

// dashStart returns which dash or gap a line begins in, and how much of it is left.
func dashStart(dash []Length, from, period Length) (k int, left float64) {
	from %= period
	if from < 0 {
		from += period
	}
	for from > 0 && from >= dash[k] {
		from -= dash[k]
		k = (k + 1) % len(dash)
	}
	return k, float64(dash[k] - from)
}

// length returns how long c is between two parameters, in nanometres: closed for
// lines and arcs, and for cubics by Gauss's rule of five points on sixteen parts
// (Abramowitz & Stegun, 25.4.30).
func (c *curve) length(t0, t1 float64) float64 {
	if c.Kind != Cubic {
		return c.whole() * (t1 - t0)
	}
	nodes := [3]float64{0, 0.5384693101056831, 0.9061798459386640}
	weights := [3]float64{0.5688888888888889, 0.4786286704993665, 0.2369268850561891}
	const parts = 16
	var sum float64
	for i := range parts {
		a := t0 + (t1-t0)*float64(i)/parts
		half := (t1 - t0) / parts / 2
		for k, x := range nodes {
			for _, sign := range [2]float64{-1, 1} {
				if k == 0 && sign > 0 {
					continue
				}
				ux, uy := c.speed(a + half*(1+sign*x))
				sum += weights[k] * half * math.Hypot(ux, uy)
			}
		}
	}
	return sum
}

// whole returns the length of a line or an arc.
func (c *curve) whole() float64 {
	if c.Kind == Arc && !c.straight(c.from) {
		_, _, r, _, turn := c.arc(c.from)
		return r * math.Abs(turn)
	}
	return c.End.Sub(c.from).Norm()
}

// along returns the parameter that lies a length beyond t0.
func (c *curve) along(t0, length float64) float64 {
	if c.Kind != Cubic {
		return t0 + length/c.whole()
	}
	low, high := t0, 1.0
	for range 40 { // a cubic of a metre, halved to a nanometre
		t := (low + high) / 2
		if c.length(t0, t) < length {
			low = t
		} else {
			high = t
		}
	}
	return (low + high) / 2
}
