package geom

import (
	"math"
	"slices"
)

// A Flaw is what was wrong with an outline.
type Flaw uint8

// The flaws, in the order in which they are looked for.
const (
	// StillSegment: a segment that ends where it starts; it is left out.
	StillSegment Flaw = iota + 1
	// BadBulge: an arc whose bulge is no number or makes it wider than MaxSpan; it
	// becomes straight.
	BadBulge
	// NoArea: a contour that encloses nothing; it is left out.
	NoArea
	// TooWide: an outline wider or higher than MaxSpan/2; it is left as it is.
	TooWide
	// Crossed: an outline that crosses or touches itself, or runs along itself; it
	// is parted into contours that don't.
	Crossed
	// Nested: a contour inside of another that bounds nothing by the non-zero rule;
	// it is left out.
	Nested
	// Reversed: a rim that turns against the clock on the sheet, or a hole that
	// turns with it; it is run the other way.
	Reversed
)

// A Mend is one flaw of an outline and where it was.
type Mend struct {
	Flaw Flaw
	At   Point
}

// Mended returns an outline that covers the same and is sound: no contour crosses
// or touches itself or another, rims turn clockwise on the sheet and holes against
// them. What was mended is listed. Segments that nothing crosses stay as they are;
// one that is crossed is split within Chord. A sound outline comes back as it is.
func (o Outline) Mended() (Outline, []Mend) {
	return o.mended(nonZero, func(turns int) bool { return turns != 0 })
}

// MendedEvenOdd is Mended for an outline whose inside is where its contours go
// around a place an odd number of times (the even-odd rule of SVG 1.1, section
// 11.3). By the non-zero rule the result covers the same.
func (o Outline) MendedEvenOdd() (Outline, []Mend) {
	return o.mended(odd, func(turns int) bool { return turns%2 != 0 })
}

// mended is Mended by any rule of what is inside: of the layers of an
// arrangement, and of how often the contours turn around a place.
func (o Outline) mended(inside func(cover layer) bool, turned func(turns int) bool) (Outline, []Mend) {
	o, mends := o.tidied()
	all := o.hull()
	if all.Empty() {
		return o, mends
	}
	if all.Width() > MaxSpan/2 || all.Height() > MaxSpan/2 || all.Width() < 0 || all.Height() < 0 {
		return o, append(mends, Mend{TooWide, all.Min})
	}
	contours := o.curves()
	if at, crossed := crossedAt(contours); crossed {
		if parted, err := parted(contours, inside); err == nil {
			return parted, append(mends, Mend{Crossed, at})
		}
		return o, append(mends, Mend{TooWide, all.Min})
	}
	o, nested := o.nestedRight(contours, turned)
	return o, append(mends, nested...)
}

// curves returns the curves of each contour.
func (o Outline) curves() [][]curve {
	contours := make([][]curve, len(o))
	total := 0
	for _, c := range o {
		total += len(c.Segments) + 1
	}
	slab := make([]curve, 0, total)
	for i, c := range o {
		first := len(slab)
		slab = c.curves(slab)
		contours[i] = slab[first:len(slab):len(slab)]
	}
	return contours
}

// tidied returns o without still segments and empty contours, and with straight
// lines for arcs that have no circle.
func (o Outline) tidied() (Outline, []Mend) {
	var mends []Mend
	var tidy Outline // nil while o needs nothing
	for i, c := range o {
		kept, found := c.tidied()
		if len(found) > 0 && tidy == nil {
			tidy = append(make(Outline, 0, len(o)), o[:i]...)
		}
		mends = append(mends, found...)
		if tidy != nil && !kept.bare() {
			tidy = append(tidy, kept)
		}
	}
	if tidy == nil {
		return o, nil
	}
	return tidy, mends
}

// tidied returns c without what o.tidied takes away, and what that was.
func (c Contour) tidied() (Contour, []Mend) {
	var mends []Mend
	at := c.Start
	for _, s := range c.Segments {
		if s.still(at) {
			mends = append(mends, Mend{StillSegment, at})
		} else if s.wild(at) {
			mends = append(mends, Mend{BadBulge, at})
		}
		at = s.End
	}
	if len(mends) > 0 {
		kept := Contour{Start: c.Start}
		at = c.Start
		for _, s := range c.Segments {
			if s.wild(at) {
				s = Segment{Kind: Line, End: s.End}
			}
			if !s.still(at) {
				kept.Segments = append(kept.Segments, s)
			}
			at = s.End
		}
		c = kept
	}
	if c.bare() {
		mends = append(mends, Mend{NoArea, c.Start})
	}
	return c, mends
}

// bare reports whether c is too little to enclose anything.
func (c Contour) bare() bool {
	straight := true
	at := c.Start
	for _, s := range c.Segments {
		straight = straight && s.straight(at)
		at = s.End
	}
	return len(c.Segments) == 0 || straight && len(c.Segments) < 3 && !(len(c.Segments) == 2 && at != c.Start)
}

// wild reports whether s is an arc that has no circle within MaxSpan, or one so
// flat that its height is below the grid's rounding.
func (s Segment) wild(a Point) bool {
	if s.Kind != Arc || s.Bulge == 0 {
		return false
	}
	height := math.Abs(s.Bulge) * s.End.Sub(a).Norm() / 2
	return !(height <= float64(MaxSpan)) || height < 1e-3*float64(Grid)
}

// nestedRight leaves out contours that bound nothing and turns those that run the
// wrong way, by what is inside of so many turns. No contour may meet another.
func (o Outline) nestedRight(contours [][]curve, inside func(turns int) bool) (Outline, []Mend) {
	var mends []Mend
	boxes := make([]Box, len(o))
	for i := range o {
		boxes[i] = Outline{o[i]}.hull()
	}
	around := func(i int) int {
		n := 0
		p := o[i].Start
		visit := func(j int) {
			if j != i && boxes[j].Holds(p) {
				for _, v := range contours[j] {
					n += v.winding(float64(p.X), float64(p.Y))
				}
			}
		}
		for j := range o {
			visit(j)
		}
		return n
	}
	var right Outline // nil while o is right
	for i, c := range o {
		outer, turn := around(i), 1
		if c.area2() < 0 {
			turn = -1
		}
		rim, bounds := !inside(outer), inside(outer) != inside(outer+turn)
		wrong := bounds && rim != (turn > 0)
		if (wrong || !bounds) && right == nil {
			right = append(make(Outline, 0, len(o)), o[:i]...)
		}
		switch {
		case !bounds:
			mends = append(mends, Mend{Nested, c.Start})
			continue
		case wrong:
			mends = append(mends, Mend{Reversed, c.Start})
			c = backwards(contours[i])
		}
		if right != nil {
			right = append(right, c)
		}
	}
	if right == nil {
		return o, mends
	}
	return slices.Clip(right), mends
}

// area2 returns twice the signed area of c in square nanometres.
func (c Contour) area2() float64 {
	var sum float64
	at := c.Start
	for _, s := range c.Segments {
		sum += s.area2(at, c.Start)
		at = s.End
	}
	return sum
}

// backwards returns the contour of the curves run the other way.
func backwards(curves []curve) Contour {
	c := Contour{Start: curves[0].from, Segments: make([]Segment, 0, len(curves))}
	for i := len(curves) - 1; i >= 0; i-- {
		c.Segments = append(c.Segments, curves[i].back().Segment)
	}
	return c
}

// back returns c run the other way.
func (c curve) back() curve {
	return curve{c.End, Segment{Kind: c.Kind, C1: c.C2, C2: c.C1, Bulge: -c.Bulge, End: c.from}}
}
