package ui

import (
	"bytes"
	"fmt"
	"reflect"
	"strings"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// clipboardCommands hand motifs on, to other windows too: what is copied is the text of
// an order that has the chosen motifs alone.
func clipboardCommands() []command {
	return []command{
		{"Edit", named("Cut Motifs"), keys(key(fyne.KeyX, ctrl)), arranging, (*Window).cutMotifs},
		{"Edit", named("Copy Motifs"), keys(key(fyne.KeyC, ctrl)), arranging, (*Window).copyMotifs},
		{"Edit", named("Paste Motifs"), keys(key(fyne.KeyV, ctrl)), placing, (*Window).pasteMotifs},
	}
}

// fieldTakes hands a shortcut that is a field's own to the field that is written in, and
// reports whether there is one: in a dialog too, since Fyne asks the menus first.
func (w *Window) fieldTakes(c command) bool {
	f, ok := w.win.Canvas().Focused().(fyne.Shortcutable)
	if !ok || f == fyne.Shortcutable(w.board) {
		return false
	}
	clip := w.app.Clipboard()
	for _, k := range c.keys {
		switch asFyneSends(k).(type) {
		case *fyne.ShortcutCopy:
			f.TypedShortcut(&fyne.ShortcutCopy{Clipboard: clip})
		case *fyne.ShortcutCut:
			f.TypedShortcut(&fyne.ShortcutCut{Clipboard: clip})
		case *fyne.ShortcutPaste:
			f.TypedShortcut(&fyne.ShortcutPaste{Clipboard: clip})
		case *fyne.ShortcutSelectAll:
			f.TypedShortcut(&fyne.ShortcutSelectAll{})
		default:
			continue
		}
		return true
	}
	return false
}

// copyMotifs puts the chosen motifs on the clipboard.
func (w *Window) copyMotifs() { w.copied() }

func (w *Window) copied() bool {
	var text bytes.Buffer
	taken, err := document.Taken(w.Order(), w.chosen...)
	if err == nil {
		err = document.Write(&text, taken)
	}
	if err != nil {
		w.Say(sentence(err))
		return false
	}
	w.app.Clipboard().SetContent(text.String())
	w.Say(counted(len(w.chosen), "motif copied.", "motifs copied."))
	return true
}

// cutMotifs puts the chosen motifs on the clipboard and takes them away.
func (w *Window) cutMotifs() {
	if ids := w.chosen; w.copied() {
		w.Edit("Cut Motifs", func(o document.Order) (document.Order, error) { return document.DeleteMotifs(o, ids...) })
	}
}

// pasteMotifs adds the motifs of the order on the clipboard where they stood, or beside
// that where such motifs stand already, and chooses them.
func (w *Window) pasteMotifs() {
	from, err := document.Read(strings.NewReader(w.app.Clipboard().Content()))
	if err == nil && len(from.Unit.Motifs) == 0 {
		err = fmt.Errorf("the order on the clipboard has no motifs; copy some first")
	}
	if err != nil {
		w.Say(say("There are no motifs on the clipboard: choose some and copy them with Ctrl+C."))
		return
	}
	before, next := w.chosen, w.Order().NextID
	w.chosen = nil
	for i := range from.Unit.Motifs {
		w.chosen = append(w.chosen, next+pattern.ID(i))
	}
	if !w.Edit("Paste Motifs", func(o document.Order) (document.Order, error) { return document.Paste(o, from, besideThem(o, from)) }) {
		w.chosen = before
	}
}

// besideThem is the way by which pasted motifs lie clear of their own like: nothing where
// none of them is there, else as often as it needs a step to the right.
func besideThem(o, from document.Order) geom.Point {
	var box geom.Box
	for _, m := range from.Unit.Motifs {
		box = box.Union(m.Placed().Bounds().Moved(m.At.Neg()))
	}
	step := snapped(geom.Point{X: box.Width().Times(1.25) + o.Sheet.WebLimit})
	by := geom.Point{}
	for range 50 {
		if !anyAlike(o, from, by) {
			return by
		}
		by = by.Add(step)
	}
	return by
}

// anyAlike reports whether a motif, moved by a way, would lie on one of its own shape.
func anyAlike(o, from document.Order, by geom.Point) bool {
	for _, m := range from.Unit.Motifs {
		at := o.Unit.Lattice.Into(m.At.Add(by))
		for _, q := range o.Unit.Motifs {
			if o.Unit.Lattice.Into(q.At) == at && reflect.DeepEqual(q.Shape, m.Shape) {
				return true
			}
		}
	}
	return false
}
