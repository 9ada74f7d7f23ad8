package session

import (
	"bytes"
	"encoding/json"
	"os"
	"sync"
	"time"

	"tsugime/repeat/document"
)

// A Kept is a state that was not saved.
type Kept struct {
	Path  string // of the order's file, "" for none
	Time  time.Time
	Order document.Order
}

// A Keeper keeps the present state of one order that is open, beside those of the
// others. The zero Keeper keeps nothing.
type Keeper struct {
	store Store

	mu   sync.Mutex
	due  *Kept      // what is to be written when its time has come; nil for nothing
	disk sync.Mutex // held while the file changes
	file string     // where it is written; "" before the first time
}

// Keeper returns a keeper for one more order.
func (s Store) Keeper() *Keeper { return &Keeper{store: s} }

// Keep has the order written to the state folder a while from now: the newest that
// there is by then, so that edit upon edit is kept as well. An order that is saved
// needs no keeping.
func (k *Keeper) Keep(path string, o document.Order, changed bool) {
	if k.store.run == nil {
		return
	}
	if !changed {
		k.Forget()
		return
	}
	k.mu.Lock()
	waits := k.due != nil
	k.due = &Kept{Path: path, Order: o}
	k.mu.Unlock()
	if !waits {
		// What can't be kept is no reason to stop the work.
		time.AfterFunc(k.store.delay, func() { _ = k.Flush() })
	}
}

// Flush writes at once what would be written in a while.
func (k *Keeper) Flush() error {
	k.disk.Lock()
	defer k.disk.Unlock()
	k.mu.Lock()
	due := k.due
	k.due = nil
	k.mu.Unlock()
	if due == nil {
		return nil
	}
	if err := k.place(); err != nil {
		return err
	}
	return write(k.file, *due)
}

// place gives the keeper its file.
func (k *Keeper) place() (err error) {
	if k.file == "" {
		k.file, err = k.store.run.newFile(k.store.file(keptFolder))
	}
	return err
}

// Forget drops what was kept.
func (k *Keeper) Forget() {
	k.mu.Lock()
	k.due = nil
	k.mu.Unlock()
	k.disk.Lock()
	defer k.disk.Unlock()
	if k.file != "" {
		os.Remove(k.file)
	}
}

// TakeOver makes what a run has left what this keeper keeps; it lies in the folder
// all the time.
func (k *Keeper) TakeOver(l *Left) error {
	k.disk.Lock()
	defer k.disk.Unlock()
	if k.store.run == nil {
		return nil
	}
	if err := k.place(); err != nil {
		return err
	}
	if err := os.Rename(l.file, k.file); err != nil {
		return err
	}
	l.done()
	return nil
}

// write writes a line with the path, then the order: one file, so that a path never
// meets another's order.
func write(file string, k Kept) error {
	path, err := json.Marshal(k.Path)
	if err != nil {
		return err
	}
	b := bytes.NewBuffer(append(path, '\n'))
	if err := document.Write(b, k.Order); err != nil {
		return err
	}
	return replace(file, b.Bytes())
}

// read returns what a file keeps; ok is false where it can't be read.
func read(file string) (k Kept, ok bool) {
	info, err := os.Stat(file)
	if err != nil {
		return Kept{}, false
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return Kept{}, false
	}
	line, rest, _ := bytes.Cut(data, []byte{'\n'})
	if json.Unmarshal(line, &k.Path) != nil {
		return Kept{}, false
	}
	k.Time = info.ModTime()
	k.Order, err = document.Read(bytes.NewReader(rest))
	return k, err == nil
}
