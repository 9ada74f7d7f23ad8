package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A Clearing tells what panels lie over the turn of the board, where the cloth
// can't be printed well, and how to lay it so that none does.
type Clearing struct {
	Over []string // the panels that lie over it, as they are laid now
	// Found is set where the turn can be cleared: Start is then where on the bolt
	// the first placement begins, Gap how much more finished cloth is left before
	// the panels Before, and Extra how much finished cloth both cost.
	Found      bool
	Start      geom.Length
	Before     []string
	Gap, Extra geom.Length
	// Lacks is how much finished cloth is too little for that; Found is not set
	// then, and the rest says how a longer bolt would be laid.
	Lacks geom.Length
}

// ClearTurn returns what panels lie over the turn. To clear it, the cloth is parted
// where no panel goes on, at or before the turn, the nearest such place first, for
// that costs least: what lies before it is moved up to the turn by a later start,
// what follows goes on behind the turn. The gap moves the pattern on the panels
// behind it against those before it. A bolt that turns several times, or is laid in
// several goes, is told its panels only.
func ClearTurn(r Run, d Dressed) Clearing {
	var c Clearing
	for _, t := range r.Turns {
		t = r.finished(t)
		for _, p := range d.Panels {
			if t.reaches(p.Y, p.Length) && !slices.Contains(c.Over, p.Name) {
				c.Over = append(c.Over, p.Name)
			}
		}
	}
	if len(c.Over) == 0 || len(r.Turns) != 1 || len(r.Stretches) != 1 {
		return c
	}
	turn := r.finished(r.Turns[0])
	at, found := partedAt(d.Panels, turn.From)
	if !found {
		return c
	}
	for _, p := range d.Panels {
		if p.Y == at {
			c.Before = append(c.Before, p.Name)
		}
	}
	// What lies before the turn stays short of it, what follows begins behind it.
	shift := tenths((turn.From - at).Times(1/(1+r.Bolt.ChangeAlong)), false)
	if !slices.ContainsFunc(d.Panels, func(p Panel) bool { return p.Y < at }) {
		shift, c.Before = tenths((turn.To-at).Times(1/(1+r.Bolt.ChangeAlong))+geom.Nanometre, true), nil
	}
	moved := r.Bolt.Finished(geom.Point{Y: shift}).Y
	if c.Before != nil {
		c.Gap = tenths(turn.To-at-moved+2*geom.Nanometre, true)
	}
	c.Start, c.Extra = r.Board.Start+shift, moved+c.Gap
	c.Lacks = max(0, d.Used+c.Extra-d.Length)
	c.Found = c.Lacks == 0
	return c
}

// GapBefore returns how much cloth is left before a panel now: up to the end of
// whatever lies before it in its lane, or to the first placement.
func (d Dressed) GapBefore(name string) geom.Length {
	i := slices.IndexFunc(d.Panels, func(p Panel) bool { return p.Name == name })
	if i < 0 {
		return 0
	}
	p, free := d.Panels[i], geom.Length(0)
	for _, q := range d.Panels {
		if end := q.Y + q.Length; q.Lane[0] < p.Lane[1] && p.Lane[0] < q.Lane[1] && end <= p.Y {
			free = max(free, end)
		}
	}
	return p.Y - max(free, min(p.Y, d.Start))
}

// finished returns a stretch of the bolt on the finished cloth.
func (r Run) finished(s Span) Span {
	return Span{r.Bolt.Finished(geom.Point{Y: s.From}).Y, r.Bolt.Finished(geom.Point{Y: s.To}).Y}
}

// partedAt returns the last place, at or before y, where a panel begins and none
// goes on.
func partedAt(panels []Panel, y geom.Length) (geom.Length, bool) {
	var best geom.Length
	found := false
	for _, p := range panels {
		open := p.Y <= y && !slices.ContainsFunc(panels, func(q Panel) bool { return q.Y < p.Y && q.Y+q.Length > p.Y })
		if open && (!found || p.Y > best) {
			best, found = p.Y, true
		}
	}
	return best, found
}

// tenths returns l in whole tenths of a millimetre, up or down.
func tenths(l geom.Length, up bool) geom.Length {
	const tenth = geom.Millimetre / 10
	if up {
		l += tenth - 1
	}
	return l / tenth * tenth
}
