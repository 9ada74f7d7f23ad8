package ui

import (
	"fmt"
	"image/color"
	"strconv"

	"tsugime/export/raster"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

func (s *boltStation) scene() board.Scene {
	if s.w.built == 0 {
		return waiting(s.w)
	}
	l := s.laid()
	sc := board.Scene{Desk: worn().table, Plain: true}
	for _, c := range l.columns {
		sc.Extent = sc.Extent.Union(c.box)
		if c.wood {
			sc.Areas = append(sc.Areas, board.Area{Box: s.plank(c), Shut: worn().wood, Open: worn().wood})
		}
	}
	face, behind := board.Laid{Ground: s.w.grounds.board}, board.Laid{Ground: s.w.grounds.back}
	for _, c := range l.columns {
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: c.box.Centre().X, Y: c.box.Min.Y}, Align: board.Above, Colour: worn().ink, Bold: true, Size: 12, Text: c.title,
		})
		for _, p := range c.pieces {
			sc.Areas = append(sc.Areas, board.Area{Box: p.box(l.width), Shut: dyed(s.w.Order().Cloth.Dye), Open: worn().undyed})
			if lay, ok := s.printed(p, l.width); ok && p.back {
				behind.Lays = append(behind.Lays, lay)
			} else if ok {
				face.Lays = append(face.Lays, lay)
			}
			s.markPiece(&sc, p, l)
		}
	}
	for _, g := range []board.Laid{face, behind} {
		if g.Ground != nil && len(g.Lays) > 0 {
			sc.Grounds = append(sc.Grounds, g)
		}
	}
	s.markWalks(&sc, l)
	s.markFound(&sc, l)
	sc.Extent = geom.BoxOf(
		sc.Extent.Min.Sub(geom.Point{X: l.width / 2, Y: l.width / 3}),
		sc.Extent.Max.Add(geom.Point{X: l.width / 2, Y: l.width / 5}))
	return sc
}

// plank is the board under a column, a little wider than the cloth.
func (s *boltStation) plank(c column) geom.Box {
	rim := s.w.work.Run.Bolt.Width / 16
	return geom.BoxOf(c.box.Min.Sub(geom.Point{X: rim}), c.box.Max.Add(geom.Point{X: rim}))
}

// printed is how the ground lies on a piece: from its first placement to the end
// of its last one, laid in part or whole.
func (s *boltStation) printed(p piece, width geom.Length) (raster.Lay, bool) {
	r := s.w.work.Run
	st := r.Stretches[p.stretch]
	from := r.Board.Start + geom.Length(st.First)*r.Step
	to := from + geom.Length(st.Count)*r.Step
	if st.First+st.Count == len(r.Placements) {
		to += r.Partial.Printed
	}
	from, to = max(from, p.from), min(to, p.to)
	clip := geom.BoxOf(p.move.Add(geom.Point{Y: from}), p.move.Add(geom.Point{X: width, Y: to}))
	return raster.Lay{Move: p.move.Add(geom.Point{Y: r.Board.Start}), Clip: clip}, from < to
}

// markPiece shows what lies on a piece: selvedges, placements, the last one's
// masked part, waste at both ends, the turn.
func (s *boltStation) markPiece(sc *board.Scene, p piece, l laid) {
	r, box := s.w.work.Run, p.box(l.width)
	st := r.Stretches[p.stretch]
	if edge := r.Bolt.Selvedge; edge > 0 {
		for _, x := range []geom.Length{box.Min.X + edge, box.Max.X - edge} {
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{{X: x, Y: box.Min.Y}, {X: x, Y: box.Max.Y}}, Colour: worn().quiet})
		}
	}
	for n := st.First; n < st.First+st.Count; n++ {
		at := r.Placements[n]
		if at.Y >= p.from && at.Y < p.to {
			s.markPlacement(sc, p, l, at, r.Face(st, n))
		}
	}
	s.markEnds(sc, p, box, l)
	for _, t := range st.Turns {
		lost := geom.BoxOf(geom.Point{X: box.Min.X, Y: t.From + p.move.Y}, geom.Point{X: box.Max.X, Y: t.To + p.move.Y}).Intersect(box)
		if !lost.Empty() && lost.Height() > 0 {
			hatched(sc, lost, worn().onCloth)
		}
	}
}

// hatched shows a stretch of cloth that can't be printed.
func hatched(sc *board.Scene, b geom.Box, c color.RGBA) {
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Hatch, Points: []geom.Point{b.Min, b.Max}, Colour: c},
		board.Mark{Shape: board.Loop, Points: corners(b), Colour: c, Width: 1.5})
}

// markPlacement shows where a placement begins, its number, its face, and as which
// one it is laid where that is another.
func (s *boltStation) markPlacement(sc *board.Scene, p piece, l laid, at cloth.Placement, face cloth.Face) {
	r, box := s.w.work.Run, p.box(l.width)
	y := at.Y + p.move.Y
	middle := y + min(r.Step, p.to-at.Y)/2 // of what lies on this piece
	tick := []geom.Point{{X: box.Min.X - r.Bolt.Width/12, Y: y}, {X: box.Min.X, Y: y}}
	joint := []geom.Point{{X: box.Min.X, Y: y}, {X: box.Max.X, Y: y}}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Line, Points: tick, Colour: worn().faint},
		board.Mark{Shape: board.Dashes, Points: joint, Colour: worn().quiet})
	text := strconv.Itoa(at.N+1) + " " + string(face)
	switch {
	case r.Bolt.Folded && at.Mirrored:
		text = strconv.Itoa(at.N+1) + " " + say("mirrored")
	case r.Bolt.Folded:
		text = strconv.Itoa(at.N + 1)
	case face == cloth.Turn:
		text = strconv.Itoa(at.N+1) + " " + say("turn")
	}
	sc.Labels = append(sc.Labels, board.Label{
		At: geom.Point{X: box.Min.X - r.Bolt.Width/20, Y: middle}, Align: board.Before,
		Text: text, Colour: worn().faint, Size: 11, Room: l.gap * 7 / 10,
	})
	if r.Register.Sequence == cloth.EveryOther {
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: box.Centre().X, Y: middle}, Align: board.Middle, Bold: !at.Between,
			Text: strconv.Itoa(at.LaidAs + 1), Colour: worn().ink, Shield: worn().shield, Size: 11, Room: r.Step,
		})
	}
}

// markEnds shows the placement that is laid in part, and the waste of both ends.
func (s *boltStation) markEnds(sc *board.Scene, p piece, box geom.Box, l laid) {
	r := s.w.work.Run
	words := func(from, to geom.Length, text string) {
		if from >= p.from && from < p.to && to > from {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: box.Centre().X, Y: p.move.Y + from + (to-from)/2}, Align: board.Middle,
				Text: text, Colour: worn().ink, Shield: worn().shield, Size: 10, Room: l.width,
			})
		}
	}
	words(0, r.Board.Start, say("waste"))
	if r.Partial.Printed == 0 { // else the masked part lies there
		words(r.Bolt.Length-r.Board.End, r.Bolt.Length, say("waste"))
	}
	if r.Board.Cloths > 1 {
		start := r.Board.Start
		words(start, start+r.Step, say("cloth")+" "+strconv.Itoa(r.Stretches[p.stretch].Cloth+1))
	}
	part := r.Partial
	if part.Printed == 0 || part.Y < p.from || part.Y >= p.to {
		return
	}
	y := p.move.Y + part.Y
	masked := geom.BoxOf(geom.Point{X: box.Min.X, Y: y + part.Printed}, geom.Point{X: box.Max.X, Y: y + r.Step})
	hatched(sc, masked, worn().faint)
	sc.Extent = sc.Extent.Union(masked)
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: []geom.Point{{X: box.Min.X, Y: y}, {X: box.Max.X, Y: y}}, Colour: worn().quiet})
	sc.Labels = append(sc.Labels, board.Label{
		At: geom.Point{X: box.Min.X - r.Bolt.Width/20, Y: y + r.Step/2}, Align: board.Before,
		Text: fmt.Sprintf("%d %s", part.N+1, say("in part")), Colour: worn().faint, Size: 11, Room: l.gap * 7 / 10,
	})
}

// markFound rings the place of the finding that was asked for.
func (s *boltStation) markFound(sc *board.Scene, l laid) {
	if s.found == nil || s.foundOf != s.w.built {
		return
	}
	sc.Marks = append(sc.Marks, board.Mark{
		Shape: board.Ring, Points: []geom.Point{s.placeOf(l)}, Radius: s.w.work.Run.Step / 3, Colour: worn().onCloth, Width: 3,
	})
}

// placeOf is where the finding that was asked for lies: in the middle of the cloth,
// unless it has a place across.
func (s *boltStation) placeOf(l laid) geom.Point {
	r, at := s.w.work.Run, s.found.At
	if at.X == 0 {
		at.X = r.Bolt.Width / 2
	}
	return l.put(r, at)
}
