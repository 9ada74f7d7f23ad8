package pen

import "tsugime/repeat/geom"

// A Handle is a control point of a cubic, held by the node it bends the line at:
// going in or, with Out, going out.
type Handle struct {
	Node int
	Out  bool
	At   geom.Point
}

// Handles returns the handles of s, node by node.
func (s Stroke) Handles() []Handle {
	var all []Handle
	for i := range s.count() {
		if k, ok := s.before(i); ok && s.Segments[k].Kind == geom.Cubic {
			all = append(all, Handle{i, false, s.Segments[k].C2})
		}
		if k, ok := s.after(i); ok && s.Segments[k].Kind == geom.Cubic {
			all = append(all, Handle{i, true, s.Segments[k].C1})
		}
	}
	return all
}

// MoveNode returns s with a node elsewhere. Its handles go with it, arcs beside it
// keep their turn, and where the line ran on smoothly into a cubic it still does.
func (s Stroke) MoveNode(i int, to geom.Point) (Stroke, error) {
	if err := s.checkNode(i); err != nil {
		return s, err
	}
	by := to.Sub(s.Node(i))
	next := s.edited()
	if i == 0 {
		next.Start = to
	}
	if k, ok := s.before(i); ok {
		next.Segments[k].End = to
		next.Segments[k].C2 = moved(next.Segments[k], next.Segments[k].C2, by)
	}
	if k, ok := s.after(i); ok {
		next.Segments[k].C1 = moved(next.Segments[k], next.Segments[k].C1, by)
	}
	return next.alignedLike(s, i), nil
}

// moved moves the control of a cubic; other segments have none.
func moved(g geom.Segment, control, by geom.Point) geom.Point {
	if g.Kind != geom.Cubic {
		return control
	}
	return control.Add(by)
}

// alignedLike makes the nodes about i smooth that were so in before.
func (s Stroke) alignedLike(before Stroke, i int) Stroke {
	n := s.count()
	for _, k := range [3]int{(i + n - 1) % n, i, (i + 1) % n} {
		if before.SmoothAt(k) {
			s = s.aligned(k)
		}
	}
	return s
}

// aligned turns the one handle at a node into the heading of the segment on the
// other side, where that has none. s may be written to.
func (s Stroke) aligned(i int) Stroke {
	in, out := s.sides(i)
	if in == nil || out == nil || (in.Kind == geom.Cubic) == (out.Kind == geom.Cubic) {
		return s
	}
	at := s.Node(i)
	before, _ := s.before(i)
	_, arriving := in.Headings(s.Node(before))
	leaving, _ := out.Headings(at)
	if in.Kind == geom.Cubic {
		in.C2 = leaning(at, leaving.Neg(), in.C2.Sub(at).Norm())
	} else {
		out.C1 = leaning(at, arriving, out.C1.Sub(at).Norm())
	}
	return s
}

// sides returns the segments that end and start at a node; nil at an open end.
func (s Stroke) sides(i int) (in, out *geom.Segment) {
	if k, ok := s.before(i); ok {
		in = &s.Segments[k]
	}
	if k, ok := s.after(i); ok {
		out = &s.Segments[k]
	}
	return in, out
}

// MoveHandle returns s with a handle elsewhere. At a smooth node the other handle
// turns with it; where the other side has none the handle keeps to its line. With
// apart it goes alone, and the node becomes a corner.
func (s Stroke) MoveHandle(h Handle, apart bool) (Stroke, error) {
	if err := s.checkNode(h.Node); err != nil {
		return s, err
	}
	smooth := s.SmoothAt(h.Node) && !apart
	next := s.edited()
	in, out := next.sides(h.Node)
	own, other := in, out
	if h.Out {
		own, other = out, in
	}
	if own == nil || own.Kind != geom.Cubic {
		return s, errNoHandle(h.Node)
	}
	if h.Out {
		own.C1 = h.At
	} else {
		own.C2 = h.At
	}
	at := s.Node(h.Node)
	switch {
	case !smooth || h.At == at:
	case other.Kind != geom.Cubic:
		next = next.aligned(h.Node)
	case h.Out:
		other.C2 = leaning(at, at.Sub(h.At), other.C2.Sub(at).Norm())
	default:
		other.C1 = leaning(at, at.Sub(h.At), other.C1.Sub(at).Norm())
	}
	return next, nil
}

// MoveSegment returns s with the place at the parameter t of a segment brought to
// another: a line moves with both its nodes, an arc bends to go through it, and the
// handles of a cubic move as little as they can.
func (s Stroke) MoveSegment(segment int, t float64, to geom.Point) (Stroke, error) {
	if err := s.checkSegment(segment); err != nil {
		return s, err
	}
	from, g := s.Node(segment), s.Segments[segment]
	by := to.Sub(g.At(from, t))
	switch g.Kind {
	case geom.Line:
		next, err := s.MoveNode(segment, from.Add(by))
		if err != nil || s.next(segment) == segment {
			return next, err
		}
		return next.MoveNode(s.next(segment), g.End.Add(by))
	case geom.Arc:
		arc, err := ArcThrough(from, to, g.End)
		if err != nil {
			return s, err
		}
		next := s.edited()
		next.Segments[segment] = arc
		return next.alignedLike(s, segment).alignedLike(s, s.next(segment)), nil
	}
	// The place at t moves by w1·d1 + w2·d2, the weights of Bernstein's polynomials;
	// of all moves that do it d1 : d2 = w1 : w2 is the shortest.
	w1, w2 := 3*(1-t)*(1-t)*t, 3*(1-t)*t*t
	size := w1*w1 + w2*w2
	if size == 0 {
		return s, nil
	}
	next := s.edited()
	next.Segments[segment].C1 = g.C1.Add(geom.Point{X: by.X.Times(w1 / size), Y: by.Y.Times(w1 / size)})
	next.Segments[segment].C2 = g.C2.Add(geom.Point{X: by.X.Times(w2 / size), Y: by.Y.Times(w2 / size)})
	return next.followed(s, segment), nil
}

// followed turns the far handles at the two ends of a segment whose own handles
// have moved, where the nodes were smooth before.
func (s Stroke) followed(before Stroke, segment int) Stroke {
	for _, h := range [2]Handle{
		{segment, true, s.Segments[segment].C1}, {s.next(segment), false, s.Segments[segment].C2},
	} {
		if !before.SmoothAt(h.Node) {
			continue
		}
		at := s.Node(h.Node)
		in, out := s.sides(h.Node)
		switch {
		case h.Out && in.Kind == geom.Cubic:
			in.C2 = leaning(at, at.Sub(h.At), in.C2.Sub(at).Norm())
		case !h.Out && out.Kind == geom.Cubic:
			out.C1 = leaning(at, at.Sub(h.At), out.C1.Sub(at).Norm())
		default:
			s = s.aligned(h.Node)
		}
	}
	return s
}
