package ui

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"tsugime/assets"
	"tsugime/export"
	"tsugime/repeat/document"
	"tsugime/ui/session"
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

// lay puts another order on the bench in place of this one.
func (w *Window) lay(o document.Order, path string) {
	w.last++
	w.history, w.saved, w.path = document.Begin(state{order: o, number: w.last}), w.last, path
	w.chosen, w.built = nil, 0
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
	w.lay(o, path)
	w.Say("Opened " + filepath.Base(path) + ".")
}

// SaveTo writes the order to a file, whole or not at all.
func (w *Window) SaveTo(path string) bool {
	if filepath.Ext(path) != extension {
		path += extension
	}
	err := export.Save(path, true, func(to io.Writer) error { return document.Write(to, w.Order()) })
	if err != nil {
		w.fail(err)
		return false
	}
	w.path, w.saved = path, w.history.Now().number
	_ = w.store.Remember(path)
	w.store.Keep(path, w.Order(), false)
	w.title()
	w.Say("Saved " + filepath.Base(path) + ".")
	return true
}

// Save writes to the order's file, or asks for a name where it has none.
func (w *Window) Save() {
	if w.path == "" {
		w.saveAs()
		return
	}
	w.SaveTo(w.path)
}

// saveAs asks for a name and saves.
func (w *Window) saveAs() { w.chooseName(func() {}) }

func (w *Window) fail(err error) { dialog.ShowError(fmt.Errorf("%s", sentence(err)), w.win) }

// close closes the window after asking what becomes of changes.
func (w *Window) close() {
	w.askThen("Close", func() {
		if w.cancel != nil {
			w.cancel()
		}
		w.win.Close()
	})
}

// dropped opens an order that is dropped on the window.
func (w *Window) dropped(_ fyne.Position, uris []fyne.URI) {
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

// Recover offers a state that was not saved when the program ended.
func (w *Window) Recover(k session.Kept) {
	text := fmt.Sprintf("“%s” was changed and not saved. Its state of %s was kept.", k.Order.Title, k.Time.Format("2 January 15:04"))
	dialog.ShowCustomConfirm("Take up where you stopped?", "Take It Up", "Leave It", widget.NewLabel(text), func(yes bool) {
		if !yes {
			w.store.Forget()
			return
		}
		w.lay(k.Order, k.Path)
		w.saved = 0
		w.title()
		w.Say("Taken up as it was kept; save it to keep it for good.")
	}, w.win)
}
