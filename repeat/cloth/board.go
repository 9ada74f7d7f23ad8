package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

// A Board is the long board that the cloth is wrapped on, both faces used. The
// cloth starts at one end of face A and is bent round the other end:
//
//	            ◄───────────── Length ─────────────►
//	y = 0  ┌────────────────────────────────────────┐
//	start ─┤ face A ───────────────────────►  ······│╮  y = Length, the fold:
//	       │                                        ││  Turn of the cloth, half
//	  end ─┤ face B ◄───────────────────────  ······│╯  of it on each face,
//	       └────────────────────────────────────────┘   can't be printed well
//	y = 2·Length
//
// A bolt longer than both faces goes on round the near end, over what lies
// there already: every further multiple of Length is a fold too, and
// Run.Overhang says how much cloth has no board under it.
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

// A Span is a stretch of the bolt from From to To.
type Span struct{ From, To geom.Length }

// reaches reports whether s and the stretch from y to y + length share more
// than an end. A span without length, the bare fold, counts where the stretch
// goes over it.
func (s Span) reaches(y, length geom.Length) bool { return y < s.To && y+length > s.From }

// check returns an error where the bolt can't be laid on b step by step.
func (b Board) check(bolt Bolt, step geom.Length) error {
	if b.Length <= 0 || b.Length > maxBolt {
		return fmt.Errorf("board: a length of %s mm can't be used; give more than 0 and at most %s mm", b.Length, maxBolt)
	}
	if b.Turn < 0 || b.Turn >= b.Length {
		return fmt.Errorf("board: a turn of %s mm leaves nothing of a board of %s mm; give at least 0 and less than the board", b.Turn, b.Length)
	}
	if b.Start < 0 || b.Start >= bolt.Length {
		return fmt.Errorf("board: the first placement starts at %s mm, outside the bolt of %s mm; start on the bolt", b.Start, bolt.Length)
	}
	if b.Length < step {
		return fmt.Errorf("board: %s mm are shorter than one step of %s mm; use a longer board or a smaller step", b.Length, step)
	}
	return nil
}

// folds returns the unprintable stretches of a bolt of the given length, clipped
// to the bolt: one for each fold whose stretch reaches onto it.
func (b Board) folds(length geom.Length) []Span {
	var folds []Span
	for at := b.Length; at-b.Turn/2 < length; at += b.Length {
		folds = append(folds, Span{at - b.Turn/2, min(at-b.Turn/2+b.Turn, length)})
	}
	return folds
}

// face returns where a placement from y to y + step falls.
func (b Board) face(y, step geom.Length, folds []Span) Face {
	// Only the fold before and the fold after y can be near.
	n := int(y / b.Length)
	for i := max(n-1, 0); i < min(n+2, len(folds)); i++ {
		if folds[i].reaches(y, step) {
			return Turn
		}
	}
	if n%2 == 0 {
		return FaceA
	}
	return FaceB
}
