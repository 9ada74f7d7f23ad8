package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A targetBench is the places of the garment at which a motif is asked for.
type targetBench struct {
	s      *garmentStation
	places *widget.Check // a click asks for a motif there
	list   *widget.Select
	within *entry
	away   *widget.Button
}

// targetWithin is how far a motif may lie off its place at first.
const targetWithin = 10 * geom.Millimetre

func newTargetBench(s *garmentStation, f *form) *targetBench {
	b := &targetBench{s: s}
	b.places = widget.NewCheck(say("A click asks for a motif there"), func(bool) { s.show(false) })
	f.add(b.places)
	b.list = newSelect(nil, func(string) { b.refresh(s.w.Order()) })
	f.row("Asked for", b.list)
	b.within = newEntry(b.setWithin)
	f.row("Within", b.within)
	b.away = widget.NewButton(say("Ask for It No More"), b.remove)
	f.add(b.away)
	f.showing = append(f.showing, b.refresh)
	return b
}

// refresh lists the places.
func (b *targetBench) refresh(o document.Order) {
	all := o.Garment.Wishes.Targets
	var names []string
	for _, t := range all {
		names = append(names, t.Name)
	}
	at := slices.Index(names, b.list.Selected)
	if at < 0 {
		at = len(names) - 1
	}
	changed := b.list.OnChanged
	b.list.OnChanged = nil
	b.list.SetOptions(names)
	if at >= 0 {
		b.list.SetSelectedIndex(at)
	} else {
		b.list.ClearSelected()
	}
	b.list.OnChanged = changed
	if at < 0 {
		b.within.put("")
		b.within.Disable()
		b.away.Disable()
		return
	}
	b.within.Enable()
	b.away.Enable()
	b.within.put(b.s.w.unit().Format(all[at].Within, 2))
}

// ask asks for a motif at a place of the picture, where there is a piece: for the one
// that is chosen on the draft or, where none is, the first.
func (b *targetBench) ask(p geom.Point) {
	o := b.s.w.Order()
	motif, ok := chosenMotif(b.s.w)
	if !ok {
		b.s.w.Say(say("There is no motif to ask for; draw one first."))
		return
	}
	for _, piece := range slices.Backward(b.s.w.work.Dressed.Pieces()) {
		at := p.Sub(b.s.offsetOf(piece))
		if !piece.Area.Holds(at) {
			continue
		}
		w := o.Garment.Wishes
		t := cloth.PlaceWish{Name: freeName(w.Targets, piece.Name), Piece: piece.Name, At: at, Motif: motif, Within: targetWithin}
		w.Targets = append(slices.Clip(w.Targets), t)
		if b.s.w.Edit("Ask for a Motif", func(o document.Order) (document.Order, error) { return document.SetWishes(o, w) }) {
			b.list.SetSelected(t.Name)
		}
		return
	}
}

// chosenMotif returns the place of the motif that is asked for.
func chosenMotif(w *Window) (geom.Point, bool) {
	o := w.Order()
	if len(w.chosen) > 0 {
		if m, ok := o.Motif(w.chosen[0]); ok {
			return o.Unit.Lattice.Into(m.At), true
		}
	}
	if len(o.Unit.Motifs) == 0 {
		return geom.Point{}, false
	}
	return o.Unit.Lattice.Into(o.Unit.Motifs[0].At), true
}

// freeName returns a name that no place has yet.
func freeName(all []cloth.PlaceWish, name string) string {
	taken := func(n string) bool {
		return slices.ContainsFunc(all, func(t cloth.PlaceWish) bool { return t.Name == n })
	}
	free := name
	for i := 2; taken(free); i++ {
		free = fmt.Sprintf("%s %d", name, i)
	}
	return free
}

// change edits the place that is shown in the list; none takes it away.
func (b *targetBench) change(name string, edit func(t cloth.PlaceWish) []cloth.PlaceWish) {
	w := b.s.w.Order().Garment.Wishes
	i := slices.IndexFunc(w.Targets, func(t cloth.PlaceWish) bool { return t.Name == b.list.Selected })
	if i < 0 {
		return
	}
	w.Targets = slices.Concat(w.Targets[:i], edit(w.Targets[i]), w.Targets[i+1:])
	b.s.w.Edit(name, func(o document.Order) (document.Order, error) { return document.SetWishes(o, w) })
}

func (b *targetBench) remove() {
	b.change("Ask for It No More", func(cloth.PlaceWish) []cloth.PlaceWish { return nil })
}

func (b *targetBench) setWithin(text string) {
	l, err := geom.ParseLength(text, b.s.w.unit())
	if err != nil {
		b.s.w.Say(sentence(err))
		b.refresh(b.s.w.Order())
		return
	}
	b.change("Ask for a Motif", func(t cloth.PlaceWish) []cloth.PlaceWish {
		t.Within = l
		return []cloth.PlaceWish{t}
	})
}

// mark rings the places, and says at each whether a motif falls there.
func (b *targetBench) mark(sc *board.Scene) {
	for _, t := range b.s.w.Order().Garment.Wishes.Targets {
		p, ok := b.s.piece(t.Piece)
		if !ok {
			continue
		}
		at := t.At.Add(b.s.offsetOf(p))
		sign := "○ "
		for _, m := range b.s.w.work.Dressed.Matches {
			if m.Goal == "" && m.Name == t.Name && m.Reached {
				sign = "● "
			}
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: []geom.Point{at}, Radius: t.Within, Colour: worn().onCloth, Width: 2})
		sc.Labels = append(sc.Labels, board.Label{
			At: at.Add(geom.Point{Y: t.Within}), Align: board.Below, Text: sign + t.Name, Colour: worn().ink, Shield: worn().shield, Size: 11,
		})
	}
}

// look shows the first place where no motif falls.
func (b *targetBench) look() {
	for _, t := range b.s.w.Order().Garment.Wishes.Targets {
		for _, m := range b.s.w.work.Dressed.Matches {
			if p, ok := b.s.piece(t.Piece); ok && m.Goal == "" && m.Name == t.Name && !m.Reached {
				b.s.show(false)
				b.s.w.board.Near(t.At.Add(b.s.offsetOf(p)), 4)
				return
			}
		}
	}
}
