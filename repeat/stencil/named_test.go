package stencil

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// drawnGround returns a traditional ground with some values of its own.
func drawnGround(t testing.TB, name string, step geom.Length, values ...string) pattern.Unit {
	t.Helper()
	r, err := pattern.Recipe{Ground: name}, error(nil)
	for i := 0; i < len(values) && err == nil; i += 2 {
		r, err = r.With(values[i], values[i+1])
	}
	if err != nil {
		t.Fatal(err)
	}
	u, err := r.Unit(step)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

func mustCut(t testing.TB, u pattern.Unit, f Field, step geom.Length, h Hold) Sheet {
	t.Helper()
	s, err := Cut(context.Background(), u, Spec{
		Step: step, Field: f, WebLimit: geom.MM(0.4), Hold: h,
		Paper: Paper{Width: f.Right() + geom.MM(60), Height: step + geom.MM(120), Thickness: geom.MM(0.2), Pile: 7},
		Stars: StarSpec{PerEnd: 2, Diameter: geom.MM(0.8), Hidden: geom.MM(10)},
	}, f.Right()+geom.MM(10))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// heldEveryWay ties the paper of u, then splits it in both ways, and cuts each: what
// was proposed holds on the sheets and covers the design, or is named. It returns
// how much was named.
func heldEveryWay(t *testing.T, u pattern.Unit, f Field, step geom.Length, width float64) (named int) {
	t.Helper()
	h := Hold{Way: WithTies, TieWidth: geom.MM(width), PerIsland: 2, Second: Second{Lap: geom.MM(0.2)}}
	ties, unheld, err := ProposeTies(context.Background(), u, h)
	if err != nil || len(ties) == 0 {
		t.Fatalf("%d ties: %v", len(ties), err)
	}
	h.Ties = ties
	holds := func(what string, h Hold, unheld []Unheld) {
		named += len(unheld)
		s := mustCut(t, u, f, step, h)
		for i, sheet := range s.Set() {
			if n := len(sheet.Paths.Islands) + len(sheet.Paths.Bands); n > len(unheld) {
				t.Errorf("%s: %d pieces fall out of sheet %d and %d are named", what, n, i+1, len(unheld))
			}
		}
		if s.Second != nil && !s.Cover.Sound() && len(unheld) == 0 {
			t.Errorf("%s: %g mm2 missing, %g extra", what, s.Cover.MissingMM2, s.Cover.ExtraMM2)
		}
		t.Logf("%s: %d and %d ties, %d named", what, len(h.Ties), len(h.Second.Ties), len(unheld))
	}
	holds("ties", h, unheld)
	for _, cut := range SecondCuts() {
		h := h
		h.Way, h.Ties, h.Second.Cut = Split, nil, cut
		got, _, unheld, err := ProposeSplit(context.Background(), u, h)
		if err != nil {
			t.Fatal(err)
		}
		holds(string(cut), got, unheld)
	}
	return named
}

// 352 columns of whole dots stand in the field, of 0.505 + 1.01·k mm those from
// 9.75 to 365.25, and 180 rows in the step.
func TestADotGroundOf63360HolesIsCutWhole(t *testing.T) {
	step := geom.MM(181.8)
	s := mustCut(t, drawnGround(t, "row-dots", step, "pitch", "1.01", "dot", "0.5"), field, step, Hold{Way: AsDrawn})
	if len(s.CutOuts) != 352*180 {
		t.Errorf("%d holes, want 352 × 180", len(s.CutOuts))
	}
	if got := s.Webs.Narrowest.Width; got != geom.MM(0.51) {
		t.Errorf("narrowest web %s mm, want 1.01 − 0.5", got)
	}
	if len(s.Paths.Islands)+len(s.Paths.Bands) > 0 {
		t.Errorf("paths %+v", s.Paths)
	}
	if got := s.Joint.Clearance; got < geom.MM(0.8*0.255)-3*geom.Grid || s.Joint.Crossed != 0 {
		t.Errorf("clearance %s mm, want four fifths of half a web", got)
	}
	if want := 100 * math.Pi / 4 * 0.25 / (1.01 * 1.01); math.Abs(s.OpenPct-want) > 1e-6 {
		t.Errorf("%.6f %% open, want %.6f", s.OpenPct, want)
	}
}

func TestScalesOfDotsHoldAndTheJointKeepsClear(t *testing.T) {
	step := geom.MM(176)
	s := mustCut(t, drawnGround(t, "arc-dots", step), Field{Left: geom.MM(9), Width: geom.MM(110)}, step, Hold{Way: AsDrawn})
	if len(s.Paths.Islands)+len(s.Paths.Bands) > 0 || s.Joint.Crossed != 0 {
		t.Errorf("paths %+v, crossed %s", s.Paths, s.Joint.Crossed)
	}
	if c := s.Joint.Clearance; c <= 0 || c < s.Joint.Widest.Times(0.8)-3*geom.Grid || c < s.Webs.Narrowest.Width.Times(0.4)-3*geom.Grid {
		t.Errorf("clearance %s of %s mm, narrowest web %s", c, s.Joint.Widest, s.Webs.Narrowest.Width)
	}
}

// Squares of 8 mm that touch in their corners: every square of paper falls out.
func TestACheckerWithoutHeldCornersFallsOutAndIsHeld(t *testing.T) {
	step, f := geom.MM(48), Field{Left: geom.MM(4), Width: geom.MM(64)}
	u := drawnGround(t, "checker", step, "side", "8 mm", "web", "0")
	s := mustCut(t, u, f, step, Hold{Way: AsDrawn})
	if w := s.Webs.Narrowest.Width; !s.Webs.Found || w > geom.Touch {
		t.Errorf("narrowest web %s mm, want contacts", w)
	}
	var area float64
	for _, p := range s.Paths.Islands {
		area += p.AreaMM2
		if math.Abs(p.AreaMM2-64) > 0.02 {
			t.Errorf("an island of %.4f mm2, want 64", p.AreaMM2)
		}
	}
	if half := u.Lattice.CellMM2() / 2; math.Abs(area-half) > 1e-3*half || len(s.Paths.Bands) > 0 {
		t.Errorf("islands of %.4f mm2, want half the cell, %.4f; bands %v", area, half, s.Paths.Bands)
	}
	t.Logf("%d named", heldEveryWay(t, u, f, step, 0.8))
}

// Full rings: petals and four-pointed stars of paper fall out, the lines being the
// only cut.
func TestLinkedCirclesDrawnAsLinesFallOutAndAreHeld(t *testing.T) {
	step, f := geom.MM(48), Field{Left: geom.MM(4), Width: geom.MM(64)}
	u := drawnGround(t, "linked-circles", step, "radius", "8", "figure", "lines", "web", "0")
	s := mustCut(t, u, f, step, Hold{Way: AsDrawn})
	var area float64
	for _, p := range s.Paths.Islands {
		area += p.AreaMM2
	}
	if want := u.Lattice.CellMM2() * (1 - s.OpenPct/100); math.Abs(area-want) > 1e-3*want || len(s.Paths.Bands) > 0 {
		t.Errorf("%d islands of %.4f mm2, want all paper, %.4f", len(s.Paths.Islands), area, want)
	}
	if n := heldEveryWay(t, u, f, step, 0.6); n > 0 {
		t.Errorf("%d named", n)
	}
}

// Six triangles stand around each corner of the lattice, each parted in three.
func TestHempLeafWithWholeLinesFallsOutAndIsHeld(t *testing.T) {
	step := geom.MM(16 * math.Sqrt(3) * 2)
	u := drawnGround(t, "hemp-leaf", step, "side", "16", "web", "0")
	f := Field{Left: geom.MM(4), Width: geom.MM(66)}
	s := mustCut(t, u, f, step, Hold{Way: AsDrawn})
	triangles := u.Lattice.CellMM2() / (16 * 16 * math.Sqrt(3) / 4)
	if got, want := len(s.Paths.Islands), int(math.Round(3*triangles)); got != want {
		t.Errorf("%d islands, want three in each of %g triangles", got, triangles)
	}
	t.Logf("%d named", heldEveryWay(t, u, f, step, 0.5))
}

// Stripes of 4 mm every 8 mm: bands as wide, and the line crosses squarely.
func TestWholeStripesPartThePaperIntoBandsAndAreHeld(t *testing.T) {
	step, f := geom.MM(60), Field{Left: geom.MM(2), Width: geom.MM(64)}
	u := drawnGround(t, "even-stripes", step, "pitch", "8", "every", "0")
	s := mustCut(t, u, f, step, Hold{Way: AsDrawn})
	var area float64
	for _, p := range s.Paths.Bands {
		area += p.AreaMM2
		if p.Along.X != 0 {
			t.Errorf("a band goes on by %v, want along", p.Along)
		}
	}
	if half := u.Lattice.CellMM2() / 2; math.Abs(area-half) > 1e-6*half || len(s.Paths.Islands) > 0 {
		t.Errorf("bands of %.6f mm2, want half the cell, %.6f; islands %v", area, half, s.Paths.Islands)
	}
	for _, c := range s.Joint.Crossings {
		if c.Width != geom.MM(4) || c.From.Y != c.To.Y {
			t.Errorf("a stripe is crossed from %v to %v, %s mm", c.From, c.To, c.Width)
		}
	}
	if n := geom.Length(len(s.Joint.Crossings)); n < 7 || s.Joint.Crossed != n*geom.MM(4) {
		t.Errorf("%d crossings of %s mm", n, s.Joint.Crossed)
	}
	t.Logf("%d named", heldEveryWay(t, u, f, step, 0.8))
}

// Three rings in one another hold three pieces captive, by the areas of their circles.
func TestAPictureOfRingsThreeDeepIsHeld(t *testing.T) {
	step, f := geom.MM(72), Field{Left: geom.MM(1), Width: geom.MM(64)}
	u := unitOf(t, pattern.HalfDrop(geom.MM(20), geom.MM(24)), ringPath(10, 10, 9, 8)+ringPath(10, 10, 6.5, 5.5)+ringPath(10, 10, 4, 2))
	s := mustCut(t, u, f, step, Hold{Way: AsDrawn})
	want := []float64{math.Pi * (8*8 - 6.5*6.5), math.Pi * (5.5*5.5 - 4*4), math.Pi * 2 * 2}
	if len(s.Paths.Islands) != len(want) || len(s.Paths.Bands) > 0 {
		t.Fatalf("paths %+v, want three islands", s.Paths)
	}
	for _, w := range want {
		found := false
		for _, p := range s.Paths.Islands {
			found = found || math.Abs(p.AreaMM2-w) < 0.1
		}
		if !found {
			t.Errorf("no island of %.3f mm2: %+v", w, s.Paths.Islands)
		}
	}
	if n := heldEveryWay(t, u, f, step, 0.5); n > 0 {
		t.Errorf("%d named", n)
	}
}

// Outlines of Béziers over one another and over all four edges of the cell.
func TestTwoThousandMotifsOfBeziersAreHeldOrNamed(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 2))
	const side = 180.0
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(side), geom.MM(side))}
	for i := range 2000 {
		u.Motifs = append(u.Motifs, pattern.Motif{
			ID: pattern.ID(i + 1), Shape: randomShape(rnd, "cubics", 2+2*rnd.Float64()),
			At: geom.PtMM(rnd.Float64()*side, rnd.Float64()*side), TurnDeg: rnd.Float64() * 360,
		})
	}
	f := Field{Left: geom.MM(2), Width: geom.MM(side)}
	s := mustCut(t, u, f, geom.MM(side), Hold{Way: AsDrawn})
	if len(s.Paths.Islands) < 50 {
		t.Errorf("only %d islands", len(s.Paths.Islands))
	}
	t.Logf("%d islands, %d bands; %d named", len(s.Paths.Islands), len(s.Paths.Bands), heldEveryWay(t, u, f, geom.MM(side), 0.4))
}
