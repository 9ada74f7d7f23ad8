package outlinefile

import (
	"math"
	"strings"

	"tsugime/repeat/geom"
)

// An insert places a block, perhaps in rows and columns.
type insert struct {
	name          string
	frame         geom.Affine // of the first copy
	cols, rows    int
	right, upward place // from one column, one row to the next
}

func insertOf(e entity) (*insert, error) {
	v, err := e.floats(10, 20, 50, 44, 45)
	if err != nil {
		return nil, err
	}
	sx, err := e.float(41, 1)
	if err != nil {
		return nil, err
	}
	sy, err := e.float(42, 1)
	if err != nil {
		return nil, err
	}
	turn := geom.Rotate(math.Mod(v[2], 360))
	in := &insert{
		name: strings.ToUpper(e.text(2)), cols: max(1, e.int(70, 1)), rows: max(1, e.int(71, 1)),
		frame: geom.Scale(sx, sy).Then(turn).Then(geom.Affine{A: 1, D: 1, E: v[0], F: v[1]}),
		right: place{v[3], 0}.under(turn), upward: place{0, v[4]}.under(turn),
	}
	if in.cols > maxElements || in.rows > maxElements || in.cols*in.rows > maxElements {
		return nil, faultf(e.line, "INSERT: %d × %d copies are too many; the file may have %d entities", in.cols, in.rows, maxElements)
	}
	return in, nil
}

// A dxfSpot is where items stand.
type dxfSpot struct {
	frame  geom.Affine // to nanometres, y down
	layer  string      // for what is on layer 0 of a block
	copies int
}

// place puts items where they stand, blocks copied out, and sorts them by layer.
func (f *dxfFile) place(items []item, at dxfSpot) error {
	for _, it := range items {
		layer := it.layer
		if layer == "0" && at.layer != "" {
			layer = at.layer
		}
		if f.placed++; f.placed > maxElements {
			return faultf(it.line, "with its copies the file has more than %d entities; draw it plainer", maxElements)
		}
		if it.insert != nil {
			if err := f.copies(it, layer, at); err != nil {
				return err
			}
			continue
		}
		if f.steps += len(it.run.steps); f.steps > maxSegments {
			return faultf(it.line, "with its copies the file has lines of more than %d pieces; draw it plainer", maxSegments)
		}
		r := it.run.under(at.frame)
		if r.wild() {
			return faultf(it.line, "%s: it reaches farther than %s mm from the file's origin; move it nearer, or check the unit", it.kind, maxReach)
		}
		f.lines.group(layer).add(it.kind, it.line, r.track())
	}
	return nil
}

// copies places a block.
func (f *dxfFile) copies(it item, layer string, at dxfSpot) error {
	b := f.blocks[it.insert.name]
	if b == nil {
		f.log.add(it.line, "INSERT: there is no block %q; it was left out", short(it.insert.name))
		return nil
	}
	if at.copies++; at.copies > maxCopies {
		return faultf(it.line, "INSERT: block %q leads to blocks in blocks, more than %d deep; resolve them", short(it.insert.name), maxCopies)
	}
	in := it.insert
	base := geom.Affine{A: 1, D: 1, E: -b.base.x, F: -b.base.y}
	for row := range in.rows {
		for col := range in.cols {
			by := geom.Affine{
				A: 1, D: 1,
				E: float64(col)*in.right.x + float64(row)*in.upward.x,
				F: float64(col)*in.right.y + float64(row)*in.upward.y,
			}
			frame := base.Then(in.frame).Then(by).Then(at.frame)
			if err := f.place(b.items, dxfSpot{frame, layer, at.copies}); err != nil {
				return err
			}
			if f.placed++; f.placed > maxElements {
				return faultf(it.line, "with its copies the file has more than %d entities; draw it plainer", maxElements)
			}
		}
	}
	return nil
}
