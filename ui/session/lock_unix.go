//go:build unix

package session

import (
	"os"
	"syscall"
)

// takeLock takes the lock of a file that is made where it lacks. The system lets it
// go when the file is closed or the process ends, however it ends: flock(2).
func takeLock(name string) (*os.File, bool) {
	f, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, false
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		return nil, false
	}
	return f, true
}
