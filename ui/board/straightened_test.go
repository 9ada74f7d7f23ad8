package board

import (
	"math"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// A line of a thousand points that winds by less than can be seen is drawn as few
// pieces, one that winds further keeps all its bends.
func TestALongLineKeepsTheBendsThatAreSeen(t *testing.T) {
	var line []geom.Point
	for i := range 1000 {
		line = append(line, geom.PtMM(float64(i)*0.4, 0.5*math.Sin(float64(i)*0.8)))
	}
	for _, c := range []struct {
		scale        float64
		fewest, most int
	}{{0.3, 2, 4}, {1, 2, 700}, {12, 600, 1000}} {
		p := pen{view: raster.View{PxPerMM: c.scale}, unit: 1}
		spots := p.straightened(line)
		if len(spots) < c.fewest || len(spots) > c.most {
			t.Errorf("at %g px/mm the line has %d points; want %d to %d", c.scale, len(spots), c.fewest, c.most)
		}
		for _, at := range line {
			s, nearest := p.spot(at), math.Inf(1)
			for i := range spots[1:] {
				nearest = math.Min(nearest, apart(s, spots[i], spots[i+1]))
			}
			if nearest > 2*besidePx {
				t.Fatalf("at %g px/mm a point is %.2f pixels beside the line", c.scale, nearest)
			}
		}
	}
}

// apart is how far s is from the piece a–b.
func apart(s, a, b spot) float64 {
	x, y := b.x-a.x, b.y-a.y
	t := 0.0
	if l := x*x + y*y; l > 0 {
		t = math.Min(math.Max(((s.x-a.x)*x+(s.y-a.y)*y)/l, 0), 1)
	}
	return math.Hypot(s.x-a.x-t*x, s.y-a.y-t*y)
}
