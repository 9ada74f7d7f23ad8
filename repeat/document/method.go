package document

import (
	"fmt"
	"maps"

	"tsugime/repeat/bench"
	"tsugime/repeat/pattern"
)

// SetMethod lets the cutter name the method that motifs are cut by, with all their
// copies; "" lets the bench choose again.
func SetMethod(o Order, m bench.Method, ids ...pattern.ID) (Order, error) {
	if _, err := chosen(o, ids); err != nil {
		return o, err
	}
	next := o
	next.Methods = maps.Clone(o.Methods)
	if next.Methods == nil {
		next.Methods = bench.Overrides{}
	}
	for _, id := range ids {
		if m == "" {
			delete(next.Methods, id)
		} else {
			next.Methods[id] = m
		}
	}
	return o.checked(next)
}

// OwnTools returns the order's own round punches as tools of a rack.
func (o Order) OwnTools() []bench.Tool {
	var tools []bench.Tool
	for _, p := range o.Rack {
		tools = append(tools, bench.Tool{Kind: bench.Awl, Number: p.Name, Size: p.Diameter})
	}
	return tools
}

// checkMethods refuses what is no method.
func checkMethods(o Order) *Fault {
	if len(o.Methods) == 0 {
		return nil
	}
	for i, motif := range o.Unit.Motifs {
		if m, named := o.Methods[motif.ID]; named && !m.Known() {
			return faultf(fmt.Sprintf("unit.motifs[%d].method", i), "there is no method %.40q; give one of %q", m, bench.Methods())
		}
	}
	return nil
}
