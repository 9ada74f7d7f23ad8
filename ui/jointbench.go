package ui

import (
	"context"
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A jointCurve is a list of the joint lines that there could be. They are worked
// out when it is opened.
type jointCurve struct {
	widget.Select
	ask     func()
	choices []stencil.JointChoice
	of      jointOf
}

// A jointOf is what the choices follow from.
type jointOf struct {
	lattice pattern.Lattice
	group   pattern.Group
	motifs  *pattern.Motif // the first; an edit makes a new slice
	count   int
	field   stencil.Field
	step    int64
}

func jointOfOrder(o document.Order) jointOf {
	j := jointOf{lattice: o.Unit.Lattice, group: o.Group, count: len(o.Unit.Motifs), field: o.Sheet.Field, step: int64(o.Sheet.Step)}
	if j.count > 0 {
		j.motifs = &o.Unit.Motifs[0]
	}
	return j
}

// Tapped opens the list, or has it worked out first.
func (c *jointCurve) Tapped(e *fyne.PointEvent) { c.open(func() { c.Select.Tapped(e) }) }

// TypedKey opens the list by the keyboard as a click does.
func (c *jointCurve) TypedKey(e *fyne.KeyEvent) { c.open(func() { c.Select.TypedKey(e) }) }

func (c *jointCurve) open(do func()) {
	if len(c.choices) == 0 {
		c.ask()
		return
	}
	do()
}

// jointFields are how the joint line is chosen, or drawn.
func (s *stencilStation) jointFields() {
	f := s.form
	f.heading("Joint line")
	s.curve = &jointCurve{ask: s.askCurve}
	s.curve.ExtendBaseWidget(s.curve)
	s.curve.PlaceHolder = say("share, clearance, length")
	f.add(s.curve)
	s.byHand = widget.NewButton("", s.w.turnJoint)
	f.add(s.byHand)
	f.words("By hand: drag a point of the line, Shift with a click adds one, Delete takes one away.")
}

// refreshJoint shows how the joint line of the order is made.
func (s *stencilStation) refreshJoint() {
	o := s.w.Order()
	s.drawn() // forgets a point that is gone
	s.byHand.SetText(say("Draw It by Hand"))
	if byHand(o) {
		s.byHand.SetText(say("Let It Be Chosen"))
	}
	if s.curve.of != jointOfOrder(o) {
		s.curve.choices = nil
	}
	s.curve.OnChanged = nil
	var options []string
	chosen := none
	for i, c := range s.curve.choices {
		options = append(options, s.choiceWords(c))
		if math.Abs(c.Share-shareOf(o.Sheet.Joint)) < 0.005 && !byHand(o) {
			chosen = i
		}
	}
	s.curve.Options = options
	if chosen != none {
		s.curve.SetSelected(options[chosen])
	} else {
		s.curve.ClearSelected()
		s.curve.PlaceHolder = say("keeps %.0f %%…", 100*shareOf(o.Sheet.Joint))
		if byHand(o) {
			s.curve.PlaceHolder = say("drawn by hand")
		}
		s.curve.Refresh()
	}
	s.curve.OnChanged = s.pickChoice
}

// shareOf is the share that a joint line keeps.
func shareOf(j stencil.JointSpec) float64 {
	if j.Share == 0 {
		return 0.8
	}
	return j.Share
}

// choiceWords is a choice as it is listed.
func (s *stencilStation) choiceWords(c stencil.JointChoice) string {
	u := s.w.unit()
	return fmt.Sprintf("%.0f %%, %s, %s", 100*c.Share, u.Format(c.Clearance, 2), u.Format(c.Length, 0))
}

func (s *stencilStation) pickChoice(string) {
	i := s.curve.SelectedIndex()
	if i < 0 || i >= len(s.curve.choices) {
		return
	}
	share := s.curve.choices[i].Share
	s.w.Edit("Choose Joint Line", func(o document.Order) (document.Order, error) {
		return document.SetJoint(o, stencil.JointSpec{Share: share})
	})
}

// askCurve works out what the joint line could be, and opens the list.
func (s *stencilStation) askCurve() {
	o := s.w.Order()
	s.w.Say(say("Looking for the joint lines that there could be…"))
	s.w.background(say("What the joint line could be"), func(ctx context.Context) (func(), error) {
		choices, err := stencil.JointCurve(ctx, o.Design(), o.Sheet.Field, o.Sheet.Step)
		return func() {
			s.curve.choices, s.curve.of = choices, jointOfOrder(o)
			s.refreshJoint()
			if len(s.curve.choices) == 0 {
				return // the order has changed meanwhile
			}
			s.w.Say(say("%s: share of the greatest clearance, clearance, length.", counted(len(choices), "line to choose from", "lines to choose from")))
			if s.w.at == stencilAt {
				s.curve.Select.Tapped(&fyne.PointEvent{})
			}
		}, err
	})
}

// turnJoint draws the joint line by hand, beginning with the one there is, or lets
// it be chosen again.
func (w *Window) turnJoint() {
	if byHand(w.Order()) {
		w.letJointBeChosen()
		return
	}
	line := w.work.Sheet.Joint.Line
	if !w.Ready() || len(line) < 2 {
		w.Say(say("There is no joint line yet to begin with; ask again in a moment."))
		return
	}
	if w.Edit("Draw Joint Line by Hand", func(o document.Order) (document.Order, error) {
		j := o.Sheet.Joint
		j.Line = slices.Clone(line)
		return document.SetJoint(o, j)
	}) && w.at == stencilAt {
		w.stencilStation().toSheet(0)
	}
}

func (w *Window) letJointBeChosen() {
	w.stencilStation().point.chosen = none
	w.Edit("Let Joint Line Be Chosen", func(o document.Order) (document.Order, error) {
		j := o.Sheet.Joint
		j.Line = nil
		return document.SetJoint(o, j)
	})
}
