package document

import (
	"fmt"
	"slices"
	"strings"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A ShelfMotif is a shape that is kept in the order under a name, ready to be placed.
// It is not in the pattern.
type ShelfMotif struct {
	Name  string
	Shape geom.Shape // drawn around its own origin
}

// Bounds of the shelf.
const (
	maxShelf = 1000
	// maxShelfPieces is how many segments its outlines may have together.
	maxShelfPieces = 500_000
)

func checkShelf(o Order) *Fault {
	if n := len(o.Shelf); n > maxShelf {
		return faultf("shelf", "%d shapes; keep the shelf to %d", n, maxShelf)
	}
	names, pieces := map[string]bool{}, 0
	for i, m := range o.Shelf {
		path := fmt.Sprintf("shelf[%d]", i)
		if fault := words(path+".name", m.Name, maxTitle, false); fault != nil {
			return fault
		}
		if strings.TrimSpace(m.Name) == "" {
			return faultf(path+".name", "the shape has no name; give it one")
		}
		if names[m.Name] {
			return faultf(path+".name", "another shape on the shelf is called %q too; give each its own name", m.Name)
		}
		names[m.Name] = true
		if fault := checkShape(m.Shape); fault != nil {
			fault.Path = path + fault.Path
			return fault
		}
		for _, c := range m.Shape.Outline {
			pieces += len(c.Segments)
		}
	}
	if pieces > maxShelfPieces {
		return faultf("shelf", "its outlines have %d pieces; draw them plainer, they may have %d", pieces, maxShelfPieces)
	}
	return nil
}

// OnShelf returns where the shape called name stands on the shelf, −1 where there is
// none.
func (o Order) OnShelf(name string) int {
	return slices.IndexFunc(o.Shelf, func(m ShelfMotif) bool { return m.Name == name })
}

// FreeShelfName returns a name that no shape on the shelf has: like, or like with a
// number behind.
func (o Order) FreeShelfName(like string) string {
	if like = strings.TrimSpace(like); like == "" {
		like = "shape"
	}
	if runes := []rune(like); len(runes) > maxTitle-6 {
		like = string(runes[:maxTitle-6])
	}
	name := like
	for n := 2; o.OnShelf(name) >= 0; n++ {
		name = fmt.Sprintf("%s %d", like, n)
	}
	return name
}

// PutOnShelf keeps shapes at the end of the shelf.
func PutOnShelf(o Order, shapes ...ShelfMotif) (Order, error) {
	next := o
	next.Shelf = slices.Concat(o.Shelf, shapes)
	return o.checked(next)
}

// TakeFromShelf adds a motif with the shape called name to the unit, at a place. The
// shape stays on the shelf.
func TakeFromShelf(o Order, name string, at geom.Point) (Order, error) {
	i := o.OnShelf(name)
	if i < 0 {
		return o, notOnShelf(name)
	}
	return AddMotif(o, pattern.Motif{Shape: o.Shelf[i].Shape, At: at})
}

// RenameOnShelf calls the shape that was called name to.
func RenameOnShelf(o Order, name, to string) (Order, error) {
	i := o.OnShelf(name)
	if i < 0 {
		return o, notOnShelf(name)
	}
	next := o
	next.Shelf = slices.Clone(o.Shelf)
	next.Shelf[i].Name = to
	return o.checked(next)
}

// DeleteFromShelf takes the shape called name off the shelf. Motifs made of it stay.
func DeleteFromShelf(o Order, name string) (Order, error) {
	i := o.OnShelf(name)
	if i < 0 {
		return o, notOnShelf(name)
	}
	next := o
	next.Shelf = slices.Delete(slices.Clone(o.Shelf), i, i+1)
	return o.checked(next)
}

func notOnShelf(name string) error {
	return fmt.Errorf("there is no %.40q on the shelf; choose one that is", name)
}

// shelved reads one shape of the shelf: {"name", "disc" or "outline"}.
func (r *reader) shelved() ShelfMotif {
	var m ShelfMotif
	var extra, shapeExtra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		switch string(key) {
		case "name":
			r.once(&seen, 0)
			m.Name = string(r.text())
		case "disc":
			r.once(&seen, 1)
			m.Shape.Disc, shapeExtra = r.disc()
		case "outline":
			r.once(&seen, 2)
			m.Shape.Outline, shapeExtra = r.outline()
		default:
			extra = r.unknown(extra, string(key))
		}
	})
	switch {
	case r.fault != nil:
	case seen&1 == 0:
		r.missing(from, "name")
	case (seen&2 != 0) == (seen&4 != 0):
		r.failf(from, "a shape is a \"disc\" or an \"outline\"; give one of the two")
	default:
		r.keep(shelfPart(m.Name), extra)
		r.keep(shelfPart(m.Name)+shapePart, shapeExtra)
	}
	return m
}
