package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/geom"
)

// WritePlacements writes every placement as comma-separated values by RFC 4180,
// lines ended by CR LF: its number from 1, where it starts on the board's cloth,
// its face, and its walk, in millimetres whatever the sheets are lettered in.
func WritePlacements(out io.Writer, w repeat.Work) error {
	c := csv.NewWriter(out)
	c.UseCRLF = true
	rows := [][]string{{"n", "y_mm", "face", "walk_x_mm", "walk_y_mm"}}
	mm := func(l geom.Length) string { return string(l.AppendMM(nil, 4)) }
	for _, p := range w.Run.Placements {
		rows = append(rows, []string{fmt.Sprint(p.N + 1), mm(p.Y), string(p.Face), mm(p.WalkX), mm(p.WalkY)})
	}
	return c.WriteAll(rows)
}

// WriteFindings writes what was measured on ties and on the sheets of a split,
// and then what was found, the worst first, each with its place and its remedy.
func WriteFindings(out io.Writer, w repeat.Work, units string) error {
	f := figuresIn(units)
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", title(w))
	writeHold(&b, w, f)
	if len(w.Findings) == 0 {
		b.WriteString("Nothing was found that needs a look.\n")
	}
	for rank := check.Fault.Rank(); rank >= check.Note.Rank(); rank-- {
		for _, x := range w.Findings {
			if x.Severity.Rank() == rank {
				writeFinding(&b, x, f)
			}
		}
	}
	_, err := io.WriteString(out, b.String())
	return err
}

func writeFinding(b *strings.Builder, x check.Finding, f figures) {
	r := f.sheet
	if x.Domain == check.OnCloth {
		r = f.cloth
	}
	fmt.Fprintf(b, "%s  %s\n", x.Severity, x.Code)
	fmt.Fprintf(b, "    on the %s at %s across, %s along\n", x.Domain, r.with(x.At.X), r.with(x.At.Y))
	for _, text := range []string{x.Text, x.Remedy} {
		for _, line := range wrapColumns(text, 92) {
			fmt.Fprintf(b, "    %s\n", line)
		}
	}
	b.WriteByte('\n')
}

// wrapColumns parts a text at spaces into lines of at most n letters.
func wrapColumns(text string, n int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		joined := strings.TrimSpace(line + " " + word)
		if len([]rune(joined)) > n && line != "" {
			lines = append(lines, line)
			joined = word
		}
		line = joined
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// writeIndex writes what each file of the folder is, those that were asked for.
func writeIndex(out io.Writer, w repeat.Work, opt Options) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", title(w))
	if note := strings.TrimSpace(w.Order.Note); note != "" {
		for paragraph := range strings.Lines(note) {
			for _, line := range wrapColumns(paragraph, 92) {
				b.WriteString(line + "\n")
			}
		}
		b.WriteByte('\n')
	}
	for _, e := range entries(w) {
		if opt.wants(e.name) {
			fmt.Fprintf(&b, "%-25s %s\n", e.name, e.about)
		}
	}
	fmt.Fprintf(&b, "\nEvery sheet is at true scale and at cut size. Print at 100 %% and measure the\ncheck square before you paste or cut: %s on both sides.\n\n", checkText)
	for _, c := range cautions() {
		for i, line := range wrapColumns(c, 76) {
			lead := "  "
			if i == 0 {
				lead = "- "
			}
			b.WriteString(lead + line + "\n")
		}
	}
	_, err := io.WriteString(out, b.String())
	return err
}
