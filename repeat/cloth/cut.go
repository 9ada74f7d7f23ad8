package cloth

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tsugime/repeat/geom"
)

// maxPanel is the longest panel that is cut.
const maxPanel = 100 * geom.Metre

// holds reports whether a condition holds; one that isn't there does.
func (c cut) holds(when *formula) (bool, error) {
	if when == nil {
		return true, nil
	}
	v, err := when.result(c.values)
	if err != nil {
		return false, err
	}
	return v.(bool), nil
}

// set puts what a formula is into to; one that isn't there leaves it.
func (c cut) set(to *geom.Length, by *formula) error {
	if by == nil {
		return nil
	}
	l, err := by.length(c.values)
	if err == nil {
		*to = l
	}
	return err
}

// numbered returns the number of the panel with a name, and whether there is one.
func numbered(panels []LaidPanel, name string) (int, bool) {
	i := slices.IndexFunc(panels, func(p LaidPanel) bool { return p.Name == name })
	return max(i, 0), i >= 0
}

// A cutPanel is a panel that is cut, with what only the form knows of it.
type cutPanel struct {
	formPanel
	gap geom.Length
}

// panels works out what is cut from the cloth, each panel in its lane at the
// cloth's beginning.
func (c cut) panels() ([]LaidPanel, []cutPanel, error) {
	var laid []LaidPanel
	var cuts []cutPanel
	for _, p := range c.form.panels {
		is, err := c.holds(p.when)
		if err != nil {
			return nil, nil, misfit("mend the condition in the form", "the panel %q: %v", p.name, err)
		}
		if !is {
			continue
		}
		l, k, err := c.panel(p)
		if err != nil {
			return nil, nil, err
		}
		laid, cuts = append(laid, l), append(cuts, k)
	}
	if len(laid) == 0 {
		return nil, nil, misfit("give other counts, or mend the form", "no panel is cut")
	}
	return laid, cuts, nil
}

func (c cut) panel(p formPanel) (LaidPanel, cutPanel, error) {
	l, k := LaidPanel{Name: p.name, Turned: p.turned, MayTurn: !p.stuck}, cutPanel{formPanel: p}
	var end geom.Length
	for _, set := range []struct {
		to *geom.Length
		by *formula
	}{{&l.X, &p.from}, {&end, &p.to}, {&l.Length, &p.length}, {&k.gap, p.gap}} {
		if err := c.set(set.to, set.by); err != nil {
			return l, k, misfit("mend the formula in the form, or give other sizes", "the panel %q: %v", p.name, err)
		}
	}
	l.Width = end - l.X
	switch {
	case l.X < 0 || l.Width <= 0:
		return l, k, misfit("mend its lane in the form; it begins at 0 or later", "the %s has no lane of the cloth, from %s to %s mm", p.name, l.X, end)
	case end > c.width:
		return l, k, misfit(fmt.Sprintf("use cloth of at least %s mm finished width, or set smaller sizes", end),
			"the %s is cut %s mm wide, to %s mm across cloth of %s mm", p.name, l.Width, end, c.width)
	case l.Length <= 0 || l.Length > maxPanel:
		return l, k, misfit(fmt.Sprintf("give sizes that make it longer than nothing and at most %s mm", maxPanel), "the %s is cut %s mm long", p.name, l.Length)
	case k.gap < 0 || k.gap > maxPanel:
		return l, k, misfit(fmt.Sprintf("give between 0 and %s mm", maxPanel), "the gap before the %s is %s mm", p.name, k.gap)
	}
	return l, k, nil
}

// slack says how far what is seen of a panel may be moved across it.
func (c cut) slack(p *LaidPanel, number int, windows []window) {
	left, right := p.Width, p.Width
	for _, w := range windows {
		if w.number == number {
			s := w.shown()
			left, right = min(left, s.Min.X), min(right, p.Width-s.Max.X)
		}
	}
	p.ShiftLeast, p.ShiftMost = min(0, c.edge-left), max(0, right-c.edge)
}

// laidOut puts the order's own wishes on panels, as numbers: their order along
// the cloth and the gaps before them.
func (c cut) laidOut(want Layout, panels []LaidPanel, cuts []cutPanel) (order []int, gaps []geom.Length, err error) {
	gaps = make([]geom.Length, len(panels))
	for i, k := range cuts {
		gaps[i] = k.gap
	}
	for _, named := range [][]string{want.Order, slices.Sorted(maps.Keys(want.Gaps)), slices.Sorted(maps.Keys(want.Shifts)), slices.Sorted(maps.Keys(want.Turned))} {
		for _, name := range named {
			if _, ok := numbered(panels, name); !ok {
				return nil, nil, misfit("take it out, or name one of "+panelNames(panels), "there is no panel %q to lay", name)
			}
		}
	}
	for _, name := range want.Order {
		i, _ := numbered(panels, name)
		if slices.Contains(order, i) {
			return nil, nil, misfit("name each panel once", "the panel %q is laid twice", name)
		}
		order = append(order, i)
	}
	for i := range panels {
		p := &panels[i]
		if !slices.Contains(order, i) {
			order = append(order, i)
		}
		if gap, ok := want.Gaps[p.Name]; ok {
			if gap < 0 || gap > maxPanel {
				return nil, nil, misfit(fmt.Sprintf("give between 0 and %s mm", maxPanel), "a gap of %s mm can't be left before the %s", gap, p.Name)
			}
			gaps[i] = gap
		}
		if turned, ok := want.Turned[p.Name]; ok {
			if turned != p.Turned && !p.MayTurn {
				return nil, nil, misfit("leave it as it is", "the %s can't be turned", p.Name)
			}
			p.Turned = turned
		}
		if p.Shift = want.Shifts[p.Name]; p.Shift < p.ShiftLeast || p.Shift > p.ShiftMost {
			return nil, nil, misfit(fmt.Sprintf("give between %s and %s mm", p.ShiftLeast, p.ShiftMost),
				"shifted by %s mm, the %s has too little allowance at one edge", p.Shift, p.Name)
		}
	}
	return order, gaps, nil
}

func panelNames(panels []LaidPanel) string {
	var names []string
	for _, p := range panels {
		names = append(names, p.Name)
	}
	return strings.Join(names, ", ")
}
