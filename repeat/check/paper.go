package check

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

func emptyUnit(m Measures, _ Limits) []Finding {
	if len(m.Unit.Motifs) > 0 {
		return nil
	}
	return []Finding{{
		Code: "unit-empty", Severity: Fault, Domain: OnUnit,
		Text:   "The unit has no motif: nothing would be cut.",
		Remedy: "Place a motif on the lattice.",
	}}
}

// smallHoles reports the smallest opening of the unit where paste may not pass:
// the diameter of a disc, or twice area over circumference of an outline, which
// is the width of a long slit and the radius of a round hole.
func smallHoles(m Measures, l Limits) []Finding {
	count := 0
	var least geom.Length
	var at geom.Point
	for _, c := range m.Unit.CutOuts() {
		size := opening(c)
		if size >= l.Hole {
			continue
		}
		if count == 0 || size < least {
			least, at = size, c.Shape.Bounds().Centre()
		}
		count++
	}
	if count == 0 {
		return nil
	}
	return []Finding{{
		Code: "hole-small", Severity: Warning, Domain: OnUnit, At: at,
		Text:   fmt.Sprintf("%s too small for the paste: the smallest opens %s, the limit is %s.", plural(count, "hole is", "holes are"), mm(least), mm(l.Hole)),
		Remedy: "Make the holes larger, take thinner paper, or set the limit from a test on your own paste.",
	}}
}

func opening(c pattern.CutOut) geom.Length {
	if c.Shape.Round() {
		return c.Shape.Disc.Diameter
	}
	var around float64
	for _, r := range c.Shape.Rings(geom.Chord) {
		for i, p := range r {
			around += p.Sub(r[(i+len(r)-1)%len(r)]).Norm()
		}
	}
	if around == 0 {
		return 0
	}
	return geom.MM(2 * c.Shape.AreaMM2() / (around / float64(geom.Millimetre)))
}

func islands(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		var found []Finding
		for _, p := range s.Paths.Islands {
			found = append(found, Finding{
				Code: "island", Severity: Fault, Domain: OnUnit, At: p.At,
				Text:   fmt.Sprintf("An island of %.3f mm²%s is held by nothing and falls out.", p.AreaMM2, on),
				Remedy: "Leave ties across the cut-out around it, or cut its middle away.",
			})
		}
		return found
	})
}

func bands(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		n := len(s.Paths.Bands)
		if n == 0 {
			return nil
		}
		return []Finding{{
			Code: "band", Severity: Fault, Domain: OnUnit, At: s.Paths.Bands[0].At,
			Text:   fmt.Sprintf("The cut-outs part the paper%s into strips: %s a unit.", on, plural(n, "strip", "strips")),
			Remedy: "Leave ties across the stripes, or hold the strips with thread or gauze.",
		}}
	})
}

func webs(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		w := s.Webs
		if len(w.Below) == 0 {
			return nil
		}
		thin := w.Below[0]
		count := plural(len(w.Below), "web", "webs") + on
		is := "are"
		if len(w.Below) == 1 {
			is = "is"
		}
		text := fmt.Sprintf("%s %s narrower than %s; the narrowest leaves %s of paper.", count, is, mm(w.Limit), mm(thin.Width))
		if thin.Width == 0 {
			text = fmt.Sprintf("%s %s narrower than %s; the narrowest is a bare point where two cut-outs touch.", count, is, mm(w.Limit))
		}
		return []Finding{{
			Code: "web-thin", Severity: Fault, Domain: OnUnit, At: middle(thin.P, thin.Q),
			Text:   text,
			Remedy: "Move the cut-outs apart or make them smaller, let the pitch grow if the count allows, or part them between two sheets.",
		}}
	})
}

// eachSheet looks at each sheet of the set; on says of a split which one it is, with
// a space before it, and is empty for a sheet that stands alone.
func eachSheet(m Measures, look func(s stencil.Sheet, on string) []Finding) []Finding {
	if m.Sheet.Second == nil {
		return look(m.Sheet, "")
	}
	return append(look(m.Sheet, " of the first sheet"), look(*m.Sheet.Second, " of the second sheet")...)
}

func middle(p, q geom.Point) geom.Point { return geom.BoxOf(p, q).Centre() }

// plural writes a count with its noun.
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
