package stencil

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

var field = Field{Left: geom.MM(9.5), Width: geom.MM(356)}

func ground(l pattern.Lattice, diameter float64) pattern.Unit {
	return pattern.Unit{Lattice: l, Motifs: []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(diameter))}}}
}

// scattered returns a unit of dots that keep a distance from one another, placed
// by chance with a seed.
func scattered(seed uint64, width, step, apart, diameter float64) pattern.Unit {
	rnd := rand.New(rand.NewPCG(seed, 1))
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(width), geom.MM(step))}
	nx, ny := int(width/apart), int(step/apart)
	cells := make([][]geom.Point, nx*ny)
	for range 6 * int(width*step/apart/apart) {
		x, y := rnd.Float64()*width, rnd.Float64()*step
		p := geom.PtMM(x, y)
		cx, cy := int(x/width*float64(nx)), int(y/step*float64(ny))
		free := true
		for k := range 9 {
			for _, q := range cells[(cy+k/3-1+ny)%ny*nx+(cx+k%3-1+nx)%nx] {
				d := p.Sub(q)
				free = free && math.Hypot(math.Remainder(d.X.MM(), width), math.Remainder(d.Y.MM(), step)) >= apart
			}
		}
		if free {
			cells[cy*nx+cx] = append(cells[cy*nx+cx], p)
			u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(len(u.Motifs) + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(diameter)), At: p})
		}
	}
	return u
}

// On a square ground the line runs straight between two rows, as far from both
// as the web allows: half of pitch − diameter.
func TestJointOfASquareGroundRunsStraightBetweenTwoRows(t *testing.T) {
	u := ground(pattern.Straight(geom.MM(1), geom.MM(1)), 0.5)
	j, err := FindJoint(context.Background(), u, field, geom.MM(180), JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	if got := j.Widest.MM(); math.Abs(got-0.25) > 1e-6 {
		t.Errorf("widest clearance %.6f mm, want (1 − 0.5)/2", got)
	}
	if got := j.Length.MM(); got > 356.01 {
		t.Errorf("line is %.3f mm long; straight across is 356", got)
	}
	if j.Clearance < j.Widest.Times(keptClearance)-geom.Touch {
		t.Errorf("clearance %s mm; widest is %s", j.Clearance, j.Widest)
	}
}

// On a 60° ground every line must pass between two neighbours in a row: the best
// one is the web P − D wide (perforated-sheet geometry: the narrowest bridge on
// the best path across).
func TestJointOfASixtyDegreeGroundIsAsWideAsItsWeb(t *testing.T) {
	u := ground(pattern.Brick(geom.MM(5), geom.MM(5*math.Sqrt(3)/2)), 3)
	j, err := FindJoint(context.Background(), u, field, u.Lattice.At(-20, 40).Y, JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	if got := 2 * j.Widest.MM(); math.Abs(got-2) > 1e-5 {
		t.Errorf("widest web on the best path %.6f mm, want P − D = 2", got)
	}
}

// Placements a step apart cover the pattern in the field exactly once, whatever
// way the line takes.
func TestPlacementsCoverThePatternExactlyOnce(t *testing.T) {
	for name, u := range map[string]pattern.Unit{
		"square":    ground(pattern.Straight(geom.MM(2), geom.MM(2)), 1),
		"45°":       ground(pattern.Diagonal(geom.MM(2), geom.MM(2)), 1),
		"scattered": scattered(3, 60, 40, 2, 1),
	} {
		narrow, step := Field{Left: geom.MM(5), Width: geom.MM(57)}, geom.MM(40)
		j, err := FindJoint(context.Background(), u, narrow, step, JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		sheet := Between(u, narrow, j, step)
		seen := map[geom.Point]int{}
		for k := -2; k <= 4; k++ {
			for _, c := range sheet {
				seen[c.Shape.Disc.Centre.Add(geom.Point{Y: step}.Times(k))]++
			}
		}
		n := 0
		for c := range u.In(geom.BoxOf(geom.PtMM(5, 0), geom.PtMM(62, 120))) {
			at := c.Shape.Disc.Centre
			if !narrow.whole(c.Shape.Bounds()) || at.Y < 0 || at.Y > geom.MM(120) {
				continue
			}
			n++
			if seen[at] != 1 {
				t.Errorf("%s: the dot at %v is cut %d times", name, at, seen[at])
			}
		}
		if n == 0 {
			t.Errorf("%s: no dots", name)
		}
	}
}

// walk calls visit with places along the line, at most 5 µm apart.
func walk(line []geom.Point, visit func(p geom.Point)) {
	for i, b := range line[1:] {
		d := b.Sub(line[i])
		n := geom.Length(d.Norm()/5e3) + 1
		for k := range n {
			visit(line[i].Add(geom.Point{X: d.X * k / n, Y: d.Y * k / n}))
		}
	}
	visit(line[len(line)-1])
}

// keepsClear checks a line against what it says of itself by walking along it,
// and that it keeps its share of the widest clearance and off its copies.
func keepsClear(t *testing.T, name string, u pattern.Unit, f Field, step geom.Length, j Joint) {
	t.Helper()
	if least := j.Widest.Times(keptClearance) - 3*geom.Grid; j.Clearance < least || j.Clearance > j.Widest+3*geom.Grid {
		t.Errorf("%s: clearance %s mm of at most %s", name, j.Clearance, j.Widest)
	}
	if j.Line[0].X != f.Left || j.Line[len(j.Line)-1].X != f.Right() {
		t.Errorf("%s: the line runs from %s to %s mm", name, j.Line[0].X, j.Line[len(j.Line)-1].X)
	}
	near := groundAbout(u, f, geom.BoxOf(j.Line...))
	least := geom.Length(math.MaxInt64)
	walk(j.Line, func(p geom.Point) { least = min(least, near.clearance(p)) })
	if least < j.Clearance-2 || least > j.Clearance+6*geom.Micrometre {
		t.Errorf("%s: the nearest rim along the line is %s mm off; the joint says %s", name, least, j.Clearance)
	}
	for i, b := range j.Line[1:] {
		for k, d := range j.Line[1:] {
			a, c := j.Line[i].Add(geom.Point{Y: step}), j.Line[k]
			b := b.Add(geom.Point{Y: step})
			if differ(geom.Orient(a, b, c), geom.Orient(a, b, d)) && differ(geom.Orient(c, d, a), geom.Orient(c, d, b)) {
				t.Fatalf("%s: the line meets its copy at %v", name, c)
			}
		}
	}
}

// Dots by chance, close and far apart, small and large.
func TestJointLineKeepsItsClearanceAllAlong(t *testing.T) {
	for seed := range uint64(14) {
		for _, diameter := range []float64{0.4, 1, 1.5} {
			u, f, step := scattered(seed, 60, 37, 1.6, diameter), Field{Left: geom.MM(3), Width: geom.MM(57)}, geom.MM(37)
			j, err := FindJoint(context.Background(), u, f, step, JointSpec{})
			if err != nil {
				t.Fatal(err)
			}
			keepsClear(t, fmt.Sprintf("seed %d, diameter %g", seed, diameter), u, f, step, j)
		}
	}
}

// Grounds of dots up to 95 % of the pitch: the line passes every web with four
// fifths of its half, whether or not the step is a lattice vector. Between two
// neighbours in a row P − D is the widest there is at 60°, 90° and 45°
// (perforated-sheet geometry).
func TestJointOfFineGroundsUsesTheWholeWeb(t *testing.T) {
	const pitch = 1.01
	f := Field{Left: geom.MM(9.5), Width: geom.MM(80)}
	for _, diameter := range []float64{0.5, 0.85, 0.96} {
		for name, l := range map[string]pattern.Lattice{
			"60°": pattern.Brick(geom.MM(pitch), geom.MM(pitch*math.Sqrt(3)/2)),
			"90°": pattern.Straight(geom.MM(pitch), geom.MM(pitch)),
			"45°": pattern.Diagonal(geom.MM(pitch/math.Sqrt2), geom.MM(pitch/math.Sqrt2)),
		} {
			for _, step := range []geom.Length{geom.MM(180), 2 * 89 * (l.A.Y.Abs() + l.B.Y.Abs())} {
				u := ground(l, diameter)
				name := fmt.Sprintf("%s, diameter %g, step %s", name, diameter, step)
				j, err := FindJoint(context.Background(), u, f, step, JointSpec{})
				if err != nil {
					t.Fatal(err)
				}
				if got := 2 * j.Widest.MM(); math.Abs(got-(pitch-diameter)) > 4e-6 {
					t.Errorf("%s: widest web %.6f mm, want P − D = %.6f", name, got, pitch-diameter)
				}
				keepsClear(t, name, u, f, step, j)
				if j.Length > f.Width.Times(1.12) {
					t.Errorf("%s: the line is %s mm long", name, j.Length)
				}
				if y := j.Line[0].Y.Abs(); y > geom.MM(2) {
					t.Errorf("%s: the line begins %s mm off", name, y)
				}
			}
		}
	}
}

// Motifs far taller than they are apart: the line goes around them, whole.
func TestJointGoesAroundLargeMotifs(t *testing.T) {
	leaf := outline(t, "M0 -30C14 -18 16 14 0 30C-16 14 -14 -18 0 -30Z")
	hook := outline(t, "M-9 -24H9V-18H-3V24H-9Z")
	for name, shape := range map[string]geom.Shape{"leaf": leaf, "hook": hook} {
		u := pattern.Unit{Lattice: pattern.HalfDrop(geom.MM(25), geom.MM(70)), Motifs: []pattern.Motif{{ID: 1, Shape: shape}}}
		f := Field{Left: geom.MM(5), Width: geom.MM(300)}
		j, err := FindJoint(context.Background(), u, f, geom.MM(140), JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		if j.Clearance <= 0 {
			t.Errorf("%s: clearance %s", name, j.Clearance)
		}
		keepsClear(t, name, u, f, geom.MM(140), j)
		// The sheet holds what lies between the line and its copy, whole.
		cuts := Between(u, f, j, geom.MM(140))
		for _, c := range cuts {
			for _, p := range c.Shape.Rings(geom.Millimetre / 10)[0] {
				if !j.Below(p) || j.Below(p.Sub(geom.Point{Y: geom.MM(140)})) {
					t.Fatalf("%s: the motif at %v reaches over the joint line", name, p)
				}
			}
		}
		if len(cuts) == 0 {
			t.Errorf("%s: no motifs on the sheet", name)
		}
	}
}

// A flower of six separate petals is one motif: no line may pass between them,
// though they are farther from one another than from the next flower.
func TestAMotifOfSeveralPiecesIsNotHalved(t *testing.T) {
	var o geom.Outline
	for k := range 6 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 3)
		petal := outline(t, "M-1 0A1 1 0 0 1 1 0A1 1 0 0 1 -1 0Z").Outline
		o = append(o, petal.Moved(geom.PtMM(6*cos, 6*sin))...)
	}
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(16), geom.MM(15)), Motifs: []pattern.Motif{{ID: 1, Shape: geom.Shape{Outline: o}}}}
	f := Field{Width: geom.MM(90)}
	j, err := FindJoint(context.Background(), u, f, geom.MM(60), JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	keepsClear(t, "flowers", u, f, geom.MM(60), j)
	for c := range u.In(geom.BoxOf(geom.PtMM(0, -40), geom.PtMM(90, 40))) {
		if !f.whole(c.Shape.Bounds()) {
			continue
		}
		below := 0
		for _, petal := range c.Shape.Outline {
			if j.Below(petal.Start) {
				below++
			}
		}
		if below != 0 && below != 6 {
			t.Errorf("the flower at %v has %d of 6 petals below the line", c.Shape.Bounds().Centre(), below)
		}
	}
}

// Outlines by chance, some over others, some over the ends of the cell.
func TestJointAmongOutlinesKeepsItsClearance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 4))
	clear := 0
	for scene := range 40 {
		u := pattern.Unit{Lattice: pattern.Straight(geom.MM(70), geom.MM(45))}
		for i := range 14 {
			s := blob(rnd, 0, 0, 2+rnd.Float64()*4)
			u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: s, At: geom.PtMM(rnd.Float64()*70, rnd.Float64()*45)})
		}
		f := Field{Left: geom.MM(1), Width: geom.MM(69)}
		j, err := FindJoint(context.Background(), u, f, geom.MM(45), JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		if j.Widest > 0 {
			clear++
			keepsClear(t, fmt.Sprintf("scene %d", scene), u, f, geom.MM(45), j)
		}
	}
	if clear < 25 {
		t.Errorf("only %d scenes have a line", clear)
	}
}

// Pieces and webs make a plane map on the cloth with a margin at either end:
// pieces − webs + pockets = 2 (Euler), once everything hangs together.
func TestPocketsObeyEuler(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	for scene := range 30 {
		u := scattered(uint64(scene), 30, 20, 2+rnd.Float64()*3, 1)
		for i := range u.Motifs {
			if rnd.IntN(3) == 0 {
				u.Motifs[i].Shape = blob(rnd, 0, 0, 0.9)
			}
		}
		c, _, err := clothOf(t.Context(), u, Field{Width: geom.MM(30)}, geom.MM(20))
		if err != nil {
			t.Fatal(err)
		}
		s := sceneOf(c.pieces, 40e6, geom.Point{Y: c.period})
		webs := s.links(40e6)
		k := c.pocketsOf(s, webs)
		if got := len(c.pieces) - len(webs) + len(k.around); got != 2 {
			t.Errorf("scene %d: %d pieces − %d webs + %d pockets = %d, want 2", scene, len(c.pieces), len(webs), len(k.around), got)
		}
		if len(k.left) != 1 || len(k.right) != 1 {
			t.Errorf("scene %d: %d left margins, %d right", scene, len(k.left), len(k.right))
		}
	}
}

// The widest clearance is a bottleneck: with the dots grown to just under it a
// flood through the paper of the cloth still gets across, with a little more it
// doesn't. The flood is a plain raster, independent of webs.
func TestWidestClearanceIsWhereAFloodStops(t *testing.T) {
	for seed := range uint64(8) {
		u := scattered(seed, 40, 30, 2.2, 0.9)
		f := Field{Width: geom.MM(40)}
		j, err := FindJoint(context.Background(), u, f, geom.MM(30), JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		c := j.Widest.MM()
		if !floods(u, f, 30, 0.97*c) || floods(u, f, 30, 1.03*c) {
			t.Errorf("seed %d: a flood does not agree with a widest clearance of %s mm", seed, j.Widest)
		}
	}
}

// floods reports whether points farther than grown from every whole cut-out
// reach from the left edge of the field to the right on the cloth, which comes
// again after so many millimetres.
func floods(u pattern.Unit, f Field, period, grown float64) bool {
	const h = 0.02
	nx, ny := int(f.Width.MM()/h), int(period/h)
	open := make([]bool, nx*ny)
	for i := range open {
		open[i] = true
	}
	for _, c := range fieldCuts(u, f, 0, geom.MM(period)) {
		d := c.Shape.Disc
		cx, cy, r := d.Centre.X.MM()/h, d.Centre.Y.MM()/h, (d.RadiusMM()+grown)/h
		for y := int(cy - r); y <= int(cy+r)+1; y++ {
			for x := max(0, int(cx-r)); x < min(nx, int(cx+r)+1); x++ {
				if math.Hypot(float64(x)-cx, float64(y)-cy) < r {
					open[(y+2*ny)%ny*nx+x] = false
				}
			}
		}
	}
	var stack []int
	for y := range ny {
		stack = append(stack, y*nx)
	}
	for len(stack) > 0 {
		k := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if !open[k] {
			continue
		}
		open[k] = false
		x, y := k%nx, k/nx
		if x == nx-1 {
			return true
		}
		if x > 0 {
			stack = append(stack, k-1)
		}
		stack = append(stack, k+1, (y+1)%ny*nx+x, (y+ny-1)%ny*nx+x)
	}
	return false
}

// Stripes along the bolt leave no way around them: the line crosses, straight.
func TestJointAcrossStripesCrossesThemStraight(t *testing.T) {
	stripe, err := geom.ParsePathData("M-0.5 -10H0.5V10H-0.5Z")
	if err != nil {
		t.Fatal(err)
	}
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(2), geom.MM(20)), Motifs: []pattern.Motif{{ID: 1, Shape: geom.Shape{Outline: stripe}}}}
	j, err := FindJoint(context.Background(), u, Field{Width: geom.MM(41)}, geom.MM(100), JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	if j.Clearance > 0 || j.Widest != 0 || j.Length.MM() > 42 {
		t.Errorf("joint over stripes: clearance %s, widest %s, length %s mm", j.Clearance, j.Widest, j.Length)
	}
}

// A ground of one dot a unit, and a unit of as many dots as the sheet has holes.
func BenchmarkJointOfASmallUnit(b *testing.B) {
	benchmarkJoint(b, ground(pattern.Diagonal(geom.MM(1.01), geom.MM(1.01)), 0.6), geom.MM(2*1.01*90))
}

func BenchmarkJointOfAUnitOf63500Holes(b *testing.B) {
	benchmarkJoint(b, scattered(1, 366, 182, 0.83, 0.5), geom.MM(182))
}

func benchmarkJoint(b *testing.B, u pattern.Unit, step geom.Length) {
	for b.Loop() {
		if _, err := FindJoint(context.Background(), u, field, step, JointSpec{}); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(u.Motifs)), "motifs")
}

func BenchmarkCutOutsOf63500Holes(b *testing.B) {
	u := ground(pattern.Straight(geom.MM(1.01), geom.MM(1.01)), 0.45)
	j, err := FindJoint(context.Background(), u, field, geom.MM(1.01*180), JointSpec{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if n := len(Between(u, field, j, geom.MM(1.01*180))); n < 60_000 {
			b.Fatal(n)
		}
	}
}

// The line runs into the bend of a hook, across the middle of its box, with all
// of the hook above it: the hook belongs to the placement before.
func TestAHookBelongsToThePlacementItLiesIn(t *testing.T) {
	step := geom.MM(60)
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(40), step), Motifs: []pattern.Motif{{ID: 1, Shape: outline(t, "M-9 -9H9V-6H-6V9H-9Z")}}}
	j := Joint{Line: []geom.Point{geom.PtMM(-20, 12), geom.PtMM(-4, 12), geom.PtMM(-4, -4), geom.PtMM(20, -4)}}
	cuts := Between(u, Field{Left: geom.MM(-20), Width: geom.MM(40)}, j, step)
	if len(cuts) != 1 {
		t.Fatalf("%d hooks on the sheet, want 1", len(cuts))
	}
	if got, want := cuts[0].Shape.Outline[0].Start, geom.PtMM(-9, 51); got != want {
		t.Errorf("the hook stands at %v, want %v", got, want)
	}
}
