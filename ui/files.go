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

// lay puts another order on the bench in place of this one; saved tells whether its
// file, or a starter, holds it as it is.
func (w *Window) lay(o document.Order, path string, saved bool) {
	w.last++
	w.history, w.saved, w.path = document.Begin(state{order: o, number: w.last}), 0, path
	if saved {
		w.saved = w.last
	}
	w.chosen, w.built, w.onDisk = nil, 0, stampOf(path)
	if path != "" {
		_ = w.store.Remember(path) // forgetting a recent name is no reason to stop
	}
	w.changed()
	w.GoTo(0)
}

// Open reads an order file and lays it on the bench.
func (w *Window) Open(path string) {
	o, err := ReadFile(path)
	if err != nil {
		w.fail(err)
		return
	}
	w.lay(o, path, true)
	w.Say(say("Opened %s.", filepath.Base(path)))
}

// SaveTo writes the order to a file, whole or not at all.
func (w *Window) SaveTo(path string) bool {
	if filepath.Ext(path) != extension {
		path += extension
	}
	if err := writeFile(path, w.Order()); err != nil {
		w.fail(err)
		return false
	}
	w.path, w.saved, w.onDisk = path, w.history.Now().number, stampOf(path)
	_ = w.store.Remember(path)
	w.store.Keep(path, w.Order(), false)
	w.title()
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

// close closes the window after asking what becomes of changes.
func (w *Window) close() {
	w.askThen("Close", func() {
		if w.cancel != nil {
			w.cancel()
		}
		w.Leave()
		w.win.Close()
	})
}

// dropped opens an order that is dropped on the window, or brings in outlines.
func (w *Window) dropped(_ fyne.Position, uris []fyne.URI) {
	if len(uris) > 0 && outlineFile(uris[0].Path()) {
		w.BringIn(uris[0].Path())
		return
	}
	if len(uris) > 0 {
		w.askThen("Open", func() { w.Open(uris[0].Path()) })
	}
}

// recentItems are the orders opened last.
func (w *Window) recentItems() []*fyne.MenuItem {
	items := []*fyne.MenuItem{fyne.NewMenuItemSeparator()}
	for _, path := range w.store.Recent() {
		item := fyne.NewMenuItem(filepath.Base(path), func() { w.askThen("Open", func() { w.Open(path) }) })
		_, err := os.Stat(path)
		item.Disabled = err != nil
		items = append(items, item)
	}
	if len(items) == 1 {
		return nil
	}
	return items
}
