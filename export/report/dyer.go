package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// DyersCard returns the dyer's card, one page to hang by the board: a piece of the
// finished cloth at true size, step and count, where the placements fall, how they
// are laid true and what is worth doing first, and where hands can be hurt. Where
// there is more to say than the page has room for, the piece gets smaller first
// and then the letters.
func DyersCard(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	var pages []export.Page
	for _, d := range densities {
		if pages = d.card(w, size, f); len(pages) == 1 {
			break
		}
	}
	return opt.correction(w).on(export.Book{Title: f.title(w), Subject: f.say("Dyer's card"), Pages: pages}), nil
}

// A density is how close a card is set.
type density struct {
	piece        geom.Length // how high the piece of cloth is
	body, caring style
}

var densities = []density{
	{58 * geom.Millimetre, bodyStyle, bodyStyle},
	{58 * geom.Millimetre, bodyStyle, captionStyle},
	{48 * geom.Millimetre, bodyStyle, captionStyle},
	{44 * geom.Millimetre, captionStyle, captionStyle},
	{44 * geom.Millimetre, style{geom.MM(2.6), false}, style{geom.MM(2.6), false}},
}

// card sets the card at a density; on more pages where it asks for too much.
func (d density) card(w repeat.Work, size export.PageSize, f figures) []export.Page {
	fl := newFlow(f, f.title(w), f.say("Dyer's card"), clothFacts(w, f), size)
	fl.y -= geom.MM(2)
	piece := cardTop(fl, w, f, d.piece)
	fl.heading(f.say("On the board"))
	boardSketch(fl, w, f)
	for _, text := range boardPoints(w, f) {
		fl.pointIn(d.body, text)
	}
	fl.heading(f.say("Laying it true"))
	for _, text := range layingPoints(w, f) {
		fl.pointIn(d.body, text)
	}
	if t := gainTable(w, f); len(t.rows) > 0 {
		fl.y += geom.MM(1.5)
		fl.table(t)
	}
	fl.heading(f.say("Take care"))
	for _, c := range dyerCautions(f) {
		fl.pointIn(d.caring, c)
	}
	pages := fl.pages()
	pages[0].Views = append(pages[0].Views, piece)
	return pages
}

// clothFacts is the line under the title.
func clothFacts(w repeat.Work, f figures) string {
	b := w.Run.Bolt
	return f.say("bolt %s × %s, board %s", f.cloth.plain(b.Width), f.cloth.plain(b.Length), f.cloth.plain(w.Run.Board.Length))
}

// cardTop sets a piece of the cloth at true size beside the figures that are asked
// for most, and returns the view that shows the piece.
func cardTop(fl *flow, w repeat.Work, f figures, height geom.Length) export.View {
	size := geom.Point{X: 80 * geom.Millimetre, Y: height}
	const swatch, gap = 9 * geom.Millimetre, 2 * geom.Millimetre
	var view export.View
	fl.figure(size.Y+geom.MM(5), func(l *leaf, room geom.Box) {
		piece := geom.BoxOf(room.Min, room.Min.Add(size))
		view = trueSize(w, piece, gap, swatch)
		l.text(captions, captionStyle, geom.Point{X: piece.Min.X, Y: piece.Max.Y + geom.MM(4.4)}, export.Start, f.say("true size, as finished"))
		cardFigures(l, geom.BoxOf(geom.Point{X: piece.Max.X + gap + swatch + geom.MM(9), Y: room.Min.Y}, room.Max), w, f)
	})
	return view
}

// trueSize returns a view of the finished cloth at true scale: the dye, and on it
// what the paste kept white, from the middle of the field on; beside it, gap
// apart, the dye alone.
func trueSize(w repeat.Work, at geom.Box, gap, swatch geom.Length) export.View {
	s := w.Sheet
	from := geom.Point{X: s.Spec.Field.Left + s.Spec.Field.Width/2 - at.Width()/2, Y: 0}
	window := geom.BoxOf(from, from.Add(geom.Point{X: at.Width(), Y: at.Height()}))
	d := w.Order.Cloth.Dye
	colour := export.Colour{R: d.R, G: d.G, B: d.B}
	white := export.Colour{R: undyed.R, G: undyed.G, B: undyed.B}
	drawn := geom.BoxOf(geom.Point{}, geom.Point{X: at.Width(), Y: at.Height()})
	ground := export.Layer{Name: "dye", Pen: export.Pen{Colour: colour, Filled: true}}
	plain := geom.BoxOf(geom.Point{X: at.Width() + gap}, geom.Point{X: at.Width() + gap + swatch, Y: at.Height()})
	ground.Outlines = []geom.Outline{boxOutline(drawn)}
	cover := export.Layer{Name: "gap", Pen: export.Pen{Colour: export.White, Filled: true}}
	cover.Outlines = []geom.Outline{boxOutline(geom.BoxOf(geom.Point{X: at.Width()}, geom.Point{X: plain.Max.X, Y: at.Height()}))}
	alone := export.Layer{Name: "swatch", Pen: ground.Pen, Outlines: []geom.Outline{boxOutline(plain)}}
	kept := export.Layer{Name: "undyed", Pen: export.Pen{Colour: white, Filled: true}}
	for _, step := range []geom.Length{-s.Spec.Step, 0, s.Spec.Step} {
		for _, c := range s.Printed {
			move := geom.Point{Y: step}
			if !c.Shape.Bounds().Moved(move).Meets(window) {
				continue
			}
			shape := c.Shape.Moved(move.Sub(from))
			if shape.Round() {
				kept.Discs = append(kept.Discs, shape.Disc)
			} else {
				kept.Outlines = append(kept.Outlines, shape.Outline)
			}
		}
	}
	return export.View{
		Of:     &export.Drawing{Title: "cloth", Width: plain.Max.X, Height: at.Height(), Layers: []export.Layer{ground, kept, cover, alone}},
		Window: drawn.Union(plain), At: at.Min,
	}
}

func boxOutline(b geom.Box) geom.Outline {
	c := geom.Contour{Start: b.Min}
	for _, p := range corners(b)[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: p})
	}
	return geom.Outline{c}
}

// cardFigures sets the step large, and below it the counts in two columns.
func cardFigures(l *leaf, room geom.Box, w repeat.Work, f figures) {
	run := w.Run
	at := room.Min
	at.Y += captionStyle.height
	l.text(captions, captionStyle, at, export.Start, f.say("step on the board"))
	big, st := fit(f.ruler(geom.MMUnit, 2).with(run.Step), style{geom.MM(6.4), true}, room.Width())
	at.Y += st.height + geom.MM(1.4)
	l.text(words, st, at, export.Start, big)
	small, st := fit("= "+f.ruler(geom.KaneSun, 4).with(run.Step), strongStyle, room.Width())
	at.Y += geom.MM(1.6) + st.height
	l.text(words, st, at, export.Start, small)
	at.Y += geom.MM(4.4)
	for i, e := range cardEntries(w, f) {
		const gap = 4 * geom.Millimetre
		column := (room.Width() - gap) / 2
		o := geom.Point{X: at.X + geom.Length(i%2)*(column+gap), Y: at.Y + geom.Length(i/2)*geom.MM(11.4) + captionStyle.height}
		text, st := fit(e[0], captionStyle, column)
		l.text(captions, st, o, export.Start, text)
		text, st = fit(e[1], strongStyle, column)
		l.text(words, st, o.Add(geom.Point{Y: strongStyle.height + geom.MM(1.4)}), export.Start, text)
	}
}

// cardEntries are what is counted and measured, each with what it is.
func cardEntries(w repeat.Work, f figures) [][2]string {
	run, d := w.Run, w.Order.Cloth.Dye
	placed := f.say("%d whole", len(run.Placements))
	if run.Partial.Printed > 0 {
		placed = f.say("%d whole, 1 in part", len(run.Placements))
	}
	entries := [][2]string{{f.say("placements"), placed}}
	if n := run.Count(); n != len(run.Placements) {
		entries = append(entries, [2]string{f.say("the stencil is laid"), f.say("%d times in all", n)})
	}
	return append(entries,
		[2]string{f.say("cloth across, along"), fmt.Sprintf("%+.1f %%, %+.1f %%", 100*run.Bolt.ChangeAcross, 100*run.Bolt.ChangeAlong)},
		[2]string{f.say("dye on a screen"), fmt.Sprintf("%d, %d, %d", d.R, d.G, d.B)})
}

// boardPoints says which placements fall where, and what else is laid.
func boardPoints(w repeat.Work, f figures) []string {
	run := w.Run
	var all []string
	if p := run.Partial; p.Printed > 0 {
		all = append(all, f.say("Placement %d is laid in part: %s are printed; cover %s of the sheet.", p.N+1, f.cloth.plain(p.Printed), f.cloth.plain(p.Masked)))
	}
	if run.Board.Sequence == cloth.EveryOther {
		all = append(all, f.say("Lay every other placement first, 1, 3, 5 …, and those between when the first are dry: the sheet never lies on wet paste."))
	}
	if run.Board.Cloths > 1 || run.Board.Layings > 1 {
		all = append(all, f.say("%d cloths, laid on the board in %d goes.", max(run.Board.Cloths, 1), max(run.Board.Layings, 1)))
	}
	if run.Bolt.Folded {
		all = append(all, f.say("Poured dye: fold the cloth back at every step; every other section comes out mirrored."))
	}
	if run.Bolt.Sides == cloth.BothSides {
		all = append(all, f.say("Both sides: turn the cloth over about its long axis and lay the back on the marks pricked through."))
		if r := w.Reverse; r != nil && r.NeedsTurning(w.Order.Limits.Misfit) {
			all = append(all, f.say("For the back, lay the sheet face down, each star on its own mark."))
		}
	}
	if w.Sheet.Second != nil {
		all = append(all, layingOrder(w, f)...)
	}
	return all
}

// layingPoints says how the stencil is laid true, and how the paper is kept.
func layingPoints(w repeat.Work, f figures) []string {
	run := w.Run
	d := run.Drift
	all := []string{f.say("The way: %s.", wayText(d.Way, f))}
	if len(run.Placements) > 1 && run.Register.Baseline > 0 {
		all = append(all, f.say("Each star within %s of its mark, as a standard deviation. Then the worst joint is expected to be off by %s, and the end walks %s across and %s along.",
			f.fine.with(run.Register.StarError), f.walk.with(d.WorstJoint), f.walk.with(d.EndX), f.walk.with(d.EndY)))
	}
	return append(all, wetPaper(w, f))
}

// wetPaper says what the sheet does in water and how it is kept.
func wetPaper(w repeat.Work, f figures) string {
	grown := w.Scale
	text := f.say("Wet the sheet through before the first placement and keep it damp.")
	if grown.PaperAcross != 0 || grown.PaperAlong != 0 {
		text = f.say("Wet the sheet through before the first placement and keep it damp: it grows by %.2f %% across and %.2f %% along, for which it is cut smaller.",
			100*grown.PaperAcross, 100*grown.PaperAlong)
	}
	if g := w.Run.Register.Growth; g != (cloth.Growth{}) {
		text = f.sentences([]string{text, f.say("Through the job its length goes from %.2f %% to %.2f %% over that.", 100*g.Start, 100*g.End)})
	}
	return text
}

// mostGains is how many remedies a card names.
const mostGains = 3

// gainTable lists what is worth doing first, with what it gains.
func gainTable(w repeat.Work, f figures) table {
	t := table{columns: []column{
		{f.say("worth doing first"), export.Start}, {f.head("worst joint becomes", f.walk), export.End}, {f.head("end of the bolt becomes", f.walk), export.End},
	}}
	gains := cloth.Gains(w.Run)
	for _, g := range gains[:min(len(gains), mostGains)] {
		t.rows = append(t.rows, []string{f.lang.Retell(g.Text()), f.walk.number(g.JointAfter), f.walk.number(g.EndAfter)})
	}
	return t
}

// dyerCautions are those of the dyer's work: no blades, no cutting.
func dyerCautions(f figures) []string {
	var all []string
	for i, c := range cautions(f) {
		if i != bladeCaution && i != tanninCaution {
			all = append(all, c)
		}
	}
	return all
}
