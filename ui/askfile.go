package ui

import (
	"errors"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"
)

func (w *Window) chooseFile() {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			return
		}
		r.Close()
		w.openAsking(r.URI().Path())
	}, w.win)
	d.SetTitleText(say("Open Order"))
	d.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// chooseName asks for a name, saves under it and then goes on.
func (w *Window) chooseName(then func()) {
	w.askName(func(path string) {
		if w.SaveTo(path) {
			then()
		}
	})
}

// askName asks for the name of an order file.
func (w *Window) askName(then func(path string)) {
	d := dialog.NewFileSave(func(to fyne.URIWriteCloser, err error) {
		if err != nil || to == nil {
			return
		}
		path := to.URI().Path()
		to.Close()
		if filepath.Ext(path) != extension {
			os.Remove(path) // the dialog has made an empty file under the bare name
			path += extension
			if _, err := os.Stat(path); err == nil { // the dialog has asked about the bare name only
				w.fail(errors.New(say("there is a %s already; give another name", filepath.Base(path))))
				return
			}
		}
		then(path)
	}, w.win)
	d.SetTitleText(say("Save Order"))
	d.SetFileName(say("order") + extension)
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// askThen does something that lets the order go from this window, after asking what
// becomes of changes where no other window shows it.
func (w *Window) askThen(verb string, do func()) {
	if !w.Changed() || len(w.windows) > 1 {
		do()
		return
	}
	w.askSaved(verb, do)
}

// askSaved asks what becomes of changes, then does something.
func (w *Window) askSaved(verb string, do func()) {
	d := dialog.NewCustomWithoutButtons(say("Save the changes?"), widget.NewLabel(say("The order has changed since it was saved.")), w.win)
	d.SetButtons([]fyne.CanvasObject{
		widget.NewButton(say("Cancel"), func() { d.Hide() }),
		widget.NewButton(say(verb+" without Saving"), func() { d.Hide(); do() }),
		&widget.Button{Text: say("Save"), Importance: widget.HighImportance, OnTapped: func() {
			d.Hide()
			if w.path == "" {
				w.chooseName(do)
				return
			}
			if w.SaveTo(w.path) {
				do()
			}
		}},
	})
	d.Show()
}
