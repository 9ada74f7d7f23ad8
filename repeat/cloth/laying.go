package cloth

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Laying is a garment's panels as they lie on the finished cloth, with the
// seams as places on the panels: enough to know every phase of the pattern for
// any other order of the panels, gaps, turns and shifts. It is a value; what
// moves panels returns a new one.
type Laying struct {
	Width  geom.Length // of the finished cloth
	Length geom.Length // of the finished cloth from the first placement on
	Panels []LaidPanel
	Seams  []LaidSeam
}

// A LaidPanel is a panel in its lane of the cloth. Its own places are counted
// from its first corner as the form draws it: u across, v along.
//
//	X ├─────────── Width ───────────┤
//	  │ · u, v                      │   lying as drawn: cloth X + u + Shift, Y + v
//	  │                      v, u · │   turned half round: from the far corner
type LaidPanel struct {
	Name          string
	X, Y          geom.Length // its first corner; Y from the first placement
	Width, Length geom.Length // as cut
	Turned        bool        // it lies turned half round
	MayTurn       bool
	// Shift moves everything that is sewn or seen of the panel across it, to
	// larger u: one edge's allowance grows, the other's gets less. ShiftLeast and
	// ShiftMost are how far that may go; they hold nought.
	Shift, ShiftLeast, ShiftMost geom.Length
}

// A LaidSeam joins a place of one panel to a place of another: the same point of
// the finished seam line.
type LaidSeam struct {
	Name          string
	Priority      int        // 1 is matched first
	Visible       bool       // the eye sees it when the garment is worn
	First, Second int        // the panels, by number; a panel may be joined to itself
	At, On        geom.Point // their own places of the same point of the line
	// AtTurned and OnTurned say whether the piece there hangs upside down while
	// its panel lies as drawn.
	AtTurned, OnTurned bool
}

// OnCloth returns the place of the finished cloth, counted from the first
// placement, at a place of the panel's own.
func (p LaidPanel) OnCloth(own geom.Point) geom.Point {
	own.X += p.Shift
	if p.Turned {
		return geom.Point{X: p.X + p.Width - own.X, Y: p.Y + p.Length - own.Y}
	}
	return geom.Point{X: p.X + own.X, Y: p.Y + own.Y}
}

// Phase returns how far the pattern on the second panel of a seam is from where
// the first one's would go on, across and along, modulo the lattice; Seam says
// how it is meant.
func (l Laying) Phase(s LaidSeam, lattice pattern.Lattice) geom.Point {
	return lattice.Into(l.joining(s).way())
}

func (l Laying) joining(s LaidSeam) joining {
	first, second := l.Panels[s.First], l.Panels[s.Second]
	return joining{
		at: first.OnCloth(s.At), on: second.OnCloth(s.On),
		firstTurn: s.AtTurned != first.Turned, onTurn: s.OnTurned != second.Turned,
	}
}

// Laid returns l with its panels, by number, in the given order along the cloth,
// each as early as its lane is free and gap further on. Gaps are by the panel's
// number; nil stands for none. Panels side by side, in lanes that share nothing
// but an edge, don't wait for each other.
func (l Laying) Laid(order []int, gaps []geom.Length) Laying {
	panels := make([]LaidPanel, len(l.Panels))
	copy(panels, l.Panels)
	for n, i := range order {
		p := &panels[i]
		p.Y = 0
		for _, j := range order[:n] {
			if q := panels[j]; q.X < p.X+p.Width && p.X < q.X+q.Width {
				p.Y = max(p.Y, q.Y+q.Length)
			}
		}
		if gaps != nil {
			p.Y += gaps[i]
		}
	}
	l.Panels = panels
	return l
}

// Used returns how much cloth the panels take, from the first placement to the
// end of the last of them.
func (l Laying) Used() geom.Length {
	var end geom.Length
	for _, p := range l.Panels {
		end = max(end, p.Y+p.Length)
	}
	return end
}
