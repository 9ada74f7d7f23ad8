package ui

import (
	"fmt"
	"strconv"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

func (s *boltStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	u, r := s.w.unit(), s.w.work.Run
	list := s.layingMeasures(u, r)
	if s.laidByChance().bolts.Bolts > 0 {
		list = append(list, s.driftMeasures(u, r)...)
		list = append(list, s.walkMeasures(u, r)...)
	}
	return append(list, s.overlayMeasures(u, r)...)
}

// layingMeasures are how the placements fall on cloth and board.
func (s *boltStation) layingMeasures(u geom.Unit, r cloth.Run) []measure {
	list := []measure{{"placements", strconv.Itoa(len(r.Placements))}}
	if n := r.Count(); n != len(r.Placements) {
		list = append(list, measure{"printings in all", strconv.Itoa(n)})
	}
	if !r.Bolt.Folded {
		a, b := 0, 0
		for _, st := range r.Stretches {
			for n := st.First; n < st.First+st.Count; n++ {
				switch r.Face(st, n) {
				case cloth.FaceA:
					a++
				case cloth.FaceB:
					b++
				}
			}
		}
		all := len(r.Placements) * max(r.Board.Cloths, 1)
		list = append(list, measure{"face A | turn | face B", fmt.Sprintf("%d | %d | %d", a, all-a-b, b)})
	}
	list = append(list,
		measure{"step on the board", u.Format(r.Step, 3)},
		measure{"cloth left over", u.Format(r.Remainder, 1)})
	if p := r.Partial; p.Printed > 0 {
		list = append(list, measure{"masked of the last", u.Format(p.Masked, 1)})
	}
	if r.Overhang > 0 {
		list = append(list, measure{"has no board under it", u.Format(r.Overhang, 1)})
	}
	return list
}

// driftMeasures set the closed form beside what bolts laid by chance came to.
func (s *boltStation) driftMeasures(u geom.Unit, r cloth.Run) []measure {
	d, sim := r.Drift, s.laidByChance().bolts
	both := func(sign string, a, b geom.Length) string {
		return fmt.Sprintf("%s%s | %s", sign, bare(u, a, 2), u.Format(b, 2))
	}
	list := []measure{
		{say("Drift by formula") + " | " + say("%d bolts, seed %d", sim.Bolts, sim.Seed), ""},
		{"laid by", plainWords(d.Way)},
		{"end walks across", both("± ", d.EndX, sim.SpreadX)},
		{"end walks along", both("± ", (d.EndY - d.ShareY).Abs(), sim.SpreadY)},
	}
	if d.ShareY != 0 {
		list = append(list, measure{"step and drying, along", both("", d.ShareY, sim.MeanY)})
	}
	eye := cloth.EyeAt(s.w.Order().Limits.Look)
	return append(list,
		measure{"worst joint", both("", d.WorstJoint, sim.WorstJoint)},
		measure{say("seen from %s", u.Format(eye.Distance, 0)), sight(eye.Sees(d.WorstJoint))},
		measure{say("all joints within %s", u.Format(d.Tolerance, 2)), fmt.Sprintf("%.1f | %.1f %%", d.WithinPct, sim.WithinPct)})
}

// walkMeasures are what is drawn beside the cloth.
func (s *boltStation) walkMeasures(u geom.Unit, r cloth.Run) []measure {
	all := walks(r)
	if len(all) < 2 {
		return nil
	}
	list := []measure{{say("Walk across, drawn %s times", times(exaggerated(all, s.laid().walkRoom()))), ""}}
	for _, w := range all {
		name := plainWords(w.way)
		if w.now {
			name = say("%s, as laid", name)
		}
		list = append(list, measure{name, "± " + u.Format(w.end(), 2)})
	}
	return list
}

// overlayMeasures are how far prints miss those that they are to fall on.
func (s *boltStation) overlayMeasures(u geom.Unit, r cloth.Run) []measure {
	c := s.laidByChance()
	var list []measure
	tell := func(name string, o cloth.Overlay, by cloth.Overlaid) {
		if o.Prints == 0 {
			return
		}
		worst, odds := u.Format(o.Worst, 2), fmt.Sprintf("%.1f %%", o.WithinPct)
		if by.Bolts > 0 {
			worst = bare(u, o.Worst, 2) + " | " + u.Format(by.Worst, 2)
			odds = fmt.Sprintf("%.1f | %.1f %%", o.WithinPct, by.WithinPct)
		}
		list = append(list, measure{name, ""},
			measure{"prints", strconv.Itoa(o.Prints)},
			measure{"worst miss", worst},
			measure{say("all within %s", u.Format(o.Tolerance, 2)), odds})
	}
	tell("Later sheets on the first", r.Set, c.set)
	tell("The back on the front", r.Back, c.back)
	return list
}

// bare is a length without its unit, where that follows.
func bare(u geom.Unit, l geom.Length, digits int) string {
	number, _, _ := strings.Cut(u.Format(l, digits), " ")
	return number
}

// times is a factor as it is said.
func times(factor float64) string { return strconv.FormatFloat(factor, 'g', 3, 64) }

// plainWords is a word of the order with spaces for its hyphens, in the language of
// the person.
func plainWords[T ~string](word T) string { return say(strings.ReplaceAll(string(word), "-", " ")) }

// sight says how visible an offset is.
func sight(v cloth.Sight) string {
	switch v {
	case cloth.PlainlySeen:
		return say("plainly")
	case cloth.SeenByExpert:
		return say("by an expert, on crisp lines")
	}
	return say("not at all")
}
