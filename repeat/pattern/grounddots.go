package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// roundDot and squareDot are the dots that an awl and a square punch cut.
func roundDot(size float64) geom.Shape {
	return geom.DiscShape(geom.Point{}, geom.Length(size))
}

func squareDot(size float64) geom.Shape {
	low := -math.Floor(size / 2)
	return polygon([][2]float64{{low, low}, {low + size, low}, {low + size, low + size}, {low, low + size}})
}

// dotParams are the rows that every even ground of dots has.
func dotParams(dot float64, what string) []Param {
	return append([]Param{
		length("pitch", "Pitch", 0.05, 50, 1.07, "From one dot to the next; the density is one dot on its square."),
		length("dot", "Dot", 0.01, 40, dot, what),
	}, swellParams()...)
}

// fits returns an error where dots of that size leave no paper at the pitch.
func fits(dot, pitch float64) error {
	if dot >= pitch {
		return fmt.Errorf("dots of %s mm meet at a pitch of %s mm; make the dot smaller or the pitch larger",
			geom.Length(math.Round(dot)), geom.Length(math.Round(pitch)))
	}
	return nil
}

// rowDots is the ground of dots in rows that cross at 90°.
var rowDots = Ground{
	Name: "row-dots", Trade: "toshi",
	About:  "Round dots in rows that cross at 90°.",
	Params: dotParams(0.5, "Diameter of a dot."),
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("pitch"), v.nm("pitch") },
		count: func(values, tile) float64 { return 1 },
		draw:  rowDot, dot: roundDot, scale: "pitch",
	},
}

// rowSquares is the same with square grains. Their side is half the pitch, of the
// 0.45 to 0.6 that looks right (our recommendation, no source).
var rowSquares = Ground{
	Name: "row-squares", Trade: "kakutoshi",
	About:  "Square dots in rows that cross at 90°.",
	Params: dotParams(0.53, "Side of a square."),
	draft: draft{
		tile: rowDots.draft.tile, count: rowDots.draft.count,
		draw: rowDot, dot: squareDot, scale: "pitch",
	},
}

func rowDot(v values, t tile, _ *rand.Rand) ([]mark, error) {
	dot := v.nm("dot")
	return []mark{{x: t.w / 2, y: t.h / 2, size: dot}}, fits(dot, math.Min(t.w, t.h))
}

// diagonalDots is the ground of equal dots in rows that cross at 45°: a square
// lattice turned, so the tile is pitch·√2 wide and high and holds two.
var diagonalDots = Ground{
	Name: "diagonal-dots", Trade: "gyogi",
	About:  "Round dots in rows that cross at 45°.",
	Params: dotParams(0.5, "Diameter of a dot."),
	draft: draft{
		tile:  func(v values) (float64, float64) { return math.Sqrt2 * v.nm("pitch"), math.Sqrt2 * v.nm("pitch") },
		count: func(values, tile) float64 { return 2 },
		draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
			dot := v.nm("dot")
			return []mark{
				{x: t.w / 4, y: t.h / 4, size: dot}, {x: 3 * t.w / 4, y: 3 * t.h / 4, size: dot},
			}, fits(dot, min(t.w, t.h, math.Hypot(t.w, t.h)/2))
		},
		dot: roundDot, scale: "pitch",
	},
}
