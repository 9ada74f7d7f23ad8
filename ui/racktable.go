package ui

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

var (
	kindWords = []worded{
		{string(bench.Awl), "awl"}, {string(bench.Punch), "punch"}, {string(bench.Knife), "knife"}, {string(bench.Pair), "pair of blades"},
	}
	conditionWords = []worded{{string(bench.Sharp), "sharp"}, {string(bench.Worn), "worn"}, {string(bench.Broken), "broken"}}
)

// A rackColumn is one of the table.
type rackColumn struct {
	name  string
	by    bench.By
	width float32
	text  func(t bench.Tool, u geom.Unit) string
}

var rackColumns = []rackColumn{
	{"kind", bench.ByKind, 150, func(t bench.Tool, _ geom.Unit) string { return say(wordsFor(kindWords, string(t.Kind))) }},
	{"number", bench.ByNumber, 150, func(t bench.Tool, _ geom.Unit) string { return t.Number }},
	{"size", bench.BySize, 150, toolSize},
	{"condition", bench.ByCondition, 120, func(t bench.Tool, _ geom.Unit) string { return say(wordsFor(conditionWords, string(t.Condition))) }},
	{"note", bench.ByNote, 230, func(t bench.Tool, _ geom.Unit) string { return t.Note }},
}

// toolSize is a tool's size, of a punch both sides of its outline.
func toolSize(t bench.Tool, u geom.Unit) string {
	if t.Kind != bench.Punch {
		return u.Format(t.Size, 3)
	}
	b := t.Outline.Bounds()
	return u.Number(b.Width(), 2) + " × " + u.Format(b.Height(), 2)
}

// list is the table of the tools; a click on a heading sorts by it.
func (e *rackEditor) list() fyne.CanvasObject {
	e.table = widget.NewTable(
		func() (int, int) { return len(e.order), len(rackColumns) },
		func() fyne.CanvasObject {
			l := widget.NewLabel("")
			l.Truncation = fyne.TextTruncateEllipsis
			return l
		},
		func(at widget.TableCellID, o fyne.CanvasObject) {
			if at.Row < len(e.order) {
				o.(*widget.Label).SetText(rackColumns[at.Col].text(e.rack().Tools[e.order[at.Row]], e.w.unit()))
			}
		})
	e.table.ShowHeaderRow = true
	e.table.CreateHeader = func() fyne.CanvasObject { return small("", nil) }
	e.table.UpdateHeader = func(at widget.TableCellID, o fyne.CanvasObject) {
		b, c := o.(*widget.Button), rackColumns[max(at.Col, 0)]
		text := say(c.name)
		if c.by == e.by {
			text += " ▾"
		}
		b.OnTapped = func() { e.sortBy(c.by) }
		b.SetText(text)
	}
	for i, c := range rackColumns {
		e.table.SetColumnWidth(i, c.width)
	}
	e.table.OnSelected = func(at widget.TableCellID) {
		if at.Row >= 0 && at.Row < len(e.order) {
			e.chosen = e.order[at.Row]
			e.write(e.rack().Tools[e.chosen])
		}
	}
	return e.table
}

func (e *rackEditor) sortBy(by bench.By) {
	e.by, e.chosen = by, none
	e.table.UnselectAll()
	e.show()
}

// fields are the tool that is added or changed.
func (e *rackEditor) fields() fyne.CanvasObject {
	e.kind, e.condition = newSelect(allSaid(allWords(kindWords)), nil), newSelect(allSaid(allWords(conditionWords)), nil)
	e.number, e.size, e.note, e.outline = widget.NewEntry(), widget.NewEntry(), widget.NewEntry(), widget.NewEntry()
	e.size.SetPlaceHolder("0.45 mm")
	e.outline.SetPlaceHolder("M0 0H2V1H0Z")
	e.kind.OnChanged = func(words string) {
		if bench.Kind(valueSaid(kindWords, words)) == bench.Punch {
			e.size.Disable()
			e.outline.Enable()
		} else {
			e.size.Enable()
			e.outline.Disable()
		}
	}
	named := func(name string, o fyne.CanvasObject) fyne.CanvasObject {
		l := widget.NewLabel(say(name))
		l.Importance = widget.LowImportance
		return container.NewVBox(l, o)
	}
	return container.NewVBox(
		container.NewGridWithColumns(4, named("kind", e.kind), named("number", e.number), named("size", e.size), named("condition", e.condition)),
		container.NewGridWithColumns(2, named("note", e.note), named("a punch's outline in mm", e.outline)),
		container.NewHBox(widget.NewButton(say("Add as a New Tool"), e.add), widget.NewButton(say("Change the Chosen"), e.change),
			widget.NewButton(say("Delete the Chosen"), e.remove)))
}

// A limitRow is the cutter's own limits of one method.
type limitRow struct {
	method          bench.Method
	hole, web, pile *entry
}

// limitFields are what the cutter trusts each method with; what is left empty is as
// usual.
func (e *rackEditor) limitFields() fyne.CanvasObject {
	cells := []fyne.CanvasObject{}
	for _, name := range []string{"method", "smallest hole", "finest web", "sheets in the pile"} {
		cells = append(cells, head(name))
	}
	for _, m := range bench.Methods() {
		row := &limitRow{method: m}
		give := func(string) { e.limit(row) }
		row.hole, row.web, row.pile = newEntry(give), newEntry(give), newEntry(give)
		e.limits = append(e.limits, row)
		cells = append(cells, widget.NewLabel(say(string(m))), row.hole, row.web, row.pile)
	}
	words := quietLabel()
	words.SetText(say("What stands in grey is usual; write over it what is true for you."))
	return container.NewVBox(container.NewGridWithColumns(4, cells...), words)
}

// show shows the limits of a rack.
func (l *limitRow) show(r bench.Rack) {
	usual := bench.Rack{}.Limit(l.method)
	l.hole.SetPlaceHolder(geom.MMUnit.Format(usual.Hole, 3))
	l.web.SetPlaceHolder(geom.MMUnit.Format(usual.Web, 3))
	l.pile.SetPlaceHolder(strconv.Itoa(usual.Pile))
	length := func(own bool, l geom.Length) string {
		if !own {
			return ""
		}
		return geom.MMUnit.Format(l, 3)
	}
	now := r.Limit(l.method)
	l.hole.put(length(r.Owns(l.method, bench.HoleSize), now.Hole))
	l.web.put(length(r.Owns(l.method, bench.WebWidth), now.Web))
	pile := ""
	if r.Owns(l.method, bench.PileSize) {
		pile = strconv.Itoa(now.Pile)
	}
	l.pile.put(pile)
}

// limit keeps the limits of a row.
func (e *rackEditor) limit(row *limitRow) {
	done := e.do("Change a Limit", func(r bench.Rack) (bench.Rack, error) {
		l := bench.Limit{Method: row.method}
		for _, f := range []struct {
			text string
			to   *geom.Length
		}{{row.hole.Text, &l.Hole}, {row.web.Text, &l.Web}} {
			if f.text == "" {
				continue
			}
			v, err := geom.ParseLength(f.text, geom.MMUnit)
			if err != nil {
				return r, err
			}
			*f.to = v
		}
		if row.pile.Text != "" {
			n, err := strconv.Atoi(row.pile.Text)
			if err != nil {
				return r, err
			}
			l.Pile = n
		}
		return r.WithLimit(l)
	})
	if !done {
		row.show(e.rack())
	}
}
