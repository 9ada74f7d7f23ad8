package export

import (
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// sound is a drawing that a writer takes.
func sound() Drawing {
	return Drawing{Title: "t", Width: geom.MM(10), Height: geom.MM(10), Layers: []Layer{
		{Name: "cut", Pen: Pen{Filled: true}, Discs: []geom.Disc{{Centre: geom.PtMM(5, 5), Diameter: geom.MM(1)}}},
		{Name: "words", Texts: []Text{{Text: "a", Height: geom.MM(2), At: geom.PtMM(1, 9)}}},
	}}
}

func TestASoundDrawingPasses(t *testing.T) {
	if err := sound().Check(); err != nil {
		t.Error(err)
	}
}

func TestWhatWouldBeLostOrRefusedIsTold(t *testing.T) {
	line := []Line{{Points: []geom.Point{{}, geom.PtMM(1, 1)}}}
	for _, c := range []struct {
		name  string
		spoil func(*Drawing)
		want  string
	}{
		{"no size", func(d *Drawing) { d.Height = 0 }, "give it a width and a height"},
		{"too long", func(d *Drawing) { d.Width = MaxSide + 1 }, "cut it into parts"},
		{"a layer without a name", func(d *Drawing) { d.Layers[0].Name = "" }, "can't name a layer"},
		{"a layer that starts with a digit", func(d *Drawing) { d.Layers[0].Name = "0-5mm" }, "can't name a layer"},
		{"a layer with a space", func(d *Drawing) { d.Layers[0].Name = "a b" }, "can't name a layer"},
		{"a layer beyond ASCII", func(d *Drawing) { d.Layers[0].Name = "型" }, "can't name a layer"},
		{"a layer that a DXF keeps for itself", func(d *Drawing) { d.Layers[0].Name = "DEFPOINTS" }, "can't name a layer"},
		{"a name twice but for capitals", func(d *Drawing) { d.Layers[1].Name = "CUT" }, "two layers"},
		{"shapes unseen", func(d *Drawing) { d.Layers[0].Pen = Pen{} }, "nothing would be seen of its shapes"},
		{"lines unseen", func(d *Drawing) { d.Layers[0].Lines = line }, "nothing would be seen of its lines"},
		{"a stroke below zero", func(d *Drawing) { d.Layers[0].Pen.Stroke = -1 }, "use zero for none"},
		{"a dash of nothing", func(d *Drawing) { d.Layers[0].Pen.Dash = []geom.Length{0} }, "give it a length"},
		{"a disc of nothing", func(d *Drawing) { d.Layers[0].Discs = []geom.Disc{{}} }, "give it one above zero"},
		{"a text of no height", func(d *Drawing) { d.Layers[1].Texts = []Text{{Text: "a"}} }, "has no height"},
	} {
		d := sound()
		c.spoil(&d)
		if err := d.Check(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

func TestBoundsHoldEveryMark(t *testing.T) {
	d := Drawing{Layers: []Layer{{
		Discs:    []geom.Disc{{Centre: geom.PtMM(5, 5), Diameter: geom.MM(2)}},
		Outlines: []geom.Outline{{{Start: geom.PtMM(8, 8), Segments: []geom.Segment{{Kind: geom.Arc, End: geom.PtMM(8, 12), Bulge: 1}}}}},
		Lines:    []Line{{Points: []geom.Point{geom.PtMM(1, 20), geom.PtMM(2, 21)}}},
		Texts:    []Text{{At: geom.PtMM(30, 9), Height: geom.MM(10), Text: "H", Anchor: End}},
	}}}
	b := d.Bounds()
	if b.Min.X != geom.MM(1) || b.Max.Y != geom.MM(21) || b.Max.X > geom.MM(30) || b.Max.X < geom.MM(28) || b.Min.Y > geom.MM(4) {
		t.Errorf("bounds %v", b)
	}
	if b := (Drawing{}).Bounds(); !b.Empty() {
		t.Errorf("an empty drawing has the bounds %v", b)
	}
}
