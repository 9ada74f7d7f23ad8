package stencil

import (
	"math"
	"slices"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A contact is two cut-outs that may be nearer to each other than geom.Touch:
// cut-out j, moved by shift, to cut-out i. Of discs it is certain.
type contact struct {
	i, j  int
	shift geom.Point
}

// contacts returns the contacts among the cut-outs and their copies.
func contacts(cuts []pattern.CutOut, periods []geom.Point) ([]contact, error) {
	if len(periods) == 2 && periods[0].Cross(periods[1]) != 0 {
		if s := fieldScene(cuts, float64(geom.Touch)+2*grain, periods); s != nil {
			return s.contacts(), nil
		}
	}
	boxes := make([]geom.Box, len(cuts))
	for i, c := range cuts {
		boxes[i] = c.Shape.Bounds().Grown(geom.Touch)
	}
	var near []contact
	err := geom.Pairs(boxes, func(i, j int, shift geom.Point) {
		c, d := cuts[i].Shape, cuts[j].Shape
		if c.Round() && d.Round() && discGap(c.Disc, d.Disc, shift) > float64(geom.Touch) {
			return
		}
		near = append(near, contact{i, j, shift})
	}, periods...)
	return near, err
}

// contacts returns those of a field of discs, row by row.
func (s *scene) contacts() []contact {
	g := s.field
	var parts [workers][]contact
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			for row := k * g.nv / workers; row < (k+1)*g.nv/workers; row++ {
				g.ahead(row, float64(geom.Touch)+2*grain, func(h, o int32, d place, _ float64) {
					i, j := int(g.holes[h].cut), int(g.holes[o].cut)
					if i > j {
						i, j, d = j, i, d.times(-1)
					}
					c, e := s.cuts[i].Shape.Disc, s.cuts[j].Shape.Disc
					shift := d.point().Sub(e.Centre.Sub(c.Centre))
					if discGap(c, e, shift) <= float64(geom.Touch) {
						parts[k] = append(parts[k], contact{i, j, shift})
					}
				})
			}
		})
	}
	wait.Wait()
	return slices.Concat(parts[:]...)
}

// discGap returns the gap between c and d moved by shift in nanometres, negative
// where they overlap.
func discGap(c, d geom.Disc, shift geom.Point) float64 {
	return d.Centre.Add(shift).Sub(c.Centre).Norm() - float64(c.Diameter+d.Diameter)/2
}

// bridges returns small shapes that close the gaps of contacts which are too
// narrow to hold but too wide for their straight pieces to meet.
func bridges(cuts []pattern.CutOut, shapes [][]geom.Ring, near []contact) [][]geom.Ring {
	var all [][]geom.Ring
	for _, n := range near {
		c, d := cuts[n.i].Shape, cuts[n.j].Shape
		if c.Round() && d.Round() {
			gap := discGap(c.Disc, d.Disc, n.shift)
			if gap > -2*float64(geom.Touch) && c.Disc.Centre != d.Disc.Centre.Add(n.shift) {
				all = append(all, []geom.Ring{discBridge(c.Disc, d.Disc, n.shift)})
			}
			continue
		}
		if n.i != n.j || n.shift != (geom.Point{}) {
			moved := make([]geom.Ring, len(shapes[n.j]))
			for k, r := range shapes[n.j] {
				moved[k] = r.Moved(n.shift)
			}
			all = append(all, ringBridges(shapes[n.i], moved)...)
			all = append(all, ringBridges(moved, shapes[n.i])...)
		}
	}
	return all
}

// discBridge returns the strip between the rims of c and d, twice geom.Touch wide
// and reaching as far into each.
func discBridge(c, d geom.Disc, shift geom.Point) geom.Ring {
	way := d.Centre.Add(shift).Sub(c.Centre)
	l := way.Norm()
	ux, uy := float64(way.X)/l, float64(way.Y)/l
	wide := float64(geom.Touch)
	from := float64(c.Diameter)/2 - math.Min(2*wide, float64(c.Diameter)/4)
	to := l - float64(d.Diameter)/2 + math.Min(2*wide, float64(d.Diameter)/4)
	at := func(along, across float64) geom.Point {
		return c.Centre.Add(geom.Point{
			X: geom.Length(math.Round(along*ux - across*uy)),
			Y: geom.Length(math.Round(along*uy + across*ux)),
		})
	}
	return geom.Ring{at(from, -wide), at(to, -wide), at(to, wide), at(from, wide)}
}

// ringBridges returns a square around each point of the one set of rings that is
// within geom.Touch of the other.
func ringBridges(points, lines []geom.Ring) [][]geom.Ring {
	var at geom.Box
	for _, r := range points {
		at = at.Union(r.Bounds().Grown(geom.Touch))
	}
	var ends [][2]geom.Point
	var boxes []geom.Box
	for _, r := range lines {
		for i, b := range r {
			a := r[(i+len(r)-1)%len(r)]
			if box := geom.BoxOf(a, b).Grown(geom.Touch); box.Meets(at) {
				ends, boxes = append(ends, [2]geom.Point{a, b}), append(boxes, box)
			}
		}
	}
	if len(ends) == 0 {
		return nil
	}
	index := geom.NewIndex(boxes)
	var all [][]geom.Ring
	for _, r := range points {
		for _, p := range r {
			index.Visit(geom.BoxOf(p), func(k int) bool {
				if segmentGap(p, ends[k][0], ends[k][1]) > float64(geom.Touch) {
					return true
				}
				all = append(all, []geom.Ring{square(p, 2*geom.Touch)})
				return false
			})
		}
	}
	return all
}

// segmentGap returns the distance from p to the segment ab in nanometres.
func segmentGap(p, a, b geom.Point) float64 {
	way, to := b.Sub(a), p.Sub(a)
	t := float64(way.Dot(to))
	l := float64(way.Dot(way))
	switch {
	case t <= 0:
		return to.Norm()
	case t >= l:
		return p.Sub(b).Norm()
	}
	return math.Abs(float64(way.Cross(to))) / math.Sqrt(l)
}

// square returns the upright square around p that reaches half to each side.
func square(p geom.Point, half geom.Length) geom.Ring {
	b := geom.BoxOf(p).Grown(half)
	return geom.Ring{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}
