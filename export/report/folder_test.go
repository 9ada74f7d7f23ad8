package report

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat"
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

// Files are written several at a time or one after the other; the bytes are the same.
func TestTheSameOrderGivesTheSameBytes(t *testing.T) {
	o := dotOrder(t, 5, 2)
	w := built(t, o)
	var folders []string
	for _, cores := range []int{1, 4, 4} {
		before := runtime.GOMAXPROCS(cores)
		folder := t.TempDir()
		_, err := JobFolder(t.Context(), built(t, o), folder, Options{}, nil)
		runtime.GOMAXPROCS(before)
		if err != nil {
			t.Fatal(err)
		}
		folders = append(folders, folder)
	}
	for _, name := range Names(w) {
		a, errA := os.ReadFile(filepath.Join(folders[0], name))
		for _, other := range folders[1:] {
			b, errB := os.ReadFile(filepath.Join(other, name))
			if errA != nil || errB != nil || len(a) == 0 || !bytes.Equal(a, b) {
				t.Errorf("%s: %d and %d bytes differ (%v, %v)", name, len(a), len(b), errA, errB)
			}
		}
	}
}

// old puts files of other content into a folder, under every third name of the job.
func old(t *testing.T, w repeat.Work, folder string) map[string]string {
	t.Helper()
	was := map[string]string{}
	for i, name := range Names(w) {
		if i%3 != 0 {
			continue
		}
		was[name] = "of the last job: " + name
		if err := os.WriteFile(filepath.Join(folder, name), []byte(was[name]), 0o640); err != nil {
			t.Fatal(err)
		}
	}
	return was
}

// asItWas fails unless a folder holds what it held, and nothing else.
func asItWas(t *testing.T, folder string, was map[string]string) {
	t.Helper()
	if got := listed(t, folder); len(got) != len(was) {
		t.Errorf("the folder holds %v; want %d files", got, len(was))
	}
	for name, want := range was {
		if got, err := os.ReadFile(filepath.Join(folder, name)); err != nil || string(got) != want {
			t.Errorf("%s holds %d bytes (%v), want %q", name, len(got), err, want)
		}
	}
}

func TestAStoppedJobLeavesTheFolderAsItWas(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	for _, after := range []int{1, 3, len(Names(w)) - 1} {
		folder := t.TempDir()
		was := old(t, w, folder)
		ctx, stop := context.WithCancel(t.Context())
		files, err := JobFolder(ctx, w, folder, Options{Force: true}, func(done, _ int, _ string) {
			if done == after {
				stop()
			}
		})
		stop()
		if !errors.Is(err, context.Canceled) || len(files) != 0 {
			t.Errorf("stopped after %d: told of %v and %v, want %v", after, files, err, context.Canceled)
		}
		asItWas(t, folder, was)
	}
}

// TestAFileThatCanNotBeReplacedKeepsAllTheOthersOld: a folder lies where the last
// file should go, so nothing is written at all.
func TestAFileThatCanNotBeReplacedKeepsAllTheOthersOld(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	folder := t.TempDir()
	was := old(t, w, folder)
	if err := os.Remove(filepath.Join(folder, "README.txt")); err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	delete(was, "README.txt")
	if err := os.Mkdir(filepath.Join(folder, "README.txt"), 0o755); err != nil {
		t.Fatal(err)
	}
	_, err := JobFolder(t.Context(), w, folder, Options{Force: true}, nil)
	if err == nil || !strings.Contains(err.Error(), "README.txt") || !strings.Contains(err.Error(), "the folder is as it was") {
		t.Errorf("error %v; want one that names README.txt and says that nothing was changed", err)
	}
	if err := os.Remove(filepath.Join(folder, "README.txt")); err != nil {
		t.Fatal(err)
	}
	asItWas(t, folder, was)
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
