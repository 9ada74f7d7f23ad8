package ui

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

// findSelect returns the choice of a form that offers a word.
func findSelect(f *form, word string) *widget.Select {
	for _, row := range f.rows {
		c, ok := row.(*fyne.Container)
		if !ok {
			continue
		}
		for _, o := range c.Objects {
			if s, ok := o.(*widget.Select); ok && slices.Contains(s.Options, word) {
				return s
			}
		}
	}
	return nil
}

func TestToolsAreAddedChangedDeletedAndUndone(t *testing.T) {
	w := onBench(t, "leaf")
	w.openRack()
	e := w.rack
	e.number.SetText("7")
	e.size.SetText("0,45")
	e.add()
	kept := func() bench.Rack {
		c, err := w.store.Cutter()
		if err != nil {
			t.Fatal(err)
		}
		return c.Rack
	}
	if r := kept(); len(r.Tools) != 1 || r.Tools[0].Number != "7" || r.Tools[0].Size != geom.MM(0.45) {
		t.Fatalf("the rack holds %+v: %s", r.Tools, e.told.Text)
	}
	e.add()
	if len(kept().Tools) != 1 || !strings.Contains(e.told.Text, `a tool "7" already`) {
		t.Errorf("a second 7: %s", e.told.Text)
	}
	e.table.Select(widget.TableCellID{Row: 0})
	e.size.SetText("0.5 mm")
	e.change()
	e.remove()
	if len(kept().Tools) != 0 {
		t.Error("the tool is still there")
	}
	e.undo()
	if r := kept(); len(r.Tools) != 1 || r.Tools[0].Size != geom.MM(0.5) {
		t.Errorf("undone, the rack holds %+v", r.Tools)
	}
	for _, c := range commands() { // Ctrl+Z
		if c.menu == "Edit" && strings.HasPrefix(c.name(w), "Undo") {
			w.run(c)
		}
	}
	if r := kept(); len(r.Tools) != 1 || r.Tools[0].Size != geom.MM(0.45) {
		t.Errorf("undone by the key, the rack holds %+v", r.Tools)
	}
	e.redo()
	if r := kept(); r.Tools[0].Size != geom.MM(0.5) {
		t.Error("redo does nothing")
	}
	e.dialog.Hide()
	if w.rack != nil {
		t.Error("the editor is still open")
	}
}

func TestARackOfThousandsIsBroughtInAndSorted(t *testing.T) {
	w := onBench(t, "leaf")
	var file strings.Builder
	file.WriteString("kind,number,size_mm\n")
	for i := range 5000 {
		file.WriteString("awl," + strconv.Itoa(i+1) + "," + strconv.Itoa(1+(i*37)%90) + "\n")
	}
	name := filepath.Join(t.TempDir(), "mine.csv")
	if err := os.WriteFile(name, []byte(file.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	w.openRack()
	w.rack.bringIn(name)
	w.rack.sortBy(bench.BySize)
	r := w.cutter.Rack
	if len(r.Tools) != 5000 || r.Tools[w.rack.order[0]].Size != geom.MM(1) || r.Tools[w.rack.order[4999]].Size != geom.MM(90) {
		t.Fatalf("%d tools: %s", len(r.Tools), w.rack.told.Text)
	}
	out := filepath.Join(t.TempDir(), "out.csv")
	if !w.WriteRack(out) {
		t.Fatal(w.status.Text)
	}
	back, err := fromFile(out, bench.ReadRack)
	if err != nil || len(back.Tools) != 5000 || back.Tools[4999].Number != "5000" {
		t.Errorf("%d tools read back: %v", len(back.Tools), err)
	}
	if err := os.WriteFile(name, []byte("kind,number,size_mm\nawl,1,wide\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if w.rack.bringIn(name); !strings.Contains(w.rack.told.Text, "line 2, size_mm") || len(w.cutter.Rack.Tools) != 5000 {
		t.Errorf("a bad file says %q", w.rack.told.Text)
	}
}

func TestALimitOfOnesOwnIsKept(t *testing.T) {
	w := onBench(t, "leaf")
	w.openLimits()
	row := w.rack.limits[0]
	row.pile.SetText("5")
	row.pile.hand()
	row.hole.SetText("wide")
	row.hole.hand()
	if l := w.cutter.Rack.Limit(bench.Kiribori); l.Pile != 5 || w.cutter.Rack.Owns(bench.Kiribori, bench.HoleSize) || row.hole.Text != "" {
		t.Errorf("limits %+v, the field says %q", l, row.hole.Text)
	}
}
