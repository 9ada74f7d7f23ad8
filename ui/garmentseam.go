package ui

import (
	"math"
	"slices"

	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A seamBench is where a seam is chosen, looked at closely and given its goal.
type seamBench struct {
	s       *garmentStation
	chosen  string  // its name; "" for none
	stretch int     // of it: 0 is the one that counts, then Also
	down    float64 // the share of the way down the stretch at which it is looked at
	list    *widget.Select
	slider  *widget.Slider
	goals   *goalBench
}

// noSeam stands in the list where none is chosen.
const noSeam = "no seam"

func newSeamBench(s *garmentStation, f *form) *seamBench {
	b := &seamBench{s: s, down: 0.5}
	f.heading("Seam under the loupe")
	b.list = newSelect(nil, nil)
	f.add(b.list)
	b.slider = widget.NewSlider(0, 1)
	b.slider.Step = 0.002
	b.slider.SetValue(b.down)
	b.slider.OnChanged = b.slide
	f.row("Down the seam", b.slider)
	b.goals = newGoalBench(b, f)
	f.showing = append(f.showing, func(document.Order) { b.refresh() })
	return b
}

// slide looks at another place of the seam.
func (b *seamBench) slide(down float64) {
	if down == b.down {
		return
	}
	b.down = down
	b.s.w.repaint()
}

// refresh lists the seams that there are.
func (b *seamBench) refresh() {
	names := []string{say(noSeam)}
	at := 0
	for i, c := range b.all() {
		names = append(names, say(c.Name))
		if c.Name == b.chosen {
			at = i + 1
		}
	}
	if at == 0 {
		b.chosen = ""
	}
	b.list.OnChanged = nil
	b.list.SetOptions(names)
	b.list.SetSelectedIndex(at)
	b.list.OnChanged = func(string) {
		if i := b.list.SelectedIndex(); i <= 0 {
			b.choose("")
		} else {
			b.choose(b.all()[i-1].Name)
		}
	}
}

func (b *seamBench) all() []cloth.Seam { return b.s.w.work.Dressed.Seams }

// seam returns the seam that is chosen.
func (b *seamBench) seam() (cloth.Seam, bool) {
	i := slices.IndexFunc(b.all(), func(c cloth.Seam) bool { return c.Name == b.chosen })
	if i < 0 || b.chosen == "" {
		return cloth.Seam{}, false
	}
	return b.all()[i], true
}

// at returns the seam whose finished line begins at a place of the cloth; else the
// form's main one.
func (b *seamBench) at(p geom.Point) string {
	for _, c := range b.all() {
		if c.At == p || c.On == p {
			return c.Name
		}
	}
	return b.s.w.work.Dressed.Form.Matched
}

// choose lays another seam under the loupe; "" takes it away.
func (b *seamBench) choose(name string) {
	if b.chosen == name {
		return
	}
	b.chosen, b.stretch = name, 0
	b.s.w.refresh()
}

// next goes through the seams and shows the garment.
func (b *seamBench) next() {
	all := b.all()
	if len(all) == 0 {
		return
	}
	b.s.show(false)
	i := slices.IndexFunc(all, func(c cloth.Seam) bool { return c.Name == b.chosen })
	b.choose(all[(i+1)%len(all)].Name)
}

// tap chooses the seam at a place of the picture, or none.
func (b *seamBench) tap(p geom.Point, reach geom.Length) {
	best, name := float64(reach), ""
	for _, c := range b.all() {
		for i, m := range stretches(c) {
			for _, line := range b.lines(m) {
				if d := beside(p, line.From, line.To); d <= best && (d < best || c.Name == b.chosen) {
					best, name, b.stretch, b.down = d, c.Name, i, shareDown(p, line)
				}
			}
		}
	}
	b.chosen = name
	b.slider.SetValue(b.down)
	b.s.w.refresh()
}

// stretches returns the stretches of a seam, the one that counts first.
func stretches(c cloth.Seam) []cloth.Meeting { return append([]cloth.Meeting{c.Meeting}, c.Also...) }

// shareDown returns how far down a line the place nearest to p is.
func shareDown(p geom.Point, l cloth.SeamLine) float64 {
	way, to := l.To.Sub(l.From), p.Sub(l.From)
	if way == (geom.Point{}) {
		return 0
	}
	n := way.Norm()
	return math.Min(math.Max((float64(to.X)*float64(way.X)+float64(to.Y)*float64(way.Y))/n/n, 0), 1)
}

// lines returns where a stretch is seen, in the picture: on both of its pieces.
func (b *seamBench) lines(m cloth.Meeting) []cloth.SeamLine {
	var all []cloth.SeamLine
	for _, l := range m.Lines {
		off := b.s.offset(l.View)
		l.From, l.To = l.From.Add(off), l.To.Add(off)
		if !slices.Contains(all, l) {
			all = append(all, l)
		}
	}
	return all
}

// phasePlaces are how far down its line each seam's phase is written, one after
// another, so that neighbours stand clear.
var phasePlaces = []float64{0.3, 0.82, 0.5, 0.66, 0.6, 0.6, 0.7, 0.7}

// mark draws the seams where they are seen, and writes the phase of the pattern at
// each. The chosen one is thicker, with where the loupe looks.
func (b *seamBench) mark(sc *board.Scene) {
	for i, c := range b.all() {
		width := float32(1.5)
		if c.Name == b.chosen {
			width = 4
		}
		for k, m := range stretches(c) {
			for _, l := range b.lines(m) {
				sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{l.From, l.To}, Colour: worn().onCloth, Width: width})
				if c.Name == b.chosen && k == b.stretch {
					sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: []geom.Point{along(l, b.down)}, Radius: b.side() / 2, Colour: worn().onCloth, Width: 2})
				}
			}
		}
		sign := "≠ "
		if c.Matched {
			sign = "= "
		}
		sc.Labels = append(sc.Labels, board.Label{
			At: along(b.lines(c.Meeting)[0], phasePlaces[i%len(phasePlaces)]), Align: board.Middle, Text: sign + b.phase(c),
			Colour: worn().ink, Shield: worn().shield, Size: 11, Bold: c.Priority == 1 || c.Name == b.chosen,
		})
	}
}

func along(l cloth.SeamLine, share float64) geom.Point {
	way := l.To.Sub(l.From)
	return l.From.Add(geom.Point{X: way.X.Times(share), Y: way.Y.Times(share)})
}

func (b *seamBench) phase(c cloth.Seam) string {
	u := b.s.w.unit()
	return u.Number(c.PhaseAlong, 2) + ", " + u.Number(c.PhaseAcross, 2)
}
