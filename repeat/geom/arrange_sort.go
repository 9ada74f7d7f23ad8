package geom

import "slices"

// sorted returns the items by rising key, 0 … keys, and those of one key in the
// given order. It takes time in proportion where few share a key.
func sorted[T any](items []T, keys int, key func(*T) int32, order func(a, b T) int) []T {
	start := make([]int32, keys+1)
	for i := range items {
		start[key(&items[i])+1]++
	}
	for k := range keys {
		start[k+1] += start[k]
	}
	next := slices.Clone(start)
	out := make([]T, len(items))
	for i := range items {
		at := &next[key(&items[i])]
		out[*at] = items[i]
		*at++
	}
	for k := range keys {
		if same := out[start[k]:start[k+1]]; len(same) > 1 {
			slices.SortFunc(same, order)
		}
	}
	return out
}
