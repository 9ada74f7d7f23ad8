package main

import (
	"context"
	"fmt"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
)

type panelJSON struct {
	Name       string     `json:"name"`
	X          mm         `json:"x_mm"`
	Y          mm         `json:"y_mm"`
	Length     mm         `json:"length_mm"`
	Width      mm         `json:"width_mm"`
	Turned     bool       `json:"turned"`
	Lane       [2]rounded `json:"lane"`
	UpsideDown []string   `json:"worn_upside_down"`
	Shift      mm         `json:"shift_mm"`
	ShiftRange [2]mm      `json:"shift_range_mm"`
}

type meetingJSON struct {
	Stretch  [2]mm    `json:"stretch_mm"`
	Along    mm       `json:"phase_along_mm"`
	Across   mm       `json:"phase_across_mm"`
	Finished [2][2]mm `json:"finished_mm"`
}

type seamJSON struct {
	Name    string    `json:"name"`
	Between [2]string `json:"between"`
	Along   mm        `json:"phase_along_mm"`
	Across  mm        `json:"phase_across_mm"`
	Matched bool      `json:"matched"`
	// Finished is where the line begins on the cloth, on each of the two panels.
	Finished  [2][2]mm      `json:"finished_mm"`
	FinishedX [2]mm         `json:"finished_x_mm"`
	Stretch   [2]mm         `json:"stretch_mm"`
	Also      []meetingJSON `json:"also"`
	Visible   bool          `json:"visible"`
	Priority  int           `json:"priority"`
	Opposite  bool          `json:"opposite_ways"`
}

type sizeJSON struct {
	Name   string `json:"name"`
	Title  string `json:"title"`
	Size   mm     `json:"size_mm"`
	Wanted *mm    `json:"wanted_mm,omitempty"`
	Source string `json:"source"`
}

type garmentJSON struct {
	Schema int         `json:"schema"`
	Kind   string      `json:"kind"`
	Title  string      `json:"title"`
	Sizes  []sizeJSON  `json:"sizes"`
	Panels []panelJSON `json:"panels"`
	Seams  []seamJSON  `json:"seams"`
	Extra  mm          `json:"extra_cloth_mm"`
	Used   mm          `json:"cloth_used_mm"`
	Cloth  mm          `json:"cloth_there_is_mm"`
	Hidden mm          `json:"hidden_mm"`
	matchesJSON
}

// garmentKeys explains the keys of the document to those who ask for help.
const garmentKeys = `Keys of --json: sizes are finished sizes (wanted_mm where the cloth has less room);
of a panel, lane is its share of the cloth's width from 0 to 1, worn_upside_down the
views in which it hangs against the feed, shift_mm how far what is sewn of it is moved
across it and shift_range_mm how far it may be; of a seam, phases are modulo the
lattice, finished_mm is where its finished line begins on the cloth of each panel
(x, y) and finished_x_mm that line's x, stretch_mm its part of the view, also what
differs past a tuck, priority 1 what is matched first, opposite_ways that the cloth
hangs upside down on one side only.
Of matches, goal is run-on, staggered, apart, motif or clear (of the board's turn), cost_mm
the cloth with it less the cloth without it, why across, conflict, cloth or repeat where it
isn't reached, and width_change_mm how much wider the finished cloth would have to be;
lower_bound_mm is what no laying that reaches as much goes below.
An order sets garment.kind, height_mm, sizes_mm, counts, allowances_mm, panel_order,
gaps_mm, shifts_mm, turned, match, targets, avoid_turn and any_order, or brings a form of its own as garment.form.
`

func runGarment(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, list := flags.Bool("json", false, ""), flags.Bool("list", false, "")
	words, err := p.parse(c, flags, args, 0, 1)
	if err != nil {
		return err
	}
	if *list {
		return p.listGarments(words)
	}
	if len(words) == 0 {
		return wrongUse("garment: name an order, or use --list to see the garments; usage: tsugime garment %s", c.usage)
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	if *asJSON {
		return p.printJSON(garmentDocument(w))
	}
	_, err = fmt.Fprint(p.out, garmentText(w))
	return err
}

func garmentDocument(w repeat.Work) garmentJSON {
	d := w.Dressed
	doc := garmentJSON{
		Schema: schema, Kind: string(w.Order.Garment.Body.Kind), Sizes: []sizeJSON{}, Panels: []panelJSON{}, Seams: []seamJSON{},
		Extra: mm(d.Extra), Used: mm(d.Used), Cloth: mm(d.Length), Hidden: mm(d.Hidden), matchesJSON: matchesDocument(d),
	}
	if d.Form == nil {
		return doc
	}
	doc.Kind, doc.Title = string(d.Form.Name), d.Form.Title
	for _, s := range d.Sizes {
		size := sizeJSON{s.Name, s.Title, mm(s.Length), nil, s.Source}
		for _, n := range d.Narrowed {
			if n.Name == s.Name {
				size.Wanted = new(mm)
				*size.Wanted = mm(n.Wanted)
			}
		}
		doc.Sizes = append(doc.Sizes, size)
	}
	laying := d.Laying()
	for i, l := range d.Panels {
		down := []string{}
		for _, v := range l.UpsideDown {
			down = append(down, string(v))
		}
		own := laying.Panels[i]
		doc.Panels = append(doc.Panels, panelJSON{
			l.Name, mm(l.X), mm(l.Y), mm(l.Length), mm(l.Width), l.Turned, [2]rounded{rounded(l.Lane[0]), rounded(l.Lane[1])}, down,
			mm(own.Shift), [2]mm{mm(own.ShiftLeast), mm(own.ShiftMost)},
		})
	}
	for _, s := range d.Seams {
		doc.Seams = append(doc.Seams, seamDocument(s))
	}
	return doc
}

func seamDocument(s cloth.Seam) seamJSON {
	part := func(m cloth.Meeting) meetingJSON {
		return meetingJSON{[2]mm{mm(m.From), mm(m.To)}, mm(m.PhaseAlong), mm(m.PhaseAcross), [2][2]mm{at(m.At), at(m.On)}}
	}
	main := part(s.Meeting)
	doc := seamJSON{
		Name: s.Name, Between: s.Between, Along: main.Along, Across: main.Across, Matched: s.Matched,
		Finished: main.Finished, FinishedX: [2]mm{mm(s.At.X), mm(s.On.X)}, Stretch: main.Stretch, Also: []meetingJSON{},
		Visible: s.Visible, Priority: s.Priority, Opposite: s.Opposite,
	}
	for _, m := range s.Also {
		doc.Also = append(doc.Also, part(m))
	}
	return doc
}

func garmentText(w repeat.Work) string {
	var b strings.Builder
	d := w.Dressed
	if len(d.Panels) == 0 {
		return w.Order.Title + "\n\nNo garment could be laid on this bolt; 'tsugime check' says why.\n"
	}
	fmt.Fprintf(&b, "%s\n\nThe garment uses %s of the bolt of %s; %s of it for matching.\n\n", w.Order.Title,
		long(d.Used), long(w.Run.Bolt.Length), long(d.Extra))
	for _, size := range d.Sizes {
		fmt.Fprintf(&b, "%-32s %9.1f mm\n", size.Title, size.Length.MM())
	}
	for _, n := range d.Narrowed {
		fmt.Fprintf(&b, "! %s: %.1f mm are wanted, the cloth has room for less\n", n.Title, n.Wanted.MM())
	}
	b.WriteString("\npanel                       from mm   length mm    width mm  turned\n")
	for _, l := range d.Panels {
		notes := []string{}
		if l.Turned {
			notes = append(notes, "turned")
		}
		for _, v := range l.UpsideDown {
			notes = append(notes, "upside down in the "+string(v))
		}
		fmt.Fprintf(&b, "%-24s %10.1f %11.1f %11.1f  %s\n", l.Name, l.Y.MM(), l.Length.MM(), l.Width.MM(), strings.Join(notes, ", "))
	}
	b.WriteString("\nseam                        along mm   across mm\n")
	for _, s := range d.Seams {
		matched := ""
		if s.Matched {
			matched = "matched"
		}
		fmt.Fprintf(&b, "%-24s %11.3f %11.3f  %s\n", s.Name, s.PhaseAlong.MM(), s.PhaseAcross.MM(), matched)
		for _, m := range s.Also {
			fmt.Fprintf(&b, "  past the tuck          %11.3f %11.3f\n", m.PhaseAlong.MM(), m.PhaseAcross.MM())
		}
	}
	matchesText(&b, d)
	return b.String()
}
