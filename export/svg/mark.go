package svg

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

func (p *page) disc(d geom.Disc) {
	p.text(`<circle cx="`).mm(d.Centre.X).text(`" cy="`).mm(d.Centre.Y).text(`" r="`).mm(d.Diameter / 2).text("\"/>\n")
}

// outline writes path data. Its arcs are cut into quarter turns at most, for
// which a radius to a tenth of a micrometre keeps the height of the arc to that;
// near a half circle it would be off by a hundred times as much.
func (p *page) outline(o geom.Outline) *page {
	p.num = quartered(o).AppendPathData(p.num[:0], Places)
	p.out.Write(p.num)
	return p
}

func quartered(o geom.Outline) geom.Outline {
	cut := make(geom.Outline, len(o))
	for i, c := range o {
		cut[i].Start = c.Start
		at := c.Start
		for _, s := range c.Segments {
			cut[i].Segments = append(cut[i].Segments, export.ArcPieces(at, s, 90)...)
			at = s.End
		}
	}
	return cut
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
