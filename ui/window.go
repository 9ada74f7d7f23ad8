package ui

import (
	"context"
	"fmt"
	"image/color"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
	"tsugime/ui/session"
)

// A Window shows one order: a station of it, and what is chosen there.
type Window struct {
	*workshop
	*openOrder
	win    fyne.Window
	chosen []pattern.ID // motifs that are selected

	stop    context.CancelFunc
	writes  writing
	task    chan struct{} // closed when what goes on in the background is done and shown
	working chan struct{} // closed when the work in the background begun last has ended
	rack    *rackEditor   // that is open, nil for none

	board    *board.Board
	pointing pointing
	foundAt  check.Finding // whose place was asked for last by keys
	stations []station
	at       int // the station that is shown
	bar      *stationBar
	lead     lead
	left     *container.Scroll // the bench
	right    *inspector
	status   *widget.Label
	pointer  *widget.Label
}

// New lays an order on the bench in a window of the app. The path is the file it
// came from, or "" for a new one.
func New(app fyne.App, order document.Order, path string, store session.Store) *Window {
	speak(languageOf(app.Preferences()))
	shop := newWorkshop(app, store)
	w := shop.window(shop.open(order, path, true), draftAt)
	w.takeFirstSteps()
	return w
}

// window opens a window on an order, at a station.
func (s *workshop) window(o *openOrder, at int) *Window {
	w := &Window{workshop: s, win: s.app.NewWindow("Tsugime"), at: at, lead: lead{step: -1}}
	s.writings.add(&w.writes)
	o.shownBy(w)
	w.board = board.New(s.dressed.frame())
	w.board.OnKey = w.typed
	w.status, w.pointer = widget.NewLabel(""), widget.NewLabel("")
	w.status.Truncation = fyne.TextTruncateEllipsis
	w.furnish()
	w.win.SetCloseIntercept(w.close)
	w.win.SetOnDropped(w.dropped)
	w.win.Resize(fyne.NewSize(1440, 900))
	w.bindKeys()
	w.GoTo(at)
	if o.built == 0 {
		o.shown()
	} else {
		o.retitle()
	}
	return w
}

// another opens one more window on the order, at the same station.
func (w *Window) another() {
	next := w.window(w.openOrder, w.at)
	next.win.Show()
}

// furnish makes the stations and all that stands around the surface, in the
// language of the person.
func (w *Window) furnish() {
	w.right = newInspector(w)
	w.stations = []station{newDraft(w), newStencil(w), newBolt(w), newGarment(w), newSheets(w)}
	w.left, w.bar = container.NewVScroll(container.NewStack()), newStationBar(w)
	w.win.SetContent(w.layout())
}

// Fyne returns the window as Fyne has it.
func (w *Window) Fyne() fyne.Window { return w.win }

// layout puts the stations above, the bench at the left, the surface in the
// middle, what was found at the right, and a line of words below.
func (w *Window) layout() fyne.CanvasObject {
	side := func(o fyne.CanvasObject, width float32) fyne.CanvasObject {
		strut := canvas.NewRectangle(color.Transparent) // the window behind it has its colour
		strut.SetMinSize(fyne.NewSize(width, 10))
		return container.NewStack(strut, o)
	}
	below := container.NewBorder(widget.NewSeparator(), nil, nil, w.pointer, w.status)
	top := container.NewBorder(nil, w.furnishLead(), nil, nil, container.NewBorder(nil, widget.NewSeparator(), nil, nil, w.bar))
	middle := container.NewBorder(nil, nil,
		container.NewHBox(side(w.left, 288), widget.NewSeparator()),
		container.NewHBox(widget.NewSeparator(), side(container.NewVScroll(container.NewPadded(w.right.content)), 312)),
		container.NewClip(w.board))
	return container.NewBorder(top, below, nil, nil, middle)
}

// Edit makes the next state by an edit with a name. What can't be done is told
// in the line below, and nothing changes.
func (w *Window) Edit(name string, edit func(document.Order) (document.Order, error)) bool {
	next, err := edit(w.Order())
	if err != nil {
		w.Say(sentence(err))
		w.refresh()
		return false
	}
	w.history = w.history.Do(name, state{next, kept(next, w.chosen), w.number()})
	w.Say(say("%s.", say(name)))
	w.changed()
	return true
}

// Undo goes back before the last edit.
func (w *Window) Undo() {
	if h, ok := w.history.Undo(); ok {
		w.Say(say("Undone: %s.", say(w.history.UndoName())))
		w.history = h
		w.changed()
	}
}

// Redo repeats the last edit that was undone.
func (w *Window) Redo() {
	if h, ok := w.history.Redo(); ok {
		w.Say(say("Done again: %s.", say(w.history.RedoName())))
		w.history = h
		w.changed()
	}
}

// Say shows a line of words below.
func (w *Window) Say(text string) { w.status.SetText(text) }

// sentence is an error as people read it.
func sentence(err error) string {
	s := err.Error()
	return told(strings.ToUpper(s[:1]) + s[1:] + ".")
}

// changed shows the present state in every window of the order, with what was chosen
// in it in this one.
func (w *Window) changed() {
	w.chosen = w.history.Now().chosen
	w.shown()
	w.keep()
}

// choose makes motifs the chosen ones.
func (w *Window) choose(ids ...pattern.ID) {
	w.chosen = ids
	if len(ids) > 0 {
		w.stations[draftAt].(*draft).lattice.held = false
	}
	w.stations[draftAt].(*draft).showChosen()
	w.win.SetMainMenu(w.mainMenu())
	w.repaint()
}

func (w *Window) title() {
	name := say("new order")
	if w.path != "" {
		name = filepath.Base(w.path)
	}
	if w.Changed() {
		name = "• " + name
	}
	if i := slices.Index(w.windows, w); i > 0 {
		name = fmt.Sprintf("%s (%d)", name, i+1)
	}
	w.win.SetTitle(name + " – Tsugime")
	w.win.SetMainMenu(w.mainMenu())
}

// refresh shows the present order and work in the station and the inspector.
func (w *Window) refresh() {
	w.follow()
	s := w.stations[w.at]
	s.refresh()
	w.repaint()
	w.right.show(s)
	w.bar.refresh()
	w.step()
}

// repaint shows the scene again without touching the panels.
func (w *Window) repaint() {
	s := w.stations[w.at]
	w.board.Unit = w.unit()
	scene := s.scene()
	w.markPointed(&scene)
	scene.Casing = worn().casing()
	w.board.Present(s.view(), scene, w.hand(s))
}

// GoTo opens a station, numbered from 0.
func (w *Window) GoTo(i int) {
	w.at, w.pointing.at = i, thingKey{}
	w.board.Release()
	w.pointer.SetText("")
	w.showBench()
	w.refresh()
	w.win.Canvas().Focus(w.board)
}

// pitch is about the way from hole to hole.
func (w *Window) pitch() geom.Length { return holePitch(w.design()) }
