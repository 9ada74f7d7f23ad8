package cloth

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"

	"tsugime/repeat/geom"
)

// A cut is a form with every size worked out for one body and one cloth.
type cut struct {
	form     *Form
	width    geom.Length // of the finished cloth
	edge     geom.Length // the least allowance at a selvedge
	values   values
	sizes    []Size
	narrowed []Narrowing
}

// cutFor returns the cut of a garment from cloth of a finished width. Errors are
// *Misfit.
func cutFor(b Body, width geom.Length) (cut, error) {
	f, err := b.Form()
	if err != nil {
		return cut{}, err
	}
	c := cut{form: f, width: width, values: values{"cloth": length{width}}}
	if err := c.told(b); err != nil {
		return cut{}, err
	}
	for _, t := range f.tables {
		c.lookUp(t)
	}
	if err := c.allow(b); err != nil {
		return cut{}, err
	}
	for _, s := range f.sizes {
		if err := c.size(s); err != nil {
			return cut{}, err
		}
	}
	c.edge = c.values[f.edge].(length).nm
	return c, nil
}

// BetweenSeams returns the distance across, of the finished cloth, between the
// seams at both selvedges of a panel of the whole width, each the garment's least
// allowance from its edge: a pattern that repeats in it runs on from panel to
// panel. It is 0 where the garment can't be cut from the bolt, or the bolt is too
// narrow.
func (b Body) BetweenSeams(bolt Bolt) geom.Length {
	width, _ := bolt.FinishedSize()
	c, err := cutFor(b, width)
	if err != nil {
		return 0
	}
	return max(0, width-2*c.edge)
}

// Size returns the length that the body gives for what a form asks, or the usual
// one.
func (b Body) Size(a Ask) geom.Length {
	if a.Name == heightName {
		return b.Height
	}
	if l, given := b.Sizes[a.Name]; given {
		return l
	}
	return a.Usual
}

// Sized returns b with the length that a form asks for set to l.
func (b Body) Sized(a Ask, l geom.Length) Body {
	if a.Name == heightName {
		b.Height = l
		return b
	}
	b.Sizes = with(maps.Clone(b.Sizes), a.Name, l)
	return b
}

// Count returns the count that the body gives for what a form asks, or the usual
// one.
func (b Body) Count(a Ask) int {
	if n, given := b.Counts[a.Name]; given {
		return n
	}
	return a.Common
}

// Allowance returns an allowance of the garment cut from a bolt, and whether it
// has one of that name and can be cut.
func (b Body) Allowance(bolt Bolt, name string) (geom.Length, bool) {
	if l, given := b.Allowances[name]; given {
		return l, true
	}
	width, _ := bolt.FinishedSize()
	c, err := cutFor(b, width)
	if err != nil {
		return 0, false
	}
	l, ok := c.values[name].(length)
	return l.nm, ok
}

// heightName is the size that an order gives apart from the rest.
const heightName = "height"

// told takes the sizes and counts that the form asks for.
func (c cut) told(b Body) error {
	names := []string{}
	for _, a := range c.form.Asks {
		names = append(names, a.Name)
		if a.Counted {
			n := b.Count(a)
			if n < a.Fewest || n > a.Many {
				return misfit(fmt.Sprintf("give between %d and %d", a.Fewest, a.Many), "%d is out of bounds for the %s", n, inWords(a.Title))
			}
			c.values[a.Name] = n
			continue
		}
		l := b.Size(a)
		if l < a.Least || l > a.Most {
			return misfit(fmt.Sprintf("give between %s and %s mm", a.Least, a.Most), "%s mm is no %s that there are sizes for", l, inWords(a.Title))
		}
		c.values[a.Name] = length{l}
	}
	for _, name := range slices.Concat(slices.Sorted(maps.Keys(b.Sizes)), slices.Sorted(maps.Keys(b.Counts))) {
		if !slices.Contains(names, name) {
			return misfit("take it out, or give "+strings.Join(names, ", "), "the %s asks for no size %q", inWords(c.form.Title), name)
		}
	}
	return nil
}

// lookUp takes the columns of a table, in a straight line between its rows, and
// beyond them along its first and last pair.
func (c cut) lookUp(t table) {
	at := c.values[t.by].(length).nm
	i := min(max(sort.Search(len(t.rows), func(i int) bool { return t.rows[i][0] >= at })-1, 0), len(t.rows)-2)
	lo, hi := t.rows[i], t.rows[i+1]
	share := float64(at-lo[0]) / float64(hi[0]-lo[0])
	for k, name := range t.columns {
		c.values[name] = length{lo[k+1] + (hi[k+1] - lo[k+1]).Times(share)}
	}
}

// maxAllowance is the most that is sewn in at one place, far above any tuck.
const maxAllowance = geom.Metre

// allow takes the allowances, the order's own in the place of the form's.
func (c cut) allow(b Body) error {
	names := []string{}
	for _, a := range c.form.Allowances {
		names = append(names, a.Name)
		l, given := b.Allowances[a.Name]
		if !given {
			var err error
			if l, err = a.is.length(c.values); err != nil {
				return misfit("mend the formula in the form", "the allowance %q: %v", a.Name, err)
			}
		}
		if l < 0 || l > maxAllowance {
			return misfit(fmt.Sprintf("give between 0 and %s mm", maxAllowance), "an allowance of %s mm can't be sewn: %s", l, inWords(a.Title))
		}
		c.values[a.Name] = length{l}
	}
	for _, name := range slices.Sorted(maps.Keys(b.Allowances)) {
		if !slices.Contains(names, name) {
			return misfit("take it out, or set one of "+strings.Join(names, ", "), "the %s has no allowance %q", inWords(c.form.Title), name)
		}
	}
	return nil
}

// size works out one size.
func (c *cut) size(d derived) error {
	l, err := d.is.length(c.values)
	if err != nil {
		return misfit("mend the formula in the form, or give other sizes", "the size %q: %v", d.name, err)
	}
	wanted := l
	if d.atMost != nil {
		most, err := d.atMost.length(c.values)
		if err != nil {
			return misfit("mend the formula in the form, or give other sizes", "the most of the size %q: %v", d.name, err)
		}
		l = min(l, most)
	}
	if l < 0 {
		return misfit("give larger sizes, smaller allowances or wider cloth", "%s comes to %s mm, less than nothing", inWords(cmp.Or(d.title, d.name)), l)
	}
	c.values[d.name] = length{l}
	s := Size{d.name, cmp.Or(d.title, strings.ReplaceAll(d.name, "_", " ")), l, d.source}
	if d.title != "" {
		c.sizes = append(c.sizes, s)
	}
	if l < wanted {
		c.narrowed = append(c.narrowed, Narrowing{s, wanted})
	}
	return nil
}

// inWords puts a title into the middle of a sentence.
func inWords(title string) string {
	r, size := utf8.DecodeRuneInString(title)
	return string(unicode.ToLower(r)) + title[size:]
}
