// Package session keeps what outlives a window: recent orders and the present
// states of orders that were not saved. Files lie in the state folder of the XDG
// Base Directory specification 0.8 ($XDG_STATE_HOME, ~/.local/state). It knows
// no window.
//
// Each run of the program keeps its states in a folder of its own, kept/RUN, one
// file for each order that is open, beside a lock that the system lets go when the
// run ends, however it ends. A run whose lock is free has left what its folder
// holds, and the one that takes the lock may offer it.
package session

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"time"
)

// A Store keeps its files in one folder. The zero Store keeps nothing.
type Store struct {
	folder string
	delay  time.Duration
	run    *run // of this process
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
	return Store{folder, delay, &run{}}
}

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

func (s Store) file(name string) string { return filepath.Join(s.folder, name) }

// write replaces a file of the store at once or not at all.
func (s Store) write(name string, data []byte) error {
	return replace(s.file(name), data)
}

// replace writes a file at once or not at all; its folder is made where it lacks.
func replace(file string, data []byte) error {
	folder, name := filepath.Split(file)
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return fmt.Errorf("keep %s: %w", name, err)
	}
	f, err := os.CreateTemp(folder, name+".*")
	if err != nil {
		return fmt.Errorf("keep %s: %w", name, err)
	}
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), file)
	}
	if err != nil {
		os.Remove(f.Name())
		return fmt.Errorf("keep %s: %w", name, err)
	}
	return nil
}
