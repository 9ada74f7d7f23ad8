package dxf

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

// lineTypes writes the three that every file has and one for each dashed layer.
func (f *file) lineTypes(d export.Drawing) {
	dashed := 0
	for _, l := range d.Layers {
		if len(l.Pen.Dash) > 0 {
			dashed++
		}
	}
	f.table("LTYPE", lineTable, 3+dashed)
	for _, name := range []string{"ByBlock", "ByLayer", "Continuous"} {
		f.lineType(name, "", nil)
	}
	for _, l := range d.Layers {
		if len(l.Pen.Dash) > 0 {
			f.lineType(dashName(l), "dashed", l.Pen.Dash)
		}
	}
	f.text(0, "ENDTAB")
}

func dashName(l export.Layer) string { return "Dash-" + l.Name }

// lineType writes dashes as lengths and gaps as lengths below zero. An odd run
// is taken twice, so that dash and gap change places as they do in an SVG.
func (f *file) lineType(name, about string, dash []geom.Length) {
	if len(dash)%2 == 1 {
		dash = append(append([]geom.Length(nil), dash...), dash...)
	}
	f.record("LTYPE", "AcDbLinetypeTableRecord", lineTable, f.free(), name, 0)
	f.text(3, about)
	f.int(72, 'A')
	f.int(73, len(dash))
	var sum geom.Length
	for _, l := range dash {
		sum += l
	}
	f.mm(40, sum)
	for i, l := range dash {
		if i%2 == 1 {
			l = -l
		}
		f.mm(49, l)
		f.int(74, 0)
	}
}

// layers declares the layers of d after the one that every file has.
func (f *file) layers(d export.Drawing) {
	f.table("LAYER", layerTable, 1+len(d.Layers))
	f.declare("0", export.Pen{}, "Continuous")
	for _, l := range d.Layers {
		line := "Continuous"
		if len(l.Pen.Dash) > 0 {
			line = dashName(l)
		}
		f.declare(l.Name, l.Pen, line)
	}
	f.text(0, "ENDTAB")
}

func (f *file) declare(name string, pen export.Pen, line string) {
	f.record("LAYER", "AcDbLayerTableRecord", layerTable, f.free(), name, 0)
	f.int(62, index(pen.Colour))
	f.text(6, line)
	f.int(370, weight(pen.Stroke))
}

// weights are the widths that a layer's lines may have, in hundredths of a
// millimetre.
var weights = [...]int{0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211}

// weight returns the allowed width nearest to a stroke, and −3, the reader's own
// default, for none.
func weight(stroke geom.Length) int {
	if stroke == 0 {
		return -3
	}
	best := weights[0]
	for _, w := range weights {
		if off := geom.Length(w)*geom.Millimetre/100 - stroke; off.Abs() < (geom.Length(best)*geom.Millimetre/100 - stroke).Abs() {
			best = w
		}
	}
	return best
}

// blocks writes the two that every file has: the model, where the drawing is,
// and an empty paper.
func (f *file) blocks() {
	f.section("BLOCKS")
	f.block("*Model_Space", modelRecord, modelBegin, modelEnd, false)
	f.block("*Paper_Space", paperRecord, paperBegin, paperEnd, true)
	f.end()
}

func (f *file) block(name string, record, begin, end handle, paper bool) {
	f.text(0, "BLOCK")
	f.ends(begin, record, paper)
	f.text(100, "AcDbBlockBegin")
	f.text(2, name)
	f.int(70, 0)
	f.int(10, 0)
	f.int(20, 0)
	f.int(30, 0)
	f.text(3, name)
	f.text(1, "")
	f.text(0, "ENDBLK")
	f.ends(end, record, paper)
	f.text(100, "AcDbBlockEnd")
}

func (f *file) ends(h, owner handle, paper bool) {
	f.handle(5, h)
	f.handle(330, owner)
	f.text(100, "AcDbEntity")
	if paper {
		f.int(67, 1)
	}
	f.text(8, "0")
}

// objects writes the dictionary at the root, which must be there, with an empty
// one for groups.
func (f *file) objects() {
	f.section("OBJECTS")
	f.dictionary(rootDict, noOwner)
	f.text(3, "ACAD_GROUP")
	f.handle(350, groupDict)
	f.dictionary(groupDict, rootDict)
	f.end()
}

func (f *file) dictionary(h, owner handle) {
	f.text(0, "DICTIONARY")
	f.handle(5, h)
	f.handle(330, owner)
	f.text(100, "AcDbDictionary")
	f.int(281, 1)
}
