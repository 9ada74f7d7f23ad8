package ui

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"tsugime/assets"
	"tsugime/export"
	"tsugime/export/report"
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

func (w *Window) chooseFile() {
	w.askThen("Open", func() {
		d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
			if err != nil || r == nil {
				return
			}
			r.Close()
			w.Open(r.URI().Path())
		}, w.win)
		d.SetFilter(storage.NewExtensionFileFilter([]string{extension}))
		d.Resize(fyne.NewSize(860, 600))
		d.Show()
	})
}

// chooseName asks for a name, saves under it and then goes on.
func (w *Window) chooseName(then func()) {
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
				w.fail(fmt.Errorf("save: there is a %s already; give another name", filepath.Base(path)))
				return
			}
		}
		if w.SaveTo(path) {
			then()
		}
	}, w.win)
	d.SetFileName("order" + extension)
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// chooseStarter offers the starters with what they are.
func (w *Window) chooseStarter() {
	w.askThen("Begin Anew", func() {
		list := container.NewVBox()
		var d *dialog.CustomDialog
		for _, s := range assets.Starters() {
			about := widget.NewLabel(s.About)
			about.Wrapping, about.Importance = fyne.TextWrapWord, widget.LowImportance
			list.Add(widget.NewButton(s.Title, func() {
				d.Hide()
				o, err := ReadStarter(s.Name)
				if err != nil {
					w.fail(err)
					return
				}
				w.lay(o, "")
			}))
			list.Add(about)
		}
		scroll := container.NewVScroll(list)
		scroll.SetMinSize(fyne.NewSize(480, 420))
		d = dialog.NewCustom("Begin with", "Cancel", scroll, w.win)
		d.Show()
	})
}

// askThen does something that lets the order go, after asking what becomes of
// changes.
func (w *Window) askThen(verb string, do func()) {
	if !w.Changed() {
		do()
		return
	}
	d := dialog.NewCustomWithoutButtons("Save the changes?", widget.NewLabel("The order has changed since it was saved."), w.win)
	d.SetButtons([]fyne.CanvasObject{
		widget.NewButton(say("Cancel"), func() { d.Hide() }),
		widget.NewButton(verb+" without Saving", func() { d.Hide(); w.store.Forget(); do() }),
		&widget.Button{Text: "Save", Importance: widget.HighImportance, OnTapped: func() {
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
	question := widget.NewLabel(filepath.Base(folder) + " " + say("is there already. Its sheets will be written anew."))
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
	ctx, cancel := context.WithCancel(context.Background())
	bar, label := widget.NewProgressBar(), widget.NewLabel("Beginning…")
	d := dialog.NewCustomWithoutButtons("Writing the job folder", container.NewVBox(label, bar), w.win)
	d.SetButtons([]fyne.CanvasObject{widget.NewButton(say("Stop"), cancel)})
	d.Resize(fyne.NewSize(440, 170))
	d.Show()
	work := w.work
	go func() {
		files, err := report.JobFolder(ctx, work, folder, report.Options{Force: true}, func(done, of int, name string) {
			fyne.Do(func() {
				bar.SetValue(float64(done) / float64(of))
				label.SetText(name)
			})
		})
		fyne.Do(func() {
			defer cancel()
			d.Hide()
			switch {
			case errors.Is(err, context.Canceled):
				w.Say("Stopped; nothing half-written was left.")
			case err != nil:
				w.fail(err)
			default:
				w.Say(fmt.Sprintf("%d files written to %s.", len(files), folder))
			}
		})
	}()
}
