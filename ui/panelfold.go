package ui

import (
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// A panelFold is the finished cloth cut in the picture into lengths side by side, so
// that no panel is cut.
type panelFold struct {
	width, gap geom.Length
	lengths    []cloth.Span
}

// foldOf cuts the cloth where no panel goes on, so that it fits the surface as
// large as can be.
func foldOf(d cloth.Dressed, width, end geom.Length) panelFold {
	f := panelFold{width: width, gap: width * 4 / 5}
	cuts := cutsOf(d, end)
	best := -1.0
	for _, tall := range heights(cuts) {
		lengths := filled(cuts, tall)
		high := geom.Length(0)
		for _, l := range lengths {
			high = max(high, l.To-l.From)
		}
		across := float64(geom.Length(len(lengths)) * (f.width + f.gap))
		if scale := min(4.4/across, 4/float64(high)); scale > best*(1+1e-9) {
			best, f.lengths = scale, lengths
		}
	}
	return f
}

// heights returns how high lengths may be: from any cut to any other.
func heights(cuts []geom.Length) []geom.Length {
	var all []geom.Length
	for i, from := range cuts {
		for _, to := range cuts[i+1:] {
			all = append(all, to-from)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// cutsOf returns where the cloth may be cut, from its start to its end.
func cutsOf(d cloth.Dressed, end geom.Length) []geom.Length {
	end = max(end, d.Start+d.Used)
	cuts := []geom.Length{0, end}
	for _, p := range d.Panels {
		if !slices.ContainsFunc(d.Panels, func(q cloth.Panel) bool { return q.Y < p.Y && p.Y < q.Y+q.Length }) {
			cuts = append(cuts, p.Y)
		}
	}
	// Spare cloth may be cut anywhere; each metre will do.
	for y := d.Start + d.Used + geom.Metre; y < end; y += geom.Metre {
		cuts = append(cuts, y)
	}
	slices.Sort(cuts)
	return slices.Compact(cuts)
}

// filled fills lengths up to a height, one after another.
func filled(cuts []geom.Length, tall geom.Length) []cloth.Span {
	var lengths []cloth.Span
	from := cuts[0]
	for i, c := range cuts[1:] {
		if c-from > tall && cuts[i] > from {
			lengths = append(lengths, cloth.Span{From: from, To: cuts[i]})
			from = cuts[i]
		}
	}
	return append(lengths, cloth.Span{From: from, To: cuts[len(cuts)-1]})
}

// on returns how the cloth lies in length n of the picture, and the box of it.
func (f panelFold) on(n int) (lie, geom.Box) {
	l := f.lengths[n]
	x := geom.Length(n) * (f.width + f.gap)
	return lie{move: geom.Point{X: x, Y: -l.From}}, geom.BoxOf(geom.Point{X: x}, geom.Point{X: x + f.width, Y: l.To - l.From})
}

// back returns which place of the cloth lies at p of the picture; beside the cloth, the
// nearest.
func (f panelFold) back(p geom.Point) geom.Point {
	n := min(max((p.X+f.gap/2)/(f.width+f.gap), 0), geom.Length(len(f.lengths)-1))
	l := f.lengths[n]
	return geom.Point{X: p.X - n*(f.width+f.gap), Y: min(max(p.Y, 0), l.To-l.From) + l.From}
}

// put returns the box of the picture that a box of the cloth fills, in the length in
// which it begins.
func (f panelFold) put(b geom.Box) geom.Box {
	for n, l := range f.lengths {
		if b.Min.Y < l.To || n == len(f.lengths)-1 {
			on, _ := f.on(n)
			return on.box(b)
		}
	}
	return geom.Box{}
}
