package check

import (
	"fmt"

	"tsugime/repeat/bench"
)

// Bench turns what the bench measured on one sheet into findings: tools that the
// rack lacks, and what a method is not trusted with. on names the sheet in a
// sentence, like " on the second sheet"; "" for one that does the work alone.
func Bench(a bench.Assignment, p bench.Plan, on string) []Finding {
	var found []Finding
	for _, e := range p.Exceeded {
		found = append(found, exceeded(e, on))
	}
	for _, m := range a.Missing {
		found = append(found, toolMissing(a.Rack, m, on))
	}
	return found
}

// exceeded is what lies beyond a limit of a method.
func exceeded(e bench.Excess, on string) Finding {
	switch e.What {
	case bench.PileSize:
		return Finding{
			Code: "bench-pile", Severity: Note, Domain: OnSheet,
			Text:   fmt.Sprintf("A pile of %d is asked for%s; %s is trusted with %d.", e.Pile, on, e.Limit.Method, e.Limit.Pile),
			Remedy: "Bind fewer sheets, or put a limit of your own into the rack.",
		}
	case bench.WebWidth:
		return Finding{
			Code: "bench-web", Severity: Note, Domain: OnUnit, At: e.At,
			Text:   fmt.Sprintf("A web of %s%s stands beside %s, which is trusted with %s.", mm(e.Got), on, e.Method, mm(e.Limit.Web)),
			Remedy: "Widen the web, name another method for the motif, or put a limit of your own into the rack.",
		}
	}
	are := "are"
	if e.Count == 1 {
		are = "is"
	}
	return Finding{
		Code: "bench-hole", Severity: Warning, Domain: OnSheet, At: e.At,
		Text: fmt.Sprintf("%s%s %s smaller than the %s that %s is trusted with; the smallest is %s.",
			plural(e.Count, "cut-out", "cut-outs"), on, are, mm(e.Limit.Hole), e.Method, mm(e.Got)),
		Remedy: "Make them larger, name another method, or put a limit of your own into the rack.",
	}
}

// toolMissing is a tool that the rack lacks. Where a knife does the work of a punch
// that isn't there it is worth knowing only.
func toolMissing(r bench.Rack, m bench.Missing, on string) Finding {
	holes := plural(m.Count, "cut-out", "cut-outs")
	if m.Motif == 0 {
		holes = plural(m.Count, "register hole", "register holes")
	}
	f := Finding{
		Code: "bench-tool", Severity: Warning, Domain: OnUnit,
		Text:   fmt.Sprintf("The rack lacks %s, for %s%s.", toolWanted(m), holes, on),
		Remedy: "Make the tool, enter it in the rack, or change what is drawn to a size that is there.",
	}
	if m.Kind == bench.Punch {
		f.Severity = Note
		f.Remedy = "A knife cuts them too; a punch would be worth making."
	}
	if t, ok := r.Tool(m.Nearest); ok && m.Kind != bench.Punch && t.Kind == m.Kind {
		f.Remedy = fmt.Sprintf("%s of %s comes nearest, off by %+.1f %%. %s", t.Number, mm(t.Size), m.Strain.Pct, f.Remedy)
	}
	return f
}

// toolWanted names a tool that would be made.
func toolWanted(m bench.Missing) string {
	switch m.Kind {
	case bench.Awl:
		return "an awl of " + mm(m.Size)
	case bench.Pair:
		return "a pair of blades " + mm(m.Size) + " apart"
	case bench.Punch:
		b := m.Outline.Bounds()
		return fmt.Sprintf("a punch of a shape of motif %d, %s × %s", m.Motif, mm(b.Width()), mm(b.Height()))
	}
	return "a knife"
}
