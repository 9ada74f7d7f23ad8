package cloth

import "tsugime/repeat/geom"

// A View is a picture that pieces are drawn in.
type View string

// The views. In each of them y runs down from the shoulder, and x to the right
// as the looker sees it.
const (
	// BackView is the garment from behind, x from the back centre.
	BackView View = "back"
	// FrontView is the front laid open, x from where the two overlaps meet. Worn,
	// the left front covers the right one.
	FrontView View = "front"
	// CollarView is the collar by itself, y from its left end.
	CollarView View = "collar"
)

// A Piece is a finished piece of the garment that is seen: a window of a panel.
// Between the two pieces of a body lies the tuck, under the sash.
type Piece struct {
	Name   string
	Panel  string // the panel's name
	View   View
	Area   geom.Box   // what is seen of it, in the view
	Turned bool       // the cloth is worn upside down
	Origin geom.Point // the place on the finished cloth that lies at the view's origin
}

// ToCloth returns which place of the finished cloth lies at p of the view.
func (p Piece) ToCloth(at geom.Point) geom.Point {
	if p.Turned {
		return p.Origin.Sub(at)
	}
	return p.Origin.Add(at)
}

// FromCloth returns where a place of the finished cloth lies in the view.
func (p Piece) FromCloth(at geom.Point) geom.Point {
	if p.Turned {
		return p.Origin.Sub(at)
	}
	return at.Sub(p.Origin)
}

// Window returns what the piece shows of the finished cloth.
func (p Piece) Window() geom.Box { return geom.BoxOf(p.ToCloth(p.Area.Min), p.ToCloth(p.Area.Max)) }

// Pieces returns what is seen of the garment, in the order of drawing: the
// over-collar lies on the collar. A Dressed that Dress hasn't made has none.
func (d Dressed) Pieces() []Piece {
	if len(d.Panels) != panelCount {
		return nil
	}
	c, pieces := d.cut, make([]Piece, 0, 20)
	for _, left := range []bool{true, false} {
		pieces = append(pieces, c.backs(left, d.body(left))...)
		pieces = append(pieces, c.fronts(left, d.body(left))...)
		pieces = append(pieces, c.sleeves(left, d.sleeve(left))...)
		pieces = append(pieces, c.overlaps(left, d.overlap(left)))
	}
	return append(pieces, c.collars(d.Panels[collarPanel], d.Panels[overCollar])...)
}

// side returns the wearer's side in words.
func side(left bool) string {
	if left {
		return "left"
	}
	return "right"
}

// piece returns a piece that shows the window from x, y of the cloth, lying with
// its top left corner (as worn) at corner. A turned piece shows what lies above
// and left of x, y.
func piece(name, panel string, view View, corner, size, cloth geom.Point, turned bool) Piece {
	p := Piece{
		Name: name, Panel: panel, View: view, Turned: turned,
		Area: geom.BoxOf(corner, corner.Add(size)), Origin: cloth.Sub(corner),
	}
	if turned {
		p.Origin = cloth.Add(corner)
	}
	return p
}

// backs returns the back of a body, above and below its tuck. The left back lies
// left of the centre, its right selvedge in the seam.
func (c cut) backs(left bool, p Panel) []Piece {
	name, shoulder := side(left)+" back", p.Y+p.Length/2
	at := c.sleeve + bu(backTuckBu)
	part := func(suffix string, width, from, to, skipped geom.Length) Piece {
		corner, x := geom.Point{Y: from}, p.X+c.seam
		if left {
			corner.X, x = -width, p.X+p.Width-c.seam-width
		}
		return piece(name+suffix, p.Name, BackView, corner, geom.Point{X: width, Y: to - from},
			geom.Point{X: x, Y: shoulder + skipped + from}, false)
	}
	return []Piece{
		part(" above the tuck", c.yoke, 0, at, 0),
		part(" below the tuck", c.back, at, c.body, bu(tuckBu)),
	}
}

// fronts returns the front of a body, above and below its tuck, worn upside down
// to the back. The side seam takes as much from the front's selvedge as from the
// back's (from memory, common practice); what the front is narrower than the
// back goes into the overlap's seam.
func (c cut) fronts(left bool, p Panel) []Piece {
	name, shoulder := side(left)+" front", p.Y+p.Length/2
	at := c.sleeve + bu(frontTuckBu)
	inner := c.back - c.front // from the body's centre edge to the overlap's seam
	part := func(suffix string, outer, from, to, skipped geom.Length) Piece {
		width := outer - inner
		corner, x := geom.Point{X: -c.overlap - width, Y: from}, p.X+c.seam+outer
		if left {
			corner.X, x = c.overlap, p.X+p.Width-c.seam-inner
		}
		return piece(name+suffix, p.Name, FrontView, corner, geom.Point{X: width, Y: to - from},
			geom.Point{X: x, Y: shoulder - skipped - from}, true)
	}
	return []Piece{
		part(" above the tuck", c.yoke, 0, at, 0),
		part(" below the tuck", c.back, at, c.body, bu(tuckBu)),
	}
}

// sleeves returns the back and the front of a sleeve. The allowance at the cuff
// is the least, the rest is where the sleeve joins the body (from memory).
func (c cut) sleeves(left bool, p Panel) []Piece {
	name, shoulder := side(left)+" sleeve", p.Y+p.Length/2
	size := geom.Point{X: c.sleeveW, Y: c.sleeve}
	back, x := geom.Point{X: c.yoke}, p.X+p.Width-c.seam-c.sleeveW
	out := c.overlap + c.yoke - (c.back - c.front) // the front's outer edge
	front := geom.Point{X: -out - c.sleeveW}
	if left {
		back.X, x, front.X = -c.yoke-c.sleeveW, p.X+c.seam, out
	}
	return []Piece{
		piece(name+" back", p.Name, BackView, back, size, geom.Point{X: x, Y: shoulder}, false),
		piece(name+" front", p.Name, FrontView, front, size, geom.Point{X: x + c.sleeveW, Y: shoulder}, true),
	}
}

// overlaps returns an overlap, turned like the front that it joins; the least
// allowance is at that seam.
func (c cut) overlaps(left bool, p Panel) Piece {
	corner, x := geom.Point{X: -c.overlap, Y: bu(dropBu)}, p.X+p.Width-c.seam
	if left {
		corner.X, x = 0, p.X+c.seam+c.overlap
	}
	top := p.Y + p.Length - bu(hemBu)
	return piece(side(left)+" overlap", p.Name, FrontView, corner,
		geom.Point{X: c.overlap, Y: c.body - bu(dropBu)}, geom.Point{X: x, Y: top}, true)
}

// collars returns the collar and the over-collar on its middle.
func (c cut) collars(collar, over Panel) []Piece {
	width, half, cover := bu(collarBu), c.collarHalf-collarEnd, c.over-bu(hemBu)
	return []Piece{
		piece(collar.Name, collar.Name, CollarView, geom.Point{}, geom.Point{X: width, Y: 2 * half},
			geom.Point{X: collar.X + c.seam, Y: collar.Y + collarEnd}, false),
		piece(over.Name, over.Name, CollarView, geom.Point{Y: half - cover}, geom.Point{X: width, Y: 2 * cover},
			geom.Point{X: over.X + c.seam, Y: over.Y + bu(hemBu)}, false),
	}
}
