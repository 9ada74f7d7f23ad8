package document

import (
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Edits take an order and return the next; the one before stays as it was. Each
// checks what it made and returns the order before with the error where the
// result makes no sense.

// checked returns next where it is sound, o and the fault where not.
func (o Order) checked(next Order) (Order, error) {
	if err := next.Check(); err != nil {
		return o, err
	}
	return next, nil
}

// SetTitle names the order.
func SetTitle(o Order, title string) (Order, error) {
	next := o
	next.Title = title
	return o.checked(next)
}

// SetNote sets the words that go with the order.
func SetNote(o Order, note string) (Order, error) {
	next := o
	next.Note = note
	return o.checked(next)
}

// SetStep sets how far the stencil moves. The lattice stays; see ApplyFit.
func SetStep(o Order, step geom.Length) (Order, error) {
	next := o
	next.Sheet.Step = step
	return o.checked(next)
}

// SetField sets the strip of the cloth that the stencil covers.
func SetField(o Order, f stencil.Field) (Order, error) {
	next := o
	next.Sheet.Field = f
	return o.checked(next)
}

// SetPaper sets the sheet that is cut.
func SetPaper(o Order, p stencil.Paper) (Order, error) {
	next := o
	next.Sheet.Paper = p
	return o.checked(next)
}

// SetStars sets what is wanted of the register stars.
func SetStars(o Order, s stencil.StarSpec) (Order, error) {
	next := o
	s.At = slices.Clone(s.At)
	next.Sheet.Stars = s
	return o.checked(next)
}

// SetCloth sets bolt and dye.
func SetCloth(o Order, c Cloth) (Order, error) {
	next := o
	next.Cloth = c
	return o.checked(next)
}

// SetBoard sets the board that the cloth is wrapped on.
func SetBoard(o Order, b cloth.Board) (Order, error) {
	next := o
	next.Board = b
	return o.checked(next)
}

// SetRegister sets how the stencil is laid, and how well.
func SetRegister(o Order, r Register) (Order, error) {
	next := o
	next.Register = r
	return o.checked(next)
}

// SetRack sets the cutter's round punches.
func SetRack(o Order, rack []Punch) (Order, error) {
	next := o
	next.Rack = slices.Clone(rack)
	return o.checked(next)
}

// SetLimits sets what the craft allows, the web limit included.
func SetLimits(o Order, l Limits, web geom.Length) (Order, error) {
	next := o
	next.Limits, next.Sheet.WebLimit = l, web
	return o.checked(next)
}

// SetSheets sets how the sheets are printed.
func SetSheets(o Order, s Sheets) (Order, error) {
	next := o
	next.Sheets = s
	return o.checked(next)
}

// SetPrinted sets what 100 mm of a page measured across and along that the printer
// printed at 100 %, by which later prints are corrected; 0 for not measured.
func SetPrinted(o Order, across, along geom.Length) (Order, error) {
	next := o
	next.Sheets.PrintedAcross, next.Sheets.PrintedAlong = across, along
	return o.checked(next)
}

// SetPage sets the page that the sheets are printed on.
func SetPage(o Order, page string) (Order, error) {
	next := o
	next.Sheets.Page = page
	return o.checked(next)
}

// SetLattice sets how the unit repeats. The motifs stay where they are. Where the
// plane group doesn't go with it, its copies become motifs of their own.
func SetLattice(o Order, l pattern.Lattice) (Order, error) {
	next := o.onLattice(func(u pattern.Unit) pattern.Unit { return pattern.Unit{Lattice: l, Motifs: u.Motifs} })
	return o.checked(next)
}
