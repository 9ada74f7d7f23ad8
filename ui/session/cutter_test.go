package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

func TestTheRackOfOneOrderIsThereForTheNext(t *testing.T) {
	folder := t.TempDir()
	rack := bench.Rack{Tools: []bench.Tool{{Kind: bench.Awl, Number: "7", Size: geom.MM(0.45), Condition: bench.Sharp}}}
	s := In(folder, time.Hour)
	for _, err := range []error{s.KeepRack(rack), s.KeepJobs([]bench.Job{{Name: "a", Method: bench.Kiribori, Count: 100, Hours: 2}}), s.KeepDay(6)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	c, err := In(folder, time.Hour).Cutter()
	if err != nil || len(c.Rack.Tools) != 1 || c.Rack.Tools[0].Size != geom.MM(0.45) || c.DayHours != 6 {
		t.Fatalf("%+v: %v", c, err)
	}
	// 2 hours for 100 holes are 1.2 minutes each.
	if r := c.Rates().Rate(bench.Kiribori); r.Jobs != 1 || r.CutMin != 1.2 || c.Rates().DayHours != 6 {
		t.Errorf("rate %+v", r)
	}
}

func TestARackThatCanNotBeReadIsToldAndPutAside(t *testing.T) {
	folder := t.TempDir()
	s := In(folder, time.Hour)
	name := filepath.Join(folder, "rack.csv")
	if err := os.WriteFile(name, []byte("kind,number,size_mm\nawl,1,wide\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := s.KeepDay(7); err != nil {
		t.Fatal(err)
	}
	c, err := s.Cutter()
	if err == nil || !strings.Contains(err.Error(), name+": line 2, size_mm:") || c.DayHours != 7 {
		t.Fatalf("%+v: %v", c, err)
	}
	if err := s.KeepRack(bench.Rack{}); err != nil {
		t.Fatal(err)
	}
	old, err := os.ReadFile(filepath.Join(folder, "unread-rack.csv"))
	if err != nil || !strings.Contains(string(old), "awl,1,wide") {
		t.Errorf("what could not be read is lost: %q, %v", old, err)
	}
	if _, err := s.Cutter(); err != nil {
		t.Error(err)
	}
}

func TestAFolderThatCanNotBeWrittenLeavesTheOldRack(t *testing.T) {
	folder := t.TempDir()
	blocked := filepath.Join(folder, "state")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := In(blocked, time.Hour).KeepRack(bench.Rack{}); err == nil {
		t.Error("a rack was kept in a file for a folder")
	}
	if err := (Store{}).KeepRack(bench.Rack{}); err != nil {
		t.Error(err)
	}
	for _, hours := range []float64{0, -1, 25} {
		if err := In(folder, time.Hour).KeepDay(hours); err == nil {
			t.Errorf("a day of %v hours is kept", hours)
		}
	}
}
