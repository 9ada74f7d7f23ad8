package ui

import (
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// things are the seams, the pieces, the places asked for and the marks of stars that are
// seen; on the bolt, the panels.
func (s *garmentStation) things() []thing {
	if s.w.built == 0 {
		return nil
	}
	if s.onBolt {
		return s.panelThings()
	}
	return slices.Concat(s.seamThings(), s.targetThings(), s.starThings(), s.pieceThings())
}

// seamThings are the stretches of every seam where they are seen.
func (s *garmentStation) seamThings() []thing {
	u := s.w.unit()
	var all []thing
	for _, c := range s.seams.all() {
		words := say("seam, %s: pattern off %s along, %s across", say(c.Name), u.Format(c.PhaseAlong, 2), u.Format(c.PhaseAcross, 2))
		if c.Matched {
			words += ", " + say("matched")
		}
		for k, m := range stretches(c) {
			for i, l := range s.seams.lines(m) {
				all = append(all, thing{
					key: thingKey{kind: aSeam, name: c.Name, n: k, k: i}, words: words, line: []geom.Point{l.From, l.To},
					choose: func() { s.seams.choose(c.Name) },
				})
			}
		}
	}
	return all
}

// targetThings are the places at which a motif is asked for.
func (s *garmentStation) targetThings() []thing {
	var all []thing
	for _, t := range s.w.Order().Garment.Wishes.Targets {
		p, ok := s.piece(t.Piece)
		if !ok {
			continue
		}
		words := say("a motif is asked for here, within %s", s.w.unit().Format(t.Within, 1))
		all = append(all, thing{
			key: thingKey{kind: anAskedFor, name: t.Name}, words: t.Name + ": " + words,
			line: []geom.Point{t.At.Add(s.offsetOf(p))}, radius: t.Within, choose: func() { s.targets.list.SetSelected(t.Name) },
		})
	}
	return all
}

// starThings are the marks of stars that the garment shows.
func (s *garmentStation) starThings() []thing {
	var all []thing
	for i, m := range cloth.SeenStars(s.w.work.StarPrints()) {
		if p, ok := s.piece(m.Piece); ok {
			all = append(all, thing{
				key: thingKey{kind: aStar, n: i}, words: say("mark of a star, seen on the %s", say(m.Piece)),
				line: []geom.Point{s.markedAt(m, p)}, radius: s.w.Order().Sheet.Stars.Diameter / 2,
			})
		}
	}
	return all
}

// pieceThings are the pieces of the made-up garment.
func (s *garmentStation) pieceThings() []thing {
	u := s.w.unit()
	var all []thing
	for _, p := range s.w.work.Dressed.Pieces() {
		words := say("%s, of the panel %s, %s × %s", say(p.Name), say(p.Panel), u.Number(p.Area.Width(), 1), u.Format(p.Area.Height(), 1))
		all = append(all, thing{
			key: thingKey{kind: aClothPiece, name: string(p.View) + p.Name}, words: words,
			line: closed(corners(p.Area.Moved(s.offsetOf(p)))), area: true,
		})
	}
	return all
}

// panelThings are the panels as they lie on the bolt in the picture.
func (s *garmentStation) panelThings() []thing {
	u, f := s.w.unit(), s.panels.fold()
	var all []thing
	for _, p := range s.panels.along() {
		words := say("panel %s, %s × %s", say(p.Name), u.Number(p.Width, 1), u.Format(p.Length, 1)) + ", " + say("from %s", geom.MUnit.Format(p.Y, 3))
		if p.Turned {
			words += ", " + say("turned")
		}
		all = append(all, thing{
			key: thingKey{kind: aPanel, name: p.Name}, words: words, line: closed(corners(f.put(boxOf(p)))), area: true,
			choose: func() { s.panels.choose(p.Name) },
		})
	}
	return all
}

// lies is nothing more: all of the garment can be gone through.
func (s *garmentStation) lies(geom.Point, geom.Length) (thing, bool) { return thing{}, false }
