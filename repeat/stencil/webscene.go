package stencil

import (
	"math"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A scene is cut-outs ready to be searched for webs: discs as they are, outlines
// as straight pieces no farther than geom.Chord from their rims. Nothing is
// united: where cut-outs overlap, the rim of one lies within the other and no
// circle over paper can end on it.
type scene struct {
	*frame
	cuts   []pattern.CutOut
	discs  []holeGrid
	field  *discField // where all are discs and a field can hold them; discs is empty then
	sides  *sideGrid  // nil where all are discs
	covers *coverGrid
	buried []bool // of each corner: no web begins there; nil where none was looked for
}

// sceneOf prepares a search up to reach from rim to rim.
func sceneOf(cuts []pattern.CutOut, reach float64, periods ...geom.Point) *scene {
	s, holes := gathered(cuts, periods)
	s.discs = s.holeGrids(holes, reach)
	return s
}

// fieldScene returns the scene of discs on a torus with their field, or nil where
// there are outlines or the discs can't have one.
func fieldScene(cuts []pattern.CutOut, reach float64, periods []geom.Point) *scene {
	if len(periods) != 2 || !allRound(cuts) {
		return nil
	}
	s, holes := gathered(cuts, periods)
	if s.field = s.discField(holes, reach); s.field == nil {
		return nil
	}
	return s
}

// gathered returns the scene without its discs, and these.
func gathered(cuts []pattern.CutOut, periods []geom.Point) (*scene, []hole) {
	f := frameAround(cuts, periods)
	s := &scene{frame: &f, cuts: cuts}
	holes := make([]hole, 0, len(cuts))
	rings := outlineRings(cuts)
	count := 0
	for _, rs := range rings {
		for _, r := range rs {
			count += len(r)
		}
	}
	sides := make([]side, 0, count)
	var covers []cover
	for i, c := range cuts {
		if c.Shape.Round() {
			holes = append(holes, hole{f.home(placeOf(c.Shape.Disc.Centre)), float64(c.Shape.Disc.Diameter) / 2, int32(i)})
			continue
		}
		for _, r := range rings[i] {
			sides = f.appendSides(sides, r, int32(i))
		}
		covers = append(covers, cover{rings[i], c.Shape.Bounds()})
	}
	s.sides = f.sideGrid(sides)
	s.covers = f.coverGrid(covers)
	s.bury()
	return s, holes
}

// outlineRings returns the outlines as straight pieces; of discs there are none.
func outlineRings(cuts []pattern.CutOut) [][]geom.Ring {
	if allRound(cuts) {
		return nil
	}
	rings := make([][]geom.Ring, len(cuts))
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			for i := k; i < len(cuts); i += workers {
				if !cuts[i].Shape.Round() {
					rings[i] = cuts[i].Shape.Rings(geom.Chord)
				}
			}
		})
	}
	wait.Wait()
	return rings
}

// appendSides appends the pieces of a ring that have a length.
func (f *frame) appendSides(sides []side, r geom.Ring, cut int32) []side {
	first := int32(len(sides))
	for k, p := range r {
		q := r[(k+1)%len(r)]
		if p == q {
			continue
		}
		a, b := placeOf(p), placeOf(q)
		home := f.home(a)
		i := int32(len(sides))
		sides = append(sides, side{a: home, b: b.add(home.sub(a)), drawn: a.sub(home), cut: cut, before: i - 1, next: i + 1})
	}
	if last := int32(len(sides)) - 1; last >= first {
		sides[first].before, sides[last].next = last, first
	}
	return sides
}

// A cover is what an outline covers.
type cover struct {
	rings []geom.Ring
	box   geom.Box
}

// A coverGrid finds the outlines whose boxes hold a place.
type coverGrid struct {
	mesh
	covers []cover
	met    [][]meeting
}

func (f *frame) coverGrid(covers []cover) *coverGrid {
	if len(covers) == 0 {
		return nil
	}
	g := &coverGrid{covers: covers}
	var sum float64
	for _, c := range covers {
		sum += float64(c.box.Width()) + float64(c.box.Height())
	}
	g.mesh = f.meshOf(max(sum/float64(2*len(covers)), 1), len(covers))
	g.met = make([][]meeting, g.nu*g.nv)
	for i, c := range covers {
		w := g.over(placeOf(c.box.Min), placeOf(c.box.Max))
		for j := w.j0; j <= w.j1; j++ {
			row, tv := wrap(j, g.nv)
			for k := w.i0; k <= w.i1; k++ {
				col, tu := wrap(k, g.nu)
				part := row*g.nu + col
				g.met[part] = append(g.met[part], meeting{int32(i), int32(-tu), int32(-tv)})
			}
		}
	}
	return g
}

// holds reports whether an outline covers p.
func (g *coverGrid) holds(p place) bool {
	if g == nil {
		return false
	}
	p = g.home(p)
	for _, m := range g.met[g.part(p)] {
		c, at := g.covers[m.i], p.sub(g.shift(int(m.tu), int(m.tv))).point()
		if !c.box.Holds(at) {
			continue
		}
		turns := 0
		for _, r := range c.rings {
			turns += r.Winding(at)
		}
		if turns != 0 {
			return true
		}
	}
	return false
}

// inked reports whether p lies in a cut-out.
func (s *scene) inked(p place) bool {
	for i := range s.discs {
		if len(s.discs[i].about(nil, p, 0)) > 0 {
			return true
		}
	}
	return s.covers.holds(p)
}

// pinched reports whether paper comes to p from two sides at least: whether
// cut-outs that meet in p touch in a point only.
func (s *scene) pinched(p place) bool {
	const looks = 64
	runs, before := 0, true
	for k := range looks + 1 {
		sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / looks)
		now := s.inked(p.add(place{cos, sin}.times(float64(geom.Touch))))
		if k > 0 && before && !now {
			runs++
		}
		before = now
	}
	return runs >= 2
}
