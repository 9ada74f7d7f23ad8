// Package exporttest holds the drawings that the tests of every writer write, and
// a disk that runs full.
package exporttest

import (
	"errors"
	"math"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Tiny is a drawing with one mark of each kind, 100 × 60 mm, small enough to be
// read as text.
//
// Its filled shapes, apart from each other, and their areas in mm²: a disc of
// 3 mm (7.068583), a slot 8 mm long and 2 mm wide with half-round ends (2·8 + π =
// 19.141593), a square of 20 mm with a square hole of 10 mm (300), a leaf of two
// cubics (LeafMM2).
func Tiny() export.Drawing {
	cut := export.Layer{
		Name:     "cut",
		Pen:      export.Pen{Colour: export.Black, Filled: true},
		Discs:    []geom.Disc{{Centre: geom.PtMM(10, 12), Diameter: geom.MM(3)}},
		Outlines: []geom.Outline{slot(), frame(), leaf()},
	}
	line := export.Layer{
		Name: "joint-line",
		Pen:  export.Pen{Colour: export.Mark, Stroke: geom.MM(0.25), Dash: []geom.Length{geom.MM(2), geom.MM(1)}},
		Lines: []export.Line{
			{Points: []geom.Point{geom.PtMM(0, 50), geom.PtMM(40, 48), geom.PtMM(100, 50)}},
			{Points: []geom.Point{geom.PtMM(1, 1), geom.PtMM(99, 1), geom.PtMM(99, 59), geom.PtMM(1, 59)}, Closed: true},
		},
	}
	words := export.Layer{
		Name: "words",
		Pen:  export.Pen{Colour: export.Grey},
		Texts: []export.Text{
			{At: geom.PtMM(50, 45), Height: geom.MM(4), Text: "Step <60 mm> & “half”", Anchor: export.Middle},
			{At: geom.PtMM(97, 40), Height: geom.MM(3), Text: "feed", Anchor: export.End, TurnDeg: -90, Bold: true},
		},
	}
	return export.Drawing{Title: "One of each & all", Width: geom.MM(100), Height: geom.MM(60), Layers: []export.Layer{cut, line, words}}
}

func slot() geom.Outline {
	return geom.Outline{{Start: geom.PtMM(20, 10), Segments: []geom.Segment{
		{End: geom.PtMM(28, 10)},
		{Kind: geom.Arc, End: geom.PtMM(28, 12), Bulge: 1},
		{End: geom.PtMM(20, 12)},
		{Kind: geom.Arc, End: geom.PtMM(20, 10), Bulge: 1},
	}}}
}

func frame() geom.Outline {
	return geom.Outline{
		{Start: geom.PtMM(40, 10), Segments: []geom.Segment{{End: geom.PtMM(60, 10)}, {End: geom.PtMM(60, 30)}, {End: geom.PtMM(40, 30)}}},
		{Start: geom.PtMM(45, 15), Segments: []geom.Segment{{End: geom.PtMM(45, 25)}, {End: geom.PtMM(55, 25)}, {End: geom.PtMM(55, 15)}}},
	}
}

func leaf() geom.Outline {
	return geom.Outline{{Start: geom.PtMM(70, 20), Segments: []geom.Segment{
		{Kind: geom.Cubic, C1: geom.PtMM(75, 10), C2: geom.PtMM(85, 10), End: geom.PtMM(90, 20)},
		{Kind: geom.Cubic, C1: geom.PtMM(85, 30), C2: geom.PtMM(75, 30), End: geom.PtMM(70, 20)},
	}}}
}

// LeafMM2 is the area of Tiny's leaf. Over its chord a half of it is y = 30·u with
// u = t(1−t), and x' = 15 + 30·u; the integral of y·x' is 30·(15/6 + 30/30) = 105.
const LeafMM2 = 210

// FilledMM2 is the area of all that Tiny fills, without its words.
const FilledMM2 = 9*math.Pi/4 + 16 + math.Pi + 300 + LeafMM2

// Field is the drawing that people wait for: discs discs of two sizes on a
// half-drop ground, about 60 for each cm², on one layer.
func Field(discs int) export.Drawing {
	l := export.Layer{Name: "cut", Pen: export.Pen{Colour: export.Black, Filled: true}}
	for i := range discs {
		row, column := geom.Length(i/254), geom.Length(i%254)
		d := geom.Disc{Centre: geom.Point{X: 2*geom.Millimetre + column*1_291_234 + row%2*645_617, Y: 2*geom.Millimetre + row*691_237}, Diameter: geom.MM(0.5)}
		if i%7 == 0 {
			d.Diameter = geom.MM(0.45)
		}
		l.Discs = append(l.Discs, d)
	}
	rows := geom.Length((discs + 253) / 254)
	return export.Drawing{Title: "field", Width: geom.MM(334), Height: 4*geom.Millimetre + rows*691_237, Layers: []export.Layer{l}}
}

// ErrFull is what a full disk says.
var ErrFull = errors.New("no space left")

// A FullDisk takes Room bytes and then fails.
type FullDisk struct{ Room int }

// Write takes what there is room for.
func (f *FullDisk) Write(b []byte) (int, error) {
	if len(b) > f.Room {
		n := f.Room
		f.Room = 0
		return n, ErrFull
	}
	f.Room -= len(b)
	return len(b), nil
}

// TellsAFullDisk fails where write says nothing of a disk that is full after some
// of size bytes, wherever that happens.
func TellsAFullDisk(t *testing.T, size int, write func(*FullDisk) error) {
	t.Helper()
	for _, room := range []int{0, 1, size / 3, size / 2, size - 1} {
		if err := write(&FullDisk{room}); !errors.Is(err, ErrFull) {
			t.Errorf("room for %d of %d bytes: got %v, want %v", room, size, err, ErrFull)
		}
	}
	if err := write(&FullDisk{size}); err != nil {
		t.Errorf("room for all %d bytes: %v", size, err)
	}
}
