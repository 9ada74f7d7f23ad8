package report

import (
	"fmt"
	"image"
	"math"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// The measures of the customer's proof.
const (
	proofLoupe = 46 * geom.Millimetre
	proofDPI   = 220
	wordsRoom  = 66 * geom.Millimetre // below the pictures: measures, what to know, a line to sign
)

// Proof returns the proof that a customer is shown: one page with the cloth in its
// dye at true size, the drawing that repeats under a loupe, the garment, and the
// measures in words that ask for no knowledge of the trade.
func Proof(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	if size.Width > size.Height {
		size = size.Turned()
	}
	l := newLeaf(size.Width, size.Height)
	body := proofHead(l, w, f)
	page := export.Page{}
	high := (body.Height() - wordsRoom) * 2 / 5
	piece := geom.BoxOf(body.Min, geom.Point{X: body.Max.X - proofLoupe - geom.MM(8), Y: body.Min.Y + high})
	page.Views = []export.View{trueSize(w, piece, 0, geom.Length(1))}
	l.frame(hairline, piece)
	l.below(piece, f.say("the cloth at its true size, in the chosen colour"))
	loupe := geom.BoxOf(geom.Point{X: body.Max.X - proofLoupe, Y: body.Min.Y}, geom.Point{X: body.Max.X, Y: body.Min.Y + min(proofLoupe, high)})
	page.Photos = append(page.Photos, l.proofUnit(w, loupe, f))
	dress := geom.BoxOf(geom.Point{X: body.Min.X, Y: piece.Max.Y + geom.MM(14)}, geom.Point{X: body.Max.X, Y: body.Max.Y - wordsRoom})
	if photo, ok := l.proofGarment(w, dress, f); ok {
		page.Photos = append(page.Photos, photo)
	}
	l.proofWords(w, geom.BoxOf(geom.Point{X: body.Min.X, Y: body.Max.Y - wordsRoom + geom.MM(6)}, body.Max), f)
	page.Drawing = l.drawing(f.title(w))
	return opt.correction(w).on(export.Book{Title: f.title(w), Subject: f.say("Proof"), Pages: []export.Page{page}}), nil
}

// proofHead sets the title above a rule and returns what is left below.
func proofHead(l *leaf, w repeat.Work, f figures) geom.Box {
	left, right := flowLeft, l.width-flowLeft
	kind := f.say("Proof")
	l.text(accentWord, headStyle, geom.Point{X: right, Y: geom.MM(20)}, export.End, kind)
	title, s := fit(f.title(w), titleStyle, right-left-headStyle.width(kind)-geom.MM(8))
	l.text(words, s, geom.Point{X: left, Y: geom.MM(20)}, export.Start, title)
	l.line(rule, geom.Point{X: left, Y: geom.MM(25)}, geom.Point{X: right, Y: geom.MM(25)})
	return geom.BoxOf(geom.Point{X: left, Y: geom.MM(31)}, geom.Point{X: right, Y: l.height - geom.MM(16)})
}

// below sets a caption under a box, no wider than it.
func (l *leaf) below(b geom.Box, text string) {
	text, s := fit(text, captionStyle, b.Width())
	l.text(captions, s, geom.Point{X: b.Min.X, Y: b.Max.Y + geom.MM(4.6)}, export.Start, text)
}

// photoPlate is a plate that fills a box of a page.
func photoPlate(b geom.Box, f figures) *plate {
	scale := proofDPI / 25.4
	px := func(v geom.Length) int { return max(1, int(math.Round(v.MM()*scale))) }
	p := &plate{img: image.NewRGBA(image.Rect(0, 0, px(b.Width()), px(b.Height()))), scale: scale, over: newLeaf(b.Width(), b.Height()), f: f}
	whole := geom.BoxOf(geom.Point{}, b.Max.Sub(b.Min))
	p.fill(glassOn(whole, whole), whole, inks(export.White))
	return p
}

// proofUnit shows the drawing that repeats, outlined among its neighbours.
func (l *leaf) proofUnit(w repeat.Work, at geom.Box, f figures) export.Photo {
	u := w.Printed()
	a, b := u.Lattice.A, u.Lattice.B
	middle := geom.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	p := photoPlate(at, f)
	room := geom.BoxOf(geom.Point{}, at.Max.Sub(at.Min))
	cell := geom.BoxOf(geom.Point{}, a, b, a.Add(b))
	// All of the cell, but of one that is far longer than wide only what shows its drawing.
	shown := min(1.6*max(cell.Width(), cell.Height()).MM(), 3*min(cell.Width(), cell.Height()).MM())
	cells := shown / math.Sqrt(u.Lattice.CellMM2())
	g := glassOn(closeWindow(u, middle, cells, float64(room.Height())/float64(room.Width())), room)
	p.sample = g.k
	p.fill(g, g.window, dye(w))
	p.paint(g, raster.NewGround(shapesOf(u.CutOuts()), a, b), undyed, raster.Lay{Clip: g.window})
	onPage := g
	onPage.room = at
	l.across(onPage, []geom.Point{{}, a, a.Add(b), b, {}})
	l.frame(hairline, at)
	text := f.say("the drawing that repeats, outlined, %.1f times its size", g.k)
	for i, line := range wrap(text, captionStyle, at.Width()) {
		l.text(captions, captionStyle, geom.Point{X: at.Min.X, Y: at.Max.Y + geom.MM(4.6) + captionStyle.leading()*geom.Length(i)}, export.Start, line)
	}
	return export.Photo{Pixels: p.img, Box: at}
}

// proofGarment shows the garment as it will look, in a room; false where the order
// has none.
func (l *leaf) proofGarment(w repeat.Work, room geom.Box, f figures) (export.Photo, bool) {
	pieces := w.Dressed.Pieces()
	if len(pieces) == 0 {
		return export.Photo{}, false
	}
	space := geom.Point{X: room.Width(), Y: room.Height() - viewTop}
	sc, k := sceneIn(pieces, space, float64(space.X)/float64(space.Y))
	wide, tall := sc.size.X.Times(k), sc.size.Y.Times(k)
	corner := geom.Point{X: room.Min.X + (room.Width()-wide)/2, Y: room.Min.Y + viewTop}
	at := geom.BoxOf(corner, corner.Add(geom.Point{X: wide, Y: tall}))
	p := photoPlate(at, f)
	g := glassOn(geom.BoxOf(geom.Point{}, sc.size), geom.BoxOf(geom.Point{}, geom.Point{X: wide, Y: tall}))
	p.sample = g.k
	p.cloths(g, w, sc)
	g.room = at
	for _, piece := range sc.pieces {
		b := piece.Area.Moved(sc.offset[piece.View])
		l.frame(hairline, geom.BoxOf(g.put(b.Min), g.put(b.Max)))
	}
	for _, v := range sc.views {
		name, s := fit(f.say(string(v)), captionStyle, sc.bounds[v].Width().Times(k)+viewGap-geom.MM(1))
		at := g.put(geom.Point{X: sc.bounds[v].Centre().X, Y: sc.bounds[v].Min.Y})
		l.text(captions, s, at.Sub(geom.Point{Y: viewTop - geom.MM(3.4)}), export.Middle, name)
	}
	return export.Photo{Pixels: p.img, Box: at}, true
}

// proofWords sets the measures, what to know, and the lines to sign.
func (l *leaf) proofWords(w repeat.Work, room geom.Box, f figures) {
	y := room.Min.Y
	for _, text := range proofSentences(w, f) {
		l.line(accentLine, geom.Point{X: room.Min.X, Y: y - geom.MM(1.2)}, geom.Point{X: room.Min.X + geom.MM(2.5), Y: y - geom.MM(1.2)})
		y += l.lines(words, bodyStyle, geom.Point{X: room.Min.X + geom.MM(5), Y: y}, room.Width()-geom.MM(5), text) + geom.MM(1)
	}
	half := room.Width() / 2
	for i, text := range []string{f.say("agreed"), f.say("date")} {
		x := room.Min.X + half*geom.Length(i)
		l.line(hairline, geom.Point{X: x, Y: room.Max.Y - geom.MM(4)}, geom.Point{X: x + half - geom.MM(8), Y: room.Max.Y - geom.MM(4)})
		l.text(captions, captionStyle, geom.Point{X: x, Y: room.Max.Y}, export.Start, text)
	}
}

// proofSentences are the measures in plain words, as finished.
func proofSentences(w repeat.Work, f figures) []string {
	r, long := f.cloth, f.cloth
	if r.unit == geom.MMUnit {
		r, long = f.ruler(geom.CMUnit, 1), f.ruler(geom.MUnit, 2)
	}
	width, length := w.Run.Bolt.FinishedSize()
	all := []string{f.say("The cloth is %s wide and %s long; the pattern fills %s of its width and repeats every %s along it.",
		r.plain(width), long.plain(length), r.plain(w.Order.Sheet.Field.Width), r.plain(w.Sheet.Spec.Step))}
	if n := w.Printed().PerCM2(); n >= 2 {
		all = append(all, f.say("About %.0f white shapes stand on a square centimetre.", n))
	} else {
		all = append(all, f.say("About %.0f white shapes stand on a square of ten centimetres.", 100*n))
	}
	if d := w.Dressed; len(d.Pieces()) > 0 {
		all = append(all, f.say("%s: %s of cloth are sewn up.", f.lang.Retell(d.Form.Title), long.plain(d.Used)))
	}
	return append(all,
		f.say("The pattern is laid by hand, %s along the cloth. Where one laying meets the next it may be off by a hair, here about %s.",
			timesText(w.Run.Needed, f), f.walk.plain(w.Run.Drift.WorstJoint.Abs())),
		f.say("No printer and no screen shows the colour of a dye: ask for a dyed sample."))
}

func timesText(n int, f figures) string { return f.say("%s times", fmt.Sprint(n)) }
