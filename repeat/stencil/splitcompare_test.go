package stencil

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// slowly compares a motif with its parts by the exact arrangement of all of them.
func slowly(t *testing.T, m pattern.Motif, parts []pattern.Motif) (missing bool, extra []bool) {
	t.Helper()
	own := [][]geom.Ring{m.Placed().Rings(geom.Chord)}
	var all [][]geom.Ring
	for _, p := range parts {
		rings := [][]geom.Ring{p.Placed().Rings(geom.Chord)}
		all = append(all, rings...)
		more, err := geom.Without(rings, own)
		if err != nil {
			t.Fatal(err)
		}
		extra = append(extra, len(patches(more)) > 0)
	}
	left, err := geom.Without(own, all)
	if err != nil {
		t.Fatal(err)
	}
	return len(patches(left)) > 0, extra
}

// spoilt returns a part with one thing wrong, or as it is.
func spoilt(rnd *rand.Rand, m pattern.Motif) pattern.Motif {
	o := m.Shape.Outline.Moved(geom.Point{})
	c := rnd.IntN(len(o))
	switch rnd.IntN(6) {
	case 0: // a piece is lost
		o = append(o[:c:c], o[c+1:]...)
	case 1: // a corner is drawn elsewhere
		k := rnd.IntN(len(o[c].Segments) - 1)
		o[c].Segments[k].End = o[c].Segments[k].End.Add(geom.PtMM(rnd.Float64()-0.5, rnd.Float64()-0.5))
	case 2: // a corner is left out
		k := rnd.IntN(len(o[c].Segments) - 1)
		o[c].Segments = append(o[c].Segments[:k:k], o[c].Segments[k+1:]...)
	case 3: // all of it is moved
		m.At = m.At.Add(geom.PtMM(0.01*rnd.Float64(), 0))
	}
	m.Shape.Outline = o
	return m
}

func TestPartsAreComparedAsTheWholeArrangementWould(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 6))
	var missed, beside, sound int
	for seed := range uint64(6) {
		u := wavyRings(4, seed)
		_, one, two, _ := mustSplit(t, u, SecondCuts()[seed%2])
		for i, m := range u.Motifs {
			for range 4 {
				parts := []pattern.Motif{spoilt(rnd, one.Motifs[i]), spoilt(rnd, two.Motifs[i])}
				c := compared(m, parts)
				missing, err := c.missing()
				if err != nil {
					t.Fatal(err)
				}
				extra, err := c.extra()
				if err != nil {
					t.Fatal(err)
				}
				want, wanted := slowly(t, m, parts)
				if missing != want || extra[0] != wanted[0] || extra[1] != wanted[1] {
					t.Errorf("seed %d, motif %d: missing %v, extra %v; want %v, %v", seed, m.ID, missing, extra, want, wanted)
				}
				switch {
				case want:
					missed++
				case wanted[0] || wanted[1]:
					beside++
				default:
					sound++
				}
			}
		}
	}
	if missed == 0 || beside == 0 || sound == 0 {
		t.Errorf("%d missed, %d beside, %d sound; want some of each", missed, beside, sound)
	}
	t.Logf("%d missed, %d beside, %d sound", missed, beside, sound)
}
