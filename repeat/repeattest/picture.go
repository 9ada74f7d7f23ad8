package repeattest

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// GoldenPNG compares got with the picture testdata/name. Each channel of each
// pixel may be off by one of 255, for rounding; a single pixel further off fails
// the test and leaves in testdata/failed/name the two pictures with their
// difference between them: what was expected, what differs, what came. With
// -update the file is written instead.
func GoldenPNG(tb testing.TB, name string, got image.Image) {
	tb.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		put(tb, path, encode(tb, got))
		return
	}
	file, err := os.ReadFile(path)
	if err != nil {
		put(tb, failed(name), encode(tb, got))
		tb.Fatalf("no golden: %v; run the test with -update and look at what it writes", err)
	}
	want, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		tb.Fatalf("%s: %v", path, err)
	}
	if d := Compare(got, want); d.Pixels > 0 {
		put(tb, failed(name), encode(tb, triptych(got, want)))
		tb.Errorf("%s: %d pixels differ, the most by %d of 255 at %v; expected, difference and result are in %s",
			path, d.Pixels, d.Most, d.At, failed(name))
	}
}

// A Difference is how far two pictures are apart.
type Difference struct {
	Pixels int         // those with a channel off by more than one
	Most   int         // the greatest difference of a channel, 0 to 255
	At     image.Point // where that is
}

// Compare returns how far got is from want. Pictures of different size differ in
// every pixel that only one of them has.
func Compare(got, want image.Image) Difference {
	g, w := flat(got), flat(want)
	all := g.Rect.Union(w.Rect)
	var d Difference
	for y := all.Min.Y; y < all.Max.Y; y++ {
		for x := all.Min.X; x < all.Max.X; x++ {
			at := image.Pt(x, y)
			off := 255
			if at.In(g.Rect) && at.In(w.Rect) {
				off = apart(g.NRGBAAt(x, y), w.NRGBAAt(x, y))
			}
			if off > 1 {
				d.Pixels++
			}
			if off > d.Most {
				d.Most, d.At = off, at
			}
		}
	}
	return d
}

// apart is the greatest difference of a channel.
func apart(a, b color.NRGBA) int {
	most := 0
	for _, c := range [4][2]uint8{{a.R, b.R}, {a.G, b.G}, {a.B, b.B}, {a.A, b.A}} {
		most = max(most, int(c[0])-int(c[1]), int(c[1])-int(c[0]))
	}
	return most
}

// flat copies m so that its top left pixel is 0, 0.
func flat(m image.Image) *image.NRGBA {
	b := m.Bounds()
	out := image.NewNRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	draw.Draw(out, out.Rect, m, b.Min, draw.Src)
	return out
}

// triptych sets side by side what was expected, what differs (black on white)
// and what came.
func triptych(got, want image.Image) image.Image {
	g, w := flat(got), flat(want)
	all := g.Rect.Union(w.Rect)
	const gap = 4
	out := image.NewNRGBA(image.Rect(0, 0, 3*all.Dx()+2*gap, all.Dy()))
	draw.Draw(out, out.Rect, image.NewUniform(color.NRGBA{0x80, 0x80, 0x80, 0xff}), image.Point{}, draw.Src)
	draw.Draw(out, w.Rect, w, image.Point{}, draw.Src)
	draw.Draw(out, g.Rect.Add(image.Pt(2*(all.Dx()+gap), 0)), g, image.Point{}, draw.Src)
	for y := range all.Dy() {
		for x := range all.Dx() {
			ink := color.NRGBA{0xff, 0xff, 0xff, 0xff}
			at := image.Pt(x, y)
			if !at.In(g.Rect) || !at.In(w.Rect) || apart(g.NRGBAAt(x, y), w.NRGBAAt(x, y)) > 1 {
				ink = color.NRGBA{A: 0xff}
			}
			out.SetNRGBA(all.Dx()+gap+x, y, ink)
		}
	}
	return out
}

func encode(tb testing.TB, m image.Image) []byte {
	tb.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		tb.Fatal(err)
	}
	return b.Bytes()
}
