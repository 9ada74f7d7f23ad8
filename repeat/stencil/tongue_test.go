package stencil

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func mustTongues(t testing.TB, cuts []pattern.CutOut, periods ...geom.Point) []Tongue {
	t.Helper()
	found, err := Tongues(cuts, periods...)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// Worked by hand. The petal's area is that of its circle and of the corridor
// beyond it, the integral of √(9 − x²) being closed; the spiral's is summed from
// rectangles.
func TestTonguesOfKnownShapes(t *testing.T) {
	mouth := math.Sqrt(16 - 0.36)
	petal := math.Pi*9 + 1.2*mouth - (0.6*math.Sqrt(9-0.36) + 9*math.Asin(0.2))
	for _, c := range []struct {
		name, data        string
		neck, reach, area float64
	}{
		{"U-slot", "M-1 0H0V10H2V0H3V11H-1Z", 2, 10, 20},
		{"hook", "M-1 0H0V5H6V4H1V0H2V3H7V6H-1Z", 1, math.Hypot(5, 5), 10},
		{"spiral", "M-.1 0V6.1H6.1V0H1.4V4.6H4.6V4.4H1.6V.1H5.9V5.9H.1V0Z", 1.3, math.Hypot(4.5, 5.9), 32.27},
		{"petal", fmt.Sprintf("M-.6 %.6fA4 4 0 1 0 .6 %.6fV%.6fA3 3 0 1 1 -.6 %.6fZ", -mouth, -mouth, -math.Sqrt(9-0.36), -math.Sqrt(9-0.36)), 1.2, 3 + mouth, petal},
	} {
		found := mustTongues(t, cutOuts(outline(t, c.data)))
		if len(found) != 1 {
			t.Errorf("%s: %d tongues: %+v", c.name, len(found), found)
			continue
		}
		f := found[0]
		if !near(f.Neck.Width.MM(), c.neck, 2e-3) || !near(f.Reach.MM(), c.reach, 4e-3) || !near(f.AreaMM2, c.area, 0.02) ||
			!near(f.Ratio, c.reach/c.neck, 0.01) || f.Neck.A != 1 || f.Neck.B != 1 {
			t.Errorf("%s: %+v; want a neck of %.3f, reach %.3f, %.3f mm²", c.name, f, c.neck, c.reach, c.area)
		}
	}
}

func TestALobeIsNoTongue(t *testing.T) {
	for name, cuts := range map[string][]pattern.CutOut{
		"short":         cutOuts(outline(t, "M-1 0H0V2H2V0H3V3H-1Z")),
		"wide":          cutOuts(outline(t, "M-1 0H0V20H7V0H8V21H-1Z")),
		"convex":        cutOuts(outline(t, "M0 0H4V30H0Z")),
		"between discs": cutOuts(disc(0, 0, 1), disc(2, 0, 1), disc(1, 1, 1)),
		"held twice":    cutOuts(outline(t, "M0 0H1V10H0Z"), outline(t, "M3 0H4V10H3Z")),
		"ink only":      cutOuts(outline(t, "M0 0H6V1H1V20H0Z")),
	} {
		if found := mustTongues(t, cuts); len(found) != 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

// The same U drawn as three bars that overlap: the neck lies between two motifs.
func TestCutOutsThatOverlapMakeATongueTogether(t *testing.T) {
	found := mustTongues(t, cutOuts(outline(t, "M-1 0H0V10.5H-1Z"), outline(t, "M-1 10H3V11H-1Z"), outline(t, "M2 0H3V10.5H2Z")))
	if len(found) != 1 || !near(found[0].Ratio, 5, 1e-4) || found[0].Neck.A == found[0].Neck.B || !near(found[0].AreaMM2, 20, 1e-3) {
		t.Errorf("%+v", found)
	}
	// Discs along a U, each over the next: the neck lies between the first two, the
	// tip where the last two cross, at √(1 − 0.7²) from their middles.
	var discs []geom.Shape
	for y := range 9 {
		discs = append(discs, disc(0, float64(y)*1.5, 2), disc(4, float64(y)*1.5, 2))
	}
	discs = append(discs, disc(1.3, 12, 2), disc(2.7, 12, 2))
	if found := mustTongues(t, cutOuts(discs...)); len(found) != 1 || !near(found[0].Neck.Width.MM(), 2, 2e-3) || !near(found[0].Reach.MM(), 12-math.Sqrt(0.51), 4e-3) {
		t.Errorf("of discs: %+v", found)
	}
}

// Holes within the tongue are no paper of it, and one within the neck parts it.
func TestHolesInATongueAreLeftOut(t *testing.T) {
	u := outline(t, "M-1 0H0V10H2V0H3V11H-1Z")
	found := mustTongues(t, cutOuts(u, disc(1, 5, 1), outline(t, "M.5 7H1.5V8H.5Z")))
	if len(found) != 1 || !near(found[0].AreaMM2, 20-math.Pi/4-1, 0.01) {
		t.Errorf("with holes: %+v", found)
	}
}

// combOf returns an opening around paper teeth of the given widths and lengths,
// and beside each tooth a slot of 1 mm.
func combOf(widths, lengths []float64) string {
	var top, foot strings.Builder
	x := 0.0
	fmt.Fprintf(&top, "M0 0")
	for i, w := range widths {
		fmt.Fprintf(&top, "H%.3fV%.3fH%.3fV0", x+1, lengths[i], x+1+w)
		x += 1 + w
	}
	fmt.Fprintf(&foot, "H%.3fV%.3fH0Z", x+1, slices.Max(lengths)+1)
	return top.String() + foot.String()
}

func TestACombHasATongueForEachTooth(t *testing.T) {
	found := mustTongues(t, cutOuts(outline(t, combOf([]float64{1, 1, 1, 1, 1}, []float64{4, 4, 4, 4, 4}))))
	if len(found) != 5 {
		t.Fatalf("%d tongues of five teeth: %+v", len(found), found)
	}
	for _, f := range found {
		if !near(f.Ratio, 4, 1e-4) || !near(f.AreaMM2, 4, 1e-4) {
			t.Errorf("%+v", f)
		}
	}
}

// Teeth of chance, turned and laid on a torus: each that is long enough is told
// with its own width, length and area, the readiest first; moving all, or writing
// the lattice otherwise, changes none of it.
func TestRandomCombsAreToldToothByTooth(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 2))
	teeth := 0
	for range 60 {
		var widths, lengths []float64
		var want [][3]float64
		for range 1 + rnd.IntN(7) {
			w, l := 0.5+2.5*rnd.Float64(), 1+8*rnd.Float64()
			w, l = math.Round(w*1e3)/1e3, math.Round(l*1e3)/1e3
			widths, lengths = append(widths, w), append(lengths, l)
			if l/w >= TongueRatio {
				want = append(want, [3]float64{w, l, w * l})
			}
		}
		slices.SortFunc(want, func(a, b [3]float64) int { return -1 + 2*btoi(a[1]/a[0] < b[1]/b[0]) })
		teeth += len(want)
		turn := geom.Rotate(360 * rnd.Float64())
		comb := outline(t, combOf(widths, lengths)).Placed(turn)
		l := pattern.Lattice{A: geom.PtMM(45, rnd.Float64()*9), B: geom.PtMM(rnd.Float64()*9, 45)}
		found := mustTongues(t, cutOuts(comb), l.A, l.B)
		if len(found) != len(want) {
			t.Fatalf("%v × %v: %d tongues, want %d", widths, lengths, len(found), len(want))
		}
		for i, f := range found {
			if !near(f.Neck.Width.MM(), want[i][0], 1e-4) || !near(f.Reach.MM(), want[i][1], 1e-4) || !near(f.AreaMM2, want[i][2], 1e-3) {
				t.Errorf("%v × %v: %+v, want %v", widths, lengths, f, want[i])
			}
		}
		by := geom.PtMM(rnd.Float64()*90, rnd.Float64()*90)
		moved := mustTongues(t, cutOuts(comb.Moved(by)), l.A.Add(l.B), l.B)
		for i := range found {
			if i >= len(moved) || !near(moved[i].AreaMM2, found[i].AreaMM2, 1e-6) || moved[i].Reach != found[i].Reach || moved[i].Neck.Width != found[i].Neck.Width {
				t.Errorf("moved by %v: %+v, was %+v", by, moved, found)
				break
			}
		}
	}
	if teeth < 100 {
		t.Errorf("only %d teeth", teeth)
	}
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Teeth between stripes that run around the torus hang on the paper band beside.
func TestATongueInABandIsTold(t *testing.T) {
	stripe := outline(t, "M-1 0H1V6H3V0H9V8H-1Z") // a period and 2 mm more of lap
	for _, by := range []float64{0, 1.5, 4} {
		found := mustTongues(t, cutOuts(stripe.Moved(geom.PtMM(by, by))), geom.PtMM(8, 0), geom.PtMM(0, 20))
		if len(found) != 1 || !near(found[0].Ratio, 3, 0.01) || !near(found[0].AreaMM2, 12, 0.01) {
			t.Errorf("moved by %g mm: %+v", by, found)
		}
	}
}

func BenchmarkTongues(b *testing.B) {
	dots := ground(pattern.Straight(geom.MM(1.01), geom.MM(1.01)), 0.45)
	var fine []pattern.CutOut
	for c := range dots.In(geom.BoxOf(geom.Point{}, geom.PtMM(356, 181.8))) {
		fine = append(fine, c)
	}
	b.Run("63500 discs", func(b *testing.B) {
		for b.Loop() {
			mustTongues(b, fine, geom.PtMM(1.01*354, 0), geom.PtMM(0, 1.01*181))
		}
	})
	comb, err := geom.ParsePathData(combOf([]float64{0.3, 0.4, 0.5, 0.3}, []float64{2, 2, 3, 1}))
	if err != nil {
		b.Fatal(err)
	}
	var combs []pattern.CutOut
	for y := range 30 {
		for x := range 50 {
			combs = append(combs, pattern.CutOut{Shape: geom.Shape{Outline: comb}.Moved(geom.PtMM(float64(x)*8, float64(y)*6))})
		}
	}
	b.Run("1500 combs", func(b *testing.B) {
		for b.Loop() {
			mustTongues(b, combs, geom.PtMM(400, 0), geom.PtMM(0, 180))
		}
	})
}

// A spike of 2 mm at its root runs to 0.2 mm over 9.9 mm; it has no web there.
func TestASpikeHangsOnItsRoot(t *testing.T) {
	found := mustTongues(t, cutOuts(outline(t, "M-1 0H0L.9 9.9H1.1L2 0H3V11H-1Z")))
	if len(found) != 1 || !near(found[0].Ratio, 4.95, 1e-4) || !near(found[0].AreaMM2, 10.89, 1e-4) {
		t.Errorf("%+v", found)
	}
}
