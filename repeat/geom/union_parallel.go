package geom

import (
	"runtime"
	"sync"
)

// inParts parts 0 … n into even parts of at least so many and works on them at
// once, as many as there are processors. It returns what work returned, by rising
// part: joined in this order, it does not depend on how many parts there were.
func inParts[T any](n, least int, work func(from, to int) T) []T {
	parts := max(1, min(runtime.GOMAXPROCS(0), n/least))
	results := make([]T, parts)
	var others sync.WaitGroup
	for i := 1; i < parts; i++ {
		others.Go(func() { results[i] = work(n*i/parts, n*(i+1)/parts) })
	}
	results[0] = work(0, n/parts)
	others.Wait()
	return results
}
