package geom

import (
	"math/rand/v2"
	"testing"
)

// Places along a random line are in a piece exactly where they are in the box, and
// the pieces stay in it.
func TestALineIsCutToTheBox(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 3))
	for range 120 {
		at := func() Point { return Point{Length(r.IntN(2001)) - 1000, Length(r.IntN(2001)) - 1000} }
		box := BoxOf(at(), at())
		line := make([]Point, 2+r.IntN(9))
		for i := range line {
			line[i] = at()
		}
		pieces := box.Cut(line)
		inside, long := 0.0, 0.0
		for _, p := range pieces {
			for i, q := range p {
				if !box.Holds(q) {
					t.Fatalf("%v of a piece lies outside %v", q, box)
				}
				if i > 0 {
					long += p[i-1].Distance(q).MM()
				}
			}
		}
		const steps = 1000
		for i := 1; i < len(line); i++ {
			way := line[i].Sub(line[i-1])
			for k := range steps {
				f := (float64(k) + 0.5) / steps
				x, y := float64(line[i-1].X)+f*float64(way.X), float64(line[i-1].Y)+f*float64(way.Y)
				if x >= float64(box.Min.X) && x <= float64(box.Max.X) && y >= float64(box.Min.Y) && y <= float64(box.Max.Y) {
					inside += way.Norm() / steps / 1e6
				}
			}
		}
		if d := long - inside; d > 30e-6 || d < -30e-6 {
			t.Fatalf("%v in %v: pieces are %g mm long, want %g", line, box, long, inside)
		}
	}
}

func TestALineInTheBoxStaysWhole(t *testing.T) {
	box := BoxOf(Point{}, Point{10, 10})
	line := []Point{{1, 1}, {5, 9}, {10, 3}, {4, 4}}
	if got := box.Cut(line); len(got) != 1 || len(got[0]) != 4 {
		t.Errorf("got %v", got)
	}
	if got := box.Cut([]Point{{20, 20}, {30, 20}}); got != nil {
		t.Errorf("a line outside has pieces %v", got)
	}
}
