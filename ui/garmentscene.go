package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// viewGap is between two views, and pieceGap between the over-collar and the
// collar, which it covers when it is worn.
const (
	viewGap  = 220 * geom.Millimetre
	pieceGap = 60 * geom.Millimetre
)

// pictureShape is how much wider than high the surface is, about.
const pictureShape = 1.15

// offset returns where a view's origin lies in the picture.
func (s *garmentStation) offset(view cloth.View) geom.Point {
	if s.placed != s.w.built {
		d := s.w.work.Dressed
		var views []cloth.View
		for _, v := range d.Views() {
			views = append(views, v.Name)
		}
		s.places, s.placed = cloth.PlaceViews(d.Pieces(), views, viewGap, pictureShape), s.w.built
	}
	return s.places[view]
}

// offsetOf returns where a piece's view lies in the picture: the over-collar beside the
// collar, so that both are seen.
func (s *garmentStation) offsetOf(p cloth.Piece) geom.Point {
	at := s.offset(p.View)
	if p.Name == "over-collar" {
		at.X += p.Area.Width() + pieceGap
	}
	return at
}

// madeUp shows all views of the garment.
func (s *garmentStation) madeUp() board.Scene {
	sc := board.Scene{Desk: worn().table, Plain: true}
	g := &printing{of: s.chance}
	for _, p := range s.w.work.Dressed.Pieces() {
		s.dress(&sc, g, p)
	}
	sc.Grounds = g.grounds()
	s.markStars(&sc)
	s.markWorst(&sc)
	s.targets.mark(&sc)
	s.seams.mark(&sc)
	for _, v := range s.w.work.Dressed.Views() {
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == v.Name {
				all = all.Union(p.Area.Moved(s.offsetOf(p)))
			}
		}
		if !all.Empty() {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: all.Centre().X, Y: all.Min.Y - 40*geom.Millimetre}, Align: board.Above, Text: say(v.Title), Colour: worn().ink, Bold: true, Size: 14,
			})
		}
	}
	// Below it there is room for a seam under the loupe.
	below := geom.Point{X: 60 * geom.Millimetre, Y: sc.Extent.Width() / 5}
	sc.Extent = geom.BoxOf(sc.Extent.Min.Sub(geom.PtMM(60, 160)), sc.Extent.Max.Add(below))
	return sc
}

// dress shows one piece: its cloth, the pattern that the placements leave on it,
// and the joints in their true shape; where two placements lie apart, both rims.
func (s *garmentStation) dress(sc *board.Scene, g *printing, p cloth.Piece) {
	off := s.offsetOf(p)
	box := p.Area.Moved(off)
	sc.Extent = sc.Extent.Union(box)
	sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(s.w.Order().Cloth.Dye), Open: worn().undyed})
	on := lieOf(p, off)
	g.onto(on, box)
	for _, j := range s.w.work.JointsOn(p, s.chance.prints) {
		sc.Marks = append(sc.Marks, jointMark(moved(j.Line, off), j.Ends))
	}
	g.markTurn(sc, on, box)
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(box), Colour: worn().undyed, Width: 1.5})
	sc.Labels = append(sc.Labels, board.Label{
		At: box.Centre(), Align: board.Middle, Text: say(p.Name), Colour: worn().ink, Shield: worn().shield, Size: 11, Room: box.Width(),
	})
}

// jointMark is a joint line; the end of a placement that lies apart from the next is
// dashed.
func jointMark(line []geom.Point, ends bool) board.Mark {
	if ends {
		return board.Mark{Shape: board.Dashes, Points: line, Colour: worn().quiet}
	}
	return board.Mark{Shape: board.Line, Points: line, Colour: worn().quiet}
}

// markStars shows the marks of stars that the garment shows, where the bolt has them.
func (s *garmentStation) markStars(sc *board.Scene) {
	radius := s.w.Order().Sheet.Stars.Diameter / 2
	for _, m := range cloth.SeenStars(s.w.work.StarPrints()) {
		if p, ok := s.piece(m.Piece); ok {
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Star, Points: []geom.Point{s.markedAt(m, p)}, Radius: radius, Colour: worn().onCloth, Width: 1.5})
		}
	}
}

// markedAt returns where the mark of a star lies in the picture: moved with its
// placement.
func (s *garmentStation) markedAt(m cloth.StarPrint, p cloth.Piece) geom.Point {
	return p.FromCloth(m.At.Add(s.chance.shift(m.At))).Add(s.offsetOf(p))
}

// markWorst points at the worst joint of the bolt.
func (s *garmentStation) markWorst(sc *board.Scene) {
	c := s.chance
	p, ok := s.piece(c.worst.Piece)
	if !c.any || !ok {
		return
	}
	// Words there would hide the joint; they stand among the measures.
	at := c.worst.At.Add(s.offsetOf(p))
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Wedge, Points: []geom.Point{at}, Colour: worn().onCloth, Width: 2})
}
