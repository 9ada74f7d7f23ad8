package ui

import (
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// beside puts buttons side by side, each as wide as the others.
func (f *form) beside(buttons ...fyne.CanvasObject) {
	f.add(container.NewGridWithColumns(len(buttons), buttons...))
}

// chosenFields set where a chosen motif stands and how it is turned, in numbers.
func (s *draft) chosenFields() {
	f := s.form
	f.heading("Chosen")
	coordinate := func(name string, of func(p *geom.Point) *geom.Length) {
		var e *entry
		show := func() {
			e.put("")
			if m, ok := s.onlyChosen(); ok {
				e.put(s.w.unit().Format(*of(&m.At), 6))
			}
		}
		e = newEntry(func(text string) {
			s.moveTo(text, of)
			show()
		})
		f.row(name, e)
		s.choosing = append(s.choosing, show)
	}
	coordinate("Across", func(p *geom.Point) *geom.Length { return &p.X })
	coordinate("Along", func(p *geom.Point) *geom.Length { return &p.Y })
	var turn *entry
	turn = newEntry(func(text string) {
		turn.put("")
		s.turnBy(text)
	})
	turn.SetPlaceHolder("30°")
	f.row("Turn by", turn)
	button := func(name string, do func(*Window)) fyne.CanvasObject {
		return widget.NewButton(say(name), func() { do(s.w) })
	}
	f.beside(button("Duplicate", (*Window).duplicate), button("Mirror", (*Window).mirrorChosen))
	f.beside(button("In a Row", inLine(pattern.Row)), button("In a Column", inLine(pattern.Column)))
	f.beside(button("Spread Across", spread(pattern.Row)), button("Spread Along", spread(pattern.Column)))
	f.beside(button("Join", (*Window).joinMotifs), button("Part", (*Window).partMotif))
}

// onlyChosen is the one motif that is chosen.
func (s *draft) onlyChosen() (pattern.Motif, bool) {
	if len(s.w.chosen) != 1 {
		return pattern.Motif{}, false
	}
	return s.w.Order().Motif(s.w.chosen[0])
}

// moveTo moves the chosen motif to a coordinate that was written.
func (s *draft) moveTo(text string, of func(p *geom.Point) *geom.Length) {
	m, ok := s.onlyChosen()
	if !ok {
		if text != "" {
			s.w.Say(say("Choose one motif first: click it."))
		}
		return
	}
	l, err := geom.ParseLength(text, s.w.unit())
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	to := m.At
	*of(&to) = l
	s.w.move("Move Motif", to.Sub(m.At))
}

// turnBy turns the chosen motifs by degrees that were written.
func (s *draft) turnBy(text string) {
	deg, err := pen.ParseDegrees(text)
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	s.w.turnChosen(deg)
}

func (w *Window) turnChosen(deg float64) {
	w.arrange("Turn Motif", 1, func(o document.Order) (document.Order, error) { return document.TurnMotifs(o, deg, w.chosen...) })
}

func (w *Window) mirrorChosen() {
	w.arrange("Mirror Motif", 1, func(o document.Order) (document.Order, error) { return document.MirrorMotifs(o, w.chosen...) })
}

// arrange does an edit on the chosen motifs, if there are enough of them.
func (w *Window) arrange(name string, least int, edit func(document.Order) (document.Order, error)) bool {
	if len(w.chosen) < least {
		w.Say(say("Choose the motifs first, at least %d: Shift with a click adds one.", least))
		return false
	}
	return w.Edit(name, edit)
}

// duplicate adds copies of the chosen motifs beside them, and chooses the copies.
func (w *Window) duplicate() {
	o, before := w.Order(), w.chosen
	var box geom.Box
	for _, id := range before {
		if m, ok := o.Motif(id); ok {
			b := m.Placed().Bounds()
			box = box.Union(b.Moved(m.At.Neg()))
		}
	}
	by := snapped(geom.Point{X: box.Width().Times(1.25) + o.Sheet.WebLimit})
	copies := make([]pattern.ID, len(before))
	for i := range copies {
		copies[i] = o.NextID + pattern.ID(i)
	}
	w.chosen = copies
	if !w.arrange("Duplicate Motif", 1, func(o document.Order) (document.Order, error) { return document.Duplicate(o, by, before...) }) {
		w.chosen = before
	}
}

// places are where the chosen motifs stand, in the order in which they were chosen.
func (w *Window) places() []geom.Point {
	places := make([]geom.Point, len(w.chosen))
	for i, id := range w.chosen {
		m, _ := w.Order().Motif(id)
		places[i] = m.At
	}
	return places
}

// inLine lays the chosen motifs in a row or column of the lattice with the first.
func inLine(x pattern.Axis) func(*Window) {
	return func(w *Window) {
		w.arrange("Lay in Line", 2, func(o document.Order) (document.Order, error) {
			return document.MoveEach(o, w.ways(o.Unit.Lattice.InLine(x, w.places()...)))
		})
	}
}

// spread lays the chosen motifs evenly along a row or column, over the joint too.
func spread(x pattern.Axis) func(*Window) {
	return func(w *Window) {
		w.arrange("Spread Evenly", 2, func(o document.Order) (document.Order, error) {
			return document.MoveEach(o, w.ways(o.Unit.Lattice.Spread(x, w.places()...)))
		})
	}
}

func (w *Window) ways(of []geom.Point) map[pattern.ID]geom.Point {
	ways := make(map[pattern.ID]geom.Point, len(of))
	for i, id := range w.chosen {
		ways[id] = of[i]
	}
	return ways
}

// chooseAlike chooses every motif of the same shape as one that is chosen.
func (w *Window) chooseAlike() {
	var kinds []geom.Shape
	for _, id := range w.chosen {
		if m, ok := w.Order().Motif(id); ok {
			kinds = append(kinds, m.Shape)
		}
	}
	var ids []pattern.ID
	for _, m := range w.Order().Unit.Motifs {
		for _, k := range kinds {
			if m.Shape.Round() == k.Round() && m.Shape.Disc == k.Disc && reflect.DeepEqual(m.Shape.Outline, k.Outline) {
				ids = append(ids, m.ID)
				break
			}
		}
	}
	if len(ids) == 0 {
		w.Say(say("Choose a motif first; all of its kind are then found."))
		return
	}
	w.choose(ids...)
	w.Say(say("%d motifs chosen.", len(ids)))
}

// joinMotifs makes one motif of the chosen ones, where they stand.
func (w *Window) joinMotifs() {
	ids := w.chosen
	if len(ids) < 2 {
		w.arrange("Join Motifs", 2, nil)
		return
	}
	first, _ := w.Order().Motif(ids[0])
	var strokes []pen.Stroke
	for _, id := range ids {
		m, _ := w.Order().Motif(id)
		shape := m.Placed()
		if shape.Round() {
			shape.Outline = pen.OfDisc(shape.Disc)
		}
		strokes = append(strokes, pen.Of(shape.Outline)...)
	}
	o, _, err := pen.Outline(strokes...)
	if err != nil {
		w.Say(sentence(err))
		return
	}
	w.Edit("Join Motifs", func(order document.Order) (document.Order, error) {
		next, err := document.Reshape(order, ids[0], geom.Shape{Outline: o.Moved(first.At.Neg())})
		if err != nil {
			return order, err
		}
		return document.DeleteMotifs(next, ids[1:]...)
	})
}

// partMotif makes each part of the chosen motif a motif of its own, with the holes
// that lie in it.
func (w *Window) partMotif() {
	m, ok := w.stations[draftAt].(*draft).onlyChosen()
	if !ok {
		w.Say(say("Choose one motif first: click it."))
		return
	}
	parts := pen.Parts(m.Placed().Outline)
	if len(parts) < 2 {
		w.Say(say("This motif is of one piece."))
		return
	}
	var motifs []pattern.Motif
	chosen := []pattern.ID{m.ID}
	for i, part := range parts[1:] {
		centre := snapped(part.Bounds().Centre())
		motifs = append(motifs, pattern.Motif{Shape: geom.Shape{Outline: part.Moved(centre.Neg())}, At: centre})
		chosen = append(chosen, w.Order().NextID+pattern.ID(i))
	}
	before := w.chosen
	w.chosen = chosen
	if !w.Edit("Part Motif", func(o document.Order) (document.Order, error) {
		next, err := document.Reshape(o, m.ID, geom.Shape{Outline: parts[0].Moved(m.At.Neg())})
		if err != nil {
			return o, err
		}
		return document.AddMotifs(next, motifs...)
	}) {
		w.chosen = before
	}
}

// showChosen shows in the fields what is chosen.
func (s *draft) showChosen() {
	for _, show := range s.choosing {
		show()
	}
}
