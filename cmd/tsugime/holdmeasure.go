package main

import (
	"fmt"

	"tsugime/repeat"
)

// A heldJSON is one sheet of the set as 'check' tells it.
type heldJSON struct {
	CutOuts        int     `json:"cut_outs"`
	OpenAreaPct    rounded `json:"open_area_pct"`
	NarrowestWeb   *mm     `json:"narrowest_web_mm"`
	WebsBelowLimit int     `json:"webs_below_limit"`
	Islands        int     `json:"islands"`
	Bands          int     `json:"bands"`
	Ties           int     `json:"ties"`
	Tongues        int     `json:"tongues"`
	Ribbons        int     `json:"ribbons"`
	// Stiffness is null where the unit is too large to be measured.
	Stiffness *stiffJSON `json:"stiffness"`
}

// A stiffJSON is how stiff the cut paper is, as shares of the uncut one.
type stiffJSON struct {
	Across   rounded `json:"across_pct"`
	Along    rounded `json:"along_pct"`
	Shear    rounded `json:"shear_pct"`
	Isotropy rounded `json:"isotropy_pct"`
}

// A holdJSON is how the paper is held.
type holdJSON struct {
	Way        string     `json:"way"`
	Sheets     []heldJSON `json:"sheets"`
	MissingMM2 rounded    `json:"missing_mm2"`
	ExtraMM2   rounded    `json:"extra_mm2"`
}

func holdDocument(w repeat.Work) holdJSON {
	doc := holdJSON{
		Way:        string(w.Order.Sheet.Hold.Way),
		MissingMM2: rounded(w.Sheet.Cover.MissingMM2), ExtraMM2: rounded(w.Sheet.Cover.ExtraMM2),
	}
	for _, s := range w.Sheet.Set() {
		j := heldJSON{
			CutOuts: len(s.CutOuts), OpenAreaPct: rounded(s.OpenPct), WebsBelowLimit: len(s.Webs.Below),
			Islands: len(s.Paths.Islands), Bands: len(s.Paths.Bands), Ties: len(s.Ties.Ties),
			Tongues: len(s.Tongues), Ribbons: len(s.Ribbons),
		}
		if k := s.Stiff; s.StiffFound {
			j.Stiffness = &stiffJSON{
				rounded(100 * k.Across.Modulus), rounded(100 * k.Along.Modulus), rounded(100 * k.Shear), rounded(100 * k.Isotropy),
			}
		}
		if s.Webs.Found {
			narrowest := mm(s.Webs.Narrowest.Width)
			j.NarrowestWeb = &narrowest
		}
		doc.Sheets = append(doc.Sheets, j)
	}
	return doc
}

// holdRows tells how the paper is held where something was added to the drawing.
func holdRows(row func(name, format string, args ...any), w repeat.Work) {
	s := w.Sheet
	if k := s.Stiff; s.StiffFound {
		row("stiffness", "%.1f %% of the uncut paper across, %.1f %% along, %.1f %% in shear", 100*k.Across.Modulus, 100*k.Along.Modulus, 100*k.Shear)
	}
	if len(s.Tongues)+len(s.Ribbons) > 0 {
		row("tongues, ribbons", "%d, %d", len(s.Tongues), len(s.Ribbons))
	}
	if len(s.Ties.Ties) > 0 {
		row("ties", "%d a unit, for %s", len(s.Ties.Ties), counted(len(s.Ties.Islands), "island"))
	}
	if s.Second == nil {
		return
	}
	two := s.Second
	row("second sheet", "%d cut-outs, open area %.2f %%, %s", len(two.CutOuts), two.OpenPct, counted(len(two.Ties.Ties), "tie"))
	if two.Webs.Found {
		row("  narrowest web", "%s; %d below the limit of %s", long(two.Webs.Narrowest.Width), len(two.Webs.Below), long(two.Webs.Limit))
	}
	row("  islands, bands", "%d, %d", len(two.Paths.Islands), len(two.Paths.Bands))
	row("both together", "%.4f mm² of the design uncut, %.4f mm² beside it", s.Cover.MissingMM2, s.Cover.ExtraMM2)
}

// counted writes a count with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
