package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A sewn is a seam of the form between the pieces that are there: one stretch
// for each join, the one that counts first.
type sewn struct {
	formSeam
	stretches []sewnStretch
}

type sewnStretch struct {
	LaidSeam
	from, to geom.Length
	lines    [2]SeamLine
}

// sewnBy works out the seams. Joins whose pieces aren't cut, or that have no
// length, are left out, and seams without any.
func (c cut) sewnBy(windows []window) ([]sewn, error) {
	var all []sewn
	for _, s := range c.form.seams {
		is, err := c.holds(s.when)
		if err != nil {
			return nil, misfit("mend the condition in the form", "the seam %q: %v", s.name, err)
		}
		if !is {
			continue
		}
		seam := sewn{formSeam: s}
		for _, j := range s.joins {
			a, hasA := windowNamed(windows, j.first.piece)
			b, hasB := windowNamed(windows, j.second.piece)
			if !hasA || !hasB {
				continue
			}
			st, err := c.stretch(j, a, b)
			if err != nil {
				return nil, misfit("mend the formula in the form", "the seam %q: %v", s.name, err)
			}
			if st.to < st.from {
				continue
			}
			st.Name, st.Priority, st.Visible = s.name, s.priority, s.visible
			seam.stretches = append(seam.stretches, st)
		}
		if len(seam.stretches) > 0 {
			all = append(all, seam)
		}
	}
	return all, nil
}

func windowNamed(windows []window, name string) (window, bool) {
	if i := slices.IndexFunc(windows, func(w window) bool { return w.name == name }); i >= 0 {
		return windows[i], true
	}
	return window{}, false
}

// stretch works out one join. Level edges of the same kind, top to top, meet
// where one of the pieces is turned half round: the garment is laid open about
// that edge, and what was left of the middle is right of it.
func (c cut) stretch(j formJoin, a, b window) (sewnStretch, error) {
	level := !j.first.upright()
	turn := level && j.first.side == j.second.side
	from, to := extent(a.area, level)
	otherFrom, otherTo := extent(b.area, level)
	if turn {
		otherFrom, otherTo = -otherTo, -otherFrom
	}
	s := sewnStretch{from: max(from, otherFrom), to: min(to, otherTo)}
	if err := c.set(&s.from, j.from); err != nil {
		return s, err
	}
	if err := c.set(&s.to, j.to); err != nil {
		return s, err
	}
	onFrom, onTo := s.from, s.to
	if turn {
		onFrom, onTo = -s.from, -s.to
	}
	s.lines = [2]SeamLine{
		{a.view, j.first.place(a.area, s.from), j.first.place(a.area, s.to)},
		{b.view, j.second.place(b.area, onFrom), j.second.place(b.area, onTo)},
	}
	s.First, s.At, s.AtTurned = a.number, a.own(s.lines[0].From), a.turned
	s.Second, s.On, s.OnTurned = b.number, b.own(s.lines[1].From), b.turned != turn
	return s, nil
}

// extent returns how far a piece reaches down its view, or across it.
func extent(b geom.Box, level bool) (from, to geom.Length) {
	if level {
		return b.Min.X, b.Max.X
	}
	return b.Min.Y, b.Max.Y
}

// place returns the point of an edge that is v down the view, or across it.
func (e edge) place(b geom.Box, v geom.Length) geom.Point {
	switch e.side {
	case "left":
		return geom.Point{X: b.Min.X, Y: v}
	case "right":
		return geom.Point{X: b.Max.X, Y: v}
	case "top":
		return geom.Point{X: v, Y: b.Min.Y}
	}
	return geom.Point{X: v, Y: b.Max.Y}
}
