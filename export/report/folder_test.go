package report

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
)

// listed returns the names in a folder, hidden ones too.
func listed(t testing.TB, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func sorted(names []string) []string {
	names = slices.Clone(names)
	slices.Sort(names)
	return names
}

func TestAJobFolderHoldsAllItsNames(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	folder := filepath.Join(t.TempDir(), "made", "on", "the", "way")
	var seen []string
	files, err := JobFolder(t.Context(), w, folder, Options{}, func(done, of int, name string) {
		seen = append(seen, fmt.Sprintf("%d of %d %s", done, of, name))
	})
	if err != nil {
		t.Fatal(err)
	}
	var paths, told []string
	for i, name := range Names(w) {
		paths = append(paths, filepath.Join(folder, name))
		told = append(told, fmt.Sprintf("%d of %d %s", i+1, len(Names(w)), name))
	}
	if !slices.Equal(files, paths) || !slices.Equal(seen, told) {
		t.Errorf("wrote %v and told %v; want %v and %v", files, seen, paths, told)
	}
	if got := listed(t, folder); !slices.Equal(got, sorted(Names(w))) {
		t.Errorf("the folder holds %v, want %v", got, sorted(Names(w)))
	}
}

func TestTheSameOrderGivesTheSameBytes(t *testing.T) {
	o := dotOrder(t, 5, 2)
	w := built(t, o)
	var flat []string
	for _, name := range Names(w) {
		if !strings.HasSuffix(name, ".png") {
			flat = append(flat, name)
		}
	}
	folders := []string{t.TempDir(), t.TempDir()}
	for _, folder := range folders {
		if _, err := JobFolder(t.Context(), built(t, o), folder, Options{Only: flat}, nil); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range flat {
		a, errA := os.ReadFile(filepath.Join(folders[0], name))
		b, errB := os.ReadFile(filepath.Join(folders[1], name))
		if errA != nil || errB != nil || len(a) == 0 || !bytes.Equal(a, b) {
			t.Errorf("%s: %d and %d bytes differ (%v, %v)", name, len(a), len(b), errA, errB)
		}
	}
	for _, of := range Pictures(w) {
		a, errA := Picture(built(t, o), of, 400)
		b, errB := Picture(built(t, o), of, 400)
		if errA != nil || errB != nil || !bytes.Equal(a.Pix, b.Pix) {
			t.Errorf("two pictures of the %s differ (%v, %v)", of, errA, errB)
		}
	}
}

func TestAStoppedJobLeavesNoHalfFile(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	folder := t.TempDir()
	ctx, stop := context.WithCancel(t.Context())
	files, err := JobFolder(ctx, w, folder, Options{}, func(done, _ int, _ string) {
		if done == 3 {
			stop()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("error %v, want %v", err, context.Canceled)
	}
	if got := listed(t, folder); !slices.Equal(got, sorted(Names(w)[:3])) || len(files) != 3 {
		t.Errorf("left %v and told of %v; want %v", got, files, Names(w)[:3])
	}
}

// TestAFileIsGivenUpInTheMiddle stops while a file is being written.
func TestAFileIsGivenUpInTheMiddle(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	var out bytes.Buffer
	w := stoppable{ctx, &out}
	if n, err := w.Write([]byte("half")); n != 4 || err != nil {
		t.Fatal(n, err)
	}
	stop()
	if n, err := w.Write([]byte("rest")); n != 0 || !errors.Is(err, context.Canceled) {
		t.Errorf("wrote %d bytes, %v; want 0 and %v", n, err, context.Canceled)
	}
}

func TestNothingIsOverwrittenOrBegunWithoutForce(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	folder := t.TempDir()
	last := filepath.Join(folder, "README.txt")
	if err := os.WriteFile(last, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := JobFolder(t.Context(), w, folder, Options{}, nil)
	if err == nil || !strings.Contains(err.Error(), "README.txt") {
		t.Errorf("error %v, want one that names README.txt", err)
	}
	if got := listed(t, folder); len(got) != 1 {
		t.Errorf("the folder holds %v, want README.txt alone", got)
	}
	if _, err := JobFolder(t.Context(), w, folder, Options{Force: true, Only: []string{"README.txt", "findings"}}, nil); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(last); bytes.Equal(got, []byte("mine")) || len(listed(t, folder)) != 2 {
		t.Errorf("the folder holds %v and README.txt says %q", listed(t, folder), got)
	}
}

func TestOptionsThatDontExistAreRefusedByName(t *testing.T) {
	for _, c := range []struct {
		opt  Options
		says string
	}{
		{Options{Page: "A9"}, "A9"},
		{Options{Units: "ell"}, "ell"},
		{Options{Language: "xx"}, "xx"},
		{Options{Only: []string{"cut.svg", "poster.pdf"}}, "poster.pdf"},
	} {
		w := built(t, dotOrder(t, 20, 2))
		if err := c.opt.Check(w); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, want an error that names %s", c.opt, err, c.says)
		}
		folder := filepath.Join(t.TempDir(), "new")
		if _, err := JobFolder(t.Context(), w, folder, c.opt, nil); err == nil {
			t.Errorf("%+v: a job folder was written", c.opt)
		}
		if _, err := os.Stat(folder); err == nil {
			t.Errorf("%+v: the folder was made", c.opt)
		}
	}
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := JobFolder(t.Context(), built(t, dotOrder(t, 20, 2)), file, Options{}, nil); err == nil {
		t.Error("a job folder was written into a file")
	}
}

// TestPlacementsAreAddedUpOneStepAtATime reads the table back and walks it.
func TestPlacementsAreAddedUpOneStepAtATime(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	var out bytes.Buffer
	if err := WritePlacements(&out, w); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[0], ","); got != "n,y_mm,face,walk_x_mm,walk_y_mm" {
		t.Errorf("heads are %s", got)
	}
	if len(rows)-1 != len(w.Run.Placements) || len(rows) < 60 {
		t.Fatalf("%d rows for %d placements", len(rows)-1, len(w.Run.Placements))
	}
	for i, row := range rows[1:] {
		y, err := geom.ParseLength(row[1], geom.MMUnit)
		want := w.Run.Board.Start + w.Run.Step*geom.Length(i)
		if row[0] != fmt.Sprint(i+1) || err != nil || (y-want).Abs() > 50 {
			t.Errorf("row %d is %v, want %d at %s mm", i+1, row, i+1, want)
		}
	}
}

func TestFindingsComeWorstFirstWithPlaceAndRemedy(t *testing.T) {
	w := built(t, dotOrder(t, 20, 2))
	w.Findings = []check.Finding{
		{Code: "small", Severity: check.Note, Domain: check.OnSheet, Text: "A note.", Remedy: "Nothing."},
		{Code: "large", Severity: check.Fault, Domain: check.OnCloth, At: geom.PtMM(1, 378.787879), Text: "A fault.", Remedy: "Mend it."},
	}
	var out bytes.Buffer
	if err := WriteFindings(&out, w, Options{Units: inSun}); err != nil {
		t.Fatal(err)
	}
	want := w.Order.Title + `

fault  large
    on the cloth at 0.026 kujira sun across, 10.000 kujira sun along
    A fault.
    Mend it.

note  small
    on the sheet at 0.0000 kane sun across, 0.0000 kane sun along
    A note.
    Nothing.

`
	if out.String() != want {
		t.Errorf("got\n%s\nwant\n%s", out.String(), want)
	}
}
