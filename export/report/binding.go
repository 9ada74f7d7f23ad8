package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// Binding returns the marking sheets for the binding of the pile: paper edges,
// cut field, stars and string holes at true scale, with a first page that says
// how many sheets are bound and which of them is not for sale. They serve both
// sheets of a split.
func Binding(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	sheet := opt.together(w)
	holes := bind(sheet)
	d := bindingDrawing(w, sheet, holes, f)
	pages, err := pagesFor(size, sheet.Paper.Grown(3*geom.Millimetre), lapOf(w))
	if err != nil {
		return export.Book{}, err
	}
	m := marking{f: f, title: f.title(w), kind: f.say("Binding"), facts: pileFacts(w, f), of: &d, field: patternField(sheet.Sheet), pages: pages, fixed: opt.correction(w)}
	m.first = func(l *leaf, room geom.Box) { bindingWords(l, room, w, holes, f) }
	b := m.book()
	b.Pages = append(b.Pages[:1], append([]export.Page{{Drawing: placesPage(m, holes, f)}}, b.Pages[1:]...)...)
	return m.fixed.on(b), nil
}

func pileFacts(w repeat.Work, f figures) string {
	p := w.Order.Sheet.Paper
	return f.say("pile of %s, %s thick, paper %s × %s", f.count(p.Pile, "sheet"),
		f.fine.with(p.Thickness*geom.Length(p.Pile)), f.sheet.plain(p.Width), f.sheet.plain(p.Height))
}

// saleable is how many sheets of a pile can be sold: the bottom one is cut
// incompletely (a museum text on the trade calls it sokogata).
func saleable(pile int) int { return max(0, pile-1) }

// bindingDrawing shows the paper, the outline of what is cut, and the holes.
func bindingDrawing(w repeat.Work, s setSheet, b binding, f figures) export.Drawing {
	l := newLeaf(s.Paper.Width(), s.Paper.Height())
	field := patternField(s.Sheet)
	l.area(wash, corners(field)...)
	c := field.Centre()
	l.text(captions, bodyStyle, c, export.Middle, f.say("cut field"))
	for _, star := range s.marks() {
		l.disc(accentArea, star.At, star.Diameter)
		l.line(accentLine, star.At.Add(geom.PtMM(-3, 0)), star.At.Add(geom.PtMM(3, 0)))
		l.line(accentLine, star.At.Add(geom.PtMM(0, -3)), star.At.Add(geom.PtMM(0, 3)))
	}
	l.texts(accentWord, starLabels(s, asDrawn, labelOff, captionStyle.height))
	for i, p := range b.places {
		l.disc(hole, p.at, stringHole)
		l.line(hairline, p.at.Add(geom.PtMM(-4, 0)), p.at.Add(geom.PtMM(4, 0)))
		l.line(hairline, p.at.Add(geom.PtMM(0, -4)), p.at.Add(geom.PtMM(0, 4)))
		l.text(words, strongStyle, p.at.Add(geom.PtMM(2.6, -2.2)), export.Start, fmt.Sprint(i+1))
	}
	d := l.drawing(f.title(w))
	d.Layers = append([]export.Layer{paperEdge(s.Sheet)}, d.Layers...)
	d.Layers = append(d.Layers, jointLines(s.Sheet))
	return d
}

func bindingWords(l *leaf, room geom.Box, w repeat.Work, b binding, f figures) {
	pile := w.Order.Sheet.Paper.Pile
	y := pileSketch(l, room, pile, f)
	l.steps(geom.Point{X: room.Min.X, Y: y + geom.MM(4)}, room.Width(), bindingSteps(pile, len(w.Sheet.Set()), b, f))
}

func bindingSteps(pile, set int, b binding, f figures) []string {
	steps := []string{
		f.say("Print at 100 %% and measure the square: %s.", unbroken(f.checkText())),
		f.say("Square the %s, lay the marking sheet on top and prick the %s.", f.count(pile, "sheet"), f.count(len(b.places), "string hole")),
		f.say("Thread twisted-paper string (koyori) through each pair and tie it flat, on all four sides."),
		f.say("Mark the bottom sheet: it is cut incompletely and is not for sale."),
	}
	if set > 1 {
		steps = append(steps, f.say("Bind a pile for each of the %s of the set, all by this marking: the holes keep clear of the cuts of every one.", f.count(set, "sheet")))
	}
	if len(b.bare) > 0 {
		steps = append(steps, f.say("No room for a string on the %s side: clamp it, or take larger paper.", f.sides(b.bare)))
	}
	return steps
}

func (f figures) sides(bare []side) string {
	var names []string
	for _, s := range bare {
		names = append(names, f.say(string(s)))
	}
	return f.lang.Join(names)
}

// pileSketch draws the pile from its edge, the bottom sheet in the accent, and
// returns where it ends. More sheets than can be drawn apart are drawn as 12.
func pileSketch(l *leaf, room geom.Box, pile int, f figures) geom.Length {
	shown := min(max(pile, 1), 12)
	width := min(room.Width()*2/5, geom.MM(46))
	y := room.Min.Y + geom.MM(2)
	for i := range shown {
		p := rule
		if i == shown-1 {
			p = accentLine
		}
		l.line(p, geom.Point{X: room.Min.X, Y: y}, geom.Point{X: room.Min.X + width, Y: y})
		y += geom.MM(1.5)
	}
	y -= geom.MM(1.5)
	x, rest := room.Min.X+width+geom.MM(5), room.Width()-width-geom.MM(5)
	text, s := fit(f.say("%s for sale", f.count(saleable(pile), "sheet")), strongStyle, rest)
	mid := (room.Min.Y + geom.MM(2) + y) / 2
	l.text(words, s, geom.Point{X: x, Y: mid - geom.MM(1)}, export.Start, text)
	text, s = fit(f.say("bottom sheet: waste"), bodyStyle, rest)
	l.text(accentWord, s, geom.Point{X: x, Y: max(y+geom.MM(1), mid+geom.MM(4))}, export.Start, text)
	return y + geom.MM(5)
}

// placesPage lists the holes with their places from the paper's corner.
func placesPage(m marking, b binding, f figures) export.Drawing {
	fl := newFlow(f, m.title, f.say("Binding"), m.facts, m.pages.page)
	fl.heading(f.say("String holes"))
	fl.paragraph(f.say("Measured from the paper's top left corner, printing side up, to the middle of the hole. "+
		"Holes are %s wide. Where the trade puts them is not written down; these places are our recommendation: in the margin, at least "+
		"%s from the nearest cut and off the star line.", f.fine.plain(stringHole), f.sheet.plain(stringClear)))
	t := table{columns: []column{
		{f.say("hole"), export.Start}, {f.say("side"), export.Start},
		{f.head("across", f.sheet), export.End}, {f.head("along", f.sheet), export.End},
		{f.head("nearest cut", f.sheet), export.End},
	}}
	for i, p := range b.places {
		t.rows = append(t.rows, []string{
			fmt.Sprint(i + 1), f.say(string(p.side)), f.sheet.number(p.at.X), f.sheet.number(p.at.Y), f.sheet.number(p.clear),
		})
	}
	fl.table(t)
	if len(b.bare) > 0 {
		fl.paragraph(f.say("No room for a string on the %s side: the margin is too narrow. Clamp the pile there, or take larger paper.", f.sides(b.bare)))
	}
	return fl.pages()[0].Drawing
}
