package geom

import "math"

// RimMM returns the length of the rim of s in millimetres.
func (s Shape) RimMM() float64 {
	if s.Round() {
		return math.Pi * s.Disc.Diameter.MM()
	}
	return s.Outline.RimMM()
}

// RimMM returns the length of all contours in millimetres: exact for lines and
// arcs, for a cubic that of its straight pieces at Chord, which is short by less
// than a hundred-thousandth where it bends by radii above 0.1 mm.
func (o Outline) RimMM() float64 {
	var nm float64
	for _, c := range o {
		at := c.Start
		for _, s := range c.Segments {
			nm += s.length(at)
			at = s.End
		}
		nm += c.Start.Sub(at).Norm()
	}
	return nm / float64(Millimetre)
}

// length returns the length of s from a, in nanometres.
func (s Segment) length(a Point) float64 {
	switch {
	case s.straight(a):
		return s.End.Sub(a).Norm()
	case s.Kind == Arc:
		_, _, r, _, turn := s.arc(a)
		return r * math.Abs(turn)
	}
	var nm float64
	ring := s.appendPoints(Ring{a}, a, Chord)
	for i := 1; i < len(ring); i++ {
		nm += ring[i].Sub(ring[i-1]).Norm()
	}
	return nm
}
