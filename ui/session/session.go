// Package session keeps what outlives a window: recent orders and the present
// state of an order that was not saved. Files lie in the state folder of the XDG
// Base Directory specification 0.8 ($XDG_STATE_HOME, ~/.local/state). It knows
// no window.
package session

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"tsugime/repeat/document"
)

// A Store keeps its files in one folder. The zero Store keeps nothing.
type Store struct {
	folder string
	delay  time.Duration
	keeper *keeper
}

// keepDelay is how long after an edit the present state is written.
const keepDelay = 3 * time.Second

// mostRecent is how many orders are remembered.
const mostRecent = 6

// Open returns the store of this user. Where there is no home it keeps nothing.
func Open() Store {
	folder := os.Getenv("XDG_STATE_HOME")
	if !filepath.IsAbs(folder) { // relative ones are to be ignored, by the specification
		home, err := os.UserHomeDir()
		if err != nil {
			return Store{}
		}
		folder = filepath.Join(home, ".local", "state")
		if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
			if folder, err = os.UserConfigDir(); err != nil {
				return Store{}
			}
		}
	}
	return In(filepath.Join(folder, "tsugime"), keepDelay)
}

// In returns a store in a folder that writes a while after each edit.
func In(folder string, delay time.Duration) Store {
	return Store{folder, delay, &keeper{}}
}

// A keeper holds what is to be written when its time has come.
type keeper struct {
	mu   sync.Mutex
	due  *Kept      // nil for nothing
	disk sync.Mutex // held while the file of what is kept changes
}

// A Kept is a state that was not saved when the program ended.
type Kept struct {
	Path  string // of the order's file, "" for none
	Time  time.Time
	Order document.Order
}

func (s Store) file(name string) string { return filepath.Join(s.folder, name) }

// Keep has the order written to the state folder a while from now: the newest that
// there is by then, so that edit upon edit is kept as well. An order that is saved
// needs no keeping.
func (s Store) Keep(path string, o document.Order, changed bool) {
	k := s.keeper
	if k == nil {
		return
	}
	k.mu.Lock()
	waits := k.due != nil
	k.due = nil
	if changed {
		k.due = &Kept{Path: path, Order: o}
	}
	k.mu.Unlock()
	if !changed {
		k.disk.Lock()
		defer k.disk.Unlock()
		os.Remove(s.file("present"))
	} else if !waits {
		time.AfterFunc(s.delay, s.keepDue)
	}
}

// keepDue writes what is due.
func (s Store) keepDue() {
	k := s.keeper
	k.disk.Lock()
	defer k.disk.Unlock()
	k.mu.Lock()
	due := k.due
	k.due = nil
	k.mu.Unlock()
	if due != nil {
		// What can't be kept is no reason to stop the work.
		_ = s.keep(*due)
	}
}

// keep writes a line with the path, then the order: one file, so that a path never
// meets another's order.
func (s Store) keep(k Kept) error {
	path, err := json.Marshal(k.Path)
	if err != nil {
		return err
	}
	b := bytes.NewBuffer(append(path, '\n'))
	if err := document.Write(b, k.Order); err != nil {
		return err
	}
	return s.write("present", b.Bytes())
}

// Kept returns what was kept and not saved, and whether there is such a thing.
func (s Store) Kept() (Kept, bool) {
	if s.folder == "" {
		return Kept{}, false
	}
	name := s.file("present")
	info, err := os.Stat(name)
	if err != nil {
		return Kept{}, false
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return Kept{}, false
	}
	var path string
	line, rest, _ := bytes.Cut(data, []byte{'\n'})
	if json.Unmarshal(line, &path) != nil {
		return Kept{}, false
	}
	o, err := document.Read(bytes.NewReader(rest))
	if err != nil {
		return Kept{}, false
	}
	return Kept{path, info.ModTime(), o}, true
}

// Forget drops what was kept.
func (s Store) Forget() { s.Keep("", document.Order{}, false) }

// Recent returns the orders opened last, the newest first.
func (s Store) Recent() []string {
	data, err := os.ReadFile(s.file("recent.json"))
	if err != nil || s.folder == "" {
		return nil
	}
	var names []string
	if json.Unmarshal(data, &names) != nil {
		return nil
	}
	return names[:min(len(names), mostRecent)]
}

// Remember puts an order at the head of the recent ones.
func (s Store) Remember(path string) error {
	if s.folder == "" {
		return nil
	}
	names := append([]string{path}, slices.DeleteFunc(s.Recent(), func(n string) bool { return n == path })...)
	data, err := json.Marshal(names[:min(len(names), mostRecent)])
	if err != nil {
		return err
	}
	return s.write("recent.json", data)
}

// write replaces a file of the store at once or not at all.
func (s Store) write(name string, data []byte) error {
	if err := os.MkdirAll(s.folder, 0o700); err != nil {
		return fmt.Errorf("keep %s: %w", name, err)
	}
	f, err := os.CreateTemp(s.folder, name+".*")
	if err != nil {
		return fmt.Errorf("keep %s: %w", name, err)
	}
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), s.file(name))
	}
	if err != nil {
		os.Remove(f.Name())
		return fmt.Errorf("keep %s: %w", name, err)
	}
	return nil
}
