package geom

import (
	"fmt"
	"math"
	"slices"
)

// A Cap is how a stroke ends.
type Cap uint8

// The caps (SVG 1.1, section 11.4).
const (
	ButtCap   Cap = iota // flat, at the end
	RoundCap             // by half a disc
	SquareCap            // flat, half a width beyond the end
)

// A Join is how a stroke turns a corner.
type Join uint8

// The joins (SVG 1.1, section 11.4).
const (
	MiterJoin Join = iota // its edges run on till they meet
	RoundJoin
	BevelJoin
)

// A Stroke is how a pen draws a line.
type Stroke struct {
	Width Length
	Cap   Cap
	Join  Join
	// Miter is how many widths a mitred corner may be long; a sharper one is
	// bevelled. Zero stands for 4, as in SVG.
	Miter float64
	// Dash has the lengths of dashes and gaps in turn, from DashFrom into them; an
	// odd number of them is taken twice. Where none has a length the line is whole.
	Dash     []Length
	DashFrom Length
}

// A Track is a line that a pen follows. An open one ends with its last segment.
type Track struct {
	Contour
	Open bool
}

// Outline returns what the pen covers along the tracks: SVG 1.1, section 11.4. Lines
// and arcs have parallels that are exact, cubics such as are Parallel off at most,
// or straight pieces where they bend more tightly than the pen is wide. The result
// is sound as that of Mended. A track without length leaves a dot where the caps
// are round or square, and nothing where they are flat.
//
// It fails where the dashes are too many or what is drawn is too wide.
func (s Stroke) Outline(tracks ...Track) (Outline, error) {
	if s.Width <= 0 {
		return nil, nil
	}
	if s.Miter == 0 {
		s.Miter = 4
	}
	if s.dashed() {
		var err error
		if tracks, err = s.dashes(tracks); err != nil {
			return nil, err
		}
	}
	var drawn Outline
	for _, t := range tracks {
		drawn = append(drawn, s.along(t)...)
	}
	if b := drawn.hull(); !b.Empty() && (b.Width() > MaxSpan/2 || b.Height() > MaxSpan/2) {
		return nil, fmt.Errorf("a stroke of %s mm reaches over %s × %s mm; keep it within %s mm each way",
			s.Width, b.Width(), b.Height(), MaxSpan/2)
	}
	sound, _ := drawn.Mended()
	return sound, nil
}

// along returns the raw edges of the stroke of one track: contours that go around
// each place as often as ribbons, corners and caps cover it, never less than none.
// The ribbon of a curve is what its normal sweeps; two that follow each other are
// joined on the inner side over the corner itself, so that their ends cancel.
func (s Stroke) along(t Track) Outline {
	c := t.curves()
	if len(c) == 0 {
		return s.dot(t.Start)
	}
	h := float64(s.Width) / 2
	c, bent := smooth(c, h)
	var left, right flank
	var extra Outline
	for i, v := range c {
		if i > 0 {
			s.cornerOf(bent[i]).corner(&left, &right, c[i-1], v, h)
		}
		extra = append(extra, ribbon(&left, &right, v, h)...)
	}
	if !t.Open {
		s.cornerOf(bent[0]).corner(&left, &right, c[len(c)-1], c[0], h)
		rim := contourOf(left.closed())
		hole := contourOf(reversedCurves(right.closed()))
		return append(extra, rim, hole)
	}
	first, last := c[0], c[len(c)-1]
	_, ahead := last.heading()
	back, _ := first.heading()
	line := slices.Clone(left.curves)
	line = append(line, s.cap(left.at, right.at, ahead, h)...)
	line = append(line, reversedCurves(right.curves)...)
	line = append(line, s.cap(right.curves[0].from, left.curves[0].from, back.Neg(), h)...)
	return append(extra, contourOf(line))
}

// curves returns the curves of t, the closing line too unless it is open.
func (t Track) curves() []curve {
	curves := t.Contour.curves(nil)
	at := t.Start
	for _, s := range t.Segments {
		at = s.End
	}
	if t.Open && at != t.Start && len(curves) > 0 {
		curves = curves[:len(curves)-1]
	}
	return curves
}

// smooth returns c with straight pieces for what bends more tightly than h, and for
// each curve whether it goes on with one that was bent before it was cut.
func smooth(c []curve, h float64) (out []curve, bent []bool) {
	out, bent = make([]curve, 0, len(c)), make([]bool, 0, len(c))
	for _, v := range c {
		by := Length(math.Ceil(h))
		if v.Kind != Cubic || !v.turnsBack(by) && !v.turnsBack(-by) {
			out, bent = append(out, v), append(bent, false)
			continue
		}
		run := v.evenPoints(Ring{v.from})
		for i, first := 1, true; i < len(run); i++ {
			if run[i] != run[i-1] {
				out = append(out, curve{run[i-1], Segment{Kind: Line, End: run[i]}})
				bent, first = append(bent, !first), false
			}
		}
	}
	return out, bent
}

// cornerOf returns s with round joins for what was a bend and no corner.
func (s Stroke) cornerOf(bent bool) Stroke {
	if bent {
		s.Join = RoundJoin
	}
	return s
}

// dot is the stroke of a line without length.
func (s Stroke) dot(at Point) Outline {
	h := s.Width / 2
	switch s.Cap {
	case RoundCap:
		return Outline{Disc{at, s.Width}.contour()}
	case SquareCap:
		a, b := Point{at.X - h, at.Y - h}, Point{at.X + s.Width - h, at.Y + s.Width - h}
		return Outline{Ring{a, {b.X, a.Y}, b, {a.X, b.Y}}.contour()}
	}
	return nil
}
