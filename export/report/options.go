package report

import (
	"fmt"
	"slices"
	"strings"

	"tsugime/export"
	"tsugime/export/wording"
	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// Options is how a job folder is written. The zero Options take page and units
// from the order, write every file and overwrite none.
type Options struct {
	Page  string // a page that export.PageNamed knows; "" for the order's own
	Units string // "mm" or "sun"; "" for the order's own
	// Language is the tag of a language that wording.Named knows; "" for the order's own.
	Language string
	Only     []string // names of Names, with or without extension; nil for all
	Force    bool     // overwrite what is there
	// Rack is the cutter's own tools and limits, beside the order's punches, and Rates
	// how fast the cutter is. The zero ones are those of a cutter who told nothing.
	Rack  bench.Rack
	Rates bench.Rates
	// Blade is the knife of a cutting machine, for the files that are cut alone.
	Blade bench.Blade
	// PrintedAcross and PrintedAlong are what 100 mm along the short and the long edge
	// of a page measured that the printer printed at 100 %; 0 for the order's own.
	PrintedAcross, PrintedAlong geom.Length
	// Marks is how the transfer shows what is cut, one of document.MarkNames; "" for the
	// order's own. Mirrored draws it for the back of the paper, as the order may too.
	Marks    string
	Mirrored bool

	job *job // of the work that the options were filled in from
}

// mostBlade is the most that a blade trails or goes past its start.
const mostBlade = 5 * geom.Millimetre

// The units that sheets are lettered in.
const (
	inMM  = "mm"
	inSun = "sun"
)

// Check returns an error where the options ask for something that the job folder
// of w has not.
func (o Options) Check(w repeat.Work) error {
	if o.Page != "" {
		if _, err := export.PageNamed(o.Page); err != nil {
			return fmt.Errorf("page: %w", err)
		}
	}
	if o.Units != "" && o.Units != inMM && o.Units != inSun {
		return fmt.Errorf("units: there is no %q; use %s or %s", o.Units, inMM, inSun)
	}
	for i, l := range []geom.Length{o.Blade.Offset, o.Blade.Overcut} {
		if l < 0 || l > mostBlade {
			return fmt.Errorf("%s: %s mm is out of bounds; give 0 to %s mm", []string{"blade offset", "overcut"}[i], l, mostBlade)
		}
	}
	for i, l := range []geom.Length{o.PrintedAcross, o.PrintedAlong} {
		if l != 0 && (l < document.LeastPrinted || l > document.MostPrinted) {
			return fmt.Errorf("printed %s: 100 mm that measure %s mm were not printed at 100 %%; print again without fitting to the page, or give %s to %s mm",
				[]string{"across", "along"}[i], l, document.LeastPrinted, document.MostPrinted)
		}
	}
	if o.Marks != "" && !slices.Contains(document.MarkNames, o.Marks) {
		return fmt.Errorf("marks: there are no %q; use %s", o.Marks, strings.Join(document.MarkNames, ", "))
	}
	if _, err := wording.Named(o.Language); err != nil {
		return fmt.Errorf("language: %w", err)
	}
	for _, name := range o.Only {
		if !slices.ContainsFunc(Names(w), func(n string) bool { return sameFile(name, n) }) {
			return fmt.Errorf("only: the folder has no %q; it has %s", name, strings.Join(Names(w), ", "))
		}
	}
	return nil
}

// with fills what o leaves open from the order.
func (o Options) with(w repeat.Work) Options {
	if o.Page == "" {
		o.Page = w.Order.Sheets.Page
	}
	if o.Units == "" {
		o.Units = w.Order.Sheets.Units
	}
	if o.Units == "" {
		o.Units = inMM
	}
	if o.Language == "" {
		o.Language = w.Order.Sheets.Language
	}
	if o.PrintedAcross == 0 {
		o.PrintedAcross = w.Order.Sheets.PrintedAcross
	}
	if o.PrintedAlong == 0 {
		o.PrintedAlong = w.Order.Sheets.PrintedAlong
	}
	if o.Marks == "" {
		o.Marks = w.Order.Sheets.Marks
	}
	o.Mirrored = o.Mirrored || w.Order.Sheets.Mirrored
	if o.job == nil {
		o.job = newJob(w, o)
	}
	return o
}

// figures returns the rulers and the language of options that are filled in;
// English for a language that Check refuses.
func (o Options) figures() figures {
	lang, _ := wording.Named(o.Language)
	return figuresIn(o.Units, lang)
}

// settled returns the page's size and the rulers for a set of sheets.
func (o Options) settled(w repeat.Work) (export.PageSize, figures, error) {
	o = o.with(w)
	size, err := export.PageNamed(o.Page)
	if err != nil {
		return size, figures{}, fmt.Errorf("page: %w", err)
	}
	return size, o.figures(), nil
}

// wants reports whether the file of that name is to be written.
func (o Options) wants(name string) bool {
	return o.Only == nil || slices.ContainsFunc(o.Only, func(asked string) bool { return sameFile(asked, name) })
}

// sameFile reports whether asked means the file name: in full, or without its
// extension where that is meant for every file of the stem.
func sameFile(asked, name string) bool {
	stem, _, _ := strings.Cut(name, ".")
	asked = strings.TrimSpace(asked)
	return strings.EqualFold(asked, name) || strings.EqualFold(asked, stem)
}
