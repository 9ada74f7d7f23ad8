package raster

import (
	"fmt"
	"image"
	"image/color"
	"math"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Draw paints what the view shows of a drawing over what img holds already:
// layer by layer, fills before strokes before words, each with its exact area.
// Where two marks of one layer lie over one another the layer's ink is not
// doubled.
func Draw(img *image.RGBA, d export.Drawing, v View) error {
	if !(v.PxPerMM > 0) || math.IsInf(v.PxPerMM, 0) {
		return fmt.Errorf("picture %q: %g pixels to a millimetre can't be drawn; give more than 0", d.Title, v.PxPerMM)
	}
	p := NewPlane(img.Rect.Dx(), img.Rect.Dy())
	for _, layer := range d.Layers {
		drawLayer(img, p, layer, v)
	}
	return nil
}

func drawLayer(img *image.RGBA, p *Plane, l export.Layer, v View) {
	ink := rgba(l.Pen.Colour)
	if l.Pen.Filled && len(l.Discs)+len(l.Outlines) > 0 {
		fill := ink
		if l.Pen.Fill != nil {
			fill = rgba(*l.Pen.Fill)
		}
		p.Reset()
		NewGround(shapes(l)).Paint(p, v, Lay{})
		p.Over(img, fill)
	}
	if l.Pen.Stroke > 0 {
		p.Reset()
		drawStrokes(p, l, v)
		p.Over(img, ink)
	}
	if len(l.Texts) > 0 {
		p.Reset()
		var words []geom.Shape
		for _, t := range l.Texts {
			words = append(words, letters(t)...)
		}
		NewGround(words).Paint(p, v, Lay{})
		p.Over(img, ink)
	}
}

func rgba(c export.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }

func shapes(l export.Layer) []geom.Shape {
	all := make([]geom.Shape, 0, len(l.Discs)+len(l.Outlines))
	for _, d := range l.Discs {
		all = append(all, geom.Shape{Disc: d})
	}
	for _, o := range l.Outlines {
		if o != nil {
			all = append(all, geom.Shape{Outline: o})
		}
	}
	return all
}

// letters returns a text as one outline.
func letters(t export.Text) []geom.Shape {
	if o := export.Lettering(t); o != nil {
		return []geom.Shape{{Outline: o}}
	}
	return nil
}
