package ui

import (
	"cmp"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/export/report"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

// A sheetsStation is the last station: the drawing at cut size with the pages
// that it is printed on, and what the job folder will hold.
type sheetsStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
	write   *widget.Button
	print   *widget.Button
	files   *widget.Label
	cut     cutSheet
	shows   *widget.RadioGroup
	seen    string // what the surface shows, one of the names of views
	plan    *benchPlan
	pages   fyne.CanvasObject // the part of the bench that belongs to them
}

// A cutSheet is the sheet at cut size, ready to be painted, with its pages; it is
// made once for a work.
type cutSheet struct {
	number int
	sheet  stencil.Sheet
	ground *raster.Ground
	pages  []geom.Box // what each page of the transfer shows of the paper
	fault  error
}

// trueSquare is what the check square measures where a printer is true.
const trueSquare = 100 * geom.Millimetre

func newSheets(w *Window) *sheetsStation {
	s := &sheetsStation{onlooker: onlooker{w: w}, form: &form{w: w}, seen: thePages}
	head := &form{w: w}
	head.heading("Show")
	s.shows = widget.NewRadioGroup([]string{say(thePages), say(theBench)}, nil)
	s.shows.Required, s.shows.Selected = true, say(thePages)
	s.shows.OnChanged = s.show
	head.add(s.shows)
	f := s.form
	f.heading("Order")
	f.text("Title", "Change Title", func(o document.Order) string { return o.Title }, document.SetTitle)
	f.text("Note", "Change Note", func(o document.Order) string { return o.Note }, document.SetNote)
	f.heading("Printing")
	var pages []string
	for _, p := range export.Pages() {
		pages = append(pages, p.Name)
	}
	f.choice("Page", "Change Page", pages, func(o document.Order) string { return o.Sheets.Page }, document.SetPage)
	f.choice("Units", "Change Units", document.UnitNames, func(o document.Order) string { return o.Sheets.Units },
		func(o document.Order, v string) (document.Order, error) {
			next := o.Sheets
			next.Units = v
			return document.SetSheets(o, next)
		})
	f.length("Pages lap by", "Change Lap", geom.KaneBu,
		func(o document.Order) geom.Length { return o.Sheets.Lap },
		func(o document.Order, l geom.Length) (document.Order, error) {
			next := o.Sheets
			next.Lap = l
			return document.SetSheets(o, next)
		})
	for _, axis := range []struct {
		label string
		of    func(s *document.Sheets) *geom.Length
	}{
		{"100 mm across is", func(s *document.Sheets) *geom.Length { return &s.PrintedAcross }},
		{"100 mm along is", func(s *document.Sheets) *geom.Length { return &s.PrintedAlong }},
	} {
		f.length(axis.label, "Correct Printer", geom.MMUnit,
			func(o document.Order) geom.Length { return cmp.Or(*axis.of(&o.Sheets), trueSquare) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				next := o.Sheets
				if l == trueSquare {
					l = 0 // nothing to correct
				}
				*axis.of(&next) = l
				return document.SetSheets(o, next)
			})
	}
	s.print = widget.NewButton(say("Print…"), w.print)
	f.add(s.print)
	f.heading("Transfer")
	f.choice("Marks", "Change Marks", document.MarkNames,
		func(o document.Order) string { return cmp.Or(o.Sheets.Marks, document.FilledMarks) },
		func(o document.Order, v string) (document.Order, error) {
			next := o.Sheets
			next.Marks = v
			return document.SetSheets(o, next)
		})
	f.tick("Mirrored", "Mirror Transfer",
		func(o document.Order) bool { return o.Sheets.Mirrored },
		func(o document.Order, on bool) (document.Order, error) {
			next := o.Sheets
			next.Mirrored = on
			return document.SetSheets(o, next)
		})
	f.heading("Job folder")
	s.files = widget.NewLabel("")
	s.write = widget.NewButton(say("Write the Job Folder…"), w.chooseFolder)
	s.write.Importance = widget.HighImportance
	f.add(s.write)
	f.add(container.NewPadded(s.files))
	s.plan = newBenchPlan(s)
	s.pages = f.content()
	s.plan.content.Hide()
	s.content = container.NewVBox(head.content(), s.pages, s.plan.content)
	return s
}

func (s *sheetsStation) name() string             { return stationNames[sheetsAt] }
func (s *sheetsStation) bench() fyne.CanvasObject { return s.content }
func (s *sheetsStation) view() string             { return "sheets" } // the views share the part that is seen

// owns is every finding: this is the last look before the sheets leave.
func (s *sheetsStation) owns(check.Finding) bool { return true }

// look goes to the station whose finding it is.
func (s *sheetsStation) look(f check.Finding) {
	if strings.HasPrefix(f.Code, "bench-") {
		s.plan.look(f)
		return
	}
	for i, other := range s.w.stations[:sheetsAt] {
		if other.owns(f) {
			s.w.GoTo(i)
			other.look(f)
			return
		}
	}
}

func (s *sheetsStation) refresh() {
	s.offerViews()
	if s.pages.Visible() == s.benchShown() {
		if s.benchShown() {
			s.pages.Hide()
			s.plan.content.Show()
		} else {
			s.plan.content.Hide()
			s.pages.Show()
		}
	}
	if s.benchShown() {
		s.plan.refresh()
		return
	}
	s.form.refresh()
	s.files.SetText("  " + strings.Join(report.Names(s.w.work), "\n  "))
	if s.w.Ready() {
		s.write.Enable()
		s.print.Enable()
	} else {
		s.write.Disable()
		s.print.Disable()
	}
}

// present returns the cut sheet of the work that is shown.
func (s *sheetsStation) present() cutSheet {
	if s.cut.number == s.w.built {
		return s.cut
	}
	c := cutSheet{number: s.w.built, sheet: s.w.work.CutSheet()}
	var holes []geom.Shape
	for _, cut := range c.sheet.CutOuts {
		holes = append(holes, cut.Shape)
	}
	for _, star := range c.sheet.Stars.Stars {
		holes = append(holes, geom.DiscShape(star.At, star.Diameter))
	}
	c.ground = raster.NewGround(holes)
	book, err := report.Transfer(s.w.work, 1, report.Options{})
	c.fault = err
	for _, p := range book.Pages {
		if len(p.Views) == 1 {
			c.pages = append(c.pages, p.Views[0].Window.Moved(c.sheet.Paper.Min))
		}
	}
	s.cut = c
	return c
}

func (s *sheetsStation) scene() board.Scene {
	if s.w.built == 0 {
		return waiting(s.w)
	}
	if s.benchShown() {
		return s.plan.scene()
	}
	c := s.present()
	sc := board.Scene{
		Desk: worn().table, Extent: c.sheet.Paper,
		Areas:   []board.Area{{Box: c.sheet.Paper, Shut: worn().white, Open: worn().soot}},
		Grounds: []board.Laid{{Ground: c.ground, Lays: []raster.Lay{{}}}},
		Marks:   []board.Mark{{Shape: board.Loop, Points: corners(c.sheet.Paper), Colour: worn().outline, Width: 1.5}},
	}
	for _, line := range [][]geom.Point{c.sheet.Joint.Line, moved(c.sheet.Joint.Line, geom.Point{Y: c.sheet.Spec.Step})} {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: worn().indigo, Width: 1.5})
	}
	for i, page := range c.pages {
		sc.Extent = sc.Extent.Union(page)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(page), Colour: worn().indigo, Width: 1.5})
		sc.Labels = append(sc.Labels, board.Label{
			At: page.Centre(), Align: board.Middle, Text: say("page %d", i+1), Colour: worn().vat, Shield: worn().shield, Bold: true, Size: 13,
			Room: page.Width(),
		})
	}
	return sc
}

func (s *sheetsStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	if s.benchShown() {
		return s.plan.measures()
	}
	u, c := s.w.unit(), s.present()
	x, y := s.w.work.Scale.Cut()
	rows := []measure{
		{"step as cut", u.Format(c.sheet.Spec.Step, 3)},
		{"cut size across", strconv.FormatFloat(100*x, 'f', 3, 64) + " %"},
		{"cut size along", strconv.FormatFloat(100*y, 'f', 3, 64) + " %"},
		{"paper", u.Number(c.sheet.Paper.Width(), 1) + " × " + u.Format(c.sheet.Paper.Height(), 1)},
		{"pages of the transfer", strconv.Itoa(len(c.pages))},
		{"files", strconv.Itoa(len(report.Names(s.w.work)))},
	}
	if c.fault != nil {
		rows = append(rows, measure{"", sentence(c.fault)})
	}
	return rows
}
