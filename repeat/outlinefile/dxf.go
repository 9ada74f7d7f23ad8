package outlinefile

import (
	"bytes"
	"io"
	"math"
	"math/big"
	"strconv"
	"strings"

	"tsugime/repeat/geom"
)

// NoUnit is the fault of a DXF file that doesn't say what it measures in.
type NoUnit struct{}

// Error says what is missing; who asks for a unit says how to give one.
func (NoUnit) Error() string {
	return "the file doesn't say what unit it is in ($INSUNITS is missing or 0)"
}

// insUnits are the units that $INSUNITS names, in millimetres (DXF Reference, group
// codes of the header; from memory, and checked against ezdxf in the tests).
var insUnits = map[int]float64{
	1: 25.4, 2: 304.8, 3: 1_609_344, 4: 1, 5: 10, 6: 1000, 7: 1e6, 8: 25.4e-6, 9: 25.4e-3,
	10: 914.4, 11: 1e-7, 12: 1e-6, 13: 1e-3, 14: 100, 15: 1e4, 16: 1e5, 17: 1e12,
}

// ReadDXF reads the lines of an ASCII DXF file, release 12 to 2018. Lines whose ends
// meet within geom.Chain become outlines, layer by layer; an outline inside of
// another of its layer is paper again. y, which points up in the file, is turned
// down about the file's origin. Where neither the file nor the options name a unit,
// that is NoUnit. Every other error that is
// not the reader's own is a *Fault.
func ReadDXF(r io.Reader, with Options) (Drawing, error) {
	data, err := readAll(r)
	if err != nil {
		return Drawing{}, err
	}
	if bytes.IndexByte(data[:min(len(data), 4096)], 0) >= 0 {
		return Drawing{}, faultf(0, "it is a binary file; save it as ASCII DXF (text)")
	}
	f := &dxfFile{pairs: pairs{rest: string(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")))}, blocks: map[string]*block{}, hidden: map[string]bool{}}
	if err := f.read(); err != nil {
		return Drawing{}, err
	}
	mm := insUnits[f.unit]
	if with.Unit != (geom.Unit{}) {
		one, err := with.Unit.Of(big.NewRat(1, 1))
		if err != nil {
			return Drawing{}, err
		}
		mm = one.MM()
	} else if mm == 0 {
		return Drawing{}, NoUnit{}
	}
	k := mm * float64(geom.Millimetre)
	if err := f.place(f.items, dxfSpot{frame: geom.Affine{A: k, D: -k}}); err != nil {
		return Drawing{}, err
	}
	return Drawing{f.lines.pieces(&f.log), f.log.list()}, nil
}

// A pair is a group code and its value.
type pair struct {
	code  int
	value string
	line  int // of the value
}

func (p pair) float() (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(p.value), 64)
	if err != nil || !(math.Abs(v) <= farthest) {
		return 0, faultf(p.line, "%q is no number within ±%.0e; group %d wants one", short(p.value), farthest, p.code)
	}
	return v, nil
}

func (p pair) int() int {
	v, err := strconv.Atoi(strings.TrimSpace(p.value))
	if err != nil {
		return 0
	}
	return v
}

// pairs reads the file two lines at a time.
type pairs struct {
	rest string
	line int
	back *pair
}

func (p *pairs) text() (string, bool) {
	if p.rest == "" {
		return "", false
	}
	p.line++
	text, rest, _ := strings.Cut(p.rest, "\n")
	p.rest = rest
	return strings.TrimSuffix(text, "\r"), true
}

// next returns the next pair; ok is false at the end of the file.
func (p *pairs) next() (one pair, ok bool, err error) {
	if p.back != nil {
		one, p.back = *p.back, nil
		return one, true, nil
	}
	for {
		code, ok := p.text()
		if !ok || strings.TrimSpace(code) == "" && p.rest == "" {
			return pair{}, false, nil
		}
		n, err := strconv.Atoi(strings.TrimSpace(code))
		if err != nil {
			return pair{}, false, faultf(p.line, "%q stands where a group code should; it is no DXF file, or a broken one", short(code))
		}
		value, ok := p.text()
		if !ok {
			return pair{}, false, faultf(p.line, "the file ends within a group; save it again")
		}
		if n != 999 { // a comment
			return pair{n, strings.TrimSpace(value), p.line}, true, nil
		}
	}
}

// unread gives a pair back, to be read again.
func (p *pairs) unread(one pair) { p.back = &one }

// A dxfFile is what is read of a file.
type dxfFile struct {
	pairs
	unit   int
	blocks map[string]*block
	hidden map[string]bool // layers that are off or frozen
	items  []item
	log    logbook
	placed int
	steps  int // of all lines, each copy counted
	lines  assembly
}

// A block is drawn where it is inserted.
type block struct {
	base  place
	items []item
}

// An item is one entity as it is drawn: a run, or the insertion of a block.
type item struct {
	kind, layer string
	line        int
	run         run
	insert      *insert
}

func (f *dxfFile) read() error {
	sections := 0
	for {
		p, ok, err := f.next()
		if err != nil {
			return err
		}
		if !ok || p.code == 0 && p.value == "EOF" {
			break
		}
		if p.code != 0 || p.value != "SECTION" {
			continue
		}
		name, ok, err := f.next()
		if err != nil {
			return err
		}
		if !ok {
			break
		}
		sections++
		switch name.value {
		case "HEADER":
			err = f.header()
		case "TABLES":
			err = f.tables()
		case "BLOCKS":
			err = f.readBlocks()
		case "ENTITIES":
			f.items, err = f.entities(f.items, "ENDSEC")
		}
		if err != nil {
			return err
		}
	}
	if sections == 0 {
		return faultf(0, "it is no DXF file: it has no section")
	}
	return nil
}

// header looks for the unit.
func (f *dxfFile) header() error {
	for {
		p, ok, err := f.next()
		if err != nil || !ok {
			return err
		}
		if p.code == 0 {
			f.unread(p)
			return nil
		}
		if p.code == 9 && p.value == "$INSUNITS" {
			v, ok, err := f.next()
			if err != nil || !ok {
				return err
			}
			f.unit = v.int()
		}
	}
}

// tables looks for layers that are not shown.
func (f *dxfFile) tables() error {
	name, layer := "", false
	for {
		p, ok, err := f.next()
		if err != nil || !ok {
			return err
		}
		switch {
		case p.code == 0 && p.value == "ENDSEC":
			return nil
		case p.code == 0:
			layer = p.value == "LAYER"
			name = ""
		case layer && p.code == 2:
			name = p.value
		case layer && name != "" && (p.code == 70 && p.int()&1 != 0 || p.code == 62 && p.int() < 0):
			f.hidden[name] = true
		}
	}
}

// readBlocks reads the blocks by their names.
func (f *dxfFile) readBlocks() error {
	for {
		p, ok, err := f.next()
		if err != nil || !ok || p.code == 0 && p.value == "ENDSEC" {
			return err
		}
		if p.code != 0 || p.value != "BLOCK" {
			continue
		}
		e, err := f.entity(p)
		if err != nil {
			return err
		}
		b := &block{}
		if b.base, err = e.place(10); err != nil {
			return err
		}
		if b.items, err = f.entities(nil, "ENDBLK"); err != nil {
			return err
		}
		f.blocks[strings.ToUpper(e.text(2))] = b
	}
}
