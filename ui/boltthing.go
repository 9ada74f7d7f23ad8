package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// things are the placements, the one that is laid in part, the turns and the waste, as
// they lie in the picture.
func (s *boltStation) things() []thing {
	if s.w.built == 0 {
		return nil
	}
	l := s.laid()
	var all []thing
	for i, c := range l.columns {
		for k, p := range c.pieces {
			all = append(all, s.pieceThings(l, p, geom.Point{X: geom.Length(i), Y: geom.Length(k)})...)
		}
	}
	return all
}

// pieceThings are those of one piece of cloth in the picture, told apart by where it is.
func (s *boltStation) pieceThings(l laid, p piece, where geom.Point) []thing {
	r, u := s.w.work.Run, s.w.unit()
	st := r.Stretches[p.stretch]
	var all []thing
	put := func(kind thingKind, n int, words string, from, to geom.Length) {
		from, to = max(from, p.from), min(to, p.to)
		if from < to {
			box := geom.BoxOf(p.move.Add(geom.Point{Y: from}), p.move.Add(geom.Point{X: l.width, Y: to}))
			all = append(all, thing{key: thingKey{kind: kind, n: n, at: where}, words: words, line: closed(corners(box)), area: true})
		}
	}
	for n := st.First; n < st.First+st.Count; n++ {
		at := r.Placements[n]
		words := say("placement %d", at.N+1) + ", " + say("from %s", geom.MUnit.Format(at.Y, 3)) + ", " + u.Format(r.Step, 3)
		if !r.Bolt.Folded {
			words = say("placement %d, face %s", at.N+1, say(string(r.Face(st, n)))) + ", " + say("from %s", geom.MUnit.Format(at.Y, 3)) + ", " + u.Format(r.Step, 3)
		}
		if r.Register.Sequence == cloth.EveryOther {
			words += ", " + say("laid as number %d", at.LaidAs+1)
		}
		put(aPlacement, at.N, words, at.Y, at.Y+r.Step)
	}
	if part := r.Partial; part.Printed > 0 {
		put(maskedPart, 0, say("placement %d, laid in part: %s printed, %s masked", part.N+1, u.Format(part.Printed, 1), u.Format(part.Masked, 1)), part.Y, part.Y+r.Step)
	}
	for i, t := range st.Turns {
		put(aTurn, i, say("turn of the board, %s that can't be printed", u.Format(t.To-t.From, 1)), t.From, t.To)
	}
	put(someWaste, 0, say("waste at the start, %s", u.Format(r.Board.Start, 1)), 0, r.Board.Start)
	put(someWaste, 1, say("waste at the end, %s", u.Format(r.Board.End, 1)), r.Bolt.Length-r.Board.End, r.Bolt.Length)
	return all
}

// lies is nothing more: all of the bolt can be gone through.
func (s *boltStation) lies(geom.Point, geom.Length) (thing, bool) { return thing{}, false }
