package report

import (
	"context"
	"errors"

	"tsugime/repeat"
)

// JobFolder writes the job folder of w and returns the paths written. It calls
// progress, which may be nil, after every file.
func JobFolder(ctx context.Context, w repeat.Work, folder string, opt Options, progress func(done, of int, name string)) ([]string, error) {
	return nil, errors.New("job folder: not written yet")
}
