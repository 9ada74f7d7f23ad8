// Package outlinefile reads outlines that were drawn elsewhere: SVG 1.1 and DXF,
// both open formats. What it gives back are shapes in millimetres, y down, as they
// stand in the file: discs stay discs, arcs stay arcs, strokes become outlines, and
// what lies inside of an outline is paper again.
//
//	SVG elements ─► fills, strokes ─┐
//	                                ├─► sound contours ─► nested ─► Pieces
//	DXF entities ─► chained lines ──┘
//
// Nothing is left out in silence: what a file has that is no outline, or an outline
// that is not closed, is a Note with its line. Sizes and counts are bounded before
// anything is allocated; no file names another that would be opened.
package outlinefile

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
)

// A Drawing is what a file holds.
type Drawing struct {
	Pieces []Piece
	Notes  []Note
}

// A Piece is one shape and what it was.
type Piece struct {
	Shape geom.Shape // where it stands in the file, sound as by geom.Outline.Mended
	Kind  string     // the element or entity: "path", "circle, its stroke", "LWPOLYLINE"
	Layer string     // the DXF layer, or the id of the innermost named SVG group
	Line  int        // of the file, from 1
}

// A Note is something in the file that was left out, or taken otherwise than it
// was drawn.
type Note struct {
	Line int // from 1; zero where it is about the whole file
	Text string
}

// A Fault is why a file can't be read: where, what, and what to do.
type Fault struct {
	Line int // from 1; zero where it is about the whole file
	Text string
}

// Error puts the place before the text.
func (f *Fault) Error() string {
	if f.Line == 0 {
		return f.Text
	}
	return fmt.Sprintf("line %d: %s", f.Line, f.Text)
}

func faultf(line int, format string, args ...any) *Fault {
	return &Fault{line, fmt.Sprintf(format, args...)}
}

// Bounds of what is read. They are far above any drawing of the trade.
const (
	// MaxBytes is the largest file: a field of 63,500 holes is 3 MB.
	MaxBytes    = 64 << 20
	maxElements = 400_000   // elements or entities, each copy counted
	maxSegments = 2_000_000 // of all outlines together
	maxNotes    = 200
	maxReach    = 10 * geom.Metre // from the file's origin
	maxDepth    = 100             // of groups in groups
	maxCopies   = 16              // of copies in copies
)

// Layers returns the names of the layers that have pieces, in the order of the file.
func (d Drawing) Layers() []string {
	var names []string
	seen := map[string]bool{}
	for _, p := range d.Pieces {
		if !seen[p.Layer] {
			names, seen[p.Layer] = append(names, p.Layer), true
		}
	}
	return names
}

// On returns d with only the pieces of some layers.
func (d Drawing) On(layers ...string) Drawing {
	some := Drawing{Notes: d.Notes}
	for _, p := range d.Pieces {
		if slices.Contains(layers, p.Layer) {
			some.Pieces = append(some.Pieces, p)
		}
	}
	return some
}

// Bounds returns the box around all pieces.
func (d Drawing) Bounds() geom.Box {
	var b geom.Box
	for _, p := range d.Pieces {
		b = b.Union(p.Shape.Bounds())
	}
	return b
}

// Scaled returns d with all sizes times k, about the file's origin.
func (d Drawing) Scaled(k float64) Drawing {
	m := geom.Scale(k, k)
	scaled := Drawing{make([]Piece, len(d.Pieces)), d.Notes}
	for i, p := range d.Pieces {
		if p.Shape.Round() {
			p.Shape = geom.DiscShape(m.Apply(p.Shape.Disc.Centre), p.Shape.Disc.Diameter.Times(k))
		} else {
			p.Shape.Outline = p.Shape.Outline.Mapped(m)
		}
		scaled.Pieces[i] = p
	}
	return scaled
}

// Joined returns all pieces as one shape: what any of them covers. One disc alone
// stays a disc.
func (d Drawing) Joined() geom.Shape {
	if len(d.Pieces) == 1 {
		return d.Pieces[0].Shape
	}
	var all geom.Outline
	for _, p := range d.Pieces {
		all = append(all, contoursOf(p.Shape)...)
	}
	all, _ = sound(all, false)
	return geom.Shape{Outline: all}
}

// A logbook collects notes; the same text is kept with its first line and counted.
type logbook struct {
	notes []Note
	times map[string]int
	first map[string]int // index in notes
}

func (b *logbook) add(line int, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if b.times == nil {
		b.times, b.first = map[string]int{}, map[string]int{}
	}
	if b.times[text]++; b.times[text] > 1 {
		return
	}
	if len(b.notes) >= maxNotes {
		b.times[text]--
		b.times[moreNotes]++
		return
	}
	b.first[text] = len(b.notes)
	b.notes = append(b.notes, Note{line, text})
}

const moreNotes = "more was left out that isn't listed"

// list returns the notes in the order of the file.
func (b *logbook) list() []Note {
	notes := slices.Clone(b.notes)
	for text, i := range b.first {
		if n := b.times[text]; n > 1 {
			notes[i].Text = fmt.Sprintf("%s (%d times, first here)", text, n)
		}
	}
	slices.SortStableFunc(notes, func(a, c Note) int { return a.Line - c.Line })
	if n := b.times[moreNotes]; n > 0 {
		notes = append(notes, Note{0, fmt.Sprintf("%s: %d kinds of it", moreNotes, n)})
	}
	return notes
}
