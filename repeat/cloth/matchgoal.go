package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A matcher is a Matching made ready to be searched.
type matcher struct {
	Matching
	panels    []LaidPanel
	period    geom.Length // along-period
	tolerance geom.Length // what a ring of seams may be off along
	limit     geom.Length
	anyShift  bool
	goals     []goal
	pack      packer
	asked     []asked
	work      int  // steps of packing done, against maxMatchWork
	coarse    bool // something was left out, so that the answer isn't proven
	// thinned is set where columns that are alike along were passed over, and
	// unshiftable where shifts have ruled a way out: both together prove nothing.
	thinned, unshiftable bool
	every                bool // of these columns is tried
}

// A goal is an aim, a target or the stretches to avoid.
type goal struct {
	name   string
	aim    Goal
	seam   *LaidSeam
	target *Target
	along  geom.Length // a seam is moved on by this
	apart  geom.Length
	across geom.Length // tolerance
}

func newMatcher(m Matching) *matcher {
	q := &matcher{Matching: m, panels: m.Laying.Panels, period: m.Lattice.Along(), tolerance: m.Tolerance, limit: m.Limit}
	var sum geom.Length
	for _, p := range q.panels {
		sum += p.Length
		q.anyShift = q.anyShift || p.ShiftLeast < 0 || p.ShiftMost > 0
	}
	q.tolerance = min(q.tolerance, q.period/4)
	if q.limit == 0 {
		q.limit = 2*sum + geom.Length(len(q.panels))*min(q.period, 20*geom.Metre)
	}
	for _, a := range m.Aims {
		s := &m.Laying.Seams[a.Seam]
		g := goal{name: s.Name, aim: a.Goal, seam: s, across: max(a.Across, m.Tolerance)}
		switch a.Goal {
		case Staggered:
			g.along = q.mod(q.period.Times(a.Share))
		case Apart:
			g.apart = a.Distance
		}
		q.goals = append(q.goals, g)
	}
	for i := range m.Targets {
		q.goals = append(q.goals, goal{name: m.Targets[i].Name, target: &m.Targets[i]})
	}
	if len(m.Avoid) > 0 {
		q.goals = append(q.goals, goal{name: AvoidName})
	}
	q.pack = newPacker(m, q.period)
	return q
}

// start returns the state in which nothing is decided.
func (q *matcher) start() tieState {
	n := len(q.panels)
	s := tieState{
		turn: make([]int8, n), group: make([]int, n), sign: slices.Repeat([]geom.Length{1}, n),
		rest: make([]geom.Length, n), tied: make([]bool, n), windows: make([][]berth, n),
	}
	for i, p := range q.panels {
		s.group[i], s.turn[i] = i, -1
		if !p.MayTurn {
			s.turn[i] = asDrawn(p.Turned)
		}
	}
	return s
}

func asDrawn(turned bool) int8 {
	if turned {
		return 1
	}
	return 0
}

// turns lists how panel i may lie, the way it lies first.
func (q *matcher) turns(s tieState, i int) []int8 {
	if s.turn[i] >= 0 {
		return s.turn[i : i+1]
	}
	first := asDrawn(q.panels[i].Turned)
	return []int8{first, 1 - first}
}

// from returns where on the cloth a place of panel i lies, along from its z.
func (q *matcher) from(i int, turn int8, own geom.Point) geom.Point {
	p := q.panels[i]
	p.Turned, p.Shift, p.Y = turn == 1, 0, 0
	return p.OnCloth(own)
}
