package stencil

import (
	"runtime"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Flaw is something wrong with the outline of a motif, and where on the unit. A
// disc has none.
type Flaw struct {
	Motif pattern.ID
	Kind  geom.Flaw
	At    geom.Point
}

// Flaws returns what is wrong with the outlines of u, motif by motif: the first of
// each kind in each. It works on all processors and looks at an outline that many
// motifs share once.
func Flaws(u pattern.Unit) []Flaw {
	mends := mendsOf(u)
	if len(mends) == 0 {
		return nil
	}
	var flaws []Flaw
	for _, m := range u.Motifs {
		if m.Shape.Round() || len(m.Shape.Outline) == 0 {
			continue
		}
		var seen [geom.Reversed + 1]bool
		for _, d := range mends[&m.Shape.Outline[0]] {
			if !seen[d.Flaw] {
				seen[d.Flaw] = true
				flaws = append(flaws, Flaw{m.ID, d.Flaw, m.Placing().Apply(d.At)})
			}
		}
	}
	return flaws
}

// mendsOf mends each outline of u, known by where its contours are kept, once.
func mendsOf(u pattern.Unit) map[*geom.Contour][]geom.Mend {
	mends := make(map[*geom.Contour][]geom.Mend)
	var outlines []geom.Outline
	for _, m := range u.Motifs {
		if o := m.Shape.Outline; len(o) > 0 {
			if _, is := mends[&o[0]]; !is {
				mends[&o[0]], outlines = nil, append(outlines, o)
			}
		}
	}
	found := make([][]geom.Mend, len(outlines))
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for i := w; i < len(outlines); i += workers {
				_, found[i] = outlines[i].Mended()
			}
		})
	}
	together.Wait()
	for i, o := range outlines {
		mends[&o[0]] = found[i]
	}
	return mends
}
