package check

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// underPatterns reports the bands and rows that show only when many units are
// joined: the most visible by its measures, the rest by their number.
func underPatterns(m Measures, _ Limits) []Finding {
	if len(m.Under.Found) == 0 {
		return nil
	}
	worst := m.Under.Found[0]
	text := fmt.Sprintf("Seen from %s, the joined units show %ss %s apart that run %s: contrast %s %%, %s times what the eye sees.",
		mm(m.Under.Look.Distance), worst.Kind, mm(worst.Period), running(worst.DirectionDeg), roughly(worst.ContrastPct), roughly(worst.SeenTimes))
	if more := len(m.Under.Found) - 1 + m.Under.More; more > 0 {
		text += fmt.Sprintf(" %s less visible.", plural(more, "other is", "others are"))
	}
	return []Finding{{
		Code: "under-pattern", Severity: Warning, Domain: OnUnit, At: geom.Point{},
		Text:   text,
		Remedy: "Even out the sizes and places of the motifs along this line, fill gaps, or shift rows until the bands are gone; look at many copies from a step back.",
	}}
}

// roughly writes a number to two digits, large ones whole.
func roughly(v float64) string {
	if v >= 100 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.2g", v)
}

// running says which way a line runs; angles are clockwise on the sheet.
func running(deg float64) string {
	switch near := math.Round(deg*10) / 10; near {
	case 0, 180:
		return "across"
	case 90:
		return "along the bolt"
	default:
		return fmt.Sprintf("at %g° clockwise from across", near)
	}
}
