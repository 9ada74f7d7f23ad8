package cloth

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// Beyond ten panels so many ways are followed at once, and so many tried to
// reach a goal.
const (
	beamWidth   = 16
	beamOptions = 4
)

// A beamState is one way to have laid some panels.
type beamState struct {
	front front
	end   geom.Length // no laying that goes on from here ends before
	laid  []bool
	d     packed
}

// columns returns what the panels need of each lane at least.
func (p *packer) columns() front {
	var f front
	for i, l := range p.length {
		for c := p.lanes[i][0]; c < p.lanes[i][1]; c++ {
			f[c] += l
		}
	}
	return f
}

// beam lays many panels well, though not provably best: of all ways to lay k
// panels, those few are followed to k + 1 that leave the least cloth unused.
func (p *packer) beam(a []allowed, avoid []Span) (packed, geom.Length) {
	n := len(p.length)
	ways := []beamState{{laid: make([]bool, n), d: packed{nil, make([]geom.Length, n), make([]int8, n)}}}
	for range n {
		var next []beamState
		for _, w := range ways {
			for i := range n {
				if !w.laid[i] {
					next = append(next, p.further(w, i, a[i], avoid))
				}
			}
		}
		slices.SortStableFunc(next, func(a, b beamState) int {
			return cmp.Or(cmp.Compare(a.end, b.end), cmp.Compare(p.waste(a), p.waste(b)))
		})
		ways = next[:min(len(next), beamWidth)]
	}
	return ways[0].d, p.end(ways[0].front)
}

// further returns w once panel i is laid as well.
func (p *packer) further(w beamState, i int, a allowed, avoid []Span) beamState {
	y, turn := p.next(i, a, p.free(&w.front, i), avoid)
	next := beamState{front: p.laid(w.front, i, y), laid: slices.Clone(w.laid)}
	next.d = packed{append(slices.Clone(w.d.order), i), slices.Clone(w.d.y), slices.Clone(w.d.turn)}
	next.laid[i], next.d.y[i], next.d.turn[i] = true, y, turn
	rest := next.front
	for k, l := range p.length {
		if !next.laid[k] {
			for c := p.lanes[k][0]; c < p.lanes[k][1]; c++ {
				rest[c] += l
			}
		}
	}
	next.end = p.end(rest)
	return next
}

// waste returns how much of the lanes taken holds no panel.
func (p *packer) waste(w beamState) geom.Length {
	var waste geom.Length
	for c := range p.count {
		waste += w.front[c]
	}
	for i, laid := range w.laid {
		if laid {
			waste -= p.length[i] * geom.Length(p.lanes[i][1]-p.lanes[i][0])
		}
	}
	return waste
}
