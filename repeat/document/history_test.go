package document_test

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/document"
)

// Random edits, undos and redos agree with a plain list and an index into it, in
// value and in name.
func TestHistoryAgreesWithAList(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	names := []string{"Move Motif", "Turn Motif", "Set Step", "Apply Fit"}
	h := document.Begin(0)
	values, edits, at := []int{0}, []string{""}, 0
	for turn := range 20_000 {
		before, moved := h, true
		switch random.IntN(5) {
		case 0, 1:
			name := names[random.IntN(len(names))]
			h = h.Do(name, turn)
			values, edits = append(values[:at+1], turn), append(edits[:at+1], name)
			at++
		case 2, 3:
			if h, moved = h.Undo(); moved {
				at--
			}
		case 4:
			if h, moved = h.Redo(); moved {
				at++
			}
		}
		if !moved && h != before {
			t.Fatalf("turn %d: nothing was done, yet the history changed", turn)
		}
		redo := ""
		if at+1 < len(edits) {
			redo = edits[at+1]
		}
		if h.Now() != values[at] || h.UndoName() != edits[at] || h.RedoName() != redo {
			t.Fatalf("turn %d: got %d, undo %q, redo %q; want %d, %q, %q",
				turn, h.Now(), h.UndoName(), h.RedoName(), values[at], edits[at], redo)
		}
	}
}

func TestHistoryIsAValue(t *testing.T) {
	var h document.History[string]
	if _, ok := h.Undo(); ok || h.Now() != "" {
		t.Errorf("the zero history holds %q and can undo: %v", h.Now(), ok)
	}
	first := h.Do("Draft", "a")
	left, right := first.Do("Left", "b"), first.Do("Right", "c")
	if left.Now() != "b" || right.Now() != "c" || first.Now() != "a" {
		t.Errorf("two futures of one past are %q and %q, the past is %q", left.Now(), right.Now(), first.Now())
	}
	if back, _ := right.Undo(); back.Now() != "a" {
		t.Errorf("undo of the right future gives %q, want a", back.Now())
	}
}
