package board

import (
	"cmp"
	"image"
	"image/color"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// strips draws strips of 2 × Radius: both sides, and at each end a tick that stands
// out of them. However thin, a strip is a few pixels wide.
func (p pen) strips(m Mark, r, width float64) {
	r = math.Max(r, 2*p.unit)
	for i := 0; i+1 < len(m.Points); i += 2 {
		a, b := p.spot(m.Points[i]), p.spot(m.Points[i+1])
		dx, dy := b.x-a.x, b.y-a.y
		l := math.Hypot(dx, dy)
		if l == 0 {
			continue
		}
		nx, ny := -dy/l, dx/l
		beside := func(s spot, by float64) spot { return spot{s.x + nx*by, s.y + ny*by} }
		for _, side := range [2]float64{-r, r} {
			if from, to, ok := p.seen(beside(a, side), beside(b, side)); ok {
				p.line(from, to, width, m.Colour)
			}
		}
		tick := r + math.Min(4*p.unit, l/4)
		for _, end := range [2]spot{a, b} {
			if from, to, ok := p.seen(beside(end, -tick), beside(end, tick)); ok {
				p.line(from, to, width, m.Colour)
			}
		}
	}
}

// cross draws two strokes that cross aslant.
func (p pen) cross(s spot, width float64, c color.RGBA) {
	d := 5 * p.unit
	p.line(spot{s.x - d, s.y - d}, spot{s.x + d, s.y + d}, width, c)
	p.line(spot{s.x - d, s.y + d}, spot{s.x + d, s.y - d}, width, c)
}

// hatch draws slanting lines in the box of two points, or in the outline of more.
func (p pen) hatch(m Mark, width float64) {
	if len(m.Points) < 2 {
		return
	}
	r := pixels(geom.BoxOf(m.Points...), p.view).Intersect(p.img.Rect)
	part, gap := p, int(math.Max(7*p.unit, 3))
	if r.Empty() {
		return
	}
	part.img = p.img.SubImage(r).(*image.RGBA)
	start := r.Min.X - r.Dy()
	start -= ((start+r.Min.Y)%gap + gap) % gap
	outline := make([]spot, len(m.Points))
	for i, at := range m.Points {
		outline[i] = p.spot(at)
	}
	for x := start; x < r.Max.X; x += gap {
		from, to := spot{float64(x), float64(r.Max.Y)}, spot{float64(x + r.Dy()), float64(r.Min.Y)}
		if len(outline) == 2 {
			part.line(from, to, width, m.Colour)
			continue
		}
		for _, piece := range inside(outline, from, to) {
			part.line(piece[0], piece[1], width, m.Colour)
		}
	}
}

// inside returns the pieces of the line from–to that lie in an outline, by the
// even-odd rule.
func inside(outline []spot, from, to spot) [][2]spot {
	dx, dy := to.x-from.x, to.y-from.y
	side := func(s spot) float64 { return dx*(s.y-from.y) - dy*(s.x-from.x) }
	var met []spot
	for i, b := range outline {
		a := outline[(i+len(outline)-1)%len(outline)]
		if sa, sb := side(a), side(b); (sa > 0) != (sb > 0) {
			t := sa / (sa - sb)
			met = append(met, spot{a.x + t*(b.x-a.x), a.y + t*(b.y-a.y)})
		}
	}
	slices.SortFunc(met, func(a, b spot) int { return cmp.Compare(dx*a.x+dy*a.y, dx*b.x+dy*b.y) })
	var pieces [][2]spot
	for i := 0; i+1 < len(met); i += 2 {
		pieces = append(pieces, [2]spot{met[i], met[i+1]})
	}
	return pieces
}
