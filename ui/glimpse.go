package ui

import (
	"time"

	"fyne.io/fyne/v2"

	"tsugime/repeat/geom"
)

// A Glimpse is what a window shows just now, for those who look at it from outside.
type Glimpse struct {
	Station string
	View    string        // of the station, where it has several
	State   int           // the number of the state that is shown
	Built   int           // the number of the state whose work is shown; State when all is worked out
	Found   int           // the number of the state that the findings are of, but for those that take longest
	Path    string        // the order's file, "" for none
	Changed bool          // whether the order differs from its file
	Asking  bool          // whether something lies over the window and waits for an answer
	Busy    bool          // whether work that was asked for goes on in the background
	At      fyne.Position // of the surface in the window
	Size    fyne.Size     // of the surface
	Seen    geom.Box      // what of the scene the surface shows
	Zoom    float64       // screen units for a millimetre of the scene
	Words   string        // the line below
}

// Glimpse returns what the window shows just now.
func (w *Window) Glimpse() Glimpse {
	g := Glimpse{
		Station: stationNames[w.at], View: w.stations[w.at].view(), State: w.history.Now().number, Built: w.built, Found: max(w.built, w.soonOf), Path: w.path, Changed: w.Changed(),
		Asking: w.win.Canvas().Overlays().Top() != nil, Busy: w.busy(),
		At: fyne.CurrentApp().Driver().AbsolutePositionForObject(w.board), Size: w.board.Size(),
		Zoom: w.board.Scale(), Words: w.status.Text,
	}
	if g.Zoom > 0 {
		g.Seen = w.board.Seen()
	}
	return g
}

// busy reports whether work that was asked for goes on in the background.
func (w *Window) busy() bool {
	if w.writes.stop.Load() != nil {
		return true
	}
	if w.task == nil {
		return false
	}
	select {
	case <-w.task:
		return false
	default:
		return true
	}
}

// Watch has shown told whenever the surface is to show something else, and painted
// how long each of its pictures took. Both are called where the window is changed,
// and before the frame that they speak of.
func (w *Window) Watch(shown func(), painted func(time.Duration)) {
	w.board.OnShown, w.board.OnPainted = shown, painted
}
