package cloth

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The panels in the order in which they lie on the bolt: the usual order of
// cutting of a sewing course.
const (
	leftSleeve = iota
	rightSleeve
	leftBody
	rightBody
	leftOverlap
	rightOverlap
	collarPanel
	overCollar
	panelCount
)

// Dress lays the garment's panels on the finished cloth, from the first
// placement on, and measures the seams. Bodies and sleeves lie so that the back
// hangs the way the bolt is fed; the front of each, over the shoulder, is then
// worn upside down.
//
//	│ sleeve │ sleeve │ body │ gap │ body │ overlap  overlap │
//	│        │        │      │     │      │ collar  o.-collar│
//	 y ─────────────────────────────────────────────────────►
//
// With matchBackCentre the right body is moved on by the least gap, shorter than
// a step, after which the pattern doesn't jump along the back seam; Extra is
// what that costs. What lies across the seam follows from the bolt's width and
// can't be chosen. A bolt that is too short is no error: Used is then longer
// than Length. The pattern is taken as it repeats by the lattice alone; where
// the step is not a place of the lattice, phases hold within one placement.
func Dress(bolt Bolt, run Run, lattice pattern.Lattice, body Body, matchBackCentre bool, tolerance geom.Length) (Dressed, error) {
	if err := bolt.Check(); err != nil {
		return Dressed{}, err
	}
	if err := lattice.Check(); err != nil {
		return Dressed{}, err
	}
	if err := checkStep(run.Step); err != nil {
		return Dressed{}, err
	}
	if start := run.Board.Start; start < 0 || start > bolt.Length {
		return Dressed{}, fmt.Errorf("garment: the first placement at %s mm is not on the bolt of %s mm; start on the bolt", start, bolt.Length)
	}
	width, length := bolt.FinishedSize()
	c, err := cutFor(body, width)
	if err != nil {
		return Dressed{}, err
	}
	start := bolt.Finished(geom.Point{Y: run.Board.Start}).Y
	d := Dressed{Body: body, Start: start, Length: length - start, cut: c}
	d = d.laid(0)
	if matchBackCentre {
		gap, ok := d.backGap(lattice, bolt.Finished(geom.Point{Y: run.Step}).Y, tolerance)
		if ok {
			d = d.laid(gap)
		}
	}
	// Phases are those of the pattern, which starts with the first placement.
	for _, j := range d.joinings() {
		origin := geom.Point{Y: start}
		j.at, j.on = j.at.Sub(origin), j.on.Sub(origin)
		d.Seams = append(d.Seams, j.seam(lattice, tolerance))
	}
	d.Hidden = d.hidden()
	return d, nil
}

// laid returns d with its panels on the bolt, gap apart between the bodies.
func (d Dressed) laid(gap geom.Length) Dressed {
	c, y := d.cut, d.Start
	d.Panels = make([]Panel, 0, panelCount)
	lay := func(name string, length geom.Length) {
		d.Panels = append(d.Panels, Panel{Name: name, Y: y, Width: c.width, Length: length})
		y += length
	}
	lay("left sleeve", cutSleeve(c.sleeve))
	lay("right sleeve", cutSleeve(c.sleeve))
	lay("left body", cutBody(c.body))
	y += gap
	lay("right body", cutBody(c.body))
	strip, half := y, c.width/2
	for _, p := range []Panel{
		{Name: "left overlap", Length: cutOverlap(c.body), Turned: true},
		{Name: "right overlap", Length: cutOverlap(c.body), Turned: true},
		{Name: "collar", Length: 2 * c.collarHalf, X: half},
		{Name: "over-collar", Length: 2 * c.over, X: half},
	} {
		if p.Name == "collar" {
			y = strip
		}
		p.Y, p.Width = y, half
		d.Panels = append(d.Panels, p)
		y += p.Length
	}
	end := max(d.Panels[rightOverlap].end(), d.Panels[overCollar].end())
	d.Used, d.Extra = end-d.Start, gap
	return d
}

func (p Panel) end() geom.Length { return p.Y + p.Length }

func (d Dressed) body(left bool) Panel    { return d.Panels[pick(left, leftBody, rightBody)] }
func (d Dressed) sleeve(left bool) Panel  { return d.Panels[pick(left, leftSleeve, rightSleeve)] }
func (d Dressed) overlap(left bool) Panel { return d.Panels[pick(left, leftOverlap, rightOverlap)] }

func pick(first bool, a, b int) int {
	if first {
		return a
	}
	return b
}

// backGap returns the least gap below step that brings the phase along the back
// centre to zero and the phase across within the tolerance; where no gap does
// both, the least that does the first; and whether there is one. With the gap the right body's places
// move on by it, so the way from the second panel's places to the first one's
// must become a place of the lattice but for what lies across: candidates are
// the places within reach of that line that are also the nearest. Where the step is a place of the lattice there always is one.
func (d Dressed) backGap(lattice pattern.Lattice, step, tolerance geom.Length) (geom.Length, bool) {
	back := d.joinings()[0]
	way := back.at.Sub(back.on)
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

// hidden returns the strip beside each selvedge that no piece shows.
func (d Dressed) hidden() geom.Length {
	strip := d.cut.width
	for _, p := range d.Pieces() {
		w := p.Window()
		strip = min(strip, w.Min.X, d.cut.width-w.Max.X)
	}
	return strip
}
