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
	// End is the waste at the bolt's far end, where no whole placement is laid.
	End geom.Length
	// Faces is how many faces are used, 1 or 2; zero is both.
	Faces int
	// Cloths is how many cloths of the bolt's size lie on the board end to end,
	// and Layings in how many goes all is laid; zero and one are one.
	Cloths, Layings int
	Sequence        Sequence
}

func (b Board) faces() int {
	if b.Faces == 1 {
		return 1
	}
	return 2
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
	if b.Faces < 0 || b.Faces > 2 {
		return fmt.Errorf("board: it has no %d faces; give 1 or 2", b.Faces)
	}
	for _, n := range []int{b.Cloths, b.Layings} {
		if n < 0 || n > maxCloths {
			return fmt.Errorf("board: %d cloths or layings are out of bounds; give 1 to %d", n, maxCloths)
		}
	}
	if b.End < 0 || b.End > bolt.Length {
		return fmt.Errorf("board: a waste of %s mm at the far end is out of bounds; give at least 0 and at most the bolt's %s mm", b.End, bolt.Length)
	}
	if b.Start < 0 || b.Start >= bolt.Length {
		return fmt.Errorf("board: the first placement starts at %s mm, outside the bolt of %s mm; start on the bolt", b.Start, bolt.Length)
	}
	if b.Length < step {
		return fmt.Errorf("board: %s mm are shorter than one step of %s mm; use a longer board or a smaller step", b.Length, step)
	}
	return b.Sequence.check()
}

// maxCloths bounds the cloths of a board and the times it is laid.
const maxCloths = 100

// folds returns the unprintable stretches of cloth of the given length from the
// board's near end on, clipped to the cloth: one for each fold whose stretch
// reaches onto it.
func (b Board) folds(length geom.Length) []Span {
	var folds []Span
	for at := b.Length; at-b.Turn/2 < length; at += b.Length {
		folds = append(folds, Span{at - b.Turn/2, min(at-b.Turn/2+b.Turn, length)})
	}
	return folds
}

// face returns where a placement from y to y + step, counted from the board's
// near end along both faces, falls.
func (b Board) face(y, step geom.Length) Face {
	// Only the fold before and the two after y can be near.
	n := y / b.Length
	for at := max(n, 1) * b.Length; at <= (n+2)*b.Length; at += b.Length {
		if (Span{at - b.Turn/2, at - b.Turn/2 + b.Turn}).reaches(y, step) {
			return Turn
		}
	}
	if n%2 == 0 {
		return FaceA
	}
	return FaceB
}
