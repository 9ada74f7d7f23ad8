package ui

import (
	"context"
	"slices"
	"sync/atomic"
	"time"

	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
	"tsugime/ui/session"
)

// A state is an order, what was chosen in it, and a number that no other state of
// the program has, so that "changed since it was saved" is one comparison.
type state struct {
	order  document.Order
	chosen []pattern.ID
	number int
}

// An openOrder is one order on the bench, however many windows show it: its history
// and file, and the work that is built of it once for all of them.
type openOrder struct {
	windows []*Window // that show it, the oldest first
	keeper  *session.Keeper

	history document.History[state]
	saved   int    // number of the state that the file holds
	path    string // of the file; "" before the first save
	onDisk  stamp  // of the file as it was read or saved last

	work    repeat.Work     // of the newest state that is built
	grounds grounds         // of work
	built   int             // its number; zero while nothing is built
	fault   error           // why the present state could not be built
	soon    []check.Finding // of the present state while it is being built, as far as they are known
	soonOf  int             // the number of the state that they are of
	cancel  context.CancelFunc
	// building is closed when the rebuild begun last has ended.
	building chan struct{}
	left     atomic.Int32 // how many that were given up go on
}

// Order returns the order as it stands after the last edit.
func (o *openOrder) Order() document.Order { return o.history.Now().order }

// Changed reports whether the order differs from its file.
func (o *openOrder) Changed() bool { return o.history.Now().number != o.saved }

// Ready reports whether the work shown belongs to the present order.
func (o *openOrder) Ready() bool { return o.built == o.history.Now().number }

// keep has the present state kept where no file holds it.
func (o *openOrder) keep() { o.keeper.Keep(o.path, o.Order(), o.Changed()) }

// shown shows the present state in every window and has it built anew.
func (o *openOrder) shown() {
	for _, w := range o.windows {
		w.chosen = kept(o.Order(), w.chosen)
	}
	o.retitle()
	o.rebuild()
	o.renew()
}

// retitle names every window.
func (o *openOrder) retitle() {
	for _, w := range o.windows {
		w.title()
	}
}

// renew shows the present order and work in every window.
func (o *openOrder) renew() {
	for _, w := range o.windows {
		w.refresh()
	}
}

// How long the newest rebuild waits for one that was given up to come to its next stop,
// and how many that take longer may go on beside it, left to end by themselves.
const (
	stopWait = 2 * time.Second
	mostLeft = 1
)

// rebuild carries the order along the line in the background; the newest wins. It waits
// for the one before, which was given up, so that edit upon edit has one at work; but
// where a mistaken edit would be measured for minutes, its undo isn't held up.
func (o *openOrder) rebuild() {
	if o.cancel != nil {
		o.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	now, prev := o.history.Now(), o.work
	before, done := o.building, make(chan struct{})
	o.cancel, o.building, o.fault = cancel, done, nil
	go func() {
		defer close(done)
		o.await(before)
		if ctx.Err() != nil {
			return
		}
		work, err := repeat.RebuildTelling(ctx, prev, now.order, func(f []check.Finding) {
			later(func() { o.tell(now.number, f) })
		})
		var ready grounds
		if err == nil {
			ready, err = groundsOf(ctx, work)
		}
		later(func() {
			if o.history.Now().number != now.number || ctx.Err() != nil {
				return
			}
			o.take(work, ready, err)
		})
	}()
}

// tell shows the findings of a state that are known before it is built.
func (o *openOrder) tell(number int, f []check.Finding) {
	if o.history.Now().number != number || o.Ready() {
		return
	}
	o.soon, o.soonOf = f, number
	for _, w := range o.windows {
		w.right.show(w.stations[w.at])
		w.bar.refresh()
		w.board.Tell()
	}
}

// found returns the findings of the newest state that has any.
func (o *openOrder) found() []check.Finding {
	if o.soonOf > o.built {
		return o.soon
	}
	return o.work.Findings
}

// await waits until a rebuild has ended, or leaves it behind.
func (o *openOrder) await(before chan struct{}) {
	if before == nil {
		return
	}
	select {
	case <-before:
		return
	case <-time.After(stopWait):
	}
	if o.left.Add(1) > mostLeft {
		<-before
		o.left.Add(-1)
		return
	}
	go func() {
		<-before
		o.left.Add(-1)
	}()
}

// take shows what was built of the present state, or why it can't be.
func (o *openOrder) take(work repeat.Work, ready grounds, err error) {
	if o.fault = err; err == nil {
		o.work, o.grounds, o.built = work, ready, o.history.Now().number
	} else {
		for _, w := range o.windows {
			w.Say(sentence(err))
		}
	}
	o.renew()
}

// shownBy lets a window show the order.
func (o *openOrder) shownBy(w *Window) {
	w.openOrder = o
	o.windows = append(o.windows, w)
}

// leave lets a window go from its order. An order that no window shows is no longer
// open: nothing of it is kept but its file.
func (w *Window) leave() {
	w.giveUp()
	o := w.openOrder
	o.windows = slices.DeleteFunc(o.windows, func(v *Window) bool { return v == w })
	if len(o.windows) > 0 {
		o.retitle()
		return
	}
	if o.cancel != nil {
		o.cancel()
	}
	o.keeper.Forget()
	w.orders = slices.DeleteFunc(w.orders, func(other *openOrder) bool { return other == o })
}

// kept returns which of the motifs are still there.
func kept(o document.Order, chosen []pattern.ID) []pattern.ID {
	var ids []pattern.ID
	for _, id := range chosen {
		if _, ok := o.Motif(id); ok {
			ids = append(ids, id)
		}
	}
	return ids
}
