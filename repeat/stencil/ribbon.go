package stencil

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// What paper between long slits is taken for: our recommendation, no source.
const (
	// RibbonRatio is the least span over width of a ribbon.
	RibbonRatio = 4.0
	// RibbonWiden is by how much a ribbon may be wider than where it is narrowest.
	RibbonWiden = 1.5
	// RibbonWidth is the widest ribbon between slits that end.
	RibbonWidth = 5 * geom.Millimetre
	// SideLoadN is what the spatula drags sideways on the middle of a ribbon, in
	// newtons.
	SideLoadN = 0.1
	// PaperModulusMPa is Young's modulus of tannin paper at work, which is wet, in
	// N/mm².
	PaperModulusMPa = 2000.0
	// GauzePerDM2 is from how many ribbons on 100 cm² gauze is less work than
	// threads or ties.
	GauzePerDM2 = 40.0
)

// A RibbonSpec is what Ribbons needs of the sheet.
type RibbonSpec struct {
	Thickness geom.Length // of the paper; positive
	// Width and Height are the cut field's, across and along: what a band that no
	// tie holds spans.
	Width, Height geom.Length
}

// A Ribbon is a strip of paper between two long slits, held at its two ends.
type Ribbon struct {
	At    geom.Point  // halfway along it, between its rims
	Along geom.Point  // the lattice vector by which a band goes on; zero for a ribbon between slits that end
	Span  geom.Length // from end to end
	Width geom.Length // where it is narrowest
	// Deflection is how far SideLoadN moves its middle sideways, in the plane of
	// the paper. Paper that is pulled taut moves less.
	Deflection geom.Length
	thickness  geom.Length
}

// deflectionMM is that of a beam fixed at both ends under a load at its middle,
// F·l³/(192·E·I) with I = t·w³/12 (Roark's Formulas for Stress and Strain, from
// memory).
func deflectionMM(span, width, thickness float64) float64 {
	return SideLoadN * span * span * span / (16 * PaperModulusMPa * thickness * width * width * width)
}

// HeldEvery returns how far apart threads or ties must lie so that the ribbon
// moves by no more than limit between two of them.
func (r Ribbon) HeldEvery(limit geom.Length) geom.Length {
	w := r.Width.MM()
	return geom.MM(math.Cbrt(16 * PaperModulusMPa * r.thickness.MM() * w * w * w * limit.MM() / SideLoadN))
}

// A RibbonHold is a way to hold ribbons.
type RibbonHold string

// The ways to hold ribbons.
const (
	ByTies   RibbonHold = "ties"   // one at the middle of a ribbon is enough
	ByThread RibbonHold = "thread" // laid in between two leaves, across the ribbons
	ByGauze  RibbonHold = "gauze"  // stuck on over the whole field
)

// HoldRibbons proposes how to hold the ribbons of a cell that move by more than
// limit, "" where none does: gauze where they are many, ties where one at the
// middle of each is enough, else threads.
func HoldRibbons(ribbons []Ribbon, l pattern.Lattice, limit geom.Length) RibbonHold {
	loose, long := 0, false
	for _, r := range ribbons {
		if r.Deflection > limit {
			loose++
			long = long || r.Span > 2*r.HeldEvery(limit)
		}
	}
	const dm2 = 1e4
	cell := math.Abs(float64(l.A.Cross(l.B))) / float64(geom.Millimetre*geom.Millimetre)
	switch {
	case loose == 0:
		return ""
	case long && float64(loose)/cell*dm2 >= GauzePerDM2:
		return ByGauze
	case long:
		return ByThread
	}
	return ByTies
}

// Ribbons returns the ribbons of the paper between cut-outs that repeat by l, the
// one that moves most first.
//
// Between slits that end, a ribbon lies where the paper across from one opening
// to another, square to its rim, is at most RibbonWidth wide, as far as it is no
// wider than RibbonWiden times its narrowest place, and its span is at least
// RibbonRatio times that. Paper within one opening is no ribbon but a tongue.
// A band, which openings that run around the torus leave, spans the whole field
// the way that it goes. What ties hold is measured between them where the
// cut-outs are those of a tied design.
func Ribbons(cuts []pattern.CutOut, l pattern.Lattice, spec RibbonSpec) ([]Ribbon, error) {
	if spec.Thickness <= 0 {
		return nil, fmt.Errorf("ribbons: paper %s mm thick; give its thickness", spec.Thickness)
	}
	o, err := openingsOf(cuts, []geom.Point{l.A, l.B})
	if err != nil {
		return nil, fmt.Errorf("ribbons: %w", err)
	}
	if len(o.region.Boundaries) == 0 {
		return nil, nil
	}
	b, err := banksOf(o, l)
	if err != nil {
		return nil, fmt.Errorf("ribbons: %w", err)
	}
	found := append(b.bands(spec), b.strips()...)
	for i := range found {
		r := &found[i]
		r.thickness = spec.Thickness
		r.Deflection = geom.MM(deflectionMM(r.Span.MM(), r.Width.MM(), spec.Thickness.MM()))
	}
	slices.SortFunc(found, func(r, s Ribbon) int {
		return cmp.Or(cmp.Compare(s.Deflection, r.Deflection), cmp.Compare(s.Span, r.Span),
			cmp.Compare(r.At.Y, s.At.Y), cmp.Compare(r.At.X, s.At.X))
	})
	return found, nil
}
