package ui

import (
	"context"
	"math"
	"reflect"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A groundBench is where a traditional ground is chosen, set and laid. What is
// set here changes nothing until it is laid.
type groundBench struct {
	w      *Window
	recipe pattern.Recipe // on the bench
	shown  pattern.Recipe // of the order that was shown last
	unit   geom.Unit      // that the fields are written in
	width  *entry         // a second repeat, across; "" for none
	names  *widget.Select
	about  *widget.Label
	rows   *fyne.Container
	fields []*entry // of the rows
	grades *widget.Select
	fine   []pattern.Grade // those in the list
	from   *widget.Label   // what the order's unit was made from
}

func newGroundBench(s *draft) *groundBench {
	g := &groundBench{w: s.w, recipe: pattern.Grounds()[0].Recipe(), unit: geom.MMUnit}
	f := s.form
	f.heading("Ground")
	var titles []string
	for _, ground := range pattern.Grounds() {
		titles = append(titles, groundTitle(ground))
	}
	g.names = newSelect(titles, nil)
	g.about, g.from = quietLabel(), quietLabel()
	g.rows = container.New(layout.NewCustomPaddedVBoxLayout(3))
	g.grades = newSelect(nil, nil)
	g.width = newEntry(g.setWidth)
	g.width.SetPlaceHolder(say("as it comes"))
	f.add(g.names)
	f.add(g.about)
	f.add(g.rows)
	f.row("Repeats across in", g.width)
	f.button("From Seam to Seam", func() {
		g.width.SetText(g.unit.Format(g.w.Order().SeamWidth(), 4))
		g.width.hand()
	})
	f.button("Lay This Ground", g.lay)
	f.add(g.from)
	g.show()
	return g
}

func quietLabel() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping, l.Importance = fyne.TextWrapWord, widget.LowImportance
	return l
}

// groundTitle is a ground as it stands in the list.
func groundTitle(g pattern.Ground) string { return say(g.Name) + " · " + say(g.Trade) }

// refresh shows the order's own recipe where it has another one than before.
func (g *groundBench) refresh(o document.Order) {
	if !reflect.DeepEqual(o.Ground, g.shown) || g.unit != g.w.unit() {
		g.shown, g.unit = o.Ground, g.w.unit()
		if o.Ground.Ground != "" {
			g.recipe = o.Ground
		}
		g.show()
	}
	g.tell(o)
}

// tell says what the order's unit was made from.
func (g *groundBench) tell(o document.Order) {
	text := say("The unit is drawn by hand. Laying a ground takes its place.")
	if ground, ok := pattern.GroundNamed(o.Ground.Ground); ok {
		text = say("The unit was laid as %s.", groundTitle(ground))
		if l, err := o.Ground.Laying(o.Sheet.Step); err == nil && l.Lattice == o.Unit.Lattice {
			text += " " + layingWords(l, o.Ground)
		}
		if !reflect.DeepEqual(o.Ground, g.recipe) {
			text += " " + say("What is set above is not laid yet.")
		}
	}
	g.from.SetText(text)
}

// show makes the rows of the ground on the bench.
func (g *groundBench) show() {
	ground, _ := pattern.GroundNamed(g.recipe.Ground)
	g.names.OnChanged = nil
	g.names.SetSelected(groundTitle(ground))
	g.names.OnChanged = func(string) {
		width := g.recipe.Width
		g.recipe = pattern.Grounds()[g.names.SelectedIndex()].Recipe()
		g.recipe.Width = width
		g.show()
		g.tell(g.w.Order())
	}
	g.about.SetText(told(ground.About))
	g.fields = nil
	rows := &form{w: g.w}
	for _, p := range ground.Params {
		g.row(rows, p)
	}
	if ground.Chance() {
		g.seedRow(rows)
	}
	g.gradeRow(rows, ground)
	g.rows.Objects = rows.rows
	g.rows.Refresh()
	g.width.put(g.widthText())
}

// widthText is the width of the recipe as its field shows it.
func (g *groundBench) widthText() string {
	if g.recipe.Width == 0 {
		return ""
	}
	return g.unit.Format(g.recipe.Width, 6)
}

// setWidth takes the width that was written: what the ground repeats in across.
func (g *groundBench) setWidth(text string) {
	defer func() { g.width.put(g.widthText()) }()
	var width geom.Length
	if text != "" {
		l, err := geom.ParseLength(text, g.unit)
		if err != nil || l < 0 || l > pattern.MaxPitch {
			g.w.Say(say("%q is no width: give up to %s, or nothing for as it comes.", text, g.unit.Format(pattern.MaxPitch, 0)))
			return
		}
		width = l
	}
	if width != g.recipe.Width {
		g.recipe.Width, g.recipe.Columns = width, 0
		g.tell(g.w.Order())
	}
}

// row is one parameter of the ground.
func (g *groundBench) row(rows *form, p pattern.Param) {
	if p.Kind == pattern.ChoiceParam {
		choices := newSelect(allSaid(p.Choices), nil)
		choices.SetSelected(say(p.Text(g.recipe.Value(p.Key))))
		choices.OnChanged = func(string) { g.set(p, p.Choices[choices.SelectedIndex()]) }
		g.named(rows, p, choices)
		return
	}
	var e *entry
	e = newEntry(func(text string) {
		g.set(p, text)
		e.put(g.text(p))
	})
	e.put(g.text(p))
	g.fields = append(g.fields, e)
	g.named(rows, p, e)
}

// named puts a parameter's name before its field; it tells more where the pointer
// is over it.
func (g *groundBench) named(rows *form, p pattern.Param, o fyne.CanvasObject) {
	rows.add(container.New(pair{}, newHinted(say(p.Name), func() { g.w.Say(say("%s: %s", say(p.Name), told(p.Help))) }), o))
}

// text is a parameter's value as its field shows it, lengths in the order's unit.
func (g *groundBench) text(p pattern.Param) string {
	v := g.recipe.Value(p.Key)
	if p.Kind == pattern.LengthParam {
		return g.unit.Format(geom.MM(v), 4)
	}
	return p.Text(v)
}

// set takes a value that was written; a length without a unit is in the order's.
func (g *groundBench) set(p pattern.Param, text string) {
	if p.Kind == pattern.LengthParam {
		l, err := geom.ParseLength(text, g.unit)
		if err != nil {
			g.w.Say(sentence(err))
			return
		}
		text = geom.MMUnit.Format(l, 6)
	}
	next, err := g.recipe.With(p.Key, text)
	if err != nil {
		g.w.Say(sentence(err))
		return
	}
	g.recipe = next
	g.markGrade()
	g.tell(g.w.Order())
}

// seedRow sets what chance begins with.
func (g *groundBench) seedRow(rows *form) {
	var seed *entry
	shown := func() string { return strconv.FormatUint(g.recipe.Seed, 10) }
	seed = newEntry(func(text string) {
		n, err := strconv.ParseUint(text, 10, 30)
		if err != nil {
			g.w.Say(say("%q is no seed: give a whole number from 0 to %d.", text, uint64(1)<<30-1))
		} else {
			g.recipe.Seed = n
			g.tell(g.w.Order())
		}
		seed.put(shown())
	})
	seed.put(shown())
	g.fields = append(g.fields, seed)
	another := widget.NewButton(say("Another"), func() {
		g.recipe.Seed = (g.recipe.Seed + 1) % (1 << 30)
		seed.put(shown())
		g.lay()
	})
	rows.row("Scattering no.", container.NewBorder(nil, nil, nil, another, seed))
}

// gradeRow chooses the pitch by a named count, where the trade counts the ground.
func (g *groundBench) gradeRow(rows *form, ground pattern.Ground) {
	g.fine = slices.DeleteFunc(pattern.Grades(), func(r pattern.Grade) bool { _, ok := r.For(ground); return !ok })
	if len(g.fine) == 0 {
		return
	}
	var options []string
	for _, r := range g.fine {
		options = append(options, told(r.String())+" · "+say(r.Name)+" · "+say(r.Trade))
	}
	g.grades.Options = options
	g.markGrade()
	rows.add(g.grades)
}

// markGrade shows the grade that the pitch on the bench has, or the count alone.
func (g *groundBench) markGrade() {
	if len(g.fine) == 0 {
		return
	}
	ground, _ := pattern.GroundNamed(g.recipe.Ground)
	pitch := g.recipe.Value("pitch")
	count := 1000.0 / 33 / pitch // to the kane sun
	unit := "%.0f per kane sun"
	if g.fine[0].Square {
		count, unit = count*count, "%.0f per square kane sun"
	}
	g.grades.OnChanged = nil
	g.grades.PlaceHolder = say(unit, count)
	g.grades.ClearSelected()
	for i, r := range g.fine {
		if mm, ok := r.For(ground); ok && math.Abs(mm-pitch) < geom.Micrometre.MM()/2 {
			g.grades.SetSelectedIndex(i)
		}
	}
	g.grades.OnChanged = func(string) { g.gradeTo(ground, g.fine[max(g.grades.SelectedIndex(), 0)]) }
}

// gradeTo sets the pitch that a grade has.
func (g *groundBench) gradeTo(ground pattern.Ground, r pattern.Grade) {
	mm, _ := r.For(ground)
	next, err := g.recipe.With("pitch", geom.MMUnit.Format(geom.MM(mm), 6))
	if err != nil {
		g.w.Say(sentence(err))
		g.markGrade()
		return
	}
	g.recipe = next
	g.show()
	g.tell(g.w.Order())
}

// lay draws the ground in the place of the unit, as one edit.
func (g *groundBench) lay() {
	for _, e := range append(slices.Clone(g.fields), g.width) {
		e.hand() // what is still being written
	}
	before, recipe := g.w.history.Now(), g.recipe
	g.w.Say(say("%s…", say("Lay Ground")))
	g.w.background(say("Lay Ground"), func(context.Context) (func(), error) {
		next, err := document.LayGround(before.order, recipe)
		return func() { g.laid(before, next) }, err
	})
}

// laid takes the ground over, if the order is still the one it was drawn for.
func (g *groundBench) laid(before state, next document.Order) {
	if g.w.history.Now().number != before.number {
		g.w.Say(say("The order has changed meanwhile; ask again."))
		return
	}
	if !g.w.Edit("Lay Ground", func(document.Order) (document.Order, error) { return next, nil }) {
		return
	}
	ground, _ := pattern.GroundNamed(next.Ground.Ground)
	g.w.Say(say("%s: %s, %.0f per square kane sun.", groundTitle(ground),
		counted(len(next.Unit.Motifs), "cut-out in the unit", "cut-outs in the unit"), next.Unit.PerSquareSun()))
	g.w.board.Whole()
}

// layingWords tells how the tiles of a ground meet step and width.
func layingWords(l pattern.Laying, r pattern.Recipe) string {
	text := say("%d tiles fill the step, each stretched by %+.2f %% along and %+.2f %% across", l.Rows, 100*l.Stretch.Y, 100*l.Stretch.X)
	if r.Width > 0 {
		text += say("; ") + say("%d fill the width", l.Columns)
	}
	if math.Abs(l.Bent) >= 5e-5 {
		text += say("; ") + say("bent by %.2f %%", 100*l.Bent)
	}
	return say("%s.", text)
}
