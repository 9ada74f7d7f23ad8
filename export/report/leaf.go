package report

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

// A pen is one of the few ways in which a sheet is drawn. The pens are painted
// in this order, so words are never covered.
type pen int

const (
	wash       pen = iota // quiet areas
	hairline              // guides, table lines
	rule                  // edges, frames
	thread                // joints on the picture of a garment
	halo                  // white beside a mark that lies on a picture
	dot                   // white under a number on a picture
	accentLine            // crosses, the joint, what is to be looked at
	accentArea            // this page of the map
	hole                  // what is cut
	words                 // text
	captions              // text that explains other text
	accentWord            // the few words in the accent
	penCount
)

// penLayers gives the layer of each pen.
var penLayers = [penCount]export.Layer{
	wash:       {Name: "wash", Pen: export.Pen{Colour: export.Pale, Filled: true}},
	hairline:   {Name: "hairlines", Pen: export.Pen{Colour: export.Grey, Stroke: 150 * geom.Micrometre}},
	rule:       {Name: "rules", Pen: export.Pen{Colour: export.Black, Stroke: 250 * geom.Micrometre}},
	thread:     {Name: "threads", Pen: export.Pen{Colour: export.Mark, Stroke: 90 * geom.Micrometre}},
	halo:       {Name: "halos", Pen: export.Pen{Colour: export.White, Stroke: 500 * geom.Micrometre}},
	dot:        {Name: "dots", Pen: export.Pen{Colour: export.Mark, Filled: true, Fill: &export.White, Stroke: 200 * geom.Micrometre}},
	accentLine: {Name: "marks", Pen: export.Pen{Colour: export.Mark, Stroke: 200 * geom.Micrometre}},
	accentArea: {Name: "here", Pen: export.Pen{Colour: export.Mark, Filled: true}},
	hole:       {Name: "holes", Pen: export.Pen{Colour: export.Black, Filled: true}},
	words:      {Name: "words", Pen: export.Pen{Colour: export.Black}},
	captions:   {Name: "captions", Pen: export.Pen{Colour: quiet}},
	accentWord: {Name: "mark-words", Pen: export.Pen{Colour: export.Mark}},
}

// quiet is the grey of small text: darker than the grey of lines, 5.6 to 1 on
// white, above the 4.5 to 1 that WCAG 2.1 (1.4.3) asks of text.
var quiet = export.Colour{R: 0x6b, G: 0x65, B: 0x5d}

// A leaf is a page in the making. It belongs to one goroutine; drawing hands
// over what was drawn.
type leaf struct {
	width, height geom.Length
	layers        [penCount]export.Layer
}

func newLeaf(width, height geom.Length) *leaf {
	return &leaf{width: width, height: height, layers: penLayers}
}

// drawing returns the layers that hold something.
func (l *leaf) drawing(title string) export.Drawing {
	d := export.Drawing{Title: title, Width: l.width, Height: l.height}
	for _, layer := range l.layers {
		if len(layer.Discs)+len(layer.Outlines)+len(layer.Lines)+len(layer.Texts) > 0 {
			d.Layers = append(d.Layers, layer)
		}
	}
	return d
}

func (l *leaf) line(p pen, points ...geom.Point) {
	l.layers[p].Lines = append(l.layers[p].Lines, export.Line{Points: points})
}

func (l *leaf) loop(p pen, points ...geom.Point) {
	l.layers[p].Lines = append(l.layers[p].Lines, export.Line{Points: points, Closed: true})
}

func (l *leaf) frame(p pen, b geom.Box) { l.loop(p, corners(b)...) }

func (l *leaf) disc(p pen, at geom.Point, diameter geom.Length) {
	l.layers[p].Discs = append(l.layers[p].Discs, geom.Disc{Centre: at, Diameter: diameter})
}

// area fills what the points enclose.
func (l *leaf) area(p pen, points ...geom.Point) {
	c := geom.Contour{Start: points[0]}
	for _, q := range points[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: q})
	}
	l.layers[p].Outlines = append(l.layers[p].Outlines, geom.Outline{c})
}

// text sets one line; it is not measured.
func (l *leaf) text(p pen, s style, at geom.Point, anchor export.Anchor, text string) {
	if text == "" {
		return
	}
	l.layers[p].Texts = append(l.layers[p].Texts, export.Text{
		At: at, Height: s.height, Text: text, Anchor: anchor, Bold: s.bold,
	})
}

// texts sets lines that were made elsewhere.
func (l *leaf) texts(p pen, texts []export.Text) {
	l.layers[p].Texts = append(l.layers[p].Texts, texts...)
}

// turned sets one line that reads upward (the left side of a sheet).
func (l *leaf) turned(p pen, s style, at geom.Point, anchor export.Anchor, text string) {
	l.layers[p].Texts = append(l.layers[p].Texts, export.Text{
		At: at, Height: s.height, Text: text, Anchor: anchor, Bold: s.bold, TurnDeg: -90,
	})
}

// lines sets a text on as many lines as the width asks for and returns the
// height used. at is the first baseline.
func (l *leaf) lines(p pen, s style, at geom.Point, width geom.Length, text string) geom.Length {
	broken := wrap(text, s, width)
	for i, t := range broken {
		l.text(p, s, geom.Point{X: at.X, Y: at.Y + s.leading()*geom.Length(i)}, export.Start, t)
	}
	return s.leading() * geom.Length(len(broken))
}

// arrow draws a slim arrow from a to b, upright or level.
func (l *leaf) arrow(p pen, a, b geom.Point) {
	l.line(p, a, b)
	d := b.Sub(a)
	n := d.Norm()
	ux, uy := float64(d.X)/n, float64(d.Y)/n
	barb := func(side float64) geom.Point {
		const long, wide = 2.4, 0.9 // mm
		return b.Add(geom.PtMM(-long*ux-side*wide*uy, -long*uy+side*wide*ux))
	}
	l.line(p, barb(1), b, barb(-1))
}

func corners(b geom.Box) []geom.Point {
	return []geom.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}
