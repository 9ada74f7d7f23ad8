package ui

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A stencilStation is the second station: the sheet, its joint line and stars,
// and the joint with a chosen misplacement.
type stencilStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
	shows   *widget.RadioGroup
	three   bool       // three placements on the cloth instead of the sheet
	off     geom.Point // of each placement from the one before, in the joint view
}

// What the surface can show at this station.
const (
	theSheet = "The sheet"
	theJoint = "Three placements on the cloth"
)

func newStencil(w *Window) *stencilStation {
	s := &stencilStation{onlooker: onlooker{w: w}, form: &form{w: w}}
	f := s.form
	f.heading("Show")
	s.shows = widget.NewRadioGroup([]string{say(theSheet), say(theJoint)}, func(v string) {
		s.three = v == say(theJoint)
		w.repaint()
	})
	s.shows.Required, s.shows.Selected = true, say(theSheet)
	f.add(s.shows)
	f.heading("Joint under the loupe")
	s.misplaced("Off across", func(l geom.Length) { s.off.X = l })
	s.misplaced("Off along", func(l geom.Length) { s.off.Y = l })
	f.button("Look at the Joint", s.loupe)
	f.words("How far each placement is laid off the one before. It is no part of the order.")
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
func (s *stencilStation) refresh()                 { s.form.refresh() }
func (s *stencilStation) owns(f check.Finding) bool {
	return f.Domain == check.OnSheet || f.Code == "joint-step"
}

func (s *stencilStation) look(f check.Finding) {
	if s.w.at != stencilAt {
		s.w.GoTo(stencilAt)
	}
	if f.Domain == check.OnCloth {
		s.laid()
	}
	s.w.board.Near(f.At, 20)
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
	at := geom.Point{X: field.Left + field.Width/2}
	for i, b := range line[1:] {
		if a := line[i]; a.X <= at.X && at.X <= b.X && b.X > a.X {
			at.Y = a.Y + (b.Y - a.Y).Times(float64(at.X-a.X)/float64(b.X-a.X))
		}
	}
	s.w.board.Near(at.Add(geom.Point{Y: s.w.work.Sheet.Spec.Step}), 45)
}

func (s *stencilStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", "measuring…"}}
	}
	u, sheet := s.w.unit(), s.w.work.Sheet
	x, y := s.w.work.Scale.Cut()
	rows := []measure{
		{"cut-outs", strconv.Itoa(len(sheet.CutOuts))},
		{"joint line", u.Format(sheet.Joint.Length, 2)},
		{"its clearance", u.Format(sheet.Joint.Clearance, 3)},
		{"widest there is", u.Format(sheet.Joint.Widest, 3)},
		{"web across the joint", u.Format(sheet.Webs.AcrossJoint.Width, 3)},
		{"star baseline", u.Format(sheet.Stars.Baseline, 2)},
		{"wrongly laid, off by", u.Format(sheet.Stars.TurnedMisfit, 2)},
		{"cut size across", strconv.FormatFloat(100*x, 'f', 3, 64) + " %"},
		{"cut size along", strconv.FormatFloat(100*y, 'f', 3, 64) + " %"},
	}
	q := sheet.Stars.Square
	return append(rows,
		measure{"square: widths", u.Number(q.Top, 3) + " · " + u.Format(q.Bottom, 3)},
		measure{"heights", u.Number(q.Left, 3) + " · " + u.Format(q.Right, 3)},
		measure{"diagonals", u.Number(q.Down, 3) + " · " + u.Format(q.Up, 3)},
	)
}
