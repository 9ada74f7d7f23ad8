package report

import (
	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// Transfer returns the marking sheets for the transfer of sheet number n of the
// set, counted from 1: the cut drawing at true scale on as few pages of the asked
// size as can be, with a first page that maps them. An error says that the page
// or the lap can't be used, or that there is no such sheet.
func Transfer(w repeat.Work, n int, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	opt = opt.with(w)
	sheet, err := opt.sheetNumber(w, n)
	if err != nil {
		return export.Book{}, err
	}
	groups := cutGroups(sheet, opt.benchOf(w, sheet))
	look := opt.look(w, sheet)
	d := look.of(withTies(sheetDrawing(w, sheet, groups, starWords(sheet), f), w, sheet))
	pages, err := transferPages(size, sheet, lapOf(w), look)
	if err != nil {
		return export.Book{}, err
	}
	m := marking{
		f: f, title: f.title(w), kind: look.kind(sheet.kind(f.say("Transfer"), f), f), facts: stepFacts(w, f),
		of: &d, field: look.box(patternField(sheet.Sheet)), pages: pages, fixed: opt.correction(w),
	}
	m.first = func(l *leaf, room geom.Box) {
		l.steps(room.Min, room.Width(), transferSteps(w, sheet, m.pages, look, f))
	}
	return m.book(), nil
}

// transferPages shows the whole paper where that takes no more pages than what
// is cut; otherwise what is cut, with the names of the stars and outside them the
// crosses.
func transferPages(size export.PageSize, s setSheet, lap geom.Length, look look) (paging, error) {
	area := namedArea(s, lap/2+crossArm+geom.Millimetre)
	cut, err := pagesFor(size, look.box(area), lap)
	if err != nil {
		return paging{}, err
	}
	paper, err := pagesFor(size, look.box(area.Union(s.Paper.Grown(labelOff))), lap)
	if err != nil || paper.count() > cut.count() {
		return cut, nil
	}
	return paper, nil
}

// namedArea returns the box of what is cut and of the stars' names, with room
// for a cross beside it, and above and below it where a name stands there.
func namedArea(s setSheet, cross geom.Length) geom.Box {
	field := s.cutField()
	names := field
	for _, label := range starLabels(s, asDrawn, labelOff, captionStyle.height) {
		names = names.Union(textBox(label))
	}
	across, along := geom.Point{X: cross}, geom.Point{Y: labelOff}
	if names.Height() > field.Height()+labelOff {
		along.Y = cross
	}
	return geom.BoxOf(names.Min.Sub(across).Sub(along), names.Max.Add(across).Add(along))
}

// stepFacts is the line under a title: the step as it is cut, in both rulers, so
// that it can be measured with either.
func stepFacts(w repeat.Work, f figures) string {
	return f.say("step as cut %s · cut size, before the paper is soaked", f.both(cutStep(w)))
}

// cutStep is the step as it is cut into dry paper.
func cutStep(w repeat.Work) geom.Length {
	_, along := w.Scale.Cut()
	return w.Sheet.Spec.Step.Times(along)
}

func transferSteps(w repeat.Work, s setSheet, p paging, look look, f figures) []string {
	steps := []string{f.say("Print the page at 100 %%, then measure the square: %s on both sides.", unbroken(f.checkText()))}
	if p.count() > 1 {
		steps = []string{
			f.say("Print pages 1 to %d at 100 %%, then measure the square: %s on both sides.", p.count(), unbroken(f.checkText())),
			f.say("Lay cross on cross: letters and numbers in the margins name them. Trim or fold one margin of each pair and paste."),
		}
	}
	if look.marks == document.CentreMarks {
		steps = append(steps, f.say("A cross is the middle of a round hole: set the tool on it. Other holes are outlined."))
	}
	stars := f.both(cutStep(w))
	if look.mirrored {
		steps = append(steps, f.say("Mirrored: mark the back of the paper by it, the side that lies on the cloth. L1, L2 … stand at the top and count from the right, T1, T2 … one step below: %s.", stars))
	} else {
		steps = append(steps, f.say("The printing side is up. Leading stars L1, L2 … stand at the top, trailing stars T1, T2 … one step below: %s.", stars))
	}
	steps = append(steps, f.say("The dashed line is the joint: a guide, not a cut."))
	if text := matchStep(s, f); text != "" {
		steps = append(steps, text)
	}
	if len(tieStrips(w, s)) > 0 {
		steps = append(steps, tieStep(s, f))
	}
	return append(steps,
		f.say("Bind the pile first, cut the stars, then the field from the middle outwards."),
		f.say("Blades slip: cut away from the holding hand, and keep the pile flat. Follow the rules of your workshop and have a trained person show you."),
	)
}

// matchStep says what the match stars are for; "" for a sheet without.
func matchStep(s setSheet, f figures) string {
	switch {
	case s.of < 2:
		return ""
	case s.number == 2:
		return f.say("This is the second sheet: M must lie on the first sheet's M. M2 is its own star, by which it is told apart.")
	}
	return f.say("This is the first sheet: M marks where the second is laid. M1 is its own star, by which it is told apart.")
}

// tieStep says what the thin outlines on the drawing are. That ties may be cut
// once the gauze is on and dry is named by a museum text on the trade.
func tieStep(s setSheet, f figures) string {
	if s.of > 1 {
		return f.say("Thin outlines are ties: paper that stays. The other sheet opens there.")
	}
	return f.say("Thin outlines are ties: paper that stays. One that should not show is cut away only when the gauze is on and dry.")
}

// TransferWhole returns the whole paper of sheet number n of the set on one page,
// for a wide printer, with a check scale along both edges.
func TransferWhole(w repeat.Work, n int, opt Options) (export.Book, error) {
	opt = opt.with(w)
	sheet, err := opt.sheetNumber(w, n)
	if err != nil {
		return export.Book{}, err
	}
	f := opt.figures()
	look := opt.look(w, sheet)
	d := look.of(withTies(cutDrawing(w, sheet, opt), w, sheet))
	paper := look.box(sheet.Paper.Union(sheet.cutField().Grown(2 * labelOff)).Grown(geom.Millimetre))
	return wholePage(marking{f: f, title: f.title(w), kind: look.kind(sheet.kind(f.say("Transfer, the whole field"), f), f), facts: stepFacts(w, f), of: &d}, paper), nil
}

// wholePage shows an area of a drawing on a page of its own size; the page is
// never so small that the check scales don't fit.
func wholePage(m marking, area geom.Box) export.Book {
	size := geom.Point{
		X: max(area.Width(), checkLength+geom.MM(60)) + bandLeft + bandRight,
		Y: max(area.Height(), checkLength) + bandTop + bandBottom,
	}
	l := newLeaf(size.X, size.Y)
	m.head(l, m.f.say("%d of %d", 1, 1), m.f.say("whole field"))
	at := geom.Point{X: bandLeft, Y: bandTop}
	checkCorner(l, m.f, m.fixed)
	feedArrow(l, m.f, geom.Point{X: edge + geom.MM(2), Y: bandTop + geom.MM(3)})
	return export.Book{Title: m.title, Subject: m.kind, Pages: []export.Page{{
		Drawing: l.drawing(m.title),
		Views:   []export.View{{Of: m.of, Window: area, At: at}},
	}}}
}
