package main

import (
	"fmt"
	"io"
	"os"
	"runtime/metrics"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"tsugime/ui"
)

// signsAsked names the file that signs are written to; it is read by
// .ci/window.sh and the windowbench, and unset for everyone else.
const signsAsked = "TSUGIME_SIGNS"

// How often the window is looked at for what it doesn't tell of itself, and after
// how many pictures a line of them is written.
const (
	signEvery  = 50 * time.Millisecond
	paintedRow = 20
)

// Signs writes a line for each change of what a window shows:
//
//	shown   t=NANOSECONDS station=NAME state=N built=N found=N … words="…"
//	painted t=NANOSECONDS heap=BYTES ms=4.1,3.9,…
//
// t is the clock of the machine since 1970. A line is written before the frame that
// it speaks of.
type signs struct {
	to    io.Writer
	w     *ui.Window
	last  string
	times []time.Duration // of the pictures since the last line of them
}

// giveSigns writes signs of a window if they are asked for.
func giveSigns(w *ui.Window) error {
	name := os.Getenv(signsAsked)
	if name == "" {
		return nil
	}
	to, err := os.OpenFile(name, os.O_WRONLY|os.O_APPEND|os.O_CREATE, 0o600)
	if err != nil {
		return fmt.Errorf("%s: %w", signsAsked, err)
	}
	s := &signs{to: to, w: w}
	w.Watch(s.shown, s.painted)
	go func() {
		for range time.Tick(signEvery) {
			fyne.Do(s.shown)
		}
	}()
	return nil
}

// shown writes what the window shows, if it is another thing than before.
func (s *signs) shown() {
	g := s.w.Glimpse()
	line := fmt.Sprintf("station=%s state=%d built=%d found=%d changed=%t asking=%t busy=%t x=%.1f y=%.1f w=%.1f h=%.1f left=%.6f top=%.6f zoom=%.6f path=%q view=%q words=%q",
		g.Station, g.State, g.Built, g.Found, g.Changed, g.Asking, g.Busy, g.At.X, g.At.Y, g.Size.Width, g.Size.Height,
		g.Seen.Min.X.MM(), g.Seen.Min.Y.MM(), g.Zoom, g.Path, g.View, g.Words)
	if line == s.last {
		return
	}
	s.last = line
	fmt.Fprintf(s.to, "shown t=%d %s\n", time.Now().UnixNano(), line)
}

// painted notes how long a picture took.
func (s *signs) painted(took time.Duration) {
	if s.times = append(s.times, took); len(s.times) < paintedRow {
		return
	}
	var row []byte
	for t := range slices.Values(s.times) {
		row = fmt.Appendf(row, ",%.2f", t.Seconds()*1000)
	}
	s.times = s.times[:0]
	heap := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(heap)
	fmt.Fprintf(s.to, "painted t=%d heap=%d ms=%s\n", time.Now().UnixNano(), heap[0].Value.Uint64(), row[1:])
}
