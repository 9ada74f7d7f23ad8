package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A keptHole is a disc with its motif: at home in the cell, or where it is met.
type keptHole struct {
	c     place
	r     float64
	drawn place // where its cut-out is drawn
	id    pattern.ID
}

// A keptWeb is a web from p on disc a, where it is drawn, to q on disc b or a copy
// of it; a is the first in drawnOrder.
type keptWeb struct {
	p, q  place
	width float64
	a, b  pattern.ID
}

// narrower orders kept webs as narrower does links.
func (w keptWeb) narrower(o keptWeb) int {
	return cmp.Or(cmp.Compare(w.width, o.width),
		cmp.Compare(w.p.y+w.q.y, o.p.y+o.q.y), cmp.Compare(w.p.x+w.q.x, o.p.x+o.q.x),
		cmp.Compare(drawnOrder(w.a), drawnOrder(o.a)), cmp.Compare(drawnOrder(w.b), drawnOrder(o.b)))
}

func (w keptWeb) web() Web {
	return Web{P: w.p.point(), Q: w.q.point(), Width: w.rounded(), A: w.a, B: w.b}
}

func (w keptWeb) rounded() geom.Length { return geom.Length(math.Round(w.width)) }

// A webPart is the discs at home in a part of the cell and the webs that begin on
// them.
type webPart struct {
	holes []keptHole
	webs  []keptWeb
}

// partsOfPage is how many parts are copied where one of them changes.
const partsOfPage = 32

type webPage struct {
	parts [partsOfPage]webPart
	least keptWeb // the narrowest
	found bool    // least is one
}

// A webGrid holds discs of like size on a torus, none touching another, with every
// web between them up to reach. It never changes: an edit makes another grid that
// shares the pages it leaves as they are.
type webGrid struct {
	mesh
	pages       []*webPage
	reach       float64
	least, most float64 // no radius is smaller or larger
}

func (g *webGrid) part(i int) *webPart { return &g.pages[i/partsOfPage].parts[i%partsOfPage] }

// about appends the discs whose rims come within radius of p, each moved to where
// it is met.
func (g *webGrid) about(found []keptHole, p place, radius float64) []keptHole {
	w := g.within(p, radius+g.most)
	for j := w.j0; j <= w.j1; j++ {
		row, tv := wrap(j, g.nv)
		for i := w.i0; i <= w.i1; i++ {
			col, tu := wrap(i, g.nu)
			holes, by := g.part(row*g.nu+col).holes, g.shift(tu, tv)
			for k := range holes {
				c := holes[k].c.add(by)
				if d, m := c.sub(p), radius+holes[k].r; d.dot(d) < m*m {
					h := holes[k]
					h.c = c
					found = append(found, h)
				}
			}
		}
	}
	return found
}

// roomy reports whether the cell is so large that no search meets a disc twice and
// Webs has a field for it.
func (g *webGrid) roomy() bool {
	far := 2*g.most + g.reach + 4*grain
	return 8*far <= min(g.tallA, g.tallB) && g.most <= like*max(g.least, 1)
}

// from appends the webs from the disc h to discs after it among those chosen,
// nil choosing all. It reports false where h touches one of them.
func (g *webGrid) from(h keptHole, chosen chosenIDs, found []keptWeb, near *[]keptHole) ([]keptWeb, bool) {
	*near = g.about((*near)[:0], h.c, h.r+g.reach+2*grain)
	at := h.drawn
	for k, o := range *near {
		if drawnOrder(o.id) <= drawnOrder(h.id) || chosen != nil && !chosen.has(o.id) {
			continue
		}
		d := o.c.sub(h.c)
		l := d.norm()
		gap := l - h.r - o.r
		if gap <= float64(geom.Touch)+2*grain {
			return found, false
		}
		if gap >= g.reach || !clearAbout(webCircle(d, l, gap, h.r, o.r), h, *near, k) {
			continue
		}
		p, q := discEnds(at, d, l, h.r, o.r)
		found = append(found, keptWeb{p, q, gap, h.id, o.id})
	}
	return found, true
}

// clearAbout reports whether the circle over a web of h, told from its centre, holds
// none of the discs near but h and the partner.
func clearAbout(c circle, h keptHole, near []keptHole, partner int) bool {
	for k := range near {
		if k != partner && near[k].id != h.id && c.meetsHole(hole{c: near[k].c.sub(h.c), r: near[k].r}) {
			return false
		}
	}
	return true
}

// chosenIDs are IDs in ascending order.
type chosenIDs []pattern.ID

func (c chosenIDs) has(id pattern.ID) bool {
	_, ok := slices.BinarySearch(c, id)
	return ok
}

// settle finds the narrowest web of a page.
func (p *webPage) settle() {
	p.found = false
	for i := range p.parts {
		for _, w := range p.parts[i].webs {
			if !p.found || w.narrower(p.least) < 0 {
				p.least, p.found = w, true
			}
		}
	}
}

// narrowest returns the narrowest web of all.
func (g *webGrid) narrowest() (least keptWeb, found bool) {
	for _, p := range g.pages {
		if p.found && (!found || p.least.narrower(least) < 0) {
			least, found = p.least, true
		}
	}
	return least, found
}

// widths returns how wide the webs below reach are, ascending.
func (g *webGrid) widths(reach float64) []geom.Length {
	var all []geom.Length
	for _, p := range g.pages {
		for i := range p.parts {
			for _, w := range p.parts[i].webs {
				if w.width < reach {
					all = append(all, w.rounded())
				}
			}
		}
	}
	return ascending(all)
}
