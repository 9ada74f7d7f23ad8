package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

// A Bolt is the piece of cloth. Changes are by ISO 5077: (after − before)/before,
// so a shrinkage of three percent is −0.03.
type Bolt struct {
	Width, Length             geom.Length
	ChangeAcross, ChangeAlong float64
	// Selvedge is the strip on each side that can't be printed or shows.
	Selvedge geom.Length
	Sides    Sides
	// Folded is set for poured dye, where the cloth is folded back at each
	// section of one step and every other section comes out mirrored along.
	Folded bool
}

// Bounds of what is accepted. They are far outside the trade (bolts of 11 to
// 14 m, steps of 130 to 400 mm) and keep every count and sum of the package
// small enough to be exact.
const (
	maxBolt   = 10_000 * geom.Metre
	maxWidth  = 2 * geom.Metre
	maxChange = 0.5
)

// Finished returns where a place of the cloth on the board lies once the cloth
// has changed.
func (b Bolt) Finished(p geom.Point) geom.Point {
	return geom.Point{X: p.X.Times(1 + b.ChangeAcross), Y: p.Y.Times(1 + b.ChangeAlong)}
}

// FinishedSize returns the width and length of the bolt once it has changed.
func (b Bolt) FinishedSize() (width, length geom.Length) {
	size := b.Finished(geom.Point{X: b.Width, Y: b.Length})
	return size.X, size.Y
}

// Usable returns the strip between the selvedges, from the left one, on the cloth
// as it lies on the board.
func (b Bolt) Usable() Span { return Span{b.Selvedge, b.Width - b.Selvedge} }

// Length returns how long s is.
func (s Span) Length() geom.Length { return s.To - s.From }

// Check returns an error where b can be no bolt.
func (b Bolt) Check() error {
	if b.Length <= 0 || b.Length > maxBolt {
		return fmt.Errorf("bolt: a length of %s mm can't be laid; give more than 0 and at most %s mm", b.Length, maxBolt)
	}
	if b.Width <= 0 || b.Width > maxWidth {
		return fmt.Errorf("bolt: a width of %s mm can't be laid; give more than 0 and at most %s mm", b.Width, maxWidth)
	}
	if b.Selvedge < 0 || 2*b.Selvedge >= b.Width {
		return fmt.Errorf("bolt: selvedges of %s mm leave nothing of a width of %s mm; give at least 0 and less than half of it", b.Selvedge, b.Width)
	}
	if err := b.Sides.check(); err != nil {
		return err
	}
	if b.Folded && b.Sides == BothSides {
		return fmt.Errorf("bolt: poured dye goes through a folded cloth; print %s side", OneSide)
	}
	for _, c := range []struct {
		name   string
		change float64
	}{{"across", b.ChangeAcross}, {"along", b.ChangeAlong}} {
		// Written so that a change that is no number is refused too.
		if !(c.change >= -maxChange && c.change <= maxChange) {
			return fmt.Errorf("bolt: a change of %g %% %s is no cloth's; give between %g and %g %%, negative for shrinking",
				100*c.change, c.name, -100*maxChange, 100*maxChange)
		}
	}
	return nil
}
