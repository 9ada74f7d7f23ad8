package board

import (
	"bytes"
	"math"
	"runtime"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// laidAbout lays a ground as it is, turned half round and clipped, and askew.
func laidAbout(g *raster.Ground) Scene {
	clip := geom.BoxOf(geom.PtMM(-40.3, -50.7), geom.PtMM(60.2, 33.9))
	return Scene{Areas: []Area{{Shut: black, Open: white}}, Grounds: []Laid{
		{Ground: g, Lays: []raster.Lay{{Clip: clip}, {Move: geom.PtMM(3, 70), Turned: true, Clip: clip.Moved(geom.PtMM(0, 90))}}},
		{Ground: g, Lays: []raster.Lay{{TurnDeg: 0.3, Grown: 0.001, Clip: clip.Moved(geom.PtMM(110, 0))}}},
	}}
}

// The picture is the same bytes for any number of processors, and whatever was painted
// before: what is kept between pictures shows in none.
func TestAPictureIsTheSameOnEveryMachineAndAfterAnyOther(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, name := range []string{"fine-dot", "leaf", "scattered-dots", "finest-stripes"} {
		var kept Painter
		keptGround := starterGround(t, name)
		for _, zoom := range []float64{0.3, 1.1, 0.31, 4, 1.9, 17, 1.1} {
			v := raster.View{X: -70.3, Y: -60.1, PxPerMM: zoom}
			runtime.GOMAXPROCS(1)
			want := new(Painter).Paint(laidAbout(starterGround(t, name).ground), v, 260, 170, 1).Pix
			for _, n := range []int{1, 2, 3, 8} {
				runtime.GOMAXPROCS(n)
				if got := kept.Paint(laidAbout(keptGround.ground), v, 260, 170, 1).Pix; !bytes.Equal(got, want) {
					t.Errorf("%s at %g px/mm: %d processors and what was kept make another picture", name, zoom, n)
				}
			}
		}
	}
}

// A turned or clipped laying has the tone of the ground it lays, a level more or less.
func TestALayingKeepsTheTone(t *testing.T) {
	for _, name := range []string{"fine-dot", "square-dot"} {
		g := starterGround(t, name)
		v := raster.View{X: -70.3, Y: -60.1, PxPerMM: 0.9}
		var p Painter
		p.Paint(laidAbout(g.ground), v, 260, 170, 1)
		cell := math.Abs(g.a.X.MM()*g.b.Y.MM() - g.a.Y.MM()*g.b.X.MM())
		want := 255 * g.shapes[0].AreaMM2() / cell
		for _, at := range [][2]int{{60, 40}, {60, 120}, {170, 40}} {
			if got := float64(p.plane.Cover[at[1]*260+at[0]]); math.Abs(got-want) > 1 {
				t.Errorf("%s: the tone at %v is %.0f, want %.1f", name, at, got, want)
			}
		}
	}
}

// The loupe and the inset show what the painter of the surface would show there: the
// same painter, and so the same truth.
func TestTheLoupeAndTheInsetAreAsTrueAsTheSurface(t *testing.T) {
	test.NewTempApp(t)
	g := starterGround(t, "fine-dot")
	b := New(Look{})
	b.Resize(fyne.NewSize(600, 400))
	s := g.scene()
	s.Extent = geom.BoxOf(geom.PtMM(0, 0), geom.PtMM(900, 600))
	b.Present("true", s, nil)
	b.loupe.paint(loupeSize, loupeSize)
	zoom := limited(b.view.zoom * loupeGlass)
	at := b.at(b.hovered)
	v := raster.View{X: at.X.MM() - loupeSize/2/zoom, Y: at.Y.MM() - loupeSize/2/zoom, PxPerMM: zoom}
	var bare Painter
	bare.Paint(s, v, loupeSize, loupeSize, 1)
	if !bytes.Equal(b.loupe.painter.plane.Cover, bare.plane.Cover) {
		t.Error("the loupe shows another picture than the surface would")
	}
	b.SetInset(&Inset{Scene: s, At: geom.PtMM(100, 80), Side: geom.MM(70)})
	b.inlay.paint(insetSize, insetSize)
	zoom = insetSize / 70.0
	bare.Paint(s, raster.View{X: 100 - 35, Y: 80 - 35, PxPerMM: zoom}, insetSize, insetSize, 1)
	if !bytes.Equal(b.inlay.painter.plane.Cover, bare.plane.Cover) {
		t.Error("the inset shows another picture than the surface would")
	}
}
