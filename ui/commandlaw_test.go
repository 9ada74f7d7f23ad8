package ui

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// commandsEach is how many things are done in each of the ten runs.
var commandsEach = flag.Int("commands", 250, "random commands in each of ten runs")

// Whatever is asked of the window, by whatever way and in whatever order: the order on
// the bench stays one that can be written and read, what is chosen is in it, what was
// built belongs to it, and undo leads back to the start, redo to the end, byte for byte.
// Six starters, ten runs: commands of the table, keys, clicks, drags, and whatever can
// be set at the left or pressed at the right. Ten thousand take some minutes:
// go test ./ui -run RandomCommands -commands 1000
func TestRandomCommandsUndoToTheStart(t *testing.T) {
	for seed, starter := range []string{"small-dot", "checker", "small-dot", "leaf", "row-dots", "small-dot", "scattered-dots", "linked-circles", "checker", "small-dot"} {
		t.Run(starter, func(t *testing.T) {
			w := onBench(t, starter)
			start := written(t, w.Order())
			narrowed(t, w)
			f := fidget{t: t, w: w, random: rand.New(rand.NewPCG(uint64(seed), 7))}
			defer f.tell()
			for range *commandsEach {
				f.once()
			}
			f.calm()
			end, ahead := written(t, w.Order()), w.history.RedoName()
			undone := 0
			for ; w.history.UndoName() != ""; undone++ {
				w.Undo()
			}
			if got := written(t, w.Order()); got != start {
				t.Errorf("%d undos led to\n%s\nnot to\n%s", undone, got, start)
			}
			for range undone {
				w.Redo()
			}
			if got := written(t, w.Order()); got != end || w.history.RedoName() != ahead {
				t.Errorf("%d redos led to\n%s\nnot to\n%s", undone, got, end)
			}
			if undone < 10 {
				t.Errorf("only %d edits", undone)
			}
			w.cancel()
		})
	}
}

// narrowed lays the order out small, so that a test spends its time on the window, and
// gives it a file.
func narrowed(t *testing.T, w *Window) {
	t.Helper()
	w.Edit("Narrow", func(o document.Order) (document.Order, error) {
		return document.SetField(o, stencil.Field{Left: o.Sheet.Field.Left, Width: geom.MM(12)})
	})
	if !w.SaveTo(filepath.Join(t.TempDir(), "order"+extension)) {
		t.Fatal(w.status.Text)
	}
	settle(t, w)
}

// A fidget does one random thing after another.
type fidget struct {
	t      *testing.T
	w      *Window
	random *rand.Rand
	done   []string
	held   int // the state that was found to hold last
}

// tell prints what was done last, where the test has failed.
func (f *fidget) tell() {
	if trouble := recover(); trouble != nil {
		f.t.Logf("the last things done:\n%s", strings.Join(f.last(), "\n"))
		panic(trouble)
	}
	if f.t.Failed() {
		f.t.Logf("the last things done:\n%s", strings.Join(f.last(), "\n"))
	}
}

func (f *fidget) last() []string { return f.done[max(0, len(f.done)-12):] }

func (f *fidget) did(format string, about ...any) {
	f.done = append(f.done, fmt.Sprintf(format, about...))
}

// once does one thing and looks whether all still holds.
func (f *fidget) once() {
	f.calm()
	switch n := f.random.IntN(100); {
	case n < 30:
		f.command()
	case n < 40:
		f.back()
	case n < 50:
		f.click()
	case n < 65:
		f.pull()
	default:
		f.control()
	}
	if f.random.IntN(50) > 0 {
		f.w.cancel() // as the next edit would: one in fifty is built to its end
	}
	f.holds()
}

// calm closes what waits for an answer and takes what work in the background posted.
func (f *fidget) calm() {
	for {
		select {
		case do := <-posted:
			do()
			continue
		default:
		}
		top := f.w.win.Canvas().Overlays().Top()
		if top == nil {
			return
		}
		f.w.typed(fyne.KeyEscape, 0)
		if f.w.win.Canvas().Overlays().Top() == top {
			f.t.Fatal("Escape closes no dialog")
		}
	}
}

// rarely are the commands that make much anew, which is slow.
func rarely(name string) bool {
	for _, start := range []string{"Look", "日本語", "English", "Close", "New from", "Write the", "Propose", "Another Window"} {
		if strings.HasPrefix(name, start) {
			return true
		}
	}
	return false
}

func (f *fidget) command() {
	table := commands()
	c := table[f.random.IntN(len(table))]
	name := c.name(f.w)
	if name == "Close" || name == "Quit" || rarely(name) && f.random.IntN(20) > 0 {
		return
	}
	f.did("the command %s", name)
	f.w.run(c)
}

// back undoes and redoes.
func (f *fidget) back() {
	if f.random.IntN(2) == 0 {
		f.did("undo %s", f.w.undoName())
		f.w.undo()
	} else {
		f.did("redo %s", f.w.history.RedoName())
		f.w.Redo()
	}
}

// place is somewhere on the surface, near the unit where it is seen: what is drawn over
// hundreds of units takes minutes to measure.
func (f *fidget) place() geom.Point {
	seen, l := f.w.board.Seen(), f.w.Order().Unit.Lattice
	near := geom.BoxOf(geom.Point{}, l.A, l.B, l.A.Add(l.B))
	if near = near.Grown(max(near.Width(), near.Height())).Intersect(seen); !near.Empty() && f.w.at <= stencilAt {
		seen = near
	}
	return geom.Point{
		X: seen.Min.X + seen.Width().Times(f.random.Float64()),
		Y: seen.Min.Y + seen.Height().Times(f.random.Float64()),
	}
}

func (f *fidget) modifier() fyne.KeyModifier {
	return []fyne.KeyModifier{0, 0, 0, fyne.KeyModifierShift, fyne.KeyModifierControl}[f.random.IntN(5)]
}

func (f *fidget) click() {
	at, m := f.place(), f.modifier()
	f.did("click at %s, %s with %d", at.X, at.Y, m)
	f.pulled(at, at, 0, m)
}

func (f *fidget) pull() {
	from, m := f.place(), f.modifier()
	if o := f.w.Order(); f.w.at == draftAt && len(o.Unit.Motifs) > 0 && f.random.IntN(2) == 0 {
		from = o.Unit.Lattice.Into(o.Unit.Motifs[f.random.IntN(len(o.Unit.Motifs))].At)
	}
	to := f.place()
	f.did("pull from %s, %s to %s, %s with %d", from.X, from.Y, to.X, to.Y, m)
	f.pulled(from, to, 2, m)
}

// pulled is a pull with keys held.
func (f *fidget) pulled(from, to geom.Point, steps int, m fyne.KeyModifier) {
	b := f.w.board
	for _, k := range keysOf(m) {
		b.KeyDown(&fyne.KeyEvent{Name: k})
	}
	pull(b, from, to, steps)
	for _, k := range keysOf(m) {
		b.KeyUp(&fyne.KeyEvent{Name: k})
	}
}

func keysOf(m fyne.KeyModifier) []fyne.KeyName {
	switch m {
	case fyne.KeyModifierShift:
		return []fyne.KeyName{desktop.KeyShiftLeft}
	case fyne.KeyModifierControl:
		return []fyne.KeyName{desktop.KeyControlLeft}
	}
	return nil
}

// scribbles are what people write in fields, and what they shouldn't; none is so large
// that hundreds would lie over one another.
var scribbles = []string{"", "0", "-1", "1", "0.3", "1.4 mm", "0.4 mm", "1/16 in", "2 rin", "9.1/6", "1e9 mm", "0.7", "90 %", "no number", "M0 0 H1 V1 Z", "１．５"}

// control sets or presses one of the things at both sides.
func (f *fidget) control() {
	var all []fyne.CanvasObject
	for _, side := range []fyne.CanvasObject{f.w.left.Content, f.w.right.content} {
		for _, o := range test.LaidOutObjects(side) {
			if !o.Visible() {
				continue
			}
			switch o.(type) {
			case *widget.Button, *entry, *widget.Check, *widget.Select:
				all = append(all, o)
			}
		}
	}
	if len(all) == 0 {
		return
	}
	switch o := all[f.random.IntN(len(all))].(type) {
	case *widget.Button:
		f.did("press %q", o.Text)
		test.Tap(o)
	case *entry:
		text := scribbles[f.random.IntN(len(scribbles))]
		f.did("write %q over %q", text, o.Text)
		if !o.Disabled() {
			o.SetText(text)
			o.OnSubmitted(text)
		}
	case *widget.Check:
		f.did("tick %q", o.Text)
		test.Tap(o)
	case *widget.Select:
		if len(o.Options) > 0 && !o.Disabled() {
			i := f.random.IntN(len(o.Options))
			f.did("pick %q", o.Options[i])
			o.SetSelectedIndex(i)
		}
	}
}

// holds fails unless all that must hold does.
func (f *fidget) holds() {
	t, w, o := f.t, f.w, f.w.Order()
	if n := w.history.Now().number; n != f.held {
		if err := o.Check(); err != nil {
			t.Fatal(err)
		}
		f.held = n
	}
	for _, id := range w.chosen {
		if _, ok := o.Motif(id); !ok {
			t.Fatalf("motif %d is chosen and not in the order", id)
		}
	}
	if w.Ready() && !reflect.DeepEqual(w.work.Order, o) {
		t.Fatal("what is shown was built of another order")
	}
	if len(f.done)%100 == 0 {
		text := written(t, o)
		back, err := document.Read(strings.NewReader(text))
		if err != nil || written(t, back) != text {
			t.Fatalf("read back it is another order (%v):\n%s", err, text)
		}
	}
	if i := slices.Index(stationNames, w.stations[w.at].name()); i != w.at {
		t.Fatalf("station %d calls itself number %d", w.at, i)
	}
}
