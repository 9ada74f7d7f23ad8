package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

func (r *formReader) view(n jsonNode) {
	in := r.object(n, "name", "title")
	v := FormView{View(r.word(in, n, "name", maxWords, true)), r.word(in, n, "title", maxWords, true)}
	if slices.ContainsFunc(r.form.Views, func(w FormView) bool { return w.Name == v.Name }) {
		r.failf(n.at("name"), "another view is called %q too; give each its own name", v.Name)
	}
	r.form.Views = append(r.form.Views, v)
}

func (r *formReader) asks(n jsonNode) {
	for _, e := range r.list(n, maxAsks) {
		in := r.object(e, "name", "title", "count", "least", "most", "usual", "source")
		a := Ask{
			Name: r.name(r.needed(in, e, "name"), r.known), Title: r.word(in, e, "title", maxWords, true),
			Source: r.word(in, e, "source", maxText, true), Counted: r.truth(in, "count", false),
		}
		if a.Counted {
			a.Fewest, a.Many = r.whole(in, e, "least", 0, maxAskCount), r.whole(in, e, "most", 0, maxAskCount)
			a.Common = r.whole(in, e, "usual", 0, maxAskCount)
			r.known[a.Name] = 1
		} else {
			a.Least, a.Most = r.fixed(r.needed(in, e, "least")), r.fixed(r.needed(in, e, "most"))
			a.Usual = r.fixed(r.needed(in, e, "usual"))
			r.known[a.Name] = length{}
		}
		if a.Least > a.Usual || a.Usual > a.Most || a.Fewest > a.Common || a.Common > a.Many {
			r.failf(e.path, "least, usual and most don't follow each other; put them in order")
		}
		r.form.Asks = append(r.form.Asks, a)
	}
}

func (r *formReader) table(n jsonNode) {
	in := r.object(n, "by", "columns", "rows", "source")
	t := table{by: r.word(in, n, "by", maxWords, true)}
	r.word(in, n, "source", maxText, true)
	if a, ok := r.form.Ask(t.by); r.fault == nil && (!ok || a.Counted) {
		r.failf(n.at("by"), "the form asks for no length %q; name one that it asks for", t.by)
	}
	for _, e := range r.list(in["columns"], maxSizes) {
		name := r.name(e, r.known)
		t.columns = append(t.columns, name)
		r.known[name] = length{}
	}
	for _, e := range r.list(in["rows"], maxRows) {
		cells := r.list(e, 1+maxSizes)
		if r.fault == nil && len(cells) != 1+len(t.columns) {
			r.failf(e.path, "%d lengths for %s and %d columns; give one for each", len(cells), t.by, len(t.columns))
		}
		var row []geom.Length
		for _, c := range cells {
			row = append(row, r.fixed(c))
		}
		if k := len(t.rows); r.fault == nil && k > 0 && row[0] <= t.rows[k-1][0] {
			r.failf(e.path, "the %s of %s mm doesn't follow that of the row before; put the rows in order", t.by, row[0])
		}
		t.rows = append(t.rows, row)
	}
	if r.fault == nil && (len(t.columns) == 0 || len(t.rows) < 2) {
		r.failf(n.path, "a table has columns and two rows at least; add them")
	}
	r.form.tables = append(r.form.tables, t)
}

func (r *formReader) allowance(n jsonNode) {
	in := r.object(n, "name", "title", "is", "source")
	a := Allowance{
		Name: r.name(r.needed(in, n, "name"), r.known), Title: r.word(in, n, "title", maxWords, true),
		Source: r.word(in, n, "source", maxText, true), is: r.formula(in, n, "is", aLength),
	}
	r.known[a.Name] = length{}
	r.form.Allowances = append(r.form.Allowances, a)
}

func (r *formReader) size(n jsonNode) {
	in := r.object(n, "name", "title", "is", "at_most", "source")
	d := derived{
		name: r.name(r.needed(in, n, "name"), r.known), title: r.word(in, n, "title", maxWords, false),
		source: r.word(in, n, "source", maxText, false),
		is:     r.formula(in, n, "is", aLength), atMost: r.option(in, "at_most", aLength),
	}
	r.known[d.name] = length{}
	r.form.sizes = append(r.form.sizes, d)
}

func (r *formReader) panel(n jsonNode) {
	in := r.object(n, "name", "trade", "lane", "length", "gap", "when", "turned", "may_turn")
	p := formPanel{
		name: r.word(in, n, "name", maxWords, true), trade: r.word(in, n, "trade", maxWords, false),
		length: r.formula(in, n, "length", aLength), gap: r.option(in, "gap", aLength),
		when: r.option(in, "when", aCondition), turned: r.truth(in, "turned", false), stuck: !r.truth(in, "may_turn", true),
	}
	lane := r.list(in["lane"], 2)
	if r.fault == nil && len(lane) == 2 {
		p.from, p.to = r.formulaAt(lane[0], aLength), r.formulaAt(lane[1], aLength)
	} else {
		r.failf(n.at("lane"), "the lane is missing; write where across the cloth it begins and ends, such as [0, \"cloth / 2\"]")
	}
	if slices.ContainsFunc(r.form.panels, func(q formPanel) bool { return q.name == p.name }) {
		r.failf(n.at("name"), "another panel is called %q too; give each its own name", p.name)
	}
	r.form.panels = append(r.form.panels, p)
}

func (r *formReader) piece(n jsonNode) {
	in := r.object(n, "name", "panel", "view", "x", "y", "width", "height", "across", "along", "turned", "when")
	p := formPiece{
		name: r.word(in, n, "name", maxWords, true), panel: r.word(in, n, "panel", maxWords, true), view: View(r.word(in, n, "view", maxWords, true)),
		x: r.formula(in, n, "x", aLength), y: r.formula(in, n, "y", aLength),
		width: r.formula(in, n, "width", aLength), height: r.formula(in, n, "height", aLength),
		across: r.formula(in, n, "across", aLength), along: r.formula(in, n, "along", aLength),
		turned: r.truth(in, "turned", false), when: r.option(in, "when", aCondition),
	}
	f := r.form
	switch {
	case r.fault != nil:
	case slices.ContainsFunc(f.pieces, func(q formPiece) bool { return q.name == p.name }):
		r.failf(n.at("name"), "another piece is called %q too; give each its own name", p.name)
	case !slices.ContainsFunc(f.panels, func(q formPanel) bool { return q.name == p.panel }):
		r.failf(n.at("panel"), "there is no panel %q; name one of the form's", p.panel)
	case !slices.ContainsFunc(f.Views, func(v FormView) bool { return v.Name == p.view }):
		r.failf(n.at("view"), "there is no view %q; name one of the form's", p.view)
	}
	f.pieces = append(f.pieces, p)
}

func (r *formReader) seam(n jsonNode) {
	in := r.object(n, "name", "priority", "visible", "when", "joins")
	s := formSeam{
		name: r.word(in, n, "name", maxWords, true), visible: r.truth(in, "visible", true),
		priority: r.whole(in, n, "priority", 1, lowestPriority), when: r.option(in, "when", aCondition),
	}
	for _, e := range r.list(in["joins"], maxJoins) {
		s.joins = append(s.joins, r.join(e))
	}
	switch {
	case r.fault != nil:
	case len(s.joins) == 0:
		r.failf(n.path, "the seam joins nothing; add its joins")
	case slices.ContainsFunc(r.form.seams, func(q formSeam) bool { return q.name == s.name }):
		r.failf(n.at("name"), "another seam is called %q too; give each its own name", s.name)
	}
	r.form.seams = append(r.form.seams, s)
}

func (r *formReader) join(n jsonNode) formJoin {
	in := r.object(n, "first", "second", "from", "to")
	j := formJoin{
		first: r.edgeOf(in["first"], n), second: r.edgeOf(in["second"], n),
		from: r.option(in, "from", aLength), to: r.option(in, "to", aLength),
	}
	if r.fault == nil && j.first.upright() != j.second.upright() {
		r.failf(n.path, "an upright edge can't be sewn to a level one here; join left and right, or top and bottom")
	}
	return j
}

// upright reports whether the edge runs down the view.
func (e edge) upright() bool { return e.side == "left" || e.side == "right" }

// edgeOf reads an edge: the piece's name and the side.
func (r *formReader) edgeOf(n, of jsonNode) edge {
	both := r.list(n, 2)
	if r.fault != nil || len(both) != 2 {
		r.failf(of.path, "first and second are each a piece and its side, such as [\"left back\", \"right\"]")
		return edge{}
	}
	e := edge{r.text(both[0], maxWords, true), r.text(both[1], maxWords, true)}
	if r.fault == nil && !slices.ContainsFunc(r.form.pieces, func(p formPiece) bool { return p.name == e.piece }) {
		r.failf(both[0].path, "there is no piece %q; name one of the form's", e.piece)
	}
	if r.fault == nil && !slices.Contains([]string{"left", "right", "top", "bottom"}, e.side) {
		r.failf(both[1].path, "%q is no side; write left, right, top or bottom", e.side)
	}
	return e
}
