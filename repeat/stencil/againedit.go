package stencil

import (
	"cmp"
	"reflect"

	"tsugime/repeat/pattern"
)

// An edit is what two drawings of one lattice differ in: the motifs that only the
// one before has as they are, and those that only the one after has.
type edit struct{ gone, come []pattern.Motif }

func (e edit) none() bool { return len(e.gone)+len(e.come) == 0 }

// drawnOrder grows along the motifs of a unit as an order makes them: first the drawn
// ones as they were added, then their copies by a plane group, motif by motif.
func drawnOrder(id pattern.ID) int64 {
	const copies, ops = 1 << 60, 1 << 10
	motif, op := id.Drawn()
	if op == 0 {
		return int64(motif)
	}
	return copies + int64(motif)*ops + int64(op)
}

// editOf compares two lists of motifs by their IDs. It can't where one is not in
// drawnOrder.
func editOf(before, after []pattern.Motif) (edit, bool) {
	var e edit
	i, j := 0, 0
	for i < len(before) || j < len(after) {
		if !rising(before, i) || !rising(after, j) {
			return edit{}, false
		}
		way := 0
		switch {
		case i == len(before):
			way = 1
		case j == len(after):
			way = -1
		default:
			way = cmp.Compare(drawnOrder(before[i].ID), drawnOrder(after[j].ID))
		}
		switch {
		case way < 0:
			e.gone = append(e.gone, before[i])
			i++
		case way > 0:
			e.come = append(e.come, after[j])
			j++
		case before[i].ID != after[j].ID:
			return edit{}, false
		default:
			if !unchanged(&before[i], &after[j]) {
				e.gone, e.come = append(e.gone, before[i]), append(e.come, after[j])
			}
			i, j = i+1, j+1
		}
	}
	return e, true
}

// rising reports whether motif i, if there is one, comes after the one before it.
func rising(motifs []pattern.Motif, i int) bool {
	return i == 0 || i >= len(motifs) || drawnOrder(motifs[i-1].ID) < drawnOrder(motifs[i].ID)
}

func unchanged(m, o *pattern.Motif) bool {
	if m.At != o.At || m.TurnDeg != o.TurnDeg || m.Mirrored != o.Mirrored || m.Shape.Disc != o.Shape.Disc {
		return false
	}
	p, q := m.Shape.Outline, o.Shape.Outline
	if len(p) > 0 && len(p) == len(q) && &p[0] == &q[0] {
		return true
	}
	return (p == nil) == (q == nil) && (p == nil || reflect.DeepEqual(p, q))
}
