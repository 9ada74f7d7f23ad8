package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// The columns that a bolt is shown in.
const (
	boltGutter = 9 * geom.Millimetre
	boltTop    = 6 * geom.Millimetre
	boltTall   = 150 * geom.Millimetre // at most, where so many columns are enough
	maxColumns = 24
)

// boltPlate shows the whole bolt as it lies on the board, cut into columns that
// hang side by side, with every placement and the turns.
func boltPlate(w repeat.Work, pxWidth int) (*plate, error) {
	run := w.Run
	n, height := boltColumns(run.Bolt)
	p := newPlate(w, pxWidth, height+boltTop, "the bolt on the board")
	room := p.inner()
	pitch := room.Width() / geom.Length(n)
	each := (run.Bolt.Length + geom.Length(n) - 1) / geom.Length(n)
	board := w.Sheet.AtCutSize(stencil.Scale{ClothAcross: w.Scale.ClothAcross, ClothAlong: w.Scale.ClothAlong})
	ground := raster.NewGround(shapesOf(board.Printed))
	reach := board.Bounds()
	var image *raster.Ground
	if run.Bolt.Folded {
		image = raster.NewGround(mirroredAlong(board.Printed, run.Step))
	}
	for i := range n {
		column := geom.BoxOf(
			geom.Point{X: room.Min.X + pitch*geom.Length(i) + boltGutter, Y: room.Min.Y + boltTop},
			geom.Point{X: room.Min.X + pitch*geom.Length(i+1), Y: room.Max.Y},
		)
		from := each * geom.Length(i)
		window := geom.BoxOf(geom.Point{Y: from}, geom.Point{X: run.Bolt.Width, Y: min(from+each, run.Bolt.Length)})
		g := glassOn(window, column)
		p.sample = g.k
		p.fill(g, window, dye(w))
		plain, mirrored := boltLays(run, reach, window)
		p.paint(g, ground, undyed, plain...)
		if len(mirrored) > 0 {
			p.paint(g, image, undyed, mirrored...)
		}
		p.boltMarks(g, run)
	}
	f := p.f
	p.about = f.say("%s × %s, %d whole placements of %s, %d on face A, %d in the turn, %d on face B; left over %s",
		f.cloth.plain(run.Bolt.Width), f.cloth.plain(run.Bolt.Length), len(run.Placements), f.cloth.plain(run.Step),
		run.OnFace(cloth.FaceA), run.OnFace(cloth.Turn), run.OnFace(cloth.FaceB), f.cloth.plain(run.Remainder))
	return p, nil
}

// boltColumns returns into how many columns a bolt is cut and how high they are.
func boltColumns(b cloth.Bolt) (n int, height geom.Length) {
	for n = 1; ; n++ {
		width := (plateWidth-2*plateMargin)/geom.Length(n) - boltGutter
		height = b.Length.Times(float64(width) / float64(b.Width) / float64(n))
		if height <= boltTall || n == maxColumns {
			return n, height
		}
	}
}

// mirroredAlong returns the shapes of cut-outs as they print on a section of cloth
// that is folded back: the other end first.
func mirroredAlong(cuts []pattern.CutOut, step geom.Length) []geom.Shape {
	image := geom.Scale(1, -1).Then(geom.Translate(geom.Point{Y: step}))
	shapes := make([]geom.Shape, len(cuts))
	for i, c := range cuts {
		shapes[i] = c.Shape.Placed(image)
	}
	return shapes
}

// boltLays returns the placements, each with its holes in reach, that a window of
// the bolt shows, the last one in part where it is needed to cover the cloth: those
// that lie plain and those that a folded cloth mirrors.
func boltLays(run cloth.Run, reach, window geom.Box) (plain, mirrored []raster.Lay) {
	if run.Bolt.Folded { // either way round
		reach = reach.Union(geom.BoxOf(geom.Point{X: reach.Min.X, Y: run.Step - reach.Max.Y}, geom.Point{X: reach.Max.X, Y: run.Step - reach.Min.Y}))
	}
	for n := range run.Needed {
		y := run.Board.Start + geom.Length(n)*run.Step
		if !reach.Moved(geom.Point{Y: y}).Meets(window) {
			continue
		}
		clip := window.Intersect(geom.BoxOf(window.Min, geom.Point{X: window.Max.X, Y: run.Bolt.Length - run.Board.End}))
		if clip.Empty() {
			continue
		}
		lay := raster.Lay{Move: geom.Point{Y: y}, Clip: clip}
		if run.Bolt.Folded && n%2 == 1 {
			mirrored = append(mirrored, lay)
		} else {
			plain = append(plain, lay)
		}
	}
	return plain, mirrored
}

// boltMarks ticks where placements begin, numbers every fifth with its face, and
// frames the turns.
func (p *plate) boltMarks(g glass, run cloth.Run) {
	x := g.room.Min.X
	p.over.text(captions, captionStyle, geom.Point{X: x, Y: g.room.Min.Y - geom.MM(1.8)}, export.Start,
		p.f.say("from %.2f m", g.window.Min.Y.MM()/1000))
	for _, placement := range run.Placements {
		at := geom.Point{Y: placement.Y}
		if !g.window.Holds(at) || placement.Y == g.window.Max.Y {
			continue
		}
		y := g.put(at).Y
		p.over.line(hairline, geom.Point{X: x - geom.MM(1.2), Y: y}, geom.Point{X: x, Y: y})
		if placement.N%5 == 0 {
			name := fmt.Sprint(placement.N + 1)
			if placement.Face != cloth.Turn {
				name += " " + string(placement.Face)
			}
			p.over.text(words, style{geom.MM(2.5), false}, geom.Point{X: x - geom.MM(1.8), Y: y + geom.MM(0.9)}, export.End, name)
		}
	}
	for _, t := range run.Turns {
		span := geom.BoxOf(geom.Point{Y: t.From}, geom.Point{X: run.Bolt.Width, Y: t.To}).Intersect(g.window)
		if !span.Empty() {
			b := geom.BoxOf(g.put(span.Min), g.put(span.Max))
			p.over.frame(halo, b)
			p.over.frame(accentLine, b)
		}
	}
}
