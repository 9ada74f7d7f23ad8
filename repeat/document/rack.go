package document

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A PunchMatch is a size of the order's dots and the punch of the rack nearest to it.
type PunchMatch struct {
	Dot   geom.Length
	Count int // dots of that size that are drawn
	Punch Punch
}

// Change returns by how much the dot changes when it is cut with the punch: 0.1 is
// ten percent wider.
func (m PunchMatch) Change() float64 { return float64(m.Punch.Diameter)/float64(m.Dot) - 1 }

// Punches returns the sizes of the order's dots, each with the nearest punch of the
// rack: that whose ratio to it is nearest to 1. There are none without a rack. The
// size that changes most comes first.
func (o Order) Punches() []PunchMatch { return o.punchesOf(o.Rack) }

func (o Order) punchesOf(rack []Punch) []PunchMatch {
	if len(rack) == 0 {
		return nil
	}
	count := map[geom.Length]int{}
	for _, m := range o.Unit.Motifs {
		if m.Shape.Round() {
			count[m.Shape.Disc.Diameter]++
		}
	}
	var all []PunchMatch
	for _, d := range slices.Sorted(maps.Keys(count)) {
		all = append(all, PunchMatch{d, count[d], nearestPunch(rack, d)})
	}
	slices.SortStableFunc(all, func(a, b PunchMatch) int { return cmp.Compare(apart(b), apart(a)) })
	return all
}

// nearestPunch returns the punch whose ratio to d is nearest to 1; of two the one
// that stands first.
func nearestPunch(rack []Punch, d geom.Length) Punch {
	return slices.MinFunc(rack, func(a, b Punch) int {
		return cmp.Compare(apart(PunchMatch{d, 0, a}), apart(PunchMatch{d, 0, b}))
	})
}

// apart is the ratio of dot and punch, the larger to the smaller.
func apart(m PunchMatch) float64 {
	a, b := float64(m.Dot), float64(m.Punch.Diameter)
	return max(a/b, b/a)
}

// SnapDots gives every dot the size of the punch nearest to it. The recipe of a
// ground follows where its dots are of the sizes that it names; that of a swell, whose
// sizes are its own, ends.
func SnapDots(o Order) (Order, error) { return SnapDotsTo(o, o.Rack) }

// SnapDotsTo is SnapDots with the punches of another rack, such as the one that the
// cutter keeps for all orders. Their sizes are those that a dot has when it is drawn.
func SnapDotsTo(o Order, rack []Punch) (Order, error) {
	punches := o.punchesOf(rack)
	if len(rack) == 0 {
		return o, fmt.Errorf("rack: there is no punch in it; add the cutter's punches first")
	}
	to := map[geom.Length]geom.Length{}
	for _, m := range punches {
		to[m.Dot] = m.Punch.Diameter
	}
	next := o
	next.Unit.Motifs = slices.Clone(o.Unit.Motifs)
	for i, m := range next.Unit.Motifs {
		if m.Shape.Round() {
			next.Unit.Motifs[i].Shape.Disc.Diameter = to[m.Shape.Disc.Diameter]
		}
	}
	next.Ground = snapped(o.Ground, to)
	return o.checked(next)
}

// snapped returns the recipe whose dots have the sizes that they became.
func snapped(r pattern.Recipe, to map[geom.Length]geom.Length) pattern.Recipe {
	g, ok := pattern.GroundNamed(r.Ground)
	if _, dots := g.Param("dot"); !ok || !dots {
		return r
	}
	named := map[geom.Length]bool{}
	next := r
	for _, key := range []string{"dot", "large"} {
		if _, has := g.Param(key); !has {
			continue
		}
		size := geom.MM(r.Value(key))
		named[size] = true
		if d, there := to[size]; there {
			var err error
			if next, err = next.With(key, d.String()+" mm"); err != nil {
				return pattern.Recipe{}
			}
		}
	}
	for d := range to {
		if !named[d] {
			return pattern.Recipe{} // of a swell, or a dot that was drawn by hand
		}
	}
	return next
}
