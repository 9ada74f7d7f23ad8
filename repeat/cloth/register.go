package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

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

// Bounds of a register. maxTurn is the standard deviation of one placement's
// turn in radians up to which a turn may be taken for its own sine: at 0.1 that
// is wrong by 0.2 %, and 0.1 mm on 340 mm is 0.0004.
const (
	maxStarError = 10 * geom.Millimetre
	maxTurn      = 0.1
)

// check returns an error where nothing can be said about the drift.
func (r Register) check(step geom.Length) error {
	switch r.Way {
	case StarToStar, EdgeLine, MarkedLine:
	default:
		return fmt.Errorf("register: %q is no way of registering; use %s, %s or %s", r.Way, StarToStar, EdgeLine, MarkedLine)
	}
	if r.StarError < 0 || r.StarError > maxStarError {
		return fmt.Errorf("register: a star error of %s mm is out of bounds; give between 0 and %s mm", r.StarError, maxStarError)
	}
	if r.Baseline <= 0 || r.Baseline > maxWidth {
		return fmt.Errorf("register: outer stars %s mm apart can't hold the sheet; set them further apart, up to %s mm", r.Baseline, maxWidth)
	}
	if r.Width < 0 || r.Width > maxWidth {
		return fmt.Errorf("register: a field %s mm wide is out of bounds; give between 0 and %s mm", r.Width, maxWidth)
	}
	if r.PitchError < -step/2 || r.PitchError > step/2 {
		return fmt.Errorf("register: a pitch error of %s mm is more than half of the step of %s mm; measure the step again", r.PitchError, step)
	}
	if turn := r.StarError.MM() / r.Baseline.MM(); turn > maxTurn {
		return fmt.Errorf("register: a star error of %s mm on a baseline of %s mm turns the sheet by %.2g rad; set the stars further apart",
			r.StarError, r.Baseline, turn)
	}
	return nil
}
