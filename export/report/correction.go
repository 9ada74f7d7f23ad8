package report

import (
	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// A correction makes up for a printer: what 100 mm along the short and the long edge
// of a page measured that it printed at 100 %, 0 where that was not measured.
type correction struct{ short, long geom.Length }

func (o Options) correction(w repeat.Work) correction {
	o = o.with(w)
	return correction{o.PrintedAcross, o.PrintedAlong}
}

// stretch returns by how much a page is drawn larger so that it prints true. A page
// that lies on its long side goes through the printer turned.
func (c correction) stretch(page geom.Point) export.Stretch {
	share := func(printed geom.Length) float64 {
		if printed == 0 {
			return 0
		}
		return float64(checkLength)/float64(printed) - 1
	}
	s := export.Stretch{Across: share(c.short), Along: share(c.long)}
	if page.X > page.Y {
		s.Across, s.Along = s.Along, s.Across
	}
	return s
}

// on returns a book whose pages print true.
func (c correction) on(b export.Book) export.Book {
	for i, p := range b.Pages {
		b.Pages[i].Stretch = c.stretch(geom.Point{X: p.Drawing.Width, Y: p.Drawing.Height})
	}
	return b
}

// note says what was corrected for; "" where nothing is.
func (c correction) note(f figures) string {
	if c == (correction{}) {
		return ""
	}
	printed := func(l geom.Length) string {
		if l == 0 {
			l = checkLength
		}
		return f.ruler(geom.MMUnit, 2).number(l)
	}
	return f.say("corrected for a printer's %s × %s mm", printed(c.short), printed(c.long))
}
