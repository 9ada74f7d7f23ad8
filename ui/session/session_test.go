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
	k := s.Keeper()
	k.Keep("a", order("a"), true)
	if err := k.Flush(); err != nil || s.Left() != nil || s.Remember("a") != nil || s.Recent() != nil {
		t.Error("the zero store kept something")
	}
	k.Forget()
	s.End()
}
