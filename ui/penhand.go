package ui

import (
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// A penHand draws a motif: place by place, or as a whole shape.
type penHand struct {
	s     *draft
	w     *Window
	panel *penBench

	stroke pen.Stroke
	begun  bool
	out    geom.Point // the handle pulled out of the end; the end itself for none
	middle geom.Point // that the next arc goes through
	bends  bool       // it is set

	wreath  pen.Wreath
	centred bool // the wreath's centre is set

	motif pattern.ID   // that is drawn anew; zero for a new one
	rest  []pen.Stroke // its other contours
	home  geom.Point   // its place

	at      pen.Snapped // under the pointer
	over    bool        // the pointer has been over the surface
	pressed geom.Point  // where the button went down, as it is and as it snapped
	from    geom.Point
	pulling bool
}

func newPenHand(s *draft) *penHand {
	d := &penHand{s: s, w: s.w, wreath: pen.Wreath{Turns: 1}}
	d.panel = newPenBench(d)
	return d
}

func (d *penHand) bench() fyne.CanvasObject { return d.panel.content }

func (d *penHand) refresh() { d.panel.refresh() }

// snap returns where a place comes to. With Shift held it is free.
func (d *penHand) snap(p geom.Point) pen.Snapped {
	if !d.panel.snaps.Checked || d.w.board.Holds(shift) {
		return pen.Guides{Fine: 10 * geom.Micrometre}.Snap(p, 0)
	}
	reach := d.w.reach()
	g := d.s.guides(p, reach, d.panel.grid)
	if !d.wreath.Plain() && d.centred {
		g.Marks = append(g.Marks, pen.Mark{At: d.wreath.Centre, Name: onCentre})
		for _, along := range d.wreath.Axes() {
			g.Lines = append(g.Lines, pen.Guide{At: d.wreath.Centre, Along: along, Name: onOwn})
		}
	}
	if !d.begun {
		return g.Snap(p, reach)
	}
	first := []pen.Mark{{At: d.stroke.Start, Name: onStart}}
	if len(d.stroke.Segments) == 0 {
		first = nil
	}
	if d.centred && d.wreath.Turns > 1 {
		for _, m := range d.wreath.Maps()[1:] {
			first = append(first, pen.Mark{At: m.Apply(d.stroke.Start), Name: onNext})
		}
	}
	g.Marks = append(first, g.Marks...)
	return g.From(d.stroke.End()).Snap(p, reach)
}

// Press takes the place; whether it is a click or a pull shows later.
func (d *penHand) Press(p geom.Point, _ geom.Length, _ bool) bool {
	d.pressed, d.from, d.pulling = p, d.snap(p).At, false
	return true
}

// Drag pulls a handle out of a new node of a curve, or the rim of a whole shape out
// of its middle; anything else is set where it is let go.
func (d *penHand) Drag(by geom.Point) {
	d.pulling = true
	to := d.pressed.Add(by)
	d.at = d.snap(to)
	if d.pulls() && !d.w.board.Holds(shift) {
		d.at = d.pullSnap(to)
	}
	d.tell()
	d.w.repaint()
}

// pullSnap is where the end of a pull comes to: along and level with where it began.
func (d *penHand) pullSnap(to geom.Point) pen.Snapped {
	if !d.panel.snaps.Checked {
		return pen.Snapped{At: snapped(to)}
	}
	reach := d.w.reach()
	return d.s.guides(to, reach, d.panel.grid).From(d.from).Snap(to, reach)
}

// pulls reports whether a drag means more than its end.
func (d *penHand) pulls() bool { return d.panel.draws.whole() || d.panel.draws == curves }

// Drop sets what was pulled.
func (d *penHand) Drop(by geom.Point) {
	d.Drag(by)
	d.pulling = false
	switch to := d.at.At; {
	case d.wantsCentre() || !d.pulls():
		d.put(to)
	case d.panel.draws.whole():
		d.putPulled(d.from, to)
	default:
		d.putCurve(d.from, to)
	}
}

// Tap sets a place.
func (d *penHand) Tap(p geom.Point, _ geom.Length, _ bool) { d.put(d.snap(p).At) }

// Hover shows what a click would do.
func (d *penHand) Hover(p geom.Point) {
	d.pulling = false
	at := d.snap(p)
	if d.over && at.At == d.at.At && len(at.Names) == len(d.at.Names) {
		return
	}
	d.at, d.over = at, true
	d.tell()
	d.w.repaint()
}

// tell writes the place, and the way to it, below the surface.
func (d *penHand) tell() {
	u := d.w.unit()
	text := u.Number(d.at.At.X, 3) + ", " + u.Format(d.at.At.Y, 3)
	if way := d.way(); way != "" {
		text = way + "    " + text
	}
	d.w.pointer.SetText(text)
}

// way is the distance and the direction from the place before.
func (d *penHand) way() string {
	from := d.stroke.End()
	if d.pulling && d.pulls() {
		from = d.from
	} else if !d.begun {
		return ""
	}
	return leadWords(d.w.unit(), from, d.at.At)
}

// leadWords are a distance and a direction: degrees from the right, clockwise on the
// sheet.
func leadWords(u geom.Unit, from, to geom.Point) string {
	way := to.Sub(from)
	if way == (geom.Point{}) {
		return ""
	}
	deg := math.Mod(math.Atan2(float64(way.Y), float64(way.X))*180/math.Pi+360, 360)
	return u.Format(from.Distance(to), 3) + "  " + strconv.FormatFloat(math.Round(deg*100)/100, 'f', -1, 64) + "°"
}

// held says what holds a place.
func held(s pen.Snapped) string {
	names := make([]string, len(s.Names))
	for i, n := range s.Names {
		names[i] = say(n)
	}
	return strings.Join(names, " + ")
}

func (d *penHand) wantsCentre() bool { return !d.wreath.Plain() && !d.centred }

// changed shows what was set.
func (d *penHand) changed() {
	d.w.win.SetMainMenu(d.w.mainMenu())
	d.refresh()
	d.w.right.show(d.s)
	d.w.repaint()
}

func (d *penHand) gripped() string {
	if d.begun {
		return "Last Place"
	}
	return ""
}

// nudge moves the last place.
func (d *penHand) nudge(by geom.Point) {
	n := len(d.stroke.Segments)
	if next, err := d.stroke.MoveNode(n, d.stroke.End().Add(by)); err == nil {
		d.out = d.out.Add(by)
		d.stroke = next
		d.changed()
	}
}

func (d *penHand) remove() { d.takeBack() }

func (d *penHand) takesBack() string {
	if d.begun {
		return "Last Place"
	}
	return ""
}

// takeBack takes the last place back.
func (d *penHand) takeBack() {
	if d.bends {
		d.bends = false
		d.changed()
		return
	}
	var had bool
	if d.stroke, had = d.stroke.Back(); !had {
		d.drop()
	}
	d.out = d.stroke.End()
	if n := len(d.stroke.Segments); n > 0 && d.stroke.Segments[n-1].Kind == geom.Cubic {
		d.out = pen.Opposite(d.out, d.stroke.Segments[n-1].C2)
	}
	d.changed()
}

// leave gives up a pull, or drops the line, or stops drawing.
func (d *penHand) leave() bool {
	d.w.board.Release()
	if d.pulling {
		d.pulling = false
		return true
	}
	if d.begun {
		d.drop()
		d.changed()
		return true
	}
	d.s.begin(nil)
	return true
}

// drop forgets the line.
func (d *penHand) drop() {
	d.stroke, d.begun, d.bends, d.out = pen.Stroke{}, false, false, geom.Point{}
	d.motif, d.rest = 0, nil
}

// resume draws on with the open line of a motif, which it will be the outline of
// together with its other contours.
func (d *penHand) resume(motif pattern.ID, line pen.Stroke, rest []pen.Stroke, home geom.Point) {
	d.drop()
	d.stroke, d.begun, d.out = line, true, line.End()
	d.motif, d.rest, d.home = motif, rest, home
	d.wreath, d.centred = pen.Wreath{Turns: 1}, false
	d.panel.mirror.SetChecked(false)
	if d.panel.draws.whole() {
		d.panel.kinds.SetSelectedIndex(int(lines))
	}
	d.s.begin(d)
}

func (d *penHand) measures() []measure {
	u := d.w.unit()
	rows := []measure{{"nodes", strconv.Itoa(len(d.nodes()))}}
	if o := d.cover(d.stroke); len(o) > 0 {
		box := o.Bounds()
		rows = append(rows,
			measure{"across", u.Format(box.Width(), 3)},
			measure{"along", u.Format(box.Height(), 3)},
			measure{"cut area", strconv.FormatFloat(o.AreaMM2(), 'f', 3, 64) + " mm²"})
	}
	if g := d.w.Order().Group; g != pattern.P1 {
		rows = append(rows, measure{"plane group", string(g)})
	}
	return rows
}

// nodes are the places that are set.
func (d *penHand) nodes() []geom.Point {
	if !d.begun {
		return nil
	}
	return d.stroke.Nodes()
}
