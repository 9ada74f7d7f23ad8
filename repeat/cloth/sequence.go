package cloth

import (
	"fmt"
	"slices"
)

// A Sequence is in which order the placements of a cloth are laid.
type Sequence string

// The sequences. The empty one is OneAfterAnother.
const (
	OneAfterAnother Sequence = "one-after-another"
	// EveryOther lays placements 0, 2, 4 … first and those between them when
	// the first are dry, so that the sheet never lies on wet paste.
	EveryOther Sequence = "every-other"
)

// Sequences lists the sequences.
func Sequences() []Sequence { return []Sequence{OneAfterAnother, EveryOther} }

func (s Sequence) check() error {
	if s != "" && !slices.Contains(Sequences(), s) {
		return fmt.Errorf("board: there is no order %q; use %s or %s", string(s), OneAfterAnother, EveryOther)
	}
	return nil
}

// between reports whether placement k of n (from 0) is laid between two that
// are finished.
func (s Sequence) between(k, n int) bool { return s == EveryOther && k%2 == 1 && k+1 < n }

// laidAs returns as which one, from 0, placement k of n is laid.
func (s Sequence) laidAs(k, n int) int {
	switch {
	case s != EveryOther:
		return k
	case k%2 == 0:
		return k / 2
	}
	return (n+1)/2 + k/2
}

// A course is how the sheets of one cloth lie one after the other: by how much
// each is too long, in millimetres, by the pitch error and the paper's growth at
// the time when it is laid.
type course struct {
	seq  Sequence
	over []float64
}

// course returns the course of n placements.
func (r Register) course(step float64, n int) course {
	c := course{r.Sequence, make([]float64, n)}
	for k := range c.over {
		c.over[k] = r.PitchError.MM() + step*r.Growth.At(r.Sequence.laidAs(k, n), n)
	}
	return c
}

// carried returns by how much the sheet is too long that takes the stars from
// placement k on to the next. Where placement k is left out at first, the sheet
// is laid there without paste, for its stars alone, as wet as it was just before
// (common practice, no source).
func (c course) carried(k int) float64 {
	if c.seq.between(k, len(c.over)) {
		return c.over[k-1]
	}
	return c.over[k]
}

// systematic returns what the sheets' lengths do without any star error: by how
// much the far end of each placement lies off its place along, in millimetres,
// and the lap at each joint, positive where the sheets overlap; joint k follows
// placement k.
func (c course) systematic(way Way) (ends, laps []float64) {
	n := len(c.over)
	ends, laps = make([]float64, n), make([]float64, max(n-1, 0))
	switch way {
	case MarkedLine:
		copy(laps, c.over)
	case FoldLine:
		for k := 0; k < n-1; k += 2 { // the folds at the sheet's far end
			laps[k] = 2 * c.over[k]
		}
		return ends, laps
	default:
		sum := 0.0
		for k := range ends {
			sum += c.carried(k)
			ends[k] = sum
		}
	}
	for k := range c.over {
		if !c.seq.between(k, n) {
			continue
		}
		// Laid in the middle of its room, a sheet laps as much on both sides.
		if way == MarkedLine {
			laps[k-1] = (c.over[k-1] + c.over[k]) / 2
			laps[k], ends[k] = laps[k-1], (c.over[k-1]-c.over[k])/2
			continue
		}
		laps[k-1] = (c.over[k] - c.carried(k)) / 2
		laps[k] = laps[k-1]
		ends[k] += laps[k]
	}
	return ends, laps
}
