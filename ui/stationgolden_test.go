package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/export/wording"
	"tsugime/repeat/repeattest"
)

// Every station in both languages and both looks on a plain screen, and two of the four
// on a screen of twice as many pixels to the same length.
func TestEveryStationInEveryLanguageLookAndScale(t *testing.T) {
	t.Cleanup(func() { speak(wording.English) })
	w := onBench(t, "leaf")
	for _, c := range []struct {
		language wording.Language
		look     look
		scale    float32
	}{
		{wording.English, daylight, 1}, {wording.English, lamp, 1}, {wording.Japanese, daylight, 1}, {wording.Japanese, lamp, 1},
		{wording.English, daylight, 2}, {wording.Japanese, lamp, 2},
	} {
		w.Speak(c.language)
		w.Look(c.look)
		w.win.Canvas().(interface{ SetScale(float32) }).SetScale(c.scale)
		size := fyne.NewSize(1040, 640)
		if c.scale > 1 {
			size = fyne.NewSize(900, 420)
		}
		w.win.Resize(size)
		for i, name := range stationNames {
			w.GoTo(i)
			settle(t, w)
			w.board.Whole()
			repeattest.GoldenPNG(t, fmt.Sprintf("station-%s-%s-%s-%gx.png", stationIcon(name), c.language, c.look, c.scale), w.win.Canvas().Capture())
		}
	}
}
