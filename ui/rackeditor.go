package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A rackEditor shows the cutter's tools and limits and changes them. Each change is
// kept at once; it can be undone while the editor is open.
type rackEditor struct {
	w       *Window
	history document.History[bench.Rack]
	by      bench.By
	order   []int // of the tools as they are listed
	chosen  int   // in the rack; none for none
	table   *widget.Table
	told    *widget.Label
	undoes  *widget.Button
	redoes  *widget.Button
	dialog  *dialog.CustomDialog
	tabs    *container.AppTabs
	limits  []*limitRow

	kind, condition             *widget.Select
	number, size, note, outline *widget.Entry
}

// openRack opens the editor, or shows it if it is open.
func (w *Window) openRack() {
	if w.rack != nil {
		return
	}
	e := &rackEditor{w: w, history: document.Begin(w.cutterNow().Rack), by: bench.ByKind, chosen: none}
	w.rack = e
	e.told = quietLabel()
	e.tabs = container.NewAppTabs(
		container.NewTabItem(say("Tools"), container.NewBorder(nil, e.fields(), nil, nil, e.list())),
		container.NewTabItem(say("Limits"), container.NewVScroll(e.limitFields())))
	e.undoes = widget.NewButton(say("Undo"), e.undo)
	e.redoes = widget.NewButton(say("Redo"), e.redo)
	buttons := container.NewHBox(e.undoes, e.redoes,
		widget.NewButton(say("Bring In…"), func() { w.chooseTable(e.bringIn) }), widget.NewButton(say("Write Out…"), w.askRackName))
	e.dialog = dialog.NewCustom(say("The rack, for all orders"), say("Done"), container.NewBorder(nil, container.NewVBox(e.told, buttons), nil, nil, e.tabs), w.win)
	e.dialog.SetOnClosed(func() { w.rack = nil })
	e.dialog.Resize(fyne.NewSize(860, 720))
	e.dialog.Show()
	e.show()
	e.write(bench.Tool{Kind: bench.Awl, Number: e.rack().FreeNumber(), Condition: bench.Sharp})
}

func (w *Window) openLimits() {
	w.openRack()
	w.rack.tabs.SelectIndex(1)
}

func (e *rackEditor) rack() bench.Rack { return e.history.Now() }

// do makes an edit of the rack and keeps it; what can't be done is told.
func (e *rackEditor) do(name string, edit func(r bench.Rack) (bench.Rack, error)) bool {
	next, err := edit(e.rack())
	if err != nil {
		e.told.SetText(sentence(err))
		return false
	}
	return e.turn(e.history.Do(name, next), say("%s.", say(name)))
}

// turn keeps another state of the rack.
func (e *rackEditor) turn(to document.History[bench.Rack], words string) bool {
	if !e.w.keepRack(to.Now()) {
		e.told.SetText(say("The rack could not be kept; nothing was changed."))
		return false
	}
	e.history = to
	if e.chosen >= len(e.rack().Tools) {
		e.chosen = none
	}
	e.told.SetText(words)
	e.show()
	return true
}

func (e *rackEditor) undo() {
	if h, ok := e.history.Undo(); ok {
		e.turn(h, say("Undone: %s.", say(e.history.UndoName())))
	}
}

func (e *rackEditor) redo() {
	if h, ok := e.history.Redo(); ok {
		e.turn(h, say("Done again: %s.", say(e.history.RedoName())))
	}
}

// typed undoes and redoes by the window's own keys; the nil editor takes nothing.
func (e *rackEditor) typed(c command) {
	if e == nil {
		return
	}
	is := func(k *desktop.CustomShortcut) bool { return *c.keys[0] == *k }
	switch {
	case is(key(fyne.KeyZ, ctrl)):
		e.undo()
	case is(key(fyne.KeyZ, ctrl|shift)):
		e.redo()
	}
}

// show lists the tools anew.
func (e *rackEditor) show() {
	e.order = e.rack().Sorted(e.by)
	e.table.Refresh()
	for _, l := range e.limits {
		l.show(e.rack())
	}
	able := func(b *widget.Button, can bool) {
		if can {
			b.Enable()
		} else {
			b.Disable()
		}
	}
	able(e.undoes, e.history.UndoName() != "")
	able(e.redoes, e.history.RedoName() != "")
	if e.told.Text == "" {
		e.told.SetText(say("%d tools. Each change is kept at once, for all orders.", len(e.order)))
	}
}

// tool reads the fields.
func (e *rackEditor) tool() (bench.Tool, error) {
	t := bench.Tool{
		Kind: bench.Kind(valueSaid(kindWords, e.kind.Selected)), Number: e.number.Text,
		Condition: bench.Condition(valueSaid(conditionWords, e.condition.Selected)), Note: e.note.Text,
	}
	var err error
	if t.Kind == bench.Punch {
		t.Outline, err = geom.ParsePathData(e.outline.Text)
		return t, err
	}
	t.Size, err = geom.ParseLength(e.size.Text, geom.MMUnit)
	return t, err
}

// write puts a tool into the fields.
func (e *rackEditor) write(t bench.Tool) {
	e.kind.SetSelected(say(wordsFor(kindWords, string(t.Kind))))
	condition := t.Condition
	if condition == "" {
		condition = bench.Sharp
	}
	e.condition.SetSelected(say(wordsFor(conditionWords, string(condition))))
	e.number.SetText(t.Number)
	e.note.SetText(t.Note)
	e.size.SetText("")
	if t.Size > 0 {
		e.size.SetText(geom.MMUnit.Format(t.Size, 6))
	}
	e.outline.SetText("")
	if t.Kind == bench.Punch {
		e.outline.SetText(string(t.Outline.AppendPathData(nil, 6)))
	}
}

// put keeps the tool of the fields as tool n, or as a new one.
func (e *rackEditor) put(name string, n int) {
	t, err := e.tool()
	if err != nil {
		e.told.SetText(sentence(err))
		return
	}
	e.do(name, func(r bench.Rack) (bench.Rack, error) { return r.Put(n, t) })
}

func (e *rackEditor) add() { e.put("Add a Tool", len(e.rack().Tools)) }

func (e *rackEditor) change() {
	if e.chosen == none {
		e.told.SetText(say("Choose a tool of the list first."))
		return
	}
	e.put("Change a Tool", e.chosen)
}

func (e *rackEditor) remove() {
	if e.chosen == none {
		e.told.SetText(say("Choose a tool of the list first."))
		return
	}
	n := e.chosen
	e.chosen = none
	e.table.UnselectAll()
	e.do("Delete a Tool", func(r bench.Rack) (bench.Rack, error) { return r.Without(n), nil })
}
