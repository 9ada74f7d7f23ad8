package check

import (
	"fmt"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// unmatched tells which wishes for the garment are not reached, and why. What the
// back centre lacks, backCentre tells.
func unmatched(m Measures, _ Limits) []Finding {
	var all []Finding
	for _, w := range m.Dressed.Matches {
		if w.Reached || w.Name == cloth.BackCentre && w.Goal == cloth.RunOn {
			continue
		}
		f := Finding{Code: "seam-unmatched", Severity: Warning, Domain: OnCloth, At: seamPlace(m.Dressed, w.Name)}
		switch {
		case w.Name == cloth.AvoidName:
			f.Code, f.Text = "turn-unavoided", "The panels can't be laid clear of the turn of the board: "+reason(w)+"."
		case w.Goal == "":
			f.Code, f.Text = "motif-unplaced", fmt.Sprintf("No motif falls at the %s; the nearest is off by %s across and %s along: %s.",
				w.Name, mm(w.Off.X), mm(w.Off.Y), reason(w))
		default:
			f.Text = fmt.Sprintf("The seam %s can't be made to %s; it is off by %s across and %s along: %s.",
				w.Name, goalWords[w.Goal], mm(w.Off.X), mm(w.Off.Y), reason(w))
		}
		f.Remedy = matchRemedy(w)
		all = append(all, f)
	}
	return all
}

var goalWords = map[cloth.Goal]string{
	cloth.RunOn: "run on", cloth.Staggered: "be staggered", cloth.Apart: "keep motifs apart",
}

// reason says in words why a wish isn't reached.
func reason(w cloth.Match) string {
	switch w.Why.Reason {
	case cloth.OffAcross:
		return fmt.Sprintf("what lies across is fixed and misses by %s", mm(w.Why.Across.Abs()))
	case cloth.InTheWay:
		return "it can't be had together with " + strings.Join(w.Why.With, ", ")
	case cloth.TooLong:
		return "it takes more cloth than there is"
	case cloth.TooFine:
		return "the pattern repeats too closely"
	}
	return "it isn't reached"
}

func matchRemedy(w cloth.Match) string {
	switch w.Why.Reason {
	case cloth.OffAcross:
		return widthRemedy(w)
	case cloth.InTheWay:
		return "Put it before them, or give one of them up."
	case cloth.TooFine:
		return "Ask for a smaller distance, or for a staggered seam."
	}
	return "Order a longer bolt, give up another wish, or let the panels lie in any order."
}

// widthRemedy says what would let a seam meet across.
func widthRemedy(w cloth.Match) string {
	if w.Why.Width == 0 {
		return fmt.Sprintf("Fit the pattern so that it moves by %s across, or allow as much more at the seam.", mm(w.Why.Across.Abs()))
	}
	way := "wider"
	if w.Why.Width < 0 {
		way = "narrower"
	}
	return fmt.Sprintf("Fit the pattern to the width between the seams, or use finished cloth %s %s, so that it runs on across.", mm(w.Why.Width.Abs()), way)
}

// seamPlace returns the corner of the first panel of a seam.
func seamPlace(d cloth.Dressed, name string) geom.Point {
	for _, s := range d.Seams {
		if s.Name == name {
			return s.At
		}
	}
	return geom.Point{}
}
