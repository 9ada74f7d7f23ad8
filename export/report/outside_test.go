package report

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
	"tsugime/repeat/stencil"
)

// outsideWorks are a ground of dots and the first sheet of a split.
func outsideWorks(t *testing.T) map[string]repeat.Work {
	return map[string]repeat.Work{"dots": built(t, dotOrder(t, 4, 1.5)), "split": built(t, splitOrder(t, 1, stencil.TiePlaces))}
}

// formatted writes the file that a machine cuts by.
func formatted(t *testing.T, w repeat.Work, name string) string {
	t.Helper()
	var out bytes.Buffer
	if err := writeFile(&out, name, w, Options{}.with(w)); err != nil {
		t.Fatal(err)
	}
	return repeattest.Put(t, name, out.Bytes())
}

// TestASecondPainterOfSVGPaintsOurPicture has resvg 2.6.2 of npm paint the file for
// machines and holds it to our coverage, pixel by pixel. resvg parts a pixel into
// 4 by 4, so a pixel on a rim may be a quarter off, and it paints an alone standing
// disc of 1.5 mm too small, by 2.3 % at 6 pixels to the millimetre, 0.6 % at 12 and
// 0.13 % at 96 (measured): its rim lies a part of a pixel within, ours where it is.
func TestASecondPainterOfSVGPaintsOurPicture(t *testing.T) {
	const perMM = 12
	for name, w := range outsideWorks(t) {
		d := cutOnly(w, sheetsOf(w)[0], Options{}.with(w))
		out := filepath.Join(t.TempDir(), "covered")
		said := repeattest.Node(t, "testdata/paintsvg.cjs", formatted(t, w, "cut-only.svg"), "12", d.Width.String(), out)
		var size struct{ Width, Height int }
		if err := json.Unmarshal([]byte(said), &size); err != nil {
			t.Fatal(err)
		}
		theirs, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		if size.Width != int(math.Round(d.Width.MM()*perMM)) || len(theirs) != size.Width*size.Height {
			t.Fatalf("%s: painted %d × %d pixels", name, size.Width, size.Height)
		}
		ours := covered(d, size.Width, size.Height, float64(size.Width)/d.Width.MM())
		most, sum, want := 0, 0, 0
		for i, c := range theirs {
			off := int(c) - int(ours[i])
			most = max(most, off, -off)
			sum, want = sum+int(c), want+int(ours[i])
		}
		if ink := float64(sum) / float64(want); math.Abs(ink-1) > 1e-2 || want == 0 {
			t.Errorf("%s: ink of %.5f times ours", name, ink)
		}
		if most > 64 {
			t.Errorf("%s: a pixel is off by %d of 255", name, most)
		}
		checkPainted(t, name, d, theirs, size.Width, perMM)
	}
}

// covered is our picture of all that a drawing fills, a byte of cover for each pixel.
func covered(d export.Drawing, w, h int, perMM float64) []byte {
	var shapes []geom.Shape
	for _, l := range d.Layers {
		for _, disc := range l.Discs {
			shapes = append(shapes, geom.Shape{Disc: disc})
		}
		for _, o := range l.Outlines {
			shapes = append(shapes, geom.Shape{Outline: o})
		}
	}
	plane := raster.NewPlane(w, h)
	raster.NewGround(shapes).Paint(plane, raster.View{PxPerMM: perMM}, raster.Lay{})
	return plane.Cover
}

// checkPainted finds 100 random round holes by the centre of their ink, within 0.01 mm.
func checkPainted(t *testing.T, name string, d export.Drawing, ink []byte, width int, perMM float64) {
	t.Helper()
	chance := rand.New(rand.NewPCG(7, 101))
	l := d.Layers[len(d.Layers)-1]
	for _, other := range d.Layers {
		if len(other.Discs) > len(l.Discs) {
			l = other
		}
	}
	for range 100 {
		disc := l.Discs[chance.IntN(len(l.Discs))]
		r := disc.Diameter.MM()/2 + 0.3
		x0, y0 := int((disc.Centre.X.MM()-r)*perMM), int((disc.Centre.Y.MM()-r)*perMM)
		x1, y1 := int((disc.Centre.X.MM()+r)*perMM), int((disc.Centre.Y.MM()+r)*perMM)
		sum, mx, my := 0.0, 0.0, 0.0
		for y := y0; y <= y1; y++ {
			for x := x0; x <= x1; x++ {
				c := float64(ink[y*width+x])
				sum, mx, my = sum+c, mx+c*(float64(x)+0.5), my+c*(float64(y)+0.5)
			}
		}
		if off := math.Hypot(mx/sum/perMM-disc.Centre.X.MM(), my/sum/perMM-disc.Centre.Y.MM()); !(off <= 0.01) {
			t.Fatalf("%s: the hole at %v is painted %.4f mm off", name, disc.Centre, off)
		}
	}
}
