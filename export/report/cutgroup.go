package report

import (
	"fmt"
	"strings"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

// A cutGroup is all that is cut with one method and tool: a layer of the cut drawing
// and a line of its legend.
type cutGroup struct {
	layer  export.Layer
	method bench.Method
	rack   bench.Rack
	tool   int         // in the rack; −1 for none
	size   geom.Length // of the tool that is lacking; 0 where it isn't or any blade will do
	passes []int       // of the plan
	count  int
}

// cutGroups puts the cut-outs of a sheet into groups in the order of the work: the
// marks of a layer follow each other as the plan travels, so that a machine does.
func cutGroups(s setSheet, b repeat.BenchSheet) []cutGroup {
	type key struct {
		method bench.Method
		tool   int
		size   geom.Length
	}
	at := map[key]int{}
	taken := map[string]bool{}
	var groups []cutGroup
	for i, p := range b.Plan.Passes {
		if p.Stage == bench.Stars {
			continue
		}
		k := key{p.Method, p.Tool, p.Size}
		n, ok := at[k]
		if !ok {
			n = len(groups)
			at[k] = n
			groups = append(groups, cutGroup{
				layer:  export.Layer{Name: groupName(b.Assignment.Rack, p, taken), Pen: export.Pen{Colour: export.Black, Filled: true}},
				method: p.Method, rack: b.Assignment.Rack, tool: p.Tool, size: p.Size,
			})
		}
		g := &groups[n]
		g.passes, g.count = append(g.passes, i), g.count+p.Count
		for _, c := range p.Order {
			if shape := s.CutOuts[c].Shape; shape.Round() {
				g.layer.Discs = append(g.layer.Discs, shape.Disc)
			} else {
				g.layer.Outlines = append(g.layer.Outlines, shape.Outline)
			}
		}
	}
	return groups
}

// groupName is "cut", the method and the tool's own number, or the size where there
// is no tool; what a layer's name may not hold becomes an underscore. No two names
// are the same.
func groupName(r bench.Rack, p bench.Pass, taken map[string]bool) string {
	name := "cut-" + string(p.Method)
	if t, ok := r.Tool(p.Tool); ok {
		name += "-" + plainName(t.Number)
	} else if p.Size > 0 {
		name += "-" + sizeName(p.Size)
	}
	whole := name
	for n := 2; taken[strings.ToLower(whole)]; n++ {
		whole = fmt.Sprintf("%s-%d", name, n)
	}
	taken[strings.ToLower(whole)] = true
	return whole
}

// plainName keeps letters a to z, digits and hyphens of up to 30 letters.
func plainName(s string) string {
	var b strings.Builder
	for i, r := range []rune(s) {
		if i == 30 {
			break
		}
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			b.WriteRune(r)
		} else {
			b.WriteByte('_')
		}
	}
	return b.String()
}

// sizeName writes a diameter for a layer's name, with two decimals or as many as
// it needs; the point becomes an underscore, which every format allows.
func sizeName(d geom.Length) string {
	whole, decimals, _ := strings.Cut(d.String(), ".")
	for len(decimals) < 2 {
		decimals += "0"
	}
	return whole + "_" + decimals + "mm"
}

// toolNumber is a tool's own number; one of digits alone says that it is one.
func (f figures) toolNumber(t bench.Tool) string {
	if strings.Trim(t.Number, "0123456789") == "" {
		return f.say("No. %s", t.Number)
	}
	return t.Number
}

// toolName names a tool of a rack as the cutter knows it, with its size; of a tool
// that is lacking the size that is wanted.
func (f figures) toolName(r bench.Rack, tool int, size geom.Length) string {
	t, ok := r.Tool(tool)
	switch {
	case ok && t.Kind == bench.Punch:
		return f.toolNumber(t)
	case ok:
		return f.lang.Join([]string{f.toolNumber(t), f.fine.plain(t.Size)})
	case size > 0:
		return f.say("of %s, not named in the rack", f.fine.plain(size))
	}
	return f.say("not named in the rack")
}
