package stencil

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// Closed forms: the centres come nearer by the slack, in each direction by itself.
func TestAMisplacedJointIsNarrowerByItsSlack(t *testing.T) {
	for _, c := range []struct {
		way, slack geom.Point
		width      float64
		off        geom.Point
	}{
		{geom.PtMM(0, 3), geom.PtMM(0, 0), 2, geom.PtMM(0, 0)},
		{geom.PtMM(0, 3), geom.PtMM(0.2, 0.3), 1.7, geom.PtMM(0, -0.3)},
		{geom.PtMM(4, 5), geom.PtMM(1, 1), 4, geom.PtMM(-1, -1)},
		{geom.PtMM(0, 1.2), geom.PtMM(0.2, 0.3), -0.1, geom.PtMM(0, -0.3)},
	} {
		got := JointWebs(cutOuts(disc(0, 0, 1)), c.way, c.slack, geom.MM(6))
		if len(got) != 1 || math.Abs(got[0].Width.MM()-c.width) > 2e-6 || got[0].Off != c.off {
			t.Errorf("way %v, slack %v: %+v, want %g mm off by %v", c.way, c.slack, got, c.width, c.off)
		}
	}
	if got := JointWebs(drawn(t, "M0 0H9V9H0Z", "M4 14H5V15H4Z"), geom.PtMM(0, -10), geom.PtMM(0.1, 0.1), geom.MM(0.5)); len(got) == 0 || got[0].Width != 0 {
		t.Errorf("a cut-out wholly within one of the other placement: %+v, want a width of zero", got)
	}
}

// The slow way: lay the next placement at many places within the slack and measure
// every pair of cut-outs each time. None is narrower than told, and the place told
// has the width told.
func TestMisplacedJointsAgreeWithLayingThemEverywhere(t *testing.T) {
	rnd := rand.New(rand.NewPCG(21, 4))
	webs := 0
	for scene := range 60 {
		shapes := []geom.Shape{disc(rnd.Float64()*10, rnd.Float64()*5, 0.5+rnd.Float64()*2)}
		for range 3 {
			shapes = append(shapes, blob(rnd, rnd.Float64()*10, rnd.Float64()*5, 1), disc(rnd.Float64()*10, rnd.Float64()*5, 0.5+rnd.Float64()))
		}
		cuts := cutOuts(shapes...)
		way := geom.PtMM(rnd.Float64(), 4+rnd.Float64())
		slack := geom.PtMM(rnd.Float64()*0.8, rnd.Float64()*0.8)
		const limit = 1.5
		told := map[[2]int]JointWeb{}
		for _, w := range JointWebs(cuts, way, slack, geom.MM(limit)) {
			told[[2]int{int(w.A), int(w.B)}] = w
		}
		webs += len(told)
		for i := range cuts {
			for j := range cuts {
				w, ok := told[[2]int{i + 1, j + 1}]
				least := math.Inf(1)
				for k := range 81 {
					off := geom.Point{X: slack.X.Times(float64(k%9)/4 - 1), Y: slack.Y.Times(float64(k/9)/4 - 1)}
					least = min(least, apartMM(cuts[i].Shape, cuts[j].Shape.Moved(way.Add(off))))
				}
				if !ok && least < limit-1e-5 || ok && least < w.Width.MM()-1e-5 {
					t.Errorf("scene %d, %d to %d: %.6f mm apart at a sampled place, told %v %.6f", scene, i, j, least, ok, w.Width.MM())
				}
				if at := apartMM(cuts[i].Shape, cuts[j].Shape.Moved(way.Add(w.Off))); ok && math.Abs(at-w.Width.MM()) > 1e-5 {
					t.Errorf("scene %d, %d to %d: %.6f mm apart off by %v, told %.6f", scene, i, j, at, w.Off, w.Width.MM())
				}
				if ok && (w.Off.X.Abs() > slack.X+1 || w.Off.Y.Abs() > slack.Y+1) {
					t.Errorf("scene %d: off by %v, slack %v", scene, w.Off, slack)
				}
			}
		}
	}
	if webs < 100 {
		t.Errorf("only %d webs were compared", webs)
	}
}

// apartMM returns the least distance between two shapes, rim by rim.
func apartMM(s, o geom.Shape) float64 {
	n := around(cutOuts(s, o))
	least := math.Inf(1)
	for _, e := range n.rims[n.first[0]:n.first[1]] {
		for _, f := range n.rims[n.first[1]:] {
			least = min(least, between(e, f).width/1e6)
		}
	}
	if _, in := nested(s, o); in && !(s.Round() && o.Round()) {
		least = min(least, 0)
	}
	return least
}
