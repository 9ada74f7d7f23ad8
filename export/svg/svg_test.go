package svg_test

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
	"tsugime/export/svg"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

func write(tb testing.TB, d export.Drawing) []byte {
	tb.Helper()
	var b bytes.Buffer
	if err := (svg.Format{}).Write(&b, d); err != nil {
		tb.Fatal(err)
	}
	return b.Bytes()
}

func TestTinyDrawingIsWrittenLikeThis(t *testing.T) {
	repeattest.Golden(t, "tiny.svg", write(t, exporttest.Tiny()))
}

func TestSameDrawingGivesSameBytes(t *testing.T) {
	d := exporttest.Tiny()
	if a, b := write(t, d), write(t, d); !bytes.Equal(a, b) {
		t.Error("two files of one drawing differ")
	}
}

// The document type definition of SVG 1.1 knows which element may stand where
// and which attributes it must have.
func TestFileIsValidSVG(t *testing.T) {
	const dtd = "/usr/share/xml/w3c-sgml-lib/schema/dtd/REC-SVG11-20110816/svg11.dtd"
	if _, err := os.Stat(dtd); err != nil {
		t.Fatal("the definition of SVG 1.1 is missing, and this check needs it: apt-get install w3c-sgml-lib")
	}
	path := repeattest.Put(t, "tiny.svg", write(t, exporttest.Tiny()))
	repeattest.Tool(t, "libxml2-utils", "xmllint", "--noout", "--nonet", "--dtdvalid", dtd, path)
}

// The reader paints 40 pixels to the millimetre. What is left of the ink's area
// is how it rounds pixels on an edge: seen here 0.0016 pixels along each edge,
// 2 parts in ten thousand of this drawing at the most.
func TestInkIsTheAreaOfTheDrawing(t *testing.T) {
	const perMM = 40
	d := exporttest.Tiny()
	d.Layers = d.Layers[:1]
	path := repeattest.Put(t, "cut.svg", write(t, d))
	picture := filepath.Join(t.TempDir(), "cut.png")
	dpi := strconv.FormatFloat(perMM*25.4, 'f', -1, 64)
	repeattest.Tool(t, "librsvg2-bin", "rsvg-convert", "--dpi-x", dpi, "--dpi-y", dpi, "-o", picture, path)
	data, err := os.ReadFile(picture)
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if b := m.Bounds(); b.Dx() != 100*perMM || b.Dy() != 60*perMM {
		t.Fatalf("the picture is %d × %d pixels, want 100 × 60 mm of %d", b.Dx(), b.Dy(), perMM)
	}
	ink := 0
	for _, c := range alphas(t, m) {
		ink += int(c)
	}
	got := float64(ink) / 255 / (perMM * perMM)
	if off := math.Abs(got/exporttest.FilledMM2 - 1); off > 2e-4 {
		t.Errorf("ink of %.4f mm², want %.4f", got, exporttest.FilledMM2)
	}
}

// alphas returns how much of each pixel is covered, 0 to 255.
func alphas(t *testing.T, m image.Image) []uint8 {
	t.Helper()
	n, ok := m.(*image.NRGBA)
	if !ok {
		t.Fatalf("the picture is a %T, want one with transparency", m)
	}
	var covered []uint8
	for i := 3; i < len(n.Pix); i += 4 {
		covered = append(covered, n.Pix[i])
	}
	return covered
}

// An element is what a file holds, read by the standard library.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// all returns the elements of that name below e.
func (e element) all(name string) []element {
	var found []element
	for _, c := range e.Children {
		if c.XMLName.Local == name {
			found = append(found, c)
		}
		found = append(found, c.all(name)...)
	}
	return found
}

func read(t *testing.T, file []byte) element {
	t.Helper()
	var root element
	if err := xml.Unmarshal(file, &root); err != nil {
		t.Fatal(err)
	}
	return root
}

func TestPageAndLayersAreInMillimetres(t *testing.T) {
	root := read(t, write(t, exporttest.Tiny()))
	for name, want := range map[string]string{"width": "100mm", "height": "60mm", "viewBox": "0 0 100 60"} {
		if got := root.attr(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
	var ids []string
	for _, c := range root.Children {
		if c.XMLName.Local == "g" {
			ids = append(ids, c.attr("id"))
		}
	}
	if got, want := strings.Join(ids, " "), "cut joint-line words"; got != want {
		t.Errorf("layers %q, want %q", got, want)
	}
}

func TestWordsCanBeReadInTheFile(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers[2].Texts[1].Text = "型紙 \x01 feed"
	root := read(t, write(t, d))
	var got []string
	for _, e := range root.all("title") {
		got = append(got, e.Text)
	}
	want := []string{"One of each & all", "Step <60 mm> & “half”", "型紙 \ufffd feed"}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("titles %q, want %q", got, want)
	}
}

// Half a unit of the last decimal is 50 nm.
func TestEveryDiscComesBackFromTheFile(t *testing.T) {
	d := exporttest.Field(2000)
	circles := read(t, write(t, d)).all("circle")
	discs := d.Layers[0].Discs
	if len(circles) != len(discs) {
		t.Fatalf("%d circles, want %d", len(circles), len(discs))
	}
	for i, c := range circles {
		want := discs[i]
		for name, v := range map[string]geom.Length{"cx": want.Centre.X, "cy": want.Centre.Y, "r": want.Diameter / 2} {
			got, err := strconv.ParseFloat(c.attr(name), 64)
			if err != nil || (geom.MM(got)-v).Abs() > 50 {
				t.Fatalf("circle %d: %s is %q, want %s", i, name, c.attr(name), v)
			}
		}
	}
}

func TestPensAreKept(t *testing.T) {
	mark := export.Mark
	d := export.Drawing{Width: geom.MM(10), Height: geom.MM(10), Layers: []export.Layer{{
		Name:  "a",
		Pen:   export.Pen{Colour: export.Black, Filled: true, Fill: &mark, Stroke: geom.MM(0.2), Dash: []geom.Length{geom.MM(1), geom.MM(0.5)}},
		Discs: []geom.Disc{{Centre: geom.PtMM(5, 5), Diameter: geom.MM(2)}},
	}}}
	g := read(t, write(t, d)).all("g")[1]
	for name, want := range map[string]string{"fill": "#b03a1f", "stroke": "#1a1714", "stroke-width": "0.2", "stroke-dasharray": "1 0.5"} {
		if got := g.attr(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
}

func TestAFullDiskIsTold(t *testing.T) {
	d := exporttest.Field(3000)
	exporttest.TellsAFullDisk(t, len(write(t, d)), func(f *exporttest.FullDisk) error {
		return svg.Format{}.Write(f, d)
	})
}

func TestADrawingThatCanNotBeReadIsRefused(t *testing.T) {
	if err := (svg.Format{}).Write(io.Discard, export.Drawing{}); err == nil {
		t.Error("a drawing without size was written")
	}
}

// A whole field: 63,500 holes.
func BenchmarkWriteField(b *testing.B) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		if err := (svg.Format{}).Write(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}

// The radius of a large half circle has few decimals left to say how high the
// arc stands; its area tells whether they were enough.
func TestLargeArcsKeepTheirHeight(t *testing.T) {
	o := geom.Outline{{Start: geom.PtMM(10, 150), Segments: []geom.Segment{
		{Kind: geom.Arc, End: geom.PtMM(210.12345, 150), Bulge: 1},
		{Kind: geom.Arc, End: geom.PtMM(10, 150), Bulge: 0.98},
	}}}
	d := export.Drawing{Width: geom.MM(300), Height: geom.MM(300), Layers: []export.Layer{{
		Name: "a", Pen: export.Pen{Filled: true}, Outlines: []geom.Outline{o},
	}}}
	path := read(t, write(t, d)).all("path")[0].attr("d")
	got, err := geom.ParsePathData(path)
	if err != nil {
		t.Fatal(err)
	}
	// A tenth of a micrometre all around is 0.06 mm².
	if off := math.Abs(got.AreaMM2() - o.AreaMM2()); off > 0.06 {
		t.Errorf("%s\nholds %.4f mm², want %.4f", path, got.AreaMM2(), o.AreaMM2())
	}
}
