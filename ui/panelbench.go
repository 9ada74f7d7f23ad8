package ui

import (
	"cmp"
	"fmt"
	"slices"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A panelBench is how the panels lie on the bolt: which is chosen, where it lies, and
// what is being dragged.
type panelBench struct {
	s      *garmentStation
	chosen string // the panel's name; "" for none
	drag   *panelDrag
	list   *widget.Select
	gap    *entry
	turned *widget.Check
}

// A panelDrag is a panel that is being moved along the bolt.
type panelDrag struct {
	name string
	from geom.Point // of the picture, where it was pressed
	by   geom.Point
}

// noPanel stands in the list where none is chosen.
const noPanel = "no panel"

func newPanelBench(s *garmentStation, f *form) *panelBench {
	b := &panelBench{s: s}
	f.heading("Panels on the bolt")
	b.list = newSelect(nil, nil)
	f.add(b.list)
	f.add(container.NewGridWithColumns(2,
		widget.NewButton(say("Earlier"), func() { b.step(-1) }), widget.NewButton(say("Later"), func() { b.step(1) })))
	b.gap = newEntry(b.setGap)
	f.row("Cloth left before it", b.gap)
	b.turned = widget.NewCheck(say("Turned half round"), nil)
	f.add(b.turned)
	f.button("As the Form Has Them", func() { s.w.Edit("Lay as the Form Has It", document.LayAsFormHasIt) })
	f.showing = append(f.showing, b.refresh)
	return b
}

// refresh shows the chosen panel.
func (b *panelBench) refresh(o document.Order) {
	names := []string{say(noPanel)}
	at := 0
	for i, p := range b.along() {
		names = append(names, say(p.Name))
		if p.Name == b.chosen {
			at = i + 1
		}
	}
	if at == 0 {
		b.chosen = ""
	}
	b.list.OnChanged = nil
	b.list.SetOptions(names)
	b.list.SetSelectedIndex(at)
	b.list.OnChanged = func(string) {
		name := ""
		if i := b.list.SelectedIndex(); i > 0 {
			name = b.along()[i-1].Name
		}
		b.choose(name)
	}
	p, ok := b.panel(b.chosen)
	b.gap.put("")
	b.turned.OnChanged = nil
	b.turned.SetChecked(ok && p.Turned)
	b.turned.OnChanged = func(bool) { b.turn() }
	if !ok {
		b.gap.Disable()
		b.turned.Disable()
		return
	}
	b.gap.Enable()
	b.gap.put(b.s.w.unit().Format(o.Garment.Layout.Gaps[p.Name], 2))
	if b.mayTurn(p.Name) {
		b.turned.Enable()
	} else {
		b.turned.Disable()
	}
}

// along lists the panels as they lie along the bolt, from the left.
func (b *panelBench) along() []cloth.Panel {
	all := slices.Clone(b.s.w.work.Dressed.Panels)
	slices.SortStableFunc(all, func(p, q cloth.Panel) int { return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X)) })
	return all
}

func (b *panelBench) panel(name string) (cloth.Panel, bool) {
	for _, p := range b.s.w.work.Dressed.Panels {
		if p.Name == name && name != "" {
			return p, true
		}
	}
	return cloth.Panel{}, false
}

func (b *panelBench) mayTurn(name string) bool {
	return slices.ContainsFunc(b.s.w.work.Dressed.Laying().Panels, func(p cloth.LaidPanel) bool { return p.Name == name && p.MayTurn })
}

// choose takes a panel to work on and shows it on the bolt.
func (b *panelBench) choose(name string) {
	b.chosen = name
	if name != "" {
		b.s.show(true)
	}
	b.s.w.refresh()
}

// step lays the chosen panel one place earlier or later.
func (b *panelBench) step(by int) {
	names := b.names()
	i := slices.Index(names, b.chosen)
	if j := i + by; i >= 0 && j >= 0 && j < len(names) {
		names[i], names[j] = names[j], names[i]
		b.lay(names)
	}
}

func (b *panelBench) names() []string {
	var names []string
	for _, p := range b.along() {
		names = append(names, p.Name)
	}
	return names
}

// lay lays the panels in another order.
func (b *panelBench) lay(names []string) {
	if slices.Equal(names, b.names()) {
		return
	}
	b.s.w.Edit("Move Panel", func(o document.Order) (document.Order, error) { return document.LayPanels(o, names) })
}

// turn lays the chosen panel the other way round.
func (b *panelBench) turn() {
	p, ok := b.panel(b.chosen)
	if !ok {
		return
	}
	if !b.mayTurn(p.Name) {
		b.s.w.Say(say("The %s can't be turned.", p.Name))
		return
	}
	b.s.w.Edit("Turn Panel", func(o document.Order) (document.Order, error) { return document.TurnPanel(o, p.Name, !p.Turned) })
}

// setGap leaves cloth before the chosen panel.
func (b *panelBench) setGap(text string) {
	l, err := geom.ParseLength(text, b.s.w.unit())
	if err == nil && l < 0 {
		err = fmt.Errorf("a gap can't be less than nothing")
	}
	if err != nil {
		b.s.w.Say(sentence(err))
		b.refresh(b.s.w.Order())
		return
	}
	name := b.chosen
	b.s.w.Edit("Leave a Gap", func(o document.Order) (document.Order, error) { return document.LeaveGap(o, name, l) })
}
