package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A packState is one way to have laid a set of panels.
type packState struct {
	front front
	panel int8  // the last one laid
	prev  int32 // its state in the set without that panel
	turn  int8
	y     geom.Length
}

// fill finds the least cloth below best by dynamic programming over sets of
// panels: of two ways to lay a set the one is dropped that is no farther forward
// in any lane. It returns best where there is none, and the steps taken.
func (p *packer) fill(a []allowed, avoid []Span, best geom.Length) (used geom.Length, work int) {
	n := len(p.length)
	for i := range p.sets {
		p.sets[i] = p.sets[i][:0]
	}
	p.sets[0] = append(p.sets[0], packState{panel: -1})
	twin := p.twins(a)
	full := len(p.sets) - 1
	for set := range full {
		for k := range p.sets[set] {
			at := &p.sets[set][k]
			for i := range n {
				if set>>i&1 == 1 || twin[i] >= 0 && set>>twin[i]&1 == 0 {
					continue
				}
				work++
				y, turn := p.next(i, a[i], p.free(&at.front, i), avoid)
				f := p.laid(at.front, i, y)
				to := set | 1<<i
				if p.under(&f, to, avoid, best) {
					p.keep(to, packState{front: f, panel: int8(i), prev: int32(k), turn: turn, y: y})
				}
			}
		}
	}
	for _, s := range p.sets[full] {
		best = min(best, p.end(s.front))
	}
	return best, work
}

// twins returns, by panel, an earlier one that might as well lie in its place and
// is laid first; −1 where there is none.
func (p *packer) twins(a []allowed) []int {
	twin := make([]int, len(a))
	for i := range a {
		twin[i] = -1
		for j := range i {
			if a[i].windows == nil && a[j].windows == nil && a[i].turn == a[j].turn && p.length[i] == p.length[j] &&
				p.lanes[i] == p.lanes[j] && p.seen[i] == p.seen[j] && p.turned[i] == p.turned[j] {
				twin[i] = j
			}
		}
	}
	return twin
}

// keep adds a state to a set unless one of its states is as good, and drops
// those that it beats.
func (p *packer) keep(set int, s packState) {
	states := p.sets[set]
	for k := range states {
		if p.before(&states[k].front, &s.front) {
			return
		}
	}
	// Nobody has gone on from here yet: sets are filled from small to large.
	states = slices.DeleteFunc(states, func(t packState) bool { return p.before(&s.front, &t.front) })
	p.sets[set] = append(states, s)
}

// last returns the best way that fill has found.
func (p *packer) last(used geom.Length) packed {
	n := len(p.length)
	d := packed{make([]int, n), make([]geom.Length, n), make([]int8, n)}
	set, at := len(p.sets)-1, 0
	for k, s := range p.sets[set] {
		if p.end(s.front) == used {
			at = k
			break
		}
	}
	for k := n - 1; k >= 0; k-- {
		s := p.sets[set][at]
		i := int(s.panel)
		d.order[k], d.y[i], d.turn[i] = i, s.y, s.turn
		set, at = set&^(1<<i), int(s.prev)
	}
	return d
}
