package stencil

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A paperKept is what was measured on the plain pattern of discs that touch nothing:
// the open area is the sum of theirs, and no paper is loose.
type paperKept struct {
	webs   *webGrid
	limit  geom.Length
	narrow []keptWeb // those below the limit, the narrowest first
	report WebReport
	count  int
	cut    squares // of the diameters
}

// Bounds of what is kept: small units are measured as fast in full, and where many
// motifs are changed at once most is measured again.
const (
	leastKept  = 1000
	mostEdited = 200
)

// paperOf measures a unit, or returns nil where it is not one to keep.
func paperOf(u pattern.Unit, limit geom.Length) *paperKept {
	if len(u.Motifs) < leastKept {
		return nil
	}
	periods := []geom.Point{u.Lattice.A, u.Lattice.B}
	f := frameAround(nil, periods)
	holes, round := keptHoles(&f, u.Lattice, u.Motifs)
	if !round {
		return nil
	}
	p := &paperKept{limit: limit, count: len(holes)}
	reach := discReach(&f, limit, len(holes))
	if p.webs = webGridOf(&f, holes, reach); p.webs == nil {
		return nil
	}
	for _, h := range holes {
		p.cut = p.cut.plus(h.diameter())
	}
	for _, page := range p.webs.pages {
		for i := range page.parts {
			p.narrow = p.below(p.narrow, page.parts[i].webs)
		}
	}
	return p.reported(reach)
}

func (h keptHole) diameter() geom.Length { return geom.Length(2 * h.r) }

// below adds the webs below the limit in their order.
func (p *paperKept) below(narrow, webs []keptWeb) []keptWeb {
	for _, w := range webs {
		if w.rounded() < p.limit {
			narrow = append(narrow, w)
		}
	}
	return narrow
}

// reported returns p with its report, or nil where it has no web to tell.
func (p *paperKept) reported(reach float64) *paperKept {
	slices.SortFunc(p.narrow, keptWeb.narrower)
	var below []Web
	for _, w := range p.narrow {
		below = append(below, w.web())
	}
	var ok bool
	if p.report, ok = p.webs.report(p.limit, below, reach); !ok {
		return nil
	}
	return p
}

// edited returns what is measured after an edit, or nil where it must be measured in
// full.
func (p *paperKept) edited(e edit, l pattern.Lattice, limit geom.Length) *paperKept {
	if p == nil || p.limit != limit || len(e.gone)+len(e.come) > mostEdited {
		return nil
	}
	gone, _ := keptHoles(p.webs.frame, l, e.gone)
	come, round := keptHoles(p.webs.frame, l, e.come)
	if !round {
		return nil
	}
	return p.without(gone, come)
}

// without returns p with some discs gone and others come.
func (p *paperKept) without(gone, come []keptHole) *paperKept {
	next := &paperKept{limit: p.limit, narrow: p.narrow, count: p.count + len(come) - len(gone), cut: p.cut}
	reach := discReach(p.webs.frame, p.limit, next.count)
	if next.count < leastKept || reach > p.webs.reach {
		return nil
	}
	for _, h := range gone {
		next.cut = next.cut.minus(h.diameter())
	}
	for _, h := range come {
		next.cut = next.cut.plus(h.diameter())
	}
	var c webChange
	if next.webs, c = p.webs.edited(gone, come); next.webs == nil {
		return nil
	}
	went := func(w keptWeb) bool { return c.about.has(w.a) && c.about.has(w.b) }
	came := next.below(nil, c.come)
	if len(came) == 0 && !slices.ContainsFunc(p.narrow, went) {
		var ok bool
		if next.report, ok = next.webs.report(p.limit, p.report.Below, reach); !ok {
			return nil
		}
		return next
	}
	next.narrow = append(slices.DeleteFunc(slices.Clone(p.narrow), went), came...)
	return next.reported(reach)
}
