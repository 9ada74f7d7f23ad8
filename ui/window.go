package ui

import (
	"context"
	"image/color"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
	"tsugime/ui/session"
)

// A state is an order, what was chosen in it, and a number that no other state of
// the window has, so that "changed since it was saved" is one comparison.
type state struct {
	order  document.Order
	chosen []pattern.ID
	number int
}

// A Window is one order on the bench.
type Window struct {
	app   fyne.App
	win   fyne.Window
	store session.Store

	history document.History[state]
	last    int          // number of the newest state
	saved   int          // number of the state that the file holds
	path    string       // of the file; "" before the first save
	onDisk  stamp        // of the file as it was read or saved last
	chosen  []pattern.ID // motifs that are selected

	work     repeat.Work // of the newest state that is built
	grounds  grounds     // of work
	built    int         // its number; zero while nothing is built
	fault    error       // why the present state could not be built
	cancel   context.CancelFunc
	building chan struct{} // closed when the rebuild begun last has ended
	stop     context.CancelFunc
	writes   writing
	task     chan struct{} // closed when what goes on in the background is done and shown

	dressed      *palette // what the window wears
	dressing     bool     // while Fyne is told of it
	systemIsDark bool     // the system asks for dark windows

	cutter      session.Cutter // what is kept for all orders
	cutterRead  int            // how often it was read or changed
	cutterState string         // of its files when they were read
	rack        *rackEditor    // that is open, nil for none

	board    *board.Board
	pointing pointing
	foundAt  check.Finding // whose place was asked for last by keys
	stations []station
	at       int // the station that is shown
	bar      *stationBar
	left     *container.Scroll // the bench
	right    *inspector
	status   *widget.Label
	pointer  *widget.Label
}

// New lays an order on the bench in a window of the app. The path is the file it
// came from, or "" for a new one.
func New(app fyne.App, order document.Order, path string, store session.Store) *Window {
	speak(languageOf(app.Preferences()))
	w := &Window{app: app, win: app.NewWindow("Tsugime"), store: store, path: path, onDisk: stampOf(path)}
	w.dressFirst()
	w.last, w.saved = 1, 1
	w.history = document.Begin(state{order: order, number: 1})
	w.board = board.New(w.dressed.frame())
	w.board.OnKey = w.typed
	w.status, w.pointer = widget.NewLabel(""), widget.NewLabel("")
	w.status.Truncation = fyne.TextTruncateEllipsis
	w.furnish()
	w.win.SetCloseIntercept(w.close)
	w.win.SetOnDropped(w.dropped)
	app.Lifecycle().SetOnEnteredForeground(w.lookAtDisk)
	w.win.Resize(fyne.NewSize(1440, 900))
	w.bindKeys()
	w.GoTo(0)
	w.shown()
	return w
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
	top := container.NewBorder(nil, widget.NewSeparator(), nil, nil, w.bar)
	middle := container.NewBorder(nil, nil,
		container.NewHBox(side(w.left, 288), widget.NewSeparator()),
		container.NewHBox(widget.NewSeparator(), side(container.NewVScroll(container.NewPadded(w.right.content)), 312)),
		container.NewClip(w.board))
	return container.NewBorder(top, below, nil, nil, middle)
}

// Order returns the order as it stands after the last edit.
func (w *Window) Order() document.Order { return w.history.Now().order }

// Changed reports whether the order differs from its file.
func (w *Window) Changed() bool { return w.history.Now().number != w.saved }

// Edit makes the next state by an edit with a name. What can't be done is told
// in the line below, and nothing changes.
func (w *Window) Edit(name string, edit func(document.Order) (document.Order, error)) bool {
	next, err := edit(w.Order())
	if err != nil {
		w.Say(sentence(err))
		w.refresh()
		return false
	}
	w.last++
	w.history = w.history.Do(name, state{next, kept(next, w.chosen), w.last})
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

// changed shows the present state everywhere and has it built anew.
func (w *Window) changed() {
	w.shown()
	w.store.Keep(w.path, w.Order(), w.Changed())
}

// shown shows the present state everywhere and has it built anew. What was kept of
// an earlier run stays, until it was taken up or left.
func (w *Window) shown() {
	w.chosen = w.history.Now().chosen
	w.title()
	w.rebuild()
	w.refresh()
}

// kept returns which of the motifs are still there.
func kept(o document.Order, chosen []pattern.ID) []pattern.ID {
	var ids []pattern.ID
	for _, id := range chosen {
		if _, ok := o.Motif(id); ok {
			ids = append(ids, id)
		}
	}
	return ids
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
	w.win.SetTitle(name + " – Tsugime")
	w.win.SetMainMenu(w.mainMenu())
}

// rebuild carries the order along the line in the background; the newest wins. One
// that was given up may have a while to go to its next stop: the newest waits for it,
// so that edit upon edit never has more than one at work.
func (w *Window) rebuild() {
	if w.cancel != nil {
		w.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	now, prev := w.history.Now(), w.work
	before, done := w.building, make(chan struct{})
	w.cancel, w.building, w.fault = cancel, done, nil
	go func() {
		defer close(done)
		if before != nil {
			<-before
		}
		if ctx.Err() != nil {
			return
		}
		work, err := repeat.Rebuild(ctx, prev, now.order)
		var ready grounds
		if err == nil {
			ready = groundsOf(work)
		}
		later(func() {
			if w.history.Now().number != now.number || ctx.Err() != nil {
				return
			}
			if w.fault = err; err == nil {
				w.work, w.grounds, w.built = work, ready, now.number
			} else {
				w.Say(sentence(err))
			}
			w.refresh()
		})
	}()
}

// Ready reports whether the work shown belongs to the present order.
func (w *Window) Ready() bool { return w.built == w.history.Now().number }

// refresh shows the present order and work in the station and the inspector.
func (w *Window) refresh() {
	w.follow()
	s := w.stations[w.at]
	s.refresh()
	w.repaint()
	w.right.show(s)
	w.bar.refresh()
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
	w.at = i
	w.board.Release()
	w.pointer.SetText("")
	w.showBench()
	w.refresh()
	w.win.Canvas().Focus(w.board)
}

// pitch is about the way from hole to hole.
func (w *Window) pitch() geom.Length { return holePitch(w.design()) }
