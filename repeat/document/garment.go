package document

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// Kinds of values that only the garment has: lengths, counts and turns by name.
type (
	lengths map[string]geom.Length
	counts  map[string]int
	turns   map[string]bool
	names   []string
)

// A formText is a form as indented JSON.
type formText string

// garmentLayout is the part of the file on the garment. What is as the form has
// it is left out.
var garmentLayout = []field{
	{key: "kind", at: func(o *Order) any { return (*string)(&o.Garment.Body.Kind) }},
	{key: "height_mm", at: func(o *Order) any { return &o.Garment.Body.Height }},
	{key: "match_back_centre", at: func(o *Order) any { return &o.Garment.MatchBackCentre }},
	{key: "sizes_mm", at: func(o *Order) any { return (*lengths)(&o.Garment.Body.Sizes) },
		bare: func(o *Order) bool { return len(o.Garment.Body.Sizes) == 0 }},
	{key: "counts", at: func(o *Order) any { return (*counts)(&o.Garment.Body.Counts) },
		bare: func(o *Order) bool { return len(o.Garment.Body.Counts) == 0 }},
	{key: "allowances_mm", at: func(o *Order) any { return (*lengths)(&o.Garment.Body.Allowances) },
		bare: func(o *Order) bool { return len(o.Garment.Body.Allowances) == 0 }},
	{key: "panel_order", at: func(o *Order) any { return (*names)(&o.Garment.Layout.Order) },
		bare: func(o *Order) bool { return len(o.Garment.Layout.Order) == 0 }},
	{key: "gaps_mm", at: func(o *Order) any { return (*lengths)(&o.Garment.Layout.Gaps) },
		bare: func(o *Order) bool { return len(o.Garment.Layout.Gaps) == 0 }},
	{key: "shifts_mm", at: func(o *Order) any { return (*lengths)(&o.Garment.Layout.Shifts) },
		bare: func(o *Order) bool { return len(o.Garment.Layout.Shifts) == 0 }},
	{key: "turned", at: func(o *Order) any { return (*turns)(&o.Garment.Layout.Turned) },
		bare: func(o *Order) bool { return len(o.Garment.Layout.Turned) == 0 }},
	{key: "match", at: func(o *Order) any { return &o.Garment.Wishes.Seams },
		bare: func(o *Order) bool { return len(o.Garment.Wishes.Seams) == 0 }},
	{key: "targets", at: func(o *Order) any { return &o.Garment.Wishes.Targets },
		bare: func(o *Order) bool { return len(o.Garment.Wishes.Targets) == 0 }},
	{key: "avoid_turn", at: func(o *Order) any { return &o.Garment.Wishes.AvoidTurn },
		bare: func(o *Order) bool { return !o.Garment.Wishes.AvoidTurn }},
	{key: "any_order", at: func(o *Order) any { return &o.Garment.Wishes.AnyOrder },
		bare: func(o *Order) bool { return !o.Garment.Wishes.AnyOrder }},
	{key: "form", at: func(o *Order) any { return (*formText)(&o.Garment.Body.Own) },
		bare: func(o *Order) bool { return o.Garment.Body.Own == "" }},
}

// GarmentKinds are the garments that a bolt is cut to by a form of the program's.
var GarmentKinds = named(cloth.GarmentKinds())

// maxNamed is how many values a garment may have under one key.
const maxNamed = 100

// byName reads an object whose keys are names of the form's.
func byName[T any](r *reader, read func() T) map[string]T {
	all := map[string]T{}
	r.object(func(key []byte) {
		name := string(key)
		if _, twice := all[name]; twice {
			r.failf(r.at, "the key stands here twice; keep one of the two")
		}
		if len(all) == maxNamed {
			r.failf(r.at, "more than %d values; a form has fewer", maxNamed)
		}
		all[name] = read()
	})
	return all
}

// form reads a form that the order brings along.
func (r *reader) form() formText {
	path := string(r.path)
	from := r.at
	text := r.skip()
	if r.fault != nil {
		return ""
	}
	f, err := cloth.ReadForm(text)
	if err == nil {
		return formText(f.Text)
	}
	r.failf(from, "%v", err)
	r.fault.Path, r.fault.Text = formPlace(path, err)
	r.fault.Line, r.fault.Column = locate(r.data, r.fault.Path)
	return ""
}

// formPlace returns where a form is at fault, from the order's top, and why.
func formPlace(path string, err error) (at, text string) {
	var wrong *cloth.FormFault
	if !errors.As(err, &wrong) {
		return path, err.Error()
	}
	return strings.TrimSuffix(path+"."+wrong.Path, "."), wrong.Text
}

// writeNamed writes values by name, in the order of the names.
func writeNamed[T any](p *printer, all map[string]T, write func(T)) {
	p.buf = append(p.buf, '{')
	for i, name := range slices.Sorted(maps.Keys(all)) {
		if i > 0 {
			p.buf = append(p.buf, ", "...)
		}
		p.text(name)
		p.buf = append(p.buf, ": "...)
		write(all[name])
	}
	p.buf = append(p.buf, '}')
}

// form writes a form as it was read, set in.
func (p *printer) form(text formText) {
	prefix := strings.Repeat("  ", p.depth)
	p.buf = append(p.buf, strings.ReplaceAll(string(text), "\n", "\n"+prefix)...)
}

func (p *printer) length(l geom.Length) { p.buf = l.AppendMM(p.buf, 6) }
func (p *printer) count(n int)          { p.buf = strconv.AppendInt(p.buf, int64(n), 10) }
func (p *printer) truth(is bool)        { p.buf = strconv.AppendBool(p.buf, is) }

// checkGarment refuses what no form could take; whether this one does, Dress
// tells.
func checkGarment(o Order) *Fault {
	b, l := o.Garment.Body, o.Garment.Layout
	fault := first(
		oneOf("garment.kind", string(b.Kind), GarmentKinds),
		within("garment.height_mm", b.Height, 300*geom.Millimetre, 2500*geom.Millimetre),
		lengthsWithin("garment.sizes_mm", b.Sizes), lengthsWithin("garment.allowances_mm", b.Allowances),
		lengthsWithin("garment.gaps_mm", l.Gaps), lengthsWithin("garment.shifts_mm", l.Shifts),
		namesOf("garment.counts", b.Counts), namesOf("garment.turned", l.Turned), checkWishes(o.Garment.Wishes),
	)
	for i, name := range l.Order {
		fault = first(fault, words(fmt.Sprintf("garment.panel_order[%d]", i), name, maxTitle, false))
	}
	if len(l.Order) > maxNamed {
		return faultf("garment.panel_order", "%d panels; a form has %d at most", len(l.Order), maxNamed)
	}
	if b.Own != "" && fault == nil {
		if _, err := b.Form(); err != nil {
			path, text := formPlace("garment.form", err)
			return faultf(path, "%s", text)
		}
	}
	return fault
}

func namesOf[T any](path string, all map[string]T) *Fault {
	if len(all) > maxNamed {
		return faultf(path, "%d values; a form has %d at most", len(all), maxNamed)
	}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		if fault := words(path, name, maxTitle, false); fault != nil {
			return fault
		}
	}
	return nil
}

func lengthsWithin(path string, all map[string]geom.Length) *Fault {
	if fault := namesOf(path, all); fault != nil {
		return fault
	}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		if fault := within(path+"."+name, all[name], -maxBolt, maxBolt); fault != nil {
			return fault
		}
	}
	return nil
}
