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
	// FoldLine is the way of a cloth that is folded back under a framed sheet:
	// each section lies where its fold falls. Lay takes it for such a cloth,
	// whatever the register says; nobody chooses it.
	FoldLine Way = "fold-line"
)

// Ways lists the ways of registering that can be chosen.
func Ways() []Way { return []Way{StarToStar, EdgeLine, MarkedLine} }

// A Register is how the stencil is laid and how well.
type Register struct {
	Way Way
	// StarError is the standard deviation by which one star misses its mark, in
	// each direction; across it is StarErrorAcross, where that isn't zero.
	StarError, StarErrorAcross geom.Length
	// PitchError is what every step is too long by: wet growth that was not
	// foreseen, a step that was mismeasured.
	PitchError geom.Length
	Growth     Growth      // how the sheet dries through the job
	Baseline   geom.Length // between the outer stars
	Width      geom.Length // of the field, over which a turn shows
	// Sequence is the board's; Lay takes it from there.
	Sequence Sequence
	// Sheets is how many sheets or colours a placement is laid with; zero and
	// one are one. The second and later ones are laid on match stars of the
	// first, MatchBaseline apart; zero takes Baseline.
	Sheets        int
	MatchBaseline geom.Length
	// Tolerance is what a joint may open by, and Misfit by what one print may
	// miss another that it is to fall on. Odds are told for them.
	Tolerance, Misfit geom.Length
	// Longest is how far apart the outer stars could be on this sheet and cloth;
	// zero where nobody knows.
	Longest geom.Length
}

// Bounds of a register. maxTurn is the standard deviation of one placement's
// turn in radians up to which a turn may be taken for its own sine: at 0.1 that
// is wrong by 0.2 %, and 0.1 mm on 340 mm is 0.0004.
const (
	maxStarError = 10 * geom.Millimetre
	maxTurn      = 0.1
	maxSheets    = 1000
)

// check returns an error where nothing can be said about the drift.
func (r Register) check(step geom.Length) error {
	switch r.Way {
	case StarToStar, EdgeLine, MarkedLine, FoldLine:
	default:
		return fmt.Errorf("register: %q is no way of registering; use %s, %s or %s", r.Way, StarToStar, EdgeLine, MarkedLine)
	}
	for _, e := range []geom.Length{r.StarError, r.StarErrorAcross} {
		if e < 0 || e > maxStarError {
			return fmt.Errorf("register: a star error of %s mm is out of bounds; give between 0 and %s mm", e, maxStarError)
		}
	}
	for _, b := range []geom.Length{r.Baseline, r.matchBaseline()} {
		if b <= 0 || b > maxWidth {
			return fmt.Errorf("register: outer stars %s mm apart can't hold the sheet; set them further apart, up to %s mm", b, maxWidth)
		}
		if turn := max(r.StarError, r.StarErrorAcross).MM() / b.MM(); turn > maxTurn {
			return fmt.Errorf("register: a star error of %s mm on a baseline of %s mm turns the sheet by %.2g rad; set the stars further apart",
				max(r.StarError, r.StarErrorAcross), b, turn)
		}
	}
	if r.Width < 0 || r.Width > maxWidth {
		return fmt.Errorf("register: a field %s mm wide is out of bounds; give between 0 and %s mm", r.Width, maxWidth)
	}
	if r.PitchError < -step/2 || r.PitchError > step/2 {
		return fmt.Errorf("register: a pitch error of %s mm is more than half of the step of %s mm; measure the step again", r.PitchError, step)
	}
	if r.Sheets < 0 || r.Sheets > maxSheets {
		return fmt.Errorf("register: a set of %d sheets is out of bounds; give 1 to %d", r.Sheets, maxSheets)
	}
	if err := r.Growth.check(); err != nil {
		return err
	}
	return r.Sequence.check()
}

func (r Register) matchBaseline() geom.Length {
	if r.MatchBaseline == 0 {
		return r.Baseline
	}
	return r.MatchBaseline
}

// errors returns the standard deviations of one star across and along, in mm.
func (r Register) errors() (across, along float64) {
	if r.StarErrorAcross == 0 {
		return r.StarError.MM(), r.StarError.MM()
	}
	return r.StarErrorAcross.MM(), r.StarError.MM()
}
