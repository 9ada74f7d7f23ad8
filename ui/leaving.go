package ui

import (
	"context"
	"slices"
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

// leave stops what is written; from now on nothing more is shown.
func (g *writing) leave() {
	g.left.Store(true)
	if stop := g.stop.Load(); stop != nil {
		(*stop)()
	}
}

// The writings are those of every window that the program has opened.
type writings struct {
	mu  sync.Mutex
	all []*writing
}

func (s *writings) add(g *writing) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.all = append(s.all, g)
}

// each does something with every one of them.
func (s *writings) each(do func(g *writing)) {
	s.mu.Lock()
	all := slices.Clone(s.all)
	s.mu.Unlock()
	for _, g := range all {
		do(g)
	}
}

// Leave stops what is written in the background by any window; from now on nothing more
// is shown of it. It may be called on any goroutine.
func (s *workshop) Leave() { s.writings.each((*writing).leave) }

// Rest leaves and waits until nothing half-written is left, but not longer than it is
// given. It reports whether all has come to rest.
func (s *workshop) Rest(patience time.Duration) bool {
	s.Leave()
	rest := make(chan struct{})
	go func() {
		s.writings.each(func(g *writing) { g.going.Wait() })
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
