package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// waveScales: concentric arcs in overlapping scales, two rows to a tile.
var waveScales = Ground{
	Name: "wave-scales", Trade: "seigaiha",
	About: "Overlapping scales of concentric arcs, like waves of the sea.",
	Params: []Param{
		length("scale", "Scale", 2, 400, 24, "Width of a scale."),
		counted("arcs", "Arcs", 1, 20, 4, "How many arcs a scale has."),
		length("spacing", "Spacing", 0.1, 100, 2.6, "From one arc to the next, middle to middle."),
		lineParam(1.2), webParam(0.8),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("scale"), v.nm("scale") / 2 },
		count: func(v values, _ tile) float64 { return 2 * v["arcs"] },
		draw:  drawWaveScales,
		scale: "scale",
	},
}

func drawWaveScales(v values, t tile, _ *rand.Rand) ([]mark, error) {
	line, web, s := v.nm("line"), v.nm("web"), scaleOf(t)
	if v["arcs"] > 1 && v.nm("spacing") <= line {
		return nil, fmt.Errorf("arcs of %.3f mm leave no paper at a spacing of %.3f mm; make the spacing wider", line/1e6, v["spacing"])
	}
	margin := web
	if web == 0 {
		margin = -line / 2 // into the rim before it
	}
	var pieces []mark
	for k := range v.count("arcs") {
		r := s.radius - line - float64(k)*v.nm("spacing") // the inner side
		if r < line/2 {
			return nil, fmt.Errorf("%d arcs %.3f mm apart reach past the middle of a scale of %.3f mm; take fewer or closer ones",
				v.count("arcs"), v["spacing"], t.w/1e6)
		}
		half := math.Min(s.visible(r, margin), math.Min(s.visible(r+line/2, margin), s.visible(r+line, margin)))
		if 2*half*r < line {
			return nil, fmt.Errorf("arc %d has no room between the scales before it; take fewer arcs or a narrower web", k+1)
		}
		shape := band(r, r+line, -math.Pi/2-half, -math.Pi/2+half)
		pieces = append(pieces, boxed(0, 0, shape), boxed(t.w/2, t.h/2, shape))
	}
	return pieces, nil
}

// linkedCircles: circles that pass through their neighbours' middles; between two
// of them lies a petal. Four circles touch at each crossing.
var linkedCircles = Ground{
	Name: "linked-circles", Trade: "shippo",
	About: "Circles that each share a quarter with four others: petals and four-pointed stars.",
	Params: []Param{
		length("radius", "Radius", 1, 200, 8, "Radius of a circle."),
		chosen("figure", "Figure", "What is cut: the petals, or the circles as lines.", "petals", "lines"),
		lineParam(0.9), webParam(0.8),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return 2 * v.nm("radius"), 2 * v.nm("radius") },
		count: func(v values, _ tile) float64 { return 4 + 4*v["figure"] },
		draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
			if v["figure"] == 1 {
				return drawCircleLines(v, t)
			}
			return drawPetals(v, t)
		},
		scale: "radius",
	},
}

// drawPetals cuts what two neighbouring circles share, each made smaller by half a
// web, so that the tips of the four petals at a crossing stay a web apart. The
// petals of a tile lie around its centre, at a quarter of its sides.
func drawPetals(v values, t tile) ([]mark, error) {
	radius := math.Min(t.w, t.h) / 2
	small := radius - v.nm("web")/2
	// The tips stand where both smaller circles cross, half a chord from the middle.
	half := small*small - radius*radius/2
	if half <= 0 {
		return nil, fmt.Errorf("webs of %.3f mm leave no petal at a radius of %.3f mm; make the circle larger", v["web"], radius/1e6)
	}
	tip := math.Sqrt(half) / math.Sqrt2
	bulge := math.Tan(math.Asin(math.Sqrt(half)/small) / 2)
	petal := func(sign float64) geom.Shape {
		a, b := onGrid(-tip, sign*tip), onGrid(tip, -sign*tip)
		return geom.Shape{Outline: geom.Outline{{Start: a, Segments: []geom.Segment{
			{Kind: geom.Arc, End: b, Bulge: bulge}, {Kind: geom.Arc, End: a, Bulge: bulge},
		}}}}
	}
	rising, falling := petal(1), petal(-1)
	return []mark{
		{x: t.w / 4, y: t.h / 4, shape: rising}, {x: 3 * t.w / 4, y: t.h / 4, shape: falling},
		{x: t.w / 4, y: 3 * t.h / 4, shape: falling}, {x: 3 * t.w / 4, y: 3 * t.h / 4, shape: rising},
	}, nil
}

// drawCircleLines cuts the quarters of each circle as slits. Circles touch at the
// crossings and part slowly: slits that begin at the angle φ from there are
// 2·(radius − outer·cos φ) apart.
func drawCircleLines(v values, t tile) ([]mark, error) {
	radius, line, web := math.Min(t.w, t.h)/2, v.nm("line"), v.nm("web")
	outer := radius + line/2
	begin := -line / 2 / radius // a lap where there is no web
	if web > 0 {
		begin = math.Acos(math.Min(1, (radius-web/2)/outer))
	}
	if radius <= line || (math.Pi/2-2*begin)*radius < line {
		return nil, fmt.Errorf("circles of radius %.3f mm have no room for lines of %.3f mm with webs of %.3f mm; "+
			"make them larger, or line or web narrower", radius/1e6, v["line"], v["web"])
	}
	var pieces []mark
	for quarter := range 4 {
		from := float64(quarter) * math.Pi / 2
		s := band(radius-line/2, outer, from+begin, from+math.Pi/2-begin)
		pieces = append(pieces, boxed(0, 0, s), boxed(t.w/2, t.h/2, s))
	}
	return pieces, nil
}
