package cloth

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// mixed draws a question that mixes everything a question can hold, each in one
// of three cases; told says what it holds.
func (z puzzle) mixed() (m Matching, told string) {
	has := func(what string) bool {
		if z.draw.IntN(3) > 0 {
			return false
		}
		told += " " + what
		return true
	}
	n := 2 + z.draw.IntN(3)
	m = z.question(n, 1+z.draw.IntN(3), has("half lanes"), has("upside down"))
	m.Limit -= 4 * unit
	m.KeepOrder = has("kept order")
	if has("may turn") {
		for i := range m.Laying.Panels {
			m.Laying.Panels[i].MayTurn, m.Laying.Panels[i].Turned = z.draw.IntN(2) == 0, z.draw.IntN(2) == 0
		}
	}
	if has("shifts") {
		for i := range 2 {
			m.Laying.Panels[i].ShiftLeast, m.Laying.Panels[i].ShiftMost = -z.across(0, 2), z.across(0, 2)
		}
	}
	if has("slides") {
		m.Slides = make([]Span, n)
		for range 2 {
			m.Slides[z.draw.IntN(n)] = Span{-z.along(0, 2), z.along(0, 2)}
		}
	}
	if has("avoided stretches") {
		z.avoid(&m)
	}
	if has("targets") {
		for range 1 + z.draw.IntN(2) {
			i := z.draw.IntN(n)
			m.Targets = append(m.Targets, Target{Name: "motif", Panel: i, At: z.own(m.Laying.Panels[i]),
				Motif: geom.Point{X: z.across(0, 9), Y: z.along(0, 9)}, Within: geom.Length(z.draw.IntN(2)) * 2 * unit})
		}
	}
	if has("apart") {
		m.Aims[0].Goal, m.Aims[0].Distance = Apart, z.along(2, 4)
	}
	if last := &m.Aims[len(m.Aims)-1]; m.Lattice.Along()%(4*unit) == 0 && has("staggered") {
		last.Goal, last.Share = Staggered, 0.5
	}
	return m, told
}

// avoid draws stretches, some without length, and sometimes what is seen.
func (z puzzle) avoid(m *Matching) {
	for range 1 + z.draw.IntN(2) {
		from := z.along(0, 20)
		m.Avoid = append(m.Avoid, Span{from, from + z.along(0, 2)})
	}
	if z.draw.IntN(2) == 0 {
		return
	}
	for _, p := range m.Laying.Panels {
		from := z.along(0, 2)
		m.Seen = append(m.Seen, Span{from, max(from, p.Length-z.along(0, 2))})
	}
}

// Whatever a question mixes, what is proven to be the least is the least that
// trying all finds, what can't be reached is reached by no try, and no bound lies
// above it. Shifts are tried in halves of a millimetre, since a sum and a
// difference of two shifts may ask for halves.
func TestNothingBeatsWhatIsProven(t *testing.T) {
	z := puzzle{rand.New(rand.NewPCG(31, 8)), true}
	proven, matched := 0, 0
	for k := range 200 {
		m, told := z.mixed()
		if err := m.check(); err != nil {
			t.Fatal(err)
		}
		q := newMatcher(m)
		a, ok := q.solve(numbers(len(q.goals)))
		want, can := slowMatch(m, q.goals, unit, geom.Millimetre/2)
		if can && a.bound > want {
			t.Errorf("question %d,%s: none is said to be below %s, trying all finds %s: %+v", k, told, a.bound, want, m)
		}
		if !a.exact {
			continue
		}
		proven++
		if ok {
			matched++
		}
		if ok != can || ok && a.used != want {
			t.Errorf("question %d,%s: proven %v (%s), trying all %v (%s): %+v", k, told, ok, a.used, can, want, m)
		}
	}
	if proven < 130 || matched < 55 {
		t.Errorf("only %d of 200 are proven, %d of them matched", proven, matched)
	}
}

// pick is a panel on cloth of 40 mm; a seam is between places in millimetres.
func pick(x, width, length float64) LaidPanel {
	return LaidPanel{X: geom.MM(x), Width: geom.MM(width), Length: geom.MM(length)}
}

func join(first int, at geom.Point, second int, on geom.Point) LaidSeam {
	return LaidSeam{First: first, At: at, Second: second, On: on}
}

// A panel over the whole width stands between a half-width panel and the one it
// is tied to, while another half-width panel lies beside: it can't go behind all
// others then.
func TestAWholeWidthPanelStandsBehindAHalfWidthOne(t *testing.T) {
	for _, m := range []Matching{{
		Laying: Laying{
			Panels: []LaidPanel{pick(20, 20, 35), pick(0, 20, 45), pick(0, 40, 30), pick(0, 40, 45)},
			Seams: []LaidSeam{
				join(3, geom.PtMM(27, 10), 0, geom.PtMM(17, 20)), join(3, geom.PtMM(2, 40), 1, geom.PtMM(16, 35)),
			},
		},
		Lattice: pattern.Lattice{A: geom.PtMM(8, 15), B: geom.PtMM(12, 50)}, Limit: geom.MM(215),
	}, {
		Laying: Laying{
			Panels: []LaidPanel{pick(0, 20, 40), pick(0, 40, 45), pick(0, 40, 35), pick(20, 20, 20)},
			Seams: []LaidSeam{
				join(3, geom.PtMM(15, 5), 1, geom.PtMM(2, 35)), join(3, geom.PtMM(7, 20), 0, geom.PtMM(2, 40)),
			},
		},
		Lattice: pattern.Lattice{A: geom.PtMM(9, 5), B: geom.PtMM(4, 25)}, Limit: geom.MM(200),
	}} {
		m.Tolerance, m.Aims = 2*geom.Millimetre, []Aim{{Seam: 0, Goal: RunOn}, {Seam: 1, Goal: RunOn}}
		agree(t, "half lanes", m)
		if s := mustMatch(t, m); s.Used != geom.MM(120) || !s.Exact {
			t.Errorf("%s of cloth, proven %v; 120 are enough", s.Used, s.Exact)
		}
	}
}

// Where panels can be shifted, each column leaves a target another window: one
// that fails says nothing of the next.
func TestATargetIsTriedAtEveryColumn(t *testing.T) {
	m := Matching{
		Laying: Laying{
			Panels: []LaidPanel{pick(0, 40, 40), pick(0, 40, 20), pick(0, 40, 10)},
			Seams: []LaidSeam{
				join(2, geom.PtMM(17, 0), 0, geom.PtMM(9, 10)), join(0, geom.PtMM(35, 0), 2, geom.PtMM(27, 10)),
			},
		},
		Lattice: pattern.Lattice{A: geom.PtMM(11, 0), B: geom.PtMM(6, 20)}, Tolerance: 2 * geom.Millimetre, Limit: geom.MM(110),
		Aims: []Aim{{Seam: 0, Goal: RunOn}, {Seam: 1, Goal: RunOn}},
		Targets: []Target{
			{Name: "one", Panel: 1, At: geom.PtMM(39, 0), Motif: geom.PtMM(4, 20), Within: geom.MM(10)},
			{Name: "two", Panel: 0, At: geom.PtMM(1, 0), Motif: geom.PtMM(9, 20), Within: geom.MM(10)},
		},
	}
	for i := range m.Laying.Panels {
		m.Laying.Panels[i].MayTurn, m.Laying.Panels[i].Turned = true, true
	}
	m.Laying.Panels[1].ShiftLeast, m.Laying.Panels[1].ShiftMost = geom.MM(-2), geom.MM(2)
	m.Laying.Panels[2].ShiftMost = geom.MM(2)
	agree(t, "shifts", m)
	if s := mustMatch(t, m); s.Used != geom.MM(70) || !s.Exact {
		t.Errorf("%s of cloth, proven %v; 70 are enough", s.Used, s.Exact)
	}
}

// What hangs the other way up moves towards a panel as that moves on: kept apart
// from it, both may have to stand where neither touches anything.
func TestPanelsUpsideDownAreKeptApart(t *testing.T) {
	m := Matching{
		Laying: Laying{
			Panels: []LaidPanel{pick(0, 40, 20), pick(0, 40, 10), pick(0, 40, 40)},
			Seams:  []LaidSeam{{First: 1, Second: 1, At: geom.PtMM(26, 0), On: geom.PtMM(21, 0), OnTurned: true}},
		},
		Lattice: pattern.Lattice{A: geom.PtMM(7, 40), B: geom.PtMM(0, 60)}, Tolerance: 2 * geom.Millimetre, Limit: geom.MM(110),
		Aims: []Aim{{Goal: Apart, Distance: geom.MM(10)}}, KeepOrder: true,
	}
	for i := range m.Laying.Panels {
		m.Laying.Panels[i].Turned = true
	}
	q := newMatcher(m)
	a, ok := q.solve([]int{0})
	want, can := slowMatch(m, q.goals, unit, geom.Millimetre)
	if !ok || !can || a.used != want || a.bound > want {
		t.Errorf("%v %s of cloth, none below %s; trying all %v %s", ok, a.used, a.bound, can, want)
	}
}

// Two panels that hang opposite ways up, the second of which slides: the least
// cloth is where the first has just come to the second's foremost place.
func TestAPanelThatSlidesIsPushedByOneTheOtherWayUp(t *testing.T) {
	m := Matching{
		Laying: Laying{
			Panels: []LaidPanel{pick(0, 40, 30), pick(0, 40, 30)},
			Seams:  []LaidSeam{{First: 1, Second: 0, At: geom.PtMM(9, 0), On: geom.PtMM(29, 20), AtTurned: true, OnTurned: true}},
		},
		Lattice: pattern.Lattice{A: geom.PtMM(8, 30), B: geom.PtMM(0, 40)}, Tolerance: 2 * geom.Millimetre, Limit: geom.MM(100),
		Aims: []Aim{{Goal: Staggered, Share: 0.5}}, Slides: []Span{{}, {geom.MM(-10), geom.MM(10)}}, KeepOrder: true,
	}
	m.Laying.Panels[0].MayTurn, m.Laying.Panels[1].Turned = true, true
	m.Laying.Panels[0].ShiftMost, m.Laying.Panels[1].ShiftMost = geom.MM(2), geom.MM(1)
	agree(t, "sliding", m)
	if s := mustMatch(t, m); s.Used != geom.MM(65) || !s.Exact {
		t.Errorf("%s of cloth, proven %v; 65 are enough", s.Used, s.Exact)
	}
}
