package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// registerSet says how the two sheets of a split are laid over one another and
// what shows where they are not.
func registerSet(fl *flow, w repeat.Work, s setSheet, f figures) error {
	fl.room(105 * geom.Millimetre) // all of it, so that it lies open as one
	fl.heading(f.say("The set: two sheets to a placement"))
	fl.table(matchTable(s, f))
	fl.paragraph(f.say("From the paper's top left corner, as cut. M stands on both sheets: the first prints it, the second is laid on the print. " +
		"M1 and M2 tell the sheets apart."))
	for _, text := range layingOrder(w, f) {
		fl.point(text)
	}
	rows, err := slips(w)
	if err != nil {
		return err
	}
	fl.table(slipTable(rows, f))
	fl.paragraph(slipNote(w, f))
	return nil
}

// matchTable lists the match stars of the set as they are cut.
func matchTable(s setSheet, f figures) table {
	t := table{columns: []column{
		{f.say("match star"), export.Start}, {f.say("on"), export.Start},
		{f.head("across", f.sheet), export.End}, {f.head("along", f.sheet), export.End},
		{f.head("hole", f.fine), export.End}, {f.head("to the nearest cut", f.fine), export.End},
		{f.say("on the garment"), export.Start},
	}}
	for _, m := range s.marks()[len(s.Stars.Stars):] {
		on := map[string]string{"M": f.say("both sheets"), "M1": f.say("the first"), "M2": f.say("the second")}[m.name]
		t.rows = append(t.rows, []string{
			m.name, on, f.sheet.number(m.At.X), f.sheet.number(m.At.Y),
			f.fine.number(m.Diameter), f.fine.number(m.Clear), seenText(m.Hidden, f),
		})
	}
	return t
}

// layingOrder says how a placement is laid with both sheets. The order along the
// bolt is common practice, no source.
func layingOrder(w repeat.Work, f figures) []string {
	second := w.Order.Sheet.Hold.Second
	opens := f.say("It opens all of the design but its own ties; they cross those of the first.")
	if second.Cut == stencil.TiePlaces {
		opens = f.say("It opens where the first has its ties, lapping over by %s on each side.", f.fine.with(second.Lap))
	}
	return []string{
		f.say("First sheet (omogata): feed it by L and T along the whole bolt and let the paste dry. This order is common practice, no source; the dyer may lay both at each placement."),
		f.sentences([]string{f.say("Second sheet (keshigata): lay M and the feed stars on their prints, from the first placement to the last."), opens}),
	}
}

// slipSizes are the misplacements that are worked out: what hands hold to, what
// the eye begins to see (0.116 mm at 40 cm), and what any eye sees.
func slipSizes() []geom.Length {
	return []geom.Length{0, geom.MM(0.05), geom.MM(0.1), geom.MM(0.2)}
}

// A slip is what shows on the cloth where the second sheet is laid beside its
// place: of the four ways along the axes the worst.
type slip struct {
	by        geom.Point
	uncovered float64 // mm² on a cm² that should be open and are not
	beside    float64 // mm² on a cm² that are open and should not be
}

// slips works out every size of slip, each in the way that is the worst for the
// middle one.
func slips(w repeat.Work) ([]slip, error) {
	sizes := slipSizes()
	worst, err := worstSlip(w, sizes[len(sizes)/2])
	if err != nil {
		return nil, err
	}
	var all []slip
	for _, off := range sizes {
		s := worst
		if by := lengthened(worst.by, off); by != worst.by {
			if s, err = slipBy(w, by); err != nil {
				return nil, err
			}
		}
		all = append(all, s)
	}
	return all, nil
}

// worstSlip lays the second sheet off to the right, left, down and up.
func worstSlip(w repeat.Work, off geom.Length) (slip, error) {
	var worst slip
	for i, by := range []geom.Point{{X: off}, {X: -off}, {Y: off}, {Y: -off}} {
		s, err := slipBy(w, by)
		if err != nil {
			return slip{}, err
		}
		if i == 0 || s.uncovered > worst.uncovered || s.uncovered == worst.uncovered && s.beside > worst.beside {
			worst = s
		}
	}
	return worst, nil
}

// slipMotifs is how many motifs of a unit a slip is worked out for at most; more
// of them are sampled evenly.
const slipMotifs = 12

// slipBy lays the second sheet off by a way. In place it is what was measured.
func slipBy(w repeat.Work, by geom.Point) (slip, error) {
	design, first, second := w.Order.Unit, w.Sheet.Unit, w.Sheet.Second.Unit
	c, share := w.Sheet.Cover, 1.0
	if by != (geom.Point{}) {
		picked := map[pattern.ID]bool{}
		var all, some float64
		every := (len(design.Motifs)+slipMotifs-1)/slipMotifs | 1 // odd, so that motifs drawn by turns are met alike
		for i, m := range design.Motifs {
			area := m.Shape.AreaMM2()
			if all += area; i%every == 0 {
				picked[m.ID], some = true, some+area
			}
		}
		if some > 0 {
			share = some / all
		}
		var err error
		if c, err = stencil.Covered(only(design, picked), only(first, picked), stencil.Misplaced(only(second, picked), by)); err != nil {
			return slip{}, fmt.Errorf("second sheet laid off by %s, %s mm: %w", by.X, by.Y, err)
		}
	}
	cm2 := design.Lattice.CellMM2() / 100 * share
	return slip{by, c.MissingMM2 / cm2, c.ExtraMM2 / cm2}, nil
}

// lengthened returns a way along an axis with another length.
func lengthened(way geom.Point, to geom.Length) geom.Point {
	long := func(l geom.Length) geom.Length {
		switch {
		case l > 0:
			return to
		case l < 0:
			return -to
		}
		return 0
	}
	return geom.Point{X: long(way.X), Y: long(way.Y)}
}

// only returns the picked motifs of a unit.
func only(u pattern.Unit, picked map[pattern.ID]bool) pattern.Unit {
	part := pattern.Unit{Lattice: u.Lattice}
	for _, m := range u.Motifs {
		if picked[m.ID] {
			part.Motifs = append(part.Motifs, m)
		}
	}
	return part
}

// way says where a slip goes to.
func (s slip) way() string {
	switch {
	case s.by.X > 0:
		return "to the right"
	case s.by.X < 0:
		return "to the left"
	case s.by.Y > 0:
		return "down"
	case s.by.Y < 0:
		return "up"
	}
	return "in place"
}

func slipTable(slips []slip, f figures) table {
	t := table{columns: []column{
		{f.head("second sheet off by", f.fine), export.End}, {f.say("worst way"), export.Start},
		{f.say("uncovered, mm² on a cm²"), export.End}, {f.say("beside the design, mm² on a cm²"), export.End},
	}}
	for _, s := range slips {
		off := max(s.by.X.Abs(), s.by.Y.Abs())
		t.rows = append(t.rows, []string{f.fine.number(off), f.say(s.way()), fmt.Sprintf("%.4f", s.uncovered), fmt.Sprintf("%.4f", s.beside)})
	}
	return t
}

func slipNote(w repeat.Work, f figures) string {
	all := []string{f.say("Uncovered places take dye that should not, those beside the design stay white.")}
	if h := w.Order.Sheet.Hold.Second; h.Cut == stencil.TiePlaces {
		all = append(all, f.say("Off across a tie by no more than the lap of %s, nothing opens at its sides; what is left shows at the rims of the design.", f.fine.with(h.Lap)))
	}
	if n := len(w.Order.Unit.Motifs); n > slipMotifs {
		all = append(all, f.say("Worked out for an even sample of the %d motifs.", n))
	}
	return f.sentences(all)
}
