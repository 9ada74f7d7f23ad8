package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Sides is which sides of the cloth are printed.
type Sides string

// The sides. The empty one is OneSide.
const (
	OneSide   Sides = "one"
	BothSides Sides = "both" // the back falls on the front
)

// SidesOf lists which sides can be printed.
func SidesOf() []Sides { return []Sides{OneSide, BothSides} }

func (s Sides) check() error {
	switch s {
	case "", OneSide, BothSides:
		return nil
	}
	return fmt.Errorf("bolt: there are no %q sides; use %s or %s", string(s), OneSide, BothSides)
}

// A Served is a leading star of the front and the star of the turned sheet that
// is laid on it on the back: both are numbers in the list of leading stars.
type Served struct{ Front, Back int }

// A Reverse tells what it takes for the back to fall on the front. The cloth is
// turned over about its long axis, so what lies at x from the left selvedge on
// the front lies at width − x from it on the back, the same distance along.
type Reverse struct {
	// Mirror is the pattern's own mirror that runs along the bolt, the one
	// nearest to the middle of the cloth. Where it is found and Off is zero, the
	// sheet prints the back as it is; else it is turned over, face down, or a
	// mirrored sheet is cut, which a sheet with gauze on its face needs.
	Mirror Mirror
	// Stars pairs the leading stars of the front with those of the sheet as it
	// is, where they fall on each other's marks by Slack; of a sheet that is
	// turned over every star serves itself. Trailing stars go with them.
	Stars []Served
}

// ReverseOf returns what it takes to print the back. The stars are the leading
// ones of the sheet, on the finished cloth as its width and the unit are; slack
// is how far a star may be from the mark that it is laid on.
func ReverseOf(u pattern.Unit, width geom.Length, stars []geom.Point, slack geom.Length) (Reverse, error) {
	m, err := AlongMirror(u, width/2)
	if err != nil {
		return Reverse{}, err
	}
	r := Reverse{Mirror: m}
	for i, front := range stars {
		mark := geom.Point{X: width - front.X, Y: front.Y}
		for j, back := range stars {
			if mark.Distance(back) <= slack {
				r.Stars = append(r.Stars, Served{i, j})
				break
			}
		}
	}
	return r, nil
}

// NeedsTurning reports whether the sheet must be turned over, or a mirrored one
// cut: the pattern has no mirror in the cloth's middle, within slack, or fewer
// than two stars would serve.
func (r Reverse) NeedsTurning(slack geom.Length) bool {
	return !r.Mirror.Found || r.Mirror.Glide != 0 || 2*r.Mirror.Off.Abs() > slack || len(r.Stars) < 2
}
