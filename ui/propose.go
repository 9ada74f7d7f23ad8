package ui

import (
	"context"
	"fmt"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/stencil"
)

// A proposal is how the paper could be held, and what it can't hold.
type proposal func(ctx context.Context, o document.Order) (document.Order, []stencil.Unheld, error)

func (w *Window) proposeTies() { w.propose("Propose Ties", document.ProposeTies) }

func (w *Window) proposeSplit() { w.propose("Propose a Split", document.ProposeSplit) }

// propose works a proposal out in the background and makes it one edit.
func (w *Window) propose(name string, p proposal) {
	before := w.history.Now()
	w.Say(say("%s…", say(name)))
	w.background(say(name), func(ctx context.Context) (func(), error) {
		next, unheld, err := p(ctx, before.order)
		return func() { w.proposed(name, before, next, unheld) }, err
	})
}

// proposed takes a proposal over, if the order is still the one it is for.
func (w *Window) proposed(name string, before state, next document.Order, unheld []stencil.Unheld) {
	h, was := next.Sheet.Hold, before.order.Sheet.Hold
	bare := len(h.Ties)+len(h.Second.Ties)+len(h.Second.Motifs)+len(unheld) == 0
	switch {
	case w.history.Now().number != before.number:
		w.Say(say("The order has changed meanwhile; ask again."))
		return
	case bare && was.Way == stencil.AsDrawn && h.Way == stencil.WithTies:
		w.Say(say("The paper holds as it is drawn: no tie is needed."))
		return
	case bare && was.Way != stencil.Split && h.Way == stencil.Split:
		w.Say(say("The paper holds on one sheet: there is nothing for a second one to cut."))
		return
	}
	if !w.Edit(name, func(document.Order) (document.Order, error) { return next, nil }) {
		return
	}
	w.Say(say("%s: %s", say(name), proposalWords(h, unheld)))
	s := w.stencilStation()
	s.unheld, s.unheldOf = unheld, w.history.Now().number
	w.refresh()
}

// proposalWords tells what a proposal is.
func proposalWords(h stencil.Hold, unheld []stencil.Unheld) string {
	text := counted(len(h.Ties), "tie", "ties")
	if h.Way == stencil.Split {
		text = say("%s on the first sheet, %s on the second, %s", text, counted(len(h.Second.Ties), "tie", "ties"),
			counted(len(h.Second.Motifs), "motif that only it cuts", "motifs that only it cuts"))
	}
	if len(unheld) > 0 {
		text += say("; ") + counted(len(unheld), "place can't be held", "places can't be held")
	}
	return say("%s.", text)
}

// unheldWords tells what could not be held and why, each reason once.
func unheldWords(unheld []stencil.Unheld) string {
	const most = 4
	count := map[string]int{}
	var reasons []string
	for _, u := range unheld {
		if count[u.Why]++; count[u.Why] == 1 {
			reasons = append(reasons, u.Why)
		}
	}
	var lines []string
	for i, why := range reasons {
		if i == most {
			lines = append(lines, say("and %d more reasons", len(reasons)-most))
			break
		}
		line := told(why)
		if count[why] > 1 {
			line = fmt.Sprintf("%d × %s", count[why], line)
		}
		lines = append(lines, line)
	}
	return say("Not held: %s.", strings.Join(lines, say("; ")))
}

// takeIdleTies takes the ties away that don't lead from paper to paper.
func (w *Window) takeIdleTies() {
	if !w.Ready() {
		w.Say(say("Still measuring; ask again in a moment."))
		return
	}
	set := w.work.Sheet.Set()
	w.Edit("Take Idle Ties Away", func(o document.Order) (document.Order, error) {
		var err error
		for n, sheet := range set {
			var idle []int
			for i, t := range sheet.Ties.Ties {
				if !t.Bridges() {
					idle = append(idle, i)
				}
			}
			if o, err = document.DeleteTies(o, n == 1, idle...); err != nil {
				return o, err
			}
		}
		return o, nil
	})
}
