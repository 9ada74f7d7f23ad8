package stencil

import (
	"slices"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// spareReach is how much farther than a report asks webs are kept, as the usual
// spacing, and with it what is asked, changes with the count.
const spareReach = 1.05

// webGridOf returns the grid of discs with their webs up to spareReach times reach,
// or nil where some touch or are too unlike, or the cell is too small.
func webGridOf(f *frame, holes []keptHole, reach float64) *webGrid {
	g := &webGrid{reach: spareReach * reach, least: holes[0].r, most: holes[0].r}
	for _, h := range holes {
		g.least, g.most = min(g.least, h.r), max(g.most, h.r)
	}
	g.mesh = f.meshOf((2*g.most+g.reach)/2, len(holes))
	if !g.roomy() {
		return nil
	}
	g.pages = make([]*webPage, (g.nu*g.nv+partsOfPage-1)/partsOfPage)
	for i := range g.pages {
		g.pages[i] = &webPage{}
	}
	for _, h := range holes {
		p := g.part(g.mesh.part(h.c))
		p.holes = append(p.holes, h)
	}
	var touched [workers]bool
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() { touched[k] = !g.search(g.pages[k*len(g.pages)/workers : (k+1)*len(g.pages)/workers]) })
	}
	wait.Wait()
	if slices.Contains(touched[:], true) {
		return nil
	}
	return g
}

// search finds the webs of some of the pages; it reports false where discs touch.
func (g *webGrid) search(pages []*webPage) bool {
	var near []keptHole
	for _, page := range pages {
		for i := range page.parts {
			p, ok := &page.parts[i], true
			for _, h := range p.holes {
				if p.webs, ok = g.from(h, nil, p.webs, &near); !ok {
					return false
				}
			}
		}
		page.settle()
	}
	return true
}

// A webChange is what an edit did to the webs of a grid.
type webChange struct {
	about chosenIDs // both ends of every web that went or came are among them
	come  []keptWeb
}

// edited returns the grid with some discs gone and others come. Only a web both ends
// of which are within reach of a changed disc can end on it or have it in its circle,
// so those are dropped and sought again. It returns nil where discs would touch or
// be too unlike.
func (g *webGrid) edited(gone, come []keptHole) (*webGrid, webChange) {
	next := *g
	next.pages = slices.Clone(g.pages)
	d := gridDraft{webGrid: &next, old: g}
	about := d.reached(gone, come)
	c := webChange{about: idsOf(about)}
	for _, h := range about {
		d.drop(h, c.about)
	}
	for _, h := range gone {
		p := d.own(d.mesh.part(h.c))
		p.holes = slices.DeleteFunc(slices.Clone(p.holes), func(o keptHole) bool { return o.id == h.id })
	}
	for _, h := range come {
		next.least, next.most = min(next.least, h.r), max(next.most, h.r)
		p := d.own(d.mesh.part(h.c))
		p.holes = append(slices.Clip(p.holes), h)
	}
	if !next.roomy() || !d.seek(after(about, gone, come), &c) {
		return nil, webChange{}
	}
	for _, i := range d.owned {
		d.pages[i].settle()
	}
	return &next, c
}

// A gridDraft is a grid that is being made from an old one: its own pages may be
// written to.
type gridDraft struct {
	*webGrid
	old   *webGrid
	owned []int
}

// own returns a part that may be written to.
func (d *gridDraft) own(i int) *webPart {
	if n := i / partsOfPage; d.pages[n] == d.old.pages[n] {
		page := *d.pages[n]
		d.pages[n], d.owned = &page, append(d.owned, n)
	}
	return d.part(i)
}

// reached returns the old discs within reach of what is gone or has come, those
// among them, each at home, by ID.
func (d *gridDraft) reached(gone, come []keptHole) []keptHole {
	all := slices.Concat(gone, come)
	for _, changed := range [][]keptHole{gone, come} {
		for _, h := range changed {
			from := len(all)
			all = d.old.about(all, h.c, h.r+d.reach+2*grain)
			for i := range all[from:] {
				all[from+i].c = d.home(all[from+i].drawn)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b keptHole) int { return int(a.id - b.id) })
	return slices.CompactFunc(all, func(a, b keptHole) bool { return a.id == b.id && a.drawn == b.drawn })
}

func idsOf(holes []keptHole) chosenIDs {
	ids := make(chosenIDs, len(holes))
	for i, h := range holes {
		ids[i] = h.id
	}
	return slices.Compact(ids)
}

// after returns the discs about an edit as they are after it.
func after(about, gone, come []keptHole) []keptHole {
	left := make([]keptHole, 0, len(about))
	for _, h := range about {
		same := func(o keptHole) bool { return o.id == h.id }
		if !slices.ContainsFunc(gone, same) && !slices.ContainsFunc(come, same) {
			left = append(left, h)
		}
	}
	return append(left, come...)
}

// drop takes away the webs of a disc that end on chosen ones.
func (d *gridDraft) drop(h keptHole, chosen chosenIDs) {
	ends := func(w keptWeb) bool { return w.a == h.id && chosen.has(w.b) }
	i := d.mesh.part(h.c)
	if slices.ContainsFunc(d.part(i).webs, ends) {
		p := d.own(i)
		p.webs = slices.DeleteFunc(slices.Clone(p.webs), ends)
	}
}

// seek finds the webs between discs about an edit; it reports false where two touch.
func (d *gridDraft) seek(discs []keptHole, c *webChange) bool {
	var near []keptHole
	for _, h := range discs {
		from, ok := len(c.come), true
		if c.come, ok = d.from(h, c.about, c.come, &near); !ok {
			return false
		}
		if found := c.come[from:]; len(found) > 0 {
			p := d.own(d.mesh.part(h.c))
			p.webs = append(slices.Clip(p.webs), found...)
		}
	}
	return true
}

// keptHoles returns discs as a grid keeps them, and whether all motifs are discs.
func keptHoles(f *frame, l pattern.Lattice, motifs []pattern.Motif) ([]keptHole, bool) {
	holes := make([]keptHole, len(motifs))
	for i, c := range (pattern.Unit{Lattice: l, Motifs: motifs}).CutOuts() {
		if !c.Shape.Round() {
			return nil, false
		}
		at := placeOf(c.Shape.Disc.Centre)
		holes[i] = keptHole{f.home(at), float64(c.Shape.Disc.Diameter) / 2, at, c.Motif}
	}
	return holes, true
}

// discEnds returns the ends of a web from a disc about at, the way d to the centre
// of the other being l long.
func discEnds(at, d place, l, ra, rb float64) (p, q place) {
	u := d.times(1 / l)
	return at.add(u.times(ra)), at.add(d).sub(u.times(rb))
}

// webCircle returns the circle over the web of two discs, told from the centre of
// the first, the way d to the other being l long: the same wherever they stand.
func webCircle(d place, l, gap, ra, rb float64) circle {
	return circle{
		m: d.times((ra + gap/2) / l), p: d.times(ra / l), q: d.times((l - rb) / l),
		half: max(gap, 0) / 2,
	}
}

// report tells the webs below reach. below is those below the limit, the narrowest
// first.
func (g *webGrid) report(limit geom.Length, below []Web, reach float64) (WebReport, bool) {
	least, found := g.narrowest()
	if !found || least.width >= reach {
		return WebReport{}, false
	}
	return WebReport{Limit: limit, Narrowest: least.web(), Found: true, Below: below, grid: g, reach: reach}, true
}
