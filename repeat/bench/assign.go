package bench

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// By what the methods are told apart. None has a source; all are our
// recommendation from what the trade says each method is for.
const (
	// widestAwl is the largest round hole that is cut with an awl where the rack has
	// no awl of that size: what half a turn of a hand still cuts.
	widestAwl = 4 * geom.Millimetre
	// A strip is a stripe from this length and this many times its width on.
	stripeLength = 10 * geom.Millimetre
	stripeTimes  = 10
	// Lines are easy to pull where they bend by no less than easyBend, go on for
	// easyRun between corners, and the shape is at least easySize long.
	easyBend = 10 * geom.Millimetre
	easyRun  = 10 * geom.Millimetre
	easySize = 20 * geom.Millimetre
	// Of a shape up to worthSize that stands worthCount times on a sheet a punch
	// would be worth making.
	worthSize  = 12 * geom.Millimetre
	worthCount = 50
)

// Tolerances of tools, our recommendation; each choice shows how far it is off.
const (
	// PunchOff is the greatest distance between the rims of a punch and a motif, and
	// PunchOffPct what it may be of the motif's size.
	PunchOff    = 50 * geom.Micrometre
	PunchOffPct = 3.0
	// SnapPct is by how much an awl or a pair may differ from what is drawn; beyond
	// it the tool counts as missing. Up to farPct the nearest is still named.
	SnapPct = 5.0
	farPct  = 25.0
)

// A Reason says why a cut-out gets its method.
type Reason string

// The reasons.
const (
	RoundHole Reason = "round"  // a round hole that an awl cuts
	LikePunch Reason = "punch"  // the rack has a punch of its shape
	LongStrip Reason = "stripe" // a long strip with two parallel sides
	EasyLine  Reason = "easy"   // long lines that bend little
	FreeLine  Reason = "free"   // small, closely bent or full of corners
	Named     Reason = "named"  // the cutter named the method
)

// A Choice is how one cut-out is cut.
type Choice struct {
	Method Method
	Tool   int // in the rack; −1 where it has none
	Reason Reason
	// Size is the diameter of a round hole, the width of a stripe, else the larger
	// side of the shape.
	Size   geom.Length
	Strain Strain
	Lies   Likeness    // of a punch on the cut-out
	RimMM  float64     // the length of its rim
	Least  geom.Length // the smallest way across: what a limit is held against
}

// A Strain is by how much a tool differs from what is drawn: an awl's diameter or a
// pair's width less the drawn one, and in percent of it; of a punch how far the rims
// are apart at most, in percent of the size.
type Strain struct {
	By  geom.Length
	Pct float64
}

// An Assignment is how all cut-outs of one sheet are cut.
type Assignment struct {
	Rack    Rack
	Choices []Choice // of each cut-out of the sheet, in its order
	Star    Choice   // of the register holes
	Missing []Missing
}

// A Missing is a tool that the rack lacks and what would be made: an awl or a pair
// of a size, a punch of a shape, a knife.
type Missing struct {
	Kind    Kind
	Size    geom.Length
	Outline geom.Outline // of a punch
	Count   int          // cut-outs on the sheet that it would cut
	Motif   pattern.ID   // the first of them is of this motif; 0 for register holes
	// Nearest is the tool that stands in for it, −1 where none does, and Strain what
	// that means.
	Nearest int
	Strain  Strain
}

// Overrides names the method of some motifs, as the cutter wants it. What a plane
// group makes of a motif goes with it.
type Overrides map[pattern.ID]Method

// Assign gives each cut-out of a sheet its method and its tool, at the size that the
// sheet has; of a split each sheet is assigned by itself. With a rack without tools
// nothing is missing.
func Assign(s stencil.Sheet, r Rack, own Overrides) Assignment {
	d := &desk{
		rack: r, own: own, made: map[string]int{},
		awls: r.usable(Awl), pairs: r.usable(Pair), knives: r.usable(Knife), punches: r.usable(Punch),
		forms: map[int]form{},
	}
	a := Assignment{Rack: r, Choices: make([]Choice, len(s.CutOuts))}
	kinds := make([]int, len(s.CutOuts))
	for i, c := range s.CutOuts {
		kinds[i] = d.kindOf(c)
		a.Choices[i] = d.kinds[kinds[i]].choice
		d.kinds[kinds[i]].count++
	}
	if stars := len(s.Stars.Stars) + len(s.Stars.Match); stars > 0 {
		a.Star = d.round(s.Spec.Stars.Diameter)
		d.kinds = append(d.kinds, kind{choice: a.Star, count: stars})
	}
	a.Missing = d.missing()
	return a
}
