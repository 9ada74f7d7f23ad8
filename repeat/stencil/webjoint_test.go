package stencil

import (
	"math"
	"math/cmplx"
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

// apartMM returns the least distance between two shapes, rim by rim, on its own
// arithmetic: negative where circles lie over each other, zero where rims meet or
// one shape lies within the other.
func apartMM(s, o geom.Shape) float64 {
	if s.Round() && o.Round() {
		a, b := s.Disc, o.Disc
		d := math.Hypot(b.Centre.X.MM()-a.Centre.X.MM(), b.Centre.Y.MM()-a.Centre.Y.MM())
		return d - a.Diameter.MM()/2 - b.Diameter.MM()/2
	}
	if s.Round() {
		s, o = o, s
	}
	rings := ringsMM(s)
	if o.Round() {
		x, y := o.Disc.Centre.X.MM(), o.Disc.Centre.Y.MM()
		least := rimAway(rings, x, y) - o.Disc.Diameter.MM()/2
		if windsAround(rings, x, y) {
			least = min(least, 0)
		}
		return least
	}
	others := ringsMM(o)
	if ringsCross(rings, others) || windsAround(rings, others[0][0][0], others[0][0][1]) || windsAround(others, rings[0][0][0], rings[0][0][1]) {
		return 0
	}
	least := math.Inf(1)
	for _, pair := range [2][2][][][2]float64{{rings, others}, {others, rings}} {
		for _, r := range pair[0] {
			for _, p := range r {
				least = min(least, rimAway(pair[1], p[0], p[1]))
			}
		}
	}
	return least
}

// ringsMM returns the straight pieces of an outline in millimetres.
func ringsMM(s geom.Shape) [][][2]float64 {
	var all [][][2]float64
	for _, r := range s.Outline.Rings(geom.Chord) {
		ps := make([][2]float64, len(r))
		for i, p := range r {
			ps[i] = [2]float64{p.X.MM(), p.Y.MM()}
		}
		all = append(all, ps)
	}
	return all
}

// rimAway returns how far a place is from the nearest side, in complex numbers: a
// side is turned onto the real axis.
func rimAway(rings [][][2]float64, x, y float64) float64 {
	least := math.Inf(1)
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			along := complex(q[0]-p[0], q[1]-p[1])
			to := complex(x-p[0], y-p[1])
			if l := cmplx.Abs(along); l > 0 {
				turned := to * cmplx.Conj(along) / complex(l, 0)
				beyond := max(-real(turned), 0, real(turned)-l)
				least = min(least, math.Hypot(beyond, imag(turned)))
			}
		}
	}
	return least
}

// windsAround reports whether rings wind around a place, by the angles of their sides.
func windsAround(rings [][][2]float64, x, y float64) bool {
	var sum float64
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			sum += cmplx.Phase(complex(q[0]-x, q[1]-y) * cmplx.Conj(complex(p[0]-x, p[1]-y)))
		}
	}
	return math.Abs(sum) > math.Pi
}

// ringsCross reports whether a side of the one crosses a side of the other.
func ringsCross(rings, others [][][2]float64) bool {
	turn := func(p, q, r [2]float64) float64 { return (q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0]) }
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			for _, s := range others {
				for k, a := range s {
					b := s[(k+1)%len(s)]
					if turn(p, q, a)*turn(p, q, b) < 0 && turn(a, b, p)*turn(a, b, q) < 0 {
						return true
					}
				}
			}
		}
	}
	return false
}
