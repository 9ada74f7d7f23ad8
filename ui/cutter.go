package ui

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"tsugime/repeat/bench"
	"tsugime/ui/session"
)

// cutterNow returns what is kept of the cutter for all orders; it is read again where
// another window has written it. What can't be read is told.
func (w *Window) cutterNow() session.Cutter {
	now := w.store.CutterState()
	if w.cutterRead > 0 && now == w.cutterState {
		return w.cutter
	}
	c, err := w.store.Cutter()
	w.cutter, w.cutterState = c, now
	w.cutterRead++
	if err != nil {
		w.Say(sentence(err))
	}
	return c
}

// keepCutter shows the cutter as it is now, once it was written.
func (w *Window) keepCutter(c session.Cutter, err error) bool {
	if err != nil {
		w.Say(sentence(err))
		return false
	}
	w.cutter, w.cutterState = c, w.store.CutterState()
	w.cutterRead++
	w.refresh()
	return true
}

// keepRack makes r the rack of all orders.
func (w *Window) keepRack(r bench.Rack) bool {
	c := w.cutterNow()
	c.Rack = r
	return w.keepCutter(c, w.store.KeepRack(r))
}

// setDay sets the hours of a day at the bench.
func (w *Window) setDay(text string) bool {
	text = strings.ReplaceAll(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), say("h"))), ",", ".")
	hours, err := strconv.ParseFloat(text, 64)
	if err != nil {
		w.Say(say("%q is no number.", text))
		return false
	}
	c := w.cutterNow()
	c.DayHours = hours
	return w.keepCutter(c, w.store.KeepDay(hours))
}

// BringInJobs reads finished jobs from a file of comma-separated values; the rates are
// learnt from them from then on.
func (w *Window) BringInJobs(path string) bool {
	jobs, err := fromFile(path, bench.ReadJobs)
	if err != nil {
		w.Say(sentence(err))
		return false
	}
	c := w.cutterNow()
	c.Jobs = jobs
	if !w.keepCutter(c, w.store.KeepJobs(jobs)) {
		return false
	}
	w.Say(say("%d finished jobs brought in.", len(jobs)))
	return true
}

func (w *Window) chooseJobs() { w.chooseTable(func(path string) { w.BringInJobs(path) }) }

// tableExtension is that of files of comma-separated values.
const tableExtension = ".csv"

// chooseTable asks for a file of comma-separated values.
func (w *Window) chooseTable(then func(path string)) {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			return
		}
		r.Close()
		then(r.URI().Path())
	}, w.win)
	d.SetFilter(storage.NewExtensionFileFilter([]string{tableExtension}))
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// fromFile reads a table; its errors name the file.
func fromFile[T any](path string, read func(in io.Reader) (T, error)) (T, error) {
	var none T
	f, err := os.Open(path)
	if err != nil {
		return none, err
	}
	defer f.Close()
	table, err := read(f)
	if err != nil {
		return none, fmt.Errorf("%s: %w", filepath.Base(path), err)
	}
	return table, nil
}
