package export

import (
	"fmt"
	"strings"

	"tsugime/repeat/geom"
)

// MaxSide is the longest side of a drawing. Readers that keep coordinates as
// 32-bit floats (24 bits) still place a mark 100 m out to 0.006 mm.
const MaxSide = 100 * geom.Metre

// Check reports what would make a file that can't be read or that leaves marks
// out unseen: no size, a layer's name that a format refuses or that comes twice,
// marks that no pen draws, discs and letters without size. Every writer calls it
// first.
func (d Drawing) Check() error {
	if d.Width <= 0 || d.Height <= 0 {
		return fmt.Errorf("drawing %q is %s by %s mm; give it a width and a height", d.Title, d.Width, d.Height)
	}
	if d.Width > MaxSide || d.Height > MaxSide {
		return fmt.Errorf("drawing %q is %s by %s mm; %s mm is the most a file can hold exactly: cut it into parts", d.Title, d.Width, d.Height, MaxSide)
	}
	seen := map[string]bool{}
	for _, l := range d.Layers {
		if !layerName(l.Name) {
			return fmt.Errorf("drawing %q: %q can't name a layer; use a letter, then letters, digits, - and _", d.Title, l.Name)
		}
		// A DXF does not tell capitals from small letters.
		if name := strings.ToLower(l.Name); seen[name] {
			return fmt.Errorf("drawing %q has two layers %q; give each a name of its own", d.Title, l.Name)
		} else {
			seen[name] = true
		}
		if err := l.check(); err != nil {
			return fmt.Errorf("drawing %q, layer %q: %w", d.Title, l.Name, err)
		}
	}
	return nil
}

// layerName reports whether a name may be an id in an SVG (XML 1.0, production
// 5), a layer in a DXF (which keeps Defpoints for itself) and part of a file name.
func layerName(name string) bool {
	if name == "" || len(name) > 64 || strings.EqualFold(name, "defpoints") {
		return false
	}
	for i, r := range name {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		other := r >= '0' && r <= '9' || r == '-' || r == '_'
		if !letter && (i == 0 || !other) {
			return false
		}
	}
	return true
}

func (l Layer) check() error {
	p := l.Pen
	if p.Stroke < 0 {
		return fmt.Errorf("its stroke is %s mm wide; use zero for none", p.Stroke)
	}
	if len(l.Discs)+len(l.Outlines) > 0 && !p.Filled && p.Stroke == 0 {
		return fmt.Errorf("nothing would be seen of its shapes; fill them or give them a stroke")
	}
	if len(l.Lines) > 0 && p.Stroke == 0 {
		return fmt.Errorf("nothing would be seen of its lines; give them a stroke")
	}
	for _, dash := range p.Dash {
		if dash <= 0 {
			return fmt.Errorf("a dash or gap of %s mm; give it a length", dash)
		}
	}
	for _, d := range l.Discs {
		if d.Diameter <= 0 {
			return fmt.Errorf("a disc at %s, %s mm has the diameter %s mm; give it one above zero", d.Centre.X, d.Centre.Y, d.Diameter)
		}
	}
	for _, t := range l.Texts {
		if t.Height <= 0 {
			return fmt.Errorf("the text %q has no height; give it one", t.Text)
		}
	}
	return nil
}

// Bounds returns the box around all marks of d, without the width of strokes.
// It may reach past the edges of the drawing.
func (d Drawing) Bounds() geom.Box {
	var b geom.Box
	for _, l := range d.Layers {
		for _, disc := range l.Discs {
			b = b.Union(disc.Bounds())
		}
		for _, o := range l.Outlines {
			b = b.Union(o.Bounds())
		}
		for _, line := range l.Lines {
			b = b.Union(geom.BoxOf(line.Points...))
		}
		for _, t := range l.Texts {
			b = b.Union(Lettering(t).Bounds())
		}
	}
	return b
}
