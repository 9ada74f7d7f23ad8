package ui

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A draft is the first station: motifs on the lattice, with their neighbours.
type draft struct {
	onlooker
	form     *form
	content  fyne.CanvasObject
	diameter *entry // of the next disc
	path     *entry // of the next outline; "" for a disc
	places   *widget.Check
	drag     *drag          // in hand; nil for nothing
	op       int            // the operation that makes the copy that was taken last
	stands   geom.Point     // where that copy stood
	made     *design        // of the state that was shown last
	before   *raster.Ground // what was painted last
	making   bool           // whether a ground is being made ready in the background
	symmetry symmetryFields
	ground   *groundBench
	craft    craft // that has the hand; nil for none
	pen      *penHand
	shape    *shapeHand
	snaps    *snapGround
	frame    *chooseFrame // being pulled; nil for none
	lattice  *latticeHand
	pulls    bool     // a handle of the lattice was pressed
	choosing []func() // show what is chosen
	fit      fitBench
	shelf    *shelfBench
}

func newDraft(w *Window) *draft {
	s := &draft{onlooker: onlooker{w: w}, form: &form{w: w}}
	s.lattice = &latticeHand{s: s}
	s.latticeFields()
	s.motifFields()
	s.shelf = newShelfBench(s)
	s.chosenFields()
	s.fit.add(s)
	s.symmetry.add(s)
	s.ground = newGroundBench(s)
	s.content = s.form.content()
	s.pen, s.shape = newPenHand(s), newShapeHand(s)
	return s
}

func (s *draft) name() string             { return stationNames[draftAt] }
func (s *draft) bench() fyne.CanvasObject { return s.content }
func (s *draft) owns(f check.Finding) bool {
	return f.Domain == check.OnUnit && !strings.HasPrefix(f.Code, "tie-") && !strings.HasPrefix(f.Code, "split-") || f.Code == "joint-step"
}
func (s *draft) look(f check.Finding) {
	if f.Domain == check.OnUnit {
		s.w.board.Near(f.At, 60)
		return
	}
	s.w.stations[stencilAt].look(f)
}

func (s *draft) latticeFields() {
	f := s.form
	f.heading("Lattice")
	s.kindField()
	spacing := func(name string, pick func(across, along geom.Length) geom.Length, with func(l geom.Length, across, along geom.Length) (geom.Length, geom.Length)) {
		f.length(name, "Change Spacing", geom.KaneSun,
			func(o document.Order) geom.Length { return pick(o.Unit.Lattice.Spacing()) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				across, along := o.Unit.Lattice.Spacing()
				across, along = with(l, across, along)
				return document.SetLattice(o, o.Unit.Lattice.Respaced(across, along))
			})
	}
	spacing("Across", func(a, _ geom.Length) geom.Length { return a }, func(l, _, b geom.Length) (geom.Length, geom.Length) { return l, b })
	spacing("Along", func(_, b geom.Length) geom.Length { return b }, func(l, a, _ geom.Length) (geom.Length, geom.Length) { return a, l })
	f.length("Step", "Change Step", geom.KaneSun,
		func(o document.Order) geom.Length { return o.Sheet.Step }, document.SetStep)
	f.words("Drag a square beyond the cell to pull the lattice, or take it with K and nudge it.")
}

func (s *draft) motifFields() {
	f := s.form
	f.heading("Motifs")
	s.places = widget.NewCheck(say("A click places a motif"), nil)
	f.add(s.places)
	s.diameter = newEntry(func(string) {})
	s.diameter.put("0.5 mm")
	f.row("Dot", s.diameter)
	s.path = newEntry(func(string) {})
	s.path.SetPlaceHolder("M0 0 H2 V1 Z")
	f.row("or an outline, mm", s.path)
	f.button("Size the Chosen Dots", s.resize)
	f.beside(widget.NewButton(say("Draw a Motif"), func() { s.begin(s.pen) }),
		widget.NewButton(say("Shape Its Outline"), s.shapeChosen))
	f.words("Click a motif to choose it, or pull a frame about several; drag one, and all its copies follow. Arrows nudge by 0.01 mm, with Shift by 0.1 mm.")
}

// next is the shape that a click places.
func (s *draft) next() (geom.Shape, error) {
	if shape, ok := s.shelf.shape(); ok {
		return shape, nil
	}
	if s.path.Text != "" {
		o, err := geom.ParsePathData(s.path.Text)
		return geom.Shape{Outline: o}, err
	}
	d, err := geom.ParseLength(s.diameter.Text, s.w.unit())
	return geom.DiscShape(geom.Point{}, d), err
}

func (s *draft) resize() {
	d, err := geom.ParseLength(s.diameter.Text, s.w.unit())
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	ids := s.w.chosen
	if len(ids) == 0 {
		s.w.Say(say("Choose the dots first: click one, or all with Ctrl+A."))
		return
	}
	s.w.Edit("Size Dots", func(o document.Order) (document.Order, error) { return document.ResizeDiscs(o, d, ids...) })
}

func (s *draft) refresh() {
	s.form.refresh()
	s.showChosen()
	o := s.w.Order()
	s.symmetry.refresh(o)
	s.ground.refresh(o)
	if s.craft != nil {
		s.craft.refresh()
	}
	s.fit.refresh(o)
	s.shelf.refresh(o)
}

func (s *draft) measures() []measure {
	o, w := s.w.Order(), s.w.work
	if s.craft != nil {
		return s.craft.measures()
	}
	u, whole := s.w.unit(), s.design().unit
	rows := []measure{{"motifs in the unit", strconv.Itoa(len(whole.Motifs))}}
	if o.Group != pattern.P1 {
		rows = append(rows, measure{"of them drawn", strconv.Itoa(len(o.Unit.Motifs))})
	}
	rows = append(rows,
		measure{"cut-outs per cm²", fmt.Sprintf("%.1f", whole.PerCM2())},
		measure{"per square kane sun", fmt.Sprintf("%.0f", whole.PerSquareSun())},
		measure{"pitch", u.Format(o.Unit.Lattice.Pitch(), 4)})
	if !s.w.Ready() {
		return append(rows, measure{"", "measuring…"})
	}
	rows = append(rows, measure{"open area", fmt.Sprintf("%.2f %%", w.Sheet.OpenPct)})
	if w.Sheet.Webs.Found {
		rows = append(rows, measure{"narrowest web", u.Format(w.Sheet.Webs.Narrowest.Width, 3)})
	}
	rows = append(rows, measure{"off the step", u.Format(w.Sheet.StepError.Distance(geom.Point{}), 4)})
	return append(rows, symmetryMeasures(s.w.grounds.has)...)
}
