package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// firstAcross is how far a web across the joint is looked for at first.
const firstAcross = geom.Millimetre

// AcrossJoint returns the narrowest web between the cut-outs of one placement
// and those of the next, which lies off by way. Its width is negative where
// round holes overlap and zero where outlines do.
func AcrossJoint(cuts []pattern.CutOut, way geom.Point) Web {
	if len(cuts) == 0 {
		return Web{}
	}
	boxes := make([]geom.Box, len(cuts))
	for i, c := range cuts {
		boxes[i] = c.Shape.Bounds()
	}
	index := geom.NewIndex(boxes)
	for reach := firstAcross; ; reach *= 4 {
		near := nearTheNext(index, boxes, way, reach)
		if web, ok := narrowestAcross(cuts, near, way, float64(reach)); ok || reach > geom.Metre {
			return web
		}
	}
}

// nearTheNext returns which cut-outs have one of the next placement within reach,
// or are within reach of one in the placement before, by their boxes.
func nearTheNext(index *geom.Index, boxes []geom.Box, way geom.Point, reach geom.Length) []int {
	near := make([]bool, len(boxes))
	for i, b := range boxes {
		index.Visit(b.Moved(way).Grown(reach), func(m int) bool {
			near[i], near[m] = true, true
			return true
		})
	}
	var which []int
	for i, is := range near {
		if is {
			which = append(which, i)
		}
	}
	return which
}

// narrowestAcross looks among the cut-outs that are near, and reports whether what
// it found is within reach, so that nothing farther can be narrower.
func narrowestAcross(all []pattern.CutOut, near []int, way geom.Point, reach float64) (Web, bool) {
	cuts := make([]pattern.CutOut, len(near))
	for k, i := range near {
		cuts[k] = all[i]
	}
	least, first, second := gap{width: math.Inf(1)}, 0, 0
	here := around(cuts)
	for i := range cuts {
		for k := here.first[i]; k < here.first[i+1]; k++ {
			e := here.rims[k].moved(way)
			box := boxAround(e.ax, e.ay, e.r+reach)
			if !e.round {
				box = box.Union(boxAround(e.bx, e.by, reach))
			}
			here.index.Visit(box, func(m int) bool {
				if g := between(here.rims[m], e); g.width < least.width {
					least, first, second = g, here.rims[m].item, i
				}
				return true
			})
		}
	}
	if len(cuts) == 0 || math.IsInf(least.width, 1) {
		return Web{}, false
	}
	return Web{
		P: place{least.px, least.py}.point(), Q: place{least.qx, least.qy}.point(),
		Width: geom.Length(math.Round(least.width)),
		A:     cuts[first].Motif, B: cuts[second].Motif,
	}, least.width <= reach
}

// moved returns the rim moved by d.
func (e rim) moved(d geom.Point) rim {
	x, y := float64(d.X), float64(d.Y)
	e.ax, e.ay, e.bx, e.by = e.ax+x, e.ay+y, e.bx+x, e.by+y
	return e
}
