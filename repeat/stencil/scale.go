package stencil

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Scale takes finished sizes to the board and to the paper. The cloth changes
// after it leaves the board, the paper grew when it was soaked:
//
//	board = finished / (1 + cloth change)
//	cut   = board    / (1 + paper growth)
//
// Changes are fractions with their sign by ISO 5077:2007, (after − before)/before:
// to finish at 350 mm after a change of −3 % the step on the board must be
// 360.825 mm. The zero Scale changes nothing.
type Scale struct {
	ClothAcross, ClothAlong float64
	PaperAcross, PaperAlong float64
}

// Board returns the factors from finished size to the board, across and along.
func (s Scale) Board() (across, along float64) {
	return 1 / (1 + s.ClothAcross), 1 / (1 + s.ClothAlong)
}

// Cut returns the factors from finished size to the dry paper, across and along.
func (s Scale) Cut() (across, along float64) {
	across, along = s.Board()
	return across / (1 + s.PaperAcross), along / (1 + s.PaperAlong)
}

// AtCutSize returns the sheet as it must be cut into dry paper. Places and
// outlines are scaled; round holes and stars keep the diameter of the tool that
// cuts them. The joint line, the stars and the square check are scaled with the
// pattern; what was measured on the pattern (webs, islands) stays as measured.
func (s Sheet) AtCutSize(scale Scale) Sheet {
	x, y := scale.Cut()
	m := geom.Scale(x, y)
	cut := s
	cut.Spec.Field.Left, cut.Spec.Field.Width = s.Spec.Field.Left.Times(x), s.Spec.Field.Width.Times(x)
	cut.Spec.Step = s.Spec.Step.Times(y)
	cut.CutOuts, cut.Printed = stretched(s.CutOuts, x, y), stretched(s.Printed, x, y)
	cut.Joint = s.Joint.atCutSize(x, y)
	cut.Stars.Stars = nil
	for _, star := range s.Stars.Stars {
		star.At = m.Apply(star.At)
		cut.Stars.Stars = append(cut.Stars.Stars, star)
	}
	cut.Stars.Match = nil
	for _, star := range s.Stars.Match {
		star.At = m.Apply(star.At)
		cut.Stars.Match = append(cut.Stars.Match, star)
	}
	cut.Stars.Baseline = longest(cut.Stars.Leading())
	cut.Stars.Square = squareOf(cut.Stars)
	cut.Paper = cut.Spec.paperBox(cut.Joint)
	if s.Second != nil {
		second := s.Second.AtCutSize(scale)
		cut.Second = &second
	}
	return cut
}

// atCutSize returns the joint with its line and its crossings scaled. Width and
// depth of a crossing change as the line does there: the width along it, the depth
// square to it.
func (j Joint) atCutSize(x, y float64) Joint {
	m := geom.Scale(x, y)
	line, crossings := j.Line, j.Crossings
	j.Line, j.Crossings, j.Crossed = nil, nil, 0
	for _, p := range line {
		j.Line = append(j.Line, m.Apply(p))
	}
	for _, c := range crossings {
		along := x
		if before := c.To.Sub(c.From).Norm(); before > 0 {
			along = m.Apply(c.To).Sub(m.Apply(c.From)).Norm() / before
		}
		c.From, c.To = m.Apply(c.From), m.Apply(c.To)
		c.Width, c.Depth = c.Width.Times(along), c.Depth.Times(x*y/along)
		j.Crossings, j.Crossed = append(j.Crossings, c), j.Crossed+c.Width
	}
	return j
}

func stretched(cuts []pattern.CutOut, x, y float64) []pattern.CutOut {
	all := make([]pattern.CutOut, len(cuts))
	for i, c := range cuts {
		c.Shape = c.Shape.Stretched(x, y)
		all[i] = c
	}
	return all
}

// paperBox lays the paper about the cut field: centred across, with two fifths
// of what is free along before the first joint line and three fifths behind the
// last, where the trailing stars stand. Old sheets have the wider border at one
// end (museum pieces; which end is our choice).
func (s Spec) paperBox(joint Joint) geom.Box {
	line := geom.BoxOf(joint.Line...)
	middle := s.Field.Left + s.Field.Width/2
	used := line.Height() + s.Step
	left, top := middle-s.Paper.Width/2, line.Min.Y-(s.Paper.Height-used)*2/5
	return geom.BoxOf(
		geom.Point{X: left, Y: top},
		geom.Point{X: left + s.Paper.Width, Y: top + s.Paper.Height},
	)
}
