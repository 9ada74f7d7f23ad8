package export

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// Subset returns a TrueType file with those glyphs of f alone, numbered from 1 in
// their order, and the sign for a lacking letter as number 0. Hints are left out:
// sheets are printed, and read large. It holds the tables that a PDF asks for
// (ISO 32000-1, 9.9) and no date.
func (f Face) Subset(glyphs []uint16) []byte {
	s := source(f)
	all := append([]uint16{0}, glyphs...)
	var outlines [][]byte
	for i := 0; i < len(all); i++ { // it grows by the parts of composite glyphs
		g := slices.Clone(s.glyph(all[i]))
		g, all = s.bare(g, all)
		outlines = append(outlines, g)
	}
	var glyf, loca, hmtx []byte
	for i, g := range outlines {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		glyf = append(glyf, g...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
		hmtx = append(hmtx, s.metrics(all[i])...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	head, hhea, maxp := slices.Clone(s.table["head"]), slices.Clone(s.table["hhea"]), slices.Clone(s.table["maxp"])
	binary.BigEndian.PutUint16(head[50:], 1) // loca has long offsets
	binary.BigEndian.PutUint16(hhea[34:], uint16(len(all)))
	binary.BigEndian.PutUint16(maxp[4:], uint16(len(all)))
	return assembled([]fontTable{{"glyf", glyf}, {"head", head}, {"hhea", hhea}, {"hmtx", hmtx}, {"loca", loca}, {"maxp", maxp}})
}

// A fontSource is the tables of a font by name.
type fontSource struct {
	table map[string][]byte
	long  bool // loca has 32-bit offsets
	wide  int  // glyphs with a width of their own
}

// source reads the directory of a built-in font.
func source(f Face) fontSource {
	ttf := f.ttf()
	s := fontSource{table: map[string][]byte{}}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		entry := ttf[12+16*i:]
		from, length := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		s.table[string(entry[:4])] = ttf[from : from+length]
	}
	s.long = binary.BigEndian.Uint16(s.table["head"][50:]) == 1
	s.wide = int(binary.BigEndian.Uint16(s.table["hhea"][34:]))
	return s
}

// glyph returns the description of a glyph; empty for a blank.
func (s fontSource) glyph(id uint16) []byte {
	at := func(i int) int {
		if s.long {
			return int(binary.BigEndian.Uint32(s.table["loca"][4*i:]))
		}
		return 2 * int(binary.BigEndian.Uint16(s.table["loca"][2*i:]))
	}
	return s.table["glyf"][at(int(id)):at(int(id)+1)]
}

// metrics returns a glyph's width and left bearing as the table hmtx has them.
func (s fontSource) metrics(id uint16) []byte {
	hmtx, i := s.table["hmtx"], int(id)
	if i < s.wide {
		return hmtx[4*i : 4*i+4]
	}
	last := hmtx[4*(s.wide-1) : 4*(s.wide-1)+2]
	bearing := 4*s.wide + 2*(i-s.wide)
	return append(slices.Clone(last), hmtx[bearing:bearing+2]...)
}

// The flags of a part of a composite glyph.
const (
	wordArguments  = 0x0001
	oneScale       = 0x0008
	moreParts      = 0x0020
	twoScales      = 0x0040
	fourScales     = 0x0080
	hasInstruction = 0x0100
)

// bare takes the hints out of a glyph, which is a copy, and numbers the parts of
// a composite one anew, of which those not met before are added to all.
func (s fontSource) bare(g []byte, all []uint16) ([]byte, []uint16) {
	if len(g) == 0 {
		return g, all
	}
	if contours := int(int16(binary.BigEndian.Uint16(g))); contours >= 0 {
		at := 10 + 2*contours
		n := int(binary.BigEndian.Uint16(g[at:]))
		binary.BigEndian.PutUint16(g[at:], 0)
		return slices.Delete(g, at+2, at+2+n), all
	}
	for at := 10; ; {
		flags := binary.BigEndian.Uint16(g[at:])
		part := binary.BigEndian.Uint16(g[at+2:])
		i := slices.Index(all, part)
		if i < 0 {
			i, all = len(all), append(all, part)
		}
		binary.BigEndian.PutUint16(g[at:], flags&^hasInstruction)
		binary.BigEndian.PutUint16(g[at+2:], uint16(i))
		at += partLength(flags)
		if flags&moreParts == 0 {
			return g[:at], all
		}
	}
}

// partLength returns how many bytes a part of a composite glyph takes.
func partLength(flags uint16) int {
	n := 6
	if flags&wordArguments != 0 {
		n += 2
	}
	switch {
	case flags&oneScale != 0:
		n += 2
	case flags&twoScales != 0:
		n += 4
	case flags&fourScales != 0:
		n += 8
	}
	return n
}

type fontTable struct {
	name string
	data []byte
}

// assembled writes a font file: the directory, then the tables, each at a multiple
// of four bytes, with their sums.
func assembled(tables []fontTable) []byte {
	n := len(tables)
	if n != 6 {
		panic(fmt.Sprintf("export: a font of %d tables", n))
	}
	out := []byte{0, 1, 0, 0, 0, 6, 0, 64, 0, 2, 0, 32} // six tables: 4 · 16, log2 4, 6 · 16 − 64
	at := uint32(12 + 16*n)
	headAt := uint32(0)
	for _, t := range tables {
		if t.name == "head" {
			headAt = at
			binary.BigEndian.PutUint32(t.data[8:], 0)
		}
		out = append(out, t.name...)
		out = binary.BigEndian.AppendUint32(out, fontSum(t.data))
		out = binary.BigEndian.AppendUint32(out, at)
		out = binary.BigEndian.AppendUint32(out, uint32(len(t.data)))
		at += uint32(len(t.data)+3) &^ 3
	}
	for _, t := range tables {
		out = append(out, t.data...)
		for len(out)%4 != 0 {
			out = append(out, 0)
		}
	}
	binary.BigEndian.PutUint32(out[headAt+8:], 0xB1B0AFBA-fontSum(out))
	return out
}

// fontSum adds up a table as words of four bytes, the last one filled with zeros.
func fontSum(data []byte) uint32 {
	var sum uint32
	for len(data) >= 4 {
		sum += binary.BigEndian.Uint32(data)
		data = data[4:]
	}
	var rest [4]byte
	copy(rest[:], data)
	return sum + binary.BigEndian.Uint32(rest[:])
}
