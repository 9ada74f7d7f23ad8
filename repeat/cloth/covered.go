package cloth

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// A SewnIn is what the seams hide of a panel: stretches of it that no piece shows,
// on the finished cloth.
type SewnIn struct {
	Panel string
	Parts []geom.Box // from top to bottom, then from left to right; none overlaps another
	// Left and Right are the least strips along both edges of the panel.
	Left, Right geom.Length
}

// SewnIn returns what is hidden of every panel, in the panels' order.
func (d Dressed) SewnIn() []SewnIn {
	all := make([]SewnIn, 0, len(d.Panels))
	for _, p := range d.Panels {
		whole := geom.BoxOf(geom.Point{X: p.X, Y: p.Y}, geom.Point{X: p.X + p.Width, Y: p.Y + p.Length})
		var windows []geom.Box
		s := SewnIn{Panel: p.Name, Left: p.Width, Right: p.Width}
		for _, piece := range d.pieces {
			if piece.Panel != p.Name {
				continue
			}
			w := piece.Window().Intersect(whole)
			windows = append(windows, w)
			s.Left, s.Right = min(s.Left, w.Min.X-p.X), min(s.Right, p.X+p.Width-w.Max.X)
		}
		s.Parts = without(whole, windows)
		all = append(all, s)
	}
	return all
}

// without returns what of a box lies in none of the windows, in boxes as tall as
// can be.
func without(whole geom.Box, windows []geom.Box) []geom.Box {
	levels := []geom.Length{whole.Min.Y, whole.Max.Y}
	for _, w := range windows {
		levels = append(levels, w.Min.Y, w.Max.Y)
	}
	slices.Sort(levels)
	levels = slices.Compact(levels)
	var parts []geom.Box
	for i, top := range levels[:len(levels)-1] {
		foot := levels[i+1]
		for _, free := range gapsAt(whole, windows, top, foot) {
			box := geom.BoxOf(geom.Point{X: free.From, Y: top}, geom.Point{X: free.To, Y: foot})
			above := slices.IndexFunc(parts, func(p geom.Box) bool {
				return p.Max.Y == top && p.Min.X == box.Min.X && p.Max.X == box.Max.X
			})
			if above >= 0 {
				parts[above] = parts[above].Union(box)
				continue
			}
			parts = append(parts, box)
		}
	}
	slices.SortFunc(parts, func(a, b geom.Box) int {
		return cmp.Or(cmp.Compare(a.Min.Y, b.Min.Y), cmp.Compare(a.Min.X, b.Min.X))
	})
	return parts
}

// gapsAt returns what no window takes across a box between two levels, where
// windows neither begin nor end.
func gapsAt(whole geom.Box, windows []geom.Box, top, foot geom.Length) []Span {
	var taken []Span
	for _, w := range windows {
		if w.Min.Y <= top && w.Max.Y >= foot {
			taken = append(taken, Span{w.Min.X, w.Max.X})
		}
	}
	slices.SortFunc(taken, func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	var free []Span
	at := whole.Min.X
	for _, t := range taken {
		if t.From > at {
			free = append(free, Span{at, t.From})
		}
		at = max(at, t.To)
	}
	if at < whole.Max.X {
		free = append(free, Span{at, whole.Max.X})
	}
	return free
}
