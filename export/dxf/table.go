package dxf

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

// Handles of the fixed parts. Every object names its owner, so they are known
// before anything is written.
const (
	blockTable  handle = 0x01
	layerTable  handle = 0x02
	styleTable  handle = 0x03
	lineTable   handle = 0x05
	viewTable   handle = 0x06
	ucsTable    handle = 0x07
	portTable   handle = 0x08
	appTable    handle = 0x09
	dimTable    handle = 0x0a
	rootDict    handle = 0x0c
	groupDict   handle = 0x0d
	modelRecord handle = 0x1f
	modelBegin  handle = 0x20
	modelEnd    handle = 0x21
	paperRecord handle = 0x1b
	paperBegin  handle = 0x1c
	paperEnd    handle = 0x1d
	firstFree          = 0x40
	noOwner     handle = 0

	styleName = "Standard"
)

func (f *file) header(d export.Drawing) {
	f.section("HEADER")
	f.text(9, "$ACADVER")
	f.text(1, "AC1015")
	f.text(9, "$DWGCODEPAGE")
	f.text(3, "ANSI_1252")
	f.text(9, "$INSUNITS")
	f.int(70, 4) // millimetres
	f.text(9, "$MEASUREMENT")
	f.int(70, 1) // metric
	f.text(9, "$LUNITS")
	f.int(70, 2) // decimal
	f.text(9, "$EXTMIN")
	f.corner(geom.Point{Y: d.Height})
	f.text(9, "$EXTMAX")
	f.corner(geom.Point{X: d.Width})
	f.text(9, "$HANDSEED")
	f.handle(5, firstFree+handle(count(d)))
	f.end()
}

func (f *file) corner(p geom.Point) {
	f.at(10, p)
	f.int(30, 0)
}

// count bounds the handles that the drawing takes.
func count(d export.Drawing) int {
	n := 16
	for _, l := range d.Layers {
		n += 2 + len(l.Discs) + len(l.Lines) + len(l.Texts)
		for _, o := range l.Outlines {
			n += len(o)
		}
	}
	return n
}

func (f *file) tables(d export.Drawing) {
	f.section("TABLES")
	f.table("VPORT", portTable, 0)
	f.text(0, "ENDTAB")
	f.lineTypes(d)
	f.layers(d)
	f.table("STYLE", styleTable, 1)
	f.style()
	f.text(0, "ENDTAB")
	f.table("VIEW", viewTable, 0)
	f.text(0, "ENDTAB")
	f.table("UCS", ucsTable, 0)
	f.text(0, "ENDTAB")
	f.table("APPID", appTable, 1)
	f.record("APPID", "AcDbRegAppTableRecord", appTable, f.free(), "ACAD", 0)
	f.text(0, "ENDTAB")
	f.table("DIMSTYLE", dimTable, 0)
	f.text(100, "AcDbDimStyleTable")
	f.text(0, "ENDTAB")
	f.table("BLOCK_RECORD", blockTable, 2)
	f.blockRecord("*Model_Space", modelRecord)
	f.blockRecord("*Paper_Space", paperRecord)
	f.text(0, "ENDTAB")
	f.end()
}

func (f *file) table(name string, h handle, entries int) {
	f.text(0, "TABLE")
	f.text(2, name)
	f.handle(5, h)
	f.handle(330, noOwner)
	f.text(100, "AcDbSymbolTable")
	f.int(70, entries)
}

// record starts an entry of a table and gives its name and flags.
func (f *file) record(kind, class string, owner, h handle, name string, flags int) {
	f.text(0, kind)
	f.handle(5, h)
	f.handle(330, owner)
	f.text(100, "AcDbSymbolTableRecord")
	f.text(100, class)
	f.text(2, name)
	f.int(70, flags)
}

func (f *file) blockRecord(name string, h handle) {
	f.text(0, "BLOCK_RECORD")
	f.handle(5, h)
	f.handle(330, blockTable)
	f.text(100, "AcDbSymbolTableRecord")
	f.text(100, "AcDbBlockTableRecord")
	f.text(2, name)
}

func (f *file) style() {
	f.record("STYLE", "AcDbTextStyleTableRecord", styleTable, f.free(), styleName, 0)
	f.int(40, 0)
	f.int(41, 1)
	f.int(50, 0)
	f.int(71, 0)
	f.int(42, 1)
	f.text(3, "txt")
	f.text(4, "")
}
