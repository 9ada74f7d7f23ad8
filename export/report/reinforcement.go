package report

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// Reinforcement returns the sheets for what holds the paper besides itself, at true
// scale over the cut field: where threads lie, how far gauze reaches, which ties may
// be cut away when it is on; of a split for each sheet that asks for it. An error
// says that the page or the lap can't be used, or that there is nothing to reinforce.
func Reinforcement(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	b := export.Book{Title: f.title(w), Subject: f.say("Reinforcement")}
	for _, s := range opt.with(w).sheets(w) {
		r := reinforcingOf(w, s)
		if r.gauze.Empty() && r.way == "" {
			continue
		}
		d := reinforcementDrawing(w, s, r, opt, f)
		pages, err := pagesFor(size, r.area(s, lapOf(w)), lapOf(w))
		if err != nil {
			return export.Book{}, err
		}
		m := marking{
			f: f, title: f.title(w), kind: s.kind(f.say("Reinforcement"), f), facts: stepFacts(w, f), of: &d,
			field: patternField(s.Sheet), pages: pages, fixed: opt.correction(w),
		}
		steps := r.steps(f)
		if !r.listed() { // a page of cautions alone would hang nowhere
			steps = append(steps, reinforcingCautions(f)...)
		}
		m.first = func(l *leaf, room geom.Box) { l.steps(room.Min, room.Width(), steps) }
		all := m.book().Pages
		b.Pages = append(append(append(b.Pages, all[0]), r.tables(m)...), all[1:]...)
	}
	if len(b.Pages) == 0 {
		return export.Book{}, fmt.Errorf("the paper of this order holds by itself; there is nothing to reinforce")
	}
	return opt.correction(w).on(b), nil
}

// area is what the pages show: field, threads and gauze, with room for the threads'
// numbers and outside them for the crosses.
func (r reinforcing) area(s setSheet, lap geom.Length) geom.Box {
	cross := lap/2 + crossArm + geom.Millimetre
	a := s.cutField().Grown(threadBeyond).Union(r.gauze)
	a.Min = a.Min.Sub(geom.PtMM(12, 8))
	return a.Grown(cross)
}

// The pens of the reinforcement sheet.
var (
	openPen   = export.Pen{Colour: export.Pale, Filled: true}
	threadPen = export.Pen{Colour: export.Black, Stroke: 250 * geom.Micrometre}
	gauzePen  = export.Pen{Colour: export.Mark, Stroke: 300 * geom.Micrometre, Dash: []geom.Length{4 * geom.Millimetre, 2 * geom.Millimetre}}
	tiePen    = export.Pen{Colour: export.Mark, Filled: true}
)

func reinforcementDrawing(w repeat.Work, s setSheet, r reinforcing, opt Options, f figures) export.Drawing {
	d := sheetDrawing(w, s, cutGroups(s, opt.with(w).benchOf(w, s)), export.Layer{Name: "words", Pen: export.Pen{Colour: export.Black}}, f)
	d = look{marks: document.FilledMarks}.of(d)
	for i, l := range d.Layers {
		if len(l.Name) > 4 && l.Name[:4] == "cut-" {
			d.Layers[i].Pen = openPen
		}
	}
	field := patternField(s.Sheet)
	threads, names := export.Layer{Name: "threads", Pen: threadPen}, export.Layer{Name: "numbers", Pen: export.Pen{Colour: export.Black}}
	from, to := field.Min.Sub(geom.Point{X: threadBeyond, Y: threadBeyond}), field.Max.Add(geom.Point{X: threadBeyond, Y: threadBeyond})
	name := func(at geom.Point, anchor export.Anchor, i int) {
		names.Texts = append(names.Texts, export.Text{At: at, Height: captionStyle.height, Text: fmt.Sprint(i + 1), Anchor: anchor})
	}
	seldom := seldomness(r.level)
	for i, y := range r.level {
		threads.Lines = append(threads.Lines, export.Line{Points: []geom.Point{{X: from.X, Y: y}, {X: to.X, Y: y}}})
		if i%seldom == 0 {
			name(geom.Point{X: from.X - geom.MM(2), Y: y + geom.MM(1)}, export.End, i)
		}
	}
	seldom = seldomness(r.upright)
	for i, x := range r.upright {
		threads.Lines = append(threads.Lines, export.Line{Points: []geom.Point{{X: x, Y: from.Y}, {X: x, Y: to.Y}}})
		if i%seldom == 0 {
			name(geom.Point{X: x, Y: from.Y - geom.MM(2)}, export.Middle, i)
		}
	}
	gauze := export.Layer{Name: "gauze", Pen: gauzePen}
	if !r.gauze.Empty() {
		gauze.Lines = []export.Line{{Points: corners(r.gauze), Closed: true}}
	}
	held := export.Layer{Name: "ties", Pen: tiePen}
	for _, c := range r.ties {
		held.Outlines = append(held.Outlines, ringOutline(c.strip))
	}
	for _, l := range []export.Layer{held, threads, gauze, names} {
		if len(l.Outlines)+len(l.Lines)+len(l.Texts) > 0 {
			d.Layers = append(d.Layers, l)
		}
	}
	return d
}

// seldomness is which threads are numbered so that numbers stand clear of each other.
func seldomness(at []geom.Length) int {
	const apart = 6 * geom.Millimetre
	if len(at) < 2 {
		return 1
	}
	pitch := max(at[1]-at[0], 1)
	return int((apart + pitch - 1) / pitch)
}

func ringOutline(ring []geom.Point) geom.Outline {
	c := geom.Contour{Start: ring[0]}
	for _, p := range ring[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: p})
	}
	return geom.Outline{c}
}

// steps says what is done, in its order. That threads are laid between two leaves,
// gauze stuck on with lacquer and ties cut away afterwards is named by museum texts
// on the trade; how far apart and how far beyond the field is ours.
func (r reinforcing) steps(f figures) []string {
	all := []string{f.say("Print at 100 %% and measure the square: %s.", unbroken(f.checkText()))}
	if n := len(r.level) + len(r.upright); n > 0 {
		all = append(all, f.say("Threads: %d, as numbered, at most %s apart along the paper they hold. Lay them taut between the two leaves before these are joined again, every cut upon its own.", n, f.sheet.plain(r.every)))
	}
	if r.way == stencil.ByTies {
		all = append(all, f.say("A tie at the middle of each loose ribbon is enough: place it in the order."))
	}
	if !r.gauze.Empty() {
		all = append(all, f.say("Gauze: %s × %s, to the dashed line, stuck on after the cutting. Thin coats, so that no mesh is closed; prick the stars free.",
			f.sheet.plain(r.gauze.Width()), f.sheet.plain(r.gauze.Height())))
	}
	if len(r.ties) > 0 {
		all = append(all, f.say("Filled strips are ties. Those that must not show are cut away only when the gauze is on and dry; the others stay."))
	}
	return append(all, f.say("How far apart and how far beyond the field is our recommendation, reckoned from dry strips of paper; a trial piece knows better."))
}

// listed reports whether threads or ties have places to list.
func (r reinforcing) listed() bool { return len(r.level)+len(r.upright)+len(r.ties) > 0 }

// reinforcingCautions are those of blades, lacquer, solvent and tannin.
func reinforcingCautions(f figures) []string { return cautions(f)[:tanninCaution+1] }

// tables lists threads and ties with their places, and the cautions; nothing where
// neither has any.
func (r reinforcing) tables(m marking) []export.Page {
	if !r.listed() {
		return nil
	}
	f := m.f
	fl := newFlow(f, m.title, m.kind, m.facts, m.pages.page)
	if len(r.level) > 0 {
		fl.heading(f.say("Threads across, from the paper's top edge"))
		fl.table(threadTable(r.level, f))
	}
	if len(r.upright) > 0 {
		fl.heading(f.say("Threads along, from the paper's left edge"))
		fl.table(threadTable(r.upright, f))
	}
	if len(r.ties) > 0 {
		fl.heading(f.say("Ties that may go when the gauze is on"))
		t, left := tieTable(r.ties, f)
		fl.table(t)
		if left > 0 {
			fl.paragraph(f.say("And %d more; all are drawn.", left))
		}
	}
	fl.heading(f.say("Take care"))
	for _, c := range reinforcingCautions(f) {
		fl.point(c)
	}
	return fl.pages()
}

// threadTable sets numbers and places in four pairs of columns.
func threadTable(at []geom.Length, f figures) table {
	const pairs = 4
	rows := (len(at) + pairs - 1) / pairs
	t := table{rows: make([][]string, rows)}
	for p := range min(pairs, (len(at)+rows-1)/rows) {
		t.columns = append(t.columns, column{f.say("thread"), export.End}, column{f.head("place", f.sheet), export.End})
		for i := range rows {
			n, place := "", ""
			if k := p*rows + i; k < len(at) {
				n, place = fmt.Sprint(k+1), f.sheet.number(at[k])
			}
			t.rows[i] = append(t.rows[i], n, place)
		}
	}
	return t
}

// mostTies is how many ties of a unit are listed.
const mostTies = 12

// tieTable lists the ties of the unit, each with its topmost copy on the sheet, and
// says how many are left out.
func tieTable(copies []tieCopy, f figures) (t table, left int) {
	t.columns = []column{
		{f.say("tie"), export.End}, {f.head("first, across", f.sheet), export.End}, {f.head("first, along", f.sheet), export.End},
		{f.head("wide", f.fine), export.End}, {f.say("copies"), export.End},
	}
	first, count := map[stencil.Tie]geom.Point{}, map[stencil.Tie]int{}
	var kinds []stencil.Tie
	for _, c := range copies {
		at := geom.BoxOf(c.strip...).Centre()
		old, seen := first[c.tie]
		if !seen {
			kinds = append(kinds, c.tie)
		}
		if !seen || cmp.Or(cmp.Compare(at.Y, old.Y), cmp.Compare(at.X, old.X)) < 0 {
			first[c.tie] = at
		}
		count[c.tie]++
	}
	slices.SortStableFunc(kinds, func(a, b stencil.Tie) int {
		return cmp.Or(cmp.Compare(first[a].Y, first[b].Y), cmp.Compare(first[a].X, first[b].X))
	})
	for i, k := range kinds[:min(len(kinds), mostTies)] {
		at := first[k]
		t.rows = append(t.rows, []string{fmt.Sprint(i + 1), f.sheet.number(at.X), f.sheet.number(at.Y), f.fine.number(k.Width), fmt.Sprint(count[k])})
	}
	return t, len(kinds) - len(t.rows)
}
