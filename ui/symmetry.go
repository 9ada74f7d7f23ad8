package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

// groupWords say in plain words what each plane group does to a motif.
var groupWords = map[pattern.Group]string{
	pattern.P1: "only repeats", pattern.P2: "half turns",
	pattern.PM: "mirrors", pattern.PG: "glides", pattern.CM: "mirrors and glides",
	pattern.P2MM: "mirrors both ways", pattern.P2MG: "mirrors and glides across",
	pattern.P2GG: "glides both ways", pattern.C2MM: "mirrors and half turns",
	pattern.P4: "quarter turns", pattern.P4MM: "quarter turns and mirrors",
	pattern.P4GM: "quarter turns off mirrors",
	pattern.P3:   "third turns", pattern.P3M1: "third turns on mirrors",
	pattern.P31M: "third turns off mirrors",
	pattern.P6:   "sixth turns", pattern.P6MM: "sixth turns and mirrors",
}

// groupTitle is a group as it stands in a list.
func groupTitle(g pattern.Group) string { return string(g) + " · " + say(groupWords[g]) }

// symmetryFields choose the plane group that multiplies the motifs.
type symmetryFields struct {
	groups *widget.Select
	w      *Window
	hidden bool // the elements are not shown
}

func (y *symmetryFields) add(s *draft) {
	y.w = s.w
	f := s.form
	f.heading("Symmetry")
	y.groups = newSelect(nil, nil)
	f.add(y.groups)
	f.button("Write the Copies Out", y.writeOut)
	f.words("Draw in the hatched part, the group makes the rest. Drag a motif or any copy of it, and all follow.")
}

// refresh shows the order's group, and which groups its lattice carries.
func (y *symmetryFields) refresh(o document.Order) {
	y.groups.OnChanged = nil
	titles := make([]string, len(pattern.Groups()))
	for i, g := range pattern.Groups() {
		titles[i] = groupTitle(g)
		if g.Allows(o.Unit.Lattice) != nil {
			titles[i] = say("%s (another lattice)", titles[i])
		}
	}
	if !slices.Equal(y.groups.Options, titles) {
		y.groups.SetOptions(titles)
	}
	y.groups.SetSelectedIndex(slices.Index(pattern.Groups(), o.Group))
	y.groups.OnChanged = func(string) { y.choose(pattern.Groups()[y.groups.SelectedIndex()]) }
}

// choose lets a group multiply the motifs, or tells what lattice it needs.
func (y *symmetryFields) choose(g pattern.Group) {
	o := y.w.Order()
	if g == o.Group {
		return
	}
	if err := g.Allows(o.Unit.Lattice); err != nil {
		y.w.Say(sentence(err))
		y.refresh(o)
		return
	}
	y.w.Edit("Change Plane Group", func(o document.Order) (document.Order, error) { return document.SetGroup(o, g) })
}

func (y *symmetryFields) writeOut() {
	if y.w.Order().Group == pattern.P1 {
		y.w.Say(say("There are no copies to write out: the group p1 only repeats."))
		return
	}
	before := len(y.w.Order().Unit.Motifs)
	if y.w.Edit("Write the Copies Out", document.WriteOut) {
		y.w.Say(say("%s.", counted(len(y.w.Order().Unit.Motifs)-before, "copy is now a motif of its own", "copies are now motifs of their own")))
	}
}

// symmetryName is the command that shows the elements, or hides them.
func symmetryName(w *Window) string {
	if w.stations[draftAt].(*draft).symmetry.hidden {
		return say("Show Symmetry")
	}
	return say("Hide Symmetry")
}

func (w *Window) turnSymmetry() {
	y := &w.stations[draftAt].(*draft).symmetry
	y.hidden = !y.hidden
	w.win.SetMainMenu(w.mainMenu())
	w.repaint()
}

// symmetryOf returns the plane group of a finished pattern, or nothing where it
// has no motifs to tell by.
func symmetryOf(u pattern.Unit) pattern.Recognised {
	if len(u.Motifs) == 0 {
		return pattern.Recognised{}
	}
	r, err := pattern.Recognise(u)
	if err != nil {
		return pattern.Recognised{}
	}
	return r
}

// symmetryMeasures are what the finished pattern has, however it was drawn.
func symmetryMeasures(r pattern.Recognised) []measure {
	if r.Group == "" {
		return nil
	}
	rows := []measure{{"has the group", strings.TrimSpace(string(r.Group))}}
	if r.Copies > 1 {
		rows = append(rows, measure{"the unit holds", say("%d of a smaller one", r.Copies)})
	}
	return rows
}
