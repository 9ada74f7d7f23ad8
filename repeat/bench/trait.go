package bench

import (
	"math"

	"tsugime/repeat/geom"
)

// A trait is what the choice of a method asks of an outline.
type trait struct {
	width, length geom.Length // of the box along the longest straight piece
	straight      bool        // a strip with two parallel sides
	bend          geom.Length // the least radius of a curve; 0 where all is straight
	corners       int         // places where the line turns by more than 20°
	rimMM         float64
}

// traitOf looks at an outline.
func traitOf(o geom.Outline) trait {
	t := trait{rimMM: o.RimMM()}
	bend := math.Inf(1)
	var along geom.Point
	var longest float64
	for _, c := range o {
		at := c.Start
		segments := closed(c)
		for i, s := range segments {
			bend = math.Min(bend, leastRadius(at, s))
			if l := s.End.Sub(at).Norm(); s.Kind == geom.Line && l > longest {
				longest, along = l, s.End.Sub(at)
			}
			next := segments[(i+1)%len(segments)]
			if turn := leaving(s.End, next) - arriving(at, s); math.Abs(math.Remainder(turn, 2*math.Pi)) > sharp {
				t.corners++
			}
			at = s.End
		}
	}
	if !math.IsInf(bend, 1) {
		t.bend = geom.Length(math.Round(bend))
	}
	if longest == 0 {
		along = geom.Point{X: 1}
	}
	box := o.Mapped(geom.Rotate(-math.Atan2(float64(along.Y), float64(along.X)) * 180 / math.Pi)).Bounds()
	t.length, t.width = max(box.Width(), box.Height()), min(box.Width(), box.Height())
	full := t.length.MM() * t.width.MM()
	t.straight = len(o) == 1 && longest >= float64(t.length)/2 && o.AreaMM2() >= 0.9*full
	return t
}

// sharp is the turn in radians from which a place counts as a corner: 20°.
const sharp = math.Pi / 9

// closed returns the segments of a contour with the one that leads back to its
// start, without those that go nowhere.
func closed(c geom.Contour) []geom.Segment {
	var out []geom.Segment
	at := c.Start
	for _, s := range append(c.Segments[:len(c.Segments):len(c.Segments)], geom.Segment{End: c.Start}) {
		if s.End != at || s.Kind == geom.Cubic && (s.C1 != at || s.C2 != at) {
			out = append(out, s)
		}
		at = s.End
	}
	return out
}

// leaving and arriving are the directions of a segment at its ends, in radians.
func leaving(a geom.Point, s geom.Segment) float64 {
	switch s.Kind {
	case geom.Arc:
		return angle(s.End.Sub(a)) - 2*math.Atan(s.Bulge)
	case geom.Cubic:
		return angle(firstWay(s.C1.Sub(a), s.C2.Sub(a), s.End.Sub(a)))
	}
	return angle(s.End.Sub(a))
}

func arriving(a geom.Point, s geom.Segment) float64 {
	switch s.Kind {
	case geom.Arc:
		return angle(s.End.Sub(a)) + 2*math.Atan(s.Bulge)
	case geom.Cubic:
		return angle(firstWay(s.End.Sub(s.C2), s.End.Sub(s.C1), s.End.Sub(a)))
	}
	return angle(s.End.Sub(a))
}

// firstWay returns the first of some ways that leads anywhere.
func firstWay(ways ...geom.Point) geom.Point {
	for _, w := range ways {
		if w != (geom.Point{}) {
			return w
		}
	}
	return geom.Point{}
}

func angle(p geom.Point) float64 { return math.Atan2(float64(p.Y), float64(p.X)) }

// leastRadius returns the least radius of a segment in nanometres: of a cubic the
// least of 17 even places, |B'|³/|B'×B”|.
func leastRadius(a geom.Point, s geom.Segment) float64 {
	switch {
	case s.Kind == geom.Arc && s.Bulge != 0:
		b := math.Abs(s.Bulge)
		return s.End.Sub(a).Norm() * (1 + b*b) / (4 * b)
	case s.Kind == geom.Cubic:
		least := math.Inf(1)
		for i := range 17 {
			least = math.Min(least, cubicRadius(a, s, float64(i)/16))
		}
		return least
	}
	return math.Inf(1)
}

func cubicRadius(a geom.Point, s geom.Segment, t float64) float64 {
	d0, d1, d2 := s.C1.Sub(a), s.C2.Sub(s.C1), s.End.Sub(s.C2)
	u := 1 - t
	vx := 3 * (u*u*float64(d0.X) + 2*u*t*float64(d1.X) + t*t*float64(d2.X))
	vy := 3 * (u*u*float64(d0.Y) + 2*u*t*float64(d1.Y) + t*t*float64(d2.Y))
	wx := 6 * (u*float64(d1.X-d0.X) + t*float64(d2.X-d1.X))
	wy := 6 * (u*float64(d1.Y-d0.Y) + t*float64(d2.Y-d1.Y))
	cross := math.Abs(vx*wy - vy*wx)
	if speed := math.Hypot(vx, vy); cross > 0 && speed > 0 {
		return speed * speed * speed / cross
	}
	return math.Inf(1)
}
