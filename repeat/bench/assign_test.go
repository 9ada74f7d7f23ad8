package bench_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// sheetOf is a sheet that cuts these shapes, each of a motif of its own.
func sheetOf(shapes ...geom.Shape) stencil.Sheet {
	var s stencil.Sheet
	for i, shape := range shapes {
		s.CutOuts = append(s.CutOuts, pattern.CutOut{Shape: shape, Motif: pattern.ID(i + 1)})
	}
	return s
}

func disc(mm float64) geom.Shape { return geom.DiscShape(geom.PtMM(50, 50), geom.MM(mm)) }

func awl(number string, mm float64) bench.Tool {
	return bench.Tool{Kind: bench.Awl, Number: number, Size: geom.MM(mm)}
}

func TestEachShapeGetsTheMethodThatTheTradeCutsItBy(t *testing.T) {
	path := func(d string) geom.Shape { return geom.Shape{Outline: outline(t, d)} }
	rack := bench.Rack{Tools: []bench.Tool{
		awl("4", 0.5), awl("5", 6),
		{Kind: bench.Punch, Number: "hook", Outline: outline(t, shapes[0])},
		{Kind: bench.Knife, Number: "k1", Size: geom.MM(1)},
		{Kind: bench.Pair, Number: "p1", Size: geom.MM(0.5)},
	}}
	for _, c := range []struct {
		name   string
		shape  geom.Shape
		method bench.Method
		reason bench.Reason
		tool   int
	}{
		{"a small dot", disc(0.5), bench.Kiribori, bench.RoundHole, 0},
		{"a large dot that the rack has an awl for", disc(6.1), bench.Kiribori, bench.RoundHole, 1},
		{"a large dot without an awl", disc(9), bench.Tsukibori, bench.FreeLine, 3},
		{"a great circle", disc(40), bench.Hikibori, bench.EasyLine, 3},
		{"a shape of the rack, turned", path("M10 10V13H9V11H8V10Z"), bench.Dogubori, bench.LikePunch, 2},
		{"a stripe", path("M0 0H0.5V180H0Z"), bench.Shimabori, bench.LongStrip, 4},
		{"a slanting stripe with round ends", geom.Shape{Outline: outline(t, "M0 0H30A0.25 0.25 0 0 1 30 0.5H0A0.25 0.25 0 0 1 0 0Z").Mapped(geom.Rotate(31))}, bench.Shimabori, bench.LongStrip, 4},
		{"a wide stripe that no pair cuts", path("M0 0H2V180H0Z"), bench.Shimabori, bench.LongStrip, 3},
		{"a large square", path("M0 0H40V40H0Z"), bench.Hikibori, bench.EasyLine, 3},
		{"a small square", path("M0 0H4V4H0Z"), bench.Tsukibori, bench.FreeLine, 3},
		{"a large star", path("M0 -20L5 -6L20 -6L8 3L12 17L0 8L-12 17L-8 3L-20 -6L-5 -6Z"), bench.Hikibori, bench.EasyLine, 3},
		{"a large flower of small arcs", path("M0 0A3 3 0 0 1 8 0A3 3 0 0 1 16 0A3 3 0 0 1 24 0L12 9Z"), bench.Tsukibori, bench.FreeLine, 3},
	} {
		a := bench.Assign(sheetOf(c.shape), rack, nil)
		got := a.Choices[0]
		if got.Method != c.method || got.Reason != c.reason || got.Tool != c.tool {
			t.Errorf("%s: %s because of %s with tool %d; want %s, %s, %d", c.name, got.Method, got.Reason, got.Tool, c.method, c.reason, c.tool)
		}
	}
}

// Beside the quick search stands a look at every tool.
func TestDotsSnapToTheNearestAwlThatIsNotBroken(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 1))
	for range 300 {
		var rack bench.Rack
		for i := range 1 + rnd.IntN(12) {
			tool := awl(strconv.Itoa(i), 0.3+0.01*float64(rnd.IntN(60)))
			tool.Condition = bench.Conditions()[rnd.IntN(3)]
			rack.Tools = append(rack.Tools, tool)
		}
		want := geom.MM(0.3 + rnd.Float64()*0.6)
		got := bench.Assign(sheetOf(geom.DiscShape(geom.Point{}, want)), rack, nil).Choices[0]
		least := geom.Length(math.MaxInt64)
		for _, tool := range rack.Tools {
			if tool.Condition != bench.Broken {
				least = min(least, (tool.Size - want).Abs())
			}
		}
		if float64(least) > 0.25*float64(want) {
			if got.Tool != -1 {
				t.Fatalf("a dot of %s mm is given a tool that is %s mm off", want, least)
			}
			continue
		}
		tool := rack.Tools[got.Tool]
		if tool.Condition == bench.Broken || (tool.Size-want).Abs() != least || got.Strain.By != tool.Size-want {
			t.Fatalf("a dot of %s mm is given %+v, strain %s; the nearest is %s mm off", want, tool, got.Strain.By, least)
		}
		if pct := 100 * got.Strain.By.MM() / want.MM(); math.Abs(pct-got.Strain.Pct) > 1e-9 {
			t.Fatalf("strain %v %%, want %v", got.Strain.Pct, pct)
		}
	}
}

func TestASharpToolIsChosenBeforeAWornOneOfItsSize(t *testing.T) {
	rack := bench.Rack{Tools: []bench.Tool{awl("worn", 0.5), awl("sharp", 0.5)}}
	rack.Tools[0].Condition = bench.Worn
	if got := bench.Assign(sheetOf(disc(0.52)), rack, nil).Choices[0].Tool; got != 1 {
		t.Errorf("tool %d, want 1, the sharp one", got)
	}
}

func TestTheCutterNamesTheMethodOfAMotifAndItsCopies(t *testing.T) {
	s := sheetOf(disc(0.5), disc(0.5), disc(0.5))
	s.CutOuts[2].Motif = s.CutOuts[0].Motif + 3*pattern.CopyStep
	rack := bench.Rack{Tools: []bench.Tool{awl("1", 0.5), {Kind: bench.Knife, Number: "2", Size: geom.MM(1)}}}
	a := bench.Assign(s, rack, bench.Overrides{1: bench.Tsukibori})
	for i, want := range []bench.Method{bench.Tsukibori, bench.Kiribori, bench.Tsukibori} {
		if c := a.Choices[i]; c.Method != want || (c.Reason == bench.Named) != (want == bench.Tsukibori) {
			t.Errorf("cut-out %d: %s because of %s, want %s", i, c.Method, c.Reason, want)
		}
	}
	if a.Choices[0].Tool != 1 {
		t.Errorf("it is cut with tool %d, want the knife", a.Choices[0].Tool)
	}
}

func TestToolsThatTheRackLacksAreListedWithWhatWouldBeMade(t *testing.T) {
	var all []geom.Shape
	for i := range 60 {
		all = append(all, geom.DiscShape(geom.PtMM(float64(i), 0), geom.MM(0.6)))
		// The same shape at every turn, so that one punch would cut them all.
		turned := outline(t, shapes[4]).Mapped(geom.Rotate(float64(7 * i))).Moved(geom.PtMM(float64(i)*8, 20))
		all = append(all, geom.Shape{Outline: turned})
	}
	all = append(all, disc(0.5), geom.Shape{Outline: outline(t, "M0 0H0.8V50H0Z")})
	s := sheetOf(all...)
	rack := bench.Rack{Tools: []bench.Tool{awl("5", 0.5), {Kind: bench.Knife, Number: "k", Size: geom.MM(1)}}}
	missing := bench.Assign(s, rack, nil).Missing
	if len(missing) != 3 {
		t.Fatalf("%d tools are missing, want an awl, a punch and a pair: %+v", len(missing), missing)
	}
	found := map[bench.Kind]bench.Missing{}
	for _, m := range missing {
		found[m.Kind] = m
	}
	if m := found[bench.Awl]; m.Size != geom.MM(0.6) || m.Count != 60 || m.Nearest != 0 || math.Abs(m.Strain.Pct+100.0/6) > 1e-9 {
		t.Errorf("the awl: %+v, want 0.6 mm for 60 holes, No. 5 in its place 16.67 %% finer", m)
	}
	if m := found[bench.Punch]; m.Count != 60 || len(m.Outline) != 1 {
		t.Errorf("the punch: %+v, want one for 60 cut-outs", m)
	}
	if m := found[bench.Pair]; m.Size != geom.MM(0.8) || m.Count != 1 {
		t.Errorf("the pair: %+v, want one of 0.8 mm", m)
	}
	if m := bench.Assign(s, bench.Rack{}, nil).Missing; m != nil {
		t.Errorf("with a rack that nobody filled %+v is missing", m)
	}
}

// A rack of a punch for every shape finds each under any turn and mirror.
func TestALargeRackFindsItsPunches(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 2))
	var rack bench.Rack
	for i := range 400 {
		k := 0.5 + 0.004*float64(i)
		o := outline(t, shapes[i%len(shapes)]).Mapped(geom.Scale(k, k))
		rack.Tools = append(rack.Tools, bench.Tool{Kind: bench.Punch, Number: strconv.Itoa(i), Outline: o})
	}
	for i := range 40 {
		n := rnd.IntN(len(rack.Tools))
		m := geom.Rotate(rnd.Float64() * 360)
		if i%2 == 0 {
			m = geom.Scale(-1, 1).Then(m)
		}
		c := bench.Assign(sheetOf(geom.Shape{Outline: rack.Tools[n].Outline.Mapped(m)}), rack, nil).Choices[0]
		if c.Method != bench.Dogubori || c.Tool != n {
			t.Errorf("punch %d (shape %d) is taken for %d, %s, off by %s mm", n, n%len(shapes), c.Tool, c.Method, c.Strain.By)
		}
	}
}
