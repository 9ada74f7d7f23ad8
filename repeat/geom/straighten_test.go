package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Every point that is left out lies as near to the line that stays as it may.
func TestAStraightenedLineStaysNearItsPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 5))
	for range 200 {
		line := make([]Point, 3+r.IntN(60))
		for i := range line {
			line[i] = PtMM(float64(i)*r.Float64(), math.Sin(float64(i)/5)*3+0.4*r.NormFloat64())
		}
		beside := MM(0.05 + r.Float64())
		straight := Straightened(line, beside)
		if straight[0] != line[0] || straight[len(straight)-1] != line[len(line)-1] {
			t.Fatal("an end is gone")
		}
		for _, p := range line {
			nearest := math.Inf(1)
			for i := range straight[1:] {
				nearest = math.Min(nearest, apart(p, straight[i], straight[i+1]))
			}
			if nearest > 1.5*float64(beside) {
				t.Fatalf("%v lies %.3f mm beside the line; %v mm are allowed", p, nearest/1e6, beside)
			}
		}
	}
}

func TestALineThatIsStraightIsItsEnds(t *testing.T) {
	line := []Point{{}, PtMM(1, 0.001), PtMM(2, -0.001), PtMM(3, 0)}
	if got := Straightened(line, MM(0.01)); len(got) != 2 {
		t.Errorf("got %v", got)
	}
	corner := []Point{{}, PtMM(5, 0), PtMM(5, 5)}
	if got := Straightened(corner, MM(0.01)); len(got) != 3 {
		t.Errorf("the corner is gone: %v", got)
	}
}

// apart is how far p is from the piece a–b, in nanometres.
func apart(p, a, b Point) float64 {
	way, to := b.Sub(a), p.Sub(a)
	t := 0.0
	if l := way.Norm(); l > 0 {
		t = math.Min(math.Max((float64(to.X)*float64(way.X)+float64(to.Y)*float64(way.Y))/l/l, 0), 1)
	}
	return math.Hypot(float64(to.X)-t*float64(way.X), float64(to.Y)-t*float64(way.Y))
}
