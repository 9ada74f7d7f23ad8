package ui

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tsugime/export/raster"
	"tsugime/ui/board"
	"tsugime/ui/session"
)

// The whole garment of a starter with its joints, stars and seams at 1600 by 1000
// pixels, with every placement where it belongs and with three times the errors.
func BenchmarkGarmentFrame(b *testing.B) {
	a := test.NewTempApp(b)
	o, err := ReadStarter("small-dot")
	if err != nil {
		b.Fatal(err)
	}
	w := New(a, o, "", session.In(b.TempDir(), time.Hour))
	w.win.Resize(fyne.NewSize(1600, 1000))
	settle(b, w)
	w.GoTo(garmentAt)
	s := w.garmentStation()
	for _, c := range []struct {
		name  string
		times float64
	}{{"in place", 0}, {"by chance", 3}} {
		s.chance.times, s.chance.of = c.times, 0
		scene := s.scene()
		box := scene.Extent
		v := raster.View{X: box.Min.X.MM(), Y: box.Min.Y.MM(), PxPerMM: min(1600/box.Width().MM(), 1000/box.Height().MM())}
		b.Run(c.name, func(b *testing.B) {
			var p board.Painter
			p.Paint(scene, v, 1600, 1000, 1)
			for b.Loop() {
				p.Paint(scene, v, 1600, 1000, 1)
			}
		})
	}
}
