package session

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"
)

// Names below the state folder.
const (
	keptFolder = "kept"
	lockFile   = "lock"
	keptEnding = ".kept"
	making     = "making-" // begins the name of a folder that has no lock yet
)

// A run is one run of the program: a folder for what it keeps, and the lock that
// says that it goes on. It is made when there is something to keep.
type run struct {
	mu     sync.Mutex
	folder string
	lock   *os.File
	files  int // how many keepers have a file
	taken  []*leftRun
}

// newFile names a file for one more keeper.
func (r *run) newFile(below string) (string, error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.folder == "" {
		if err := r.begin(below); err != nil {
			return "", fmt.Errorf("keep what is not saved: %w", err)
		}
	}
	r.files++
	return filepath.Join(r.folder, fmt.Sprintf("%d%s", r.files, keptEnding)), nil
}

// begin makes the folder and takes its lock before anybody can see it under its name.
func (r *run) begin(below string) error {
	if err := os.MkdirAll(below, 0o700); err != nil {
		return err
	}
	name := fmt.Sprintf("%d-%d", os.Getpid(), time.Now().UnixNano())
	hidden, err := os.MkdirTemp(below, making)
	if err != nil {
		return err
	}
	lock, ok := takeLock(filepath.Join(hidden, lockFile))
	if !ok {
		os.RemoveAll(hidden)
		return fmt.Errorf("%s can't be locked", hidden)
	}
	folder := filepath.Join(below, name)
	if err := os.Rename(hidden, folder); err != nil {
		lock.Close()
		os.RemoveAll(hidden)
		return err
	}
	r.folder, r.lock = folder, lock
	return nil
}

// End ends the run in good order: what is kept stays for the next run, and where
// nothing is, no trace is left.
func (s Store) End() {
	if s.run == nil {
		return
	}
	s.run.mu.Lock()
	defer s.run.mu.Unlock()
	if s.run.folder != "" {
		leave(s.run.folder, s.run.lock)
		s.run.folder, s.run.lock = "", nil
	}
	for _, from := range s.run.taken {
		leave(from.folder, from.lock)
	}
	s.run.taken = nil
}

// leave lets a folder go, and removes it where nothing is kept in it.
func leave(folder string, lock *os.File) {
	if len(keptIn(folder)) == 0 {
		os.RemoveAll(folder)
	}
	lock.Close()
}

// keptIn lists the files of a run's folder.
func keptIn(folder string) []string {
	names, _ := filepath.Glob(filepath.Join(folder, "*"+keptEnding))
	return names
}

// A Left is a state that a run has left: it ended before the order was saved.
type Left struct {
	Kept
	file string
	from *leftRun
}

// A leftRun is a folder of an ended run that this run has taken.
type leftRun struct {
	folder string
	lock   *os.File
}

// Left takes what ended runs have left, the newest first. What another run that goes
// on keeps, or has taken, is not among it; what can't be read stays where it is.
func (s Store) Left() []*Left {
	if s.run == nil {
		return nil
	}
	folders, _ := filepath.Glob(filepath.Join(s.file(keptFolder), "*"))
	var all []*Left
	for _, folder := range folders {
		if strings.HasPrefix(filepath.Base(folder), making) {
			continue
		}
		lock, ok := takeLock(filepath.Join(folder, lockFile))
		if !ok {
			continue
		}
		from := &leftRun{folder, lock}
		found := 0
		for _, file := range keptIn(folder) {
			if k, ok := read(file); ok {
				all = append(all, &Left{k, file, from})
				found++
			}
		}
		if found == 0 {
			leave(folder, lock)
			continue
		}
		s.run.mu.Lock()
		s.run.taken = append(s.run.taken, from)
		s.run.mu.Unlock()
	}
	slices.SortStableFunc(all, func(a, b *Left) int { return b.Time.Compare(a.Time) })
	return all
}

// Forget drops a state for good.
func (l *Left) Forget() {
	os.Remove(l.file)
	l.done()
}

// done lets the folder go when nothing is left in it.
func (l *Left) done() {
	if len(keptIn(l.from.folder)) == 0 {
		leave(l.from.folder, l.from.lock)
	}
}
