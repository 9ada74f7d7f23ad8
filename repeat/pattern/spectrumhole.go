package pattern

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A hole is a motif as the spectrum sees it: its shape in the cell, the point it
// stands at in millimetres, and the diameter of the disc of its area.
type hole struct {
	shape    geom.Shape
	key      figureKey
	x, y     float64
	diameter float64
}

// A figureKey tells figures apart as they stand.
type figureKey struct {
	figure int
	stance stance
	disc   geom.Length
}

// holes returns the motifs that cover anything, each in the cell.
func (u Unit) holes() []hole {
	g := newGallery()
	holes := make([]hole, 0, len(u.Motifs))
	for _, m := range u.Motifs {
		m.At = u.Lattice.Into(m.At)
		s := hole{shape: m.Placed()}
		if s.shape.Round() {
			c := s.shape.Disc.Centre
			s.x, s.y, s.key.disc = c.X.MM(), c.Y.MM(), s.shape.Disc.Diameter
			s.diameter = s.shape.Disc.Diameter.MM()
		} else {
			it := g.item(m)
			s.x, s.y, s.key = it.x/1e6, it.y/1e6, figureKey{figure: it.figure, stance: it.stance}
			s.diameter = math.Sqrt(4 / math.Pi * s.shape.AreaMM2())
		}
		if s.diameter > 0 {
			holes = append(holes, s)
		}
	}
	return holes
}

// alikeSize is the ratio of diameters below which motifs are meant to be alike; what
// differs by more is taken for the design. Judgement, no source.
const alikeSize = 1.1

// A stature tells outlines apart that stand differently: how long and how turned
// they are, and to which side they are the heavier, each in coarse steps, so that
// what is drawn a little off still counts as alike.
type stature struct{ long, turned, right, down int }

// statureOf measures rims by their moments about their middle.
func statureOf(rings []geom.Ring) stature {
	var length, mx, my, xx, yy, xy, xxx, yyy float64
	each := func(do func(x, y, weight float64)) {
		for _, r := range rings {
			for i, p := range r {
				q := r[(i+1)%len(r)]
				do((p.X.MM()+q.X.MM())/2, (p.Y.MM()+q.Y.MM())/2, q.Sub(p).Norm())
			}
		}
	}
	each(func(x, y, w float64) { length, mx, my = length+w, mx+w*x, my+w*y })
	if length == 0 {
		return stature{}
	}
	mx, my = mx/length, my/length
	each(func(x, y, w float64) {
		x, y, w = x-mx, y-my, w/length
		xx, yy, xy = xx+w*x*x, yy+w*y*y, xy+w*x*y
		xxx, yyy = xxx+w*x*x*x, yyy+w*y*y*y
	})
	size := xx + yy
	steps := func(v float64) int { return int(math.Round(v * 5)) }
	return stature{
		steps((xx - yy) / size), steps(2 * xy / size),
		steps(xxx / math.Pow(size, 1.5)), steps(yyy / math.Pow(size, 1.5)),
	}
}

// kindsOf sorts holes into kinds: as large, and of the same stature. A kind is a
// chain of neighbours in size, so that a swelling ground stays one.
func kindsOf(holes []hole) [][]hole {
	type key struct {
		size    int
		stature stature
	}
	sorted := slices.Clone(holes)
	slices.SortStableFunc(sorted, func(a, b hole) int { return cmp.Compare(a.diameter, b.diameter) })
	known, statures := map[key]int{}, map[figureKey]stature{}
	var kinds [][]hole
	size := 0
	for i, s := range sorted {
		if i > 0 && s.diameter > alikeSize*sorted[i-1].diameter {
			size++
		}
		k := key{size: size}
		if !s.shape.Round() {
			stands, ok := statures[s.key]
			if !ok {
				stands = statureOf(s.shape.Rings(geom.Length(s.diameter * 1e4))) // a hundredth of its size
				statures[s.key] = stands
			}
			k.stature = stands
		}
		n, ok := known[k]
		if !ok {
			n = len(kinds)
			known[k], kinds = n, append(kinds, nil)
		}
		kinds[n] = append(kinds[n], s)
	}
	return kinds
}

// weighed returns the places of holes, weights in proportion to their areas, and
// what these sum up to.
func weighed(holes []hole) (places [][2]float64, weights []float64, total float64) {
	for _, s := range holes {
		places = append(places, [2]float64{s.x, s.y})
		weights = append(weights, s.diameter*s.diameter)
		total += s.diameter * s.diameter
	}
	return places, weights, total
}
