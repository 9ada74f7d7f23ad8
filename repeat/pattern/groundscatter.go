package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// crowding is the share of the area that scattered dots fill together with the
// paper each keeps for itself. Discs crowded like that are 0.76 as far apart as
// the closest packing of as many would be (√(0.52/0.9069)), inside the 0.65 to
// 0.85 that Lagae and Dutré (2008) recommend for Poisson discs (from memory), and
// still far from the 0.70 where they would fall into rows.
const crowding = 0.52

// scatteredDots is the ground of scattered dots, spaced evenly but in no rows.
var scatteredDots = Ground{
	Name: "scattered-dots", Trade: "arare",
	About: "Dots strewn by chance, evenly spaced, without a seam.",
	Params: append([]Param{
		length("pitch", "Pitch", 0.05, 100, 2.4, "The density is one dot on the square of the pitch."),
		length("dot", "Dot", 0.01, 60, 0.8, "Diameter of a dot."),
		length("patch", "Patch", 2, 500, 45, "Size of the piece that is strewn before it repeats."),
	}, swellParams()...),
	draft: scatterDraft,
}

// scatteredTwoSizes is the same with two sizes of dots, each spread evenly.
var scatteredTwoSizes = Ground{
	Name: "scattered-two-sizes", Trade: "daisho-arare",
	About: "Dots of two sizes strewn by chance, evenly spaced, without a seam.",
	Params: append([]Param{
		length("pitch", "Pitch", 0.05, 100, 2.6, "The density is one dot on the square of the pitch."),
		length("dot", "Small dot", 0.01, 60, 0.7, "Diameter of a small dot."),
		length("large", "Large dot", 0.01, 60, 1.8, "Diameter of a large dot."),
		percent("share", "Large ones", 0, 100, 25, "How many of the dots are large."),
		length("patch", "Patch", 2, 500, 45, "Size of the piece that is strewn before it repeats."),
	}, swellParams()...),
	draft: scatterDraft,
}

var scatterDraft = draft{
	tile:  func(v values) (float64, float64) { return v.nm("patch"), v.nm("patch") },
	count: func(v values, t tile) float64 { return t.w * t.h / (v.nm("pitch") * v.nm("pitch")) },
	draw:  drawScattered,
	dot:   roundDot,
	piece: true,
}

func drawScattered(v values, t tile, random *rand.Rand) ([]mark, error) {
	pitch, dot, big := v.nm("pitch"), v.nm("dot"), v.nm("large")
	n := int(math.Round(t.w * t.h / (pitch * pitch)))
	if n < 16 || math.Min(t.w, t.h) < 4*pitch {
		return nil, fmt.Errorf("a patch of %.3f × %.3f mm has room for %d dots only; make the patch larger or the pitch finer",
			t.w/1e6, t.h/1e6, n)
	}
	large := int(math.Round(float64(n) * v.share("share")))
	gap := evenGap(n-large, large, dot, big, t)
	if gap <= 0 {
		return nil, fmt.Errorf("dots of that size leave no paper at a pitch of %.3f mm; make them smaller or the pitch larger", pitch/1e6)
	}
	f := strew(n, dot/2, t, random)
	if large > 0 {
		f.relax(evenGap(n, 0, dot, 0, t), 4) // so that the large ones are chosen from a nearly even lot
		for _, i := range f.spread(large, random) {
			f.radius[i] = big / 2
		}
	}
	if !f.relax(gap, 2000) {
		return nil, fmt.Errorf("the dots find no even places in a patch of %.3f × %.3f mm; make the patch larger", t.w/1e6, t.h/1e6)
	}
	pieces := make([]mark, n)
	for i := range pieces {
		pieces[i] = mark{x: f.x[i], y: f.y[i], size: 2 * f.radius[i]}
	}
	return pieces, nil
}

// evenGap returns the paper that dots of two sizes, so many of each, keep from one
// another when each, with half of it around, fills its part of the crowding: the
// root of Σ π/4·(size+gap)² = crowding·area. It is not above 0 where they leave none.
func evenGap(few, many int, size, large float64, t tile) float64 {
	a, b := float64(few), float64(many)
	n, sum, squares := a+b, a*size+b*large, a*size*size+b*large*large
	c := squares - crowding*t.w*t.h*4/math.Pi
	under := sum*sum - n*c
	if under < 0 {
		return -1
	}
	return (math.Sqrt(under) - sum) / n
}

// strew returns n dots by chance, one in each of n parts of equal size, so that
// no region gets too many; each row of parts begins elsewhere, so that they don't
// show.
func strew(n int, radius float64, t tile, random *rand.Rand) *scatter {
	f := &scatter{tile: t, x: make([]float64, n), y: make([]float64, n), radius: make([]float64, n)}
	for i := range f.radius {
		f.radius[i] = radius
	}
	rows := max(1, int(math.Round(math.Sqrt(float64(n)*t.h/t.w))))
	i := 0
	for row := range rows {
		last := (row + 1) * n / rows
		many, begin := last-i, random.Float64()
		for k := range many {
			f.x[i] = math.Mod((float64(k)+random.Float64()+begin)*t.w/float64(many), t.w)
			f.y[i] = (float64(row) + random.Float64()) * t.h / float64(rows)
			i++
		}
	}
	return f
}

// onto returns x brought into 0…w.
func onto(x, w float64) float64 {
	if x < 0 {
		return x + w
	}
	if x >= w {
		return x - w
	}
	return x
}

// apartBy returns the shortest way from a to b on a ring of length w.
func apartBy(a, b, w float64) float64 {
	d := b - a
	if d > w/2 {
		return d - w
	}
	if d < -w/2 {
		return d + w
	}
	return d
}
