//go:build geos

package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// overlapping returns the shapes whose boxes meet another's: what a union can't
// leave as it is.
func overlapping(shapes [][]Ring) [][]Ring {
	boxes := make([]Box, len(shapes))
	for i, s := range shapes {
		boxes[i] = s[0].Bounds()
	}
	meets := make([]bool, len(shapes))
	if err := Pairs(boxes, func(i, j int, _ Point) { meets[i], meets[j] = true, true }); err != nil {
		panic(err)
	}
	var kept [][]Ring
	for i, s := range shapes {
		if meets[i] {
			kept = append(kept, s)
		}
	}
	return kept
}

// BenchmarkUnionBesideThePeer unites in the plane what the peer unites in the same
// run. "x-geos" is how many times longer the peer takes; its collection is made
// before its clock starts.
func BenchmarkUnionBesideThePeer(b *testing.B) {
	dots, petals40, petals320, strokes := manyDots(), manyPetals(40), manyPetals(320), manyStrokes()
	for _, c := range []struct {
		name   string
		shapes [][]Ring
	}{
		{"60000 dots", dots},
		{"60000 dots, those that overlap", overlapping(dots)},
		{"2000 petals of 40", petals40},
		{"2000 petals of 40, those that overlap", overlapping(petals40)},
		{"2000 petals of 320", petals320},
		{"2000 petals of 320, those that overlap", overlapping(petals320)},
		{"strokes", strokes},
	} {
		b.Run(c.name, func(b *testing.B) {
			set := peerSet(c.shapes)
			start := time.Now()
			want := peerMM2(set.UnaryUnion())
			peer := time.Since(start)
			var r Region
			for b.Loop() {
				r = mustUnion(b, c.shapes)
			}
			if diff := math.Abs(r.AreaMM2() - want); diff > off*rimMM(r) {
				b.Errorf("%.9f mm2, the peer has %.9f", r.AreaMM2(), want)
			}
			b.ReportMetric(float64(peer.Milliseconds()), "geos-ms")
			b.ReportMetric(float64(peer.Nanoseconds())*float64(b.N)/float64(b.Elapsed().Nanoseconds()), "x-geos")
		})
	}
}

// BenchmarkUnionGrowth unites 600 to 600,000 dots on the torus. "x-tenth" is how
// many times longer it takes than for a tenth of them.
func BenchmarkUnionGrowth(b *testing.B) {
	tenth := math.NaN()
	for _, side := range []int{1, 10, 100, 1000} {
		b.Run(fmt.Sprint(600*side, " dots"), func(b *testing.B) {
			across := int(math.Round(math.Sqrt(600*float64(side))/10)) * 10
			along := 600 * side / across
			rng := rand.New(rand.NewPCG(4, uint64(side)))
			var shapes [][]Ring
			for k := range across * along {
				x, y := float64(k%across)+0.2*rng.Float64(), float64(k/across)+0.2*rng.Float64()
				shapes = append(shapes, []Ring{polygon(x, y, 0.2+0.22*rng.Float64(), 32)})
			}
			for b.Loop() {
				mustUnion(b, shapes, PtMM(float64(across), 0), PtMM(0, float64(along)))
			}
			each := float64(b.Elapsed().Nanoseconds()) / float64(b.N) / float64(len(shapes))
			b.ReportMetric(each, "ns/dot")
			if !math.IsNaN(tenth) {
				b.ReportMetric(10*each/tenth, "x-tenth")
			}
			tenth = each
		})
	}
}
