package bench

import (
	"math"

	"tsugime/repeat/geom"
)

// A Blade is the knife of a cutting machine that trails its holder. The zero Blade
// cuts where the holder goes and stops where it began.
type Blade struct {
	Offset  geom.Length // from the holder's axis back to the blade's tip
	Overcut geom.Length // how far it goes on past its start, so that a closed line comes free
}

// pathChord is how far a path may be off a curve. The pieces of a hole of 0.25 mm or
// more then turn by less than swivels.
const pathChord = geom.Chord

// swivels is the turn in radians above which the holder swings round a corner on an
// arc; below it one place halfway is off by less than a hundredth of the offset.
const swivels = math.Pi / 12

// Paths returns the way of the holder's axis for each contour of a shape, so that
// the tip follows the rim: on a line it runs ahead by the offset, at a corner it
// swings about the corner with the offset for a radius. Around an arc of radius r
// that is a circle of √(r² + offset²). The blade is taken to point along the first
// piece when it comes down.
func (b Blade) Paths(s geom.Shape) [][]geom.Point {
	var paths [][]geom.Point
	for _, ring := range s.Rings(pathChord) {
		if path := b.path(ring); len(path) > 1 {
			paths = append(paths, path)
		}
	}
	return paths
}

func (b Blade) path(ring geom.Ring) []geom.Point {
	n := len(ring)
	if n < 2 {
		return nil
	}
	ways := make([]float64, n) // the direction of each piece
	for i, p := range ring {
		ways[i] = angle(ring[(i+1)%n].Sub(p))
	}
	path := []geom.Point{b.ahead(ring[0], ways[0])}
	for i := range n - 1 {
		path = b.swing(path, ring[i+1], ways[i], ways[i+1])
	}
	if b.Overcut == 0 {
		return b.appendPoint(path, b.ahead(ring[0], ways[n-1]))
	}
	return b.over(b.swing(path, ring[0], ways[n-1], ways[0]), ring, ways)
}

// ahead is where the axis stands when the tip is at p and moves that way.
func (b Blade) ahead(p geom.Point, way float64) geom.Point {
	sin, cos := math.Sincos(way)
	return p.Add(geom.Point{X: b.Offset.Times(cos), Y: b.Offset.Times(sin)})
}

func (b Blade) appendPoint(path []geom.Point, p geom.Point) []geom.Point {
	if path[len(path)-1] == p {
		return path
	}
	return append(path, p)
}

// swing takes the axis to a corner and round it, the shorter way. Where the line
// bends little, as between the pieces of a curve, it goes by the direction halfway.
func (b Blade) swing(path []geom.Point, corner geom.Point, from, to float64) []geom.Point {
	turn := math.Remainder(to-from, 2*math.Pi)
	if b.Offset == 0 || math.Abs(turn) <= swivels {
		return b.appendPoint(path, b.ahead(corner, from+turn/2))
	}
	path = b.appendPoint(path, b.ahead(corner, from))
	step := 2 * math.Acos(1-math.Min(float64(pathChord)/float64(b.Offset), 0.5))
	for i, k := 1, int(math.Ceil(math.Abs(turn)/step)); i < k; i++ {
		path = b.appendPoint(path, b.ahead(corner, from+turn*float64(i)/float64(k)))
	}
	return b.appendPoint(path, b.ahead(corner, to))
}

// over goes on along the ring for the overcut, once round at most.
func (b Blade) over(path []geom.Point, ring geom.Ring, ways []float64) []geom.Point {
	left := float64(b.Overcut)
	for i, p := range ring {
		end := ring[(i+1)%len(ring)]
		piece := end.Sub(p).Norm()
		if piece >= left {
			sin, cos := math.Sincos(ways[i])
			stop := p.Add(geom.Point{X: geom.Length(math.Round(left * cos)), Y: geom.Length(math.Round(left * sin))})
			return b.appendPoint(path, b.ahead(stop, ways[i]))
		}
		path = b.swing(path, end, ways[i], ways[(i+1)%len(ring)])
		left -= piece
	}
	return path
}
