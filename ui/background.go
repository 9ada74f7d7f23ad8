package ui

import (
	"context"
	"errors"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// patience is how long work in the background goes on before it shows itself.
const patience = time.Second

// later does f on the window's own goroutine, on which alone the window is read and
// changed. Tests have no such goroutine: they take what was posted while they wait.
var later = fyne.Do

// background does something that may take long and shows what came of it by the
// function that it returns. Beyond a second it shows that it is at work, with a
// way to stop it. What was begun before is given up.
func (w *Window) background(title string, do func(ctx context.Context) (func(), error)) {
	w.giveUp()
	ctx, stop := context.WithCancel(context.Background())
	done, before, ended := make(chan struct{}), w.working, make(chan struct{})
	w.stop, w.task, w.working = stop, done, ended
	var d *dialog.CustomDialog
	go func() {
		select {
		case <-done:
			return
		case <-time.After(patience):
		}
		later(func() {
			select {
			case <-done:
			default:
				d = w.atWork(title, stop)
			}
		})
	}()
	go func() {
		if before != nil {
			<-before // it was given up, and may have a while to go to its next stop
		}
		var then func()
		err := ctx.Err()
		if err == nil {
			then, err = do(ctx)
		}
		close(ended)
		later(func() {
			defer close(done)
			given := ctx.Err() != nil
			stop()
			if d != nil {
				d.Hide()
			}
			switch {
			case given || errors.Is(err, context.Canceled):
				w.Say(say("Stopped; nothing was changed."))
			case err != nil:
				w.Say(sentence(err))
			default:
				then()
			}
		})
	}()
}

// giveUp stops what goes on in the background.
func (w *Window) giveUp() {
	if w.stop != nil {
		w.stop()
	}
}

// atWork shows that something is being worked out.
func (w *Window) atWork(title string, stop func()) *dialog.CustomDialog {
	bar := widget.NewProgressBarInfinite()
	words := widget.NewLabel(say("The order stays as it is until this is done."))
	d := dialog.NewCustomWithoutButtons(title, container.NewVBox(words, bar), w.win)
	d.SetButtons([]fyne.CanvasObject{widget.NewButton(say("Stop"), stop)})
	d.SetOnClosed(func() {
		bar.Stop()
		stop() // closed by Escape it is given up
	})
	d.Resize(fyne.NewSize(440, 170))
	d.Show()
	return d
}
