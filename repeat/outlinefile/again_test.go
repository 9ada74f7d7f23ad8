package outlinefile_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/dxf"
	"tsugime/export/exporttest"
	"tsugime/export/svg"
	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
)

// A field of holes that our own writers wrote comes back disc by disc. SVG carries
// four decimals of a millimetre, DXF six; y in DXF is counted from the foot.
func TestOurOwnFilesComeBackDiscByDisc(t *testing.T) {
	d := exporttest.Field(2000)
	discs := d.Layers[0].Discs
	for name, c := range map[string]struct {
		format export.Format
		up     geom.Length
		off    geom.Length
	}{
		"SVG": {svg.Format{}, 0, 100}, "DXF": {dxf.Format{}, d.Height, 2},
	} {
		pieces := again(t, d, c.format).Pieces
		if len(pieces) != len(discs) {
			t.Errorf("%s: %d pieces, want %d", name, len(pieces), len(discs))
			continue
		}
		for i, p := range pieces {
			want := discs[i]
			want.Centre.Y -= c.up
			if got := p.Shape.Disc; !p.Shape.Round() || got.Centre.Distance(want.Centre) > c.off || (got.Diameter-want.Diameter).Abs() > c.off {
				t.Fatalf("%s: disc %d is %v, want %v", name, i, p.Shape, want)
			}
		}
	}
}

func again(t testing.TB, d export.Drawing, format export.Format) outlinefile.Drawing {
	t.Helper()
	var b bytes.Buffer
	if err := format.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	var got outlinefile.Drawing
	var err error
	if format.Name() == "SVG" {
		got, err = outlinefile.ReadSVG(&b, outlinefile.Options{})
	} else {
		got, err = outlinefile.ReadDXF(&b, outlinefile.Options{})
	}
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestOurOwnOutlinesComeBackWithTheirHoles(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers = d.Layers[:1]
	for _, format := range []export.Format{svg.Format{}, dxf.Format{}} {
		got := again(t, d, format)
		var area float64
		for _, p := range got.Pieces {
			if p.Layer == "cut" {
				area += p.Shape.AreaMM2()
			}
		}
		if math.Abs(area-exporttest.FilledMM2) > 0.05 {
			t.Errorf("%s: %.4f mm², want %.4f (%v)", format.Name(), area, exporttest.FilledMM2, got.Notes)
		}
	}
}

// A frame with a hole, drawn by four hairlines and a circle: a shape to cut, not bands.
func TestHairlinesAreLinesToCutAlongWhereThatIsAsked(t *testing.T) {
	file := page(`<g id="cut" fill="none" stroke="black" stroke-width="0.05"><path d="M5 5H25"/><path d="M25 20V5"/><line x1="25" y1="20" x2="5" y2="20"/><polyline points="5,20 5,5"/><circle cx="15" cy="12" r="4"/></g><circle cx="35" cy="5" r="1"/>`)
	bands := readSVG(t, file)
	if !bands.Stroked() {
		t.Error("a file with strokes doesn't say so")
	}
	d, err := outlinefile.ReadSVG(strings.NewReader(file), outlinefile.Options{Lines: true})
	if err != nil || len(d.Pieces) != 2 || d.Stroked() {
		t.Fatalf("%v: %d pieces, want the dot and the frame: %v", err, len(d.Pieces), d.Notes)
	}
	if got, want := d.Pieces[1].Shape.AreaMM2(), 300-16*math.Pi; math.Abs(got-want) > 1e-5 || d.Pieces[1].Layer != "cut" {
		t.Errorf("%.6f mm² on %q, want %.6f", got, d.Pieces[1].Layer, want)
	}
}

func BenchmarkReadFieldSVG(b *testing.B) { benchmarkField(b, svg.Format{}) }
func BenchmarkReadFieldDXF(b *testing.B) { benchmarkField(b, dxf.Format{}) }

// A whole field: 63,500 holes.
func benchmarkField(b *testing.B, format export.Format) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		again(b, d, format)
	}
}
