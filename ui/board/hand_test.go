package board

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tsugime/repeat/geom"
)

// twoColoured is a surface in a window: red paper to the left of 0, blue to the right.
func twoColoured(t *testing.T) *Board {
	t.Helper()
	test.NewTempApp(t)
	b := New(Look{})
	w := test.NewTempWindow(t, b)
	w.Resize(fyne.NewSize(800, 600))
	box := geom.BoxOf(geom.PtMM(-50, -50), geom.PtMM(50, 50))
	red, blue := color.RGBA{200, 0, 0, 255}, color.RGBA{0, 0, 200, 255}
	b.Present("two colours", Scene{Extent: box, Areas: []Area{
		{Box: geom.BoxOf(box.Min, geom.PtMM(0, 50)), Shut: red, Open: red}, {Box: geom.BoxOf(geom.PtMM(0, -50), box.Max), Shut: blue, Open: blue},
	}}, nil)
	return b
}

func event(at fyne.Position, button desktop.MouseButton) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: button}
}

// Whatever lies there, the middle button moves the view, and so does space with any.
func TestTheMiddleButtonAndSpaceMoveTheView(t *testing.T) {
	b := twoColoured(t)
	for _, space := range []bool{false, true} {
		button := desktop.MouseButtonTertiary
		if space {
			button = desktop.MouseButtonPrimary
			b.KeyDown(&fyne.KeyEvent{Name: fyne.KeySpace})
		}
		from := fyne.NewPos(300, 200)
		at := b.at(from)
		b.MouseDown(event(from, button))
		for x := float32(10); x <= 60; x += 10 {
			b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(x, x/2)}, Dragged: fyne.NewDelta(10, 5)})
		}
		b.MouseUp(event(from.AddXY(60, 30), button))
		b.KeyUp(&fyne.KeyEvent{Name: fyne.KeySpace})
		got, want := b.At(at), from.AddXY(60, 30)
		if math.Hypot(float64(got.X-want.X), float64(got.Y-want.Y)) > 0.01 {
			t.Errorf("with space %v: what was taken lies at %v, the pointer at %v", space, got, want)
		}
	}
}

func TestTheLoupeFollowsThePointer(t *testing.T) {
	b := twoColoured(t)
	b.Loupe(true)
	for x, want := range map[float64]color.RGBA{-20: {200, 0, 0, 255}, 20: {0, 0, 200, 255}} {
		b.MouseMoved(event(b.At(geom.PtMM(x, 3)), 0))
		img := b.loupe.paint(loupeSize, loupeSize)
		if got := img.At(loupeSize/2, loupeSize/2); got != want {
			t.Errorf("with the pointer at %v mm the middle of the loupe is %v, want %v", x, got, want)
		}
	}
	// It shows six times as much: what is 12 units to the right of the pointer on the
	// surface is 72 to the right of the loupe's middle.
	b.MouseMoved(event(b.At(geom.PtMM(0, 3)).SubtractXY(12, 0), 0))
	img := b.loupe.paint(loupeSize, loupeSize)
	left, right := img.At(loupeSize/2+70, loupeSize/2), img.At(loupeSize/2+74, loupeSize/2)
	if left == right || right != (color.RGBA{0, 0, 200, 255}) {
		t.Errorf("about the edge the loupe shows %v and %v", left, right)
	}
}
