package cloth

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Goal is what is asked of a seam.
type Goal string

// The goals of a seam.
const (
	RunOn     Goal = "run-on"    // the pattern goes on over the seam
	Staggered Goal = "staggered" // it is moved along by a share of the along-period
	Apart     Goal = "apart"     // the same motif isn't seen side by side at one height
)

// An Aim asks for one seam of a laying.
type Aim struct {
	Seam int // number in Laying.Seams
	Goal Goal
	// Share is how far a staggered seam is moved on, of the along-period; 0.5 is
	// half a step.
	Share float64
	// Distance is how far apart, across or along, a motif and its copy on the
	// other panel of an Apart seam are at least.
	Distance geom.Length
	// Across is the tolerance across where it is another than the matching's; 0
	// takes that.
	Across geom.Length
}

// A Target asks for a motif at a place of the finished garment.
type Target struct {
	Name   string
	Panel  int
	At     geom.Point  // the panel's own place
	Motif  geom.Point  // a place of the plain pattern; its copies serve as well
	Within geom.Length // how far it may lie off, across and along
}

// A Matching asks how to lay panels so that seams match with the least cloth.
// Its aims come first in their order, then its targets, then Avoid: a goal is
// given up only where those before it can't all be reached with it.
//
// What lies along a seam is met exactly, so that the whole tolerance is left to
// the sewing; where seams close a ring, as both sides of one panel do, the later
// one is reached within Tolerance. What lies across is given by the lanes and by
// the shifts that the panels allow, and is reached within Tolerance.
type Matching struct {
	Laying    Laying
	Lattice   pattern.Lattice
	Tolerance geom.Length
	Aims      []Aim
	Targets   []Target
	// Avoid are stretches of the cloth, from the first placement on, that no
	// panel's seen part may lie over: the turn of the board, bad places.
	Avoid []Span
	// Seen is, by panel, from where to where along it something is seen, in its
	// own places; nil stands for whole panels.
	Seen []Span
	// Slides is, by panel, how far what is seen may be moved along within the
	// cut length, to larger v; nil stands for none.
	Slides []Span
	// KeepOrder keeps the panels' order, as in Laying.Panels; else any is tried.
	KeepOrder bool
	// Limit is the most cloth that may be used; 0 is twice all panels end to end
	// and one repeat, of at most 20 m, for each.
	Limit geom.Length
}

// A Match is what became of one goal.
type Match struct {
	Name    string // of the seam or the target; AvoidName
	Goal    Goal   // "" for a target and for Avoid
	Reached bool
	// Along is set where a seam that isn't reached, for what lies across, is all
	// the same closed along; Cost is then what that takes.
	Along bool
	// Off is how far the pattern is from the goal, across and along.
	Off geom.Point
	// Cost is the cloth with this goal less the cloth without it; 0 where it
	// isn't reached. What two goals cost together can be more or less than the sum.
	Cost geom.Length
	// Why it isn't reached.
	Why Why
}

// AvoidName is the name of the goal to keep seen parts off Matching.Avoid.
const AvoidName = "avoided stretches"

// A Why says what keeps a goal from being reached.
type Why struct {
	Reason Reason
	// Across is how far the place on the second panel would have to move across,
	// to larger x of the finished seam, before the pattern meets; what the shifts
	// allow is already used.
	Across geom.Length
	// Width is how much wider the finished cloth would have to be for that, where
	// the form tells; 0 where it doesn't.
	Width geom.Length
	// With are the more important goals that it can't be reached together with.
	With []string
}

// A Reason is why a goal can't be reached; "" where it is.
type Reason string

// The reasons.
const (
	OffAcross Reason = "across"   // what lies across is fixed and doesn't meet
	InTheWay  Reason = "conflict" // more important goals are in the way
	TooLong   Reason = "cloth"    // it takes more cloth than the limit
	TooFine   Reason = "repeat"   // the pattern repeats too closely to be apart
)

// A Solution is a laying that reaches what can be reached.
type Solution struct {
	Laying Laying
	Order  []int         // panels in the order of laying
	Slides []geom.Length // by panel, as Matching.Slides
	// Used is the cloth from the first placement to the end of the last panel,
	// Plain what the panels take where nothing is asked.
	Used, Plain geom.Length
	// LowerBound is what no laying with the reached goals can be below. Where
	// Exact is true it is Used.
	LowerBound geom.Length
	Exact      bool
	Matches    []Match // aims, targets, Avoid, in their order
}

// Extra returns the cloth that the reached goals cost together.
func (s Solution) Extra() geom.Length { return s.Used - s.Plain }

// Bounds of what is accepted and of what is proven to be the least.
const (
	maxMatched  = 60 // panels
	exactPanels = 10
	maxLanes    = 6 // stretches between the edges of lanes across the cloth
	// Steps of packing for one set of goals, some tenths of a second, and what goes
	// with each packing.
	maxMatchWork = 8_000_000
	overhead     = 100
)

// Solve returns the laying. It is exact for up to 10 panels, unless the pattern
// is so fine within the tolerance that the work grows beyond all patience; then,
// and beyond 10 panels, Exact is false and LowerBound says how near it is. Nor is
// it proven where panels tied together hang both ways up beside others, where an
// Apart seam compares panels that hang opposite ways up or that can be shifted, and
// where panels slide beside stretches to avoid.
//
// Method: a goal at a seam ties the places of its two panels together modulo the
// lattice, so that panels tied together have one phase in common. Branch and
// bound over the columns of the lattice at each seam, over turns, and over those
// phases at which some panel touches the one before it (any other can be moved
// back without loss); for given phases the panels are packed by dynamic
// programming over sets of panels (Held and Karp's way), where being further back
// is never worse.
func (m Matching) Solve() (Solution, error) {
	if err := m.check(); err != nil {
		return Solution{}, err
	}
	q := newMatcher(m)
	plain, _ := q.solve(nil)
	all := make([]int, len(q.goals))
	for i := range all {
		all[i] = i
	}
	best, taken := q.most(all)
	if !best.found {
		return Solution{}, fmt.Errorf("garment: the panels can't be laid on %s mm of cloth; give more", q.limit)
	}
	s := q.solution(best)
	s.Plain = plain.used
	for i := range q.goals {
		s.Matches = append(s.Matches, q.match(i, best, taken))
	}
	return s, nil
}

// most returns the best laying with as many of the goals as can be, those that
// stand first before all others, and which they are.
func (q *matcher) most(goals []int) (answer, []int) {
	if a, ok := q.solve(goals); ok {
		return a, goals
	}
	best, _ := q.solve(nil)
	var taken []int
	for _, g := range goals {
		if a, ok := q.solve(append(slices.Clone(taken), g)); ok {
			best, taken = a, append(taken, g)
		}
	}
	return best, taken
}

// match tells what became of goal i.
func (q *matcher) match(i int, best answer, taken []int) Match {
	g := q.goals[i]
	m := Match{Name: g.name, Goal: g.aim, Reached: slices.Contains(taken, i), Off: q.off(g, best)}
	if !m.Reached {
		m.Why = q.why(i, taken)
		return m
	}
	without, _ := q.solve(slices.DeleteFunc(slices.Clone(taken), func(k int) bool { return k == i }))
	m.Cost = best.used - without.used
	return m
}

// why tells what keeps goal i from being reached beside the taken ones.
func (q *matcher) why(i int, taken []int) Why {
	g := q.goals[i]
	if len(q.options(g, q.start())) == 0 {
		if g.aim == Apart {
			return Why{Reason: TooFine}
		}
		return Why{Reason: OffAcross, Across: q.missAcross(g)}
	}
	if _, ok := q.solve([]int{i}); !ok {
		return Why{Reason: pickReason(g.aim == Apart, TooFine, TooLong)}
	}
	w := Why{Reason: InTheWay}
	var before []int
	for _, k := range taken {
		if k < i {
			before = append(before, k)
			if _, ok := q.solve([]int{k, i}); !ok {
				w.With = append(w.With, q.goals[k].name)
			}
		}
	}
	if len(w.With) == 0 {
		for _, k := range before {
			w.With = append(w.With, q.goals[k].name)
		}
	}
	return w
}

func pickReason(first bool, a, b Reason) Reason {
	if first {
		return a
	}
	return b
}
