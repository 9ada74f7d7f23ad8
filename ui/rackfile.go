package ui

import (
	"errors"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"tsugime/export"
	"tsugime/repeat/bench"
)

// chooseRack opens the editor and asks for a rack to bring in.
func (w *Window) chooseRack() {
	w.openRack()
	w.chooseTable(w.rack.bringIn)
}

// bringIn puts the rack of a file in place of what is there, as an edit that can be
// undone.
func (e *rackEditor) bringIn(path string) {
	r, err := fromFile(path, bench.ReadRack)
	if err != nil {
		e.told.SetText(sentence(err))
		return
	}
	if e.do("Bring In a Rack", func(bench.Rack) (bench.Rack, error) { return r, nil }) {
		e.told.SetText(say("%d tools brought in from %s.", len(r.Tools), filepath.Base(path)))
	}
}

// askRackName asks for the name of a file to write the rack to.
func (w *Window) askRackName() {
	d := dialog.NewFileSave(func(to fyne.URIWriteCloser, err error) {
		if err != nil || to == nil {
			return
		}
		path := to.URI().Path()
		to.Close()
		if filepath.Ext(path) != tableExtension {
			os.Remove(path) // the dialog has made an empty file under the bare name
			path += tableExtension
			if _, err := os.Stat(path); err == nil { // the dialog has asked about the bare name only
				w.fail(errors.New(say("there is a %s already; give another name", filepath.Base(path))))
				return
			}
		}
		w.WriteRack(path)
	}, w.win)
	d.SetFileName(say("rack") + tableExtension)
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// WriteRack writes the cutter's rack to a file, whole or not at all.
func (w *Window) WriteRack(path string) bool {
	rack := w.cutterNow().Rack
	err := export.Save(path, true, func(out io.Writer) error { return bench.WriteRack(out, rack) })
	words := say("%d tools written to %s.", len(rack.Tools), filepath.Base(path))
	if err != nil {
		words = sentence(err)
	}
	w.Say(words)
	if w.rack != nil {
		w.rack.told.SetText(words)
	}
	return err == nil
}
