package ui

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/ui/session"
)

// A leftList offers the states that ended runs have left. Closed without an answer it
// loses nothing: they stay where they are, and the menu offers them again.
type leftList struct {
	w      *Window
	rows   *fyne.Container
	dialog *dialog.CustomDialog
}

// OfferLeft offers what runs that ended before saving have left, if anything.
func (w *Window) OfferLeft() {
	if w.remains = append(w.remains, w.store.Left()...); len(w.remains) > 0 {
		w.showLeft()
	}
}

// showLeft lists what was left, the newest first.
func (w *Window) showLeft() {
	l := &leftList{w: w, rows: container.New(layout.NewCustomPaddedVBoxLayout(8))}
	words := widget.NewLabel(say("These orders were changed and not saved when the program ended. Whatever is neither taken up nor thrown away is offered again."))
	words.Wrapping = fyne.TextWrapWord
	scroll := container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, 14), l.rows))
	scroll.SetMinSize(fyne.NewSize(620, float32(min(len(w.remains), 4))*(starterSide+10)))
	l.dialog = dialog.NewCustom(say("Take up where you stopped?"), say("Decide Later"), container.NewBorder(words, nil, nil, nil, scroll), w.win)
	l.dialog.Show()
	l.fill()
}

// fill shows the states that are still without an answer; the first one can be taken
// up by the space bar.
func (l *leftList) fill() {
	if len(l.w.remains) == 0 {
		l.dialog.Hide()
		return
	}
	l.rows.Objects = nil
	var first fyne.Focusable
	for _, left := range l.w.remains {
		take := widget.NewButton(say("Take It Up"), func() { l.answer(left, l.w.takeUp) })
		take.Importance = widget.HighImportance
		throw := widget.NewButton(say("Throw It Away"), func() { l.answer(left, (*session.Left).Forget) })
		if first == nil {
			first = take
		}
		picture := canvas.NewImageFromImage(starterPicture(left.Order.Design()))
		picture.FillMode = canvas.ImageFillContain
		picture.SetMinSize(fyne.NewSquareSize(starterSide))
		title := widget.NewLabelWithStyle(left.Order.Title, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
		title.Truncation = fyne.TextTruncateEllipsis
		about := quietLabel()
		about.SetText(aboutLeft(left))
		l.rows.Add(container.NewBorder(nil, nil, picture, container.NewVBox(take, throw), container.NewVBox(title, about)))
	}
	l.rows.Refresh()
	l.w.win.Canvas().Focus(first)
}

// aboutLeft tells when a state was kept, and of which file.
func aboutLeft(left *session.Left) string {
	when := left.Time.Format("2006-01-02 15:04")
	switch now := stampOf(left.Path); {
	case left.Path == "":
		return say("Kept at %s; it was never saved.", when)
	case now.time.After(left.Time):
		return say("Kept at %s; %s was written later than that.", when, filepath.Base(left.Path))
	default:
		return say("Kept at %s; of %s.", when, filepath.Base(left.Path))
	}
}

// answer does with a state what was chosen, and takes it from the list.
func (l *leftList) answer(left *session.Left, do func(*session.Left)) {
	var rest []*session.Left
	for _, other := range l.w.remains {
		if other != left {
			rest = append(rest, other)
		}
	}
	l.w.remains = rest
	do(left)
	l.fill()
	l.w.each((*Window).title) // the menu offers it no more
}

// takeUp goes on with a state: as an edit where its file is open, else on this bench
// where only a fresh starter lies on it, else in a window of its own.
func (w *Window) takeUp(left *session.Left) {
	target := w
	switch o := w.openAt(left.Path); {
	case o != nil:
		if o != w.openOrder {
			target = o.windows[0]
		}
		target.Edit("Take Up", replaceBy(left.Order))
	case w.path == "" && !w.Changed() && len(w.windows) == 1:
		w.lay(left.Order, left.Path, false)
	default:
		target = w.window(w.open(left.Order, left.Path, false), draftAt)
		target.win.Show()
	}
	if err := target.keeper.TakeOver(left); err != nil {
		target.keep()
		if err = target.keeper.Flush(); err != nil {
			w.fail(err)
			return
		}
		left.Forget()
	}
	target.Say(say("Taken up as it was kept; save it to keep it for good."))
}
