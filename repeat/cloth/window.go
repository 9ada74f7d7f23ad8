package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

// A window is a piece on its panel, before the panel lies anywhere.
type window struct {
	formPiece
	number int        // of the panel among those that are cut
	area   geom.Box   // in the view
	corner geom.Point // the panel's own place at the area's first corner
}

// own returns the panel's own place at a point of the view.
func (w window) own(at geom.Point) geom.Point {
	way := at.Sub(w.area.Min)
	if w.turned {
		way = way.Neg()
	}
	return w.corner.Add(way)
}

// shown returns what the window shows of the panel, in its own places.
func (w window) shown() geom.Box { return geom.BoxOf(w.own(w.area.Min), w.own(w.area.Max)) }

// piece returns the piece that the window is where its panel lies, on cloth whose
// first placement begins at start.
func (w window) piece(p LaidPanel, start geom.Length) Piece {
	at := p.OnCloth(w.corner).Add(geom.Point{Y: start})
	piece := Piece{Name: w.name, Panel: w.panel, View: w.view, Area: w.area, Turned: w.turned != p.Turned}
	piece.Origin = at.Sub(w.area.Min)
	if piece.Turned {
		piece.Origin = at.Add(w.area.Min)
	}
	return piece
}

// windows works out the pieces that are seen of the panels.
func (c cut) windows(panels []LaidPanel) ([]window, error) {
	var all []window
	for _, p := range c.form.pieces {
		number, cut := numbered(panels, p.panel)
		shown, err := c.holds(p.when)
		if err != nil {
			return nil, misfit("mend the condition in the form", "the piece %q: %v", p.name, err)
		}
		if !cut || !shown {
			continue
		}
		w, err := c.window(p, panels[number])
		if err != nil {
			return nil, err
		}
		w.number = number
		all = append(all, w)
	}
	return all, nil
}

func (c cut) window(p formPiece, panel LaidPanel) (window, error) {
	v := values{"panel_width": length{panel.Width}, "panel_length": length{panel.Length}}
	for name, value := range c.values {
		v[name] = value
	}
	var at [6]geom.Length
	for i, f := range []formula{p.x, p.y, p.width, p.height, p.across, p.along} {
		l, err := f.length(v)
		if err != nil {
			return window{}, misfit("mend the formula in the form, or give other sizes", "the piece %q: %v", p.name, err)
		}
		at[i] = l
	}
	if at[2] <= 0 || at[3] <= 0 {
		return window{}, misfit("give larger sizes or smaller allowances", "nothing is left of the %s: %s mm by %s mm", p.name, at[2], at[3])
	}
	corner := geom.Point{X: at[0], Y: at[1]}
	return window{
		formPiece: p, area: geom.BoxOf(corner, corner.Add(geom.Point{X: at[2], Y: at[3]})), corner: geom.Point{X: at[4], Y: at[5]},
	}, nil
}

// fit returns why a window shows more than its panel has, nil where it doesn't:
// at each selvedge the least allowance is kept.
func (c cut) fit(w window, p LaidPanel) error {
	s := w.shown()
	if short := max(c.edge-s.Min.X, s.Max.X-(p.Width-c.edge)); short > 0 {
		return misfit(fmt.Sprintf("use cloth of at least %s mm finished width, or set smaller sizes or a smaller allowance at the selvedge", c.width+short.Times(float64(c.width)/float64(p.Width))),
			"cloth of %s mm finished width is too narrow for the %s of %s mm", c.width, w.name, w.area.Width())
	}
	if short := max(-s.Min.Y, s.Max.Y-p.Length); short > 0 {
		return misfit("give smaller sizes or a larger allowance, or mend the cut length in the form",
			"the %s shows %s mm more than the %s is long", w.name, short, p.Name)
	}
	return nil
}
