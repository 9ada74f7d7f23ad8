package cloth

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Dress cuts the garment's form to size, lays its panels on the finished cloth
// from the first placement on, and measures the seams. A kimono:
//
//	│ sleeve │ sleeve │ body │ gap │ body │ overlap  overlap │
//	│        │        │      │     │      │ collar  o.-collar│
//	 y ─────────────────────────────────────────────────────►
//
// Where the garment has wishes, the panels lie as Matching.Solve finds best. Where
// only the matched seam is asked for, the later of its panels is moved on by
// the least gap, shorter than a step, after which the pattern doesn't jump along
// it; Extra is what that costs. What lies across a seam follows from the cloth's
// width and the allowances. A bolt that is too short is no error: Used is then
// longer than Length, which ends where the waste at the far end begins. The pattern is taken as it repeats by the lattice alone;
// where the step is not a place of the lattice, phases hold within one
// placement. A garment that can't be cut is a *Misfit.
func Dress(bolt Bolt, run Run, lattice pattern.Lattice, g Garment, tolerance geom.Length) (Dressed, error) {
	return DressAgain(Dressed{}, bolt, run, lattice, g, tolerance)
}

// DressAgain returns what Dress returns, sooner where the wishes put the same
// question to the solver as those of prev did. prev stays as it is.
func DressAgain(prev Dressed, bolt Bolt, run Run, lattice pattern.Lattice, g Garment, tolerance geom.Length) (Dressed, error) {
	if err := checkGround(bolt, run, lattice); err != nil {
		return Dressed{}, err
	}
	width, _ := bolt.FinishedSize()
	c, err := cutFor(g.Body, width)
	if err != nil {
		return Dressed{}, err
	}
	start := bolt.Finished(geom.Point{Y: run.Board.Start}).Y
	length := max(0, bolt.Finished(geom.Point{Y: bolt.Length - run.Board.End}).Y-start)
	l, err := c.lay(g.Layout)
	if err != nil {
		return Dressed{}, err
	}
	l.laying.Length = length
	var avoid []Span
	if g.Wishes.AvoidTurn {
		for _, t := range run.Turns {
			t = run.finished(t)
			avoid = append(avoid, Span{t.From - start, t.To - start})
		}
	}
	wished, asked := Solution{Exact: true}, solved{}
	switch {
	case g.Wishes.any():
		if l, asked, err = l.wished(prev.solved, g, c, lattice, avoid, tolerance); err != nil {
			return Dressed{}, err
		}
		wished = asked.told(c, g)
	case g.MatchBackCentre:
		l = l.matched(c.form.Matched, lattice, bolt.Finished(geom.Point{Y: run.Step}).Y, tolerance)
	}
	d := Dressed{
		Garment: g, Form: c.form, Sizes: c.sizes, Narrowed: c.narrowed,
		Start: start, Length: length, Used: l.laying.Used(), laying: l.laying, solved: asked,
	}
	d.Extra = max(0, d.Used-l.close)
	for _, w := range l.windows {
		d.pieces = append(d.pieces, w.piece(d.laying.Panels[w.number], start))
	}
	for i, p := range d.laying.Panels {
		d.Panels = append(d.Panels, d.panel(p, l.cuts[i]))
	}
	for _, s := range l.seams {
		d.Seams = append(d.Seams, d.seam(s, lattice, tolerance))
	}
	d.Hidden = d.hidden()
	d.Matches, d.LowerBound, d.Proven = wished.Matches, max(wished.LowerBound, l.bare()), wished.Exact
	if !g.Wishes.any() && g.MatchBackCentre {
		d.Matches, d.LowerBound = d.closed(l, c, g), d.Used
	}
	return d, nil
}

// checkGround returns an error where there is no cloth with a pattern to cut.
func checkGround(bolt Bolt, run Run, lattice pattern.Lattice) error {
	if err := bolt.Check(); err != nil {
		return err
	}
	if err := lattice.Check(); err != nil {
		return err
	}
	if err := checkStep(run.Step); err != nil {
		return err
	}
	if start := run.Board.Start; start < 0 || start > bolt.Length {
		return fmt.Errorf("garment: the first placement at %s mm is not on the bolt of %s mm; start on the bolt", start, bolt.Length)
	}
	return nil
}

// A lay is a garment with its panels in some order on the cloth.
type lay struct {
	laying  Laying
	cuts    []cutPanel // as laying's panels
	windows []window
	seams   []sewn
	order   []int
	gaps    []geom.Length
	close   geom.Length // what is used with the panels close, in the form's order
	// unmatched is what is used as the layout wants it, before anything is matched.
	unmatched geom.Length
}

// lay puts the panels on the cloth as the layout wants them.
func (c cut) lay(want Layout) (lay, error) {
	panels, cuts, err := c.panels()
	if err != nil {
		return lay{}, err
	}
	l := lay{laying: Laying{Width: c.width, Panels: panels}, cuts: cuts}
	if l.windows, err = c.windows(panels); err != nil {
		return lay{}, err
	}
	for _, w := range l.windows {
		if err := c.fit(w, panels[w.number]); err != nil {
			return lay{}, err
		}
	}
	for i := range panels {
		c.slack(&panels[i], i, l.windows)
	}
	own := make([]int, len(panels))
	gaps := make([]geom.Length, len(panels))
	for i, k := range cuts {
		own[i], gaps[i] = i, k.gap
	}
	l.close = l.laying.Laid(own, gaps).Used()
	if l.order, l.gaps, err = c.laidOut(want, panels, cuts); err != nil {
		return lay{}, err
	}
	if l.seams, err = c.sewnBy(l.windows); err != nil {
		return lay{}, err
	}
	for _, s := range l.seams {
		l.laying.Seams = append(l.laying.Seams, s.stretches[0].LaidSeam)
	}
	l.laying = l.laying.Laid(l.order, l.gaps)
	l.unmatched = l.laying.Used()
	return l, nil
}

// matched returns l with the gap that closes a seam along it, where there is such
// a seam between two panels and such a gap.
func (l lay) matched(name string, lattice pattern.Lattice, step, tolerance geom.Length) lay {
	i := slices.IndexFunc(l.laying.Seams, func(s LaidSeam) bool { return s.Name == name })
	if i < 0 || l.laying.Seams[i].First == l.laying.Seams[i].Second {
		return l
	}
	s := l.laying.Seams[i]
	later, sign := s.Second, 1
	j := l.laying.joining(s)
	way := j.way()
	if slices.Index(l.order, s.First) > slices.Index(l.order, s.Second) {
		later, sign = s.First, -1
		if j.firstTurn {
			sign = 1
		}
	} else if j.onTurn {
		sign = -1
	}
	gap, ok := closing(way.Times(sign), lattice, step, tolerance)
	if !ok {
		return l
	}
	l.gaps = slices.Clone(l.gaps)
	l.gaps[later] += gap
	l.laying = l.laying.Laid(l.order, l.gaps)
	return l
}

// closing returns the least gap below step that brings the phase along to zero
// and the phase across within the tolerance; where no gap does both, the least
// that does the first; and whether there is one. way is the way that the gap
// shortens, and it must become a place of the lattice but for what lies across:
// candidates are the places within reach of that line that are also the nearest.
// Where the step is a place of the lattice there always is one.
func closing(way geom.Point, lattice pattern.Lattice, step, tolerance geom.Length) (geom.Length, bool) {
	r := lattice.Reduced()
	// No point lies farther from the nearest place than both vectors together.
	reach := geom.Length(r.A.Norm()+r.B.Norm())/2 + 1
	// The places of the lattice don't change with the origin; way is brought
	// near it so that few of them are looked through.
	_, _, way = lattice.Nearest(way)
	window := geom.BoxOf(geom.Point{X: way.X - reach, Y: way.Y - step + 1}, geom.Point{X: way.X + reach, Y: way.Y})
	places := lattice.Places(window)
	slices.SortFunc(places, func(a, b geom.Point) int { return cmp.Compare(b.Y, a.Y) })
	along, found := geom.Length(0), false
	for _, p := range places {
		gap := way.Y - p.Y
		phase := lattice.Into(way.Sub(geom.Point{Y: gap}))
		if phase.Y != 0 {
			continue
		}
		if phase.X.Abs() <= tolerance {
			return gap, true
		}
		if !found {
			along, found = gap, true
		}
	}
	return along, found
}

// panel returns a laid panel on the bolt, with the views that show it upside
// down.
func (d Dressed) panel(p LaidPanel, k cutPanel) Panel {
	panel := Panel{
		Name: p.Name, Trade: k.trade, X: p.X, Y: p.Y + d.Start, Width: p.Width, Length: p.Length,
		Lane: [2]float64{d.share(p.X), d.share(p.X + p.Width)}, Turned: p.Turned,
	}
	for _, piece := range d.pieces {
		if piece.Panel == p.Name && piece.Turned && !slices.Contains(panel.UpsideDown, piece.View) {
			panel.UpsideDown = append(panel.UpsideDown, piece.View)
		}
	}
	return panel
}

// share returns a place across the cloth as a share of its width.
func (d Dressed) share(x geom.Length) float64 { return float64(x) / float64(d.laying.Width) }

// seam measures a seam.
func (d Dressed) seam(s sewn, lattice pattern.Lattice, tolerance geom.Length) Seam {
	measured := func(st sewnStretch) Meeting {
		first, second := d.laying.Panels[st.First], d.laying.Panels[st.Second]
		p, start := d.laying.Phase(st.LaidSeam, lattice), geom.Point{Y: d.Start}
		return Meeting{
			From: st.from, To: st.to, PhaseAlong: p.Y, PhaseAcross: p.X,
			At: first.OnCloth(st.At).Add(start), On: second.OnCloth(st.On).Add(start), Lines: st.lines,
		}
	}
	main := s.stretches[0]
	j := d.laying.joining(main.LaidSeam)
	seam := Seam{
		Name: s.name, Meeting: measured(main), Priority: s.priority, Visible: s.visible, Opposite: j.firstTurn != j.onTurn,
		Between: [2]string{d.laying.Panels[main.First].Name, d.laying.Panels[main.Second].Name},
	}
	seam.Matched = seam.PhaseAcross.Abs() <= tolerance && seam.PhaseAlong.Abs() <= tolerance
	for _, st := range s.stretches[1:] {
		m := measured(st)
		if m.PhaseAcross != seam.PhaseAcross || m.PhaseAlong != seam.PhaseAlong {
			seam.Also = append(seam.Also, m)
		}
	}
	return seam
}

// hidden returns the strip beside each selvedge that no piece shows.
func (d Dressed) hidden() geom.Length {
	strip := d.laying.Width
	for _, p := range d.pieces {
		w := p.Window()
		strip = min(strip, w.Min.X, d.laying.Width-w.Max.X)
	}
	return strip
}
