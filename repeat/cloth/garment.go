package cloth

import (
	"fmt"
	"sync/atomic"

	"tsugime/repeat/geom"
)

// A Garment is what an order wants made of the cloth.
type Garment struct {
	Body   Body
	Layout Layout
	// MatchBackCentre asks for the form's matched seam, the back centre of a
	// kimono, to be closed along by a gap before the later of its two panels.
	MatchBackCentre bool
	Wishes          Wishes
}

// A Body is the sizes that a garment is cut to. What it leaves out is as the form
// has it.
type Body struct {
	Kind       GarmentKind
	Own        string                 // the text of a form of the order's own, in the place of Kind's
	Height     geom.Length            // of the wearer, heel to crown
	Sizes      map[string]geom.Length // what the form asks for beside the height
	Counts     map[string]int
	Allowances map[string]geom.Length
}

// lastOwn is the form of an order's own that was read last: an order is dressed
// again after every edit.
var lastOwn atomic.Pointer[Form]

// Form returns the form that the garment is cut by.
func (b Body) Form() (*Form, error) {
	if b.Own == "" {
		return FormOf(b.Kind)
	}
	if last := lastOwn.Load(); last != nil && last.Text == b.Own {
		return last, nil
	}
	f, err := ReadForm([]byte(b.Own))
	if err == nil && f.Text == b.Own {
		lastOwn.Store(f)
	}
	return f, err
}

// A Layout is how the panels lie on the cloth where it isn't as the form has it,
// by the panels' names.
type Layout struct {
	Order  []string               // along the cloth; panels it leaves out follow as the form has them
	Gaps   map[string]geom.Length // cloth left before a panel
	Shifts map[string]geom.Length // of what is sewn of a panel across it; see LaidPanel.Shift
	Turned map[string]bool        // turned half round on the cloth
}

// Keep returns g with only the sizes, counts and allowances that the form knows,
// and of those the ones that are within its bounds.
func (f *Form) Keep(g Garment) Garment {
	b := &g.Body
	sizes, counts, allowances := b.Sizes, b.Counts, b.Allowances
	b.Sizes, b.Counts, b.Allowances = nil, nil, nil
	for _, a := range f.Asks {
		if l, ok := sizes[a.Name]; ok && !a.Counted && l >= a.Least && l <= a.Most {
			b.Sizes = with(b.Sizes, a.Name, l)
		}
		if n, ok := counts[a.Name]; ok && a.Counted && n >= a.Fewest && n <= a.Many {
			b.Counts = with(b.Counts, a.Name, n)
		}
	}
	for _, a := range f.Allowances {
		if l, ok := allowances[a.Name]; ok {
			b.Allowances = with(b.Allowances, a.Name, l)
		}
	}
	return g
}

// with returns all with one value more.
func with[T any](all map[string]T, name string, v T) map[string]T {
	if all == nil {
		all = map[string]T{}
	}
	all[name] = v
	return all
}

// A Misfit is why a garment can't be cut, and what to change.
type Misfit struct{ Text, Remedy string }

// Error puts both on one line.
func (m *Misfit) Error() string { return "garment: " + m.Text + "; " + m.Remedy }

func misfit(remedy, format string, args ...any) *Misfit {
	return &Misfit{fmt.Sprintf(format, args...), remedy}
}

// A Size is a finished size of the garment.
type Size struct {
	Name, Title string
	Length      geom.Length
	Source      string // where the rule comes from; "" where it follows from others
}

// A Narrowing is a size that the cloth has less room for than is wanted.
type Narrowing struct {
	Size   // as it is
	Wanted geom.Length
}

// A Panel is a piece of the garment as it lies on the bolt: a window of the
// cloth, on the finished cloth's millimetres.
type Panel struct {
	Name, Trade   string
	X, Y          geom.Length // its first corner on the bolt
	Width, Length geom.Length
	Lane          [2]float64 // the share of the cloth's width that it may take
	Turned        bool       // it lies turned half round
	// UpsideDown are the views in which cloth of it hangs against the way that
	// the bolt is fed: where a one-way design stands on its head.
	UpsideDown []View
}

// A Meeting is a stretch of a seam and how the pattern meets there.
type Meeting struct {
	From, To geom.Length // down the view, or across it where the edges are level
	// PhaseAlong and PhaseAcross are how far the pattern on the second panel is
	// from where the first one's would go on, modulo the lattice.
	PhaseAlong, PhaseAcross geom.Length
	// At and On are the places of the finished cloth, on the first panel and on
	// the second, where the finished line begins.
	At, On geom.Point
	// Lines are where the finished line is seen: on the first piece and on the
	// second.
	Lines [2]SeamLine
}

// A SeamLine is a finished seam line in a view.
type SeamLine struct {
	View     View
	From, To geom.Point
}

// Middle returns the place in the middle of the line.
func (l SeamLine) Middle() geom.Point {
	return geom.Point{X: (l.From.X + l.To.X) / 2, Y: (l.From.Y + l.To.Y) / 2}
}

// A Seam joins an edge of one panel to an edge of another.
type Seam struct {
	Name    string
	Between [2]string // the panels' names; the same where a panel is sewn to itself
	Meeting           // the one that counts
	// Also are its other stretches, past a tuck, as far as the pattern meets there
	// in another way.
	Also     []Meeting
	Matched  bool // the stretch that counts is within the tolerance both ways
	Priority int  // 1 is matched first, 5 is looked at by nobody
	Visible  bool
	Opposite bool // on one side of it the cloth hangs upside down
}

// A Dressed is the garment laid on the bolt.
type Dressed struct {
	Garment  Garment
	Form     *Form
	Sizes    []Size
	Narrowed []Narrowing
	Panels   []Panel // in the form's order
	Seams    []Seam
	// Start is where the first panel may lie on the finished cloth, and Length how
	// much cloth there is from there to the end; Used may be longer.
	Start, Length geom.Length
	Used          geom.Length // of the bolt, from Start to the end of the last panel
	// Extra is what is used beyond the panels laid close in the form's own order:
	// the cloth that matching costs.
	Extra  geom.Length
	Hidden geom.Length // strip beside each selvedge that every seam covers
	// Matches are what became of the wishes, the matched seam first. LowerBound is
	// what no laying that reaches as much can use less than; it is Used where Proven.
	Matches    []Match
	LowerBound geom.Length
	Proven     bool
	pieces     []Piece
	laying     Laying
	solved     solved // of the wishes
}

// Laying returns how the garment lies and where its seams are on the panels. A
// Dressed that Dress hasn't made has none.
func (d Dressed) Laying() Laying { return d.laying }

// Pieces returns what is seen of the garment, in the order of drawing. A Dressed
// that Dress hasn't made has none.
func (d Dressed) Pieces() []Piece { return d.pieces }

// Views returns the views that show something, in the form's order.
func (d Dressed) Views() []FormView {
	var shown []FormView
	if d.Form == nil {
		return nil
	}
	for _, v := range d.Form.Views {
		for _, p := range d.pieces {
			if p.View == v.Name {
				shown = append(shown, v)
				break
			}
		}
	}
	return shown
}
