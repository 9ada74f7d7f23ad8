package cloth

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The slow way to match: every order, turn, shift, slide and place on a grid is
// tried, and every goal is looked at on the cloth. It knows nothing of phases,
// groups or chains.
type slowMatcher struct {
	m          Matching
	goals      []goal
	grain      geom.Length // of places along
	grainX     geom.Length // of shifts
	avoid      []Span
	slides     []geom.Length
	best       geom.Length
	placed     []bool
	lay        Laying
	panelsLeft int
}

func slowMatch(m Matching, goals []goal, grain, grainX geom.Length) (geom.Length, bool) {
	n := len(m.Laying.Panels)
	s := slowMatcher{m: m, grain: grain, grainX: grainX, best: m.Limit + 1, placed: make([]bool, n), slides: make([]geom.Length, n), lay: m.Laying, panelsLeft: n}
	s.lay.Panels = append([]LaidPanel(nil), m.Laying.Panels...)
	for _, g := range goals {
		if g.seam == nil && g.target == nil {
			s.avoid = m.Avoid
		} else {
			s.goals = append(s.goals, g)
		}
	}
	s.turnAll(0)
	return s.best, s.best <= m.Limit
}

func (s *slowMatcher) turnAll(i int) {
	if i == len(s.lay.Panels) {
		s.place(-1)
		return
	}
	p := &s.lay.Panels[i]
	turns := []bool{p.Turned}
	if p.MayTurn {
		turns = []bool{false, true}
	}
	slide := Span{}
	if s.m.Slides != nil {
		slide = s.m.Slides[i]
	}
	was := *p
	for _, t := range turns {
		for shift := p.ShiftLeast; shift <= was.ShiftMost; shift += s.grainX {
			for v := slide.From; v <= slide.To; v += s.grain {
				p.Turned, p.Shift, s.slides[i] = t, shift, v
				s.turnAll(i + 1)
			}
		}
	}
	*p = was
}

// place puts every panel that isn't down yet next, at every place of the grid.
func (s *slowMatcher) place(last int) {
	if last >= 0 && !s.fits(last) {
		return
	}
	if s.panelsLeft == 0 {
		s.best = min(s.best, s.lay.Used())
		return
	}
	for i := range s.lay.Panels {
		if s.placed[i] {
			continue
		}
		if s.m.KeepOrder && i > 0 && !s.placed[i-1] {
			continue
		}
		p := &s.lay.Panels[i]
		from := geom.Length(0)
		for j, q := range s.lay.Panels {
			if s.placed[j] && q.X < p.X+p.Width && p.X < q.X+q.Width {
				from = max(from, q.Y+q.Length)
			}
		}
		s.placed[i] = true
		s.panelsLeft--
		for p.Y = from; p.Y+p.Length < s.best; p.Y += s.grain {
			s.place(i)
		}
		p.Y = 0
		s.placed[i] = false
		s.panelsLeft++
	}
}

func (s *slowMatcher) at(i int, own geom.Point) geom.Point {
	own.Y += s.slides[i]
	return s.lay.Panels[i].OnCloth(own)
}

// fits looks at every goal that the panel put down last takes part in.
func (s *slowMatcher) fits(last int) bool {
	p := s.lay.Panels[last]
	for _, a := range s.avoid {
		seen := Span{0, p.Length}
		if s.m.Seen != nil {
			seen = s.m.Seen[last]
		}
		from, to := s.at(last, geom.Point{Y: seen.From}).Y, s.at(last, geom.Point{Y: seen.To}).Y
		if a.reaches(min(from, to), (to - from).Abs()) {
			return false
		}
	}
	for _, g := range s.goals {
		if g.target != nil {
			if g.target.Panel == last && !s.hits(*g.target) {
				return false
			}
			continue
		}
		m := *g.seam
		if m.First != last && m.Second != last || !s.placed[m.First] || !s.placed[m.Second] {
			continue
		}
		at, on := s.at(m.First, m.At), s.at(m.Second, m.On)
		if m.AtTurned != s.lay.Panels[m.First].Turned {
			at = at.Neg()
		}
		if m.OnTurned != s.lay.Panels[m.Second].Turned {
			on = on.Neg()
		}
		if !s.meets(g, at.Sub(on)) {
			return false
		}
	}
	return true
}

func (s *slowMatcher) hits(t Target) bool {
	return s.anyPlaceNear(s.at(t.Panel, t.At).Sub(t.Motif), t.Within, t.Within)
}

func (s *slowMatcher) meets(g goal, way geom.Point) bool {
	if g.aim == Apart {
		return !s.anyPlaceNear(way, g.apart-1, g.apart-1)
	}
	return s.anyPlaceNear(way.Sub(geom.Point{Y: g.along}), s.m.Tolerance, 0)
}

func (s *slowMatcher) anyPlaceNear(p geom.Point, across, along geom.Length) bool {
	reach := geom.Point{X: across, Y: along}
	return len(s.m.Lattice.Places(geom.BoxOf(p.Sub(reach), p.Add(reach)))) > 0
}

// A puzzle draws random questions in whole units of the grid along, 5 mm, and in
// millimetres across.
type puzzle struct {
	draw *rand.Rand
	even bool // all lengths along are even, for seams that compare opposite turns
}

const unit = 5 * geom.Millimetre

func (z puzzle) along(from, to int) geom.Length {
	v := from + z.draw.IntN(to-from+1)
	if z.even {
		v = v / 2 * 2
	}
	return geom.Length(v) * unit
}

func (z puzzle) across(from, to int) geom.Length {
	return geom.Length(from+z.draw.IntN(to-from+1)) * geom.Millimetre
}

// lattice draws straight, stepped and leaning lattices with columns some
// millimetres apart and along-periods of some units.
func (z puzzle) lattice() pattern.Lattice {
	for {
		l := pattern.Lattice{
			A: geom.Point{X: z.across(2, 12), Y: z.along(0, 8)},
			B: geom.Point{X: z.across(0, 12) * geom.Length(z.draw.IntN(2)), Y: z.along(4, 12)},
		}
		if l.Check() == nil && l.Along() <= 60*unit && l.Along() >= 3*unit {
			return l
		}
	}
}

func (z puzzle) panels(n int, halves bool) []LaidPanel {
	const width = 40 * geom.Millimetre
	var panels []LaidPanel
	for i := range n {
		p := LaidPanel{Name: fmt.Sprintf("panel %d", i), Width: width, Length: z.along(2, 9)}
		if halves && z.draw.IntN(2) == 0 {
			p.Width = width / 2
			p.X = geom.Length(z.draw.IntN(2)) * width / 2
		}
		panels = append(panels, p)
	}
	return panels
}

func (z puzzle) own(p LaidPanel) geom.Point {
	at := geom.Point{X: z.across(0, int(p.Width/geom.Millimetre)), Y: z.along(0, int(p.Length/unit))}
	return at
}

// seams draws seams; each joins two panels, or with itself one that is compared
// with its own upside down.
func (z puzzle) seams(panels []LaidPanel, count int, opposite bool) []LaidSeam {
	var seams []LaidSeam
	for k := range count {
		i := z.draw.IntN(len(panels))
		j := z.draw.IntN(len(panels))
		s := LaidSeam{Name: fmt.Sprintf("seam %d", k), First: i, Second: j}
		if opposite {
			s.AtTurned, s.OnTurned = z.draw.IntN(2) == 0, z.draw.IntN(2) == 0
		}
		if i == j && (!opposite || s.AtTurned == s.OnTurned) {
			s.Second = (i + 1) % len(panels)
			s.OnTurned = s.AtTurned
		}
		s.At, s.On = z.own(panels[s.First]), z.own(panels[s.Second])
		seams = append(seams, s)
	}
	return seams
}

func (z puzzle) question(n, seams int, halves, opposite bool) Matching {
	m := Matching{Lattice: z.lattice(), Tolerance: 2 * geom.Millimetre}
	m.Laying.Panels = z.panels(n, halves)
	m.Laying.Seams = z.seams(m.Laying.Panels, seams, opposite)
	for i := range m.Laying.Seams {
		m.Aims = append(m.Aims, Aim{Seam: i, Goal: RunOn})
	}
	m.Limit = 12 * unit
	for _, p := range m.Laying.Panels {
		m.Limit += p.Length
	}
	return m
}

// agree fails unless solver and slow matcher find the same least cloth, or both
// none; it reports whether there is any.
func agree(t *testing.T, what string, m Matching) bool {
	t.Helper()
	if err := m.check(); err != nil {
		t.Fatal(err)
	}
	q := newMatcher(m)
	a, ok := q.solve(numbers(len(q.goals)))
	want, can := slowMatch(m, q.goals, unit, geom.Millimetre)
	switch {
	case ok != can:
		t.Errorf("%s: solved %v (%s), trying all %v (%s): %+v", what, ok, a.used, can, want, m)
	case ok && a.used != want:
		t.Errorf("%s: %s, trying all %s: %+v", what, a.used, want, m)
	case ok && !a.exact:
		t.Errorf("%s: not proven", what)
	}
	return ok
}

func TestSolverAgreesWithTryingAll(t *testing.T) {
	for _, c := range []struct {
		what  string
		cases int
		least int // cases that can be matched
		draw  func(z puzzle, m *Matching)
		n     int
		seams int
		even  bool
		half  bool
		turn  bool
	}{
		{what: "one lane", cases: 150, least: 50, n: 4, seams: 2},
		{what: "one lane of five", cases: 10, least: 4, n: 5, seams: 2},
		{what: "half lanes", cases: 60, least: 20, n: 4, seams: 2, half: true},
		{what: "a ring", cases: 60, least: 3, n: 3, seams: 3},
		{what: "upside down", cases: 60, least: 10, n: 3, seams: 2, even: true, turn: true},
		{what: "may turn", cases: 40, least: 15, n: 3, seams: 2, even: true, draw: func(z puzzle, m *Matching) {
			for i := range m.Laying.Panels {
				m.Laying.Panels[i].MayTurn, m.Laying.Panels[i].Turned = z.draw.IntN(2) == 0, z.draw.IntN(2) == 0
			}
		}},
		{what: "kept order", cases: 100, least: 30, n: 5, seams: 2, half: true, draw: func(_ puzzle, m *Matching) { m.KeepOrder = true }},
		{what: "shifts", cases: 60, least: 25, n: 3, seams: 2, draw: func(z puzzle, m *Matching) {
			for i := range 2 {
				m.Laying.Panels[i].ShiftLeast, m.Laying.Panels[i].ShiftMost = -z.across(0, 3), z.across(0, 3)
			}
		}},
		{what: "slides", cases: 30, least: 12, n: 4, seams: 2, draw: func(z puzzle, m *Matching) {
			m.Slides = make([]Span, len(m.Laying.Panels))
			for i := range 2 {
				m.Slides[i] = Span{-z.along(0, 1), z.along(0, 2)}
			}
		}},
		{what: "avoided stretches", cases: 80, least: 30, n: 4, seams: 2, draw: func(z puzzle, m *Matching) {
			for range 1 + z.draw.IntN(2) {
				from := z.along(0, 20)
				m.Avoid = append(m.Avoid, Span{from, from + z.along(0, 2)})
			}
			if z.draw.IntN(2) == 0 {
				return
			}
			for _, p := range m.Laying.Panels {
				m.Seen = append(m.Seen, Span{z.along(0, 1), p.Length - z.along(0, 1)})
			}
		}},
		{what: "targets", cases: 60, least: 20, n: 4, seams: 1, draw: func(z puzzle, m *Matching) {
			for range 1 + z.draw.IntN(2) {
				i := z.draw.IntN(len(m.Laying.Panels))
				m.Targets = append(m.Targets, Target{Name: "motif", Panel: i, At: z.own(m.Laying.Panels[i]),
					Motif: geom.Point{X: z.across(0, 9), Y: z.along(0, 9)}, Within: geom.Length(z.draw.IntN(2)) * unit})
			}
		}},
		{what: "apart", cases: 60, least: 20, n: 4, seams: 2, draw: func(z puzzle, m *Matching) {
			m.Aims[0].Goal, m.Aims[0].Distance = Apart, z.along(1, 2)
		}},
		{what: "staggered", cases: 60, least: 20, n: 4, seams: 2, even: true, draw: func(_ puzzle, m *Matching) {
			m.Aims[0].Goal, m.Aims[0].Share = Staggered, 0.5
		}},
	} {
		t.Run(c.what, func(t *testing.T) {
			z := puzzle{rand.New(rand.NewPCG(11, uint64(len(c.what)))), c.even}
			can := 0
			for k := range c.cases {
				m := z.question(c.n, c.seams, c.half, c.turn)
				if c.draw != nil {
					c.draw(z, &m)
				}
				if agree(t, fmt.Sprintf("%s %d", c.what, k), m) {
					can++
				}
			}
			if can < c.least {
				t.Errorf("only %d of %d cases can be matched", can, c.cases)
			}
		})
	}
}
