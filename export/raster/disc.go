package raster

import "math"

// A disc is ready to be painted: millimetres.
type disc struct{ x, y, r float64 }

// The part of the unit disc that lies in the rectangle from the centre to (u, v),
// with 0 ≤ u, v ≤ 1, is
//
//	u·v                      where (u, v) lies in the disc,
//	P(u) + P(v) − π/4        where it does not,
//
// with P(t) = ½(t·√(1−t²) + arcsin t), the area under the quarter circle from 0
// to t. (Integrate √(1−x²) from √(1−v²) to u and add v·√(1−v²).) With the signs
// of u and v it is odd in both, so the area in any rectangle is a difference of
// four such values, and only its edges, not its corners, need a root.

// segment is P, odd in t; t lies within −1 and 1.
func segment(t float64) float64 { return 0.5 * (t*math.Sqrt(1-t*t) + math.Asin(t)) }

// segmentSteps is how finely P is kept in a table. Between two entries it is off
// by at most 0.14·steps^−1.5 = 4.3e-6, at the rim, where P bends most.
const segmentSteps = 1024

var segmentTable = func() *[segmentSteps + 2]float64 {
	var t [segmentSteps + 2]float64
	for i := range t {
		t[i] = segment(math.Min(float64(i)/segmentSteps, 1))
	}
	return &t
}()

// tableRadius is up to which radius in pixels the table is near enough: four
// values off by 4.3e-6·6² of a pixel are a sixth of a level at the very worst.
const tableRadius = 6

// near is segment from the table, t within 0 and 1.
func near(t float64) float64 {
	t *= segmentSteps
	i := int(t)
	a := segmentTable[i]
	return a + (segmentTable[i+1]-a)*(t-float64(i))
}

// A cut is where an edge of the grid crosses a disc: u in radii from the centre,
// cut off at the rim.
type cut struct{ u, uu, p, s float64 }

// cutAt returns the cut at u. p is s·(P(|u|) − π/8), so that outside the disc the
// area from the centre to (u, v) is s(v)·p(u) + s(u)·p(v).
func cutAt(u float64, table bool) cut {
	s := 1.0
	t := u
	if u < 0 {
		s, t = -1, -u
	}
	if t >= 1 {
		return cut{s, 1, s * (math.Pi / 8), s}
	}
	area := 0.0
	if table {
		area = near(t)
	} else {
		area = segment(t)
	}
	return cut{u, u * u, s * (area - math.Pi/8), s}
}

// corner returns the area of the unit disc between its centre and the corner
// (c, d).
func corner(c, d *cut) float64 {
	if c.uu+d.uu < 1 {
		return c.u * d.u
	}
	return d.s*c.p + c.s*d.p
}
