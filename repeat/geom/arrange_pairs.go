package geom

// Pairs calls found once with every two boxes that meet: box j moved by shift,
// a sum of periods, meets box i. It tells i <= j, and of a box and its own copies
// each pair once. There may be none, one or two periods, as for Union.
func Pairs(boxes []Box, found func(i, j int, shift Point), periods ...Point) error {
	var all Box
	full := make([]Box, 0, len(boxes))
	at := make([]int, 0, len(boxes))
	for i, b := range boxes {
		if !b.Empty() {
			all, full, at = all.Union(b), append(full, b), append(at, i)
		}
	}
	t, err := newTorus(all, periods)
	if err != nil || len(full) == 0 {
		return err
	}
	boxGrid(t, full).pairs(func(i, j int32, shift Point) {
		if full[i].Meets(full[j].Moved(shift)) {
			found(at[i], at[j], shift)
		}
	})
	return nil
}
