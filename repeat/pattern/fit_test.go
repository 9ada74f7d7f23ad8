package pattern_test

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

const step = geom.Length(181_818_182) // 6 kane sun

// After a fit the step, and the width where one was asked for, are lattice
// vectors to the nanometre; they are what was asked for to a micrometre.
func TestAFitMakesStepAndWidthLatticeVectors(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 3))
	for range 400 {
		u := randomUnit(t, random)
		width := geom.Length(0)
		if random.IntN(2) == 0 {
			width = geom.Length(20_000_000 + random.Int64N(300_000_000))
		}
		fits, err := u.Fits(step, width)
		if err != nil {
			t.Fatalf("%v: %v", u.Lattice, err)
		}
		if len(fits) > 10 || width == 0 && len(fits) == 0 {
			t.Fatalf("%v: %d fits", u.Lattice, len(fits))
		}
		if !slices.IsSortedFunc(fits, func(a, b pattern.Fit) int { return cmp.Compare(a.Strain.Change(), b.Strain.Change()) }) {
			t.Fatalf("%v: fits are out of order", u.Lattice)
		}
		for _, f := range fits {
			if got := f.Lattice.At(f.M, f.N); got != (geom.Point{Y: f.Step}) {
				t.Fatalf("%v: %d·A + %d·B is %v, not the step %s", f.Lattice, f.M, f.N, got, f.Step)
			}
			if got := f.Lattice.At(f.P, f.Q); width > 0 && got != (geom.Point{X: f.Width}) {
				t.Fatalf("%v: %d·A + %d·B is %v, not the width %s", f.Lattice, f.P, f.Q, got, f.Width)
			}
			if (f.Step-step).Abs() > geom.Micrometre || (f.Width-width).Abs() > geom.Micrometre {
				t.Fatalf("asked for %s and %s mm, got %s and %s", step, width, f.Step, f.Width)
			}
			if err := f.Lattice.Check(); err != nil {
				t.Fatal(err)
			}
			if !f.Lattice.Holds(geom.Point{Y: f.Step}) {
				t.Fatalf("%v doesn't hold its step %s", f.Lattice, f.Step)
			}
		}
	}
}

// The strain, from the two bases by solving for the map that takes one to the
// other, row by row with Cramer's rule, and measured on a drawn cross.
func TestStrainIsThatOfTheMap(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 3))
	for range 300 {
		u := randomUnit(t, random)
		fits, err := u.Fits(step, geom.Length(random.IntN(2))*geom.MM(150))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range fits {
			a, b := u.Lattice.A, u.Lattice.B
			c, d := f.Lattice.A, f.Lattice.B
			xx, xy := cramer(a, b, c.X, d.X)
			yx, yy := cramer(a, b, c.Y, d.Y)
			want := pattern.Strain{X: xx - 1, Y: yy - 1, Shear: xy + yx, Turn: (yx - xy) / 2}
			if s := f.Strain; math.Abs(s.X-want.X)+math.Abs(s.Y-want.Y)+math.Abs(s.Shear-want.Shear)+math.Abs(s.Turn-want.Turn) > 1e-9 {
				t.Fatalf("%v to %v: strain %+v, want %+v", u.Lattice, f.Lattice, s, want)
			}
			if f.Width == 0 && math.Abs(yx) > grain(f) {
				t.Fatalf("%v to %v: what is level is tilted by %v", u.Lattice, f.Lattice, yx)
			}
			size := math.Sqrt(want.X*want.X + want.Y*want.Y + 2*(want.Shear/2)*(want.Shear/2))
			if math.Abs(f.Strain.Size()-size) > 1e-9 {
				t.Fatalf("the size of %+v is %v, want %v", f.Strain, f.Strain.Size(), size)
			}
			if all := math.Hypot(math.Hypot(xx-1, yy-1), math.Hypot(xy, yx)); math.Abs(f.Strain.Change()-all) > 1e-9 {
				t.Fatalf("%+v changes by %v, want %v", f.Strain, f.Strain.Change(), all)
			}
		}
	}
}

// grain is by how much a fit may miss its map, because m·A + n·B = (0, step)
// leaves A only every n-th nanometre and B only every m-th; they are at least
// 0.3 mm long and apart.
func grain(f pattern.Fit) float64 {
	return (math.Abs(float64(f.M)) + math.Abs(float64(f.N))) / 300_000
}

// cramer solves p·a + q·b: the row (p, q) with (p, q)·a = u and (p, q)·b = v.
func cramer(a, b geom.Point, u, v geom.Length) (p, q float64) {
	det := float64(a.X)*float64(b.Y) - float64(a.Y)*float64(b.X)
	p = (float64(u)*float64(b.Y) - float64(v)*float64(a.Y)) / det
	q = (float64(v)*float64(a.X) - float64(u)*float64(b.X)) / det
	return p, q
}

// No other lattice vector near the step would change the unit less: every (m, n)
// within reach is tried, with the strain of taking it to (0, step).
func TestTheBestFitIsTheBestOfAll(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for range 200 {
		size := func() geom.Length { return geom.MM(4) + geom.Length(random.Int64N(int64(geom.MM(12)))) }
		u := pattern.Unit{Lattice: pattern.Lattice{A: geom.Point{X: size(), Y: -size() / 3}, B: geom.Point{X: size() / 3, Y: size()}}}
		fits, err := u.Fits(step, 0)
		if err != nil {
			t.Fatal(err)
		}
		best := math.Inf(1)
		for _, v := range u.Lattice.Places(geom.BoxOf(geom.Point{Y: step}).Grown(geom.MM(60))) {
			stretch := float64(step)/float64(v.Y) - 1
			lean := -float64(v.X) / float64(v.Y)
			best = min(best, math.Hypot(stretch, lean))
		}
		if got := fits[0].Strain.Change(); got > best*1.001+2e-5 {
			t.Fatalf("%v: the first fit bends by %v, possible is %v", u.Lattice, got, best)
		}
	}
}

// The kind of a lattice survives where only a stretch is needed.
func TestAFitKeepsTheLayout(t *testing.T) {
	for _, kind := range []pattern.Kind{pattern.StraightKind, pattern.HalfDropKind, pattern.BrickKind, pattern.DiagonalKind} {
		u := pattern.Unit{Lattice: pattern.Laid(kind, geom.MM(0.91), geom.MM(0.91)), Motifs: []pattern.Motif{{ID: 1}}}
		fits, err := u.Fits(step, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := fits[0].Lattice.Kind(); got != kind {
			t.Errorf("%s becomes %s: %v", kind, got, fits[0].Lattice)
		}
		if s := fits[0].Strain; math.Abs(s.Y) > 0.01 || math.Abs(s.X) > 1e-5 || math.Abs(s.Shear) > 1e-5 {
			t.Errorf("%s bends by %+v", kind, s)
		}
	}
}

// The places of the motifs keep their share of the cell; discs keep their size.
func TestMotifsMoveWithTheirLattice(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 3))
	for range 200 {
		u := randomUnit(t, random)
		fits, err := u.Fits(step, 0)
		if err != nil {
			t.Fatal(err)
		}
		f := fits[len(fits)-1]
		before := slices.Clone(u.Motifs)
		fitted := u.Fitted(f)
		for i, m := range u.Motifs {
			if m.At != before[i].At {
				t.Fatalf("the unit before was written")
			}
			p, q := cramer(geom.Point{X: u.Lattice.A.X, Y: u.Lattice.B.X}, geom.Point{X: u.Lattice.A.Y, Y: u.Lattice.B.Y}, m.At.X, m.At.Y)
			x := p*float64(f.Lattice.A.X) + q*float64(f.Lattice.B.X)
			y := p*float64(f.Lattice.A.Y) + q*float64(f.Lattice.B.Y)
			got := fitted.Motifs[i].At
			if math.Abs(float64(got.X)-x) > 2 || math.Abs(float64(got.Y)-y) > 2 {
				t.Fatalf("%v goes to %v, want %.1f, %.1f", m.At, got, x, y)
			}
			if fitted.Motifs[i].Shape.Disc != m.Shape.Disc || fitted.Motifs[i].ID != m.ID {
				t.Fatalf("motif %d became another", m.ID)
			}
		}
	}
}

func TestWhatCantBeFittedIsTold(t *testing.T) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(1), geom.MM(1))}
	for _, row := range []struct {
		u           pattern.Unit
		step, width geom.Length
		want        string
	}{
		{pattern.Unit{}, step, 0, "span no area"},
		{u, 0, 0, "step: 0 mm can't be fitted"},
		{u, geom.MM(1501), 0, "step: 1501 mm can't be fitted"},
		{u, step, -1, "width: -0.000001 mm can't be fitted"},
	} {
		if _, err := row.u.Fits(row.step, row.width); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%v, %s, %s: got %v, want …%s…", row.u.Lattice, row.step, row.width, err, row.want)
		}
	}
}
