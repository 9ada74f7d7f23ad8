// Package svg writes a Drawing as SVG 1.1, in millimetres: the page and its user
// units are mm, each layer is a group with the layer's name as its id, a disc is
// a circle, an arc an arc. Words are outlines, each with what it says as its
// title, so that the file needs no font.
package svg

import (
	"bufio"
	"encoding/xml"
	"io"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Places is the number of decimals of a millimetre: a tenth of a micrometre,
// which is a thousandth of the narrowest web and far below any cutter's step;
// with six the file would be a third longer and no truer.
const Places = 4

// Format writes SVG files.
type Format struct{}

// Name returns "SVG".
func (Format) Name() string { return "SVG" }

// Extension returns ".svg".
func (Format) Extension() string { return ".svg" }

// Write writes d. The same drawing gives the same bytes.
func (Format) Write(w io.Writer, d export.Drawing) error {
	if err := d.Check(); err != nil {
		return err
	}
	p := &page{out: bufio.NewWriterSize(w, 1<<16)}
	p.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="`).mm(d.Width)
	p.text(`mm" height="`).mm(d.Height).text(`mm" viewBox="0 0 `).mm(d.Width).text(" ").mm(d.Height).text("\">\n")
	if d.Title != "" {
		p.text("<title>").escaped(d.Title).text("</title>\n")
	}
	for _, l := range d.Layers {
		p.layer(l)
	}
	p.text("</svg>\n")
	return p.out.Flush()
}

// A page is what is being written. Its writer keeps the first error, which Flush
// gives back.
type page struct {
	out *bufio.Writer
	num []byte
}

func (p *page) text(s string) *page {
	p.out.WriteString(s)
	return p
}

// escaped writes text as XML; what XML can't hold becomes U+FFFD.
func (p *page) escaped(s string) *page {
	xml.EscapeText(p.out, []byte(s))
	return p
}

func (p *page) mm(l geom.Length) *page {
	p.num = l.AppendMM(p.num[:0], Places)
	p.out.Write(p.num)
	return p
}

func (p *page) at(q geom.Point) *page { return p.mm(q.X).text(" ").mm(q.Y) }

// layer writes a group, and in it a group for each kind of mark, which carries
// how the kind is painted.
func (p *page) layer(l export.Layer) {
	p.text(`<g id="`).text(l.Name).text("\">\n")
	if len(l.Discs)+len(l.Outlines) > 0 {
		p.text("<g").fill(l.Pen).stroke(l.Pen).text(">\n")
		for _, d := range l.Discs {
			p.disc(d)
		}
		for _, o := range l.Outlines {
			p.text(`<path d="`).outline(o).text("\"/>\n")
		}
		p.text("</g>\n")
	}
	if len(l.Lines) > 0 {
		p.text(`<g fill="none"`).stroke(l.Pen).text(">\n")
		for _, line := range l.Lines {
			p.line(line)
		}
		p.text("</g>\n")
	}
	if len(l.Texts) > 0 {
		p.text("<g").colour("fill", l.Pen.Colour).text(">\n")
		for _, t := range l.Texts {
			p.lettering(t)
		}
		p.text("</g>\n")
	}
	p.text("</g>\n")
}

func (p *page) fill(pen export.Pen) *page {
	switch {
	case !pen.Filled:
		return p.text(` fill="none"`)
	case pen.Fill != nil:
		return p.colour("fill", *pen.Fill)
	}
	return p.colour("fill", pen.Colour)
}

func (p *page) stroke(pen export.Pen) *page {
	if pen.Stroke == 0 {
		return p
	}
	p.colour("stroke", pen.Colour).text(` stroke-width="`).mm(pen.Stroke).text(`" stroke-linejoin="round"`)
	for i, dash := range pen.Dash {
		if i == 0 {
			p.text(` stroke-dasharray="`)
		} else {
			p.text(" ")
		}
		p.mm(dash)
	}
	if len(pen.Dash) > 0 {
		p.text(`"`)
	}
	return p
}

func (p *page) colour(name string, c export.Colour) *page {
	const digits = "0123456789abcdef"
	p.text(" ").text(name).text(`="#`)
	for _, v := range [3]uint8{c.R, c.G, c.B} {
		p.out.WriteByte(digits[v>>4])
		p.out.WriteByte(digits[v&15])
	}
	return p.text(`"`)
}
