package repeattest

import (
	"image"
	"image/color"
	"strings"
	"testing"
)

func TestTheFirstLineThatDiffersIsShown(t *testing.T) {
	got := firstDifference([]byte("a\nb\nc"), []byte("a\nx\nc"))
	for _, want := range []string{"line 2", `got "b"`, `want "x"`} {
		if !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	if got := firstDifference([]byte("a"), []byte("a\nb")); !strings.Contains(got, "got the end of the file") {
		t.Errorf("%q does not say that the file ended", got)
	}
}

func grey(w, h int, v uint8) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = v
	}
	return m
}

func TestPicturesMayDifferByOneLevelAndNoMore(t *testing.T) {
	want := grey(4, 3, 100)
	for _, c := range []struct {
		name   string
		got    image.Image
		pixels int
	}{
		{"the same", grey(4, 3, 100), 0},
		{"one level off", grey(4, 3, 101), 0},
		{"two levels off", grey(4, 3, 102), 12},
		{"two levels under", grey(4, 3, 98), 12},
		{"wider", grey(5, 3, 100), 3},
		{"lower", grey(4, 2, 100), 4},
	} {
		if d := Compare(c.got, want); d.Pixels != c.pixels {
			t.Errorf("%s: %d pixels differ, want %d", c.name, d.Pixels, c.pixels)
		}
	}
	one := grey(4, 3, 100)
	one.SetNRGBA(2, 1, color.NRGBA{100, 100, 90, 100})
	if d := Compare(one, want); d != (Difference{1, 10, image.Pt(2, 1)}) {
		t.Errorf("one pixel off: %+v", d)
	}
}

// A part of a picture keeps its own corner; only what it shows counts.
func TestPicturesAreComparedFromTheirCorner(t *testing.T) {
	large := grey(8, 8, 100)
	if d := Compare(large.SubImage(image.Rect(2, 2, 6, 5)), grey(4, 3, 100)); d.Pixels != 0 {
		t.Errorf("a part differs in %d pixels", d.Pixels)
	}
}

func TestTheTriptychShowsWhereTheyDiffer(t *testing.T) {
	want, got := grey(4, 3, 255), grey(4, 3, 255)
	got.SetNRGBA(1, 2, color.NRGBA{A: 255})
	m := triptych(got, want)
	if b := m.Bounds(); b.Dx() != 3*4+2*4 || b.Dy() != 3 {
		t.Fatalf("it is %v", b)
	}
	black := color.NRGBA{A: 255}
	for x := range m.Bounds().Dx() {
		for y := range 3 {
			is := color.NRGBAModel.Convert(m.At(x, y)) == black
			if should := y == 2 && (x == 8+1 || x == 16+1); is != should {
				t.Errorf("pixel %d, %d is black: %t, want %t", x, y, is, should)
			}
		}
	}
}
