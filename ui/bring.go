package ui

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
)

// mostEach is how many outlines come onto the shelf each by itself, unless asked for.
const mostEach = 24

// outlineExtensions are those of files that outlines are brought in from.
var outlineExtensions = []string{".svg", ".dxf", ".SVG", ".DXF"}

func outlineFile(path string) bool { return slices.Contains(outlineExtensions, filepath.Ext(path)) }

// chooseOutlines asks for a file of outlines and brings it in.
func (w *Window) chooseOutlines() {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil || r == nil {
			return
		}
		r.Close()
		w.BringIn(r.URI().Path())
	}, w.win)
	d.SetTitleText(say("Bring In Outlines"))
	d.SetFilter(storage.NewExtensionFileFilter(outlineExtensions))
	d.Resize(fyne.NewSize(860, 600))
	d.Show()
}

// BringIn reads a file of outlines and shows what it holds, to be put on the shelf.
func (w *Window) BringIn(path string) { w.bringIn(path, geom.Unit{}) }

func (w *Window) bringIn(path string, unit geom.Unit) {
	name := filepath.Base(path)
	w.background(say("Reading the outlines…"), func(context.Context) (func(), error) {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, fmt.Errorf("open %s: %w", name, err)
		}
		d, along, err := readOutlines(data, unit)
		var none outlinefile.NoUnit
		switch {
		case errors.As(err, &none):
			return func() { w.askUnit(path) }, nil
		case err != nil:
			return nil, fmt.Errorf("%s: %w", name, err)
		case len(d.Pieces) == 0:
			return nil, errors.New(say("%s: nothing in it can be cut; %s", name, firstNote(d)))
		}
		return func() { newBrought(w, strings.TrimSuffix(name, filepath.Ext(name)), d, along).ask() }, nil
	})
}

// readOutlines reads a file of outlines, and where it has strokes also with these as
// lines to cut along.
func readOutlines(data []byte, unit geom.Unit) (d, along outlinefile.Drawing, err error) {
	d, err = outlinefile.Read(bytes.NewReader(data), outlinefile.Options{Unit: unit})
	if err == nil && d.Stroked() {
		along, err = outlinefile.Read(bytes.NewReader(data), outlinefile.Options{Unit: unit, Lines: true})
	}
	return d, along, err
}

func firstNote(d outlinefile.Drawing) string {
	if len(d.Notes) == 0 {
		return say("it draws no outline")
	}
	return noteWords(d.Notes[0])
}

func noteWords(n outlinefile.Note) string {
	if n.Line == 0 {
		return told(n.Text)
	}
	return say("line %d: %s", n.Line, told(n.Text))
}

// askUnit asks what a file measures in that doesn't say so.
func (w *Window) askUnit(path string) {
	units := []geom.Unit{geom.MMUnit, geom.CMUnit, geom.MUnit, geom.InchUnit}
	var names []string
	for _, u := range units {
		names = append(names, say(u.Name))
	}
	choice := newSelect(names, nil)
	choice.SetSelectedIndex(0)
	words := widget.NewLabel(say("The file doesn't say what it measures in. One of its units is one"))
	dialog.ShowCustomConfirm(filepath.Base(path), say("Bring In"), say("Cancel"), container.NewVBox(words, choice), func(yes bool) {
		if yes {
			w.bringIn(path, units[choice.SelectedIndex()])
		}
	}, w.win)
}

// A brought is what was read of a file, before it is put on the shelf.
type brought struct {
	w     *Window
	name  string
	bands outlinefile.Drawing // with strokes as bands
	along outlinefile.Drawing // with strokes as lines to cut along; empty for none
	d     outlinefile.Drawing // the one of them that is shown
	words *widget.Label
	lines *widget.Check
	each  *widget.RadioGroup
	width *entry
	notes *widget.Label
}

func newBrought(w *Window, name string, d, along outlinefile.Drawing) *brought {
	b := &brought{w: w, name: name, bands: d, along: along, words: widget.NewLabel(""), notes: widget.NewLabel("")}
	b.notes.Wrapping = fyne.TextWrapWord
	b.each = widget.NewRadioGroup([]string{say("All as one shape"), say("Each by itself")}, nil)
	b.each.Required = true
	b.width = newEntry(func(string) {})
	b.lines = widget.NewCheck(say("Strokes are lines to cut along"), func(on bool) {
		if b.show(b.bands); on {
			b.show(b.along)
		}
	})
	b.show(d)
	return b
}

// show makes one of the readings the one that is kept.
func (b *brought) show(d outlinefile.Drawing) {
	b.d = d
	box, u := d.Bounds(), b.w.unit()
	b.words.SetText(say("%d outlines, together %s across and %s along.", len(d.Pieces), u.Format(box.Width(), 3), u.Format(box.Height(), 3)))
	b.width.put(u.Format(box.Width(), 4))
	b.each.SetSelected(b.each.Options[0])
	if len(d.Pieces) <= mostEach {
		b.each.SetSelected(b.each.Options[1])
	}
	var notes []string
	for _, n := range d.Notes {
		notes = append(notes, noteWords(n))
	}
	if len(notes) == 0 {
		notes = []string{say("nothing")}
	}
	b.notes.SetText(strings.Join(notes, "\n"))
}

// ask shows what was read and what was left out, and puts it on the shelf.
func (b *brought) ask() {
	f := &form{w: b.w}
	f.add(b.words)
	f.add(b.each)
	if len(b.along.Pieces) > 0 {
		f.add(b.lines)
	}
	f.row("Together across", b.width)
	f.heading("Left out, or taken otherwise")
	scroll := container.NewVScroll(b.notes)
	scroll.SetMinSize(fyne.NewSize(440, 120))
	f.add(scroll)
	d := dialog.NewCustomConfirm(b.name, say("Put on the Shelf"), say("Cancel"), f.content(), func(yes bool) {
		if yes {
			b.keep()
		}
	}, b.w.win)
	d.Resize(fyne.NewSize(500, 220))
	d.Show()
}

// keep puts what was read on the shelf and takes the first of it in hand.
func (b *brought) keep() {
	width, err := geom.ParseLength(b.width.Text, b.w.unit())
	if err != nil || width <= 0 {
		b.w.Say(say("%q is no width; the outlines were not brought in.", b.width.Text))
		return
	}
	d := b.d
	if b.each.Selected == b.each.Options[0] {
		d = d.AsOne()
	}
	if b.width.Text != b.w.unit().Format(b.d.Bounds().Width(), 4) {
		d = d.Scaled(float64(width) / float64(b.d.Bounds().Width()))
	}
	first := ""
	if !b.w.Edit("Bring In Outlines", func(o document.Order) (document.Order, error) {
		for _, p := range d.Pieces {
			shape, _ := p.Centred()
			name := o.FreeShelfName(b.name)
			if first == "" {
				first = name
			}
			next, err := document.PutOnShelf(o, document.ShelfMotif{Name: name, Shape: shape})
			if err != nil {
				return o, err
			}
			o = next
		}
		return o, nil
	}) {
		return
	}
	b.w.GoTo(draftAt)
	b.w.stations[draftAt].(*draft).shelf.take(first)
}
