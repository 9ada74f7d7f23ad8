package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// fishScales: a triangular lattice of which every other triangle is cut. Three
// corners meet at each knot; drawn back by web/√3 they stand a web apart.
var fishScales = Ground{
	Name: "fish-scales", Trade: "uroko",
	About: "Triangles in rows, every other one cut.",
	Params: []Param{
		length("side", "Side", 0.5, 200, 10, "Side of a triangle with its share of the webs."),
		webParam(0.8),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("side"), v.nm("side") * math.Sqrt(3) },
		scale: "side",
		count: func(values, tile) float64 { return 2 },
		draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
			side, web := t.w, v.nm("web")
			// From the middle of a triangle to its corner.
			size := side / math.Sqrt(3)
			left := 1 - web/math.Sqrt(3)/size
			if left <= 0 {
				return nil, fmt.Errorf("webs of %.3f mm leave nothing of a side of %.3f mm; make the side longer", v["web"], side/1e6)
			}
			s := polygon([][2]float64{
				{0, -t.h / 3 * left}, {side / 2 * left, t.h / 6 * left}, {-side / 2 * left, t.h / 6 * left},
			})
			return []mark{{x: t.w / 4, y: t.h / 3, shape: s}, {x: 3 * t.w / 4, y: 5 * t.h / 6, shape: s}}, nil
		},
	},
}

// checker: squares that meet at their corners, which are cut off so that a web
// holds them.
var checker = Ground{
	Name: "checker", Trade: "ichimatsu",
	About: "Squares that meet corner to corner, held by a web at each.",
	Params: []Param{
		length("side", "Side", 0.5, 200, 8, "Side of a square."),
		webParam(0.8),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return 2 * v.nm("side"), 2 * v.nm("side") },
		scale: "side",
		count: func(values, tile) float64 { return 2 },
		draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
			x, y := t.w/4, t.h/4
			// A corner cut off at 45°, half a web from its point.
			c := v.nm("web") / math.Sqrt2
			if c >= math.Min(x, y) {
				return nil, fmt.Errorf("webs of %.3f mm cut more than the corners of a side of %.3f mm; make the side longer", v["web"], 2*x/1e6)
			}
			corners := [][2]float64{
				{-x + c, -y}, {x - c, -y}, {x, -y + c}, {x, y - c}, {x - c, y}, {-x + c, y}, {-x, y - c}, {-x, -y + c},
			}
			if c == 0 {
				corners = [][2]float64{{-x, -y}, {x, -y}, {x, y}, {-x, y}}
			}
			s := polygon(corners)
			return []mark{{x: x, y: y, shape: s}, {x: 3 * x, y: 3 * y, shape: s}}, nil
		},
	},
}
