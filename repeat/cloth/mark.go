package cloth

import "tsugime/repeat/geom"

// A Mark is where a placement's leading stars belong on a board that is marked
// beforehand.
type Mark struct {
	Cloth, Stretch, N int
	Face              Face // A or B
	// At is how far from the board's near end, on this face, the mark lies. On
	// face A placements go away from there, on face B back towards it.
	At   geom.Length
	Y    geom.Length // on its own cloth
	Turn bool        // the placement reaches into the turn
	Part bool        // it is the last one, laid in part
	End  bool        // no placement begins here: the last one of its stretch ends
}

// Marks returns the marks of every placement, stretch after stretch, each with the
// one at its end. A place beyond both faces goes on over face A again. A folded
// cloth has no board and no marks.
func Marks(r Run) []Mark {
	if r.Bolt.Folded {
		return nil
	}
	var marks []Mark
	for i, l := range r.Stretches {
		last := l.First+l.Count == len(r.Placements)
		for n := l.First; n < l.First+l.Count; n++ {
			marks = append(marks, r.mark(l, i, n, r.placed(n)))
		}
		end := r.placed(l.First + l.Count)
		if last && r.Partial.Printed > 0 {
			part := r.mark(l, i, r.Partial.N, r.Partial.Y)
			part.Part, part.Turn = true, r.Board.face(l.On+r.Partial.Y, r.Partial.Printed) == Turn
			marks = append(marks, part)
			end += r.Partial.Printed
		}
		closing := r.mark(l, i, l.First+l.Count, end)
		closing.End, closing.Turn = true, false
		marks = append(marks, closing)
	}
	return marks
}

// mark returns the mark of a place y on the cloth of stretch i.
func (r Run) mark(l Stretch, i, n int, y geom.Length) Mark {
	m := Mark{Cloth: l.Cloth, Stretch: i, N: n, Y: y}
	m.Face, m.At = r.OnBoard(l, y)
	m.Turn = r.Board.face(l.On+y, r.Step) == Turn
	return m
}

// OnBoard returns on which face a place y of a stretch's cloth lies, and how far
// from the board's near end.
func (r Run) OnBoard(l Stretch, y geom.Length) (Face, geom.Length) {
	on, both := l.On+y, 2*r.Board.Length
	at := on % both
	if at > r.Board.Length || at == 0 && on > 0 {
		return FaceB, (both - at) % both
	}
	return FaceA, at
}
