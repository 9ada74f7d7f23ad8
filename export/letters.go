package export

import (
	"unicode"

	"tsugime/repeat/geom"
)

// A letter is a shape that starts at the origin, y down, at an em of one metre:
// large enough that rounding to the nanometre leaves nothing to see.
type letter struct {
	outline geom.Outline
	advance geom.Length // to the next letter
}

// drawnEm is the em that letters are kept at.
const drawnEm = geom.Metre

// glyph returns the number of r in the font, zero where it has none; a space
// stays a space.
func (f *fount) glyph(r rune) uint16 {
	id := f.font.GlyphIndex(r)
	if id == 0 && unicode.Is(unicode.Zs, r) {
		id = f.font.GlyphIndex(' ')
	}
	return id
}

// letter returns the shape of r, which the font must have.
func (f *fount) letter(r rune) letter {
	f.mu.Lock()
	defer f.mu.Unlock()
	l, ok := f.made[r]
	if !ok {
		l = f.draw(f.glyph(r))
		f.made[r] = l
	}
	return l
}

func (f *fount) draw(id uint16) letter {
	var p glyphPath
	scale := f.size * float64(drawnEm) / float64(f.font.Head.UnitsPerEm)
	if err := f.font.GlyphPath(&p, id, 0, 0, 0, scale, 0); err != nil {
		return frame()
	}
	outline := p.outline.Moved(geom.Point{Y: -drawnEm.Times(f.rise)})
	if f.stroke > 0 {
		outline = thickened(outline, drawnEm.Times(f.stroke/2))
	}
	return letter{outline, geom.Nanometre.Times(scale * float64(f.font.GlyphAdvance(id)))}
}

// frame stands for a letter that no face has. It is as high as a capital.
func frame() letter {
	const high, wide, side, line = drawnEm * 72 / 100, drawnEm * 60 / 100, drawnEm * 6 / 100, drawnEm * 6 / 100
	return letter{
		outline: geom.Outline{
			corners(geom.Point{X: side, Y: -high}, geom.Point{X: wide - side, Y: -high}, geom.Point{X: wide - side}, geom.Point{X: side}),
			corners(geom.Point{X: side + line, Y: line - high}, geom.Point{X: side + line, Y: -line},
				geom.Point{X: wide - side - line, Y: -line}, geom.Point{X: wide - side - line, Y: line - high}),
		},
		advance: wide,
	}
}

func corners(points ...geom.Point) geom.Contour {
	c := geom.Contour{Start: points[0]}
	for _, p := range points[1:] {
		c.Segments = append(c.Segments, geom.Segment{Kind: geom.Line, End: p})
	}
	return c
}

// A glyphPath gathers what a font draws, y turned down.
type glyphPath struct{ outline geom.Outline }

func (p *glyphPath) add(s geom.Segment) {
	last := &p.outline[len(p.outline)-1]
	last.Segments = append(last.Segments, s)
}

// at is the end of what was drawn so far.
func (p *glyphPath) at() geom.Point {
	last := p.outline[len(p.outline)-1]
	if n := len(last.Segments); n > 0 {
		return last.Segments[n-1].End
	}
	return last.Start
}

func down(x, y float64) geom.Point {
	return geom.Point{X: geom.Nanometre.Times(x), Y: geom.Nanometre.Times(-y)}
}

// MoveTo starts a contour.
func (p *glyphPath) MoveTo(x, y float64) {
	p.outline = append(p.outline, geom.Contour{Start: down(x, y)})
}

// LineTo adds a straight piece.
func (p *glyphPath) LineTo(x, y float64) { p.add(geom.Segment{Kind: geom.Line, End: down(x, y)}) }

// QuadTo adds a quadratic Bézier as the cubic that is the same curve: its
// controls stand two thirds of the way to the one control.
func (p *glyphPath) QuadTo(cx, cy, x, y float64) {
	a, c, e := p.at(), down(cx, cy), down(x, y)
	p.add(geom.Segment{Kind: geom.Cubic, C1: twoThirds(a, c), C2: twoThirds(e, c), End: e})
}

func twoThirds(from, to geom.Point) geom.Point {
	d := to.Sub(from).Times(2)
	return from.Add(geom.Point{X: d.X / 3, Y: d.Y / 3})
}

// CubeTo adds a cubic Bézier.
func (p *glyphPath) CubeTo(x1, y1, x2, y2, x, y float64) {
	p.add(geom.Segment{Kind: geom.Cubic, C1: down(x1, y1), C2: down(x2, y2), End: down(x, y)})
}

// Close does nothing: every contour is closed.
func (p *glyphPath) Close() {}
