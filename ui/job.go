package ui

import (
	"context"
	"errors"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/report"
)

func (w *Window) chooseFolder() {
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			w.overwriteThen(filepath.Join(folder.Path(), jobName(w.path)), w.WriteJob)
		}
	}, w.win)
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// overwriteThen asks before a folder that is there already is written into.
func (w *Window) overwriteThen(folder string, do func(folder string)) {
	if _, err := os.Stat(folder); err != nil {
		do(folder)
		return
	}
	question := widget.NewLabel(say("%s is there already. Its sheets will be written anew.", filepath.Base(folder)))
	dialog.ShowCustomConfirm(say("Write over the job folder?"), say("Write"), say("Cancel"), question, func(yes bool) {
		if yes {
			do(folder)
		}
	}, w.win)
}

// jobName names the folder of an order's sheets.
func jobName(path string) string {
	if path == "" {
		return "job"
	}
	base := filepath.Base(path)
	return base[:len(base)-len(filepath.Ext(base))] + "-job"
}

// WriteJob writes the job folder in the background, with what is being written
// and a way to stop.
func (w *Window) WriteJob(folder string) {
	bar, label := widget.NewProgressBar(), widget.NewLabel(say("Beginning…"))
	d := dialog.NewCustomWithoutButtons(say("Writing the job folder"), container.NewVBox(label, bar), w.win)
	work, cutter := w.work, w.cutterNow()
	options := report.Options{Force: true, Rack: cutter.Rack, Rates: cutter.Rates()}
	stop := w.writes.begin(func(ctx context.Context, post func(func())) {
		files, err := report.JobFolder(ctx, work, folder, options, func(done, of int, name string) {
			post(func() {
				bar.SetValue(float64(done) / float64(of))
				label.SetText(name)
			})
		})
		post(func() {
			d.Hide()
			switch {
			case errors.Is(err, context.Canceled):
				w.Say(say("Stopped; nothing half-written was left."))
			case err != nil:
				w.fail(err)
			default:
				w.Say(say("%d files written to %s.", len(files), folder))
			}
		})
	})
	d.SetButtons([]fyne.CanvasObject{widget.NewButton(say("Stop"), stop)})
	d.Resize(fyne.NewSize(440, 170))
	d.Show()
}
