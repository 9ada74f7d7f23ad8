package geom

import (
	"fmt"
	"math"
)

// A Strip is a rectangle given by its centre line and its width; both ends are
// square. Its corners are put on the grid. Without a length or a width it is empty.
type Strip struct {
	From, To Point
	Width    Length
}

// Ring returns the corners of s, clockwise on the sheet; nil where s is empty.
func (s Strip) Ring() Ring {
	way := s.To.Sub(s.From)
	length := way.Norm()
	if length == 0 || s.Width <= 0 {
		return nil
	}
	half := float64(s.Width) / 2 / length
	side := Point{Length(math.Round(-half * float64(way.Y))), Length(math.Round(half * float64(way.X)))}
	ring := Ring{s.From.Sub(side), s.To.Sub(side), s.To.Add(side), s.From.Add(side)}
	if side == (Point{}) {
		return nil
	}
	return ring
}

// Without returns o less the strips, which may overlap each other and end inside
// o. Segments are split where a strip's edge crosses them and stay what they are:
// arcs arcs of their radius, cubics cubics; the new edges are straight. Each split
// is put on the grid. Rims of the result turn clockwise on the sheet, holes
// against them. Where no strip meets o, the result is o mended.
//
// It fails where o or a strip is wider or higher than MaxSpan/2.
func (o Outline) Without(strips ...Strip) (Outline, error) { return o.clipped(strips, false) }

// Within returns what of o lies in the strips; see Without.
func (o Outline) Within(strips ...Strip) (Outline, error) { return o.clipped(strips, true) }

// Without returns s less the strips. A disc that none of them meets stays a disc;
// one that is cut becomes an outline of arcs. What is covered wholly becomes an
// outline without contours.
func (s Shape) Without(strips ...Strip) (Shape, error) { return s.clipped(strips, false) }

// Within returns what of s lies in the strips; see Shape.Without.
func (s Shape) Within(strips ...Strip) (Shape, error) { return s.clipped(strips, true) }

func (s Shape) clipped(strips []Strip, keepInside bool) (Shape, error) {
	if !s.Round() {
		o, err := s.Outline.clipped(strips, keepInside)
		return Shape{Outline: o}, err
	}
	near := stripsNear(s.Disc.Bounds(), strips)
	if len(near) == 0 && !keepInside {
		return s, nil
	}
	whole := Outline{s.Disc.contour()}
	o, err := clip(whole, near, keepInside)
	if err == nil && len(o) == 1 && &o[0].Segments[0] == &whole[0].Segments[0] {
		return s, nil
	}
	return Shape{Outline: o}, err
}

// contour returns d as two half circles, clockwise on the sheet.
func (d Disc) contour() Contour {
	left := Point{d.Centre.X - d.Diameter/2, d.Centre.Y}
	right := Point{left.X + d.Diameter, d.Centre.Y}
	return Contour{right, []Segment{{Kind: Arc, Bulge: 1, End: left}, {Kind: Arc, Bulge: 1, End: right}}}
}

func (o Outline) clipped(strips []Strip, keepInside bool) (Outline, error) {
	sound, _ := o.Mended()
	return clip(sound, stripsNear(sound.hull(), strips), keepInside)
}

// hull returns a box that holds o.
func (o Outline) hull() Box {
	var b Box
	for _, c := range o {
		b = b.With(c.Start)
		at := c.Start
		for _, s := range c.Segments {
			b = b.Union(curve{at, s}.hull())
			at = s.End
		}
	}
	return b
}

// stripsNear returns the rings of the strips whose boxes meet b.
func stripsNear(b Box, strips []Strip) []Ring {
	var near []Ring
	for _, s := range strips {
		reach := s.Width + Grid
		if !outside(s.From, s.To, b.Grown(reach)) && !b.Empty() {
			if r := s.Ring(); r != nil && r.Bounds().Meets(b) {
				near = append(near, r)
			}
		}
	}
	return near
}

// clip returns the sound outline o less the rings, or inside them.
func clip(o Outline, rings []Ring, keepInside bool) (Outline, error) {
	if len(rings) == 0 {
		if keepInside {
			return Outline{}, nil
		}
		return o, nil
	}
	all := o.hull()
	for _, r := range rings {
		b := r.Bounds()
		if b.Width() > MaxSpan/2 || b.Height() > MaxSpan/2 {
			return nil, fmt.Errorf("a strip is %s × %s mm; keep it within %s mm each way",
				b.Width(), b.Height(), MaxSpan/2)
		}
	}
	if all.Width() > MaxSpan/2 || all.Height() > MaxSpan/2 {
		return nil, fmt.Errorf("an outline is %s × %s mm; keep it within %s mm each way",
			all.Width(), all.Height(), MaxSpan/2)
	}
	rings, err := joinedRings(rings)
	if err != nil {
		return nil, err
	}
	c := newClipper(o, rings)
	kept, ok := c.kept(keepInside)
	if ok {
		kept, ok = closed(kept)
	}
	if ok {
		return kept.outline(), nil
	}
	return clipFlat(o, rings, keepInside)
}

// joinedRings returns rings that cover the same and don't meet.
func joinedRings(rings []Ring) ([]Ring, error) {
	meets := false
	for i, r := range rings {
		for _, q := range rings[:i] {
			meets = meets || r.Bounds().Grown(Snap).Meets(q.Bounds())
		}
	}
	if !meets {
		return rings, nil
	}
	shapes := make([][]Ring, len(rings))
	for i, r := range rings {
		shapes[i] = []Ring{r}
	}
	region, err := Union(shapes)
	joint := make([]Ring, 0, len(region.Boundaries))
	for _, b := range region.Boundaries {
		joint = append(joint, b.Points)
	}
	return joint, err
}

// clipFlat does what clip does on straight pieces, by the exact arrangement. It is
// for the rare outline that runs within nanometres along an edge, so that a split
// point can't tell on which side it is.
func clipFlat(o Outline, rings []Ring, keepInside bool) (Outline, error) {
	tangle := tangleOf(o.Rings(Chord))
	first := len(tangle)
	tangle = append(tangle, tangleOf(rings)...)
	want := firstLayer
	if keepInside {
		want += secondLayer
	}
	lines, err := enclosed(tangle, first, func(cover layer) bool { return cover == want })
	if err != nil {
		return nil, err
	}
	flat := make(Outline, 0, len(lines))
	for _, b := range lines {
		flat = append(flat, b.Points.contour())
	}
	return flat, nil
}

// tangleOf returns rings that have an inside, ready to be arranged.
func tangleOf(rings []Ring) []solid {
	tangle := make([]solid, 0, len(rings))
	for _, r := range rings {
		if r = distinct(r); len(r) >= 3 {
			tangle = append(tangle, solid{ring: r, box: around(r)})
		}
	}
	return tangle
}

// enclosed returns the lines around what is inside by how often the rings of the
// tangle go around it; the first so many are of the first layer.
func enclosed(tangle []solid, first int, inside func(cover layer) bool) ([]Boundary, error) {
	a := arrangement{hot: make([][]bool, len(tangle)), first: first}
	var all Box
	for _, s := range tangle {
		a.rings, a.boxes, a.in = append(a.rings, s.ring), append(a.boxes, s.box), append(a.in, true)
		all = all.Union(s.box)
	}
	if len(tangle) == 0 {
		return nil, nil
	}
	var err error
	if a.t, err = newTorus(all, nil); err != nil {
		return nil, err
	}
	a.grid = boxGrid(a.t, a.boxes)
	lines, _, err := a.boundaries(inside)
	return lines, err
}

// contour returns r as a contour of lines.
func (r Ring) contour() Contour {
	c := Contour{Start: r[0], Segments: make([]Segment, 0, len(r))}
	for i := range r {
		c.Segments = append(c.Segments, Segment{Kind: Line, End: r[(i+1)%len(r)]})
	}
	return c
}
