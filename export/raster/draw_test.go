package raster

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

func TestLightIsMixedNotNumbers(t *testing.T) {
	black, white := color.RGBA{A: 255}, color.RGBA{255, 255, 255, 255}
	m := mixes(black, white)
	// Half the light is the sRGB number 188 (IEC 61966-2-1: 0.5 → 0.7354).
	for level, want := range map[int]uint8{0: 0, 128: 188, 255: 255} {
		if got := uint8(m[level]); got != want {
			t.Errorf("level %d is %d, want %d", level, got, want)
		}
	}
	for c := range 256 {
		if got := number(light(uint8(c))); got != uint8(c) {
			t.Errorf("number %d comes back from light as %d", c, got)
		}
	}
}

func TestBlendAndOverAgree(t *testing.T) {
	p := NewPlane(1024, 16) // long enough for the mixes to be kept
	for i := range p.Cover {
		p.Cover[i] = uint8(i * 7)
	}
	paper, open := color.RGBA{90, 58, 34, 255}, color.RGBA{244, 239, 228, 255}
	want, got := image.NewRGBA(image.Rect(0, 0, p.W, p.H)), image.NewRGBA(image.Rect(0, 0, p.W, p.H))
	p.Blend(want, paper, open)
	draw.Draw(got, got.Rect, image.NewUniform(paper), image.Point{}, draw.Src)
	p.Over(got, open)
	if !bytes.Equal(want.Pix, got.Pix) {
		t.Error("paper painted over is not what Blend paints")
	}
}

// inkMM2 draws a layer in black on white and returns the area of its ink.
func inkMM2(t *testing.T, l export.Layer, scale float64) float64 {
	t.Helper()
	p := NewPlane(int(20*scale), int(20*scale))
	if l.Pen.Stroke > 0 {
		drawStrokes(p, l, View{PxPerMM: scale})
	}
	sum := 0.0
	for _, s := range p.sum {
		sum += float64(s)
	}
	return sum / scale / scale
}

func TestStrokesHaveTheAreaOfTheirWidth(t *testing.T) {
	at := geom.PtMM
	square := export.Line{Points: []geom.Point{at(3, 3), at(15, 3), at(15, 15), at(3, 15)}, Closed: true}
	slant := export.Line{Points: []geom.Point{at(2, 3), at(14, 8)}}
	disc := geom.Disc{Centre: at(9.3, 9.7), Diameter: geom.MM(11)}
	dash := []geom.Length{geom.MM(2), geom.MM(1)}
	cases := []struct {
		name string
		l    export.Layer
		want float64
	}{
		{"a line", export.Layer{Lines: []export.Line{slant}}, 13 * 0.3},
		{"a square", export.Layer{Lines: []export.Line{square}}, 48 * 0.3},
		{"a rim", export.Layer{Discs: []geom.Disc{disc}}, math.Pi * 11 * 0.3},
		{"an outline", export.Layer{Outlines: []geom.Outline{{{Start: at(5, 5), Segments: []geom.Segment{
			{Kind: geom.Arc, End: at(13, 5), Bulge: 1}, {Kind: geom.Arc, End: at(5, 5), Bulge: 1}}}}}}, math.Pi * 8 * 0.3},
		{"a dashed line", export.Layer{Lines: []export.Line{slant}, Pen: export.Pen{Dash: dash}}, 9 * 0.3},
		{"a dashed square", export.Layer{Lines: []export.Line{square}, Pen: export.Pen{Dash: dash}}, 32 * 0.3},
	}
	for _, c := range cases {
		c.l.Pen.Stroke = geom.MM(0.3)
		for _, scale := range []float64{2, 9.7, 31} {
			if got := inkMM2(t, c.l, scale); math.Abs(got-c.want) > 0.002*c.want {
				t.Errorf("%s at %g px/mm has %.4f mm² of ink, want %.4f", c.name, scale, got, c.want)
			}
		}
	}
}

// sample is a drawing with every kind of mark.
func sample() export.Drawing {
	at := geom.PtMM
	return export.Drawing{Title: "sample", Width: geom.MM(60), Height: geom.MM(40), Layers: []export.Layer{
		{Name: "cut", Pen: export.Pen{Colour: export.Black, Filled: true}, Discs: []geom.Disc{{Centre: at(10, 10), Diameter: geom.MM(6)}}},
		{Name: "frame", Pen: export.Pen{Colour: export.Mark, Stroke: geom.MM(0.4)},
			Lines: []export.Line{{Points: []geom.Point{at(2, 2), at(58, 2), at(58, 38), at(2, 38)}, Closed: true}}},
		{Name: "words", Pen: export.Pen{Colour: export.Grey}, Texts: []export.Text{{At: at(30, 30), Height: geom.MM(5), Text: "Step 181.8 mm", Anchor: export.Middle}}},
	}}
}

func TestADrawingIsPaintedWhereItStands(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 600, 400))
	draw.Draw(img, img.Rect, image.White, image.Point{}, draw.Src)
	if err := Draw(img, sample(), View{PxPerMM: 10}); err != nil {
		t.Fatal(err)
	}
	white := color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		x, y int
		want color.RGBA
	}{{100, 100, rgba(export.Black)}, {100, 125, rgba(export.Black)}, {100, 132, white}, {300, 20, rgba(export.Mark)},
		{20, 200, rgba(export.Mark)}, {300, 100, white}, {599, 399, white}} {
		if got := img.RGBAAt(c.x, c.y); got != c.want {
			t.Errorf("pixel %d, %d is %v, want %v", c.x, c.y, got, c.want)
		}
	}
	grey := 0
	for y := 265; y < 301; y++ {
		for x := 100; x < 500; x++ {
			if img.RGBAAt(x, y) == rgba(export.Grey) {
				grey++
			}
		}
	}
	if grey < 500 {
		t.Errorf("the words have %d whole pixels of ink, want 500 at least", grey)
	}
}

func TestAPNGSaysHowLargeItIs(t *testing.T) {
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := (PNG{DPI: 300}).Write(w, sample()); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same drawing gave other bytes")
	}
	// The reader checks the sum of every chunk.
	img, err := png.Decode(bytes.NewReader(a.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := img.Bounds().Size(), image.Pt(709, 473); got != want { // 60 and 40 mm of 11.811 px
		t.Errorf("the picture is %v, want %v", got, want)
	}
	i := bytes.Index(a.Bytes(), []byte("pHYs"))
	if i != 37 {
		t.Fatalf("pHYs is at byte %d, want 37, before the pixels", i)
	}
	if x := binary.BigEndian.Uint32(a.Bytes()[i+4:]); x != 11811 || a.Bytes()[i+12] != 1 {
		t.Errorf("the file says %d pixels to unit %d, want 11811 to the metre (1)", x, a.Bytes()[i+12])
	}
}

func TestAPictureTooLargeIsRefused(t *testing.T) {
	d := sample()
	d.Width, d.Height = 13*geom.Metre, geom.Metre
	err := PNG{DPI: 600}.Write(&bytes.Buffer{}, d)
	if err == nil || !strings.Contains(err.Error(), "choose a resolution") {
		t.Errorf("got %v, want a refusal that says what to do", err)
	}
	for _, dpi := range []float64{0, -3, math.Inf(1), math.NaN()} {
		if err := (PNG{DPI: dpi}).Write(&bytes.Buffer{}, sample()); err == nil {
			t.Errorf("%g dpi was taken", dpi)
		}
	}
}
