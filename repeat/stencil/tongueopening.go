package stencil

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// An openings is what cut-outs open together.
type openings struct {
	region geom.Region // without the lone discs
	lone   []geom.Disc // discs that touch nothing
}

func openingsOf(cuts []pattern.CutOut, periods []geom.Point) (openings, error) {
	near, err := contacts(cuts, periods)
	if err != nil || len(near) == 0 && allRound(cuts) {
		return openings{}, err
	}
	meets := make([]bool, len(cuts))
	for _, c := range near {
		meets[c.i], meets[c.j] = true, true
	}
	var o openings
	shapes := make([][]geom.Ring, len(cuts))
	for i, c := range cuts {
		if c.Shape.Round() && !meets[i] {
			o.lone = append(o.lone, c.Shape.Disc)
			continue
		}
		shapes[i] = c.Shape.Rings(geom.Chord)
	}
	o.region, err = geom.Union(append(shapes, gapBridges(cuts, shapes, near)...), periods...)
	return o, err
}

// gapBridges returns small shapes that close the gaps of contacts, and leaves what
// overlaps or meets as it is.
func gapBridges(cuts []pattern.CutOut, shapes [][]geom.Ring, near []contact) [][]geom.Ring {
	var all [][]geom.Ring
	for _, n := range near {
		c, d := cuts[n.i].Shape, cuts[n.j].Shape
		if c.Round() && d.Round() {
			if discGap(c.Disc, d.Disc, n.shift) >= -2*float64(geom.Touch) {
				all = append(all, bridges(cuts, shapes, []contact{n})...)
			}
			continue
		}
		moved := make([]geom.Ring, len(shapes[n.j]))
		for k, r := range shapes[n.j] {
			moved[k] = r.Moved(n.shift)
		}
		for _, b := range bridges(cuts, shapes, []contact{n}) {
			if p := b[0].Bounds().Centre(); !covered(p, shapes[n.i]) || !covered(p, moved) {
				all = append(all, b)
			}
		}
	}
	return all
}

// covered reports whether p lies in rings or on them.
func covered(p geom.Point, rings []geom.Ring) bool {
	turns := 0
	for _, r := range rings {
		turns += r.Winding(p)
		for i, b := range r {
			if segmentGap(p, r[(i+len(r)-1)%len(r)], b) == 0 {
				return true
			}
		}
	}
	return turns != 0
}

// leaveOutHoles takes from the area of each neck's paper what is cut within it.
func (o openings) leaveOutHoles(found []neck, periods []geom.Point) error {
	var boxes []geom.Box
	for _, n := range found {
		boxes = append(boxes, n.paper().Bounds())
	}
	var places []geom.Point
	var areas []float64
	add := func(box geom.Box, at geom.Point, area float64) {
		boxes, places, areas = append(boxes, box), append(places, at), append(areas, area)
	}
	for _, b := range o.region.Boundaries {
		if b.Closed() {
			add(b.Bounds(), b.Points[0], b.Area2()/2)
		}
	}
	for _, d := range o.lone {
		add(d.Bounds(), d.Centre, d.AreaMM2()*float64(geom.Millimetre*geom.Millimetre))
	}
	return geom.Pairs(boxes, func(i, j int, shift geom.Point) {
		if i >= len(found) || j < len(found) {
			return
		}
		// The rim itself passes through the ends of the neck and is no hole.
		n, k := &found[i], j-len(found)
		if at := places[k].Add(shift); n.paper().Winding(at) != 0 && !n.onRim(at) {
			n.area -= areas[k]
		}
	}, periods...)
}
