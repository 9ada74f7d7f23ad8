package pattern

import (
	"math"
	"math/cmplx"

	"tsugime/repeat/geom"
)

// A Look is how joined units are looked at. Luminances are relative: what is cut
// stays undyed where paste is laid.
type Look struct {
	Distance     geom.Length
	Dyed, Undyed float64 // luminance of the uncut and of the cut part
	CandelaPerM2 float64 // what the eye is adapted to
	FieldDeg     float64 // the side of the field that is looked at
}

// StandBack is a step back from the work: a metre, black on white, a well lit room
// and a field of 10°. The distance is our recommendation; no source.
var StandBack = Look{Distance: geom.MM(1000), Undyed: 1, CandelaPerM2: 100, FieldDeg: 10}

// contrast returns Michelson's contrast of a wave and its opposite: the swing over
// the mean luminance, the same whichever part is the lighter.
func (l Look) contrast(share complex128, covered float64) float64 {
	mean := l.Dyed + (l.Undyed-l.Dyed)*covered
	if mean <= 0 {
		return 0
	}
	return 2 * cmplx.Abs(share) * math.Abs(l.Undyed-l.Dyed) / mean
}

// sensitivity returns one over the least contrast that the eye sees, for so many
// cycles a millimetre: P. G. J. Barten, Formula for the contrast sensitivity of
// the human eye, 2003 (from memory). It holds for even fields on a screen; the
// grain of cloth and the ground's own dots hide more.
func (l Look) sensitivity() func(cyclesPerMM float64) float64 {
	perDeg := l.Distance.MM() * math.Pi / 180
	blur := 0.0016 * math.Pow(1+100/l.CandelaPerM2, 0.08)
	field := 1 + 144/(l.FieldDeg*l.FieldDeg)
	photons := 63 / math.Pow(l.CandelaPerM2, 0.83)
	return func(cyclesPerMM float64) float64 {
		f2 := cyclesPerMM * perDeg * cyclesPerMM * perDeg
		noise := photons + 1/-math.Expm1(-0.02*f2)
		return 5200 * math.Exp(-blur*f2) / math.Sqrt((field+0.64*f2)*noise)
	}
}
