package stencil

import (
	"context"
	"math"

	"tsugime/repeat/geom"
)

// levelLines is how many lines straight across are measured where cut-outs must
// be crossed.
const levelLines = 49

// acrossCutOuts returns the line that crosses the least width of cut-outs, and of
// equal ones the shortest, in a band narrower than the step. The lines straight
// across are measured, and one that is sought on a grid and then moved corner by
// corner to where it crosses less; every width is exact, that none crosses less
// is not proved.
func (w *jointWays) acrossCutOuts(ctx context.Context) (Joint, error) {
	band := min(jointBand, w.step*9/20)
	n := around(fieldCuts(w.u, w.field, -band-jointBand, band+jointBand))
	x := crosser{n, geom.NewIndex(n.boxes)}
	best, least := w.level(x, band)
	if err := ctx.Err(); err != nil {
		return Joint{}, err
	}
	g := newJointGrid(n, w.field, band, 0)
	if path, ok := g.path(0, true); ok {
		line := x.relaxed(x.pulled(path), g.h)
		if c := x.cost(line); c < least-grain && !meetsCopy(line, w.step) {
			best = line
		}
	}
	j := Joint{}.along(n, best).crossing(n)
	j.Widest = max(j.Clearance, 0)
	return j, ctx.Err()
}

// level returns the line straight across that costs least, the one nearest to
// y = 0 of equal ones.
func (w *jointWays) level(x crosser, band geom.Length) ([]geom.Point, float64) {
	var best []geom.Point
	least := math.Inf(1)
	for k := range levelLines {
		y := band * geom.Length((k+1)/2) / (levelLines / 2)
		if k%2 == 1 {
			y = -y
		}
		line := []geom.Point{{X: w.field.Left, Y: y}, {X: w.field.Right(), Y: y}}
		if c := x.cost(line); c < least-grain {
			best, least = line, c
		}
	}
	return best, least
}

// A crosser tells what a line costs that may cross cut-outs: its length, and
// crossCost times what of it lies in cut-outs.
type crosser struct {
	*neighbourhood
	shapes *geom.Index
}

func (x crosser) cost(line []geom.Point) float64 {
	sum, to := lengthOf(line), 0.0
	for _, s := range x.stretches(line, x.shapes) {
		sum += (crossCost - 1) * max(0, s.to-max(s.from, to))
		to = max(to, s.to)
	}
	return sum
}

// pulled leaves out the points of a path that only make it dearer.
func (x crosser) pulled(path []geom.Point) []geom.Point {
	line := path[:1:1]
	for i := 0; i < len(path)-1; {
		free := 1
		for s := 2; i+s < len(path); s *= 2 {
			if x.cost([]geom.Point{path[i], path[i+s]}) > x.cost(path[i:i+s+1])+grain {
				break
			}
			free = s
		}
		i += free
		line = append(line, path[i])
	}
	return line
}

// relaxed moves corners to where the line costs less, the ends along the edges of
// the field, in steps from the given one down to a micrometre, and drops those
// that are not needed.
func (x crosser) relaxed(line []geom.Point, step float64) []geom.Point {
	for ; step > float64(geom.Micrometre); step /= 2 {
		for i := range line {
			line[i] = x.moved(line, i, step)
		}
		out := line[:1:1]
		for i := 1; i < len(line)-1; i++ {
			a := out[len(out)-1]
			if x.cost([]geom.Point{a, line[i+1]}) > x.cost([]geom.Point{a, line[i], line[i+1]})+grain {
				out = append(out, line[i])
			}
		}
		line = append(out, line[len(line)-1])
	}
	return line
}

// moved returns corner i of the line, moved to where its two pieces cost least
// among eight places a step away.
func (x crosser) moved(line []geom.Point, i int, step float64) geom.Point {
	near := append([]geom.Point(nil), line[max(i-1, 0):min(i+2, len(line))]...)
	k := min(i, 1)
	best, least := line[i], x.cost(near)
	for d := range 8 {
		sin, cos := math.Sincos(float64(d) * math.Pi / 4)
		if i == 0 || i == len(line)-1 {
			cos = 0
		}
		near[k] = placeOf(line[i]).add(place{cos * step, sin * step}).point()
		if c := x.cost(near); c < least-grain {
			best, least = near[k], c
		}
	}
	return best
}
