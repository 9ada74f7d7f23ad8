package check

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// flaws looks for outlines that a knife can't follow as they are drawn. They are
// measured by the non-zero rule, which may not be what was meant.
func flaws(m Measures, _ Limits) []Finding {
	says := map[geom.Flaw]string{
		geom.Crossed: "cross, touch or run along themselves",
		geom.NoArea:  "have a line that encloses nothing",
	}
	var found []Finding
	for _, kind := range []geom.Flaw{geom.Crossed, geom.NoArea} {
		of := func(f stencil.Flaw) bool { return f.Kind == kind }
		i := slices.IndexFunc(m.Sheet.Flaws, of)
		if i < 0 {
			continue
		}
		motifs := make(map[pattern.ID]bool)
		for _, f := range m.Sheet.Flaws {
			if of(f) {
				motifs[f.Motif] = true
			}
		}
		first := m.Sheet.Flaws[i]
		found = append(found, Finding{
			Code: "outline-flaw", Severity: Warning, Domain: OnUnit, At: first.At,
			Text: fmt.Sprintf("The outlines of %s %s; the first is motif %d.",
				plural(len(motifs), "motif", "motifs"), says[kind], first.Motif),
			Remedy: "Draw the outline anew, so that no line of it meets another; what is measured now is what it covers.",
		})
	}
	return found
}
