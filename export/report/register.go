package report

import (
	"fmt"
	"math"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// Register returns the register sheet: what the dyer needs to lay the stencil
// true from the first placement to the last, and to prove its stars before that.
// It is set as close as one page asks for; that of a split takes more pages.
func Register(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	opt = opt.with(w)
	b := export.Book{Title: f.title(w), Subject: f.say("Register sheet")}
	for _, close := range []float64{0, 0.03, 0.06, 0.09, 0.12, 0.15, 0.18, 0.21, 0.24, 0.27} {
		pages, err := registerPages(w, opt.together(w), size, f, close)
		if err != nil {
			return export.Book{}, err
		}
		if close == 0 || len(pages) == 1 {
			b.Pages = pages
		}
		if len(pages) == 1 || w.Sheet.Second != nil {
			break
		}
	}
	return b, nil
}

func registerPages(w repeat.Work, set setSheet, size export.PageSize, f figures, close float64) ([]export.Page, error) {
	sheet := set.Sheet
	fl := newFlow(f, f.title(w), f.say("Register"), stepFacts(w, f), size)
	fl.close = close
	registerKey(fl, w, set, f)
	fl.heading(f.say("Stars"))
	fl.table(starTable(sheet, f))
	fl.paragraph(f.say("From the paper's top left corner to the middle of the star, printing side up, as cut into dry paper. " +
		"L is set on the print before, T prints the mark for the next."))
	fl.heading(f.say("Square check"))
	fl.table(squareTable(sheet.Stars, f))
	fl.paragraph(squareNote(sheet.Stars, w, f))
	if set.of > 1 {
		if err := registerSet(fl, w, set, f); err != nil {
			return nil, err
		}
	}
	fl.heading(f.say("From finished size to the cut"))
	fl.table(scaleTable(w, sheet, f))
	fl.paragraph(f.say("On the board: finished size over 1 + the cloth's change (ISO 5077). As cut: that over 1 + the growth of the soaked paper."))
	fl.heading(f.say("Placements"))
	fl.table(placementTable(w.Run, set.of, f))
	fl.paragraph(placementNote(w.Run, f))
	fl.paragraph(f.sentences([]string{f.say("The way: %s.", wayText(w.Run.Drift.Way, f)), driftNote(w, f)}))
	fl.heading(f.say("Take care"))
	fl.paragraph(f.sentences(cautions(f)))
	return fl.pages(), nil
}

// starTable lists every star of the sheet as it is cut.
func starTable(s stencil.Sheet, f figures) table {
	t := table{columns: []column{
		{f.say("star"), export.Start},
		{f.head("across", f.sheet), export.End}, {f.head("along", f.sheet), export.End},
		{f.head("hole", f.fine), export.End}, {f.head("to the nearest cut", f.fine), export.End},
		{f.say("on the garment"), export.Start},
	}}
	for i, star := range s.Stars.Stars {
		t.rows = append(t.rows, []string{
			starNames(s.Stars)[i], f.sheet.number(star.At.X), f.sheet.number(star.At.Y),
			f.fine.number(star.Diameter), f.fine.number(star.Clear), seenText(star.Hidden, f),
		})
	}
	return t
}

func seenText(hidden bool, f figures) string {
	if hidden {
		return f.say("hidden")
	}
	return f.say("shows")
}

// squareTable sets the measures that must be alike beside each other.
func squareTable(s stencil.StarSet, f figures) table {
	pair := func(a string, la geom.Length, b string, lb geom.Length) []string {
		return []string{f.say(a), f.sheet.number(la), f.say(b), f.sheet.number(lb), f.fine.number((la - lb).Abs())}
	}
	q := s.Square
	return table{
		columns: []column{
			{f.say("measure"), export.Start}, {f.sheet.name, export.End},
			{f.say("against"), export.Start}, {f.sheet.name, export.End}, {f.head("differ by", f.fine), export.End},
		},
		rows: [][]string{
			pair("top width", q.Top, "bottom width", q.Bottom),
			pair("left height", q.Left, "right height", q.Right),
			pair("diagonal, left top down", q.Down, "diagonal, left bottom up", q.Up),
		},
	}
}

func squareNote(s stencil.StarSet, w repeat.Work, f figures) string {
	return f.say("Between the outer stars. Baseline %s. Laid turned or flipped, the stars miss by %s at least (asked for: %s).",
		f.sheet.with(s.Baseline), f.fine.with(s.TurnedMisfit), f.fine.with(w.Order.Limits.TurnedMisfit))
}

// scaleTable takes step and field from finished size over the board to the cut.
func scaleTable(w repeat.Work, cut stencil.Sheet, f figures) table {
	bx, by := w.Scale.Board()
	cx, cy := w.Scale.Cut()
	row := func(name string, finished geom.Length, board, factor float64, cut geom.Length) []string {
		return []string{f.say(name), f.sheet.number(finished), f.sheet.number(finished.Times(board)), f.sheet.number(cut), fmt.Sprintf("%.5f", factor)}
	}
	return table{
		columns: []column{
			{"", export.Start}, {f.head("finished", f.sheet), export.End}, {f.head("on the board", f.sheet), export.End},
			{f.head("as cut", f.sheet), export.End}, {f.say("cut : finished"), export.End},
		},
		rows: [][]string{
			row("field, across", w.Sheet.Spec.Field.Width, bx, cx, cut.Spec.Field.Width),
			row("step, along", w.Sheet.Spec.Step, by, cy, cut.Spec.Step),
		},
	}
}

func placementTable(r cloth.Run, set int, f figures) table {
	t := table{
		columns: []column{
			{f.say("whole placements"), export.End}, {f.say("on face A"), export.End}, {f.say("on face B"), export.End}, {f.say("in the turn"), export.End},
			{f.head("step on the board", f.cloth), export.End}, {f.head("cloth left", f.cloth), export.End},
		},
		rows: [][]string{{
			fmt.Sprint(len(r.Placements)), fmt.Sprint(r.OnFace(cloth.FaceA)), fmt.Sprint(r.OnFace(cloth.FaceB)), fmt.Sprint(r.OnFace(cloth.Turn)),
			f.cloth.number(r.Step), f.cloth.number(r.Remainder),
		}},
	}
	if n := len(r.Placements); set > 1 {
		t.columns = append(t.columns, column{f.say("layings"), export.End})
		t.rows[0] = append(t.rows[0], fmt.Sprintf("%d × %d = %d", n, set, n*set))
	}
	return t
}

func placementNote(r cloth.Run, f figures) string {
	all := []string{f.say("Bolt %s wide, %s long; the first placement starts at %s.",
		f.cloth.plain(r.Bolt.Width), f.cloth.plain(r.Bolt.Length), f.cloth.plain(r.Board.Start))}
	if r.Needed > len(r.Placements) {
		all = append(all, f.say("To cover the end too, lay %d: the last one in part.", r.Needed))
	}
	for _, t := range r.Turns {
		all = append(all, f.say("The cloth turns at the board's end and can't be printed well from %s to %s.", f.cloth.plain(t.From), f.cloth.plain(t.To)))
	}
	return f.sentences(append(all, f.say("Every placement is listed in placements.csv.")))
}

// wayText says in words how each placement is laid true.
func wayText(way cloth.Way, f figures) string {
	switch way {
	case cloth.StarToStar:
		return f.say("each star on the star before")
	case cloth.EdgeLine:
		return f.say("stars along, a line at the selvedge across")
	case cloth.MarkedLine:
		return f.say("every placement on its own mark of a ruled line")
	case cloth.FoldLine:
		return f.say("each section where its fold falls")
	}
	return string(way)
}

// eyeDistance is how near cloth in the hand is looked at; an eye of acuity 1.0
// parts one arc minute (ISO 8596), which is eyeSees there: 0.116 mm.
const eyeDistance = 400 * geom.Millimetre

var eyeSees = eyeDistance.Times(math.Pi / 180 / 60)

func driftNote(w repeat.Work, f figures) string {
	d := w.Run.Drift
	verdict := f.say("less than the eye sees")
	if d.WorstJoint.Abs() > eyeSees {
		verdict = f.say("more than the eye sees")
	}
	return f.say("Standard deviations, each star set to %s, every step off by %s. At the end: %s across, %s along. "+
		"The worst joint of the bolt is expected to gap or lap by %s: %s (%s at %s, one arc minute).",
		f.fine.with(w.Order.Register.StarError), f.fine.signed(w.Order.Register.PitchError),
		f.walk.with(d.EndX), f.walk.with(d.EndY), f.walk.with(d.WorstJoint), verdict, f.walk.with(eyeSees), f.arm.with(eyeDistance))
}

// foundText counts the faults and warnings: "2 faults, 1 warning"; "" for none.
func foundText(findings []check.Finding, f figures) string {
	var parts []string
	for _, severity := range []check.Severity{check.Fault, check.Warning} {
		n := 0
		for _, x := range findings {
			if x.Severity == severity {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, f.count(n, string(severity)))
		}
	}
	return f.lang.Join(parts)
}

// The cautions that are the cutter's alone, by their place in cautions.
const (
	bladeCaution  = 1
	tanninCaution = 4
)

// cautions are where hands can be hurt. The allergen, the dye powders and the
// lime are named by health texts of craft and chemistry; the rest is common
// practice, no source.
func cautions(f figures) []string {
	all := []string{
		"The rules of your workshop and country come first. Have a trained person show you each material before you use it.",
		"Blades and punches: cut away from the holding hand, sheath them when they lie down.",
		"Raw lacquer (urushi) is an allergen, related to poison ivy: gloves, covered skin, no touching of the face. Cured lacquer is safe.",
		"Solvent-borne varnish: work in moving air, away from flames, with the gloves its label names.",
		"Tannin (kakishibu) stains and smells: gloves, moving air.",
		"Dye powder can sensitise lungs and skin: never stir up dust; mix under water or with the mask its data sheet names. Keep dithionite dry.",
		"Lime and soda are caustic: goggles and gloves; flush an eye with water at once and see a doctor.",
	}
	for i, c := range all {
		all[i] = f.say(c)
	}
	return all
}
