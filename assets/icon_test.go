package assets_test

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"os/exec"
	"testing"

	"tsugime/assets"
)

// The picture is drawn by librsvg, an SVG reader of others (rsvg-convert of the
// package librsvg2-bin); -update writes it.
func TestTheIconsPictureIsItsDrawing(t *testing.T) {
	const file = "desktop/org.tsugime.Tsugime.png"
	draw := exec.Command("rsvg-convert", "--width", "128", "--height", "128")
	draw.Stdin = bytes.NewReader(assets.Icon())
	drawn, err := draw.Output()
	if err != nil {
		t.Fatalf("rsvg-convert: %v; install librsvg2-bin", err)
	}
	if updating() {
		if err := os.WriteFile(file, drawn, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, got := decoded(t, drawn), decoded(t, assets.IconPicture())
	if want.Bounds() != got.Bounds() {
		t.Fatalf("the picture is %v, its drawing %v", got.Bounds(), want.Bounds())
	}
	const level = 257 // one of 256, as color.Color counts
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			a, b := want.At(x, y), got.At(x, y)
			r0, g0, b0, a0 := a.RGBA()
			r1, g1, b1, a1 := b.RGBA()
			for i, v := range [4]uint32{r0, g0, b0, a0} {
				if w := [4]uint32{r1, g1, b1, a1}[i]; v > w+4*level || w > v+4*level {
					t.Fatalf("at %d, %d the drawing is %v, the picture %v; go test ./assets -update", x, y, a, b)
				}
			}
		}
	}
}

func decoded(t *testing.T, data []byte) image.Image {
	t.Helper()
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return img
}
