package outlinefile

import (
	"bytes"
	"io"
	"slices"
	"strings"

	"tsugime/repeat/geom"
)

// Options say how a file is read. The zero Options take it as it is.
type Options struct {
	// Unit is what a DXF file measures in, against what it says itself; zero leaves
	// that to the file.
	Unit geom.Unit
	// Lines takes what an SVG file strokes and doesn't fill as lines to cut along, not
	// as bands: they are chained to outlines and nested as those of DXF.
	Lines bool
}

// Read reads an SVG or a DXF file, whichever it is: SVG begins with a bracket, DXF
// with a number.
func Read(r io.Reader, with Options) (Drawing, error) {
	data, err := readAll(r)
	if err != nil {
		return Drawing{}, err
	}
	start := bytes.TrimLeft(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")), " \t\r\n")
	switch {
	case len(start) == 0:
		return Drawing{}, faultf(0, "the file is empty; give an SVG or DXF file")
	case start[0] == '<':
		return ReadSVG(bytes.NewReader(data), with)
	case start[0] == 0xff || start[0] == 0xfe:
		return Drawing{}, faultf(1, "it is written in UTF-16; save it as UTF-8")
	}
	return ReadDXF(bytes.NewReader(data), with)
}

// Centred returns the shape of p about its own middle, and where that stands.
func (p Piece) Centred() (geom.Shape, geom.Point) {
	at := p.Shape.Disc.Centre
	if !p.Shape.Round() {
		at = p.Shape.Bounds().Centre()
	}
	return p.Shape.Moved(at.Neg()), at
}

// Stroked reports whether some of d is the band of a stroke.
func (d Drawing) Stroked() bool {
	return slices.ContainsFunc(d.Pieces, func(p Piece) bool { return strings.HasSuffix(p.Kind, strokeKind) })
}

// Moved returns d moved by a way.
func (d Drawing) Moved(by geom.Point) Drawing {
	moved := Drawing{make([]Piece, len(d.Pieces)), d.Notes}
	for i, p := range d.Pieces {
		p.Shape = p.Shape.Moved(by)
		moved.Pieces[i] = p
	}
	return moved
}

// AsOne returns d with all its pieces as one.
func (d Drawing) AsOne() Drawing {
	if len(d.Pieces) < 2 {
		return d
	}
	p := d.Pieces[0]
	p.Shape, p.Kind = d.Joined(), "all as one"
	return Drawing{[]Piece{p}, d.Notes}
}
