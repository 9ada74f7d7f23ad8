package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A MatchStar is a register hole of a set of sheets: it is laid on the mark that
// another sheet of the set has printed within the same placement.
type MatchStar struct {
	// Sheet says who has it: 0 all sheets of the set, 1 the first alone, 2 the
	// second alone. Its own star shows to which set and place in it a sheet
	// belongs.
	Sheet    int
	At       geom.Point
	Diameter geom.Length
	Hidden   bool
	Clear    geom.Length // from its rim to the nearest cut-out's of the design
}

// On reports whether sheet number n of the set has the star.
func (m MatchStar) On(n int) bool { return m.Sheet == 0 || m.Sheet == n }

// placeMatchStars chooses the match stars of a set of two sheets: one that both
// have, in the strip that the seam hides on the right, and one that each has to
// itself, on the left below the feed stars. Old sets show one common star and one
// own star for each sheet (museum pieces); where they stand is our choice.
func placeMatchStars(u pattern.Unit, spec Spec, feed StarSet, cloth geom.Length) []MatchStar {
	if len(feed.Stars) == 0 {
		return nil
	}
	r := spec.Stars.Diameter / 2
	out, in := starInset+r, max(spec.Stars.Hidden-r, starInset+r)
	left, right := spot{from: out, to: in}, spot{from: cloth - out, to: cloth - in}
	y := feed.Stars[0].At.Y
	stars := []MatchStar{{Sheet: 0}, {Sheet: 1}, {Sheet: 2}}
	for i, s := range []spot{right, left, left} {
		// All stand at heights where no feed star does, on either side.
		from := y + [...]geom.Length{starDrop * 3 / 2, 2 * starDrop, starDrop * 7 / 2}[i]
		g := groundAbout(u, spec.Field, geom.BoxOf(geom.Point{Y: from}, geom.Point{Y: from + starSearch}))
		best := geom.Length(math.MinInt64)
		for dy := geom.Length(0); dy <= starSearch && best < starEnough; dy += starRaster {
			if p, c := g.bestAcross(s, from+dy, r); c > best {
				best, stars[i].At = c, p
			}
		}
		m := measureStar(g, spec, cloth, Leading, stars[i].At)
		stars[i].Diameter, stars[i].Hidden, stars[i].Clear = m.Diameter, m.Hidden, m.Clear
	}
	return stars
}
