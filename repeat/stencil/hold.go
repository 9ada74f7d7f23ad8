package stencil

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A HoldWay says how the paper of a design is held together.
type HoldWay string

// The ways to hold.
const (
	AsDrawn  HoldWay = "as-drawn" // nothing is added: the drawing itself must hold
	WithTies HoldWay = "ties"     // one sheet with ties, which stay white on the cloth
	Split    HoldWay = "split"    // two sheets: the second opens where the first has its ties
)

// HoldWays lists the ways to hold, the plainest first.
func HoldWays() []HoldWay { return []HoldWay{AsDrawn, WithTies, Split} }

// A Hold is what a person decides about holding the paper. Places are those of
// the unit, so a tie repeats with it.
type Hold struct {
	Way       HoldWay
	TieWidth  geom.Length // of ties that Tsugime places
	PerIsland int         // ties that every island gets at least; two keep it from turning as on a hinge
	Ties      []Tie       // of the only or the first sheet
	Second    Second      // only read where Way is Split
}

// A Tie is a strip of paper that is left across cut-outs: Width wide around the
// middle line From–To, both ends of which lie in paper. It and all its copies by
// the lattice cut through whatever cut-outs they meet, those of other motifs too.
type Tie struct {
	// Motif is the motif whose cut-out the tie crosses, as it stands in the unit.
	// The tie is moved, turned and deleted with it.
	Motif    pattern.ID
	From, To geom.Point
	Width    geom.Length
}

// A SecondCut says how much of the design the second sheet opens.
type SecondCut string

// What a second sheet may open.
const (
	TiePlaces SecondCut = "tie-places" // only where the first has its ties, and a lap around
	Whole     SecondCut = "whole"      // all of the design less ties of its own, which cross those of the first
)

// SecondCuts lists what a second sheet may open.
func SecondCuts() []SecondCut { return []SecondCut{TiePlaces, Whole} }

// A Second is what a person decides about the second sheet of a split.
type Second struct {
	Cut    SecondCut
	Lap    geom.Length  // by which an opening of the second reaches over the first's
	Ties   []Tie        // of its own; none where Cut is TiePlaces and it holds without
	Motifs []pattern.ID // motifs that only the second sheet cuts, where both would leave too thin a web
}

// A JointSpec is what a person decides about the joint line.
type JointSpec struct {
	// Share is how much of the greatest possible clearance the line keeps, over
	// 0 to 1; less makes it shorter. Zero means four fifths.
	Share float64
	// Line is a line drawn by hand from the left edge of the field to the right;
	// none lets Tsugime choose.
	Line []geom.Point
}
