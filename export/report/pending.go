package report

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"

	"tsugime/export"
)

// mostAtOnce is how many files are written at the same time at most: each may hold
// a whole picture.
const mostAtOnce = 4

// prepareAll prepares every file of names, several at a time, and returns them
// in that order; told, which may be nil, hears of each in that order. The first error
// stops all that isn't whole yet: it is returned with the files that are.
func prepareAll(ctx context.Context, names []string, prepare func(context.Context, string) (export.Pending, error), told func(done, of int, name string)) ([]export.Pending, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	type result struct {
		file export.Pending
		err  error
	}
	results := make([]chan result, len(names))
	for i := range results {
		results[i] = make(chan result, 1)
	}
	var next atomic.Int64
	var together sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), mostAtOnce, len(names)) {
		together.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(names)); i = next.Add(1) - 1 {
				r := result{err: ctx.Err()}
				if r.err == nil {
					r.file, r.err = prepare(ctx, names[i])
				}
				results[i] <- r
			}
		})
	}
	defer together.Wait()
	var all []export.Pending
	var failed error
	for i, name := range names {
		switch r := <-results[i]; {
		case r.err == nil:
			all = append(all, r.file)
			if told != nil && failed == nil {
				told(i+1, len(names), name)
			}
		case failed == nil:
			failed = r.err
			stop()
		}
	}
	return all, failed
}
