package stencil

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// What counts as a tongue: our recommendation, no source.
const (
	// TongueRatio is the least reach over neck that Tongues tells: shorter paper
	// is a lobe of the sheet.
	TongueRatio = 1.5
	// TongueNeck is the widest neck that Tongues tells: wider paper lies flat.
	TongueNeck = 6 * geom.Millimetre
)

// A Tongue is paper that hangs on one neck, the two ends of which lie on one rim,
// with the paper that this rim goes around.
type Tongue struct {
	Neck    Web
	At      geom.Point  // its tip: the place of its rim farthest from the neck
	AreaMM2 float64     // of paper, the holes in it left out
	Reach   geom.Length // from the neck to the tip
	Ratio   float64     // reach over neck
}

// Tongues returns the tongues of paper between cut-outs that repeat by the periods,
// none, one or two: the readiest to lift first, which is the one with the
// greatest Ratio, then the greatest area. Cut-outs that overlap are one, and
// what is nearer than geom.Touch touches.
//
// A neck is a web (see Webs) no wider than TongueNeck, both ends of which lie on
// the rim of one opening; of paper that is equally wide all along, it is where
// the tongue is longest. Paper that grows narrower from its root on has no web:
// its neck is the shortest way across from a sharp corner of the rim, where the
// slit beside the tongue ends; between slits with round ends it is not told.
// Less than TongueRatio is not told, and a tongue on a tongue only where it lifts
// more readily; nor are tongues of islands told, which fall out. Discs that touch
// nothing make no tongue.
func Tongues(cuts []pattern.CutOut, periods ...geom.Point) ([]Tongue, error) {
	o, err := openingsOf(cuts, periods)
	if err != nil {
		return nil, fmt.Errorf("tongues: %w", err)
	}
	var found []neck
	for _, b := range o.region.Boundaries {
		if !b.Closed() || b.Area2() > 0 {
			found = append(found, newCoast(b).necks()...)
		}
	}
	if len(found) == 0 {
		return nil, nil
	}
	s := sceneOf(cuts, float64(TongueNeck), periods...)
	found = slices.DeleteFunc(found, func(n neck) bool { return !s.openNeck(n) })
	found = readiest(found)
	if err := o.leaveOutHoles(found, periods); err != nil {
		return nil, fmt.Errorf("tongues: %w", err)
	}
	tongues := make([]Tongue, len(found))
	for i, n := range found {
		tongues[i] = s.tongue(n)
	}
	slices.SortFunc(tongues, Tongue.compare)
	return tongues, nil
}

// compare puts the readiest to lift first.
func (t Tongue) compare(o Tongue) int {
	return cmp.Or(cmp.Compare(o.Ratio, t.Ratio), cmp.Compare(o.AreaMM2, t.AreaMM2),
		cmp.Compare(t.At.Y, o.At.Y), cmp.Compare(t.At.X, o.At.X))
}

// openNeck reports whether nothing else is cut between the ends of a neck.
func (s *scene) openNeck(n neck) bool {
	m, half := n.p.add(n.q).times(0.5), n.width/2-4*float64(geom.Touch)
	if n.root {
		// The rims that the root lies between come into the circle over it.
		half /= 2
		if d := n.q.sub(n.p).times(4 * float64(geom.Touch) / n.width); s.sides != nil && s.sides.crosses(n.p.add(d), n.q.sub(d)) {
			return false
		}
	}
	if s.sides != nil {
		return s.roomy(m, half) && !s.inked(m)
	}
	free := true
	for g := range s.discs {
		free = free && len(s.discs[g].about(nil, m, max(half, 0))) == 0
	}
	return free
}

// tongue returns a neck's tongue as it is told.
func (s *scene) tongue(n neck) Tongue {
	return Tongue{
		Neck: Web{
			P: n.p.point(), Q: n.q.point(), Width: geom.Length(math.Round(n.width)),
			A: s.motifAt(n.p), B: s.motifAt(n.q),
		},
		At:      n.tip.point(),
		AreaMM2: n.area / float64(geom.Millimetre*geom.Millimetre),
		Reach:   geom.Length(math.Round(n.reach)),
		Ratio:   n.reach / n.width,
	}
}

// motifAt returns the motif whose rim runs through p, or 0 where none does.
func (s *scene) motifAt(p place) pattern.ID {
	const within = 4 * float64(geom.Touch)
	least, cut := within, int32(-1)
	if s.sides != nil {
		s.sides.visit(s.sides.within(p, within), func(i int32, by place) bool {
			x, _ := s.sides.sides[i].nearest(p.sub(by))
			if d := x.add(by).sub(p).norm(); d < least {
				least, cut = d, s.sides.sides[i].cut
			}
			return true
		})
	}
	for g := range s.discs {
		for _, h := range s.discs[g].about(nil, p, within) {
			if d := math.Abs(h.c.sub(p).norm() - h.r); d < least {
				least, cut = d, h.cut
			}
		}
	}
	if cut < 0 {
		return 0
	}
	return s.cuts[cut].Motif
}
