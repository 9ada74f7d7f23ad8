package pdf

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// mixed has both scripts, in both weights, level and turned.
func mixed() export.Drawing {
	return export.Drawing{Title: "継ぎ目", Width: geom.MM(120), Height: geom.MM(60), Layers: []export.Layer{{
		Name: "words", Pen: export.Pen{Colour: export.Black},
		Texts: []export.Text{
			{At: geom.PtMM(10, 20), Height: geom.MM(8), Text: "型紙の送り 181.82 mm"},
			{At: geom.PtMM(10, 36), Height: geom.MM(8), Text: "継ぎ目、星 Ägypt", Bold: true},
			{At: geom.PtMM(110, 55), Height: geom.MM(6), Text: "長板の剣先 turn", TurnDeg: -90},
			{At: geom.PtMM(10, 50), Height: geom.MM(6), Text: "鬱蒼 ½ × 10"},
		},
	}}}
}

func TestJapaneseIsFoundAndEmbeddedAsAPart(t *testing.T) {
	path := repeattest.Put(t, "mixed.pdf", write(t, single(mixed())))
	said := repeattest.Tool(t, "poppler-utils", "pdftotext", path, "-")
	for _, text := range mixed().Layers[0].Texts {
		for _, word := range strings.Fields(text.Text) {
			if !strings.Contains(said, word) {
				t.Errorf("%q is not found in %q", word, said)
			}
		}
	}
	fonts := repeattest.Tool(t, "poppler-utils", "pdffonts", path)
	rows := regexp.MustCompile(`(?m)^TSUGIM\+(\S+) +CID TrueType +Identity-H +yes yes yes`).FindAllStringSubmatch(fonts, -1)
	if len(rows) != 3 {
		t.Errorf("want three embedded parts of fonts with their meaning, got\n%s", fonts)
	}
	// The whole Japanese face is 1.4 MB.
	if n := len(write(t, single(mixed()))); n > 20_000 {
		t.Errorf("the file has %d bytes", n)
	}
	if said := repeattest.Tool(t, "qpdf", "qpdf", "--check", path); !strings.Contains(said, "No syntax or stream encoding errors found") {
		t.Error(said)
	}
}

// The words that another reader paints from the embedded faces are those that
// every other writer draws as outlines: millimetre by millimetre the same ink.
func TestEmbeddedLettersAreTheLettering(t *testing.T) {
	const perMM = 12
	d := mixed()
	path := repeattest.Put(t, "mixed.pdf", write(t, single(d)))
	picture := filepath.Join(t.TempDir(), "page.png")
	repeattest.Tool(t, "mupdf-tools", "mutool", "draw", "-q", "-r", strconv.FormatFloat(perMM*25.4, 'f', 4, 64), "-o", picture, path)
	file, err := os.ReadFile(picture)
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	ours := image.NewRGBA(image.Rect(0, 0, 120*perMM, 60*perMM))
	draw.Draw(ours, ours.Bounds(), image.White, image.Point{}, draw.Src)
	if err := raster.Draw(ours, d, raster.View{PxPerMM: perMM}); err != nil {
		t.Fatal(err)
	}
	all, worst := 0.0, 0.0
	for y := range 60 {
		for x := range 120 {
			cell := image.Rect(x*perMM, y*perMM, (x+1)*perMM, (y+1)*perMM)
			a, b := darkness(ours, cell), darkness(theirs, cell)
			all += b
			worst = math.Max(worst, math.Abs(a-b))
		}
	}
	area := 0.0
	for _, text := range d.Layers[0].Texts {
		area += export.Lettering(text).AreaMM2()
	}
	// The reader sets letters to a quarter of a pixel: stems move by up to 1/48 mm.
	if worst > 0.12 || !near(all/area, 1, 0.01) {
		t.Errorf("a square millimetre differs by %.3f of its ink; all ink is %.1f mm², want %.1f", worst, all, area)
	}
}

// darkness is the share of a cell that is ink.
func darkness(img image.Image, cell image.Rectangle) float64 {
	sum := 0.0
	for y := cell.Min.Y; y < cell.Max.Y; y++ {
		for x := cell.Min.X; x < cell.Max.X; x++ {
			sum += float64(255-color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y) / (255 - 0x17)
		}
	}
	return sum / float64(cell.Dx()*cell.Dy())
}

// What no face has is a frame to the eye and its own letter to a reader.
func TestALetterThatNoFaceHasIsFoundUnderItsFrame(t *testing.T) {
	d := export.Drawing{Width: geom.MM(60), Height: geom.MM(20), Layers: []export.Layer{{
		Name: "words", Pen: export.Pen{Colour: export.Black}, Texts: []export.Text{{At: geom.PtMM(5, 12), Height: geom.MM(6), Text: "紙𠮷紙"}},
	}}}
	frames := 0
	for _, p := range trace(t, single(d)) {
		// 0.48 by 0.72 of the em less 0.36 by 0.60.
		if near(math.Abs(p.area), (0.48*0.72-0.36*0.60)*36, 1e-3) {
			frames++
		}
	}
	said := repeattest.Tool(t, "poppler-utils", "pdftotext", repeattest.Put(t, "frame.pdf", write(t, single(d))), "-")
	if frames != 1 || !strings.Contains(said, "𠮷") {
		t.Errorf("%d frames, and the reader found %q", frames, said)
	}
}
