package cloth

import "tsugime/repeat/geom"

// A StarPrint is the mark that a feed star of one placement leaves on the
// finished cloth, and where it ends up once the garment is sewn.
type StarPrint struct {
	Placement int // that prints it first; the placement after it is laid on it
	Star      int // by its number among the leading ones
	At        geom.Point
	// Seen says that a piece shows it: Piece by name, in View at Place.
	// Otherwise it lies in a seam, under another piece, or on cloth that no panel
	// takes.
	Seen  bool
	Piece string
	View  View
	Place geom.Point
	// Turn says that it lies where the board's end spoils the print anyway.
	Turn bool
}

// StarPrints follows every star of every placement into the garment, one by one.
// The leading stars are places on the finished sheet, from its start; each
// placement prints them, and the last one its trailing ones too, a step further
// on. A star whose hole lies within a cut-out leaves no mark of its own; leave it
// out. In folded cloth the sections that lie mirrored print theirs from the other
// end.
func StarPrints(d Dressed, run Run, leading []geom.Point) []StarPrint {
	step := run.Bolt.Finished(geom.Point{Y: run.Step}).Y
	var prints []StarPrint
	for _, p := range run.Placements {
		start := run.Bolt.Finished(geom.Point{Y: p.Y}).Y
		ends := []geom.Length{0}
		if p.N == len(run.Placements)-1 {
			ends = append(ends, step)
		}
		for _, end := range ends {
			for i, star := range leading {
				y := star.Y + end
				if p.Mirrored {
					y = step - y
				}
				print := StarPrint{Placement: p.N, Star: i, At: geom.Point{X: star.X, Y: start + y}}
				prints = append(prints, d.follow(print, run))
			}
		}
	}
	return prints
}

// follow returns the print with where it is seen.
func (d Dressed) follow(s StarPrint, run Run) StarPrint {
	for _, t := range run.Turns {
		from, to := run.Bolt.Finished(geom.Point{Y: t.From}).Y, run.Bolt.Finished(geom.Point{Y: t.To}).Y
		s.Turn = s.Turn || from <= s.At.Y && s.At.Y <= to
	}
	for i, p := range d.pieces {
		if !p.Window().Holds(s.At) {
			continue
		}
		at := p.FromCloth(s.At)
		covered := false
		for _, over := range d.pieces[i+1:] {
			covered = covered || over.View == p.View && over.Panel != p.Panel && over.Area.Holds(at)
		}
		if !covered {
			s.Seen, s.Piece, s.View, s.Place = true, p.Name, p.View, at
			return s
		}
	}
	return s
}

// SeenStars returns the prints that a made-up garment shows.
func SeenStars(prints []StarPrint) []StarPrint {
	var seen []StarPrint
	for _, s := range prints {
		if s.Seen && !s.Turn {
			seen = append(seen, s)
		}
	}
	return seen
}
