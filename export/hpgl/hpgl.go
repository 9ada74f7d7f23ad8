// Package hpgl writes a Drawing as HP-GL for a cutting plotter: 40 units to the
// millimetre, x right, y up from the drawing's foot, a pen for each layer that has
// marks, pen down along every rim and line.
//
// A disc is one circle command, its centre and radius rounded to a unit (0.025 mm);
// any other rim is straight pieces no farther than Chord from it, their ends rounded
// to a unit. Nothing is filled and a line has no width, since the tool has its own.
// Letters are drawn around.
//
// Mnemonics: IN, SP, PU, PD, CI of HP-GL, from memory; what was written is read again
// in the tests by another reader, which tells of commands that it does not know.
package hpgl

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Unit is the plotter's unit.
const Unit = geom.Millimetre / 40

// Chord is how far a straight piece may be from the curve that it stands for.
const Chord = 10 * geom.Micrometre

// Reach is the farthest coordinate, in units: what plotters keep in 24 bits.
const Reach = 1<<23 - 1

// Format writes HP-GL files.
type Format struct{}

// Name returns "HP-GL".
func (Format) Name() string { return "HP-GL" }

// Extension returns ".hpgl".
func (Format) Extension() string { return ".hpgl" }

// Write writes d. The same drawing gives the same bytes. Pens count from 1 in the
// order of the layers that have marks.
func (Format) Write(w io.Writer, d export.Drawing) error {
	if err := d.Check(); err != nil {
		return err
	}
	f := &file{out: bufio.NewWriterSize(w, 1<<16), height: d.Height}
	if err := f.within(d); err != nil {
		return err
	}
	f.out.WriteString("IN;\n")
	pen := 0
	for _, l := range d.Layers {
		if len(l.Discs)+len(l.Outlines)+len(l.Lines)+len(l.Texts) == 0 {
			continue
		}
		pen++
		f.command("SP", pen)
		f.layer(l)
	}
	f.command("PU")
	f.command("SP", 0)
	return f.out.Flush()
}

// A file is what is being written. Its writer keeps the first error, which Flush
// gives back.
type file struct {
	out    *bufio.Writer
	num    []byte
	height geom.Length
}

// within refuses marks that lie out of a plotter's reach.
func (f *file) within(d export.Drawing) error {
	b := d.Bounds()
	if b.Empty() {
		return nil
	}
	const most = Reach * Unit
	if least := min(b.Min.X, f.height-b.Max.Y); least < -most || max(b.Max.X, f.height-b.Min.Y) > most {
		return fmt.Errorf("drawing %q has marks at %s, %s mm or %s, %s mm; a plotter reaches %s mm: move them nearer",
			d.Title, b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, geom.Length(most))
	}
	return nil
}

// command writes a mnemonic, its numbers and the end of the line.
func (f *file) command(name string, numbers ...int) {
	f.num = append(f.num[:0], name...)
	for i, n := range numbers {
		if i > 0 {
			f.num = append(f.num, ',')
		}
		f.num = strconv.AppendInt(f.num, int64(n), 10)
	}
	f.num = append(f.num, ';', '\n')
	f.out.Write(f.num)
}

// units rounds a length to whole units, halves away from zero.
func units(l geom.Length) int {
	if l < 0 {
		return -units(-l)
	}
	return int((l + Unit/2) / Unit)
}

// at returns a place in units, y up.
func (f *file) at(p geom.Point) (x, y int) { return units(p.X), units(f.height - p.Y) }

func (f *file) layer(l export.Layer) {
	for _, d := range l.Discs {
		f.circle(d)
	}
	for _, o := range l.Outlines {
		f.outline(o)
	}
	for _, line := range l.Lines {
		f.run(line.Points, line.Closed)
	}
	for _, t := range l.Texts {
		f.outline(export.Lettering(t))
	}
}

func (f *file) outline(o geom.Outline) {
	for _, ring := range o.Rings(Chord) {
		f.run(ring, true)
	}
}

// circle goes to the centre with the pen up and draws around it. The second number
// is the turn of a chord in degrees, for readers that draw chords.
func (f *file) circle(d geom.Disc) {
	x, y := f.at(d.Centre)
	radius := max(units((d.Diameter+1)/2), 1)
	f.command("PU", x, y)
	f.command("CI", radius, chordDeg(float64(radius)*float64(Unit)))
}

// chordDeg is the whole turn, from 1 to 30 degrees, whose chord stays within Chord.
func chordDeg(radius float64) int {
	turn := 2 * math.Acos(1-math.Min(float64(Chord)/radius, 1)) * 180 / math.Pi
	return min(max(int(turn), 1), 30)
}

// run goes to the first place with the pen up and through the others with it down.
// Places that round to the one before are left out; what rounds to one place is a
// prick there.
func (f *file) run(points []geom.Point, closed bool) {
	if len(points) == 0 {
		return
	}
	startX, startY := f.at(points[0])
	f.command("PU", startX, startY)
	lastX, lastY := startX, startY
	f.num = append(f.num[:0], "PD"...)
	put := func(x, y int) {
		if x == lastX && y == lastY {
			return
		}
		lastX, lastY = x, y
		if len(f.num) > 2 {
			f.num = append(f.num, ',')
		}
		f.num = strconv.AppendInt(f.num, int64(x), 10)
		f.num = append(f.num, ',')
		f.num = strconv.AppendInt(f.num, int64(y), 10)
	}
	for _, p := range points[1:] {
		put(f.at(p))
	}
	if closed {
		put(startX, startY)
	}
	f.num = append(f.num, ';', '\n')
	f.out.Write(f.num)
}
