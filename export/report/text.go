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
func WriteFindings(out io.Writer, w repeat.Work, opt Options) error {
	f := opt.with(w).figures()
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", f.title(w))
	writeHold(&b, w, f)
	if len(w.Findings) == 0 {
		fmt.Fprintln(&b, f.say("Nothing was found that needs a look."))
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
	fmt.Fprintf(b, "%s  %s\n", f.say(string(x.Severity)), x.Code)
	fmt.Fprintln(b, "    "+f.say("on the %s at %s across, %s along", f.say(string(x.Domain)), r.with(x.At.X), r.with(x.At.Y)))
	for _, text := range []string{x.Text, x.Remedy} {
		for _, line := range wrapColumns(f.lang.Retell(text), 92) {
			fmt.Fprintf(b, "    %s\n", line)
		}
	}
	b.WriteByte('\n')
}

// wrapColumns parts a text into lines of at most n columns, of which a Japanese
// letter takes two.
func wrapColumns(text string, n int) []string {
	var lines []string
	line := ""
	for _, p := range pieces(text) {
		joined := p.behind(line)
		if columns(joined) > n && line != "" {
			lines = append(lines, line)
			joined = p.text
		}
		line = joined
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

func columns(text string) int {
	n := 0
	for _, r := range text {
		n++
		if eastern(r) {
			n++
		}
	}
	return n
}

// writeIndex writes what each file of the folder is, those that were asked for.
func writeIndex(out io.Writer, w repeat.Work, opt Options) error {
	f := opt.figures()
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", f.title(w))
	if note := f.lang.Retell(strings.TrimSpace(w.Order.Note)); note != "" {
		for paragraph := range strings.Lines(note) {
			for _, line := range wrapColumns(paragraph, 92) {
				b.WriteString(line + "\n")
			}
		}
		b.WriteByte('\n')
	}
	for _, e := range entries(w) {
		if opt.wants(e.name) {
			fmt.Fprintf(&b, "%-25s %s\n", e.name, f.say(e.about))
		}
	}
	b.WriteByte('\n')
	for _, line := range wrapColumns(f.say("Every sheet is at true scale and at cut size. Print at 100 %% and measure the check square before you paste or cut: %s on both sides.", f.checkText()), 78) {
		b.WriteString(line + "\n")
	}
	b.WriteByte('\n')
	for _, c := range cautions(f) {
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
