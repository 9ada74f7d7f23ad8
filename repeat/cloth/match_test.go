package cloth

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func mustMatch(t testing.TB, m Matching) Solution {
	t.Helper()
	s, err := m.Solve()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// checkSolution looks at every goal on the cloth, as it lies in the end.
func checkSolution(t *testing.T, what string, m Matching, s Solution) {
	t.Helper()
	lay := s.Laying
	if lay.Used() != s.Used || s.LowerBound > s.Used || s.Used < s.Plain {
		t.Errorf("%s: used %s, on the cloth %s, plain %s, bound %s", what, s.Used, lay.Used(), s.Plain, s.LowerBound)
	}
	for i, p := range lay.Panels {
		if p.Y < 0 || p.Shift < p.ShiftLeast || p.Shift > p.ShiftMost || p.Turned != m.Laying.Panels[i].Turned && !p.MayTurn {
			t.Errorf("%s: %+v can't lie so", what, p)
		}
		for _, q := range lay.Panels[:i] {
			if q.X < p.X+p.Width && p.X < q.X+q.Width && q.Y < p.Y+p.Length && p.Y < q.Y+q.Length {
				t.Errorf("%s: %s lies on %s", what, p.Name, q.Name)
			}
		}
	}
	for i, a := range m.Aims {
		seam := lay.Seams[a.Seam]
		seam.At.Y += s.Slides[seam.First]
		seam.On.Y += s.Slides[seam.Second]
		off := lay.Phase(seam, m.Lattice)
		if a.Goal == Staggered {
			off = m.Lattice.Into(off.Sub(geom.Point{Y: m.Lattice.Along().Times(a.Share)}))
		}
		got := s.Matches[i]
		if got.Off != off {
			t.Errorf("%s: %s is off by %v, told %v", what, seam.Name, off, got.Off)
		}
		if a.Goal == Apart {
			continue
		}
		if got.Reached && len(m.Lattice.Places(geom.BoxOf(
			off.Sub(geom.Point{X: m.Tolerance, Y: m.Tolerance}), off.Add(geom.Point{X: m.Tolerance, Y: m.Tolerance})))) == 0 {
			t.Errorf("%s: %s is said to match and is off by %v", what, seam.Name, off)
		}
		if got.Reached == (got.Why.Reason != "") || !got.Reached && got.Cost != 0 {
			t.Errorf("%s: %+v", what, got)
		}
	}
}

// Random questions of all kinds: what the solution says of itself is so on the
// cloth, and the goals given up are just those that the slow way of taking one
// after another gives up.
func TestSolutionsHoldOnTheCloth(t *testing.T) {
	z := puzzle{rand.New(rand.NewPCG(21, 4)), true}
	reached, given := 0, 0
	for k := range 100 {
		m := z.question(4+k%3, 3, k%2 == 0, k%3 == 0)
		m.Limit = 0
		for i := range m.Laying.Panels {
			p := &m.Laying.Panels[i]
			switch z.draw.IntN(4) {
			case 0:
				p.ShiftLeast, p.ShiftMost = -z.across(0, 2), z.across(0, 2)
			case 1:
				p.MayTurn = true
			}
			m.Slides = append(m.Slides, Span{-z.along(0, 2), z.along(0, 2)})
		}
		if k%5 == 0 {
			m.Avoid = []Span{{10 * unit, 11 * unit}}
		}
		s := mustMatch(t, m)
		checkSolution(t, fmt.Sprintf("question %d", k), m, s)
		var taken []int
		q := newMatcher(m)
		for i, match := range s.Matches {
			_, ok := q.solve(append(append([]int(nil), taken...), i))
			if ok != match.Reached {
				t.Errorf("question %d: %s reached %v, taken one after another %v", k, match.Name, match.Reached, ok)
			}
			if ok {
				taken = append(taken, i)
				reached++
			} else {
				given++
			}
		}
	}
	if reached < 130 || given < 30 {
		t.Errorf("%d goals reached, %d given up", reached, given)
	}
}

// two is two panels with one seam that is closed where the second lies a given
// way on from the first, modulo 100 mm.
func two(way geom.Length) Matching {
	panel := func(name string) LaidPanel {
		return LaidPanel{Name: name, Width: 300 * geom.Millimetre, Length: geom.Metre}
	}
	return Matching{
		Lattice:   pattern.Straight(30*geom.Millimetre, 100*geom.Millimetre),
		Tolerance: 500 * geom.Micrometre,
		Laying: Laying{
			Panels: []LaidPanel{panel("left"), panel("right")},
			Seams:  []LaidSeam{{Name: "back", First: 0, Second: 1, At: geom.Point{Y: way}}},
		},
		Aims: []Aim{{Goal: RunOn}},
	}
}

// With the first panel first, the second must lie way + 100·k from it, so from
// 1000 mm on 30 mm are lost; the other way round 1000 + 30 must be hundreds less
// way, and 70 are lost.
func TestTwoPanelsAsWorkedByHand(t *testing.T) {
	const mm = geom.Millimetre
	s := mustMatch(t, two(30*mm))
	if s.Used != 2030*mm || s.Extra() != 30*mm || !s.Exact || !reflect.DeepEqual(s.Order, []int{0, 1}) {
		t.Errorf("%+v", s)
	}
	if m := s.Matches[0]; !m.Reached || m.Cost != 30*mm || m.Off != (geom.Point{}) {
		t.Errorf("%+v", m)
	}
	if s = mustMatch(t, two(80*mm)); s.Used != 2020*mm || !reflect.DeepEqual(s.Order, []int{1, 0}) {
		t.Errorf("the other way round: %+v", s)
	}
	half := two(30 * mm)
	half.Aims[0] = Aim{Goal: Staggered, Share: 0.5}
	if s = mustMatch(t, half); s.Used != 2020*mm {
		t.Errorf("staggered: %+v", s)
	}
	kept := two(80 * mm)
	kept.KeepOrder = true
	if s = mustMatch(t, kept); s.Used != 2080*mm {
		t.Errorf("order kept: %+v", s)
	}
	slid := two(30 * mm)
	slid.Slides = []Span{{-5 * mm, 5 * mm}, {-5 * mm, 15 * mm}}
	if s = mustMatch(t, slid); s.Used != 2010*mm {
		t.Errorf("with 20 mm to slide: %+v", s)
	}
}

// What lies across is given by the lanes: the answer says by how much.
func TestWhatIsOffAcrossIsTold(t *testing.T) {
	const mm = geom.Millimetre
	m := two(0)
	m.Laying.Seams[0].At.X, m.Laying.Seams[0].On.X = 290*mm, 16*mm
	s := mustMatch(t, m)
	if w := s.Matches[0].Why; w.Reason != OffAcross || w.Across != 4*mm {
		t.Errorf("274 mm of columns of 30 mm: %+v", w)
	}
	m.Laying.Panels[1].ShiftMost = 3 * mm
	if w := mustMatch(t, m).Matches[0].Why; w.Across != mm {
		t.Errorf("with 3 mm to shift: %+v", w)
	}
	m.Laying.Panels[1].ShiftMost = 4 * mm
	if s = mustMatch(t, m); !s.Matches[0].Reached || s.Laying.Panels[1].Shift != 4*mm {
		t.Errorf("with 4 mm to shift: %+v", s)
	}
}

func TestTheMoreImportantSeamIsMatchedFirst(t *testing.T) {
	const mm = geom.Millimetre
	m := two(30 * mm)
	m.Laying.Seams = append(m.Laying.Seams, LaidSeam{Name: "front", First: 0, Second: 1, At: geom.Point{Y: 50 * mm}})
	m.Aims = []Aim{{Seam: 1, Goal: RunOn}, {Seam: 0, Goal: RunOn}}
	s := mustMatch(t, m)
	if !s.Matches[0].Reached || s.Matches[1].Reached || s.Used != 2050*mm {
		t.Errorf("%+v", s)
	}
	if w := s.Matches[1].Why; w.Reason != InTheWay || !reflect.DeepEqual(w.With, []string{"front"}) {
		t.Errorf("%+v", w)
	}
	m.Limit = 2040 * mm
	s = mustMatch(t, m)
	if s.Matches[0].Reached || s.Matches[0].Why.Reason != TooLong || !s.Matches[1].Reached {
		t.Errorf("with 2.04 m of cloth: %+v", s.Matches)
	}
}

func TestAvoidedStretchesLieBesideWhatIsSeen(t *testing.T) {
	const mm = geom.Millimetre
	m := two(30 * mm)
	m.Aims = nil
	m.Avoid = []Span{{960 * mm, 1000 * mm}}
	if s := mustMatch(t, m); s.Used != 3000*mm || !s.Matches[0].Reached || s.Matches[0].Cost != 1000*mm {
		t.Errorf("whole panels: %+v", s)
	}
	m.Seen = []Span{{50 * mm, 950 * mm}, {0, 1000 * mm}}
	if s := mustMatch(t, m); s.Used != 2000*mm {
		t.Errorf("with hems: %+v", s)
	}
	m.Limit = 2500 * mm
	m.Seen = nil
	if s := mustMatch(t, m); s.Matches[0].Reached || s.Matches[0].Why.Reason != TooLong {
		t.Errorf("with 2.5 m of cloth: %+v", s)
	}
}

func TestMotifsKeptApartDontMeetAtOneHeight(t *testing.T) {
	const mm = geom.Millimetre
	m := two(0)
	m.Aims[0] = Aim{Goal: Apart, Distance: 40 * mm}
	if s := mustMatch(t, m); s.Used != 2040*mm {
		t.Errorf("%+v", s)
	}
	m.Aims[0].Distance = 51 * mm
	if w := mustMatch(t, m).Matches[0].Why; w.Reason != TooFine {
		t.Errorf("half the period is 50 mm: %+v", w)
	}
}

// A motif every 100 mm, asked for at 320 mm of the second panel: 20 mm more or
// less the tolerance, 1320 on.
func TestAMotifFallsWhereItIsAskedFor(t *testing.T) {
	const mm = geom.Millimetre
	m := two(0)
	m.Aims, m.KeepOrder = nil, true
	m.Targets = []Target{{Name: "left breast", Panel: 1, At: geom.PtMM(40, 320), Motif: geom.PtMM(10, 50), Within: 5 * mm}}
	s := mustMatch(t, m)
	if s.Used != 2025*mm || s.Matches[0].Off != (geom.Point{Y: -5 * mm}) {
		t.Errorf("%+v", s)
	}
	m.Targets[0].At.X += 7 * mm
	if w := mustMatch(t, m).Matches[0].Why; w.Reason != OffAcross {
		t.Errorf("7 mm beside the column: %+v", w)
	}
}

// More panels than can be proven are laid well and held against what the lanes
// need at least.
func TestManyPanelsAreLaidWithABoundBeside(t *testing.T) {
	z := puzzle{rand.New(rand.NewPCG(2, 2)), false}
	for k := range 6 {
		m := z.question(12+k, 4, k%2 == 0, false)
		m.Limit = 0
		s := mustMatch(t, m)
		checkSolution(t, "many", m, s)
		if s.LowerBound <= 0 || len(s.Order) != 12+k {
			t.Errorf("%d panels: %+v", 12+k, s)
		}
	}
}

func TestTheSameQuestionHasTheSameAnswer(t *testing.T) {
	m := coatQuestion(t)
	m.Avoid = nil
	for i := range m.Laying.Panels {
		m.Laying.Panels[i].MayTurn = i == 4
	}
	a, b := mustMatch(t, m), mustMatch(t, m)
	if !reflect.DeepEqual(a, b) {
		t.Errorf("%+v\nand then\n%+v", a, b)
	}
	checkSolution(t, "coat", m, a)
}

func TestQuestionsWithoutSenseAreRefused(t *testing.T) {
	for say, change := range map[string]func(m *Matching){
		"0 panels":      func(m *Matching) { m.Laying.Panels = nil },
		"lattice":       func(m *Matching) { m.Lattice = pattern.Lattice{} },
		"no seam 7":     func(m *Matching) { m.Aims[0].Seam = 7 },
		"staggered by":  func(m *Matching) { m.Aims[0].Share = math.NaN() },
		"breast":        func(m *Matching) { m.Targets = []Target{{Name: "breast", Panel: 2}} },
		"nothing lies":  func(m *Matching) { m.Avoid = []Span{{2, 1}} },
		"one for each":  func(m *Matching) { m.Seen = make([]Span, 1) },
		"nought":        func(m *Matching) { m.Slides = []Span{{1, 2}, {}} },
		"none below 0":  func(m *Matching) { m.Tolerance = -1 },
		"can't be laid": func(m *Matching) { m.Laying.Panels[0].Length = 0 },
		"give more":     func(m *Matching) { m.Limit = geom.Metre },
	} {
		m := two(0)
		change(&m)
		if _, err := m.Solve(); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("error %v, want one that says %q", err, say)
		}
	}
}

// coatQuestion is a women's kimono of a leaning ground, eight panels, whose
// seams of the first rank are to match, with the turn of the board avoided.
func coatQuestion(t testing.TB) Matching {
	run := mustLay(t, coatBolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	l := pattern.HalfDrop(22*geom.Millimetre, sixSun/8)
	m := Matching{
		Laying: mustDress(t, coatBolt, run, l, 158, false).Laying(), Lattice: l,
		Tolerance: 500 * geom.Micrometre, Avoid: []Span{{6200 * geom.Millimetre, 6240 * geom.Millimetre}},
	}
	for i, s := range m.Laying.Seams {
		if s.Priority == 1 {
			m.Aims = append(m.Aims, Aim{Seam: i, Goal: RunOn})
		}
	}
	return m
}

func BenchmarkMatchEightPanels(b *testing.B) {
	kept := func(m *Matching) {
		for i := range m.Laying.Panels {
			m.Laying.Panels[i].MayTurn = false
		}
	}
	for _, c := range []struct {
		name   string
		change func(m *Matching)
	}{
		{"three seams", func(m *Matching) { kept(m); m.Avoid = nil }},
		{"and the turn", kept},
		{"and turned panels", func(m *Matching) {}},
	} {
		m := coatQuestion(b)
		c.change(&m)
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				mustMatch(b, m)
			}
		})
	}
}

// A panel compared with its own upside down has few places of its own; the two
// others, 40 and 30 mm long, lie best where one touches it, and 5 mm are lost.
func TestPanelsTiedTogetherTouchOneThatIsBound(t *testing.T) {
	const mm = geom.Millimetre
	panel := func(length geom.Length) LaidPanel { return LaidPanel{Width: 40 * mm, Length: length} }
	m := Matching{
		Lattice: pattern.Lattice{A: geom.PtMM(2, 20), B: geom.PtMM(0, 60)}, Tolerance: 2 * mm,
		Laying: Laying{Panels: []LaidPanel{panel(40 * mm), panel(40 * mm), panel(30 * mm)}, Seams: []LaidSeam{
			{First: 1, Second: 1, At: geom.PtMM(15, 30), On: geom.PtMM(34, 20), AtTurned: true},
			{First: 2, Second: 0, At: geom.PtMM(30, 30), On: geom.PtMM(5, 30), AtTurned: true, OnTurned: true},
		}},
		Aims: []Aim{{Seam: 0, Goal: RunOn}, {Seam: 1, Goal: RunOn}},
	}
	if s := mustMatch(t, m); s.Used != 115*mm || !s.Exact {
		t.Errorf("%+v", s)
	}
}
