package bench_test

import (
	"math"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// mixed is a sheet with stars, a ring around a dot, small dots in the field, at its
// rim and at its joint line.
func mixed(t testing.TB) stencil.Sheet {
	t.Helper()
	s := sheetOf()
	put := func(shape geom.Shape, id pattern.ID) {
		s.CutOuts = append(s.CutOuts, pattern.CutOut{Shape: shape, Motif: id})
	}
	for y := range 60 {
		for x := range 120 {
			at := geom.PtMM(10+2*float64(x), 4+3*float64(y))
			if at.Distance(geom.PtMM(130, 90)) < geom.MM(12) {
				continue
			}
			put(geom.DiscShape(at, geom.MM(0.5)), 1)
		}
	}
	put(geom.Shape{Outline: outline(t, "M10 0A10 10 0 0 1 -10 0A10 10 0 0 1 10 0ZM6 0A6 6 0 0 0 -6 0A6 6 0 0 0 6 0Z").Moved(geom.PtMM(130, 90))}, 2)
	put(geom.DiscShape(geom.PtMM(130, 90), geom.MM(0.5)), 3)
	s.Spec.Step = geom.MM(182)
	s.Spec.Paper.Pile = 7
	s.Spec.Stars = stencil.StarSpec{PerEnd: 2, Diameter: geom.MM(1)}
	s.Joint.Line = []geom.Point{geom.PtMM(0, 1.5), geom.PtMM(260, 1.5)}
	for _, p := range [][2]float64{{5, 0}, {255, 0}, {5, 182}, {255, 182}} {
		s.Stars.Stars = append(s.Stars.Stars, stencil.Star{At: geom.PtMM(p[0], p[1]), Diameter: geom.MM(1)})
	}
	s.Stars.Match = []stencil.MatchStar{{Sheet: 0}, {Sheet: 1}, {Sheet: 2}}
	return s
}

var someTools = bench.Rack{Tools: []bench.Tool{
	awl("5", 0.5), awl("10", 1), {Kind: bench.Knife, Number: "k", Size: geom.MM(1)},
}}

func stageNumber(s bench.Stage) int {
	for i, o := range bench.Stages() {
		if o == s {
			return i
		}
	}
	return -1
}

func TestEveryCutOutIsCutOnceInTheOrderOfTheWork(t *testing.T) {
	s := mixed(t)
	a := bench.Assign(s, someTools, nil)
	p := bench.PlanSheet(s, 1, a, bench.Rates{})
	seen := make([]int, len(s.CutOuts))
	at := make([]int, len(s.CutOuts)) // when
	n, before := 0, -1
	for i, pass := range p.Passes {
		if k := stageNumber(pass.Stage); k < before {
			t.Errorf("pass %d: %s comes after a later stage", i, pass.Stage)
		} else {
			before = k
		}
		if pass.Stage == bench.Stars {
			if i != 0 || pass.Count != 6 || len(pass.Order) != 6 || pass.Tool != 1 {
				t.Errorf("the stars are %+v; want 6 holes first, with the awl of 1 mm", pass)
			}
			continue
		}
		if pass.Count != len(pass.Order) {
			t.Errorf("pass %d counts %d and orders %d", i, pass.Count, len(pass.Order))
		}
		var length float64
		for _, c := range pass.Order {
			seen[c]++
			at[c] = n
			n++
			length += a.Choices[c].RimMM
			if a.Choices[c].Tool != pass.Tool || a.Choices[c].Method != pass.Method {
				t.Fatalf("cut-out %d is in a pass of another tool", c)
			}
		}
		if math.Abs(length-pass.LengthMM) > 1e-6 {
			t.Errorf("pass %d is %f mm long, its cut-outs %f", i, pass.LengthMM, length)
		}
	}
	for i, times := range seen {
		if times != 1 {
			t.Fatalf("cut-out %d is cut %d times", i, times)
		}
	}
	ring, dot := len(s.CutOuts)-2, len(s.CutOuts)-1
	if at[dot] > at[ring] {
		t.Error("the dot within the ring is cut after the ring")
	}
	var atJoint, inside int
	for i, c := range s.CutOuts[:ring] {
		if y := c.Shape.Disc.Centre.Y; y == geom.MM(4) || y == geom.MM(181) {
			atJoint = max(atJoint, len(s.CutOuts)-at[i])
		} else {
			inside = max(inside, at[i])
		}
	}
	if len(s.CutOuts)-atJoint < inside {
		t.Error("a cut-out at the joint line is cut before one of the field")
	}
}

func TestWhatTiesHoldIsCutLast(t *testing.T) {
	s := mixed(t)
	s.Ties.Ties = []stencil.TieMeasure{{Tie: stencil.Tie{Motif: 2}}}
	p := bench.PlanSheet(s, 1, bench.Assign(s, someTools, nil), bench.Rates{})
	last := p.Passes[len(p.Passes)-1]
	if last.Stage != bench.Last || last.Method != bench.Tsukibori || last.Count != 1 {
		t.Errorf("the last pass is %s, %s of %d; want the ring that a tie crosses", last.Stage, last.Method, last.Count)
	}
}

// Short travel: rows of dots that stand 2 mm apart are walked at little more.
func TestThePassesTravelShort(t *testing.T) {
	s := mixed(t)
	p := bench.PlanSheet(s, 1, bench.Assign(s, someTools, nil), bench.Rates{})
	for _, pass := range p.Passes {
		if pass.Count > 1000 && pass.TravelMM > 2.5*float64(pass.Count) {
			t.Errorf("%s: %.0f mm for %d dots", pass.Stage, pass.TravelMM, pass.Count)
		}
	}
}

func TestThePileIsTheLeastThatAnyMethodAllows(t *testing.T) {
	dots := sheetOf(disc(0.5))
	dots.Spec.Paper.Pile = 7
	striped := sheetOf(disc(0.5), geom.Shape{Outline: outline(t, "M0 0H0.6V180H0Z")})
	striped.Spec.Paper.Pile = 7
	own := bench.Rack{Limits: []bench.Limit{{Method: bench.Shimabori, Pile: 3}}}
	for _, c := range []struct {
		name                 string
		s                    stencil.Sheet
		r                    bench.Rack
		pile, most, saleable int
		by                   bench.Method
		source               string
	}{
		{"dots", dots, bench.Rack{}, 7, 10, 6, bench.Kiribori, ""},
		{"a stripe", striped, bench.Rack{}, 2, 2, 1, bench.Shimabori, ""},
		{"a stripe under a limit of the cutter's", striped, own, 3, 3, 2, bench.Shimabori, bench.Own},
		{"nothing", func() stencil.Sheet { s := sheetOf(); s.Spec.Paper.Pile = 5; return s }(), bench.Rack{}, 5, 5, 4, "", ""},
	} {
		p := bench.PlanSheet(c.s, 1, bench.Assign(c.s, c.r, nil), bench.Rates{})
		if p.Pile != c.pile || p.PileMost != c.most || p.Saleable != c.saleable || p.PileBy != c.by {
			t.Errorf("%s: pile %d of %d by %s, %d saleable; want %d, %d, %s, %d", c.name, p.Pile, p.PileMost, p.PileBy, p.Saleable, c.pile, c.most, c.by, c.saleable)
		}
	}
}

func TestWhatAMethodIsNotTrustedWithIsMeasured(t *testing.T) {
	s := sheetOf(disc(0.3), disc(0.35), disc(0.5))
	s.Spec.Paper.Pile = 20
	s.Webs = stencil.WebReport{Found: true, Narrowest: stencil.Web{P: geom.PtMM(3, 4), Width: geom.MM(0.2), A: 1, B: 2}}
	p := bench.PlanSheet(s, 1, bench.Assign(s, bench.Rack{}, nil), bench.Rates{})
	found := map[bench.What]bench.Excess{}
	for _, e := range p.Exceeded {
		found[e.What] = e
	}
	if e := found[bench.HoleSize]; e.Got != geom.MM(0.3) || e.Count != 2 {
		t.Errorf("holes: %+v, want two, the smallest 0.3 mm", e)
	}
	if e := found[bench.WebWidth]; e.Got != geom.MM(0.2) || e.At != geom.PtMM(3, 4) {
		t.Errorf("webs: %+v, want 0.2 mm at 3, 4", e)
	}
	own := bench.Rack{Limits: []bench.Limit{{Method: bench.Kiribori, Hole: geom.MM(0.32)}}}
	for _, e := range bench.PlanSheet(s, 1, bench.Assign(s, own, nil), bench.Rates{}).Exceeded {
		if e.Own != (e.What == bench.HoleSize) || e.What == bench.HoleSize && e.Count != 1 {
			t.Errorf("under a limit of the cutter's for holes: %+v", e)
		}
	}
	if e := found[bench.PileSize]; e.Pile != 20 || p.Pile != 10 {
		t.Errorf("pile: %+v, want 20 over the 10 that are planned (%d)", e, p.Pile)
	}
}

// By hand: 2,000 holes at 0.24 min and 360 mm of stripe, three times, at 0.01 min and
// 0.2 min for the cut.
func TestTimesFollowFromTheRates(t *testing.T) {
	var shapes []geom.Shape
	for i := range 2000 {
		shapes = append(shapes, geom.DiscShape(geom.PtMM(float64(i%50), float64(i/50)), geom.MM(0.5)))
	}
	shapes = append(shapes, geom.Shape{Outline: outline(t, "M60 0H60.5V179.5H60Z")})
	s := sheetOf(shapes...)
	s.Spec.Paper.Pile = 2
	p := bench.PlanSheet(s, 1, bench.Assign(s, bench.Rack{}, nil), bench.Rates{DayHours: 6})
	if want := (2000*0.24 + 0.2 + 3*360*0.01) / 60; math.Abs(p.Hours-want) > 1e-9 || math.Abs(p.Days-want/6) > 1e-9 {
		t.Errorf("%f hours, %f days; want %f, %f", p.Hours, p.Days, want, want/6)
	}
	last := p.Passes[len(p.Passes)-1]
	if last.Method != bench.Shimabori || last.Times != 3 {
		t.Errorf("the last pass is %s, traced %d times; want the stripe, three times", last.Method, last.Times)
	}
}

// A field of small dots as it is worked with: 63,500 holes of two sizes.
func BenchmarkAssignAndPlanAField(b *testing.B) {
	s := sheetOf()
	for i := range 63_500 {
		d := 0.4
		if i%7 == 0 {
			d = 0.5
		}
		at := geom.Point{X: geom.Length(i%250)*1_420_000 + geom.Length(i/250%2)*710_000, Y: geom.Length(i/250) * 710_000}
		s.CutOuts = append(s.CutOuts, pattern.CutOut{Shape: geom.DiscShape(at, geom.MM(d)), Motif: 1})
	}
	s.Spec.Step, s.Spec.Paper.Pile = geom.MM(181), 7
	s.Joint.Line = []geom.Point{geom.PtMM(0, 0), geom.PtMM(356, 0)}
	for b.Loop() {
		bench.PlanSheet(s, 1, bench.Assign(s, someTools, nil), bench.Rates{})
	}
}

// The same number of turned leaves, with a rack of a thousand punches.
func BenchmarkAssignLeavesToALargeRack(b *testing.B) {
	leaf := outline(b, shapes[1]).Mapped(geom.Scale(0.2, 0.2))
	var rack bench.Rack
	for i := range 1000 {
		k := 0.1 + 0.0005*float64(i)
		rack.Tools = append(rack.Tools, bench.Tool{Kind: bench.Punch, Number: "n", Outline: outline(b, shapes[i%len(shapes)]).Mapped(geom.Scale(k, k))})
	}
	s := sheetOf()
	for i := range 63_500 {
		o := leaf.Mapped(geom.Rotate(float64(i % 60 * 6))).Moved(geom.PtMM(float64(i%250), float64(i/250)))
		s.CutOuts = append(s.CutOuts, pattern.CutOut{Shape: geom.Shape{Outline: o}, Motif: 1})
	}
	for b.Loop() {
		bench.Assign(s, rack, nil)
	}
}
