package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Where stars are looked for. The outer stars stand at one height, so that the
// square check is a rectangle; the third stands below the left one, the fourth
// further below the right one, so that the set fits in no wrong way.
const (
	starInset  = 2 * geom.Millimetre    // from the selvedge to the star's rim: our choice
	starDrop   = 12 * geom.Millimetre   // of the third star below the first: our choice
	starRaster = 250 * geom.Micrometre  // between the places that are tried
	starSearch = 4 * geom.Millimetre    // how far along the bolt places are tried
	starEnough = 1500 * geom.Micrometre // clearance beyond which more is no better
)

// placeStars returns the stars set by hand, or chooses them: near the joint
// line's ends, in the strip that the seam hides, as far apart and as far out as
// they are clear of the cut-outs; where the strip has no clear place, in the
// middle of a round hole that is at least as large.
func placeStars(u pattern.Unit, spec Spec, joint Joint, cloth geom.Length) StarSet {
	at := spec.Stars.At
	if len(at) == 0 {
		at = chooseStars(u, spec, joint, cloth)
	}
	var set StarSet
	for _, end := range []End{Leading, Trailing} {
		way := geom.Point{}
		if end == Trailing {
			way.Y = spec.Step
		}
		g := groundAbout(u, spec.Field, geom.BoxOf(at...).Moved(way))
		for _, p := range at {
			set.Stars = append(set.Stars, measureStar(g, spec, cloth, end, p.Add(way)))
		}
	}
	set.Baseline = longest(set.Leading())
	set.TurnedMisfit = turnedMisfit(set.Leading())
	set.Square = squareOf(set)
	return set
}

func measureStar(g starGround, spec Spec, cloth geom.Length, end End, at geom.Point) Star {
	star := Star{End: end, At: at, Diameter: spec.Stars.Diameter}
	r := star.Diameter / 2
	star.Clear = g.clearance(at) - r
	covered := at.X+r <= spec.Stars.Hidden || at.X-r >= cloth-spec.Stars.Hidden
	star.Hidden = covered || star.Clear <= -star.Diameter
	return star
}

// A spot is where a star is looked for, from the selvedge inwards.
type spot struct {
	from, to geom.Length // x of the centre, the outermost first
	drop     geom.Length // below the first star
}

// starSpots returns where the stars of an end are looked for.
func starSpots(spec Spec, cloth geom.Length) []spot {
	r := spec.Stars.Diameter / 2
	out, in := starInset+r, max(spec.Stars.Hidden-r, starInset+r)
	left, right := spot{from: out, to: in}, spot{from: cloth - out, to: cloth - in}
	spots := []spot{left, right}
	if spec.Stars.PerEnd >= 3 {
		left.drop = starDrop
		spots = append(spots, left)
	}
	if spec.Stars.PerEnd >= 4 {
		right.drop = 2 * starDrop
		spots = append(spots, right)
	}
	return spots
}

// starHeight returns from where on stars are looked for: the lower end of the
// joint line.
func starHeight(joint Joint) geom.Length {
	if n := len(joint.Line); n > 0 {
		return max(joint.Line[0].Y, joint.Line[n-1].Y)
	}
	return 0
}

func chooseStars(u pattern.Unit, spec Spec, joint Joint, cloth geom.Length) []geom.Point {
	r, spots, y := spec.Stars.Diameter/2, starSpots(spec, cloth), starHeight(joint)
	g := groundAbout(u, spec.Field, geom.BoxOf(geom.Point{Y: y}, geom.Point{Y: y + 2*starDrop + 2*starSearch}))
	at := make([]geom.Point, len(spots))
	// The two outer stars share their height: take the first that suits both.
	best := geom.Length(math.MinInt64)
	for dy := geom.Length(0); dy <= starSearch; dy += starRaster {
		a, ca := g.bestAcross(spots[0], y+dy, r)
		b, cb := g.bestAcross(spots[1], y+dy, r)
		if c := min(ca, cb); c > best {
			best, at[0], at[1] = c, a, b
		}
		if best >= starEnough {
			break
		}
	}
	for i, s := range spots[2:] {
		best := geom.Length(math.MinInt64)
		for dy := geom.Length(0); dy <= starSearch && best < starEnough; dy += starRaster {
			if p, c := g.bestAcross(s, at[0].Y+s.drop+dy, r); c > best {
				best, at[2+i] = c, p
			}
		}
	}
	for i, s := range spots {
		if g.clearance(at[i])-r >= spec.WebLimit {
			continue
		}
		if hole, ok := holeFor(u, spec, s, y+s.drop); ok {
			at[i] = hole
		}
	}
	return at
}

// holeFor returns the middle of the outermost round hole at about height y that
// a star can hide in: it must be at least as large as the star.
func holeFor(u pattern.Unit, spec Spec, s spot, y geom.Length) (at geom.Point, ok bool) {
	strip := geom.BoxOf(geom.Point{X: s.from, Y: y}, geom.Point{X: s.to, Y: y + starDrop/2})
	for c := range u.In(strip) {
		d := c.Shape.Disc
		if !c.Shape.Round() || d.Diameter < spec.Stars.Diameter ||
			!strip.Holds(d.Centre) || !spec.Field.whole(d.Bounds()) {
			continue
		}
		out, best := (d.Centre.X - s.from).Abs(), (at.X - s.from).Abs()
		if !ok || out < best || out == best && d.Centre.Less(at) {
			at, ok = d.Centre, true
		}
	}
	return at, ok
}

// bestAcross returns the outermost place at height y with enough clearance, or
// the clearest one.
func (g starGround) bestAcross(s spot, y, r geom.Length) (at geom.Point, clear geom.Length) {
	inwards := geom.Length(1)
	if s.to < s.from {
		inwards = -1
	}
	clear = geom.Length(math.MinInt64)
	for d := geom.Length(0); d <= (s.to - s.from).Abs(); d += starRaster {
		p := geom.Point{X: s.from + inwards*d, Y: y}
		if c := min(g.clearance(p)-r, starEnough); c > clear {
			at, clear = p, c
		}
		if clear >= starEnough {
			break
		}
	}
	return at, clear
}

// clearanceReach is how far cut-outs are looked for around a star; what is
// farther counts as that far.
const clearanceReach = 10 * geom.Millimetre

// A starGround is the pattern in the field at the height where stars stand.
type starGround struct {
	near     *neighbourhood
	outlines *geom.Index // nil where all cut-outs are discs
}

// groundAbout gathers the cut-outs that can be near a place at the height of the
// box; how far the box reaches across doesn't matter.
func groundAbout(u pattern.Unit, field Field, at geom.Box) starGround {
	n := around(fieldCuts(u, field, at.Min.Y-clearanceReach, at.Max.Y+clearanceReach))
	return starGround{n, n.outlineIndex()}
}

// clearance returns the distance from p to the nearest rim, negative within a
// hole, at most clearanceReach.
func (g starGround) clearance(p geom.Point) geom.Length {
	x, y := float64(p.X), float64(p.Y)
	least := math.Inf(1)
	for reach := 2 * geom.Millimetre; reach < 2*clearanceReach && least > float64(reach); reach *= 2 {
		g.near.index.Visit(geom.BoxOf(p).Grown(reach), func(k int) bool {
			least = min(least, g.near.rims[k].distance(x, y))
			return true
		})
	}
	if g.outlines != nil && least >= 0 && !g.near.paper(x, y, g.outlines) {
		least = -least
	}
	return geom.Length(math.Round(min(least, float64(clearanceReach))))
}

// whole reports whether a cut-out with the box b is in the field unhalved.
func (f Field) whole(b geom.Box) bool { return b.Min.X >= f.Left && b.Max.X <= f.Right() }
