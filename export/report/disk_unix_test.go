//go:build unix

package report

import (
	"errors"
	"io/fs"
	"strings"
	"testing"

	"tsugime/export/exporttest"
)

// Where the disk runs full in the middle of one of the larger files, the folder of
// the last job stays whole, down to the smallest file.
func TestADiskThatRunsFullLeavesTheLastJob(t *testing.T) {
	exporttest.InOwnProcess(t, func() {
		w := built(t, dotOrder(t, 4, 2))
		for _, room := range []uint64{1_000, 60_000, 300_000} {
			t.Run("", func(t *testing.T) {
				folder := t.TempDir()
				was := old(t, w, folder)
				exporttest.SmallFiles(t, room)
				files, err := JobFolder(t.Context(), w, folder, Options{Force: true}, nil)
				if err == nil || len(files) != 0 || !strings.Contains(err.Error(), "the folder is as it was") || strings.Contains(err.Error(), ".part") {
					t.Errorf("with room for %d bytes a file: %v written, %v", room, files, err)
				}
				asItWas(t, folder, was)
			})
		}
	})
}

func TestAFolderThatMayNotBeWrittenToKeepsTheLastJob(t *testing.T) {
	exporttest.InOwnProcess(t, func() {
		w := built(t, dotOrder(t, 8, 2))
		folder := t.TempDir()
		was := old(t, w, folder)
		exporttest.ReadOnly(t, folder)
		files, err := JobFolder(t.Context(), w, folder, Options{Force: true}, nil)
		if !errors.Is(err, fs.ErrPermission) || len(files) != 0 || !strings.Contains(err.Error(), "choose a folder that you may write to") {
			t.Errorf("%v written, %v", files, err)
		}
		asItWas(t, folder, was)
	})
}
