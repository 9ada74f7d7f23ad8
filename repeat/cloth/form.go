package cloth

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"tsugime/assets"
	"tsugime/repeat/geom"
)

// A Form is a garment as data: the sizes it is cut to, its panels on the bolt,
// the pieces that are seen of them and the seams between those. ReadForm makes
// one from a file; it is never changed after.
//
//	asks ─► tables ─► allowances ─► sizes ─► panels ─► pieces ─► seams
//	(what   (rows of   (what is      (what    (windows  (windows  (edges of
//	is told) a trade    sewn in)      follows) of the    of the    pieces)
//	         page)                             cloth)    panels)
//
// Each formula may use the names that stand before it, and cloth, the finished
// width of the bolt; those of pieces also panel_width and panel_length.
type Form struct {
	Name  GarmentKind
	Title string // for people: "Women's kimono"
	About string
	// Matched is the name of the seam that is closed along when asked to; "" for
	// none.
	Matched    string
	Views      []FormView
	Asks       []Ask
	Allowances []Allowance
	// Text is the form as it was read, as indented JSON.
	Text string

	tables []table
	sizes  []derived
	panels []formPanel
	pieces []formPiece
	seams  []formSeam
	edge   string // the allowance that every selvedge keeps at least
}

// A FormView is a picture of the garment, with its title.
type FormView struct {
	Name  View
	Title string
}

// An Ask is a size that the order gives: a length or a count.
type Ask struct {
	Name, Title, Source  string
	Counted              bool        // Least to Usual are then the counts below
	Least, Most, Usual   geom.Length // of a length
	Fewest, Many, Common int         // of a count
}

// An Allowance is cloth that is sewn in. Orders may set it by its name.
type Allowance struct {
	Name, Title, Source string
	is                  formula
}

// Text returns the allowance as the form writes it: a length or a formula.
func (a Allowance) Text() string { return a.is.text }

// A table gives sizes for a length that the order gives, in straight lines
// between its rows and on beyond them.
type table struct {
	by      string
	columns []string
	rows    [][]geom.Length // by, then the columns
}

// A derived size follows from those before it. Where it exceeds atMost, it is
// that, and the garment says so. One with a title is a finished size.
type derived struct {
	name, title, source string
	is                  formula
	atMost              *formula
}

// A formPanel is a panel before it is cut, in its lane of the cloth.
type formPanel struct {
	name, trade   string
	from, to      formula // across the cloth
	length        formula
	gap           *formula // cloth before it
	when          *formula
	turned, stuck bool // how it lies, and whether it must
}

// A formPiece is a window of a panel: its top left corner as worn lies at x, y
// of the view, and there is the panel's own place across, along. One that is
// turned hangs upside down while the panel lies as drawn.
type formPiece struct {
	name, panel string
	view        View
	x, y        formula
	width       formula
	height      formula
	across      formula
	along       formula
	turned      bool
	when        *formula
}

// An edge is a side of a piece.
type edge struct{ piece, side string }

// A formJoin is a stretch where two edges are sewn together: from and to down
// (or across) the view, by default as far as both reach.
type formJoin struct {
	first, second edge
	from, to      *formula
}

// A formSeam is one seam; where a tuck parts it, it has a join for each part, the
// one that counts first.
type formSeam struct {
	name     string
	priority int
	visible  bool
	when     *formula
	joins    []formJoin
}

// A GarmentKind names a way to cut a bolt.
type GarmentKind string

// WomensKimono is the kind that orders begin with.
const WomensKimono GarmentKind = "womens-kimono"

// GarmentKinds lists the built-in forms by name.
func GarmentKinds() []GarmentKind {
	var all []GarmentKind
	for _, name := range assets.Garments() {
		all = append(all, GarmentKind(name))
	}
	return all
}

// builtIn holds the built-in forms that have been read.
var builtIn sync.Map // GarmentKind → func() (*Form, error)

// FormOf returns the built-in form of a kind.
func FormOf(kind GarmentKind) (*Form, error) {
	text, ok := assets.Garment(string(kind))
	if !ok {
		return nil, fmt.Errorf("garment: %.40q is no garment that can be cut; use %s", kind, kindsInWords())
	}
	read, _ := builtIn.LoadOrStore(kind, sync.OnceValues(func() (*Form, error) { return ReadForm(text) }))
	return read.(func() (*Form, error))()
}

func kindsInWords() string {
	var names []string
	for _, k := range GarmentKinds() {
		names = append(names, string(k))
	}
	return strings.Join(names, ", ")
}

// Ask returns what the form asks for under a name, and whether it does.
func (f *Form) Ask(name string) (Ask, bool) {
	if i := slices.IndexFunc(f.Asks, func(a Ask) bool { return a.Name == name }); i >= 0 {
		return f.Asks[i], true
	}
	return Ask{}, false
}
