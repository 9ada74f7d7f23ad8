package ui

import (
	"fmt"
	"strconv"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// boltMeasures are what follows from how the cloth is laid: odds, what many bolts
// came to by chance, what of it is seen, and what helps most.
func (s *boltStation) boltMeasures(u geom.Unit) []measure {
	r := s.w.work.Run
	var list []measure
	if n := r.Count(); n != len(r.Placements) {
		list = append(list, measure{"printings in all", strconv.Itoa(n)})
	}
	if p := r.Partial; p.Printed > 0 {
		list = append(list, measure{"masked of the last", u.Format(p.Masked, 1)})
	}
	if sim := r.Simulated; sim.Bolts > 0 {
		within := u.Format(r.Drift.Tolerance, 2)
		list = append(list,
			measure{"of bolts laid by chance", strconv.Itoa(sim.Bolts)},
			measure{"their worst joints", u.Format(sim.WorstJoint, 2)},
			measure{"all joints within " + within, fmt.Sprintf("%.1f %%", sim.WithinPct)},
			measure{"the odds of that", fmt.Sprintf("%.1f %%", r.Drift.WithinPct)})
		eye := cloth.EyeAt(s.w.Order().Limits.Look)
		list = append(list, measure{"from " + u.Format(eye.Distance, 0), strings.ReplaceAll(string(eye.Sees(r.Drift.WorstJoint)), "-", " ")})
	}
	if r.Set.Prints > 0 {
		list = append(list, measure{"later sheets miss by", u.Format(r.Set.Worst, 2)})
	}
	if r.Back.Prints > 0 {
		list = append(list, measure{"the back misses by", u.Format(r.Back.Worst, 2)})
	}
	if g, ok := cloth.Best(cloth.Gains(r), cloth.Gain.Total); ok {
		list = append(list, measure{"helps most: " + g.Text(), u.Format(g.Total(), 2)})
	}
	return list
}
