package ui

import "tsugime/repeat/geom"

// A folded is a bolt cut into lengths that lie side by side, each a whole number
// of placements; gap is between two of them.
type folded struct {
	width, length, each, gap geom.Length
	columns                  int
}

// folds chooses the lengths: about as high as all of them are wide.
func (s *boltStation) folds() folded {
	r := s.w.work.Run
	f := folded{width: r.Bolt.Width, length: r.Bolt.Length, gap: r.Bolt.Width / 2}
	best := -1.0
	for n := 1; n <= 24; n++ {
		per := (len(r.Placements) + n) / n
		each := max(geom.Length(per)*r.Step, 1)
		across := float64(geom.Length(n) * (f.width + f.gap))
		// The larger the scale at which all of it fits a surface of 4 to 3, the better.
		if scale := min(4/across, 3/float64(each)); scale > best && geom.Length(n)*each >= f.length-r.Step {
			best, f.each, f.columns = scale, each, n
		}
	}
	if f.columns == 0 {
		f.each, f.columns = f.length, 1
	}
	return f
}

// put returns where a place of the bolt lies in the picture.
func (f folded) put(p geom.Point) geom.Point {
	n := min(max(p.Y/f.each, 0), geom.Length(f.columns-1))
	return geom.Point{X: p.X + n*(f.width+f.gap), Y: p.Y - n*f.each}
}

// column returns the part of the picture that holds length n of the bolt, and how
// the bolt is moved to lie in it.
func (f folded) column(n int) (box geom.Box, move geom.Point) {
	from := geom.Length(n) * f.each
	to := min(from+f.each, f.length)
	if n == f.columns-1 {
		to = f.length
	}
	x := geom.Length(n) * (f.width + f.gap)
	return geom.BoxOf(geom.Point{X: x}, geom.Point{X: x + f.width, Y: to - from}), geom.Point{X: x, Y: -from}
}

// back returns which place of the bolt lies at p of the picture.
func (f folded) back(p geom.Point) geom.Point {
	n := min(max(p.X/(f.width+f.gap), 0), geom.Length(f.columns-1))
	return geom.Point{X: p.X - n*(f.width+f.gap), Y: p.Y + n*f.each}
}
