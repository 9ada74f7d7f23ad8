package geom

// Arithmetic tolerances, all of them. What the craft allows (the narrowest web,
// the register slack) is part of an order and not found here; what the eye or
// the pointer allows on a screen is part of the drawing surface.
const (
	// Grid is the step between two neighbouring coordinates. Curves are put on
	// it when they are cut into straight pieces, so each point is off by at
	// most Grid/√2.
	Grid = Nanometre

	// Chord is the largest distance between a curve and the straight pieces
	// that stand for it where an algorithm needs straight pieces. A disc of
	// 0.5 mm diameter becomes 50 pieces; its area shrinks by at most 0.3 %, and
	// nothing that is reported to the user is measured on the pieces where a
	// closed form exists.
	Chord = Micrometre

	// Touch is the gap below which two cut-outs count as touching: two curves
	// that are each off by Chord, and their points by Grid.
	Touch = 2*Chord + 2*Grid

	// Parallel is the largest distance between the true parallel of a cubic and the
	// cubics that stand for it when an outline is grown: what a flattened curve
	// may be off too. Parallels of lines and arcs are exact.
	Parallel = Chord

	// Snap is the gap below which two segments may come into contact while a
	// union is put on the grid: each round of it moves a line by less than a
	// nanometre, and five rounds were the most ever needed.
	Snap = 16 * Grid

	// Alike is how far two places, or two points of two rims, may lie apart and
	// still count as the same when a symmetry is applied or looked for. A turn
	// by 60° and the lattice that comes nearest to it are off by nanometres; no
	// hand and no machine cuts to a micrometre.
	Alike = Micrometre

	// Chain is how far the ends of two lines of a file may be apart and still be
	// one place: places are written there with four decimals of an inch or two of a
	// millimetre, which are off by up to 5 µm.
	Chain = 10 * Micrometre

	// MaxSpan bounds every coordinate difference that enters an orientation
	// test: products of two such differences and their sum stay below 2⁶³
	// (2·(2³¹)² = 2⁶³), so Cross is exact in plain int64.
	MaxSpan = Length(1<<31 - 1)
)
