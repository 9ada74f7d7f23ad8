package cloth

import (
	"reflect"
	"slices"
	"strings"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Wishes are how the pattern is to fall on a garment beyond its matched seam. The
// zero Wishes ask for nothing.
type Wishes struct {
	Seams     []SeamWish // the most important first
	Targets   []PlaceWish
	AvoidTurn bool // no panel lies over the turn of the board
	// AnyOrder lets the panels lie in any order along the cloth; else the layout's
	// is kept.
	AnyOrder bool
}

// A SeamWish asks for a seam of the form.
type SeamWish struct {
	Seam     string
	Goal     Goal
	Share    float64     // of the along-period, for a staggered seam
	Distance geom.Length // for a seam kept apart
}

// A PlaceWish asks for a motif at a place of a finished piece.
type PlaceWish struct {
	Name   string // what the place is called: "left breast"
	Piece  string
	At     geom.Point  // in the piece's view
	Motif  geom.Point  // a place of the plain pattern
	Within geom.Length // across and along
}

func (w Wishes) any() bool { return len(w.Seams) > 0 || len(w.Targets) > 0 || w.AvoidTurn }

// A solved is a question to the solver with its answer.
type solved struct {
	asked    Matching
	solution Solution
}

// wished returns l as it reaches the wishes best, and the question that this
// took; one that was asked before isn't solved again.
func (l lay) wished(before solved, g Garment, c cut, lattice pattern.Lattice, avoid []Span, tolerance geom.Length) (lay, solved, error) {
	m, err := l.question(c.form.Matched, g)
	if err != nil {
		return l, solved{}, err
	}
	m.Lattice, m.Tolerance, m.Avoid = lattice, tolerance, avoid
	// What doesn't fit on the bolt is given up, unless the panels alone don't.
	if l.unmatched <= l.laying.Length {
		m.Limit = l.laying.Length
	}
	if reflect.DeepEqual(before.asked, m) {
		return l.laidBy(before.solution), before, nil
	}
	s, err := m.Solve()
	if err != nil {
		return l, solved{}, misfit("give other sizes or fewer wishes", "%s", strings.TrimPrefix(err.Error(), "garment: "))
	}
	if s, err = m.alongAnyway(s); err != nil {
		return l, solved{}, err
	}
	return l.laidBy(s), solved{m, s}, nil
}

// told returns the solution with how much wider the cloth would have to be for
// what doesn't meet across.
func (s solved) told(c cut, g Garment) Solution {
	told := s.solution
	told.Matches = slices.Clone(told.Matches)
	for i := range told.Matches {
		m := &told.Matches[i]
		if m.Why.Reason == OffAcross && m.Goal != "" {
			m.Why.Width = c.widerBy(g, m.Name, m.Why.Across)
		}
	}
	return told
}

// question returns the wishes as a question to the solver. Its panels stand in
// the layout's order; a gap that the layout asks for is cut with the panel behind
// it.
func (l lay) question(matched string, g Garment) (Matching, error) {
	m := Matching{KeepOrder: !g.Wishes.AnyOrder}
	place := make([]int, len(l.order))
	for k, i := range l.order {
		place[i] = k
		p := l.laying.Panels[i]
		p.Length += l.gaps[i]
		p.MayTurn = false
		if p.Shift != 0 {
			p.ShiftLeast, p.ShiftMost = p.Shift, p.Shift
		}
		m.Laying.Panels = append(m.Laying.Panels, p)
	}
	for _, s := range l.laying.Seams {
		s.At, s.On = l.behindGap(s.First, s.At), l.behindGap(s.Second, s.On)
		s.First, s.Second = place[s.First], place[s.Second]
		m.Laying.Seams = append(m.Laying.Seams, s)
	}
	wishes := g.Wishes.Seams
	if g.MatchBackCentre && matched != "" && !slices.ContainsFunc(wishes, func(w SeamWish) bool { return w.Seam == matched }) {
		wishes = append([]SeamWish{{Seam: matched, Goal: RunOn}}, wishes...)
	}
	for _, w := range wishes {
		i := slices.IndexFunc(l.laying.Seams, func(s LaidSeam) bool { return s.Name == w.Seam })
		if i < 0 {
			return m, misfit("take it out, or name one of "+l.seamNames(), "there is no seam %q to match", w.Seam)
		}
		m.Aims = append(m.Aims, Aim{Seam: i, Goal: w.Goal, Share: w.Share, Distance: w.Distance})
	}
	for _, w := range g.Wishes.Targets {
		i := slices.IndexFunc(l.windows, func(win window) bool { return win.name == w.Piece })
		if i < 0 {
			return m, misfit("take it out, or name one of "+l.pieceNames(), "there is no piece %q for the motif at the %s", w.Piece, w.Name)
		}
		win := l.windows[i]
		if !win.area.Holds(w.At) {
			return m, misfit("give a place on the piece, in its view", "the motif at the %s would lie outside the %s", w.Name, w.Piece)
		}
		m.Targets = append(m.Targets, Target{
			Name: w.Name, Panel: place[win.number], At: l.behindGap(win.number, win.own(w.At)), Motif: w.Motif, Within: w.Within,
		})
	}
	return m, nil
}

// behindGap returns a place of panel i's own where its gap is cut with it.
func (l lay) behindGap(i int, own geom.Point) geom.Point {
	if !l.laying.Panels[i].Turned {
		own.Y += l.gaps[i]
	}
	return own
}

func (l lay) seamNames() string {
	var names []string
	for _, s := range l.laying.Seams {
		names = append(names, s.Name)
	}
	return strings.Join(names, ", ")
}

func (l lay) pieceNames() string {
	var names []string
	for _, w := range l.windows {
		names = append(names, w.name)
	}
	return strings.Join(names, ", ")
}

// laidBy returns l laid as a solution of its question says.
func (l lay) laidBy(s Solution) lay {
	l.laying.Panels = slices.Clone(l.laying.Panels)
	order := make([]int, len(s.Order))
	for k, i := range l.order {
		p := s.Laying.Panels[k]
		l.laying.Panels[i].Y, l.laying.Panels[i].Shift = p.Y+l.gaps[i], p.Shift
	}
	for n, k := range s.Order {
		order[n] = l.order[k]
	}
	l.order = order
	return l
}

// bare returns what the panels need of the fullest lane, without any gaps.
func (l lay) bare() geom.Length {
	var most geom.Length
	for _, p := range l.laying.Panels {
		var need geom.Length
		for _, q := range l.laying.Panels {
			if q.X <= p.X && p.X < q.X+q.Width {
				need += q.Length
			}
		}
		most = max(most, need)
	}
	return most
}

// alongAnyway closes along, after all that can be reached, the seams that don't
// meet across: there they are off by as much all the way, and don't jump.
func (m Matching) alongAnyway(s Solution) (Solution, error) {
	again := m
	again.Aims = nil
	var loose []Aim
	var from []int // by aim of again, the match it belongs to
	var late []int
	for i, a := range m.Aims {
		if w := s.Matches[i].Why; w.Reason == OffAcross && a.Goal != Apart {
			a.Across = w.Across.Abs() + m.Tolerance
			loose, late = append(loose, a), append(late, i)
			continue
		}
		again.Aims, from = append(again.Aims, a), append(from, i)
	}
	if len(loose) == 0 {
		return s, nil
	}
	again.Aims, from = append(again.Aims, loose...), append(from, late...)
	t, err := again.Solve()
	if err != nil {
		return s, err
	}
	for i := len(m.Aims); i < len(s.Matches); i++ {
		from = append(from, i)
	}
	matches := slices.Clone(s.Matches)
	for k, i := range from {
		if !slices.Contains(late, i) {
			matches[i] = t.Matches[k]
			continue
		}
		matches[i].Off, matches[i].Along, matches[i].Cost = t.Matches[k].Off, t.Matches[k].Reached, t.Matches[k].Cost
	}
	t.Matches = matches
	return t, nil
}

// widerBy returns by how much the finished cloth would have to be wider for the
// second place of a seam to move across by that much; 0 where it doesn't move
// with the width. The form is laid on cloth a millimetre wider to find out.
func (c cut) widerBy(g Garment, seam string, across geom.Length) geom.Length {
	x := func(width geom.Length) (geom.Length, bool) {
		wide, err := cutFor(g.Body, width)
		if err != nil {
			return 0, false
		}
		l, err := wide.lay(g.Layout)
		i := slices.IndexFunc(l.laying.Seams, func(s LaidSeam) bool { return s.Name == seam })
		if err != nil || i < 0 {
			return 0, false
		}
		return l.laying.joining(l.laying.Seams[i]).way().X, true
	}
	const wider = geom.Millimetre
	before, ok := x(c.width)
	after, can := x(c.width + wider)
	if !ok || !can || before == after {
		return 0
	}
	// The way grows by what the second place moves back.
	return -across.Times(float64(wider) / float64(after-before))
}

// closed tells what became of the matched seam where nothing else is asked for.
func (d Dressed) closed(l lay, c cut, g Garment) []Match {
	for _, s := range d.Seams {
		if s.Name != c.form.Matched {
			continue
		}
		m := Match{Name: s.Name, Goal: RunOn, Reached: s.Matched, Off: geom.Point{X: s.PhaseAcross, Y: s.PhaseAlong}, Cost: d.Used - l.unmatched}
		if !m.Reached {
			m.Along = s.PhaseAlong == 0
			m.Why = Why{Reason: OffAcross, Across: s.PhaseAcross, Width: c.widerBy(g, s.Name, s.PhaseAcross)}
		}
		return []Match{m}
	}
	return nil
}
