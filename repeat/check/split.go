package check

import (
	"fmt"

	"tsugime/repeat/stencil"
)

// cover compares the two sheets of a split with the design.
func cover(m Measures, _ Limits) []Finding {
	if m.Sheet.Second == nil {
		return nil
	}
	var found []Finding
	c := m.Sheet.Cover
	if n := len(c.Missing); n > 0 {
		found = append(found, Finding{
			Code: "split-misses", Severity: Fault, Domain: OnUnit, At: c.Missing[0].At,
			Text: fmt.Sprintf("The two sheets leave %.4f mm² of the design uncut, in %s; the largest is %.4f mm².",
				c.MissingMM2, plural(n, "place", "places"), c.Missing[0].AreaMM2),
			Remedy: "Move the ties of the two sheets apart, so that each opens where the other is tied.",
		})
	}
	if n := len(c.Extra); n > 0 {
		found = append(found, Finding{
			Code: "split-exceeds", Severity: Fault, Domain: OnUnit, At: c.Extra[0].At,
			Text: fmt.Sprintf("The two sheets cut %.4f mm² that the design does not have, in %s.",
				c.ExtraMM2, plural(n, "place", "places")),
			Remedy: "Propose the second sheet anew.",
		})
	}
	return found
}

// lap asks for openings of the second sheet that reach over those of the first.
func lap(m Measures, l Limits) []Finding {
	s := m.Sheet.Spec.Hold.Second
	if m.Sheet.Second == nil || s.Cut != stencil.TiePlaces || s.Lap >= l.Joint || len(m.Sheet.Spec.Hold.Ties) == 0 {
		return nil
	}
	return []Finding{{
		Code: "split-lap", Severity: Warning, Domain: OnUnit, At: m.Sheet.Spec.Hold.Ties[0].From,
		Text: fmt.Sprintf("The second sheet laps the first by %s; laid off by up to %s, a dyed line shows at every tie.",
			mm(s.Lap), mm(l.Joint)),
		Remedy: fmt.Sprintf("Let it lap by %s or more.", mm(l.Joint)),
	}}
}

// matchStars asks for match stars that stand clear and don't show.
func matchStars(m Measures, l Limits) []Finding {
	var found []Finding
	for _, s := range m.Sheet.Stars.Match {
		if s.Clear >= l.StarClear && s.Hidden {
			continue
		}
		text := fmt.Sprintf("A match star is %s from the nearest cut-out; %s is wanted.", mm(s.Clear), mm(l.StarClear))
		if s.Clear >= l.StarClear {
			text = "A match star stands where the seam doesn't cover its print."
		}
		found = append(found, Finding{
			Code: "star-match", Severity: Warning, Domain: OnSheet, At: s.At,
			Text: text, Remedy: "Narrow the field or let the seam hide more, so that the strip beside it has room.",
		})
	}
	return found
}
