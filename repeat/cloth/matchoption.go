package cloth

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// An option is one way to go on with a goal.
type option struct {
	states []tieState
	miss   geom.Length // across, before shifts
}

// options lists the ways to reach g from s, those that need the least shift
// first.
func (q *matcher) options(g goal, s tieState) []option {
	var found []option
	switch {
	case g.target != nil:
		for _, t := range q.turns(s, g.target.Panel) {
			found = append(found, q.aimedAt(g, s, t)...)
		}
	case g.seam != nil:
		for _, ti := range q.turns(s, g.seam.First) {
			for _, tj := range q.turns(s, g.seam.Second) {
				if g.seam.First == g.seam.Second && ti != tj {
					continue
				}
				next := s.clone()
				next.turn[g.seam.First], next.turn[g.seam.Second] = ti, tj
				found = append(found, q.joinedBy(g, next)...)
			}
		}
	default:
		found = []option{{states: []tieState{s}}}
	}
	slices.SortStableFunc(found, func(a, b option) int { return cmp.Compare(a.miss, b.miss) })
	return found
}

// A facing is how the two places of a seam lie for turns that are decided:
// across is at + first·shift + second·shift', along first·z − second·z' + along.
type facing struct {
	first, second           geom.Length // signs along
	shiftFirst, shiftSecond geom.Length // signs across
	at, along, slack        geom.Length
}

func (q *matcher) facing(g goal, s tieState) facing {
	m := g.seam
	ti, tj := s.turn[m.First], s.turn[m.Second]
	a, b := q.from(m.First, ti, m.At), q.from(m.Second, tj, m.On)
	f := facing{first: sign(m.AtTurned != (ti == 1)), second: sign(m.OnTurned != (tj == 1))}
	f.shiftFirst, f.shiftSecond = sign(m.AtTurned), -sign(m.OnTurned)
	f.at, f.along = f.first*a.X-f.second*b.X, f.first*a.Y-f.second*b.Y
	f.slack = q.slack(m.First) + q.slack(m.Second)
	if m.First == m.Second && f.shiftFirst == -f.shiftSecond {
		f.slack = 0
	}
	return f
}

// sign returns −1 for what hangs upside down.
func sign(down bool) geom.Length {
	if down {
		return -1
	}
	return 1
}

// slack returns how far the shift of panel i reaches.
func (q *matcher) slack(i int) geom.Length {
	return max(-q.panels[i].ShiftLeast, q.panels[i].ShiftMost)
}

// joinedBy lists the ways to reach a seam's goal with the turns of s.
func (q *matcher) joinedBy(g goal, s tieState) []option {
	m, f := g.seam, q.facing(g, s)
	s.tied[m.First], s.tied[m.Second] = true, true
	if g.aim == Apart {
		a := keepApart{i: m.First, j: m.Second, first: f.first, second: f.second, distance: g.apart}
		a.centres = q.centres(f, g.apart+f.slack-1)
		if f.first != f.second || f.slack > 0 && !slices.Equal(a.centres, q.centres(f, g.apart-f.slack-1)) {
			// One that moves back while the other moves on may keep it apart where
			// neither touches anything; and some shift may leave more room than is
			// kept for all of them.
			q.coarse = true
		}
		s.apart = append(s.apart, a)
		if !q.roomApart(a) || !q.keepsApart(s) {
			return nil
		}
		return []option{{states: []tieState{s}}}
	}
	var found []option
	alike := map[geom.Length]int{}
	for _, p := range q.places(f.at, g.across+f.slack, g.along-f.along) {
		// Columns alike along differ only by the shift that they ask for.
		kind := q.mod(p.Y) / alikeAlong
		if f.slack > 0 && alike[kind] >= mostAlike && !q.every {
			q.thinned = true
			continue
		}
		next := s
		bound := shiftBound{
			i: m.First, j: m.Second, first: f.shiftFirst, second: f.shiftSecond,
			at: f.at - p.X, within: g.across,
		}
		next.across = append(slices.Clip(s.across), bound)
		q.work += overhead
		if !q.shiftable(next.across) {
			q.unshiftable = q.unshiftable || q.shiftable([]shiftBound{bound})
			continue
		}
		alike[kind]++
		ties := q.tie(next, m.First, f.first, m.Second, f.second, q.mod(p.Y-f.along+g.along))
		ties = slices.DeleteFunc(ties, func(t tieState) bool { return !q.keepsApart(t) })
		if len(ties) > 0 {
			found = append(found, option{ties, (f.at - p.X).Abs()})
		}
	}
	return found
}

// centres lists, along, what lies within reach across of a seam's first place,
// modulo the period.
func (q *matcher) centres(f facing, reach geom.Length) []geom.Length {
	var centres []geom.Length
	for _, p := range q.places(f.at, reach, -f.along) {
		centres = append(centres, q.mod(p.Y-f.along))
	}
	slices.Sort(centres)
	return slices.Compact(centres)
}

// roomApart reports whether the centres leave anything of the period.
func (q *matcher) roomApart(a keepApart) bool {
	if len(a.centres) == 0 {
		return true
	}
	last := a.centres[len(a.centres)-1] - q.period
	for _, c := range a.centres {
		if c-last >= 2*a.distance {
			return true
		}
		last = c
	}
	return false
}

// aimedAt lists the ways to reach a target with the panel turned so.
func (q *matcher) aimedAt(g goal, s tieState, turn int8) []option {
	t := g.target
	s = s.clone()
	s.turn[t.Panel] = turn
	at := q.from(t.Panel, turn, t.At).Sub(t.Motif)
	slack := q.slack(t.Panel)
	wide := min(2*t.Within, q.period-1)
	var found []option
	var together []berth
	for _, p := range q.places(at.X, t.Within+slack, -at.Y) {
		w := berth{q.mod(p.Y - at.Y - t.Within), wide}
		if slack == 0 {
			together = append(together, w)
			continue
		}
		next := s
		next.across = append(slices.Clip(s.across), shiftBound{
			i: t.Panel, j: -1, first: sign(turn == 1), at: at.X - p.X, within: t.Within,
		})
		if !q.shiftable(next.across) {
			continue
		}
		if next, ok := q.narrowed(next, t.Panel, []berth{w}); ok {
			found = append(found, option{[]tieState{next}, (at.X - p.X).Abs()})
		}
	}
	if len(together) > 0 {
		if next, ok := q.narrowed(s, t.Panel, together); ok {
			found = append(found, option{[]tieState{next}, 0})
		}
	}
	return found
}

// Columns whose places lie alike along to a hundredth of a millimetre are tried
// so often, those first that ask for the least shift.
const (
	alikeAlong = 10 * geom.Micrometre
	mostAlike  = 3
)

// mostPlaces bounds the places of the lattice that are tried at one seam.
const mostPlaces = 1000

// places lists the places of the lattice within reach across of x, one of each
// column and repeat that a laying within the limit can bring to a seam; along is
// about where they lie.
func (q *matcher) places(x, reach, along geom.Length) []geom.Point {
	if reach < 0 {
		return nil
	}
	from, to := geom.Length(0), q.period-1
	if span := 2 * q.limit; q.period > 2*span {
		from, to = along-span, along+span
	}
	for q.Lattice.Count(2*reach, to-from) > mostPlaces && reach > q.Lattice.Pitch() {
		reach, q.coarse = reach/2, true
	}
	window := geom.BoxOf(geom.Point{X: x - reach, Y: from}, geom.Point{X: x + reach, Y: to})
	places := q.Lattice.Places(window)
	slices.SortFunc(places, func(a, b geom.Point) int {
		return cmp.Or(cmp.Compare((a.X-x).Abs(), (b.X-x).Abs()), cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	return places
}
