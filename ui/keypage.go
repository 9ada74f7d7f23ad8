package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// showKeys lists the keys of the table.
func (w *Window) showKeys() {
	rows := container.New(layout.NewCustomPaddedVBoxLayout(-8))
	row := func(name, keys string) {
		rows.Add(container.NewGridWithColumns(2, widget.NewLabel(name),
			widget.NewLabelWithStyle(keys, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})))
	}
	for _, c := range commands() {
		row(c.name(w), strings.Join(keyNames(c), "  ·  "))
	}
	row(say("Zoom to the pointer"), say("wheel; with Ctrl finely"))
	row(say("Move the view"), say("drag with the middle button or with space held; away from the draft also on nothing"))
	row(say("Choose one more"), say("Shift or Ctrl with a click"))
	row(say("Choose with a frame"), say("at the draft: drag on nothing; with Shift it adds"))
	row(say("Let a place go free"), say("Shift, while drawing or shaping"))
	row(say("Move a handle alone"), say("Ctrl, while shaping"))
	row(say("Turn a vector of the lattice freely"), say("Ctrl, while its handle is dragged; with Shift it keeps to whole nudges"))
	row(say("Draw a tie"), say("at the stencil, after T: drag across a cut-out"))
	row(say("Add a point to the joint line drawn by hand"), say("Shift with a click on it"))
	scroll := container.NewVScroll(rows)
	scroll.SetMinSize(fyne.NewSize(720, 520))
	dialog.ShowCustom(say("Keys"), say("Done"), scroll, w.win)
}

// keyNames are a command's keys as they are printed on a keyboard.
func keyNames(c command) []string {
	names := make([]string, len(c.keys))
	for i, k := range c.keys {
		names[i] = keyName(k)
	}
	return names
}

// keyName is a key as it is printed on a keyboard.
func keyName(k *desktop.CustomShortcut) string {
	var parts []string
	if k.Modifier&ctrl != 0 {
		parts = append(parts, "Ctrl")
	}
	if k.Modifier&alt != 0 {
		parts = append(parts, "Alt")
	}
	if k.Modifier&shift != 0 {
		parts = append(parts, "Shift")
	}
	return strings.Join(append(parts, string(k.KeyName)), "+")
}
