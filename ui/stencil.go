package ui

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
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

// misplaced is a field of the joint view; it is no part of the order.
func (s *stencilStation) misplaced(name string, set func(geom.Length)) {
	e := newEntry(func(text string) {
		l, err := geom.ParseLength(text, geom.MMUnit)
		if err != nil {
			s.w.Say(sentence(err))
			return
		}
		set(l)
		s.laid()
	})
	e.put("0 mm")
	s.form.row(name, e)
}

func (s *stencilStation) paperFields() {
	f := s.form
	f.heading("Paper")
	paper := func(name string, pick func(p *stencil.Paper) *geom.Length) {
		f.length(name, "Change Paper", geom.KaneSun,
			func(o document.Order) geom.Length { return *pick(&o.Sheet.Paper) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				p := o.Sheet.Paper
				*pick(&p) = l
				return document.SetPaper(o, p)
			})
	}
	paper("Width", func(p *stencil.Paper) *geom.Length { return &p.Width })
	paper("Height", func(p *stencil.Paper) *geom.Length { return &p.Height })
	grows := func(name string, pick func(p *stencil.Paper) *float64) {
		f.number(name, "Change Wet Growth", "%",
			func(o document.Order) float64 { return 100 * *pick(&o.Sheet.Paper) },
			func(o document.Order, v float64) (document.Order, error) {
				p := o.Sheet.Paper
				*pick(&p) = v / 100
				return document.SetPaper(o, p)
			})
	}
	grows("Grows wet across", func(p *stencil.Paper) *float64 { return &p.GrowthAcross })
	grows("Grows wet along", func(p *stencil.Paper) *float64 { return &p.GrowthAlong })
	f.number("Pile", "Change Pile", "sheets",
		func(o document.Order) float64 { return float64(o.Sheet.Paper.Pile) },
		func(o document.Order, v float64) (document.Order, error) {
			p := o.Sheet.Paper
			p.Pile = int(v)
			return document.SetPaper(o, p)
		})
}

func (s *stencilStation) starFields() {
	f := s.form
	f.heading("Stars")
	f.choice("An end", "Change Stars", []string{"2", "3", "4"},
		func(o document.Order) string { return strconv.Itoa(o.Sheet.Stars.PerEnd) },
		func(o document.Order, v string) (document.Order, error) {
			stars := o.Sheet.Stars
			stars.PerEnd, _ = strconv.Atoi(v)
			stars.At = nil
			return document.SetStars(o, stars)
		})
	star := func(name string, pick func(p *stencil.StarSpec) *geom.Length) {
		f.length(name, "Change Stars", geom.KaneBu,
			func(o document.Order) geom.Length { return *pick(&o.Sheet.Stars) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				p := o.Sheet.Stars
				*pick(&p) = l
				return document.SetStars(o, p)
			})
	}
	star("Diameter", func(p *stencil.StarSpec) *geom.Length { return &p.Diameter })
	star("Seam hides", func(p *stencil.StarSpec) *geom.Length { return &p.Hidden })
}

// limitFields are what this cutter allows.
func (s *stencilStation) limitFields() {
	f := s.form
	f.heading("Limits")
	f.length("Web at least", "Change Limits", geom.KaneBu,
		func(o document.Order) geom.Length { return o.Sheet.WebLimit },
		func(o document.Order, l geom.Length) (document.Order, error) {
			return document.SetLimits(o, o.Limits, l)
		})
	limit := func(name string, pick func(l *document.Limits) *geom.Length) {
		f.length(name, "Change Limits", geom.KaneBu,
			func(o document.Order) geom.Length { return *pick(&o.Limits) },
			func(o document.Order, v geom.Length) (document.Order, error) {
				l := o.Limits
				*pick(&l) = v
				return document.SetLimits(o, l, o.Sheet.WebLimit)
			})
	}
	limit("Hole at least", func(l *document.Limits) *geom.Length { return &l.Hole })
	limit("Star clear of holes", func(l *document.Limits) *geom.Length { return &l.StarClear })
	limit("Joint off at most", func(l *document.Limits) *geom.Length { return &l.Joint })
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

func (s *stencilStation) view() string {
	if s.three {
		return "joint"
	}
	return "sheet"
}

func (s *stencilStation) scene() board.Scene {
	switch {
	case s.w.built == 0:
		return waiting(s.w)
	case s.three:
		return s.threePlacements()
	}
	sheet := s.w.work.Sheet
	sc := board.Scene{
		Desk: table, Extent: sheet.Paper,
		Areas:   []board.Area{{Box: sheet.Paper, Shut: tannin, Open: light}},
		Grounds: []board.Laid{{Ground: s.w.grounds.sheet, Lays: []raster.Lay{{}}}}, Pitch: s.w.pitch(),
	}
	next := moved(sheet.Joint.Line, geom.Point{Y: sheet.Spec.Step})
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Loop, Points: corners(sheet.Paper), Colour: ink, Width: 1.5},
		board.Mark{Shape: board.Dashes, Points: sheet.Joint.Line, Colour: onPaper, Width: 2},
		board.Mark{Shape: board.Dashes, Points: next, Colour: onPaper, Width: 2})
	label := func(line []geom.Point, text string, align board.Align) {
		if len(line) > 0 {
			sc.Labels = append(sc.Labels, board.Label{At: line[len(line)/2], Text: say(text), Align: align, Colour: onPaper})
		}
	}
	label(sheet.Joint.Line, "joint line", board.Above)
	label(next, "joint line, one step on", board.Below)
	s.markStars(&sc)
	markPaper(&sc, s.w, s.w.Order().Unit.Lattice)
	return sc
}

// markStars rings and names the stars.
func (s *stencilStation) markStars(sc *board.Scene) {
	stars, field := s.w.work.Sheet.Stars.Stars, s.w.work.Sheet.Spec.Field
	middle := field.Left + field.Width/2
	for i, star := range stars {
		name, align, space := "L"+strconv.Itoa(i+1), board.Before, "      "
		if star.End == stencil.Trailing {
			name = "T" + strconv.Itoa(i+1-len(stars)/2)
		}
		text := name + space
		if star.At.X > middle {
			align, text = board.After, space+name
		}
		mark := board.Mark{Shape: board.Star, Points: []geom.Point{star.At}, Radius: star.Diameter / 2, Colour: onPaper, Width: 1.5}
		sc.Marks = append(sc.Marks, mark)
		sc.Labels = append(sc.Labels, board.Label{At: star.At, Text: text, Align: align, Colour: onPaper, Size: 11})
	}
}

// threePlacements shows the sheet laid thrice on the cloth, each off the one
// before by the chosen misplacement.
func (s *stencilStation) threePlacements() board.Scene {
	w := s.w.work
	step := geom.Point{Y: w.Sheet.Spec.Step}
	width, _ := w.Run.Bolt.FinishedSize()
	cloth := geom.BoxOf(geom.Point{Y: -step.Y / 4}, geom.Point{X: width, Y: 3*step.Y + step.Y/4})
	sc := board.Scene{Desk: table, Extent: cloth, Pitch: s.w.pitch(), Areas: []board.Area{{Box: cloth, Shut: dyed(w.Order.Cloth.Dye), Open: undyed}}}
	var lays []raster.Lay
	for n := range 3 {
		move := step.Add(s.off).Times(n)
		lays = append(lays, raster.Lay{Move: move})
		line := moved(w.Sheet.Joint.Line, move)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: onCloth, Width: 1.5})
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: 0, Y: move.Y + step.Y/2}, Align: board.Before, Colour: ink, Text: say("placement") + " " + strconv.Itoa(n) + "  ",
		})
	}
	sc.Grounds = []board.Laid{{Ground: s.w.grounds.sheet, Lays: lays}}
	return sc
}

// waiting is the scene before anything has been built.
func waiting(w *Window) board.Scene {
	text := say("Measuring…")
	if w.fault != nil {
		text = sentence(w.fault)
	}
	box := geom.BoxOf(geom.Point{}, geom.PtMM(400, 300))
	return board.Scene{Desk: table, Extent: box, Plain: true, Labels: []board.Label{{At: box.Centre(), Align: board.Middle, Text: text, Colour: ink, Size: 15}}}
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
