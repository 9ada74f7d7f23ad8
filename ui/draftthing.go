package ui

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// things are the drawn motifs as they lie in the cell, then what is wrong with the paper
// between them.
func (s *draft) things() []thing {
	var all []thing
	l := s.w.Order().Unit.Lattice
	for _, m := range s.w.Order().Unit.Motifs {
		all = append(all, s.w.motifThing(m, 0, l.Into(m.At).Sub(m.At)))
	}
	if s.w.Ready() {
		all = append(all, s.w.paperThings(0, geom.Point{})...)
	}
	return all
}

// motifThing is a motif, or what an operation makes of it, moved to where it is seen.
func (w *Window) motifThing(m pattern.Motif, op int, by geom.Point) thing {
	id := m.ID
	return thing{
		key: thingKey{kind: aMotif, n: int(id)}, words: w.motifWords(m, op),
		line: closed(corners(m.Placed().Bounds().Moved(by))), area: true,
		choose: func() { w.choose(id) },
	}
}

// lies is a copy of a motif, or the paper.
func (s *draft) lies(at geom.Point, reach geom.Length) (thing, bool) {
	if id, op, stands, ok := s.under(at, reach); ok {
		m, _ := s.w.Order().Motif(id)
		return s.w.motifThing(m, op, stands.Sub(m.At)), true
	}
	return s.w.paperAt(at, s.snapGround().openings)
}

// paperAt is the paper at a place, with the way to the nearest cut-out.
func (w *Window) paperAt(at geom.Point, ground openings) (thing, bool) {
	if len(ground.unit.Motifs) == 0 {
		return thing{}, false
	}
	words, everywhere := say("paper"), stencil.Field{Left: -clothReach, Width: 2 * clothReach}
	for within := holePitch(ground.unit); within < clearReach; within *= 2 {
		// Few cut-outs are asked for, since one is mostly near.
		if clear := ground.clear(at, everywhere, within); clear < within {
			words = say("paper, %s to the nearest cut-out", w.unit().Format(max(clear, 0), 3))
			break
		}
	}
	return thing{key: thingKey{kind: somePaper, at: at}, words: words, line: []geom.Point{at}}, true
}

// clothReach is farther than any cloth is wide.
const clothReach = 10_000 * geom.Millimetre

// paperThings are the webs, islands, bands, tongues and ribbons of sheet n of the set, as
// they are marked.
func (w *Window) paperThings(n int, home geom.Point) []thing {
	set := w.work.Sheet.Set()
	n = min(n, len(set)-1)
	sheet, u := set[n], w.unit()
	all := w.webThings(sheet.Webs, home)
	put := func(kind thingKind, at geom.Point, words string, line ...geom.Point) {
		all = append(all, thing{key: thingKey{kind: kind, at: at}, words: words, line: moved(line, home)})
	}
	for _, ring := range w.grounds.islands[n][:min(len(w.grounds.islands[n]), mostMarks)] {
		b := ring.Bounds()
		put(anIsland, b.Min, say("island %s × %s: it falls out", u.Number(b.Width(), 2), u.Format(b.Height(), 2)), closed(ring)...)
		all[len(all)-1].area = true
	}
	for _, p := range sheet.Paths.Bands[:min(len(sheet.Paths.Bands), mostMarks)] {
		put(aBand, p.At, say("band: nothing holds it to its neighbours"), p.At)
	}
	for _, t := range sheet.Tongues[:min(len(sheet.Tongues), mostMarks)] {
		put(aTongue, t.At, say("tongue, %s long on a neck of %s", u.Format(t.Reach, 2), u.Format(t.Neck.Width, 2)), t.Neck.P, t.Neck.Q)
	}
	for _, r := range sheet.Ribbons[:min(len(sheet.Ribbons), mostMarks)] {
		put(aRibbon, r.At, say("ribbon, %s long and %s wide, gives %s", u.Format(r.Span, 2), u.Format(r.Width, 2), u.Format(r.Deflection, 2)), r.At)
	}
	return all
}

// webThings are the webs below the limit, the narrowest of all, and none twice.
func (w *Window) webThings(webs stencil.WebReport, home geom.Point) []thing {
	below := webs.Below[:min(len(webs.Below), mostMarks)]
	if webs.Found && len(below) == 0 {
		below = []stencil.Web{webs.Narrowest}
	}
	var all []thing
	for i, web := range below {
		words := say("web %s", w.unit().Format(web.Width, 3))
		if i == 0 {
			words = say("web %s, the narrowest", w.unit().Format(web.Width, 3))
		}
		all = append(all, thing{
			key: thingKey{kind: aWeb, at: web.P, n: int(web.Q.X), k: int(web.Q.Y)}, words: words, line: moved([]geom.Point{web.P, web.Q}, home),
		})
	}
	return all
}

// closed is a line that comes back to where it begins.
func closed(line []geom.Point) []geom.Point { return append(slices.Clone(line), line[0]) }
