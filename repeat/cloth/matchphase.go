package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// phases lists the phases of an open group at which a laying can be the best.
// Where none of its panels touches what lies before it, the whole group can be
// moved back; so one touches, and stands where a chain of panels that touch one
// another ends: a chain from the first placement, from an avoided stretch, from
// a window of a target, or from a panel whose place is known, through panels
// that are free. A bound sets the panels of all other groups free too. Phases by
// chains from the cloth itself come apart from those by way of known panels.
func (s *search) phases(st tieState, group int, forBound bool) (ground, via []geom.Length) {
	c := chains{search: s, st: st}
	mixed := false
	var first geom.Length
	for i, g := range st.group {
		switch {
		case g == group:
			c.members = append(c.members, i)
			if first == 0 {
				first = st.sign[i]
			}
			mixed = mixed || st.sign[i] != first
		case g == known:
			c.fixed = append(c.fixed, i)
		}
		// A panel that slides can stand in a chain whatever its own phase is.
		if slide := c.slide(i); slide.To > slide.From || g != group && g != known && (forBound || !s.binds(st, i)) {
			c.loose = append(c.loose, i)
		}
	}
	c.sums = c.lengths(-1)
	c.forward()
	if mixed {
		c.backward()
		c.opposed()
		if s.pack.count > 1 || len(s.open(st)) > 1 {
			s.coarse = true
		}
	}
	if !forBound {
		c.besideApart()
	}
	slices.Sort(c.ground)
	slices.Sort(c.via)
	return slices.Compact(c.ground), slices.Compact(c.via)
}

// binds reports whether panel i must have a place that is decided.
func (s *search) binds(st tieState, i int) bool {
	return st.tied[i] || len(st.windows[i]) > 0 && s.anyUntied(st, i)
}

// chains collects the phases of one group.
type chains struct {
	*search
	st      tieState
	members []int // of the group
	fixed   []int // panels whose place is known
	loose   []int // panels that a chain can go through
	sums    []geom.Length
	ground  []geom.Length // phases found
	via     []geom.Length
}

// lengths returns the lengths of all chains of loose panels other than the given
// one. Where the laying floats, a panel over the whole width that lies before all
// others might as well lie behind them: a chain of such panels alone begins with
// one, and only a chain with a narrower panel, which another may lie beside, needs
// them.
func (c *chains) lengths(without int) []geom.Length {
	if len(c.panels) > exactPanels {
		return []geom.Length{0}
	}
	var narrow, whole []int
	for _, i := range c.loose {
		switch lanes := c.pack.lanes[i]; {
		case i == without:
		case lanes[1]-lanes[0] == c.pack.count:
			whole = append(whole, i)
		default:
			narrow = append(narrow, i)
		}
	}
	sums := c.further([]geom.Length{0}, narrow)
	if !c.floats() {
		return c.further(sums, whole)
	}
	return append([]geom.Length{0}, c.further(sums[1:], whole)...)
}

// further returns the sums with the lengths of any of the panels added, within
// the limit, in their order.
func (c *chains) further(sums []geom.Length, panels []int) []geom.Length {
	sums = slices.Clone(sums)
	for _, i := range panels {
		for _, s := range sums {
			sums = append(sums, s+c.pack.length[i])
		}
		slices.Sort(sums)
		sums = slices.Compact(sums)
	}
	return slices.DeleteFunc(sums, func(s geom.Length) bool { return s > c.limit })
}

// floats reports whether all panels together can be moved along: nothing is
// bound to a place of the cloth, none slides in its own place, and none is kept
// apart from one that hangs the other way up.
func (c *chains) floats() bool {
	if slices.ContainsFunc(c.st.apart, func(a keepApart) bool { return a.first != a.second }) {
		return false
	}
	if c.KeepOrder || len(c.avoid) > 0 || len(c.fixed) > 0 || slices.Contains(c.st.sign, -1) {
		return false
	}
	for i := range c.panels {
		if slide := c.slide(i); slide.From != slide.To || c.st.windows[i] != nil {
			return false
		}
	}
	return true
}

// at returns the phase at which z of a member is where it is given.
func (c *chains) at(member int, z geom.Length) geom.Length {
	return c.mod(c.st.sign[member] * (c.mod(z) - c.st.rest[member]))
}

func (c *chains) add(member int, z geom.Length)    { c.ground = append(c.ground, c.at(member, z)) }
func (c *chains) addVia(member int, z geom.Length) { c.via = append(c.via, c.at(member, z)) }

func (c *chains) slide(i int) Span { return c.pack.slides[i][max(c.st.turn[i], 0)] }

// turnsOf lists the turns that panel i may have.
func (c *chains) turnsOf(i int) []int8 {
	if c.st.turn[i] >= 0 {
		return c.st.turn[i : i+1]
	}
	return []int8{0, 1}
}

// forward lists the phases at which a member touches a chain before it, and what
// is seen of it can't slide further back.
func (c *chains) forward() {
	c.chained(0, 0, c.sums)
	for _, i := range c.loose {
		sums := c.sums
		if len(c.avoid) > 0 {
			sums = c.lengths(i)
		}
		for _, t := range c.turnsOf(i) {
			for _, a := range c.avoid {
				from := a.To - c.pack.seen[i][t].From
				c.chained(from, from+c.pack.length[i], sums)
			}
		}
	}
	for _, m := range c.members {
		slide := c.slide(m)
		for _, sum := range c.sums {
			for _, i := range c.loose {
				for _, w := range c.st.windows[i] {
					c.add(m, w.from-c.slide(i).To+c.pack.length[i]+sum+slide.From)
				}
			}
			for _, i := range c.fixed {
				c.addVia(m, c.st.rest[i]-c.slide(i).To+c.pack.length[i]+sum+slide.From)
			}
		}
		for _, a := range c.avoid {
			from := a.To - c.pack.seen[m][max(c.st.turn[m], 0)].From
			c.standing(m, from, from)
		}
		for _, w := range c.st.windows[m] {
			c.add(m, w.from)
			c.add(m, w.from+w.wide)
		}
	}
}

// chained adds the phases at which a member touches a chain that begins at a
// place of the cloth and goes on at another by one of the sums.
func (c *chains) chained(from, on geom.Length, sums []geom.Length) {
	for _, m := range c.members {
		for _, sum := range sums {
			c.standing(m, from, on+sum)
		}
	}
}

// standing adds the phase at which a member lies at y behind a chain from there
// on, unless it can't: no chain comes over a stretch that is wider than what
// isn't seen of two panels that meet.
func (c *chains) standing(m int, from, y geom.Length) {
	if y+c.pack.length[m] >= c.best.used {
		return
	}
	for _, a := range c.avoid {
		if wide := a.To - a.From; len(c.panels) <= exactPanels && wide > c.pack.head+c.pack.tail && from <= a.From && y > a.From+c.pack.tail {
			return
		}
		seen := c.pack.seen[m][max(c.st.turn[m], 0)]
		if c.st.turn[m] >= 0 && a.reaches(y+seen.From, seen.To-seen.From) {
			return
		}
	}
	c.add(m, y+c.slide(m).From)
}

// backward lists the phases at which a member that moves on while the group
// moves back touches a chain behind it.
func (c *chains) backward() {
	var starts []geom.Length
	for _, i := range c.loose {
		for _, t := range c.turnsOf(i) {
			for _, a := range c.avoid {
				starts = append(starts, a.From-c.pack.seen[i][t].To)
			}
		}
	}
	for _, m := range c.members {
		for _, sum := range c.sums {
			for _, start := range starts {
				c.add(m, c.mod(start)-sum-c.pack.length[m]+c.slide(m).To)
			}
			for _, i := range c.fixed {
				c.addVia(m, c.st.rest[i]-c.slide(i).From-sum-c.pack.length[m]+c.slide(m).To)
			}
		}
		for _, a := range c.avoid {
			c.add(m, a.From-c.pack.seen[m][max(c.st.turn[m], 0)].To+c.slide(m).To)
		}
	}
}
