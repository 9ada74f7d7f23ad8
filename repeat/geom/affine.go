package geom

import "math"

// An Affine maps (x, y) to (A·x + B·y + E, C·x + D·y + F); E and F are in
// nanometres. Use Identity, not the zero Affine, which maps all to the origin.
type Affine struct{ A, B, C, D, E, F float64 }

// Identity leaves everything where it is.
var Identity = Affine{A: 1, D: 1}

// Translate moves by d.
func Translate(d Point) Affine { return Affine{1, 0, 0, 1, float64(d.X), float64(d.Y)} }

// Rotate turns by degrees about the origin, clockwise as seen on the sheet.
// Quarter turns are exact.
func Rotate(degrees float64) Affine {
	s, c := sincosDegrees(degrees)
	return Affine{A: c, B: -s, C: s, D: c}
}

// Scale stretches by x across and y along. Scale(-1, 1) mirrors left and right.
func Scale(x, y float64) Affine { return Affine{A: x, D: y} }

// Then returns the map that does m first and n after it.
func (m Affine) Then(n Affine) Affine {
	return Affine{
		n.A*m.A + n.B*m.C, n.A*m.B + n.B*m.D,
		n.C*m.A + n.D*m.C, n.C*m.B + n.D*m.D,
		n.A*m.E + n.B*m.F + n.E, n.C*m.E + n.D*m.F + n.F,
	}
}

// Apply returns where p goes, rounded to the nanometre.
func (m Affine) Apply(p Point) Point {
	x, y := float64(p.X), float64(p.Y)
	return Point{
		Length(math.Round(float64(m.A*x) + float64(m.B*y) + m.E)),
		Length(math.Round(float64(m.C*x) + float64(m.D*y) + m.F)),
	}
}

// Inverse returns the map that takes m back. A map that flattens the plane has
// none: the result then holds infinities.
func (m Affine) Inverse() Affine {
	d := m.Det()
	a, b, c, e := m.D/d, -m.B/d, -m.C/d, m.A/d
	return Affine{a, b, c, e, -(a*m.E + b*m.F), -(c*m.E + e*m.F)}
}

// Det is the factor by which m changes areas; it is negative for a mirror.
func (m Affine) Det() float64 { return float64(m.A*m.D) - float64(m.B*m.C) }

// Similar reports whether m keeps circles round, to one part in 10¹².
func (m Affine) Similar() bool {
	across, along := math.Hypot(m.A, m.C), math.Hypot(m.B, m.D)
	skew := float64(m.A*m.B) + float64(m.C*m.D)
	return math.Abs(across-along) <= 1e-12*across && math.Abs(skew) <= 1e-12*across*along
}

// sincosDegrees is exact at the multiples of 90°, where math.Sincos is not.
func sincosDegrees(degrees float64) (sin, cos float64) {
	degrees = math.Mod(degrees, 360)
	if degrees < 0 {
		degrees += 360
	}
	switch degrees {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}
