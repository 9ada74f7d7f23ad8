package session

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"tsugime/repeat/document"
)

// inFile returns what a keeper's file holds, if anything.
func inFile(k *Keeper) (Kept, bool) {
	k.disk.Lock()
	defer k.disk.Unlock()
	return read(k.file)
}

// soon waits until a keeper's file holds an order.
func soon(t *testing.T, k *Keeper, title string) Kept {
	t.Helper()
	for end := time.Now().Add(time.Minute); ; time.Sleep(time.Millisecond) {
		if kept, ok := inFile(k); ok && kept.Order.Title == title {
			return kept
		}
		if time.Now().After(end) {
			t.Fatalf("%q was not kept", title)
		}
	}
}

// crash lets the lock of a run go, as the system does when a process dies.
func crash(s Store) { s.run.lock.Close() }

func titles(left []*Left) []string {
	var all []string
	for _, l := range left {
		all = append(all, l.Order.Title)
	}
	return all
}

func TestWhatIsKeptStaysUntilItIsSaved(t *testing.T) {
	k := In(t.TempDir(), time.Millisecond).Keeper()
	if _, ok := inFile(k); ok {
		t.Fatal("something is kept at the start")
	}
	k.Keep("coat.tsugime", order("first"), true)
	k.Keep("coat.tsugime", order("second"), true)
	if kept := soon(t, k, "second"); kept.Path != "coat.tsugime" {
		t.Errorf("kept as %q, want coat.tsugime", kept.Path)
	}
	k.Keep("coat.tsugime", order("second"), false)
	if _, ok := inFile(k); ok {
		t.Error("a saved order is still kept")
	}
}

// Who edits without a pause is kept as well, by one delay after the first edit.
func TestEditUponEditIsKept(t *testing.T) {
	k := In(t.TempDir(), 20*time.Millisecond).Keeper()
	end := time.Now().Add(time.Minute)
	for {
		k.Keep("coat.tsugime", order("coat"), true)
		if _, ok := inFile(k); ok {
			return
		}
		if time.Now().After(end) {
			t.Fatal("nothing was kept between edits that follow each other")
		}
		time.Sleep(time.Millisecond)
	}
}

// Whatever is being written while an order is saved is gone afterwards.
func TestASavedOrderIsNeverKept(t *testing.T) {
	k := In(t.TempDir(), 0).Keeper()
	for range 300 {
		k.Keep("coat.tsugime", order("coat"), true)
		k.Keep("coat.tsugime", order("coat"), false)
		if _, ok := inFile(k); ok {
			t.Fatal("a saved order is kept")
		}
	}
	k.Keep("coat.tsugime", order("last"), true)
	soon(t, k, "last")
}

// keepNow keeps an order at once.
func keepNow(t *testing.T, k *Keeper, path string, o document.Order) {
	t.Helper()
	k.Keep(path, o, true)
	if err := k.Flush(); err != nil {
		t.Fatal(err)
	}
}

func TestTwoRunsKeepApartAndBothComeBack(t *testing.T) {
	folder := t.TempDir()
	one, two := In(folder, time.Hour), In(folder, time.Hour)
	coat, apron, belt := one.Keeper(), one.Keeper(), two.Keeper()
	for i, k := range []*Keeper{coat, apron, belt} {
		keepNow(t, k, fmt.Sprintf("%d.tsugime", i), order([]string{"coat", "apron", "belt"}[i]))
		when := time.Date(2026, 1, 1, 0, i, 0, 0, time.UTC)
		if err := os.Chtimes(k.file, when, when); err != nil {
			t.Fatal(err)
		}
	}
	next := In(folder, time.Hour)
	if got := titles(next.Left()); got != nil {
		t.Fatalf("of runs that go on %v are offered", got)
	}
	crash(one)
	if got, want := titles(next.Left()), []string{"apron", "coat"}; !slices.Equal(got, want) {
		t.Errorf("after one run's end are offered %v, want %v", got, want)
	}
	crash(two)
	if got, want := titles(In(folder, time.Hour).Left()), []string{"belt"}; !slices.Equal(got, want) {
		t.Errorf("beside a run that has taken two are offered %v, want %v", got, want)
	}
}

func TestWhatIsLeftLiesThereUntilItIsTakenOverOrDropped(t *testing.T) {
	folder := t.TempDir()
	one := In(folder, time.Hour)
	keepNow(t, one.Keeper(), "coat.tsugime", order("coat"))
	keepNow(t, one.Keeper(), "", order("apron"))
	crash(one)

	two := In(folder, time.Hour)
	if got := len(two.Left()); got != 2 {
		t.Fatalf("%d states are offered, want 2", got)
	}
	two.End() // it has done nothing with them
	keepNow(t, two.Keeper(), "", order("another"))
	crash(two)

	three := In(folder, time.Hour)
	left := three.Left()
	got := titles(left)
	slices.Sort(got)
	if want := []string{"another", "apron", "coat"}; !slices.Equal(got, want) {
		t.Fatalf("offered are %v, want %v", got, want)
	}
	k := three.Keeper()
	for _, l := range left {
		switch l.Order.Title {
		case "coat":
			if err := k.TakeOver(l); err != nil {
				t.Fatal(err)
			}
		case "apron":
			l.Forget()
		}
	}
	if kept, ok := inFile(k); !ok || kept.Order.Title != "coat" || kept.Path != "coat.tsugime" {
		t.Errorf("taken over was %q of %q", kept.Order.Title, kept.Path)
	}
	crash(three)
	for _, l := range left {
		l.from.lock.Close()
	}
	got = titles(In(folder, time.Hour).Left())
	slices.Sort(got)
	if want := []string{"another", "coat"}; !slices.Equal(got, want) {
		t.Errorf("after another crash are offered %v, want %v", got, want)
	}
}

func TestARunThatEndsInOrderLeavesNoTrace(t *testing.T) {
	folder := t.TempDir()
	s := In(folder, time.Hour)
	k := s.Keeper()
	keepNow(t, k, "", order("coat"))
	k.Forget()
	s.End()
	if names, _ := filepath.Glob(filepath.Join(folder, keptFolder, "*")); len(names) != 0 {
		t.Errorf("left are %v", names)
	}
}

func TestWhatCannotBeReadIsLeftAlone(t *testing.T) {
	folder := t.TempDir()
	s := In(folder, time.Hour)
	k := s.Keeper()
	keepNow(t, k, "", order("coat"))
	if err := os.WriteFile(k.file, []byte("\"\"\nof a later version"), 0o600); err != nil {
		t.Fatal(err)
	}
	crash(s)
	if got := titles(In(folder, time.Hour).Left()); got != nil {
		t.Errorf("offered are %v", got)
	}
	if _, err := os.Stat(k.file); err != nil {
		t.Error(err)
	}
}
