package ui

import (
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// A stamp tells one state of a file from another; the zero stamp is no file.
type stamp struct {
	time time.Time
	size int64
}

func stampOf(path string) stamp {
	info, err := os.Stat(path)
	if err != nil {
		return stamp{}
	}
	return stamp{info.ModTime(), info.Size()}
}

// writtenElsewhere reports whether the order's file is another than the one that
// was read or saved last. A file that is gone is no other one: saving makes it
// anew.
func (w *Window) writtenElsewhere() bool {
	now := stampOf(w.path)
	return w.path != "" && now != stamp{} && now != w.onDisk
}

// lookAtDisk asks what to do where another program has written the order's file
// since it was read; each such state of the file is asked about once.
func (w *Window) lookAtDisk() {
	if !w.writtenElsewhere() || w.win.Canvas().Overlays().Top() != nil {
		return
	}
	w.onDisk = stampOf(w.path)
	o, err := ReadFile(w.path)
	if err == nil && !w.Changed() && sameFile(o, w.Order()) {
		return
	}
	w.saved = 0 // what is on the bench is not what the file holds
	w.retitle()
	name := filepath.Base(w.path)
	if err != nil {
		w.Say(say("%s was written by another program and can't be read now; saving writes over it.", name))
		return
	}
	words := widget.NewLabel(say("%s was written by another program. Reading it again lays what it holds now on the bench; what is there now is one undo away.", name))
	words.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustomWithoutButtons(say("The file has changed"), words, w.win)
	d.SetButtons([]fyne.CanvasObject{
		widget.NewButton(say("Keep What Is on the Bench"), d.Hide),
		&widget.Button{Text: say("Read It Again"), Importance: widget.HighImportance, OnTapped: func() {
			d.Hide()
			w.readAgain()
		}},
	})
	d.Resize(fyne.NewSize(480, 180))
	d.Show()
}

// readAgain lays what the file holds on the bench, as an edit that can be undone.
func (w *Window) readAgain() {
	o, err := ReadFile(w.path)
	if err != nil {
		w.fail(err)
		return
	}
	w.onDisk = stampOf(w.path)
	w.Edit("Read Again", replaceBy(o))
	w.saved = w.history.Now().number
	w.keep()
	w.retitle()
}
