package ui

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// A stencilStation is the second station: the sheet or the two of a split, what
// holds the paper, the joint line and the stars, and the joint with a chosen
// misplacement.
type stencilStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
	shows   *widget.RadioGroup
	seen    string     // what the surface shows, one of the names below
	off     geom.Point // of each placement from the one before, or of the second sheet
	pressed geom.Point // where the pointer went down
	both    bothSheets // laid together with that misplacement

	draws    *widget.Check // a drag draws a tie
	told     *widget.Label // what could not be held
	unheld   []stencil.Unheld
	unheldOf int // the state that they belong to
	tie      tieHand
	curve    *jointCurve
	byHand   *widget.Button
	point    pointHand
	cuts     *geom.Index // of the cut-outs of a sheet, for the pointer
	cutsOf   [2]int      // the work and the sheet that they belong to
}

// What the surface can show at this station. The sheet is the first of a split.
const (
	theSheet  = "The sheet"
	theFirst  = "First sheet"
	theSecond = "Second sheet"
	theBoth   = "Both, the second laid off"
	theJoint  = "Three placements on the cloth"
)

func newStencil(w *Window) *stencilStation {
	s := &stencilStation{onlooker: onlooker{w: w}, form: &form{w: w}, seen: theSheet}
	s.tie.chosen, s.point.chosen = none, none
	f := s.form
	f.heading("Show")
	s.shows = widget.NewRadioGroup([]string{say(theSheet), say(theJoint)}, nil)
	s.shows.Required, s.shows.Selected = true, say(theSheet)
	s.shows.OnChanged = s.show
	f.add(s.shows)
	f.heading("Joint under the loupe")
	s.misplaced("Off across", func(l geom.Length) { s.off.X = l })
	s.misplaced("Off along", func(l geom.Length) { s.off.Y = l })
	f.button("Look at the Joint", s.loupe)
	f.words("How far each placement is laid off the one before, or the second sheet off the first. It is no part of the order.")
	s.holdFields()
	s.jointFields()
	f.heading("Sheet")
	f.length("Step", "Change Step", geom.KaneSun, func(o document.Order) geom.Length { return o.Sheet.Step }, document.SetStep)
	f.length("Field from", "Move Field", geom.KujiraSun,
		func(o document.Order) geom.Length { return o.Sheet.Field.Left },
		func(o document.Order, l geom.Length) (document.Order, error) {
			field := o.Sheet.Field
			field.Left = l
			return document.SetField(o, field)
		})
	f.length("Field width", "Change Field", geom.KujiraSun,
		func(o document.Order) geom.Length { return o.Sheet.Field.Width },
		func(o document.Order, l geom.Length) (document.Order, error) {
			field := o.Sheet.Field
			field.Width = l
			return document.SetField(o, field)
		})
	s.paperFields()
	s.starFields()
	s.limitFields()
	s.content = f.content()
	return s
}

func (s *stencilStation) name() string             { return stationNames[stencilAt] }
func (s *stencilStation) bench() fyne.CanvasObject { return s.content }
func (s *stencilStation) owns(f check.Finding) bool {
	return f.Domain == check.OnSheet || f.Code == "joint-step" || ofHolding(f)
}

func (s *stencilStation) refresh() {
	s.form.refresh()
	s.offerViews()
	if s.seen == theBoth && s.w.Ready() {
		s.layBoth()
	}
	s.refreshHold()
	s.refreshJoint()
}

func (s *stencilStation) look(f check.Finding) {
	if s.w.at != stencilAt {
		s.w.GoTo(stencilAt)
	}
	at := f.At
	switch {
	case f.Domain == check.OnCloth:
		s.laid()
	case f.Domain == check.OnUnit:
		n := s.sheetOf(f)
		s.toSheet(n)
		at = at.Add(s.home())
	case s.seen != theSheet && s.seen != theSecond:
		s.toSheet(0)
	}
	s.w.board.Near(at, 20)
}

// laid shows three placements on the cloth.
func (s *stencilStation) laid() { s.shows.SetSelected(say(theJoint)) }

// loupe looks closely at the middle of the joint between two placements.
func (s *stencilStation) loupe() {
	line := s.w.work.Sheet.Joint.Line
	if len(line) == 0 {
		return
	}
	s.laid()
	field := s.w.work.Sheet.Spec.Field
	at := heightAt(line, field.Left+field.Width/2)
	s.w.board.Near(at.Add(geom.Point{Y: s.w.work.Sheet.Spec.Step}), 45)
}

func (s *stencilStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", "measuring…"}}
	}
	u, sheet := s.w.unit(), s.w.work.Sheet
	x, y := s.w.work.Scale.Cut()
	rows := append(s.holdMeasures(),
		measure{"cut-outs", strconv.Itoa(len(sheet.CutOuts))},
		measure{"joint line", u.Format(sheet.Joint.Length, 2)},
		measure{"its clearance", u.Format(sheet.Joint.Clearance, 3)},
		measure{"widest there is", u.Format(sheet.Joint.Widest, 3)},
		measure{"web across the joint", u.Format(sheet.Webs.AcrossJoint.Width, 3)},
		measure{"star baseline", u.Format(sheet.Stars.Baseline, 2)},
		measure{"wrongly laid, off by", u.Format(sheet.Stars.TurnedMisfit, 2)},
		measure{"cut size across", strconv.FormatFloat(100*x, 'f', 3, 64) + " %"},
		measure{"cut size along", strconv.FormatFloat(100*y, 'f', 3, 64) + " %"},
	)
	q := sheet.Stars.Square
	return append(rows,
		measure{"square: widths", u.Number(q.Top, 3) + " · " + u.Format(q.Bottom, 3)},
		measure{"heights", u.Number(q.Left, 3) + " · " + u.Format(q.Right, 3)},
		measure{"diagonals", u.Number(q.Down, 3) + " · " + u.Format(q.Up, 3)},
	)
}
