package report

import (
	"fmt"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/stencil"
)

// writeHold writes what was measured on ties and on the sheets of a split;
// nothing for a design that is held as it is drawn.
func writeHold(b *strings.Builder, w repeat.Work, f figures) {
	hold := w.Order.Sheet.Hold
	if hold.Way == stencil.AsDrawn {
		return
	}
	set := w.Sheet.Set()
	for i, s := range set {
		name := f.say("The sheet")
		if len(set) > 1 {
			name = []string{f.say("The first sheet"), f.say("The second sheet")}[i]
		}
		web := f.say("no web")
		if s.Webs.Found {
			web = f.say("narrowest web %s", f.fine.with(s.Webs.Narrowest.Width))
		}
		fmt.Fprintln(b, f.say("%s: %s, open area %.2f %%, %s, %s and %s that fall out",
			name, f.count(len(s.CutOuts), "cut-out"), s.OpenPct, web, f.count(len(s.Paths.Islands), "island"), f.count(len(s.Paths.Bands), "band")))
		if n := len(s.Ties.Ties); n > 0 {
			lost := 0.0
			for _, t := range s.Ties.Ties {
				lost += t.LostMM2
			}
			fmt.Fprintln(b, "    "+f.say("%s in a unit for %s; their strips take %.3f mm² of it", f.count(n, "tie"), f.count(len(s.Ties.Islands), "island"), lost))
		}
	}
	if len(set) > 1 {
		c := w.Sheet.Cover
		fmt.Fprintln(b, f.say("Together, in place: %.4f mm² of a unit uncovered, %.4f mm² open beside the design", c.MissingMM2, c.ExtraMM2))
		for _, s := range w.Sheet.Stars.Match {
			if s.Sheet == 0 {
				fmt.Fprintln(b, f.say("Match star M: %s from the nearest cut-out", f.fine.with(s.Clear)))
			}
		}
	}
	b.WriteByte('\n')
}
