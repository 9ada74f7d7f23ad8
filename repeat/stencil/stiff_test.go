package stencil

import (
	"context"
	"math"
	"strconv"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func mustStiffen(t testing.TB, cuts []pattern.CutOut, l pattern.Lattice, mesh int) Stiffness {
	t.Helper()
	s, err := Stiffen(context.Background(), cuts, l, mesh)
	if err != nil {
		t.Fatalf("stiffness: %v", err)
	}
	return s
}

func near(got, want, by float64) bool { return math.Abs(got-want) <= by }

func TestUncutPaperIsAsStiffAsItself(t *testing.T) {
	for _, l := range []pattern.Lattice{
		pattern.Straight(geom.MM(3), geom.MM(7)), pattern.HalfDrop(geom.MM(4), geom.MM(4)),
		{A: geom.PtMM(5, 1), B: geom.PtMM(9, 4)},
	} {
		s := mustStiffen(t, nil, l, 32)
		for _, p := range []Pull{s.Across, s.Along} {
			if !near(p.Modulus, 1, 1e-9) || !near(p.Poisson, PaperPoisson, 1e-9) || !near(p.Skew, 0, 1e-9) {
				t.Errorf("lattice %v: %+v", l, s)
			}
		}
		if !near(s.Shear, 1, 1e-9) || !near(s.Isotropy, 1, 1e-9) {
			t.Errorf("lattice %v: %+v", l, s)
		}
	}
}

// T. Slot, Stress Analysis of Thick Perforated Plates, 1972, Table B.2 (square
// pattern, pull along the pitch), the row of Poisson's ratio 0, which is plane
// stress; taken to PaperPoisson by the shift of Cherkaev, Lurie and Milton.
func TestASquareGroundIsAsStiffAsSlotsTable(t *testing.T) {
	for _, c := range []struct{ ligament, e, nu, g float64 }{
		{.1, .1857, .0399, .0207}, {.2, .3000, .0606, .0695}, {.3, .4069, .0754, .1514}, {.5, .6168, .0814, .4177}, {.7, .8244, .0502, .7450},
	} {
		l := pattern.Straight(geom.MM(2), geom.MM(2))
		s := mustStiffen(t, dots(2*(1-c.ligament), geom.Point{}), l, ReportMesh)
		nu := c.nu + PaperPoisson*c.e
		g := 2 * (1 + PaperPoisson) / (2/c.g + 2*PaperPoisson)
		for _, p := range []Pull{s.Across, s.Along} {
			if !near(p.Modulus, c.e, 0.02*c.e) || !near(p.Poisson, nu, 0.02*nu) || !near(s.Shear, g, 0.02*g) {
				t.Errorf("ligament %.2f: E %.4f, ν %.4f, G %.4f; the table says %.4f, %.4f, %.4f",
					c.ligament, p.Modulus, p.Poisson, s.Shear, c.e, nu, g)
			}
		}
	}
}

// Our own triangle elements with six nodes, computed apart from this package for
// round holes at 60°: E*/E for the ligament's share of the pitch, alike in every
// direction as theory demands. None may pass the bound of Hashin and Shtrikman.
func TestASixtyDegreeGroundGivesAlikeInEveryDirection(t *testing.T) {
	for _, c := range []struct{ ligament, e float64 }{{.1, .0482}, {.2, .1462}, {.3, .2675}, {.5, .5291}, {.7, .7895}} {
		for name, l := range map[string]pattern.Lattice{
			"brick":  pattern.Brick(geom.MM(2), geom.MM(math.Sqrt(3))),
			"leaned": {A: geom.PtMM(2, 0), B: geom.PtMM(5, math.Sqrt(3))},
			"turned": {A: geom.PtMM(0, 2), B: geom.PtMM(math.Sqrt(3), 1)},
		} {
			s := mustStiffen(t, dots(2*(1-c.ligament), geom.PtMM(0.3, 0.1)), l, ReportMesh)
			open := math.Pi * (1 - c.ligament) * (1 - c.ligament) / (2 * math.Sqrt(3))
			if !near(s.Across.Modulus, c.e, 0.02*c.e) || !near(s.Along.Modulus, c.e, 0.02*c.e) || s.Isotropy < 0.99 {
				t.Errorf("%s, ligament %.2f: %+v, want %.4f", name, c.ligament, s, c.e)
			}
			if bound := (1 - open) / (1 + 2*open); s.Across.Modulus > bound+1e-3 {
				t.Errorf("%s, ligament %.2f: %.4f passes the bound %.4f", name, c.ligament, s.Across.Modulus, bound)
			}
		}
	}
}

// Bands between stripes that go on for ever: the share of paper along them,
// nothing across and nothing in shear. They float, so that narrowing means nothing.
func TestBandsCarryOnlyAlongThemselves(t *testing.T) {
	l := pattern.Straight(geom.MM(8), geom.MM(8))
	across := mustStiffen(t, drawn(t, "M-1 0H9V3H-1Z"), l, 64)
	along := mustStiffen(t, drawn(t, "M0 -1V9H3V-1Z"), l, 64)
	for _, c := range []struct{ with, against Pull }{{across.Across, across.Along}, {along.Along, along.Across}} {
		if !near(c.with.Modulus, 0.625, 1e-6) || c.with.Poisson != 0 || c.with.Skew != 0 || c.against != (Pull{}) {
			t.Errorf("along the bands %+v, against them %+v; want 0.625 and nothing", c.with, c.against)
		}
	}
	if across.Shear != 0 || along.Shear != 0 || across.Isotropy != 0 || across.SoftDeg == 0 {
		t.Errorf("bands across %+v, along %+v", across, along)
	}
}

func TestPaperThatHangsOnNothingCarriesNothing(t *testing.T) {
	square := pattern.Straight(geom.MM(2), geom.MM(2))
	for _, d := range []float64{2.1, 3} { // islands between dots; no paper at all
		if s := mustStiffen(t, dots(d, geom.Point{}), square, 64); s.Across != (Pull{}) || s.Along != (Pull{}) || s.Shear != 0 || s.Isotropy != 0 {
			t.Errorf("dots of %g mm: %+v", d, s)
		}
	}
}

func TestMeshesOutOfBoundsAndEndedWorkAreRefused(t *testing.T) {
	l := pattern.Straight(geom.MM(2), geom.MM(2))
	ended, end := context.WithCancel(context.Background())
	end()
	for _, mesh := range []int{MinMesh - 1, MaxMesh + 1} {
		if _, err := Stiffen(context.Background(), nil, l, mesh); err == nil {
			t.Errorf("a mesh of %d is taken", mesh)
		}
	}
	if _, err := Stiffen(ended, dots(1, geom.Point{}), l, 32); err == nil {
		t.Error("ended work goes on")
	}
}

func BenchmarkStiffen(b *testing.B) {
	u := scattered(3, 10, 10, 0.7, 0.5)
	for _, mesh := range []int{LiveMesh, ReportMesh, 512} {
		b.Run(strconv.Itoa(mesh), func(b *testing.B) {
			for b.Loop() {
				mustStiffen(b, u.CutOuts(), u.Lattice, mesh)
			}
		})
	}
}
