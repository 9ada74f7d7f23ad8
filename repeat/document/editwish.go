package document

import (
	"slices"

	"tsugime/repeat/cloth"
)

// WishSeam sets what is wished of one seam, in the place of what was; a wish
// without a goal leaves the seam as it falls. Wishes are put in the order of the
// seams' names that is given, the most important first; one whose seam isn't among
// them comes last. The form's matched seam runs on by the order's own mark for it.
func WishSeam(o Order, w cloth.SeamWish, seams []string) (Order, error) {
	f, err := o.Garment.Body.Form()
	if err != nil {
		return o, faultf("garment.form", "%v", err)
	}
	g := o.Garment
	wishes := slices.DeleteFunc(slices.Clone(g.Wishes.Seams), func(was cloth.SeamWish) bool { return was.Seam == w.Seam })
	main := w.Seam == f.Matched && f.Matched != ""
	if main {
		g.MatchBackCentre = w.Goal == cloth.RunOn
	}
	if w.Goal != "" && !(main && w.Goal == cloth.RunOn) {
		wishes = append(wishes, w)
	}
	rank := func(w cloth.SeamWish) int {
		if i := slices.Index(seams, w.Seam); i >= 0 {
			return i
		}
		return len(seams)
	}
	slices.SortStableFunc(wishes, func(a, b cloth.SeamWish) int { return rank(a) - rank(b) })
	g.Wishes.Seams = wishes
	return SetGarment(o, g)
}

// Wished returns what is wished of a seam, and whether anything is.
func (o Order) Wished(seam string) (cloth.SeamWish, bool) {
	for _, w := range o.Garment.Wishes.Seams {
		if w.Seam == seam {
			return w, true
		}
	}
	f, err := o.Garment.Body.Form()
	if err == nil && f.Matched == seam && seam != "" && o.Garment.MatchBackCentre {
		return cloth.SeamWish{Seam: seam, Goal: cloth.RunOn}, true
	}
	return cloth.SeamWish{}, false
}
