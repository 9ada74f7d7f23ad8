package stencil

import (
	"math"
	"slices"
	"sync"

	"tsugime/repeat/geom"
)

// A discField holds discs of like size by the part of the cell their centres are
// in, with the copies that stand around the cell out to the farthest search: no
// search has to wrap.
type discField struct {
	mesh
	holes  []hole // part by part, copies among them
	start  []int32
	margin int // parts that the field goes on beyond the cell, where it wraps
	wide   int // parts in a row
	most   float64
}

// manyCopies is how many copies a disc of the cell may have in a field; where the
// search goes over many periods there would be more, and it wraps instead.
const manyCopies = 12

// discField returns the field of discs for searches up to reach from rim to rim,
// or nil where the discs are too unlike or the cell is too small for one.
func (f *frame) discField(holes []hole, reach float64) *discField {
	if len(holes) == 0 || !f.wrapA || !f.wrapB {
		return nil
	}
	least := math.Inf(1)
	g := &discField{}
	for _, h := range holes {
		least, g.most = min(least, h.r), max(g.most, h.r)
	}
	if g.most > like*max(least, 1) {
		return nil
	}
	far := 2*g.most + reach + 4*grain
	g.mesh = f.meshOf(max(far/2, 0.7*math.Sqrt(f.det/float64(len(holes)))), len(holes))
	g.margin = int(math.Ceil(max(far/f.tallA*float64(g.nu), far/f.tallB*float64(g.nv)))) + 1
	g.wide = g.nu + 2*g.margin
	tall := g.nv + 2*g.margin
	if float64(g.wide)*float64(tall) > manyCopies*float64(g.nu)*float64(g.nv) {
		return nil
	}
	g.fill(holes, tall)
	return g
}

// fill sorts the discs and their copies into parts: count, sum up, place.
func (g *discField) fill(holes []hole, tall int) {
	g.start = make([]int32, g.wide*tall+1)
	at := make([][2]int32, len(holes))
	for i, h := range holes {
		part := g.part(h.c)
		at[i] = [2]int32{int32(part % g.nu), int32(part / g.nu)}
		g.copies(at[i], func(part int, _, _ int) { g.start[part+1]++ })
	}
	for i := 1; i < len(g.start); i++ {
		g.start[i] += g.start[i-1]
	}
	next := slices.Clone(g.start)
	g.holes = make([]hole, g.start[len(g.start)-1])
	for i, h := range holes {
		g.copies(at[i], func(part int, m, n int) {
			c := h
			if m != 0 || n != 0 {
				c.c = h.c.add(g.shift(m, n))
			}
			g.holes[next[part]] = c
			next[part]++
		})
	}
}

// copies tells the parts in which a disc of the given part of the cell stands, and
// by how many periods it is moved there.
func (g *discField) copies(at [2]int32, tell func(part int, m, n int)) {
	i, j := int(at[0])+g.margin, int(at[1])+g.margin
	tall := g.nv + 2*g.margin
	for y, n := j-j/g.nv*g.nv, -(j / g.nv); y < tall; y, n = y+g.nv, n+1 {
		for x, m := i-i/g.nu*g.nu, -(i / g.nu); x < g.wide; x, m = x+g.nu, m+1 {
			tell(y*g.wide+x, m, n)
		}
	}
}

// rows calls found with the discs of the parts that meet the box of the circle, row
// by row; it stops when found returns false.
func (g *discField) rows(p place, radius float64, found func(lo, hi int32) bool) {
	w := g.within(p, radius)
	for j := w.j0; j <= w.j1; j++ {
		row := (j+g.margin)*g.wide + g.margin
		if !found(g.start[row+w.i0], g.start[row+w.i1+1]) {
			return
		}
	}
}

// ahead calls found with every two discs whose rims are less than reach apart, or
// hardly more, each two once: those of the parts of row j in turn, and what stands after them.
func (g *discField) ahead(j int, reach float64, found func(h, o int32, d place, l float64)) {
	far := 2*g.most + reach + grain
	di, dj := int(math.Ceil(far/g.tallA*float64(g.nu))), int(math.Ceil(far/g.tallB*float64(g.nv)))
	for i := range g.nu {
		part := (j+g.margin)*g.wide + g.margin + i
		for h := g.start[part]; h < g.start[part+1]; h++ {
			c := g.holes[h]
			lo, hi := h+1, g.start[part+di+1]
			for y := 1; ; y++ {
				for o := lo; o < hi; o++ {
					b := &g.holes[o]
					dx, dy := b.c.x-c.c.x, b.c.y-c.c.y
					l2, most := float64(dx*dx)+float64(dy*dy), c.r+b.r+reach+grain
					if l2 < most*most {
						found(h, o, place{dx, dy}, math.Sqrt(l2))
					}
				}
				if y > dj {
					break
				}
				lo, hi = g.start[part+y*g.wide-di], g.start[part+y*g.wide+di+1]
			}
		}
	}
}

// A tally is the webs of a field: the widths of all, and those below the limit and
// the narrowest as they lie.
type tally struct {
	widths  []geom.Length
	below   []link
	least   link
	found   bool
	doubled bool // two discs lie on one another
}

// tallied returns every web up to reach of a scene of discs that has a field. Of
// most webs the width is all that is kept, which is what makes it fast.
func (s *scene) tallied(limit geom.Length, reach float64) tally {
	var parts [workers]tally
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			t := &parts[k]
			for j := k * s.field.nv / workers; j < (k+1)*s.field.nv/workers; j++ {
				s.tallyRow(t, j, float64(limit), reach)
			}
			t.widths = ascending(t.widths)
		})
	}
	wait.Wait()
	all := parts[0]
	for _, t := range parts[1:] {
		all.widths = merged(all.widths, t.widths)
		all.below = append(all.below, t.below...)
		all.doubled = all.doubled || t.doubled
		if t.found && (!all.found || narrower(t.least, all.least) < 0) {
			all.least, all.found = t.least, true
		}
	}
	return all
}

func (s *scene) tallyRow(t *tally, j int, limit, reach float64) {
	g := s.field
	g.ahead(j, reach, func(h, o int32, d place, l float64) {
		a, b := g.holes[h], g.holes[o]
		if a.cut > b.cut || a.cut == b.cut && !(place{}).less(d) {
			a, b, d = b, a, place{-d.x, -d.y}
		}
		gap := l - a.r - b.r
		if gap < -grain || gap >= reach || l == 0 {
			t.doubled = t.doubled || l == 0
			return
		}
		if !g.clear(a.c, webCircle(d, l, gap, a.r, b.r), h, o) {
			return
		}
		width := max(gap, 0)
		rounded := geom.Length(math.Round(width))
		t.widths = append(t.widths, rounded)
		if rounded < geom.Length(limit) || !t.found || width <= t.least.width {
			lk := s.discLink(a.cut, b.cut, a.r, b.r, d, l)
			if rounded < geom.Length(limit) {
				t.below = append(t.below, lk)
			}
			if !t.found || narrower(lk, t.least) < 0 {
				t.least, t.found = lk, true
			}
		}
	})
}

// clear reports whether the circle over a web of the discs h and o holds no other.
// The circle is told from the centre at of one of them.
func (g *discField) clear(at place, c circle, h, o int32) bool {
	free := true
	g.rows(at.add(c.m), c.half+g.most+grain, func(lo, hi int32) bool {
		for k := lo; k < hi && free; k++ {
			b := &g.holes[k]
			dx, dy := b.c.x-at.x-c.m.x, b.c.y-at.y-c.m.y
			out := b.r + c.half + grain
			if dx*dx+dy*dy < out*out && k != h && k != o {
				free = !c.meetsHole(hole{c: b.c.sub(at), r: b.r})
			}
		}
		return free
	})
	return free
}

// discLink returns the web from disc a, where it is drawn, to disc b, the way from
// centre to centre being d, l long.
func (s *scene) discLink(a, b int32, ra, rb float64, d place, l float64) link {
	at := s.centre(a)
	p, q := discEnds(at, d, l, ra, rb)
	return link{p, q, max(l-ra-rb, 0), a, b, -1, -1, at.add(d).sub(s.centre(b))}
}

// ascending sorts lengths that are not negative, eleven bits at a time from the
// lowest.
func ascending(all []geom.Length) []geom.Length {
	const bits = 11
	most := geom.Length(0)
	for _, l := range all {
		most = max(most, l)
	}
	other := make([]geom.Length, len(all))
	for shift := 0; most>>shift > 0; shift += bits {
		var start [1<<bits + 1]int
		for _, l := range all {
			start[l>>shift&(1<<bits-1)+1]++
		}
		for i := 1; i < len(start); i++ {
			start[i] += start[i-1]
		}
		for _, l := range all {
			at := &start[l>>shift&(1<<bits-1)]
			other[*at] = l
			*at++
		}
		all, other = other, all
	}
	return all
}

// merged returns two ascending lists as one.
func merged(a, b []geom.Length) []geom.Length {
	all := make([]geom.Length, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if b[0] < a[0] {
			all, b = append(all, b[0]), b[1:]
		} else {
			all, a = append(all, a[0]), a[1:]
		}
	}
	return append(append(all, a...), b...)
}
