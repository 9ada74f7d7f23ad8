package ui

import (
	"context"
	"sync"
	"sync/atomic"
	"time"

	"fyne.io/fyne/v2"
)

// A writing is files that are being written in the background. Whoever leaves
// meanwhile stops it, and waits until nothing half-written is left.
type writing struct {
	stop  atomic.Pointer[context.CancelFunc] // nil while nothing is written
	going sync.WaitGroup
	left  atomic.Bool // the window is shut: nothing more can be shown in it
}

// begin writes files in the background. The function posts what it has to show.
func (g *writing) begin(write func(ctx context.Context, post func(func()))) context.CancelFunc {
	ctx, cancel := context.WithCancel(context.Background())
	g.stop.Store(&cancel)
	g.going.Go(func() {
		write(ctx, func(f func()) {
			if !g.left.Load() {
				later(f)
			}
		})
		cancel()
		g.stop.CompareAndSwap(&cancel, nil)
	})
	return cancel
}

// Leave stops what is written in the background; from now on nothing more is shown in
// the window. It may be called on any goroutine.
func (w *Window) Leave() {
	w.writes.left.Store(true)
	if stop := w.writes.stop.Load(); stop != nil {
		(*stop)()
	}
}

// Rest leaves and waits until nothing half-written is left, but not longer than it is
// given. It reports whether all has come to rest.
func (w *Window) Rest(patience time.Duration) bool {
	w.Leave()
	rest := make(chan struct{})
	go func() {
		w.writes.going.Wait()
		close(rest)
	}()
	select {
	case <-rest:
		return true
	case <-time.After(patience):
		return false
	}
}

// leaves reports whether a command shuts the window. While files are written it can be
// done, though their dialog lies over the window.
func (c command) leaves() bool {
	k := c.keys[0]
	return k.Modifier == ctrl && (k.KeyName == fyne.KeyW || k.KeyName == fyne.KeyQ)
}
