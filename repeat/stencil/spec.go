package stencil

import "tsugime/repeat/geom"

// A Spec is what a person decides about the sheet.
type Spec struct {
	Step  geom.Length // how far the stencil moves for the next placement
	Field Field
	Paper Paper
	Stars StarSpec
	// WebLimit is the web below which the paper is not trusted.
	WebLimit geom.Length
	Hold     Hold
	Joint    JointSpec
}

// A Field is the strip of the cloth that the stencil covers: whole motifs only.
type Field struct {
	Left  geom.Length // from the left selvedge
	Width geom.Length
}

// Right returns where the field ends, from the left selvedge.
func (f Field) Right() geom.Length { return f.Left + f.Width }

// Paper is the sheet that is cut, and how it grows when it is soaked.
type Paper struct {
	Width, Height geom.Length
	Thickness     geom.Length
	// GrowthAcross and GrowthAlong are how much longer the wet sheet is, as
	// fractions: 0.002 is two parts in a thousand.
	GrowthAcross, GrowthAlong float64
	Pile                      int // sheets cut together
}

// A StarSpec is what is wanted of the register stars.
type StarSpec struct {
	PerEnd   int // 2 to 4
	Diameter geom.Length
	// Hidden is how far from each selvedge a star is covered by the seam.
	Hidden geom.Length
	// At are leading stars set by hand; none lets Tsugime choose.
	At []geom.Point
}
