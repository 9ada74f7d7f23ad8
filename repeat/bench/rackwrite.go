package bench

import (
	"encoding/csv"
	"io"
	"strconv"

	"tsugime/repeat/geom"
)

// WriteRack writes a rack as ReadRack reads it: the tools in their order, then the
// limits. The same rack gives the same bytes.
func WriteRack(out io.Writer, r Rack) error {
	table := csv.NewWriter(out)
	table.UseCRLF = true // RFC 4180, section 2
	rows := [][]string{rackColumns}
	for _, t := range r.Tools {
		outline := ""
		if t.Kind == Punch {
			outline = string(t.Outline.AppendPathData(nil, 6))
		}
		rows = append(rows, []string{string(t.Kind), t.Number, blankZero(t.Size), "", "", outline, string(t.Condition), t.Note})
	}
	for _, l := range r.Limits {
		pile := ""
		if l.Pile > 0 {
			pile = strconv.Itoa(l.Pile)
		}
		rows = append(rows, []string{string(l.Method), "", blankZero(l.Hole), blankZero(l.Web), pile, "", "", ""})
	}
	return table.WriteAll(rows)
}

func blankZero(l geom.Length) string {
	if l == 0 {
		return ""
	}
	return l.String()
}
