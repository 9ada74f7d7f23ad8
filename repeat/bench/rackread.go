package bench

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"tsugime/repeat/geom"
)

// A Fault is what is wrong with a file of tools or of finished jobs, and where.
type Fault struct {
	Line   int    // from 1; 0 for the file as a whole
	Column string // the name of the value; "" for the whole line
	Text   string // what is wrong and what to do
}

// Error puts place and text on one line.
func (f *Fault) Error() string {
	switch {
	case f.Line == 0:
		return f.Text
	case f.Column == "":
		return fmt.Sprintf("line %d: %s", f.Line, f.Text)
	}
	return fmt.Sprintf("line %d, %s: %s", f.Line, f.Column, f.Text)
}

// rackColumns is the header of a rack file. Only kind must be there; the rest may
// stand in any order or be left out.
var rackColumns = []string{"kind", "number", "size_mm", "web_mm", "pile", "outline_mm", "condition", "note"}

// maxFile bounds what is read of a file, far above a rack of all its tools.
const maxFile = 32 << 20

// ReadRack reads a rack as comma-separated values (RFC 4180) in UTF-8: a header
// that names the columns with their units, then a line for each tool:
//
//	kind,number,size_mm,web_mm,pile,outline_mm,condition,note
//	awl,7,0.45,,,,sharp,
//	punch,plum 2,,,,M0 0H2V1H0Z,worn,for the spring set
//	kiribori,,0.35,0.3,8,,,limits that are your own
//
// A line whose kind is a method gives limits: the smallest hole, the finest web,
// the most sheets in a pile. Outlines are SVG path data in millimetres. It reads
// at most 10,000 tools; its errors are a *Fault, or the reader's own.
func ReadRack(in io.Reader) (Rack, error) {
	var r Rack
	numbers := map[string]int{}
	err := readTable(in, rackColumns, func(row row) error {
		if m := Method(row.text("kind")); m.Known() {
			limit, err := row.limit(m)
			r.Limits = append(r.Limits, limit)
			return err
		}
		t, err := row.tool()
		if err != nil {
			return err
		}
		if before := numbers[t.Number]; before > 0 {
			return row.fault("number", "%q is the tool of line %d already; give each a number of its own", t.Number, before)
		}
		numbers[t.Number] = row.line
		if r.Tools = append(r.Tools, t); len(r.Tools) > maxTools {
			return row.fault("", "more than %d tools; keep the rack to those that are used", maxTools)
		}
		return nil
	})
	if err != nil {
		return Rack{}, err
	}
	return r, nil
}

// A row is one line of a table.
type row struct {
	line   int
	fields map[string]string
}

func (r row) text(column string) string { return strings.TrimSpace(r.fields[column]) }

func (r row) fault(column, format string, args ...any) *Fault {
	return &Fault{r.line, column, fmt.Sprintf(format, args...)}
}

// length reads millimetres; an empty field is zero.
func (r row) length(column string) (geom.Length, error) {
	text := r.text(column)
	if text == "" {
		return 0, nil
	}
	l, err := geom.ParseLength(text, geom.MMUnit)
	if err != nil {
		return 0, r.fault(column, "%v", err)
	}
	if l < 0 {
		return 0, r.fault(column, "%s is below zero; give millimetres", text)
	}
	return l, nil
}

// count reads a whole number from 0 to most; an empty field is zero.
func (r row) count(column string, most int) (int, error) {
	text := r.text(column)
	if text == "" {
		return 0, nil
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n > most {
		return 0, r.fault(column, "%.40q is no whole number up to %d", text, most)
	}
	return n, nil
}

func (r row) tool() (Tool, error) {
	t := Tool{
		Kind: Kind(r.text("kind")), Number: r.text("number"),
		Condition: Condition(r.text("condition")), Note: r.text("note"),
	}
	var err error
	if t.Size, err = r.length("size_mm"); err != nil {
		return t, err
	}
	if path := r.text("outline_mm"); path != "" {
		if t.Outline, err = geom.ParsePathData(path); err != nil {
			return t, r.fault("outline_mm", "%v", err)
		}
	}
	if value, text := t.check(); value != "" {
		return t, r.fault(value, "%s", text)
	}
	return t, nil
}

func (r row) limit(m Method) (Limit, error) {
	l := Limit{Method: m, Source: Own}
	var err error
	if l.Hole, err = r.length("size_mm"); err != nil {
		return l, err
	}
	if l.Web, err = r.length("web_mm"); err != nil {
		return l, err
	}
	l.Pile, err = r.count("pile", mostPile)
	return l, err
}

// readTable reads comma-separated values whose first line names the columns.
func readTable(in io.Reader, columns []string, each func(row) error) error {
	counted := &io.LimitedReader{R: in, N: maxFile + 1}
	table := csv.NewReader(counted)
	table.FieldsPerRecord = -1
	var names []string
	for {
		fields, err := table.Read()
		if counted.N <= 0 {
			return &Fault{Text: fmt.Sprintf("the file is larger than %d MB; keep it smaller", maxFile>>20)}
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return parseFault(err)
		}
		line, _ := table.FieldPos(0)
		if names == nil {
			if names, err = header(line, fields, columns); err != nil {
				return err
			}
			continue
		}
		if len(fields) > len(names) {
			return &Fault{line, "", fmt.Sprintf("%d values under %d columns; put values that hold a comma into quotes", len(fields), len(names))}
		}
		r := row{line, make(map[string]string, len(fields))}
		for i, f := range fields {
			r.fields[names[i]] = f
		}
		if err := each(r); err != nil {
			return err
		}
	}
	if names == nil {
		return &Fault{Text: "the file is empty; its first line names the columns: " + strings.Join(columns, ",")}
	}
	return nil
}

// header checks the names of the columns.
func header(line int, fields, columns []string) ([]string, error) {
	names := make([]string, len(fields))
	for i, f := range fields {
		name := strings.ToLower(strings.TrimSpace(strings.TrimPrefix(f, "\ufeff")))
		if !slices.Contains(columns, name) {
			return nil, &Fault{line, "", fmt.Sprintf("there is no column %.40q; the first line names columns of %s", name, strings.Join(columns, ","))}
		}
		if slices.Contains(names, name) {
			return nil, &Fault{line, name, "the column comes twice; keep one"}
		}
		names[i] = name
	}
	if !slices.Contains(names, columns[0]) {
		return nil, &Fault{line, columns[0], "the column is missing; the first line names columns of " + strings.Join(columns, ",")}
	}
	return names, nil
}

// parseFault turns what the reader of tables says into a Fault.
func parseFault(err error) error {
	var parse *csv.ParseError
	if errors.As(err, &parse) {
		return &Fault{parse.Line, "", fmt.Sprintf("%v; close every quote and double those inside", parse.Err)}
	}
	return err
}
