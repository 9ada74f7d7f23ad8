package ui

import (
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
	w, f := s.w.work, s.folds()
	sc := board.Scene{Desk: table, Plain: true, Pitch: s.w.pitch()}
	start, end := w.Run.Board.Start, w.Run.Board.Start+geom.Length(len(w.Run.Placements))*w.Run.Step
	laid := board.Laid{Ground: s.w.grounds.board}
	for n := range f.columns {
		box, move := f.column(n)
		sc.Extent = sc.Extent.Union(box)
		sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(s.w.Order().Cloth.Dye), Open: undyed})
		printed := geom.BoxOf(geom.Point{X: box.Min.X, Y: start + move.Y}, geom.Point{X: box.Max.X, Y: end + move.Y}).Intersect(box)
		if !printed.Empty() {
			laid.Lays = append(laid.Lays, raster.Lay{Move: move.Add(geom.Point{Y: start}), Clip: printed})
		}
		s.markLength(&sc, box, move)
	}
	sc.Grounds = []board.Laid{laid}
	sc.Extent = geom.BoxOf(
		sc.Extent.Min.Sub(geom.Point{X: f.gap, Y: f.gap * 2 / 3}),
		sc.Extent.Max.Add(geom.Point{X: f.gap / 3, Y: f.gap / 3}))
	return sc
}

// markLength shows the placements, the faces and the turn of one length.
func (s *boltStation) markLength(sc *board.Scene, box geom.Box, move geom.Point) {
	r := s.w.work.Run
	from := box.Min.Y - move.Y
	sc.Labels = append(sc.Labels, board.Label{
		At: geom.Point{X: box.Centre().X, Y: box.Min.Y}, Align: board.Above, Colour: ink, Bold: true, Size: 12,
		Text: "from " + geom.MUnit.Format(from, 2),
	})
	for _, p := range r.Placements {
		y := p.Y + move.Y
		if y < box.Min.Y || y >= box.Max.Y {
			continue
		}
		line := []geom.Point{{X: box.Min.X - r.Bolt.Width/12, Y: y}, {X: box.Min.X, Y: y}}
		joint := []geom.Point{{X: box.Min.X, Y: y}, {X: box.Max.X, Y: y}}
		sc.Marks = append(sc.Marks,
			board.Mark{Shape: board.Line, Points: line, Colour: faint},
			board.Mark{Shape: board.Dashes, Points: joint, Colour: quiet})
		face := string(p.Face)
		if p.Face == cloth.Turn {
			face = say("turn")
		}
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: box.Min.X - r.Bolt.Width/20, Y: y + r.Step/2}, Align: board.Before,
			Text: strconv.Itoa(p.N) + " " + face, Colour: faint, Size: 11, Room: r.Bolt.Width / 2,
		})
	}
	for _, t := range r.Turns {
		lost := geom.BoxOf(geom.Point{X: box.Min.X, Y: t.From + move.Y}, geom.Point{X: box.Max.X, Y: t.To + move.Y}).Intersect(box)
		if !lost.Empty() && lost.Height() > 0 {
			sc.Marks = append(sc.Marks,
				board.Mark{Shape: board.Hatch, Points: []geom.Point{lost.Min, lost.Max}, Colour: onCloth},
				board.Mark{Shape: board.Loop, Points: corners(lost), Colour: onCloth, Width: 1.5})
		}
	}
}
