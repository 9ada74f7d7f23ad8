package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// seams numbers the seams on the garment and lists them below with their phases.
func (p *plate) seams(g glass, w repeat.Work, sc scene, y geom.Length) {
	f := p.f
	rows := (len(w.Dressed.Seams) + seamColumns - 1) / seamColumns
	width := g.room.Width() / seamColumns
	small := style{geom.MM(2.7), false}
	for i, s := range w.Dressed.Seams {
		if at, ok := sc.seamPlace(s); ok {
			p.numbered(g.put(at), i+1)
		}
		at := geom.Point{X: g.room.Min.X + width*geom.Length(i/rows), Y: y + seamRow*geom.Length(i%rows)}
		p.over.text(accentWord, style{small.height, true}, at, export.Start, fmt.Sprint(i+1))
		name := small
		name.bold = s.Priority
		p.over.text(words, name, at.Add(geom.PtMM(5, 0)), export.Start, f.lang.Retell(s.Name))
		verdict := f.say("off")
		if s.Matched {
			verdict = f.say("matched")
		}
		text := f.say("%s along, %s across, %s", f.fine.signed(s.PhaseAlong), f.fine.signed(s.PhaseAcross), verdict)
		text, st := fit(text, small, width-geom.MM(36))
		p.over.text(words, st, at.Add(geom.PtMM(30, 0)), export.Start, text)
	}
}

// numbered sets a seam's number on a white dot.
func (p *plate) numbered(at geom.Point, n int) {
	p.over.disc(dot, at, geom.MM(3.6))
	p.over.text(accentWord, style{geom.MM(2.5), true}, at.Add(geom.PtMM(0, 0.9)), export.Middle, fmt.Sprint(n))
}

// seamPlace returns a place on a seam in the scene: the middle of the longest
// edge that pieces of its two panels share in one view; for a side seam, whose
// two pieces are of one panel, the outer edge of the front.
func (sc scene) seamPlace(s cloth.Seam) (geom.Point, bool) {
	var best geom.Point
	longest := geom.Length(0)
	for _, a := range sc.pieces {
		for _, b := range sc.pieces {
			if a.Panel != s.Between[0] || b.Panel != s.Between[1] || a.View != b.View || a.Name == b.Name {
				continue
			}
			x, ok := sharedEdge(a.Area, b.Area)
			from, to := max(a.Area.Min.Y, b.Area.Min.Y), min(a.Area.Max.Y, b.Area.Max.Y)
			if ok && to-from > longest {
				longest, best = to-from, geom.Point{X: x, Y: (from + to) / 2}.Add(sc.offset[a.View])
			}
		}
	}
	if longest > 0 || s.Between[0] != s.Between[1] {
		return best, longest > 0
	}
	for _, a := range sc.pieces {
		if a.Panel == s.Between[0] && a.View == cloth.FrontView && a.Area.Height() > longest {
			longest = a.Area.Height()
			x := a.Area.Min.X
			if a.Area.Max.X > -x {
				x = a.Area.Max.X
			}
			best = geom.Point{X: x, Y: a.Area.Centre().Y}.Add(sc.offset[a.View])
		}
	}
	return best, longest > 0
}

// sharedEdge returns where two boxes side by side meet, or the left edge that
// they have in common.
func sharedEdge(a, b geom.Box) (geom.Length, bool) {
	switch {
	case a.Max.X == b.Min.X:
		return a.Max.X, true
	case a.Min.X == b.Max.X:
		return a.Min.X, true
	case a.Min.X == b.Min.X && a.Max.X == b.Max.X:
		return a.Min.X, true
	}
	return 0, false
}
