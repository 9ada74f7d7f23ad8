package report

import (
	"fmt"
	"slices"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// The measures of the picture of a garment, on the plate.
const (
	viewGap     = 9 * geom.Millimetre
	viewTop     = 6 * geom.Millimetre
	seamRow     = 4600 * geom.Micrometre
	seamColumns = 2
	// tallest is the most that a garment is drawn high: a scarf is far longer than
	// it is wide.
	tallest = 260 * geom.Millimetre
)

// sceneShape is how much wider than high the picture of a garment likes to be.
const sceneShape = 1.4

// A scene is the views of a garment beside and below each other, in the garment's millimetres.
type scene struct {
	pieces []cloth.Piece
	views  []cloth.View
	offset map[cloth.View]geom.Point // from the view's origin to the scene's
	bounds map[cloth.View]geom.Box   // in the scene
	size   geom.Point
}

// sceneOf lays out the views in the order of their first pieces; gap is
// between them, shape is how much wider than high it likes to be.
func sceneOf(pieces []cloth.Piece, gap geom.Length, shape float64) scene {
	s := scene{pieces: pieces, bounds: map[cloth.View]geom.Box{}}
	for _, p := range pieces {
		if !slices.Contains(s.views, p.View) {
			s.views = append(s.views, p.View)
		}
	}
	s.offset = cloth.PlaceViews(pieces, s.views, gap, shape)
	for _, p := range pieces {
		area := p.Area.Moved(s.offset[p.View])
		s.bounds[p.View] = s.bounds[p.View].Union(area)
		s.size = geom.Point{X: max(s.size.X, area.Max.X), Y: max(s.size.Y, area.Max.Y)}
	}
	return s
}

// sceneIn lays out the views for a room on the page, viewGap apart there, and returns
// the page's millimetres for one of the garment.
func sceneIn(pieces []cloth.Piece, room geom.Point, shape float64) (scene, float64) {
	fits := func(sc scene) float64 {
		return min(float64(room.X)/float64(sc.size.X), float64(room.Y)/float64(sc.size.Y))
	}
	sc := sceneOf(pieces, viewGap.Times(1/fits(sceneOf(pieces, 0, shape))), shape)
	return sc, fits(sc)
}

// garmentPlate shows back, front and collar as they are sewn, the joints of the
// placements on them, and how far the pattern is off at each seam.
func garmentPlate(w repeat.Work, pxWidth int) (*plate, error) {
	pieces := w.Dressed.Pieces()
	if len(pieces) == 0 {
		return nil, fmt.Errorf("the order has no garment; choose one")
	}
	sc, k := sceneIn(pieces, geom.Point{X: plateWidth - 2*plateMargin, Y: tallest}, sceneShape)
	wide, tall := sc.size.X.Times(k), sc.size.Y.Times(k)
	rows := (len(w.Dressed.Seams) + seamColumns - 1) / seamColumns
	p := newPlate(w, pxWidth, viewTop+tall+geom.MM(12)+seamRow*geom.Length(rows), "the garment")
	inner := p.inner()
	corner := geom.Point{X: inner.Min.X + (inner.Width()-wide)/2, Y: inner.Min.Y + viewTop}
	if wide > inner.Width()-geom.Micrometre { // it fills the width
		corner.X, wide = inner.Min.X, inner.Width()
	}
	g := glassOn(geom.BoxOf(geom.Point{}, sc.size), geom.BoxOf(corner, corner.Add(geom.Point{X: wide, Y: tall})))
	p.sample = g.k
	p.cloths(g, w, sc)
	p.edges(g, w, sc)
	p.viewNames(g, sc)
	p.seams(g, w, sc, g.room.Max.Y+geom.MM(10))
	f := p.f
	d := w.Dressed
	p.about = f.say("for a height of %s; %s of cloth used, %s of it for matching; fine lines are joints",
		f.cloth.plain(d.Garment.Body.Height), f.cloth.plain(d.Used), f.cloth.plain(d.Extra))
	if _, worn := d.Form.Ask("height"); !worn {
		p.about = f.say("%s; %s of cloth used, %s of it for matching; fine lines are joints",
			f.lang.Retell(d.Form.Title), f.cloth.plain(d.Used), f.cloth.plain(d.Extra))
	}
	return p, nil
}

// start is where the first placement begins on the finished cloth.
func start(w repeat.Work) geom.Point {
	return w.Run.Bolt.Finished(geom.Point{Y: w.Run.Board.Start})
}

// cloths paints every piece, later ones over earlier ones.
func (p *plate) cloths(g glass, w repeat.Work, sc scene) {
	ground, image := raster.NewGround(shapesOf(w.Sheet.Printed)), (*raster.Ground)(nil)
	if w.Run.Bolt.Folded {
		image = raster.NewGround(mirroredAlong(w.Sheet.Printed, w.Sheet.Spec.Step))
	}
	reach := w.Sheet.Bounds()
	// Pieces of one pass lie beside each other; the over-collar lies on the collar.
	var pass []cloth.Piece
	flush := func() {
		var plain, mirrored []raster.Lay
		for _, piece := range pass {
			p.fill(g, piece.Area.Moved(sc.offset[piece.View]), dye(w))
			a, b := laysOn(w, reach, piece, sc.offset[piece.View])
			plain, mirrored = append(plain, a...), append(mirrored, b...)
		}
		p.paint(g, ground, undyed, plain...)
		if len(mirrored) > 0 {
			p.paint(g, image, undyed, mirrored...)
		}
		pass = nil
	}
	for _, piece := range sc.pieces {
		for _, q := range pass {
			if common := q.Area.Intersect(piece.Area); q.View == piece.View && common.Width() > 0 && common.Height() > 0 {
				flush()
				break
			}
		}
		pass = append(pass, piece)
	}
	flush()
}

// laysOn returns the placements, each with its holes in reach, that a piece shows,
// whose view's origin is at off: those that lie plain and those that a folded cloth
// mirrors.
func laysOn(w repeat.Work, reach geom.Box, piece cloth.Piece, off geom.Point) (plain, mirrored []raster.Lay) {
	end := w.Run.Bolt.Finished(geom.Point{Y: w.Run.Bolt.Length - w.Run.Board.End}).Y
	window := piece.Window()
	printed := window.Intersect(geom.BoxOf(geom.Point{X: window.Min.X, Y: min(window.Min.Y, end)}, geom.Point{X: window.Max.X, Y: end}))
	if printed.Empty() {
		return nil, nil
	}
	clip := geom.BoxOf(piece.FromCloth(printed.Min), piece.FromCloth(printed.Max)).Moved(off)
	for _, print := range w.Run.Prints() {
		if !print.Reach(reach).Moved(geom.Point{Y: print.Y}).Meets(printed) {
			continue
		}
		lay := raster.Lay{Move: piece.FromCloth(geom.Point{Y: print.Y}).Add(off), Turned: piece.Turned, Clip: clip}
		if print.Mirrored {
			mirrored = append(mirrored, lay)
		} else {
			plain = append(plain, lay)
		}
	}
	return plain, mirrored
}

// hairBeside is how far a joint may be drawn beside its line, on the plate.
const hairBeside = 30 * geom.Micrometre

// edges draws on each piece the joints in their true shape, the marks of stars that
// are seen, the turn of the board, and its outline.
func (p *plate) edges(g glass, w repeat.Work, sc scene) {
	prints, stars := w.Run.Prints(), cloth.SeenStars(w.StarPrints())
	for _, piece := range sc.pieces {
		off := sc.offset[piece.View]
		for _, j := range w.JointsOn(piece, prints) {
			line := make([]geom.Point, len(j.Line))
			for i, at := range j.Line {
				line[i] = g.put(at.Add(off))
			}
			p.over.line(thread, geom.Straightened(line, hairBeside)...)
		}
		p.turnOn(g, w, piece, off)
		b := piece.Area.Moved(off)
		p.over.frame(halo, geom.BoxOf(g.put(b.Min), g.put(b.Max)))
	}
	for _, s := range stars {
		at := g.put(s.Place.Add(sc.offset[s.View]))
		p.over.line(accentLine, at.Sub(geom.PtMM(1.2, 0)), at.Add(geom.PtMM(1.2, 0)))
		p.over.line(accentLine, at.Sub(geom.PtMM(0, 1.2)), at.Add(geom.PtMM(0, 1.2)))
	}
}

// turnOn frames where cloth from the turn of the board lies on a piece.
func (p *plate) turnOn(g glass, w repeat.Work, piece cloth.Piece, off geom.Point) {
	window := piece.Window()
	for _, t := range w.Run.Turns {
		from, to := w.Run.Bolt.Finished(geom.Point{Y: t.From}), w.Run.Bolt.Finished(geom.Point{Y: t.To})
		lost := geom.BoxOf(geom.Point{X: window.Min.X, Y: from.Y}, geom.Point{X: window.Max.X, Y: to.Y}).Intersect(window)
		if lost.Empty() || lost.Height() == 0 {
			continue
		}
		b := geom.BoxOf(g.put(piece.FromCloth(lost.Min).Add(off)), g.put(piece.FromCloth(lost.Max).Add(off)))
		p.over.frame(halo, b)
		p.over.frame(accentLine, b)
	}
}

func (p *plate) viewNames(g glass, sc scene) {
	for _, v := range sc.views {
		at := g.put(geom.Point{X: sc.bounds[v].Centre().X, Y: sc.bounds[v].Min.Y})
		p.over.text(captions, captionStyle, at.Sub(geom.Point{Y: geom.MM(2)}), export.Middle, p.f.say(string(v)))
	}
}
