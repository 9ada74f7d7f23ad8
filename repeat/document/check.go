package document

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// Names that an order may choose from.
var (
	// PageNames are the pages that sheets are printed on.
	PageNames = []string{"A4", "A3", "B4", "letter"}
	// UnitNames are the measures that sheets are lettered in.
	UnitNames = []string{"mm", "sun"}
	// LanguageNames are the languages that sheets are worded in: English, Japanese.
	LanguageNames = []string{"en", "ja"}
)

// Bounds of what an order may ask for. They keep out slips of the pen and files
// that would fill the memory, far above what the trade uses.
const (
	maxTitle = 200  // characters
	maxNote  = 5000 // characters
	maxRack  = 1000 // punches
	minStars = 2    // at each end
	maxStars = 4

	minStep = geom.Millimetre
	maxStep = 1500 * geom.Millimetre
	maxBolt = 200 * geom.Metre
	// Cloths on one board, and times that it is laid.
	maxCloths = 100
	// A bolt far wider than any loom of the trade.
	maxAcross = 3000 * geom.Millimetre
)

// Check returns the first thing that is wrong with o, as a *Fault that names its
// path in the file and what to do. It judges sense and size only; whether the
// stencil will hold is for repeat/check. Read, Write and every edit call it.
func (o Order) Check() error {
	if fault := o.check(); fault != nil {
		return fault
	}
	return nil
}

func (o Order) check() *Fault {
	for _, part := range []func(Order) *Fault{
		checkWords, checkSheet, checkCloth, checkGarment, checkLimits, checkRack, checkShelf, checkUnit, checkMethods, checkGroup, checkHold, checkLoad,
	} {
		if fault := part(o); fault != nil {
			return fault
		}
	}
	return nil
}

func checkWords(o Order) *Fault {
	var ways []string
	for _, w := range cloth.Ways() {
		ways = append(ways, string(w))
	}
	return first(
		words("title", o.Title, maxTitle, false),
		words("note", o.Note, maxNote, true),
		oneOf("register.way", string(o.Register.Way), ways),
		oneOf("sheets.page", o.Sheets.Page, PageNames),
		oneOf("sheets.units", o.Sheets.Units, UnitNames),
		oneOf("sheets.language", o.Sheets.Language, LanguageNames),
		oneOf("sheets.marks", cmp.Or(o.Sheets.Marks, FilledMarks), MarkNames),
	)
}

func checkSheet(o Order) *Fault {
	s := o.Sheet
	fault := first(
		within("sheet.step_mm", s.Step, minStep, maxStep),
		within("sheet.field.left_mm", s.Field.Left, -100*geom.Millimetre, maxAcross),
		within("sheet.field.width_mm", s.Field.Width, geom.Millimetre, maxAcross),
		within("sheet.paper.width_mm", s.Paper.Width, 10*geom.Millimetre, maxAcross),
		within("sheet.paper.height_mm", s.Paper.Height, 10*geom.Millimetre, maxAcross),
		within("sheet.paper.thickness_mm", s.Paper.Thickness, 10*geom.Micrometre, 5*geom.Millimetre),
		share("sheet.paper.growth_across_pct", s.Paper.GrowthAcross, 0.1),
		share("sheet.paper.growth_along_pct", s.Paper.GrowthAlong, 0.1),
		count("sheet.paper.pile", s.Paper.Pile, 1, 50),
		count("sheet.stars.per_end", s.Stars.PerEnd, minStars, maxStars),
		within("sheet.stars.diameter_mm", s.Stars.Diameter, 100*geom.Micrometre, 10*geom.Millimetre),
		within("sheet.stars.hidden_mm", s.Stars.Hidden, 0, 100*geom.Millimetre),
	)
	if n := len(s.Stars.At); fault == nil && n != 0 && n != s.Stars.PerEnd {
		return faultf("sheet.stars.at_mm", "%d places for %d stars an end; give as many, or none to let them be chosen", n, s.Stars.PerEnd)
	}
	for i, p := range s.Stars.At {
		fault = first(fault, reachable(fmt.Sprintf("sheet.stars.at_mm[%d]", i), p))
	}
	return fault
}

func checkCloth(o Order) *Fault {
	b := o.Cloth.Bolt
	if o.Board.Start > b.Length && o.Board.Start <= maxBolt {
		return faultf("board.start_mm", "%s mm is beyond the end of the bolt; give at most %s mm", o.Board.Start, b.Length)
	}
	fault := first(
		within("cloth.width_mm", b.Width, 50*geom.Millimetre, maxAcross),
		within("cloth.length_mm", b.Length, 100*geom.Millimetre, maxBolt),
		share("cloth.change_across_pct", b.ChangeAcross, 0.5),
		share("cloth.change_along_pct", b.ChangeAlong, 0.5),
		within("board.length_mm", o.Board.Length, 100*geom.Millimetre, maxBolt),
		within("board.turn_mm", o.Board.Turn, 0, geom.Metre),
		within("board.start_mm", o.Board.Start, 0, maxBolt),
		within("register.star_error_mm", o.Register.StarError, 0, 10*geom.Millimetre),
		within("cloth.selvedge_mm", b.Selvedge, 0, 200*geom.Millimetre),
		within("register.star_error_across_mm", o.Register.StarErrorAcross, 0, 10*geom.Millimetre),
		share("register.growth_start_pct", o.Register.Growth.Start, 0.1),
		share("register.growth_end_pct", o.Register.Growth.End, 0.1),
		count("register.growth_half_placements", o.Register.Growth.Half, 0, 100_000),
		count("register.sheets", o.Register.Sheets, 1, 1000),
		within("register.pitch_error_mm", o.Register.PitchError, -10*geom.Millimetre, 10*geom.Millimetre),
	)
	if fault != nil {
		return fault
	}
	return checkBoard(o.Board, b)
}

// checkBoard refuses a board and a bolt that no cloth can be laid with.
func checkBoard(board cloth.Board, b cloth.Bolt) *Fault {
	fault := first(
		within("board.end_mm", board.End, 0, maxBolt),
		count("board.faces", board.Faces, 1, 2),
		count("board.cloths", board.Cloths, 1, maxCloths),
		count("board.layings", board.Layings, 1, maxCloths),
		oneOf("board.order", string(board.Sequence), named(cloth.Sequences())),
		oneOf("cloth.sides", string(b.Sides), named(cloth.SidesOf())),
	)
	switch {
	case fault != nil:
		return fault
	case board.End > 0 && board.End >= b.Length-board.Start:
		return faultf("board.end_mm", "%s mm at the end leave nothing of the bolt after the first placement's start; give less than %s mm",
			board.End, b.Length-board.Start)
	case b.Selvedge > 0 && 2*b.Selvedge >= b.Width:
		return faultf("cloth.selvedge_mm", "two selvedges of %s mm leave nothing of a bolt of %s mm; give less than %s mm", b.Selvedge, b.Width, b.Width/2)
	case b.Folded && b.Sides == cloth.BothSides:
		return faultf("cloth.sides", "poured dye goes through a folded cloth; print %q side, or lay the cloth out flat", cloth.OneSide)
	}
	return nil
}

// named returns choices as plain text.
func named[T ~string](choices []T) []string {
	names := make([]string, len(choices))
	for i, c := range choices {
		names[i] = string(c)
	}
	return names
}

func checkLimits(o Order) *Fault {
	l, most := o.Limits, 100*geom.Millimetre
	return first(
		within("limits.hole_mm", l.Hole, 0, most),
		within("limits.web_mm", o.Sheet.WebLimit, 0, most),
		within("limits.star_clear_mm", l.StarClear, 0, most),
		within("limits.baseline_mm", l.Baseline, 0, maxAcross),
		within("limits.turned_misfit_mm", l.TurnedMisfit, 0, most),
		within("limits.joint_mm", l.Joint, 0, most),
		within("limits.seam_phase_mm", l.SeamPhase, 0, most),
		within("limits.misfit_mm", l.Misfit, 0, most),
		within("limits.most_misfit_mm", l.MostMisfit, 0, most),
		within("limits.look_mm", l.Look, 50*geom.Millimetre, 10_000*geom.Millimetre),
		within("sheets.lap_mm", o.Sheets.Lap, 0, 50*geom.Millimetre),
		printed("sheets.printed_across_mm", o.Sheets.PrintedAcross),
		printed("sheets.printed_along_mm", o.Sheets.PrintedAlong),
	)
}

// What 100 mm may measure on a page that was printed at 100 %: printers are off by
// some tenths of a percent, and what is off by more was fitted to the page (common
// practice, no source). Within these bounds no page's ink comes nearer to its edge
// than a printer can print.
const (
	LeastPrinted = 98 * geom.Millimetre
	MostPrinted  = 102 * geom.Millimetre
)

// printed refuses a length that 100 mm can't measure; 0 stands for none.
func printed(path string, l geom.Length) *Fault {
	if l != 0 && (l < LeastPrinted || l > MostPrinted) {
		return faultf(path, "%s mm is out of bounds for 100 mm printed at 100 %%: print again without fitting to the page, or give %s to %s mm (0 for not measured)",
			l, LeastPrinted, MostPrinted)
	}
	return nil
}

func checkRack(o Order) *Fault {
	if n := len(o.Rack); n > maxRack {
		return faultf("rack", "%d punches; keep the rack to %d", n, maxRack)
	}
	names := map[string]bool{}
	for i, p := range o.Rack {
		path := fmt.Sprintf("rack[%d]", i)
		fault := first(
			words(path+".name", p.Name, maxTitle, false),
			within(path+".diameter_mm", p.Diameter, 50*geom.Micrometre, 100*geom.Millimetre),
		)
		switch {
		case fault != nil:
			return fault
		case strings.TrimSpace(p.Name) == "":
			return faultf(path+".name", "the punch has no name; give it one")
		case names[p.Name]:
			return faultf(path+".name", "another punch is called %q too; give each its own name", p.Name)
		}
		names[p.Name] = true
	}
	return nil
}

// first returns the first fault of several, nil where there is none.
func first(faults ...*Fault) *Fault {
	for _, f := range faults {
		if f != nil {
			return f
		}
	}
	return nil
}

func within(path string, l, low, high geom.Length) *Fault {
	if l < low || l > high {
		return faultf(path, "%s mm is out of bounds; give %s to %s mm", l, low, high)
	}
	return nil
}

// share refuses a fraction beyond ±most; NaN is beyond.
func share(path string, v, most float64) *Fault {
	if !(math.Abs(v) <= most) {
		return faultf(path, "%g %% is out of bounds; give −%g to %g %%", v*100, most*100, most*100)
	}
	return nil
}

func count(path string, n, low, high int) *Fault {
	if n < low || n > high {
		return faultf(path, "%d is out of bounds; give %d to %d", n, low, high)
	}
	return nil
}

func oneOf(path, name string, names []string) *Fault {
	if !slices.Contains(names, name) {
		return faultf(path, "there is no %.40q; choose from %s", name, strings.Join(names, ", "))
	}
	return nil
}

// words refuses a text that is too long, no UTF-8, or holds characters that
// can't be lettered.
func words(path, text string, most int, lines bool) *Fault {
	if n := utf8.RuneCountInString(text); n > most {
		return faultf(path, "%d characters; keep it to %d", n, most)
	}
	if !utf8.ValidString(text) {
		return faultf(path, "it is no UTF-8 text; write it again")
	}
	for _, r := range text {
		if unicode.IsControl(r) && !(lines && (r == '\n' || r == '\t')) {
			return faultf(path, "it holds the control character %U; delete it", r)
		}
	}
	return nil
}

func reachable(path string, p geom.Point) *Fault {
	if p.X.Abs() > maxAcross || p.Y.Abs() > maxAcross {
		return faultf(path, "%s, %s mm is out of reach; stay within ±%s mm", p.X, p.Y, maxAcross)
	}
	return nil
}
