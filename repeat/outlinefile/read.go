package outlinefile

import (
	"bytes"
	"io"

	"tsugime/repeat/geom"
)

// Read reads an SVG or a DXF file, whichever it is: SVG begins with a bracket, DXF
// with a number. unit is for ReadDXF.
func Read(r io.Reader, unit geom.Unit) (Drawing, error) {
	data, err := readAll(r)
	if err != nil {
		return Drawing{}, err
	}
	start := bytes.TrimLeft(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")), " \t\r\n")
	switch {
	case len(start) == 0:
		return Drawing{}, faultf(0, "the file is empty; give an SVG or DXF file")
	case start[0] == '<':
		return ReadSVG(bytes.NewReader(data))
	case start[0] == 0xff || start[0] == 0xfe:
		return Drawing{}, faultf(1, "it is written in UTF-16; save it as UTF-8")
	}
	return ReadDXF(bytes.NewReader(data), unit)
}

// Centred returns the shape of p about its own middle, and where that stands.
func (p Piece) Centred() (geom.Shape, geom.Point) {
	at := p.Shape.Disc.Centre
	if !p.Shape.Round() {
		at = p.Shape.Bounds().Centre()
	}
	return p.Shape.Moved(at.Neg()), at
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
