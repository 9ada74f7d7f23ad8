package ui

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"tsugime/assets"
	"tsugime/export"
	"tsugime/repeat/document"
)

// extension is that of order files.
const extension = ".tsugime"

// ReadFile reads an order file.
func ReadFile(path string) (document.Order, error) {
	f, err := os.Open(path)
	if err != nil {
		return document.Order{}, err
	}
	defer f.Close()
	o, err := document.Read(f)
	if err != nil {
		return document.Order{}, fmt.Errorf("%s: %w", filepath.Base(path), err)
	}
	return o, nil
}

// ReadStarter reads a starter.
func ReadStarter(name string) (document.Order, error) {
	data, ok := assets.Starter(name)
	if !ok {
		return document.Order{}, fmt.Errorf("there is no starter %q; choose one of the list", name)
	}
	return document.Read(bytes.NewReader(data))
}

// lay puts another order on the bench of this window in place of its own; saved tells
// whether its file, or a starter, holds it as it is. Other windows stay with theirs.
func (w *Window) lay(o document.Order, path string, saved bool) {
	w.leave()
	w.open(o, path, saved).shownBy(w)
	w.chosen = nil
	if path != "" {
		_ = w.store.Remember(path) // forgetting a recent name is no reason to stop
	}
	w.changed()
	w.GoTo(draftAt)
}

// Open reads an order file and lays it on the bench. One that is open already is
// shown where it is.
func (w *Window) Open(path string) {
	if w.showOpen(path) {
		return
	}
	o, err := ReadFile(path)
	if err != nil {
		w.fail(err)
		return
	}
	w.lay(o, path, true)
	w.Say(say("Opened %s.", filepath.Base(path)))
}

// openAsking opens an order file after asking what becomes of changes, where a window
// has to let its order go for it.
func (w *Window) openAsking(path string) {
	if !w.showOpen(path) {
		w.askThen("Open", func() { w.Open(path) })
	}
}

// showOpen brings a window to the front that shows the order of a file, if one does.
func (w *Window) showOpen(path string) bool {
	o := w.openAt(path)
	if o == nil {
		return false
	}
	shows := o.windows[0]
	if o == w.openOrder {
		shows = w
	}
	shows.win.RequestFocus()
	shows.Say(say("%s is open already.", filepath.Base(path)))
	return true
}

// SaveTo writes the order to a file, whole or not at all.
func (w *Window) SaveTo(path string) bool {
	if filepath.Ext(path) != extension {
		path += extension
	}
	if o := w.openAt(path); o != nil && o != w.openOrder {
		w.fail(errors.New(say("%s is open in another window; give another name", filepath.Base(path))))
		return false
	}
	if err := writeFile(path, w.Order()); err != nil {
		w.fail(err)
		return false
	}
	w.path, w.saved, w.onDisk = path, w.history.Now().number, stampOf(path)
	_ = w.store.Remember(path)
	w.keep()
	w.retitle()
	w.Say(say("Saved %s.", filepath.Base(path)))
	return true
}

// Save writes to the order's file, or asks for a name where it has none.
func (w *Window) Save() {
	if w.path == "" {
		w.saveAs()
		return
	}
	if w.writtenElsewhere() {
		w.lookAtDisk()
		return
	}
	w.SaveTo(w.path)
}

// saveCopy writes the order to another file and stays with its own.
func (w *Window) saveCopy() {
	w.askName(func(path string) {
		if err := writeFile(path, w.Order()); err != nil {
			w.fail(err)
			return
		}
		w.Say(say("A copy is in %s.", filepath.Base(path)))
	})
}

// writeFile writes an order to a file, whole or not at all.
func writeFile(path string, o document.Order) error {
	return export.Save(path, true, func(to io.Writer) error { return document.Write(to, o) })
}

// sameFile reports whether two orders are written alike.
func sameFile(a, b document.Order) bool {
	var one, two bytes.Buffer
	return document.Write(&one, a) == nil && document.Write(&two, b) == nil && bytes.Equal(one.Bytes(), two.Bytes())
}

// replaceBy is the edit that puts another order in the place of this one.
func replaceBy(o document.Order) func(document.Order) (document.Order, error) {
	return func(document.Order) (document.Order, error) { return o, nil }
}

// saveAs asks for a name and saves.
func (w *Window) saveAs() { w.chooseName(func() {}) }

func (w *Window) fail(err error) { dialog.ShowError(errors.New(sentence(err)), w.win) }

// close closes the window. Where it is the last one of its order, it asks what becomes
// of changes first.
func (w *Window) close() { w.askThen("Close", w.shut) }

// shut closes the window for good.
func (w *Window) shut() {
	w.writes.leave()
	w.leave()
	if len(w.orders) == 0 {
		w.end()
	}
	w.win.Close()
}

// dropped opens an order that is dropped on the window, or brings in outlines.
func (w *Window) dropped(_ fyne.Position, uris []fyne.URI) {
	if len(uris) > 0 && outlineFile(uris[0].Path()) {
		w.BringIn(uris[0].Path())
		return
	}
	if len(uris) > 0 {
		w.openAsking(uris[0].Path())
	}
}

// withRecent puts the orders opened last before the last item of a menu, which quits:
// where the last item doesn't, Fyne adds one that asks nothing.
func (w *Window) withRecent(items []*fyne.MenuItem) []*fyne.MenuItem {
	last := len(items) - 1
	quit := items[last]
	quit.IsQuit = true
	items = append(items[:last:last], fyne.NewMenuItemSeparator())
	for _, path := range w.store.Recent() {
		item := fyne.NewMenuItem(filepath.Base(path), func() { w.openAsking(path) })
		_, err := os.Stat(path)
		item.Disabled = err != nil
		items = append(items, item)
	}
	if len(items) > last+1 {
		items = append(items, fyne.NewMenuItemSeparator())
	}
	return append(items, quit)
}
