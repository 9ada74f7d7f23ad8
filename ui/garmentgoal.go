package ui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A goalBench is what is wished of the seam under the loupe, and what it costs.
type goalBench struct {
	b     *seamBench
	goals *widget.Select
	by    *entry
	cost  *widget.Label
}

// goals of a seam, as they stand in the list.
var goalNames = []struct {
	goal cloth.Goal
	name string
}{
	{"", "as it falls"}, {cloth.RunOn, "runs on"}, {cloth.Staggered, "staggered"}, {cloth.Apart, "kept apart"},
}

// halfStep is how far a seam is staggered at first: half of what the pattern repeats
// along.
const halfStep = 0.5

func newGoalBench(b *seamBench, f *form) *goalBench {
	g := &goalBench{b: b, cost: quietLabel()}
	g.goals = newSelect(nil, nil)
	f.row("Its goal", g.goals)
	g.by = newEntry(g.setBy)
	f.row("By", g.by)
	f.add(g.cost)
	f.showing = append(f.showing, g.refresh)
	return g
}

// refresh shows what is wished of the seam, and what became of it.
func (g *goalBench) refresh(o document.Order) {
	var names []string
	for _, n := range goalNames {
		names = append(names, say(n.name))
	}
	wish, _ := o.Wished(g.b.chosen)
	g.goals.OnChanged = nil
	g.goals.SetOptions(names)
	g.goals.SetSelectedIndex(slices.IndexFunc(goalNames, func(n struct {
		goal cloth.Goal
		name string
	}) bool {
		return n.goal == wish.Goal
	}))
	g.goals.OnChanged = func(string) { g.set(goalNames[max(g.goals.SelectedIndex(), 0)].goal) }
	g.by.put(g.byWords(wish))
	able := func(w interface {
		Enable()
		Disable()
	}, is bool) {
		if is {
			w.Enable()
		} else {
			w.Disable()
		}
	}
	able(g.goals, g.b.chosen != "")
	able(g.by, wish.Goal == cloth.Staggered || wish.Goal == cloth.Apart)
	g.cost.SetText(g.words())
}

// byWords is by how much a seam is staggered or kept apart.
func (g *goalBench) byWords(w cloth.SeamWish) string {
	switch w.Goal {
	case cloth.Staggered:
		return strconv.FormatFloat(100*w.Share, 'g', 4, 64) + " %"
	case cloth.Apart:
		return g.b.s.w.unit().Format(w.Distance, 2)
	}
	return ""
}

// set gives the seam another goal.
func (g *goalBench) set(goal cloth.Goal) {
	was, _ := g.b.s.w.Order().Wished(g.b.chosen)
	if was.Goal == goal || g.b.chosen == "" {
		return
	}
	w := cloth.SeamWish{Seam: g.b.chosen, Goal: goal}
	switch goal {
	case cloth.Staggered:
		w.Share = halfStep
	case cloth.Apart:
		w.Distance = min(g.b.s.w.Order().Unit.Lattice.Along()/4, 80*geom.Millimetre)
	}
	g.wish(w)
}

func (g *goalBench) wish(w cloth.SeamWish) {
	seams := g.b.names()
	g.b.s.w.Edit("Match a Seam", func(o document.Order) (document.Order, error) { return document.WishSeam(o, w, seams) })
}

// setBy takes by how much a seam is staggered or kept apart.
func (g *goalBench) setBy(text string) {
	o := g.b.s.w.Order()
	w, _ := o.Wished(g.b.chosen)
	var err error
	switch w.Goal {
	case cloth.Staggered:
		var pct float64
		if pct, err = strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "%")), 64); err != nil {
			err = fmt.Errorf("%q is no share in percent", text)
		}
		w.Share = pct / 100
	case cloth.Apart:
		w.Distance, err = geom.ParseLength(text, g.b.s.w.unit())
	default:
		return
	}
	if err != nil {
		g.b.s.w.Say(sentence(err))
		g.by.put(g.byWords(w))
		return
	}
	g.wish(w)
}

// match returns what became of the wish for a seam.
func (g *goalBench) match(seam string) (cloth.Match, bool) {
	for _, m := range g.b.s.w.work.Dressed.Matches {
		if m.Name == seam && seam != "" {
			return m, true
		}
	}
	return cloth.Match{}, false
}

// words tell what the chosen seam's goal came to.
func (g *goalBench) words() string {
	if g.b.chosen == "" {
		return say("Click on a seam, or Shift+N.")
	}
	m, ok := g.match(g.b.chosen)
	if !ok || !g.b.s.w.Ready() {
		return ""
	}
	u := g.b.s.w.unit()
	switch {
	case m.Reached:
		return say("Reached; it costs %s of cloth.", u.Format(m.Cost, 1))
	case m.Along:
		return say("Closed along for %s of cloth; across it stays %s off.", u.Format(m.Cost, 1), u.Format(m.Off.X.Abs(), 2))
	case m.Why.Reason == cloth.InTheWay:
		return say("Not together with: %s.", strings.Join(m.Why.With, ", "))
	case m.Why.Reason == cloth.TooLong:
		return say("It takes more cloth than there is.")
	case m.Why.Reason == cloth.TooFine:
		return say("The pattern repeats too closely to be kept apart.")
	}
	return say("What lies across is fixed: %s off.", u.Format(m.Why.Across.Abs(), 2))
}

// measures list what became of all wishes, with the cloth that each costs.
func (g *goalBench) measures() []measure {
	var rows []measure
	u := g.b.s.w.unit()
	for _, m := range g.b.s.w.work.Dressed.Matches {
		value := "+ " + u.Format(m.Cost, 1)
		switch {
		case m.Reached:
			value = "● " + value
		case m.Along:
			value = "◐ " + value
		default:
			value = "○ " + say("not reached")
		}
		name := m.Name
		if name == cloth.AvoidName {
			name = "clear of the turn"
		}
		rows = append(rows, measure{name, value})
	}
	if len(rows) > 0 {
		rows = append([]measure{{"", ""}, {"Wished for", say("cloth it costs")}}, rows...)
	}
	return rows
}

// names lists the seams, the most important first.
func (b *seamBench) names() []string {
	all := slices.Clone(b.all())
	slices.SortStableFunc(all, func(x, y cloth.Seam) int { return x.Priority - y.Priority })
	var names []string
	for _, c := range all {
		names = append(names, c.Name)
	}
	return names
}

// wishFields are the wishes that are of no one seam.
func (s *garmentStation) wishFields() {
	tick := func(name, edit string, pick func(w *cloth.Wishes) *bool) {
		s.form.tick(name, edit,
			func(o document.Order) bool { w := o.Garment.Wishes; return *pick(&w) },
			func(o document.Order, v bool) (document.Order, error) {
				w := o.Garment.Wishes
				*pick(&w) = v
				return document.SetWishes(o, w)
			})
	}
	s.form.tick("Match the main seam", "Match the Main Seam",
		func(o document.Order) bool { return o.Garment.MatchBackCentre },
		func(o document.Order, v bool) (document.Order, error) {
			g := o.Garment
			g.MatchBackCentre = v
			return document.SetGarment(o, g)
		})
	tick("No panel over the turn of the board", "Avoid the Turn", func(w *cloth.Wishes) *bool { return &w.AvoidTurn })
	tick("Panels may lie in any order", "Free the Order of Panels", func(w *cloth.Wishes) *bool { return &w.AnyOrder })
}
