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

// A scene is the views of a garment side by side, in the garment's millimetres.
type scene struct {
	pieces []cloth.Piece
	views  []cloth.View
	offset map[cloth.View]geom.Point // from the view's origin to the scene's
	bounds map[cloth.View]geom.Box   // in the scene
	size   geom.Point
}

// sceneOf lays the views side by side, in the order of their first pieces; gap is
// between them.
func sceneOf(pieces []cloth.Piece, gap geom.Length) scene {
	s := scene{pieces: pieces, offset: map[cloth.View]geom.Point{}, bounds: map[cloth.View]geom.Box{}}
	for _, p := range pieces {
		if !slices.Contains(s.views, p.View) {
			s.views = append(s.views, p.View)
		}
	}
	x := geom.Length(0)
	for _, v := range s.views {
		var b geom.Box
		for _, p := range pieces {
			if p.View == v {
				b = b.Union(p.Area)
			}
		}
		s.offset[v] = geom.Point{X: x - b.Min.X, Y: -b.Min.Y}
		s.bounds[v] = b.Moved(s.offset[v])
		x += b.Width() + gap
		s.size = geom.Point{X: x - gap, Y: max(s.size.Y, b.Height())}
	}
	return s
}

// garmentPlate shows back, front and collar as they are sewn, the joints of the
// placements on them, and how far the pattern is off at each seam.
func garmentPlate(w repeat.Work, pxWidth int) (*plate, error) {
	pieces := w.Dressed.Pieces()
	if len(pieces) == 0 {
		return nil, fmt.Errorf("the order has no garment; choose one")
	}
	room := plateWidth - 2*plateMargin
	bare := sceneOf(pieces, 0)
	gaps := viewGap * geom.Length(len(bare.views)-1)
	k := min(float64(room-gaps)/float64(bare.size.X), float64(tallest)/float64(bare.size.Y))
	sc := sceneOf(pieces, viewGap.Times(1/k))
	wide, tall := sc.size.X.Times(k), sc.size.Y.Times(k)
	rows := (len(w.Dressed.Seams) + seamColumns - 1) / seamColumns
	p := newPlate(w, pxWidth, viewTop+tall+geom.MM(12)+seamRow*geom.Length(rows), "the garment")
	inner := p.inner()
	corner := geom.Point{X: inner.Min.X + (inner.Width()-wide)/2, Y: inner.Min.Y + viewTop}
	if k < float64(tallest)/float64(bare.size.Y) {
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
	ground := raster.NewGround(shapesOf(w.Sheet.Printed), geom.Point{Y: w.Sheet.Spec.Step})
	// Pieces of one pass lie beside each other; the over-collar lies on the collar.
	var pass []cloth.Piece
	flush := func() {
		var lays []raster.Lay
		for _, piece := range pass {
			off := sc.offset[piece.View]
			area := piece.Area.Moved(off)
			p.fill(g, area, dye(w))
			lays = append(lays, raster.Lay{Move: piece.FromCloth(start(w)).Add(off), Turned: piece.Turned, Clip: area})
		}
		p.paint(g, ground, undyed, lays...)
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

// edges draws the joints that fall on each piece, and its outline.
func (p *plate) edges(g glass, w repeat.Work, sc scene) {
	step := w.Sheet.Spec.Step
	for _, piece := range sc.pieces {
		off := sc.offset[piece.View]
		window := piece.Window()
		first := (window.Min.Y - start(w).Y + step - 1) / step
		for n := max(first, 0); start(w).Y+n*step <= window.Max.Y; n++ {
			y := piece.FromCloth(geom.Point{Y: start(w).Y + n*step}).Y
			a, b := geom.Point{X: piece.Area.Min.X, Y: y}.Add(off), geom.Point{X: piece.Area.Max.X, Y: y}.Add(off)
			p.over.line(thread, g.put(a), g.put(b))
		}
		b := piece.Area.Moved(off)
		p.over.frame(halo, geom.BoxOf(g.put(b.Min), g.put(b.Max)))
	}
}

func (p *plate) viewNames(g glass, sc scene) {
	for _, v := range sc.views {
		at := g.put(geom.Point{X: sc.bounds[v].Centre().X})
		p.over.text(captions, captionStyle, geom.Point{X: at.X, Y: g.room.Min.Y - geom.MM(2)}, export.Middle, p.f.say(string(v)))
	}
}
