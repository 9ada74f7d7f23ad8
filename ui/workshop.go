package ui

import (
	"os"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/ui/session"
)

// A workshop is what all windows of the program share: the orders that are open, and
// what outlives them.
type workshop struct {
	app     fyne.App
	store   session.Store
	orders  []*openOrder
	last    int             // number of the newest state of any order
	remains []*session.Left // states of ended runs that were neither taken up nor thrown away

	writings writings // of all windows

	dressed      *palette // what the windows wear
	dressing     bool     // while Fyne is told of it
	systemIsDark bool     // the system asks for dark windows

	cutter      session.Cutter // what is kept for all orders
	cutterRead  int            // how often it was read or changed
	cutterState string         // of its files when they were read
}

func newWorkshop(app fyne.App, store session.Store) *workshop {
	s := &workshop{app: app, store: store}
	s.dressFirst()
	app.Lifecycle().SetOnEnteredForeground(s.lookAtFiles)
	app.Lifecycle().SetOnStopped(s.end)
	return s
}

// number returns one that no state of any order has, so that what was made of a state
// is never taken for what was made of another.
func (s *workshop) number() int {
	s.last++
	return s.last
}

// each does something in every window of the program.
func (s *workshop) each(do func(w *Window)) {
	for _, o := range slices.Clone(s.orders) {
		for _, w := range slices.Clone(o.windows) {
			do(w)
		}
	}
}

// drawing reports whether something is being drawn in any window.
func (s *workshop) drawing() bool {
	busy := false
	s.each(func(w *Window) { busy = busy || w.stations != nil && w.stations[draftAt].(*draft).craft != nil })
	return busy
}

// open begins with an order; saved tells whether its file, or a starter, holds it as
// it is.
func (s *workshop) open(o document.Order, path string, saved bool) *openOrder {
	n := s.number()
	open := &openOrder{keeper: s.store.Keeper(), path: path, onDisk: stampOf(path), history: document.Begin(state{order: o, number: n})}
	if saved {
		open.saved = n
	}
	s.orders = append(s.orders, open)
	return open
}

// openAt returns the order that is open from a file, nil for none.
func (s *workshop) openAt(path string) *openOrder {
	for _, o := range s.orders {
		if o.path != "" && sameName(o.path, path) {
			return o
		}
	}
	return nil
}

// sameName reports whether two paths lead to one file.
func sameName(a, b string) bool {
	if one, err := os.Stat(a); err == nil {
		if two, err := os.Stat(b); err == nil {
			return os.SameFile(one, two)
		}
	}
	return filepath.Clean(a) == filepath.Clean(b)
}

// lookAtFiles asks about each file that another program has written.
func (s *workshop) lookAtFiles() {
	for _, o := range slices.Clone(s.orders) {
		o.windows[0].lookAtDisk()
	}
}

// quit closes all windows, after asking what becomes of changes to each order; an
// answer to stay ends it.
func (s *workshop) quit() {
	if len(s.orders) == 0 {
		return
	}
	o := s.orders[0]
	shut := func() {
		for _, w := range slices.Clone(o.windows) {
			w.shut()
		}
		s.quit()
	}
	if !o.Changed() {
		shut()
		return
	}
	o.windows[0].win.RequestFocus()
	o.windows[0].askSaved("Close", shut)
}

// end is called when the program stops, whoever stops it: what isn't saved by then is
// kept for the next run.
func (s *workshop) end() {
	for _, o := range s.orders {
		if err := o.keeper.Flush(); err != nil {
			fyne.LogError("what was not saved can't be kept", err)
		}
	}
	s.store.End()
}
