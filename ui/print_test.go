package ui

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/report"
)

// standsFor puts commands in place of the system's: each notes what it is given and keeps
// a copy of the last file.
func standsFor(t *testing.T, names ...string) (folder string) {
	t.Helper()
	folder = t.TempDir()
	for _, name := range names {
		script := fmt.Sprintf("#!/bin/sh\nfor last; do :; done\nprintf '%%s ' \"$@\" >>'%[1]s/%[2]s.given'\ncp \"$last\" '%[1]s/' 2>/dev/null\nexit 0\n", folder, name)
		if err := os.WriteFile(filepath.Join(folder, name), []byte(script), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	t.Setenv("PATH", folder+":"+os.Getenv("PATH"))
	return folder
}

func selects(w *Window) (all []*widget.Select) {
	for _, o := range test.LaidOutObjects(w.win.Canvas().Overlays().Top()) {
		if s, ok := o.(*widget.Select); ok {
			all = append(all, s)
		}
	}
	return all
}

// The chosen sheet goes to lp as a PDF file of its own paper, whose pages poppler's
// pdfinfo measures; what was chosen is chosen the next time.
func TestASheetGoesToThePrinterAtItsSize(t *testing.T) {
	folder := standsFor(t, "lp", "lpstat")
	w := onBench(t, "small-dot")
	settle(t, w)
	w.print()
	all := selects(w)
	if len(all) != 3 {
		t.Fatalf("%d lists to choose from", len(all))
	}
	name := all[0].Options[1]
	all[0].SetSelected(name)
	all[1].SetSelected("A3")
	fields := fieldsOf(w)
	fields[0].SetText("1, 1")
	fields[1].SetText("2")
	answer(t, w, "Print")
	settleTask(t, w)
	given, err := os.ReadFile(filepath.Join(folder, "lp.given"))
	if err != nil {
		t.Fatalf("%v; the window says %q", err, w.status.Text)
	}
	for _, want := range []string{"-n 2", "-P 1,1", "media=iso_a3_297x420mm", "print-scaling=none", name} {
		if !strings.Contains(string(given), want) {
			t.Errorf("lp was given %q without %s", given, want)
		}
	}
	onPages(t, filepath.Join(folder, name), "A3")
	if !strings.Contains(w.status.Text, "1 sheets went") {
		t.Errorf("the window says %q", w.status.Text)
	}
	w.print()
	selects(w)[0].SetSelectedIndex(0)
	answer(t, w, "Print")
	settleTask(t, w)
	for _, name := range report.Paged(w.work) {
		onPages(t, filepath.Join(folder, name), "A3")
	}
	w.print()
	selects(w)[0].SetSelected(name)
	answer(t, w, "Print")
	settleTask(t, w)
	w.print()
	if all = selects(w); all[0].Selected != name || all[1].Selected != "A3" {
		t.Errorf("the next time %q and %q are chosen", all[0].Selected, all[1].Selected)
	}
}

// onPages fails unless poppler finds every page of a PDF file to be of a size.
func onPages(t *testing.T, file, size string) {
	t.Helper()
	out, err := exec.Command("pdfinfo", "-l", "-1", file).CombinedOutput()
	if _, missing := exec.LookPath("pdfinfo"); missing != nil {
		t.Fatal("pdfinfo is missing: apt-get install -y poppler-utils")
	}
	if err != nil {
		t.Fatalf("%s: %v\n%s", file, err, out)
	}
	pages := 0
	for line := range strings.Lines(string(out)) {
		if strings.HasPrefix(line, "Page ") && strings.Contains(line, "size:") {
			if pages++; !strings.Contains(line, "("+size+")") {
				t.Errorf("%s: %s, want %s", filepath.Base(file), strings.TrimSpace(line), size)
			}
		}
	}
	if pages == 0 {
		t.Errorf("%s has no pages:\n%s", file, out)
	}
}

func TestASheetOpensInTheViewer(t *testing.T) {
	folder := standsFor(t, "xdg-open", "lpstat")
	w := onBench(t, "small-dot")
	settle(t, w)
	w.print()
	selects(w)[0].SetSelectedIndex(1)
	answer(t, w, "Open in the Viewer")
	settleTask(t, w)
	given, err := os.ReadFile(filepath.Join(folder, "xdg-open.given"))
	if err != nil {
		t.Fatalf("%v; the window says %q", err, w.status.Text)
	}
	file := strings.TrimSpace(string(given))
	defer os.RemoveAll(filepath.Dir(file))
	if _, err := os.Stat(file); err != nil {
		t.Errorf("what the viewer was given is gone: %v", err)
	}
}

func TestWhatCantBePrintedIsTold(t *testing.T) {
	w := onBench(t, "small-dot")
	settle(t, w)
	for _, c := range [][2]string{{"3-1", "1"}, {"a", "1"}, {"", "0"}, {"", "many"}} {
		w.print()
		for i, o := range fieldsOf(w) {
			o.SetText(c[i])
		}
		before := len(w.win.Canvas().Overlays().List())
		answer(t, w, "Print")
		if got := len(w.win.Canvas().Overlays().List()); got != before+1 {
			t.Errorf("pages %q, %q copies: nothing was told", c[0], c[1])
		}
		for w.win.Canvas().Overlays().Top() != nil {
			w.win.Canvas().Overlays().Remove(w.win.Canvas().Overlays().Top())
		}
	}
}

func fieldsOf(w *Window) (fields []*widget.Entry) {
	for _, o := range test.LaidOutObjects(w.win.Canvas().Overlays().Top()) {
		if e, ok := o.(*widget.Entry); ok {
			fields = append(fields, e)
		}
	}
	return fields
}
