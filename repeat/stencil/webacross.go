package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// AcrossJoint returns the narrowest web between the cut-outs of one placement
// and those of the next, which lies off by way. Its width is negative where
// round holes overlap and zero where outlines do.
func AcrossJoint(cuts []pattern.CutOut, way geom.Point) Web {
	least, first, second := gap{width: math.Inf(1)}, 0, 0
	if len(cuts) == 0 {
		return Web{}
	}
	here := around(cuts)
	for reach := float64(geom.Millimetre); ; reach *= 4 {
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
		if least.width <= reach || reach > float64(geom.Metre) {
			break
		}
	}
	return Web{
		P: place{least.px, least.py}.point(), Q: place{least.qx, least.qy}.point(),
		Width: geom.Length(math.Round(least.width)),
		A:     cuts[first].Motif, B: cuts[second].Motif,
	}
}

// moved returns the rim moved by d.
func (e rim) moved(d geom.Point) rim {
	x, y := float64(d.X), float64(d.Y)
	e.ax, e.ay, e.bx, e.by = e.ax+x, e.ay+y, e.bx+x, e.by+y
	return e
}
