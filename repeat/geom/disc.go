package geom

import "math"

// A Disc is a round hole: what an awl or a round punch leaves. It stays a disc
// through every station; only a boolean sees it as straight pieces.
type Disc struct {
	Centre   Point
	Diameter Length
}

// RadiusMM returns half the diameter in millimetres, exact.
func (d Disc) RadiusMM() float64 { return d.Diameter.MM() / 2 }

// AreaMM2 returns the area in square millimetres.
func (d Disc) AreaMM2() float64 { return math.Pi / 4 * d.Diameter.MM() * d.Diameter.MM() }

// Bounds returns the box around d.
func (d Disc) Bounds() Box {
	r := (d.Diameter + 1) / 2
	return BoxOf(d.Centre).Grown(r)
}

// Contains reports whether p lies in d or on its rim.
func (d Disc) Contains(p Point) bool { return 2*p.Sub(d.Centre).Norm() <= float64(d.Diameter) }

// Ring returns straight pieces that stand for d, no farther from its rim than
// chord, starting at the right and turning clockwise on the sheet.
func (d Disc) Ring(chord Length) Ring {
	r := float64(d.Diameter) / 2
	n := 8
	if h := float64(chord); r > h {
		n = max(n, 4*int(math.Ceil(math.Pi/4/math.Acos(1-h/r))))
	}
	ring := make(Ring, n)
	for i := range ring {
		s, c := sincosDegrees(360 * float64(i) / float64(n))
		ring[i] = d.Centre.Add(Point{Length(math.Round(r * c)), Length(math.Round(r * s))})
	}
	return ring
}
