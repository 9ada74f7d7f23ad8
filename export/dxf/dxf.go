// Package dxf writes a Drawing as DXF of release 2000 (AC1015), in millimetres,
// y up: a layer for each layer, a CIRCLE for each disc, an LWPOLYLINE with bulges
// for each contour and line, a TEXT for each text. Nothing is filled: a cutter
// follows the lines.
//
// Coordinates carry six decimals, so they are the drawing's own to the
// nanometre. Only cubics are cut into straight pieces, geom.Chord off at most.
//
// Group codes: DXF Reference of release 2000, from memory; what was written is
// read again in the tests by a reader that audits it.
package dxf

import (
	"bufio"
	"io"
	"strconv"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Format writes DXF files.
type Format struct{}

// Name returns "DXF".
func (Format) Name() string { return "DXF" }

// Extension returns ".dxf".
func (Format) Extension() string { return ".dxf" }

// Write writes d. The same drawing gives the same bytes.
func (Format) Write(w io.Writer, d export.Drawing) error {
	if err := d.Check(); err != nil {
		return err
	}
	f := &file{out: bufio.NewWriterSize(w, 1<<16), height: d.Height, next: firstFree}
	f.header(d)
	f.tables(d)
	f.blocks()
	f.section("ENTITIES")
	for _, l := range d.Layers {
		f.layer(l)
	}
	f.end()
	f.objects()
	f.text(0, "EOF")
	return f.out.Flush()
}

// A file is what is being written, pair by pair: a group code on a line, its
// value on the next. Its writer keeps the first error, which Flush gives back.
type file struct {
	out    *bufio.Writer
	num    []byte
	height geom.Length // of the drawing; y is counted from its foot
	next   uint64      // the next free handle
}

func (f *file) code(code int) {
	f.num = strconv.AppendInt(f.num[:0], int64(code), 10)
	f.num = append(f.num, '\n')
	f.out.Write(f.num)
}

func (f *file) text(code int, value string) {
	f.code(code)
	f.out.WriteString(value)
	f.out.WriteByte('\n')
}

func (f *file) int(code, value int) {
	f.code(code)
	f.num = strconv.AppendInt(f.num[:0], int64(value), 10)
	f.num = append(f.num, '\n')
	f.out.Write(f.num)
}

func (f *file) real(code int, value float64) {
	f.code(code)
	f.num = strconv.AppendFloat(f.num[:0], value, 'f', -1, 64)
	f.num = append(f.num, '\n')
	f.out.Write(f.num)
}

func (f *file) mm(code int, value geom.Length) {
	f.code(code)
	f.num = value.AppendMM(f.num[:0], 6)
	f.num = append(f.num, '\n')
	f.out.Write(f.num)
}

// half writes half a length, which may end in half a nanometre.
func (f *file) half(code int, value geom.Length) {
	if value%2 == 0 {
		f.mm(code, value/2)
		return
	}
	f.real(code, value.MM()/2)
}

// at writes a point with y turned up: x under code, y under code + 10.
func (f *file) at(code int, p geom.Point) {
	f.mm(code, p.X)
	f.mm(code+10, f.height-p.Y)
}

// A handle names an object. Those of the fixed parts are constants; the rest
// count on from firstFree.
type handle uint64

func (f *file) handle(code int, h handle) {
	f.code(code)
	f.num = strconv.AppendUint(f.num[:0], uint64(h), 16)
	for i, c := range f.num {
		if c >= 'a' {
			f.num[i] = c - 'a' + 'A'
		}
	}
	f.num = append(f.num, '\n')
	f.out.Write(f.num)
}

func (f *file) free() handle {
	f.next++
	return handle(f.next - 1)
}

func (f *file) section(name string) {
	f.text(0, "SECTION")
	f.text(2, name)
}

func (f *file) end() { f.text(0, "ENDSEC") }
