package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// A draft is the first station: motifs on the lattice, with their neighbours.
type draft struct {
	onlooker
	form     *form
	content  fyne.CanvasObject
	diameter *entry // of the next disc
	path     *entry // of the next outline; "" for a disc
	places   *widget.Check
	fits     *widget.Select
	found    []pattern.Fit
	drag     *drag // in hand; nil for nothing
}

// A drag is motifs on their way: what stays and what moves are painted apart, so
// that every copy follows in the same frame however many there are.
type drag struct {
	stays, moves *raster.Ground
	by           geom.Point
}

func newDraft(w *Window) *draft {
	s := &draft{onlooker: onlooker{w: w}, form: &form{w: w}}
	s.latticeFields()
	s.motifFields()
	s.fitFields()
	s.content = s.form.content()
	return s
}

func (s *draft) name() string              { return stationNames[draftAt] }
func (s *draft) bench() fyne.CanvasObject  { return s.content }
func (s *draft) owns(f check.Finding) bool { return f.Domain == check.OnUnit || f.Code == "joint-step" }
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
	var kinds []string
	for _, k := range pattern.Kinds() {
		kinds = append(kinds, string(k))
	}
	f.choice("Kind", "Change Lattice", kinds,
		func(o document.Order) string { return string(o.Unit.Lattice.Kind()) },
		func(o document.Order, v string) (document.Order, error) {
			across, along := o.Unit.Lattice.Spacing()
			return document.SetLattice(o, pattern.Laid(pattern.Kind(v), across, along))
		})
	spacing := func(name string, pick func(across, along geom.Length) geom.Length, with func(l geom.Length, across, along geom.Length) (geom.Length, geom.Length)) {
		f.length(name, "Change Spacing", geom.KaneSun,
			func(o document.Order) geom.Length { return pick(o.Unit.Lattice.Spacing()) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				across, along := o.Unit.Lattice.Spacing()
				across, along = with(l, across, along)
				return document.SetLattice(o, respaced(o.Unit.Lattice, across, along))
			})
	}
	spacing("Across", func(a, _ geom.Length) geom.Length { return a }, func(l, _, b geom.Length) (geom.Length, geom.Length) { return l, b })
	spacing("Along", func(_, b geom.Length) geom.Length { return b }, func(l, a, _ geom.Length) (geom.Length, geom.Length) { return a, l })
	f.length("Step", "Change Step", geom.KaneSun,
		func(o document.Order) geom.Length { return o.Sheet.Step }, document.SetStep)
}

// respaced returns a lattice of the same kind on another spacing; a free one is
// stretched.
func respaced(l pattern.Lattice, across, along geom.Length) pattern.Lattice {
	if kind := l.Kind(); kind != pattern.FreeKind {
		return pattern.Laid(kind, across, along)
	}
	a, b := l.Spacing()
	m := geom.Scale(float64(across)/float64(max(a, 1)), float64(along)/float64(max(b, 1)))
	return pattern.Lattice{A: m.Apply(l.A), B: m.Apply(l.B)}
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
	f.words("Click a motif to choose it; drag it, and all its copies follow. Arrows nudge by 0.01 mm, with Shift by 0.1 mm.")
}

// next is the shape that a click places.
func (s *draft) next() (geom.Shape, error) {
	if s.path.Text != "" {
		o, err := geom.ParsePathData(s.path.Text)
		return geom.Shape{Outline: o}, err
	}
	d, err := geom.ParseLength(s.diameter.Text, geom.MMUnit)
	return geom.DiscShape(geom.Point{}, d), err
}

func (s *draft) resize() {
	d, err := geom.ParseLength(s.diameter.Text, geom.MMUnit)
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	ids := s.w.chosen
	if len(ids) == 0 {
		s.w.Say("Choose the dots first: click one, or all with Ctrl+A.")
		return
	}
	s.w.Edit("Size Dots", func(o document.Order) (document.Order, error) { return document.ResizeDiscs(o, d, ids...) })
}

func (s *draft) fitFields() {
	f := s.form
	f.heading("Fit to the step")
	s.fits = widget.NewSelect(nil, nil)
	s.fits.PlaceHolder = "strain across, along, shear"
	f.add(s.fits)
	f.button("Apply This Fit", func() {
		i := s.fits.SelectedIndex()
		if i < 0 || i >= len(s.found) {
			s.w.Say("Pick a fit from the list first.")
			return
		}
		fit := s.found[i]
		s.w.Edit("Fit to the Step", func(o document.Order) (document.Order, error) { return document.ApplyFit(o, fit) })
	})
}

func (s *draft) refresh() {
	s.form.refresh()
	o := s.w.Order()
	fits, err := o.Unit.Fits(o.Sheet.Step, 0)
	if err != nil {
		fits = nil
	}
	s.found = fits
	var options []string
	for _, f := range fits {
		options = append(options, fmt.Sprintf("%d·A %+d·B   %.3f %%  %.3f %%  %.3f %%",
			f.M, f.N, 100*f.Strain.X, 100*f.Strain.Y, 100*f.Strain.Shear))
	}
	s.fits.Options = options
	s.fits.ClearSelected()
}

// draftReach is how far around the cell the whole view shows, in cells.
const draftReach = 1.6

func (s *draft) view() string { return "draft" }

func (s *draft) scene() board.Scene {
	o := s.w.Order()
	l := o.Unit.Lattice
	cell := []geom.Point{{}, l.A, l.A.Add(l.B), l.B}
	around := geom.BoxOf(cell...)
	sc := board.Scene{
		Desk: tannin, Areas: []board.Area{{Shut: tannin, Open: light}}, Grounds: s.laid(), Pitch: s.w.pitch(),
		Extent: around.Grown(max(around.Width(), around.Height()).Times(draftReach)),
		Marks: []board.Mark{
			{Shape: board.Loop, Points: cell, Colour: cellLine, Width: 2},
			{Shape: board.Ring, Points: []geom.Point{{}}, Colour: cellLine},
		},
		Labels: []board.Label{{At: lowest(cell), Text: say("unit"), Align: board.Below, Colour: cellLine, Shield: shield, Bold: true, Size: 11,
			Room: around.Width() / 2}},
	}
	s.markChosen(&sc)
	if s.w.Ready() && s.drag == nil {
		markPaper(&sc, s.w, l)
	}
	if len(o.Unit.Motifs) == 0 {
		sc.Labels = append(sc.Labels, board.Label{At: sc.Extent.Centre(), Align: board.Middle, Colour: ink, Shield: shield, Size: 14,
			Text: say("Choose “A click places a motif”, then click on the paper.")})
	}
	return sc
}

// lowest returns the lowest of some points.
func lowest(points []geom.Point) geom.Point {
	return slices.MaxFunc(points, func(a, b geom.Point) int { return cmp.Compare(a.Y, b.Y) })
}

// laid is the plain pattern; during a drag in two parts.
func (s *draft) laid() []board.Laid {
	lay := func(g *raster.Ground, by geom.Point) board.Laid {
		return board.Laid{Ground: g, Lays: []raster.Lay{{Move: by}}}
	}
	if s.drag != nil {
		return []board.Laid{lay(s.drag.stays, geom.Point{}), lay(s.drag.moves, s.drag.by)}
	}
	all, _ := s.parted(nil)
	return []board.Laid{lay(all, geom.Point{})}
}

// parted returns the plain pattern without the chosen motifs, and them alone.
func (s *draft) parted(chosen []pattern.ID) (stays, moves *raster.Ground) {
	u := s.w.Order().Unit
	var rest, taken []geom.Shape
	for _, c := range u.CutOuts() {
		if slices.Contains(chosen, c.Motif) {
			taken = append(taken, c.Shape)
		} else {
			rest = append(rest, c.Shape)
		}
	}
	a, b := u.Lattice.A, u.Lattice.B
	return raster.NewGround(rest, a, b), raster.NewGround(taken, a, b)
}

// markChosen frames the chosen motifs, where a drag has brought them.
func (s *draft) markChosen(sc *board.Scene) {
	for i, id := range s.w.chosen {
		m, ok := s.w.Order().Motif(id)
		if !ok || i == mostMarks {
			continue
		}
		if s.drag != nil {
			m.At = m.At.Add(s.drag.by)
		}
		box := m.Placed().Bounds()
		sc.Marks = append(sc.Marks, board.Mark{
			Shape: board.Loop, Points: corners(box.Grown(box.Width() / 8)), Colour: indigo, Width: 2.5,
		})
	}
}

// markPaper shows the thin webs and the islands of the plain pattern, each in the
// cell and around it.
func markPaper(sc *board.Scene, w *Window, l pattern.Lattice) {
	var bars, islands []geom.Point
	sheet := w.work.Sheet
	for i, web := range sheet.Webs.Below {
		if i == mostMarks {
			break
		}
		bars = append(bars, web.P, web.Q)
		if i < fewLabels {
			sc.Labels = append(sc.Labels, board.Label{At: web.P, Align: board.Above, Colour: faultRed, Shield: shield,
				Text: say("web") + " " + w.unit().Format(web.Width, 3), Room: l.Pitch()})
		}
	}
	for i, p := range slices.Concat(sheet.Paths.Islands, sheet.Paths.Bands) {
		if i == mostMarks {
			break
		}
		islands = append(islands, p.At)
		if i < fewLabels {
			word := "island"
			if i >= len(sheet.Paths.Islands) {
				word = "band"
			}
			sc.Labels = append(sc.Labels, board.Label{At: p.At, Align: board.Below, Colour: faultRed, Shield: shield, Text: say(word), Room: l.Pitch()})
		}
	}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Bar, Points: bars, Colour: faultRed, Width: 2},
		board.Mark{Shape: board.Wedge, Points: islands, Colour: faultRed, Width: 2})
}

// How many places of one kind are marked, and how many of them in words.
const (
	mostMarks = 400
	fewLabels = 12
)

// under returns the motif at a place or at a copy of it, the last drawn first.
func (s *draft) under(at geom.Point, reach geom.Length) (pattern.ID, bool) {
	o := s.w.Order()
	for i := len(o.Unit.Motifs) - 1; i >= 0; i-- {
		m := o.Unit.Motifs[i]
		m.At = geom.Point{}
		shape := m.Placed()
		_, _, rest := o.Unit.Lattice.Nearest(at.Sub(o.Unit.Motifs[i].At))
		if shape.Contains(rest) || geom.Length(rest.Norm()) < reach/2 {
			return m.ID, true
		}
	}
	return 0, false
}

// Tap chooses the motif there or, when a click places, puts a new one there.
func (s *draft) Tap(at geom.Point, reach geom.Length, more bool) {
	if s.places.Checked {
		s.put(at)
		return
	}
	id, ok := s.under(at, reach)
	switch {
	case !ok && !more:
		s.w.choose()
	case ok && !more:
		s.w.choose(id)
		s.w.Say(s.describe(id))
	case ok && slices.Contains(s.w.chosen, id):
		s.w.choose(slices.DeleteFunc(slices.Clone(s.w.chosen), func(c pattern.ID) bool { return c == id })...)
	case ok:
		s.w.choose(append(slices.Clone(s.w.chosen), id)...)
	}
}

// put places the next motif, as the copy that lies in the cell.
func (s *draft) put(at geom.Point) {
	shape, err := s.next()
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	before := s.w.chosen
	s.w.chosen = []pattern.ID{s.w.Order().NextID}
	if !s.w.Edit("Place Motif", func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: shape, At: o.Unit.Lattice.Into(snapped(at))})
	}) {
		s.w.chosen = before
	}
}

// snapped puts a place on the hundredth of a millimetre.
func snapped(p geom.Point) geom.Point {
	const step = 10 * geom.Micrometre
	return geom.Point{X: (p.X + step/2) / step * step, Y: (p.Y + step/2) / step * step}
}

func (s *draft) describe(id pattern.ID) string {
	m, _ := s.w.Order().Motif(id)
	at := s.w.unit().Number(m.At.X, 3) + ", " + s.w.unit().Format(m.At.Y, 3)
	if m.Shape.Round() {
		return "Motif " + strconv.Itoa(int(id)) + ": a dot of " + s.w.unit().Format(m.Shape.Disc.Diameter, 3) + " at " + at + "."
	}
	return "Motif " + strconv.Itoa(int(id)) + ": an outline at " + at + "."
}

// Press takes the motif there; with a motif among the chosen ones, all of them.
func (s *draft) Press(at geom.Point, reach geom.Length, more bool) bool {
	if s.places.Checked || more {
		return false
	}
	id, ok := s.under(at, reach)
	if !ok {
		return false
	}
	if !slices.Contains(s.w.chosen, id) {
		s.w.choose(id)
	}
	return true
}

// Drag shows what the order would be; nothing is edited yet.
func (s *draft) Drag(by geom.Point) {
	if s.drag == nil {
		stays, moves := s.parted(s.w.chosen)
		s.drag = &drag{stays: stays, moves: moves}
	}
	s.drag.by = snapped(by)
	u := s.w.unit()
	s.w.pointer.SetText(say("moved") + " " + u.Format(s.drag.by.X, 3) + ", " + u.Format(s.drag.by.Y, 3))
	s.w.repaint()
}

// Drop makes the whole drag one edit.
func (s *draft) Drop(geom.Point) {
	if s.drag == nil {
		return
	}
	by := s.drag.by
	s.drag = nil
	s.w.move("Move Motif", by)
}

// leave gives up a drag.
func (s *draft) leave() {
	if s.drag != nil {
		s.drag = nil
		s.w.board.Release()
	}
}

// move moves the chosen motifs by one edit.
func (w *Window) move(name string, by geom.Point) {
	if len(w.chosen) == 0 {
		return
	}
	w.Edit(name, func(o document.Order) (document.Order, error) { return document.MoveMotifs(o, by, w.chosen...) })
}

// nudge is how far an arrow key moves the chosen motifs.
const nudge = 10 * geom.Micrometre

func (w *Window) deleteChosen() {
	w.Edit("Delete Motif", func(o document.Order) (document.Order, error) { return document.DeleteMotifs(o, w.chosen...) })
}

func (w *Window) chooseAll() {
	var all []pattern.ID
	for _, m := range w.Order().Unit.Motifs {
		all = append(all, m.ID)
	}
	w.choose(all...)
	w.Say(fmt.Sprintf(say("%d motifs chosen."), len(all)))
}

func (s *draft) measures() []measure {
	o, w := s.w.Order(), s.w.work
	u := s.w.unit()
	rows := []measure{
		{"motifs in the unit", strconv.Itoa(len(o.Unit.Motifs))},
		{"cut-outs per cm²", fmt.Sprintf("%.1f", o.Unit.PerCM2())},
		{"per square kane sun", fmt.Sprintf("%.0f", o.Unit.PerSquareSun())},
		{"pitch", u.Format(o.Unit.Lattice.Pitch(), 4)},
	}
	if !s.w.Ready() {
		return append(rows, measure{"", "measuring…"})
	}
	rows = append(rows, measure{"open area", fmt.Sprintf("%.2f %%", w.Sheet.OpenPct)})
	if w.Sheet.Webs.Found {
		rows = append(rows, measure{"narrowest web", u.Format(w.Sheet.Webs.Narrowest.Width, 3)})
	}
	return append(rows, measure{"off the step", u.Format(w.Sheet.StepError.Distance(geom.Point{}), 4)})
}
