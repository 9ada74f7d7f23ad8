package cloth

import "tsugime/repeat/geom"

// Laying returns how the garment lies and where its seams are on the panels. A
// Dressed that Dress hasn't made has none.
func (d Dressed) Laying() Laying {
	if len(d.Panels) != panelCount {
		return Laying{}
	}
	l := Laying{Width: d.cut.width, Length: d.Length}
	number := map[string]int{}
	for i, p := range d.Panels {
		number[p.Name] = i
		least, most := d.slack(p)
		l.Panels = append(l.Panels, LaidPanel{
			Name: p.Name, X: p.X, Y: p.Y - d.Start, Width: p.Width, Length: p.Length,
			Turned: p.Turned, MayTurn: true, ShiftLeast: least, ShiftMost: most,
		})
	}
	origin := geom.Point{Y: d.Start}
	for _, j := range d.joinings() {
		s := LaidSeam{Name: j.name, Priority: 2, Visible: true, First: number[j.first], Second: number[j.second]}
		if j.priority {
			s.Priority = 1
		}
		first, second := l.Panels[s.First], l.Panels[s.Second]
		s.At, s.AtTurned = first.own(j.at.Sub(origin)), j.firstTurn != first.Turned
		s.On, s.OnTurned = second.own(j.on.Sub(origin)), j.onTurn != second.Turned
		l.Seams = append(l.Seams, s)
	}
	return l
}

// slack returns how far what is seen of a panel may be moved across it until the
// least seam allowance is left at its edge, to smaller and to larger u.
func (d Dressed) slack(p Panel) (least, most geom.Length) {
	left, right := p.Width, p.Width
	for _, piece := range d.Pieces() {
		if piece.Panel != p.Name {
			continue
		}
		w := piece.Window()
		left, right = min(left, w.Min.X-p.X), min(right, p.X+p.Width-w.Max.X)
	}
	if p.Turned {
		left, right = right, left
	}
	return min(0, d.cut.seam-left), max(0, right-d.cut.seam)
}
