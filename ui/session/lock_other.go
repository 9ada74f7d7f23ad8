//go:build !unix

package session

import (
	"fmt"
	"os"
)

// takeLock takes the lock of a file: it holds the number of the process that has it,
// and is free where there is no such process.
func takeLock(name string) (*os.File, bool) {
	if data, err := os.ReadFile(name); err == nil {
		var pid int
		if _, err := fmt.Sscan(string(data), &pid); err == nil && pid != os.Getpid() {
			if _, err := os.FindProcess(pid); err == nil {
				return nil, false
			}
		}
	}
	if err := os.WriteFile(name, fmt.Appendln(nil, os.Getpid()), 0o600); err != nil {
		return nil, false
	}
	f, err := os.Open(name)
	return f, err == nil
}
