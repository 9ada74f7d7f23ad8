package session

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"tsugime/repeat/document"
)

func order(title string) document.Order {
	o := document.Defaults()
	o.Title = title
	return o
}

func TestWhatIsKeptComesBackUntilItIsSaved(t *testing.T) {
	s := In(t.TempDir(), time.Millisecond)
	if _, ok := s.Kept(); ok {
		t.Fatal("something is kept at the start")
	}
	s.Keep("coat.tsugime", order("first"), true)
	s.Keep("coat.tsugime", order("second"), true)
	var k Kept
	for range 1000 {
		var ok bool
		if k, ok = s.Kept(); ok && k.Order.Title == "second" {
			break
		}
		time.Sleep(2 * time.Millisecond)
	}
	if k.Order.Title != "second" || k.Path != "coat.tsugime" {
		t.Errorf("kept %q of %q, want the second of coat.tsugime", k.Order.Title, k.Path)
	}
	s.Keep("coat.tsugime", order("second"), false)
	if _, ok := s.Kept(); ok {
		t.Error("a saved order is still kept")
	}
}

// Who edits without a pause is kept as well, by one delay after the first edit.
func TestEditUponEditIsKept(t *testing.T) {
	s := In(t.TempDir(), 20*time.Millisecond)
	end := time.Now().Add(time.Minute)
	for {
		s.Keep("coat.tsugime", order("coat"), true)
		if _, ok := s.Kept(); ok {
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
	s := In(t.TempDir(), 0)
	for range 300 {
		s.Keep("coat.tsugime", order("coat"), true)
		s.Keep("coat.tsugime", order("coat"), false)
		if _, ok := s.Kept(); ok {
			t.Fatal("a saved order is kept")
		}
	}
	s.Keep("coat.tsugime", order("last"), true)
	for end := time.Now().Add(time.Minute); ; time.Sleep(time.Millisecond) {
		if k, ok := s.Kept(); ok && k.Order.Title == "last" {
			return
		}
		if time.Now().After(end) {
			t.Fatal("the last edit was not kept")
		}
	}
}

func TestSixOrdersAreRememberedTheNewestFirst(t *testing.T) {
	s := In(t.TempDir(), time.Hour)
	for _, name := range []string{"a", "b", "c", "d", "e", "f", "g", "c"} {
		if err := s.Remember(name); err != nil {
			t.Fatal(err)
		}
	}
	if got, want := s.Recent(), []string{"c", "g", "f", "e", "d", "b"}; !slices.Equal(got, want) {
		t.Errorf("remembered %v, want %v", got, want)
	}
}

func TestTheStateFolderFollowsTheSpecification(t *testing.T) {
	folder := t.TempDir()
	t.Setenv("XDG_STATE_HOME", folder)
	if err := Open().Remember("a"); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(folder, "tsugime", "recent.json")); err != nil {
		t.Error(err)
	}
	t.Setenv("XDG_STATE_HOME", "here")
	t.Setenv("HOME", folder)
	if err := Open().Remember("a"); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(filepath.Join(folder, ".local", "state", "tsugime", "recent.json")); err != nil {
		t.Errorf("a relative folder was not ignored: %v", err)
	}
}

func TestAStoreWithoutAFolderKeepsNothing(t *testing.T) {
	var s Store
	s.Keep("a", order("a"), true)
	if _, ok := s.Kept(); ok || s.Remember("a") != nil || s.Recent() != nil {
		t.Error("the zero store kept something")
	}
}
