package stencil

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Sheet is one stencil with everything that was measured on it, at finished
// size, x from the left selvedge, y from the start of its own placement.
type Sheet struct {
	Spec    Spec
	Unit    pattern.Unit     // what is cut of the plain pattern: the design less its ties
	Paper   geom.Box         // the edges of the paper
	CutOuts []pattern.CutOut // those between the joint line and its copy one step on
	// Printed is what one placement leaves on the cloth: of a split, what its
	// sheets open together, where pieces may overlap.
	Printed []pattern.CutOut
	Joint   Joint
	Webs    WebReport
	Paths   Connectivity
	Ties    TieReport // what its ties do; nothing for a sheet without
	Tongues []Tongue  // of the plain pattern, the readiest to lift first
	Ribbons []Ribbon  // of the plain pattern, the one that gives most first
	// Stiff is the plain pattern's, where StiffFound: where the narrowest web is wide
	// enough for a quick measure.
	Stiff      Stiffness
	StiffFound bool
	Stars      StarSet
	OpenPct    float64 // cut area of the plain pattern, overlaps counted once
	Flaws      []Flaw  // of the outlines of the design; told on the first sheet of a split
	// StepError is the way from the lattice vector nearest to the step to the
	// step; where it is not zero every joint shows a fault of that size.
	StepError geom.Point
	Second    *Sheet // of a split; nil for a sheet that does the work alone
	Cover     Cover  // how the two sheets of a split cover the design
	kept      *kept  // for CutAgain
}

// Set returns the sheets that one placement is laid with, the first one first.
func (s Sheet) Set() []Sheet {
	if s.Second == nil {
		return []Sheet{s}
	}
	return []Sheet{s, *s.Second}
}

// A Web is the paper left between two neighbouring cut-outs: a shortest segment
// from P to Q across paper whose diametral disc is empty.
type Web struct {
	P, Q  geom.Point
	Width geom.Length // zero where the cut-outs touch in a point
	A, B  pattern.ID
}

// A WebReport tells the webs of the plain pattern, each once for a unit.
type WebReport struct {
	Limit     geom.Length
	Narrowest Web   // zero where there is no web at all
	Found     bool  // Narrowest holds one
	Below     []Web // those narrower than Limit, the narrowest first
	// AcrossJoint is the narrowest web between the last cut-outs of one placement
	// and the first of the next. With a step that is a lattice vector it is one
	// of the pattern's own webs.
	AcrossJoint Web

	widths []geom.Length // of every web found, ascending; where grid is nil
	grid   *webGrid      // whose webs below reach are those found
	reach  float64
}

// Connectivity tells how the paper of the plain pattern hangs together.
type Connectivity struct {
	Islands []Part
	Bands   []Part
}

// A Part is a connected piece of paper that is held too little.
type Part struct {
	At      geom.Point // a place in it or on its rim
	Along   geom.Point // the lattice vector by which a band goes on; zero for an island
	AreaMM2 float64    // of an island; a band's is for one period
}
