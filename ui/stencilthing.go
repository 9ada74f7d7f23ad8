package ui

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// things are the stars, the joint line, the ties and what is wrong with the paper of the
// sheet that is shown; of the cloth, what lies on it.
func (s *stencilStation) things() []thing {
	if s.w.built == 0 || s.sheetNumber() == 1 && s.w.work.Sheet.Second == nil {
		return nil
	}
	if !s.onSheet() {
		return s.clothThings()
	}
	all := append(s.starThings(), s.jointThings()...)
	all = append(all, s.tieThings()...)
	all = append(all, s.w.paperThings(s.sheetNumber(), s.home())...)
	f, spec, u := s.w.Order().Sheet.Field, s.w.work.Sheet.Spec, s.w.unit()
	paper := s.sheet().Paper
	field := geom.BoxOf(geom.Point{X: f.Left}, geom.Point{X: f.Right(), Y: spec.Step})
	return append(all,
		thing{key: thingKey{kind: aField}, words: say("cut field, %s wide, a step of %s", u.Format(f.Width, 2), u.Format(spec.Step, 3)), line: closed(corners(field)), area: true},
		thing{key: thingKey{kind: aSheet}, words: say("sheet, %s × %s", u.Number(paper.Width(), 1), u.Format(paper.Height(), 1)), line: closed(corners(paper)), area: true})
}

// starThings are the stars of the sheet that is shown.
func (s *stencilStation) starThings() []thing {
	set, u := s.w.work.Sheet.Stars, s.w.unit()
	var all []thing
	for i, star := range set.Stars {
		words := say("leading star L%d", i+1)
		if star.End == stencil.Trailing {
			words = say("trailing star T%d", i+1-len(set.Stars)/2)
		}
		words += ", " + u.Format(star.Diameter, 2) + ", " + s.clearWords(star.Clear)
		all = append(all, thing{key: thingKey{kind: aStar, n: i}, words: words, line: []geom.Point{star.At}, radius: star.Diameter / 2})
	}
	for i, star := range set.Match {
		if star.On(s.sheetNumber() + 1) {
			words := say("match star") + ", " + u.Format(star.Diameter, 2) + ", " + s.clearWords(star.Clear)
			all = append(all, thing{key: thingKey{kind: aStar, n: i, k: 1}, words: words, line: []geom.Point{star.At}, radius: star.Diameter / 2})
		}
	}
	return all
}

// jointThings are the joint line, its copy one step on, and its points where it is drawn
// by hand.
func (s *stencilStation) jointThings() []thing {
	j, u := s.w.work.Sheet.Joint, s.w.unit()
	hand := s.drawn()
	line := j.Line
	if len(hand) > 0 {
		line = hand
	}
	if len(line) == 0 {
		return nil
	}
	words := say("joint line, %s long", u.Format(j.Length, 1)) + ", " + s.clearWords(j.Clearance)
	all := []thing{
		{key: thingKey{kind: aJointLine}, words: words, line: line},
		{key: thingKey{kind: aJointLine, n: 1}, words: say("joint line, one step on"), line: moved(line, geom.Point{Y: s.w.Order().Sheet.Step})},
	}
	if s.sheetNumber() == 0 {
		for i, p := range hand {
			all = append(all, thing{
				key: thingKey{kind: aJointPoint, n: i}, words: say("point %d of %d of the joint line", i+1, len(hand)),
				line: []geom.Point{p}, choose: func() { s.choosePoint(i) },
			})
		}
	}
	return all
}

// tieThings are the ties as they lie in the copy of the unit that is marked.
func (s *stencilStation) tieThings() []thing {
	home, u := s.home(), s.w.unit()
	var all []thing
	for i, t := range s.ties() {
		words := say("tie %d, %s wide, %s long", i+1, u.Format(t.Width, 2), u.Format(t.From.Distance(t.To), 2))
		all = append(all, thing{
			key: thingKey{kind: aTie, n: i}, words: words, line: moved([]geom.Point{t.From, t.To}, home),
			choose: func() { s.chooseTie(i, home) },
		})
	}
	return all
}

// clothThings are the placements, the joints between them and, of a split, what shows.
func (s *stencilStation) clothThings() []thing {
	w, u := s.w.work, s.w.unit()
	step, n := geom.Point{Y: w.Sheet.Spec.Step}, 3
	if s.seen == theBoth {
		n = 1
	}
	var all []thing
	field := w.Sheet.Spec.Field
	for i := range n {
		move := step.Times(i)
		if s.seen == theJoint {
			move = step.Add(s.off).Times(i)
		}
		line := moved(w.Sheet.Joint.Line, move)
		next := moved(w.Sheet.Joint.Line, move.Add(step))
		if len(line) > 0 {
			all = append(all, thing{key: thingKey{kind: aJointLine, n: i}, words: say("joint line of placement %d", i), line: line})
		}
		box := geom.BoxOf(move.Add(geom.Point{X: field.Left}), move.Add(geom.Point{X: field.Right(), Y: step.Y}))
		if len(next) == 0 {
			continue
		}
		all = append(all, thing{
			key: thingKey{kind: aPlacement, n: i}, line: closed(corners(box)), area: true,
			words: say("placement %d", i) + ", " + say("laid off by %s, %s", u.Number(s.off.X.Times(float64(i)), 3), u.Format(s.off.Y.Times(float64(i)), 3)),
		})
	}
	return all
}

// lies is the cut-out at a place of the sheet, or the copy of a tie.
func (s *stencilStation) lies(at geom.Point, reach geom.Length) (thing, bool) {
	if s.w.built == 0 || !s.onSheet() {
		return thing{}, false
	}
	if i, shift, ok := s.tieUnder(at, reach); ok {
		t := s.ties()[i]
		all := s.tieThings()
		found := all[i]
		found.line = moved([]geom.Point{t.From, t.To}, shift)
		found.choose = func() { s.chooseTie(i, shift) }
		return found, true
	}
	sheet, u := s.sheet(), s.w.unit()
	if !sheet.Paper.Holds(at) {
		return thing{}, false
	}
	index := s.cutIndex(sheet)
	found, ok := thing{}, false
	index.Visit(geom.BoxOf(at), func(k int) bool {
		c := sheet.CutOuts[k]
		if !c.Shape.Contains(at) {
			return true
		}
		b := c.Shape.Bounds()
		words := say("cut-out %d of %d, %s × %s", k+1, len(sheet.CutOuts), u.Number(b.Width(), 3), u.Format(b.Height(), 3))
		if c.Shape.Round() {
			words = say("cut-out %d of %d, a dot of %s", k+1, len(sheet.CutOuts), u.Format(c.Shape.Disc.Diameter, 3))
		}
		found, ok = thing{key: thingKey{kind: aCutOut, n: k}, words: words, line: closed(corners(b)), area: true}, true
		return false
	})
	return found, ok
}

// cutIndex is where the cut-outs of the sheet that is shown lie.
func (s *stencilStation) cutIndex(sheet stencil.Sheet) *geom.Index {
	of := [2]int{s.w.built, s.sheetNumber()}
	if s.cuts == nil || s.cutsOf != of {
		boxes := make([]geom.Box, len(sheet.CutOuts))
		for i, c := range sheet.CutOuts {
			boxes[i] = c.Shape.Bounds()
		}
		s.cuts, s.cutsOf = geom.NewIndex(boxes), of
	}
	return s.cuts
}
