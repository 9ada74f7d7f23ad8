package stencil

import "tsugime/repeat/geom"

// An End says at which end of the sheet a star stands.
type End string

// The ends of a sheet.
const (
	Leading  End = "leading"  // set on the print before
	Trailing End = "trailing" // prints the mark for the next placement
)

// A Star is a register hole. Every feed star comes twice: leading at p, trailing
// at p one step on.
type Star struct {
	End      End
	At       geom.Point
	Diameter geom.Length
	Hidden   bool        // the seam covers it, or a motif hides it
	Clear    geom.Length // to the nearest cut-out's rim, from the star's rim
}

// A StarSet is the feed stars of a sheet and what was measured on them.
type StarSet struct {
	Stars    []Star      // leading ones from left to right, then their trailing ones in the same order
	Baseline geom.Length // the longest distance between two leading stars
	// TurnedMisfit is by how much the set fails to fit in the best of the three
	// wrong ways to lay the sheet: turned, mirrored, upside down.
	TurnedMisfit geom.Length
	Square       SquareCheck
}

// A SquareCheck is the five measures by which a setter-out proves the four outer
// stars: top and bottom widths, left and right heights, and the two diagonals.
type SquareCheck struct {
	Top, Bottom, Left, Right, Down, Up geom.Length
}
