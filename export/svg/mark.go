package svg

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

func (p *page) disc(d geom.Disc) {
	p.text(`<circle cx="`).mm(d.Centre.X).text(`" cy="`).mm(d.Centre.Y).text(`" r="`).mm(d.Diameter / 2).text("\"/>\n")
}

// outline writes path data (SVG 1.1, section 8.3), absolute throughout.
func (p *page) outline(o geom.Outline) *page {
	for _, c := range o {
		p.text("M").at(c.Start)
		at := c.Start
		for _, s := range c.Segments {
			// Quarter turns at most: no large-arc flag, and the radius to a tenth of
			// a micrometre keeps the height of the arc to that.
			for _, piece := range export.ArcPieces(at, s, 90) {
				p.segment(at, piece)
				at = piece.End
			}
		}
		p.text("Z")
	}
	return p
}

func (p *page) segment(at geom.Point, s geom.Segment) {
	switch {
	case s.Kind == geom.Cubic:
		p.text("C").at(s.C1).text(" ").at(s.C2).text(" ").at(s.End)
	case s.Kind == geom.Arc && s.Bulge != 0 && s.End != at:
		r := geom.Nanometre.Times(export.ArcRadius(at, s))
		p.text("A").mm(r).text(" ").mm(r).text(" 0 0 ")
		// The sweep flag is 1 where the arc turns from x to y, as Bulge is
		// positive there.
		if s.Bulge > 0 {
			p.text("1 ")
		} else {
			p.text("0 ")
		}
		p.at(s.End)
	default:
		p.text("L").at(s.End)
	}
}

func (p *page) line(l export.Line) {
	if len(l.Points) == 0 {
		return
	}
	p.text(`<path d="M`)
	for i, q := range l.Points {
		if i > 0 {
			p.text("L")
		}
		p.at(q)
	}
	if l.Closed {
		p.text("Z")
	}
	p.text("\"/>\n")
}

// lettering writes a text as one path, and what it says as its title.
func (p *page) lettering(t export.Text) {
	outline := export.Lettering(t)
	if len(outline) == 0 {
		return
	}
	p.text("<g><title>").escaped(t.Text).text("</title>")
	p.text(`<path d="`).outline(outline).text("\"/></g>\n")
}
