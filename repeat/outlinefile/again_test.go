package outlinefile_test

import (
	"bytes"
	"math"
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
		got, err = outlinefile.ReadSVG(&b)
	} else {
		got, err = outlinefile.ReadDXF(&b, geom.Unit{})
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

func BenchmarkReadFieldSVG(b *testing.B) { benchmarkField(b, svg.Format{}) }
func BenchmarkReadFieldDXF(b *testing.B) { benchmarkField(b, dxf.Format{}) }

// A whole field: 63,500 holes.
func benchmarkField(b *testing.B, format export.Format) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		again(b, d, format)
	}
}
