package cloth

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Mirror is the mirror of a pattern that lies nearest to a line.
type Mirror struct {
	Group pattern.Group // that the pattern has
	Found bool
	// Off is the way from the line to the mirror. A pattern that is continued
	// as its mirror image at the line then jumps by twice as much.
	Off geom.Length
	// Glide is the way along the mirror by which the image is moved where the
	// pattern has no plain mirror there, only a glide; zero for a mirror.
	Glide geom.Length
}

// A Folding tells what meets where a cloth is folded at both ends of a sheet.
type Folding struct {
	// Mirror is that of the pattern, as seen from the end where it lies farther
	// off.
	Mirror
	// Over counts the cut-outs of the sheet that reach over a fold, where their
	// mirror image falls too, and Reach is how far the farthest does.
	Over  int
	Reach geom.Length
}

// FoldingOf returns what meets at the folds of a sheet of one step whose cut-outs
// lie in these boxes.
func FoldingOf(u pattern.Unit, step geom.Length, cutOuts []geom.Box) (Folding, error) {
	var f Folding
	for i, y := range []geom.Length{0, step} {
		m, err := FoldMirror(u, y)
		if err != nil {
			return Folding{}, err
		}
		if i == 0 || !m.Found || m.Off.Abs() > f.Off.Abs() {
			f.Mirror = m
		}
	}
	for _, b := range cutOuts {
		if over := max(-b.Min.Y, b.Max.Y-step); over > 0 {
			f.Over++
			f.Reach = max(f.Reach, over)
		}
	}
	return f, nil
}

// FoldMirror returns what meets where a cloth is folded and the pattern goes on
// as its mirror image: the mirror of the pattern that runs across the bolt, as
// seen from the fold at y. The pattern goes on whole where Off and Glide are
// zero: else each motif has a wrong neighbour.
func FoldMirror(u pattern.Unit, y geom.Length) (Mirror, error) {
	return nearestMirror(u, geom.Point{Y: y}, func(p geom.Point) geom.Length { return p.Y }, func(p geom.Point) geom.Length { return p.X })
}

// AlongMirror returns the mirror of the pattern that runs along the bolt, as seen
// from the line at x.
func AlongMirror(u pattern.Unit, x geom.Length) (Mirror, error) {
	return nearestMirror(u, geom.Point{X: x}, func(p geom.Point) geom.Length { return p.X }, func(p geom.Point) geom.Length { return p.Y })
}

// nearestMirror looks for the mirror, or where there is none the glide, that is
// nearest to a line through a place; off measures away from the line, on along it.
func nearestMirror(u pattern.Unit, at geom.Point, off, on func(geom.Point) geom.Length) (Mirror, error) {
	r, err := pattern.Recognise(u)
	if err != nil {
		return Mirror{}, err
	}
	found, err := r.Group.Elements(r.Cell)
	if err != nil {
		return Mirror{}, fmt.Errorf("mirror: %w", err)
	}
	m := Mirror{Group: r.Group}
	for _, lines := range [][]pattern.MirrorLine{found.Mirrors, found.Glides} {
		for _, l := range lines {
			// Rounding to the grid may leave a line leaning by a nanometre or two.
			if off(l.Along).Abs() > leaning || m.Found && m.Glide == 0 && l.Glide != (geom.Point{}) {
				continue
			}
			way, lattice := at.Sub(r.Origin.Add(l.At)), r.Cell
			_, _, rest := lattice.Nearest(way)
			least := nearestLine(lattice, rest, off)
			if !m.Found || least.Abs() < m.Off.Abs() {
				m.Found, m.Off, m.Glide = true, least, on(l.Glide).Abs()
			}
		}
	}
	return m, nil
}

// leaning is how far a mirror's direction may be off an axis by rounding.
const leaning = 10 * geom.Nanometre

// nearestLine returns the way from a line to the nearest copy of another, which
// lies rest before it or a place of the lattice further.
func nearestLine(l pattern.Lattice, rest geom.Point, off func(geom.Point) geom.Length) geom.Length {
	least := geom.Length(math.MaxInt64)
	for m := -2; m <= 2; m++ {
		for n := -2; n <= 2; n++ {
			if way := off(l.At(m, n).Sub(rest)); way.Abs() < least.Abs() {
				least = way
			}
		}
	}
	return least
}
