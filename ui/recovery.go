package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"tsugime/ui/session"
)

// Recover offers a state that was not saved when the program ended, with its time
// and its pattern.
func (w *Window) Recover(k session.Kept) {
	text := widget.NewLabel(say("“%s” was changed and not saved. Its state of %s was kept.", k.Order.Title, k.Time.Format("2006-01-02 15:04")))
	text.Wrapping = fyne.TextWrapWord
	picture := canvas.NewImageFromImage(starterPicture(k.Order.Design()))
	picture.FillMode = canvas.ImageFillContain
	picture.SetMinSize(fyne.NewSquareSize(starterPixels))
	d := dialog.NewCustomConfirm(say("Take up where you stopped?"), say("Take It Up"), say("Leave It"),
		container.NewBorder(nil, nil, picture, nil, text), func(yes bool) {
			if !yes {
				w.store.Forget()
				return
			}
			w.lay(k.Order, k.Path, false)
			w.Say(say("Taken up as it was kept; save it to keep it for good."))
		}, w.win)
	d.Resize(fyne.NewSize(560, 300))
	d.Show()
}
