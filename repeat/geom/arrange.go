package geom

import "slices"

// An arrangement is rings that meet, on a torus, ready to be snapped to the grid
// and parted into faces.
type arrangement struct {
	t     torus
	rings []Ring
	boxes []Box
	grid  *grid // of the boxes
	// hot[i] marks the segments of ring i, by their last point, that come near
	// another; the rest enters as runs. Where it is nil, all are hot.
	hot [][]bool
	in  []bool // which rings take part
	// The first so many rings are of the first layer, the others of the second.
	first int
}

// A layer says of which kind a ring is, by what it adds to the cover of the places
// inside it.
type layer int64

// A place is covered by how many rings go around it: first-layer ones are counted
// in the low half, second-layer ones in the high half.
const (
	firstLayer  layer = 1
	secondLayer layer = 1 << 32
)

func (a arrangement) layer(ring int32) layer {
	if int(ring) < a.first {
		return firstLayer
	}
	return secondLayer
}

// boundaries returns the lines around what is inside by how often rings go
// around it. Where there is no such line, covered says whether all is inside.
func (a arrangement) boundaries(inside func(cover layer) bool) (lines []Boundary, covered bool, err error) {
	var pieces []piece
	var runs []run
	for i, r := range a.rings {
		if a.in[i] {
			pieces, runs = appendPieces(pieces, runs, r, int32(i), a.hot[i])
		}
	}
	if len(pieces) == 0 {
		return nil, inside(0), nil
	}
	pieces, err = snapped(a.t, pieces)
	if err != nil {
		return nil, false, err
	}
	from := make([]int32, len(a.rings)+1) // ring i has pieces[from[i]:from[i+1]]
	for _, p := range pieces {
		from[p.ring+1]++
	}
	for i := range a.rings {
		from[i+1] += from[i]
	}
	base := func(v Point) layer {
		n := layer(0)
		a.grid.near(v, func(i int32, shift Point) {
			if from[i] == from[i+1] {
				return
			}
			if at := v.Add(shift); a.boxes[i].Grown(Snap).Holds(at) {
				n += a.layer(i) * layer(winding(pieces[from[i]:from[i+1]], runs, at))
			}
		})
		return n
	}
	f := newFaces(newEdges(a.t, pieces, runs, a.layer), base)
	if lines = f.boundaries(inside); len(lines) == 0 {
		covered = inside(base(pieces[0].a))
	}
	return lines, covered, nil
}

// shortRun is the length below which a run is not worth being one.
const shortRun = 3

// appendPieces appends the hot segments of r as straight pieces and the others
// as runs. Segment k ends at point k.
func appendPieces(pieces []piece, runs []run, r Ring, ring int32, hot []bool) ([]piece, []run) {
	n := len(r)
	first := slices.Index(hot, true) // one to start at, so that no run goes over the end
	if hot != nil && first < 0 {
		runs = append(runs, run{r, 0, n})
		return append(pieces, piece{a: r[0], b: r[0], ring: ring, run: int32(len(runs))}), runs
	}
	first = max(first, 0)
	for k := first; k < first+n; {
		end := k
		for hot != nil && end < first+n && !hot[end%n] {
			end++
		}
		if end-k >= shortRun {
			c := run{r, k - 1 + n, end - 1 + n}
			runs = append(runs, c)
			pieces = append(pieces, piece{a: c.at(c.from), b: c.at(c.to), ring: ring, run: int32(len(runs))})
			k = end
			continue
		}
		for end = max(end, k+1); k < end; k++ {
			pieces = append(pieces, piece{a: r[(k+n-1)%n], b: r[k%n], ring: ring, fresh: true})
		}
	}
	return pieces, runs
}
