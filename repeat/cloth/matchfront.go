package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A front is how far each lane of the cloth is taken.
type front [maxLanes]geom.Length

// laid returns f once panel i lies at y.
func (p *packer) laid(f front, i int, y geom.Length) front {
	for c := p.lanes[i][0]; c < p.lanes[i][1]; c++ {
		f[c] = y + p.length[i]
	}
	return f
}

// free returns how far all lanes of panel i are taken.
func (p *packer) free(f *front, i int) geom.Length {
	y := f[p.lanes[i][0]]
	for c := p.lanes[i][0] + 1; c < p.lanes[i][1]; c++ {
		y = max(y, f[c])
	}
	return y
}

// under reports whether f and what is still to be laid beside the set may end
// before best.
func (p *packer) under(f *front, set int, avoid []Span, best geom.Length) bool {
	rest := &p.rest[set]
	for c := range p.count {
		if f[c]+rest[c] >= best {
			return false
		}
	}
	for _, a := range avoid {
		for c := range p.count {
			if p.past(f[c], c, set, a) >= best {
				return false
			}
		}
	}
	return true
}

// past returns before what no laying that goes on from a front in lane c can end
// where a stretch is avoided: panels before it end where it begins, and what is
// left then starts where it ends.
func (p *packer) past(f geom.Length, c, set int, a Span) geom.Length {
	rest := p.rest[set][c]
	room := a.From + p.tail - f
	if room < 0 || rest <= room {
		return f + rest
	}
	sums := p.sums[p.inLane[c]&^set]
	k, ok := slices.BinarySearch(sums, room)
	if !ok {
		k--
	}
	return max(f+rest, a.To-p.head+rest-sums[k])
}

func (p *packer) end(f front) geom.Length { return slices.Max(f[:p.count]) }

// before reports whether f is no farther than g in any lane.
func (p *packer) before(f, g *front) bool {
	for c := range p.count {
		if f[c] > g[c] {
			return false
		}
	}
	return true
}
