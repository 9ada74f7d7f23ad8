package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// A hinted is a name that tells more in the line below while the pointer is over it.
type hinted struct {
	widget.Label
	hint func()
}

func newHinted(text string, hint func()) *hinted {
	h := &hinted{hint: hint}
	h.Text, h.Truncation = text, fyne.TextTruncateEllipsis
	h.ExtendBaseWidget(h)
	return h
}

// MouseIn is part of desktop.Hoverable.
func (h *hinted) MouseIn(*desktop.MouseEvent) { h.hint() }

// MouseMoved is part of desktop.Hoverable.
func (h *hinted) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of desktop.Hoverable.
func (h *hinted) MouseOut() {}
