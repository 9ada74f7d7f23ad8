package cloth

import "tsugime/repeat/geom"

// A View is a picture that pieces are drawn in.
type View string

// The views of garments that are worn. In each of them y runs down from the
// shoulder, and x to the right as the looker sees it. A form may have others.
const (
	// BackView is the garment from behind, x from the back centre.
	BackView View = "back"
	// FrontView is the front laid open, x from where the two sides meet. Worn, the
	// left front covers the right one.
	FrontView View = "front"
	// CollarView is the collar by itself, y from its left end.
	CollarView View = "collar"
)

// A Piece is a finished piece of the garment that is seen: a window of a panel.
// What lies on the panel between two pieces, such as a tuck, is folded away.
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
