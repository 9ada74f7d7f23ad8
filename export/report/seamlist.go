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
	width := p.inner().Width() / seamColumns
	small := style{geom.MM(2.7), false}
	for i, s := range w.Dressed.Seams {
		if at, ok := sc.seamPlace(s); ok {
			p.numbered(g.put(at), i+1)
		}
		at := geom.Point{X: p.inner().Min.X + width*geom.Length(i/rows), Y: y + seamRow*geom.Length(i%rows)}
		p.over.text(accentWord, style{small.height, true}, at, export.Start, fmt.Sprint(i+1))
		name := small
		name.bold = s.Priority == 1
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

// seamPlace returns the middle of a seam in the scene.
func (sc scene) seamPlace(s cloth.Seam) (geom.Point, bool) {
	line := s.Lines[0]
	off, shown := sc.offset[line.View]
	return line.Middle().Add(off), shown
}
