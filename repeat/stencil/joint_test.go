package stencil

import (
	"context"
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
	for range 6 * int(width*step/apart/apart) {
		p := geom.PtMM(rnd.Float64()*width, rnd.Float64()*step)
		free := true
		for _, m := range u.Motifs {
			d := p.Sub(m.At)
			dx := math.Remainder(d.X.MM(), width)
			dy := math.Remainder(d.Y.MM(), step)
			if math.Hypot(dx, dy) < apart {
				free = false
				break
			}
		}
		if free {
			u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(len(u.Motifs) + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(diameter)), At: p})
		}
	}
	return u
}

// On a square ground the line runs straight between two rows, as far from both
// as the web allows: half of pitch − diameter.
func TestJointOfASquareGroundRunsStraightBetweenTwoRows(t *testing.T) {
	u := ground(pattern.Straight(geom.MM(1), geom.MM(1)), 0.5)
	j, err := FindJoint(context.Background(), u, field, geom.MM(180))
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
	j, err := FindJoint(context.Background(), u, field, u.Lattice.At(-20, 40).Y)
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
		j, err := FindJoint(context.Background(), u, narrow, step)
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

// The line keeps its clearance everywhere, crosses no cut-out, and does not meet
// its copy: shown by walking along it.
func TestJointLineKeepsItsClearanceAllAlong(t *testing.T) {
	for seed := range uint64(6) {
		u := scattered(seed, 80, 50, 1.6, 0.8)
		f := Field{Width: geom.MM(80)}
		j, err := FindJoint(context.Background(), u, f, geom.MM(50))
		if err != nil {
			t.Fatal(err)
		}
		if j.Clearance < j.Widest.Times(keptClearance)-geom.Touch {
			t.Errorf("seed %d: clearance %s mm of %s", seed, j.Clearance, j.Widest)
		}
		least, near := math.Inf(1), groundAbout(u, f, geom.BoxOf(j.Line...))
		for i, b := range j.Line[1:] {
			a := j.Line[i]
			for k := range 200 {
				d := b.Sub(a)
				p := a.Add(geom.Point{X: d.X * geom.Length(k) / 200, Y: d.Y * geom.Length(k) / 200})
				if p.Y.Abs() >= geom.MM(25) {
					t.Fatalf("seed %d: the line leaves its band at %v", seed, p)
				}
				least = min(least, float64(near.clearance(p)))
			}
		}
		if math.Abs(least-float64(j.Clearance)) > 0.05e6 || least < float64(j.Clearance)-2 {
			t.Errorf("seed %d: walking along the line the nearest rim is %.4f mm off; the joint says %s", seed, least/1e6, j.Clearance)
		}
	}
}

// The widest clearance is a bottleneck: with the dots grown to just under it a
// flood through the paper still gets across the band, with a little more it
// doesn't. The flood is a plain raster, independent of webs.
func TestWidestClearanceIsWhereAFloodStops(t *testing.T) {
	for seed := range uint64(8) {
		u := scattered(seed, 40, 60, 2.2, 0.9)
		f := Field{Width: geom.MM(40)}
		j, err := FindJoint(context.Background(), u, f, geom.MM(60))
		if err != nil {
			t.Fatal(err)
		}
		cuts := fieldCuts(u, f, -2*jointBand, 2*jointBand)
		c := j.Widest.MM()
		if !floods(cuts, f, 0.93*c) || floods(cuts, f, 1.07*c) {
			t.Errorf("seed %d: a flood does not agree with a widest clearance of %s mm", seed, j.Widest)
		}
	}
}

// floods reports whether points farther than grown from every cut-out reach from
// the left edge of the field to the right within the band.
func floods(cuts []pattern.CutOut, f Field, grown float64) bool {
	const h = 0.04
	nx, ny := int(f.Width.MM()/h), int(2*jointBand.MM()/h)
	open := make([]bool, nx*ny)
	for i := range open {
		open[i] = true
	}
	for _, c := range cuts {
		d := c.Shape.Disc
		cx, cy, r := d.Centre.X.MM()/h, (d.Centre.Y+jointBand).MM()/h, (d.RadiusMM()+grown)/h
		for y := max(0, int(cy-r)); y < min(ny, int(cy+r)+1); y++ {
			for x := max(0, int(cx-r)); x < min(nx, int(cx+r)+1); x++ {
				if math.Hypot(float64(x)-cx, float64(y)-cy) < r {
					open[y*nx+x] = false
				}
			}
		}
	}
	var stack []int
	for y := range ny {
		if open[y*nx] {
			stack = append(stack, y*nx)
		}
	}
	for len(stack) > 0 {
		k := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if !open[k] {
			continue
		}
		open[k] = false
		if k%nx == nx-1 {
			return true
		}
		for _, m := range []int{k + 1, k - 1, k + nx, k - nx} {
			if m >= 0 && m < len(open) && open[m] && (m/nx == k/nx || m%nx == k%nx) {
				stack = append(stack, m)
			}
		}
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
	j, err := FindJoint(context.Background(), u, Field{Width: geom.MM(41)}, geom.MM(100))
	if err != nil {
		t.Fatal(err)
	}
	if j.Clearance > 0 || j.Widest != 0 || j.Length.MM() > 42 {
		t.Errorf("joint over stripes: clearance %s, widest %s, length %s mm", j.Clearance, j.Widest, j.Length)
	}
}

func BenchmarkJointOf63500Holes(b *testing.B) {
	u := ground(pattern.Straight(geom.MM(1.01), geom.MM(1.01)), 0.45)
	for b.Loop() {
		if _, err := FindJoint(context.Background(), u, field, geom.MM(1.01*180)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCutOutsOf63500Holes(b *testing.B) {
	u := ground(pattern.Straight(geom.MM(1.01), geom.MM(1.01)), 0.45)
	j, err := FindJoint(context.Background(), u, field, geom.MM(1.01*180))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if n := len(Between(u, field, j, geom.MM(1.01*180))); n < 60_000 {
			b.Fatal(n)
		}
	}
}
