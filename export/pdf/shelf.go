package pdf

import (
	"fmt"
	"io"
	"strings"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// A shelf knows the objects of a book before they are written: which drawings
// are shared, which layers there are, which object is which page.
type shelf struct {
	f                *file
	root, info, tree object
	onForms, onPages object      // resources
	cases            []*typeCase // by face
	pages            []object
	drawings         []*export.Drawing // each once, in the order of their first view
	forms            map[*export.Drawing]int
	formObjects      []object
	photos           []object // in the order of the pages
	layers           []string // each name once, in the order they come up
	layerOf          map[string]int
	layerObjects     []object
}

func newShelf(f *file, b export.Book) *shelf {
	s := &shelf{f: f, forms: map[*export.Drawing]int{}, layerOf: map[string]int{}}
	s.root, s.tree, s.info = f.reserve(), f.reserve(), f.reserve()
	s.onForms, s.onPages = f.reserve(), f.reserve()
	s.cases = cases(f)
	for _, p := range b.Pages {
		s.pages = append(s.pages, f.reserve())
		for _, v := range p.Views {
			if _, ok := s.forms[v.Of]; !ok {
				s.forms[v.Of] = len(s.drawings)
				s.drawings = append(s.drawings, v.Of)
				s.formObjects = append(s.formObjects, f.reserve())
				s.meet(*v.Of)
			}
		}
		s.meet(p.Drawing)
	}
	return s
}

// meet notes the layers of d.
func (s *shelf) meet(d export.Drawing) {
	for _, l := range d.Layers {
		if _, ok := s.layerOf[l.Name]; !ok {
			s.layerOf[l.Name] = len(s.layers)
			s.layers = append(s.layers, l.Name)
			s.layerObjects = append(s.layerObjects, s.f.reserve())
		}
	}
}

// catalogue writes what a reader opens first: the root, the list of pages, and
// what the book is called.
func (s *shelf) catalogue(b export.Book) {
	optional := ""
	if len(s.layers) > 0 {
		all := list(s.layerObjects)
		optional = fmt.Sprintf(" /OCProperties << /OCGs [%s] /D << /Order [%s] /ON [%s] >> >>", all, all, all)
	}
	s.f.put(s.root, "<< /Type /Catalog /Pages %v /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >>%s >>", s.tree, optional)
	s.f.put(s.tree, "<< /Type /Pages /Count %d /Kids [%s] >>", len(s.pages), list(s.pages))
	info := "/Creator (Tsugime) /Producer (Tsugime)"
	if b.Title != "" {
		info += " /Title " + textString(b.Title)
	}
	if b.Subject != "" {
		info += " /Subject " + textString(b.Subject)
	}
	s.f.put(s.info, "<< %s >>", info)
}

func list(objects []object) string {
	words := make([]string, len(objects))
	for i, o := range objects {
		words[i] = o.String()
	}
	return strings.Join(words, " ")
}

// groups writes the layers, and the resources that name them and the faces that
// the pages, written before, were set in.
func (s *shelf) groups() {
	var names, forms, fonts strings.Builder
	for i, o := range s.layerObjects {
		s.f.put(o, "<< /Type /OCG /Name %s >>", textString(s.layers[i]))
		fmt.Fprintf(&names, "/L%d %v ", i, o)
	}
	for i, o := range s.formObjects {
		fmt.Fprintf(&forms, "/X%d %v ", i, o)
	}
	for i, o := range s.photos {
		fmt.Fprintf(&forms, "/I%d %v ", i, o)
	}
	for _, c := range s.cases {
		if c.object != 0 {
			fmt.Fprintf(&fonts, "/F%d %v ", c.face, c.object)
		}
	}
	shared := fmt.Sprintf("/Font << %s>> /Properties << %s>>", &fonts, &names)
	s.f.put(s.onForms, "<< %s >>", shared)
	s.f.put(s.onPages, "<< %s /XObject << %s>> >>", shared, &forms)
}

// form writes a shared drawing, in millimetres, y down, like the pages that
// show it.
func (s *shelf) form(d *export.Drawing) {
	dict := fmt.Sprintf("/Type /XObject /Subtype /Form /BBox [0 0 %s %s] /Resources %v ", d.Width, d.Height, s.onForms)
	s.f.stream(s.formObjects[s.forms[d]], dict, func(w io.Writer) {
		c := newContent(w, s.layerOf, s.cases)
		c.drawing(*d)
		c.flush()
	})
}

func (s *shelf) page(o object, p export.Page) {
	d := p.Drawing
	body := s.f.reserve()
	first := len(s.photos)
	for _, photo := range p.Photos {
		s.photos = append(s.photos, s.f.photo(photo.Pixels))
	}
	s.f.put(o, "<< /Type /Page /Parent %v /MediaBox [0 0 %s %s] /Resources %v /Contents %v >>",
		s.tree, points(d.Width), points(d.Height), s.onPages, body)
	s.f.stream(body, "", func(w io.Writer) {
		c := newContent(w, s.layerOf, s.cases)
		c.op(pointsPerMM).op("0 0").op("-" + pointsPerMM).op("0").op(points(d.Height)).end("cm")
		c.stretch(p)
		for _, v := range p.Views {
			s.view(c, v)
		}
		for i, photo := range p.Photos {
			c.photo(first+i, photo.Box)
		}
		c.drawing(d)
		c.flush()
	})
}

// view shows the part of a shared drawing that lies in the window.
func (s *shelf) view(c *content, v export.View) {
	c.end("q")
	c.at(v.At).mm(v.Window.Width()).mm(v.Window.Height()).end("re W n")
	if by := v.At.Sub(v.Window.Min); by != (geom.Point{}) {
		c.op("1 0 0 1").at(by).end("cm")
	}
	c.op(fmt.Sprintf("/X%d", s.forms[v.Of])).end("Do")
	c.end("Q")
}
