package cloth

import "tsugime/repeat/geom"

// A Body is the sizes that a garment is cut to.
type Body struct {
	Kind   GarmentKind
	Height geom.Length // of the wearer, heel to crown
}

// A GarmentKind names a way to cut a bolt.
type GarmentKind string

// The kinds of garments.
const (
	WomensKimono GarmentKind = "womens-kimono"
)

// A Panel is a piece of the garment as it lies on the bolt: a window of the
// cloth, on the finished cloth's millimetres.
//
//	left sleeve, right sleeve   sode   folded at the shoulder
//	left body, right body       migoro front hem, over the shoulder, back hem
//	left overlap, right overlap okumi  half the bolt wide, end to end
//	collar, over-collar         eri, kake-eri: the other half, end to end
type Panel struct {
	Name          string
	X, Y          geom.Length // its first corner on the bolt
	Width, Length geom.Length
	Turned        bool // worn with the far end up
}

// A Seam joins an edge of one panel to an edge of another.
type Seam struct {
	Name    string
	Between [2]string // the panels' names
	// PhaseAlong and PhaseAcross are how far the pattern on the second panel is
	// from where the first one's would go on, modulo the lattice.
	PhaseAlong, PhaseAcross geom.Length
	Matched                 bool // both within the tolerance
	Priority                bool // one of the seams that are matched first
}

// A Dressed is the garment laid on the bolt.
type Dressed struct {
	Body   Body
	Panels []Panel
	Seams  []Seam
	// Start is where the first panel lies on the finished cloth, and Length how
	// much cloth there is from there to the end; Used may be longer.
	Start, Length geom.Length
	Used          geom.Length // of the bolt, first panel to last
	Extra         geom.Length // cloth between panels that the matching costs
	Hidden        geom.Length // strip beside each selvedge that every seam covers
	cut           cut
}
