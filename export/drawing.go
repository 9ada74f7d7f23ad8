package export

import "tsugime/repeat/geom"

// A Drawing is one picture at true scale: x right, y down, the origin at its top
// left corner. A writer whose format has y up flips it.
type Drawing struct {
	Title         string
	Width, Height geom.Length
	Layers        []Layer // painted in this order
}

// A Layer is marks that belong together: a group of an SVG, a layer of a DXF.
type Layer struct {
	Name     string // a letter first, then letters, digits, "-" and "_"; unique in its drawing
	Pen      Pen
	Discs    []geom.Disc
	Outlines []geom.Outline
	Lines    []Line
	Texts    []Text
}

// A Pen is how a layer's marks are drawn. Discs and outlines are filled where
// Filled is set and drawn around where Stroke is not zero; lines are drawn with
// Stroke; texts are filled with Colour. Strokes end flat at their last point and
// have round corners.
type Pen struct {
	Colour Colour      // of strokes, texts, and fills unless Fill says otherwise
	Filled bool        // fill discs and outlines (non-zero rule)
	Fill   *Colour     // nil for Colour
	Stroke geom.Length // width of lines; zero draws none
	Dash   []geom.Length
}

// A Colour is red, green, blue, each 0 to 255.
type Colour struct{ R, G, B uint8 }

// The colours of the sheets. Sheets are read under a lamp and copied: black,
// one grey, one mark colour that differs in lightness too.
var (
	Black = Colour{0x1a, 0x17, 0x14}
	Grey  = Colour{0x8c, 0x86, 0x7e}
	Pale  = Colour{0xe6, 0xe1, 0xd8}
	Mark  = Colour{0xb0, 0x3a, 0x1f}
	White = Colour{0xff, 0xff, 0xff}
)

// A Line is an open run of straight pieces; Closed joins its ends.
type Line struct {
	Points []geom.Point
	Closed bool
}

// An Anchor says which point of a text stands at its place.
type Anchor int

// The anchors, all on the baseline.
const (
	Start Anchor = iota
	Middle
	End
)

// A Text is one line of lettering. Height is the size of the letters: their em,
// of which a capital is about 0.7.
type Text struct {
	At      geom.Point
	Height  geom.Length
	Text    string
	Anchor  Anchor
	TurnDeg float64 // clockwise on the sheet
	Bold    bool
}
