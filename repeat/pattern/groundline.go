package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// A stroke is a straight line of a figure from knot to knot, in nanometres, with
// the least angle between two lines at each end.
type stroke struct {
	ax, ay, bx, by float64
	atA, atB       float64 // radians
}

// slit returns the stroke as a slit of the given width that leaves a web at each
// knot. Two slits that leave a knot at an angle θ and begin s from it are
// 2·(s·sin(θ/2) − width/2·cos(θ/2)) apart; that gives s. With no web they run into
// each other, up to where their sides meet on the far side of the knot.
func (k stroke) slit(width, web float64) (mark, error) {
	long := math.Hypot(k.bx-k.ax, k.by-k.ay)
	trim := func(angle float64) float64 {
		sin, cos := math.Sincos(angle / 2)
		if web == 0 {
			return -math.Min(width/2, width/2*cos/sin)
		}
		return (web/2 + width/2*cos) / sin
	}
	from, to := trim(k.atA), long-trim(k.atB)
	if to-from < width {
		return mark{}, fmt.Errorf("a line of %.3f mm has no room for a slit of %.3f mm with webs of %.3f mm; "+
			"make the figure larger, or line or web narrower", long/1e6, width/1e6, web/1e6)
	}
	ux, uy := (k.bx-k.ax)/long, (k.by-k.ay)/long
	mid, half := (from+to)/2, (to-from)/2
	at := func(along, aside float64) [2]float64 {
		return [2]float64{along*ux - aside*uy, along*uy + aside*ux}
	}
	return mark{
		x: k.ax + mid*ux, y: k.ay + mid*uy,
		shape: polygon([][2]float64{at(-half, -width/2), at(half, -width/2), at(half, width/2), at(-half, width/2)}),
	}, nil
}

func slits(strokes []stroke, width, web float64) ([]mark, error) {
	pieces := make([]mark, len(strokes))
	for i, k := range strokes {
		var err error
		if pieces[i], err = k.slit(width, web); err != nil {
			return nil, err
		}
	}
	return pieces, nil
}

func lineParam(usual float64) Param {
	return length("line", "Line", 0.05, 50, usual, "Width of a line.")
}

func webParam(usual float64) Param {
	return length("web", "Web", 0, 20, usual, "Paper left where lines or figures meet; 0 cuts the full figure, which needs ties.")
}

// degrees of the knots.
const (
	twelfth = math.Pi / 6
	third   = 2 * math.Pi / 3
)

// hempLeaf: a triangular lattice, and from the middle of each triangle a line to
// its corners. Twelve lines leave each corner.
var hempLeaf = Ground{
	Name: "hemp-leaf", Trade: "asanoha",
	About: "Triangles with a line from their middle to each corner: leaves of six points.",
	Params: []Param{
		length("side", "Side", 2, 200, 16, "Side of a triangle."),
		lineParam(0.7), webParam(0.6),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("side"), v.nm("side") * math.Sqrt(3) },
		scale: "side",
		count: func(values, tile) float64 { return 18 },
		draw:  drawHempLeaf,
	},
}

func drawHempLeaf(v values, t tile, _ *rand.Rand) ([]mark, error) {
	w, h := t.w, t.h
	var strokes []stroke
	for _, c := range [2][2]float64{{0, 0}, {w / 2, h / 2}} {
		line := func(ax, ay, bx, by, atA float64) {
			strokes = append(strokes, stroke{c[0] + ax, c[1] + ay, c[0] + bx, c[1] + by, atA, twelfth})
		}
		right, down, left := [2]float64{w, 0}, [2]float64{w / 2, h / 2}, [2]float64{-w / 2, h / 2}
		for _, to := range [][2]float64{right, down, left} {
			line(0, 0, to[0], to[1], twelfth)
		}
		for _, to := range [][2]float64{{0, 0}, right, down} {
			line(w/2, h/6, to[0], to[1], third)
		}
		for _, to := range [][2]float64{{0, 0}, down, left} {
			line(0, h/3, to[0], to[1], third)
		}
	}
	return slits(strokes, v.nm("line"), v.nm("web"))
}

// tortoiseShell: hexagons with a smaller one in each.
var tortoiseShell = Ground{
	Name: "tortoise-shell", Trade: "kikko",
	About: "Hexagons side by side, with a smaller one inside each.",
	Params: []Param{
		length("side", "Side", 1, 200, 8, "Side of a hexagon."),
		length("inset", "Inset", 0, 100, 2.4, "From the outer line to the inner one, middle to middle; 0 leaves the inner one out."),
		lineParam(0.9), webParam(0.8),
	},
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("side") * math.Sqrt(3), 3 * v.nm("side") },
		scale: "side",
		count: func(values, tile) float64 { return 18 },
		draw:  drawTortoiseShell,
	},
}

func drawTortoiseShell(v values, t tile, _ *rand.Rand) ([]mark, error) {
	w, h, inset := t.w, t.h, v.nm("inset")
	if inset > 0 && (inset <= v.nm("line") || inset >= w/2) {
		return nil, fmt.Errorf("an inset of %s mm puts the inner line on the outer one or past the middle; give %s to %s mm, or 0",
			geom.MM(v["inset"]), geom.MM(v["line"]), onGrid(w/2, 0).X)
	}
	corners := [7][2]float64{
		{0, -h / 3}, {w / 2, -h / 6}, {w / 2, h / 6}, {0, h / 3}, {-w / 2, h / 6}, {-w / 2, -h / 6}, {0, -h / 3},
	}
	var strokes []stroke
	for _, c := range [2][2]float64{{w / 2, h / 3}, {w, 5 * h / 6}} {
		side := func(i int, size float64) {
			p, q := corners[i], corners[i+1]
			strokes = append(strokes, stroke{
				c[0] + size*p[0], c[1] + size*p[1], c[0] + size*q[0], c[1] + size*q[1], third, third,
			})
		}
		for i := range 3 { // the other three are the neighbours'
			side(i, 1)
		}
		for i := 0; i < 6 && inset > 0; i++ {
			side(i, 1-inset/(w/2))
		}
	}
	return slits(strokes, v.nm("line"), v.nm("web"))
}
