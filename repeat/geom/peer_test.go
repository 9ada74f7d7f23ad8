//go:build geos

package geom

import (
	"runtime"

	"github.com/twpayne/go-geos"
)

// The peer is GEOS, the geometry engine of libgeos-dev, through its C interface.
// Its overlay works in floating point on other principles than ours (OverlayNG);
// whole nanometres are whole numbers to it.

// peerShape returns a shape of rings that don't cross: the first around, the
// others holes in it.
func peerShape(shape []Ring) *geos.Geom {
	rings := make([][][]float64, len(shape))
	for i, r := range shape {
		for k := range len(r) + 1 {
			p := r[k%len(r)]
			rings[i] = append(rings[i], []float64{float64(p.X), float64(p.Y)})
		}
	}
	return geos.NewPolygon(rings)
}

// peerSet returns the shapes as one collection, not yet united.
func peerSet(shapes [][]Ring) *geos.Geom {
	all := make([]*geos.Geom, len(shapes))
	for i, s := range shapes {
		all[i] = peerShape(s)
	}
	return geos.NewCollection(geos.TypeIDMultiPolygon, all)
}

// peerUnion returns what the shapes cover together.
func peerUnion(shapes [][]Ring) *geos.Geom { return peerSet(shapes).UnaryUnion() }

func peerMM2(g *geos.Geom) float64 {
	area := g.Area() / float64(Millimetre*Millimetre)
	runtime.KeepAlive(g)
	return area
}

// peerParts returns the areas of the parts of g, in square millimetres.
func peerParts(g *geos.Geom) []float64 {
	areas := make([]float64, g.NumGeometries())
	for i := range areas {
		areas[i] = peerMM2(g.Geometry(i))
	}
	runtime.KeepAlive(g)
	return areas
}
