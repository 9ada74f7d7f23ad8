//go:build geos

package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// quarterPieces is into how many pieces the peer cuts a quarter of a round corner;
// its chords are off by π²/(32·quarterPieces²) of the radius.
const quarterPieces = 64

// GEOS grows the straight pieces: both are off by Chord along their lines, and GEOS
// by its own chords at the corners.
func TestGrowingAgreesWithThePeer(t *testing.T) {
	rng := rand.New(rand.NewPCG(43, 1))
	for k := range 3000 {
		o := randomMotif(rng)
		by := (rng.Float64() - 0.5) * []float64{0.1, 1, 4}[rng.IntN(3)]
		got := mustGrow(t, o, MM(by))
		want := peerShape(o.Rings(Chord)).Buffer(float64(MM(by)), quarterPieces).Area() / 1e12
		slack := 3e-3 + math.Abs(by)*math.Pi*math.Pi/32/quarterPieces/quarterPieces
		if d := math.Abs(got.AreaMM2() - want); d > slack*(lengthMM(o)+lengthMM(got)) {
			t.Errorf("case %d: grown by %.6f mm it has %.6f mm2, GEOS says %.6f", k, by, got.AreaMM2(), want)
		}
	}
}

func BenchmarkPeerBuffer(b *testing.B) {
	motifs := manyMotifs()
	b.ResetTimer()
	for range b.N {
		for _, o := range motifs {
			peerShape(o.Rings(Chord)).Buffer(float64(MM(0.05)), 8)
		}
	}
}
