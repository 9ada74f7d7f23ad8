package ui

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// A penBench is what stands at the left while a motif is drawn.
type penBench struct {
	d       *penHand
	content fyne.CanvasObject
	hint    *widget.Label
	draws   drawKind
	kinds   *widget.Select
	place   *entry

	measures *fyne.Container // rows of the kind that is drawn
	across   *entry
	turn     *entry
	corners  *entry
	share    *entry

	snaps   *widget.Check
	grid    geom.Length // zero for none
	unit    geom.Unit   // that the grid is of, until another is written
	gridded *entry
	turns   *entry
	mirror  *widget.Check
}

func newPenBench(d *penHand) *penBench {
	b := &penBench{d: d, hint: quietLabel()}
	f := &form{w: d.w}
	f.heading("Draw a motif")
	names := make([]string, len(drawNames))
	for i, n := range drawNames {
		names[i] = say(n)
	}
	b.kinds = newSelect(names, func(string) { b.draw(drawKind(b.kinds.SelectedIndex())) })
	f.add(b.kinds)
	b.measures = container.New(layout.NewCustomPaddedVBoxLayout(3))
	f.add(b.measures)
	f.add(b.hint)
	b.place = newEntry(func(string) {})
	b.place.SetPlaceHolder("12.5, 3")
	b.place.OnSubmitted = b.write
	f.row("Next place", b.place)
	f.button("Put the Motif", d.finish)
	f.heading("Snapping")
	b.snaps = widget.NewCheck(say("Places snap"), nil)
	b.snaps.SetChecked(true)
	f.add(b.snaps)
	b.gridded = newEntry(b.setGrid)
	f.row("Grid", b.gridded)
	f.words("Shift held lets a place go free.")
	b.wreathFields(f)
	f.button("Stop Drawing", func() { d.drop(); d.s.begin(nil) })
	b.figureFields()
	b.kinds.SetSelectedIndex(0)
	b.content = f.content()
	return b
}

// wreathFields are the symmetry that the motif has of its own.
func (b *penBench) wreathFields(f *form) {
	f.heading("The motif's own symmetry")
	b.turns = newEntry(b.setTurns)
	b.turns.put("1")
	f.row("Turns", b.turns)
	b.mirror = widget.NewCheck(say("Mirrored"), func(on bool) {
		b.d.wreath.Mirrored = on
		b.d.changed()
	})
	f.add(b.mirror)
	f.button("Set Its Centre Anew", func() {
		b.d.centred = false
		b.d.changed()
	})
}

// figureFields make the fields for the measures of whole shapes.
func (b *penBench) figureFields() {
	b.across, b.turn, b.corners, b.share = newEntry(func(string) {}), newEntry(func(string) {}), newEntry(func(string) {}), newEntry(func(string) {})
	b.across.put("4 mm")
	b.turn.put("0°")
	b.corners.put("6")
	b.share.put("50 %")
}

// draw chooses what the next place draws.
func (b *penBench) draw(k drawKind) {
	if k < 0 {
		return
	}
	d := b.d
	if k.whole() && d.begun {
		d.w.Say(say("The line is dropped: a whole shape is drawn by itself."))
		d.drop()
	}
	b.draws, d.bends = k, false
	rows := &form{w: d.w}
	if k.whole() {
		name := "Diameter"
		if k.long() {
			name = "Length"
		}
		rows.row(name, b.across)
	}
	if k == polygon || k == star {
		rows.row(map[drawKind]string{polygon: "Corners", star: "Points"}[k], b.corners)
	}
	if k == star || k == ring {
		rows.row("Inner share", b.share)
	}
	if k.long() {
		rows.row("Width, of the length", b.share)
	}
	if k.whole() && k != circle && k != ring {
		rows.row("Turned by", b.turn)
	}
	b.measures.Objects = rows.rows
	b.measures.Refresh()
	if b.content != nil {
		d.w.win.Canvas().Focus(d.w.board)
		d.changed()
	}
}

// figure reads the whole shape of the fields.
func (b *penBench) figure() (figure, error) {
	f := figure{kind: b.draws}
	var err error
	if f.across, err = geom.ParseLength(b.across.Text, b.d.w.unit()); err != nil {
		return f, err
	}
	if f.turnDeg, err = pen.ParseDegrees(b.turn.Text); err != nil {
		return f, err
	}
	if f.corners, err = strconv.Atoi(strings.TrimSpace(b.corners.Text)); err != nil {
		return f, fmt.Errorf("%q is no count of corners; write a whole number, like 6", b.corners.Text)
	}
	text := strings.ReplaceAll(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(b.share.Text), "%")), ",", ".")
	pct, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return f, fmt.Errorf("%q is no share; write a percentage, like 50 %%", b.share.Text)
	}
	f.share = pct / 100
	return f, nil
}

// keep shows the measures of a shape that was pulled.
func (b *penBench) keep(f figure) {
	b.across.put(b.d.w.unit().Format(f.across, 6))
	b.turn.put(strconv.FormatFloat(f.turnDeg, 'f', -1, 64) + "°")
}

// write sets the place that was written; with none the motif is done.
func (b *penBench) write(text string) {
	d := b.d
	if strings.TrimSpace(text) == "" {
		d.finish()
		return
	}
	before := geom.Point{}
	if d.begun {
		before = d.stroke.End()
	}
	at, err := pen.ParsePlace(text, d.w.unit(), before)
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	b.place.put("")
	d.put(at)
}

func (b *penBench) setGrid(text string) {
	l, err := geom.ParseLength(text, b.d.w.unit())
	switch {
	case err != nil:
		b.d.w.Say(sentence(err))
	case l < 0 || l > geom.Metre:
		b.d.w.Say(say("A grid of %s mm is out of bounds; give 0 for none, at most 1000 mm.", l))
	default:
		b.grid = l
	}
	b.refresh()
	b.d.w.repaint()
}

// gridOf is the grid that a unit begins with: a tenth of a millimetre, or half a rin.
func gridOf(u geom.Unit) geom.Length {
	text, of := "0.1", geom.MMUnit
	if u.Family() != "" {
		text, of = "0.5", geom.KaneRin
	}
	l, err := geom.ParseLength(text, of)
	if err != nil {
		return 0
	}
	return l
}

func (b *penBench) setTurns(text string) {
	w := b.d.wreath
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if w.Turns = n; err != nil {
		err = fmt.Errorf("%q is no count of turns; write a whole number, like 5", text)
	} else {
		err = w.Check()
	}
	if err != nil {
		b.d.w.Say(sentence(err))
		b.refresh()
		return
	}
	b.d.wreath = w
	b.d.changed()
}

func (b *penBench) refresh() {
	if u := b.d.w.unit(); u != b.unit {
		if b.unit == (geom.Unit{}) || b.grid == gridOf(b.unit) {
			b.grid = gridOf(u)
		}
		b.unit = u
	}
	b.gridded.put(b.d.w.unit().Format(b.grid, 6))
	b.turns.put(strconv.Itoa(b.d.wreath.Turns))
	b.hint.SetText(say(b.advice()))
}

// advice says what the next click does.
func (b *penBench) advice() string {
	d := b.d
	switch {
	case d.wantsCentre():
		return "Click where the motif's centre stands."
	case b.draws.long():
		return "Drag from end to end, or click to place it by its measures."
	case b.draws.whole():
		return "Drag from the middle outwards, or click to place it by its measures."
	case !d.begun:
		return "Click where the line begins, or write the place: 12.5, 3."
	case b.draws == arcs && !d.bends:
		return "Click a place that the arc passes, then its end."
	case b.draws == arcs:
		return "Click where the arc ends."
	case b.draws == curves:
		return "Click for a corner; press and drag to pull handles out."
	}
	return "Click the next place. A click on the start closes the line; Return closes it straight. Also: by 3, -2 or 5 at 30."
}
