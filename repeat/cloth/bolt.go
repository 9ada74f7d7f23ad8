package cloth

import "tsugime/repeat/geom"

// A Bolt is the piece of cloth. Changes are by ISO 5077: (after − before)/before,
// so a shrinkage of three percent is −0.03.
type Bolt struct {
	Width, Length             geom.Length
	ChangeAcross, ChangeAlong float64
}

// A Board is the long board that the cloth is wrapped on, both faces used.
type Board struct {
	Length geom.Length
	// Turn is how much cloth at the board's end can't be printed well.
	Turn geom.Length
	// Start is where on the bolt the first placement begins.
	Start geom.Length
}

// A Face is where a placement falls on the board.
type Face string

// The faces of the board.
const (
	FaceA Face = "A"
	FaceB Face = "B"
	Turn  Face = "turn" // the placement reaches into the turn
)

// A Placement is one laying of the stencil: it covers Y to Y + step.
type Placement struct {
	N    int
	Y    geom.Length
	Face Face
	// WalkX and WalkY are the standard deviations of where it lands, after its
	// own star errors and those before it, with the pitch error's share added to
	// WalkY (positive along).
	WalkX, WalkY geom.Length
}

// A Run is the work along one bolt.
type Run struct {
	Bolt       Bolt
	Board      Board
	Step       geom.Length // as it lies on the board, before the cloth changes
	Placements []Placement
	Remainder  geom.Length // cloth left after the last whole placement
	Turns      []Span      // the unprintable stretches
	Drift      Drift
}

// A Span is a stretch of the bolt from From to To.
type Span struct{ From, To geom.Length }
