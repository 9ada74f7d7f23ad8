package export

import (
	"math"
	"strconv"
	"sync"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"tsugime/repeat/geom"
)

const pangram = "The quick brown fox jumps over 13 lazy dogs: 181.818 mm × ½ “öß”"

// fontUnits reads a font by another reader, at one unit of 1/64 for each of its
// own: the advance of a text and the area of its letters in font units.
func fontUnits(t *testing.T, ttf []byte, text string) (advance, area float64) {
	t.Helper()
	f, err := sfnt.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	var b sfnt.Buffer
	ppem := fixed.Int26_6(f.UnitsPerEm())
	for _, r := range text {
		id, err := f.GlyphIndex(&b, r)
		if err != nil || id == 0 {
			t.Fatalf("%q: no letter, %v", r, err)
		}
		step, err := f.GlyphAdvance(&b, id, ppem, font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		advance += float64(step)
		pieces, err := f.LoadGlyph(&b, id, ppem, nil)
		if err != nil {
			t.Fatal(err)
		}
		area += math.Abs(glyphArea(pieces))
	}
	return advance, area
}

// glyphArea sums triangles about the origin and, for each quadratic Bézier, two
// thirds of the triangle of its control (Archimedes).
func glyphArea(pieces sfnt.Segments) float64 {
	var sum float64
	var now, start [2]float64
	cross := func(a, b [2]float64) float64 { return a[0]*b[1] - a[1]*b[0] }
	place := func(p fixed.Point26_6) [2]float64 { return [2]float64{float64(p.X), float64(p.Y)} }
	for _, s := range pieces {
		end := place(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			sum += cross(now, start) / 2
			start = end
		case sfnt.SegmentOpQuadTo:
			control := end
			end = place(s.Args[1])
			sum += cross(now, end)/2 + (cross(now, control)+cross(control, end)+cross(end, now))/3
		default:
			sum += cross(now, end) / 2
		}
		now = end
	}
	return sum + cross(now, start)/2
}

// The other reader rounds each letter's points to a whole font unit.
func TestLetteringIsWhatAnotherReaderFindsInTheFont(t *testing.T) {
	for _, c := range []struct {
		bold bool
		ttf  []byte
	}{{false, goregular.TTF}, {true, gobold.TTF}} {
		const em = 2048
		advance, area := fontUnits(t, c.ttf, pangram)
		height := geom.MM(7.5)
		unit := height.MM() / em
		if got := TextWidth(pangram, height, c.bold).MM(); math.Abs(got-advance*unit) > 1e-5 {
			t.Errorf("bold %t: width %.6f mm, want %.6f", c.bold, got, advance*unit)
		}
		got := Lettering(Text{Text: pangram, Height: height, Bold: c.bold}).AreaMM2()
		if want := area * unit * unit; math.Abs(got/want-1) > 1e-3 {
			t.Errorf("bold %t: letters of %.5f mm², want %.5f", c.bold, got, want)
		}
	}
}

func TestLettersStandUpOnTheirBaseline(t *testing.T) {
	b := Lettering(Text{At: geom.PtMM(10, 20), Text: "H", Height: geom.MM(10)}).Bounds()
	if b.Max.Y != geom.MM(20) || b.Min.Y > geom.MM(13.2) || b.Min.Y < geom.MM(12.4) {
		t.Errorf("a capital of 10 mm on y 20 stands from %s to %s mm, want about 12.8 to 20", b.Min.Y, b.Max.Y)
	}
	if b.Min.X < geom.MM(10) || b.Max.X > geom.MM(18) {
		t.Errorf("it stands from x %s to %s mm, want it right of 10", b.Min.X, b.Max.X)
	}
}

func TestAnAnchoredTextIsTheSameTextMoved(t *testing.T) {
	at := geom.PtMM(40, 30)
	text := Text{At: at, Text: "joint line", Height: geom.MM(4)}
	width := text.Width()
	start := Lettering(text).Bounds()
	for anchor, back := range map[Anchor]geom.Length{Middle: width / 2, End: width} {
		moved := text
		moved.Anchor = anchor
		if got, want := Lettering(moved).Bounds(), start.Moved(geom.Point{X: -back}); !nearBox(got, want) {
			t.Errorf("anchor %d: %v, want %v", anchor, got, want)
		}
		if got, want := moved.Begin(), at.Sub(geom.Point{X: back}); got != want {
			t.Errorf("anchor %d begins at %v, want %v", anchor, got, want)
		}
	}
}

// nearBox allows what two roundings leave.
func nearBox(a, b geom.Box) bool {
	for _, d := range []geom.Length{a.Min.X - b.Min.X, a.Min.Y - b.Min.Y, a.Max.X - b.Max.X, a.Max.Y - b.Max.Y} {
		if d.Abs() > 2 {
			return false
		}
	}
	return true
}

// A quarter turn clockwise takes right to down: x, y to -y, x about the place.
func TestATurnedTextReadsDownTheSheet(t *testing.T) {
	text := Text{At: geom.PtMM(40, 30), Text: "feed", Height: geom.MM(4)}
	b := Lettering(text).Bounds()
	text.TurnDeg = 90
	turn := func(p geom.Point) geom.Point {
		d := p.Sub(text.At)
		return text.At.Add(geom.Point{X: -d.Y, Y: d.X})
	}
	if got, want := Lettering(text).Bounds(), geom.BoxOf(turn(b.Min), turn(b.Max)); !nearBox(got, want) {
		t.Errorf("turned by 90° it fills %v, want %v", got, want)
	}
}

func TestALetterThatTheFontLacksIsSeen(t *testing.T) {
	for _, text := range []string{"𠮷", "\x01", "\n", "🖌"} {
		o := Lettering(Text{Text: text, Height: geom.MM(10)})
		b := o.Bounds()
		if len(o) != 2 || b.Width() != geom.MM(4.8) || b.Height() != geom.MM(7.2) {
			t.Errorf("%q is drawn as %d contours of %s × %s mm, want a frame of 4.8 × 7.2", text, len(o), b.Width(), b.Height())
		}
		// 4.8 × 7.2 less 3.6 × 6.0: the inner contour turns against the outer.
		if got, want := o.AreaMM2(), 4.8*7.2-3.6*6.0; math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: the frame has %.4f mm², want %.4f", text, got, want)
		}
	}
	if got := string(Lacking("a𠮷型b🖌紙𠮷")); got != "𠮷🖌" {
		t.Errorf("lacking %q, want 𠮷🖌", got)
	}
}

func TestASpaceStaysASpace(t *testing.T) {
	for _, space := range []string{" ", "\u00a0", "\u2009", "\u3000"} {
		if o := Lettering(Text{Text: space, Height: geom.MM(10)}); len(o) != 0 {
			t.Errorf("%q is drawn", space)
		}
		if TextWidth(space, geom.MM(10), false) <= 0 {
			t.Errorf("%q takes no room", space)
		}
	}
}

func TestNoTextHasNoOutline(t *testing.T) {
	for _, text := range []Text{{}, {Text: "a"}, {Height: geom.MM(3)}, {Text: "a", Height: -1}} {
		if o := Lettering(text); len(o) != 0 {
			t.Errorf("%+v is drawn", text)
		}
	}
}

func TestManyMayLetterAtOnce(t *testing.T) {
	fresh := load(Plain, 1, 0, 0)
	var wait sync.WaitGroup
	for i := range 8 {
		wait.Go(func() {
			for j := range 200 {
				r := rune('!' + (i*31+j)%90)
				want := plain().letter(r)
				if got := fresh.letter(r); got.advance != want.advance || got.outline.PathData(6) != want.outline.PathData(6) {
					t.Errorf("%q differs from one asked for alone", r)
				}
			}
		})
	}
	wait.Wait()
}

// A register sheet has some hundred figures.
func BenchmarkLetterAHundredFigures(b *testing.B) {
	for b.Loop() {
		for i := range 100 {
			Lettering(Text{Text: strconv.Itoa(100_000 + i), Height: geom.MM(3), TurnDeg: 30})
		}
	}
}
