package cloth

import "tsugime/repeat/geom"

// A Way is how each placement is laid true to the one before.
type Way string

// The ways of registering.
const (
	StarToStar Way = "star-to-star" // each leading star on the last trailing star
	EdgeLine   Way = "edge-line"    // stars along, a line at the selvedge across
	MarkedLine Way = "marked-line"  // every placement on its own mark of a ruled line
)

// Ways lists the ways of registering.
func Ways() []Way { return []Way{StarToStar, EdgeLine, MarkedLine} }

// A Register is how the stencil is laid and how well.
type Register struct {
	Way Way
	// StarError is the standard deviation by which one star misses its mark, in
	// each direction.
	StarError geom.Length
	// PitchError is what every step is too long by: wet growth that was not
	// foreseen, a step that was mismeasured.
	PitchError geom.Length
	Baseline   geom.Length // between the outer stars
	Width      geom.Length // of the field, over which a turn shows
}

// A Drift is how far the last placement may have walked, as standard deviations
// with the pitch error's share added, and the worst gap or lap at a joint.
type Drift struct {
	Way        Way
	EndX, EndY geom.Length
	// WorstJoint is the gap or lap that the widest of all joints is expected to
	// show at the field's far edge.
	WorstJoint geom.Length
}
