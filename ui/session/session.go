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

// keeper holds the write that is due.
type keeper struct {
	mu    sync.Mutex
	timer *time.Timer
}

// A Kept is a state that was not saved when the program ended.
type Kept struct {
	Path  string // of the order's file, "" for none
	Time  time.Time
	Order document.Order
}

func (s Store) file(name string) string { return filepath.Join(s.folder, name) }

// Keep writes the order to the state folder a while from now, unless it is kept
// anew before; an order that is saved needs no keeping.
func (s Store) Keep(path string, o document.Order, changed bool) {
	if s.keeper == nil {
		return
	}
	s.keeper.mu.Lock()
	defer s.keeper.mu.Unlock()
	if s.keeper.timer != nil {
		s.keeper.timer.Stop()
	}
	if !changed {
		os.Remove(s.file("present.tsugime"))
		return
	}
	s.keeper.timer = time.AfterFunc(s.delay, func() {
		// What can't be kept is no reason to stop the work.
		_ = s.keep(path, o)
	})
}

func (s Store) keep(path string, o document.Order) error {
	var b bytes.Buffer
	if err := document.Write(&b, o); err != nil {
		return err
	}
	if err := s.write("present.path", []byte(path)); err != nil {
		return err
	}
	return s.write("present.tsugime", b.Bytes())
}

// Kept returns what was kept and not saved, and whether there is such a thing.
func (s Store) Kept() (Kept, bool) {
	if s.folder == "" {
		return Kept{}, false
	}
	name := s.file("present.tsugime")
	info, err := os.Stat(name)
	if err != nil {
		return Kept{}, false
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return Kept{}, false
	}
	o, err := document.Read(bytes.NewReader(data))
	if err != nil {
		return Kept{}, false
	}
	path, _ := os.ReadFile(s.file("present.path"))
	return Kept{string(path), info.ModTime(), o}, true
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
