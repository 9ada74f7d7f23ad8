package main

import (
	"context"
	"fmt"
	"strings"

	"tsugime/repeat"
)

type panelJSON struct {
	Name   string `json:"name"`
	X      mm     `json:"x_mm"`
	Y      mm     `json:"y_mm"`
	Length mm     `json:"length_mm"`
	Width  mm     `json:"width_mm"`
	Turned bool   `json:"turned"`
}

type seamJSON struct {
	Name    string    `json:"name"`
	Between [2]string `json:"between"`
	Along   mm        `json:"phase_along_mm"`
	Across  mm        `json:"phase_across_mm"`
	Matched bool      `json:"matched"`
}

type garmentJSON struct {
	Schema int         `json:"schema"`
	Panels []panelJSON `json:"panels"`
	Seams  []seamJSON  `json:"seams"`
	Extra  mm          `json:"extra_cloth_mm"`
	Used   mm          `json:"cloth_used_mm"`
}

func runGarment(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON := flags.Bool("json", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
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
		Schema: schema, Panels: []panelJSON{}, Seams: []seamJSON{},
		Extra: mm(d.Extra), Used: mm(d.Used),
	}
	for _, l := range d.Panels {
		doc.Panels = append(doc.Panels, panelJSON{l.Name, mm(l.X), mm(l.Y), mm(l.Length), mm(l.Width), l.Turned})
	}
	for _, s := range d.Seams {
		doc.Seams = append(doc.Seams, seamJSON{s.Name, s.Between, mm(s.PhaseAlong), mm(s.PhaseAcross), s.Matched})
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
	b.WriteString("panel                       from mm   length mm    width mm  turned\n")
	for _, l := range d.Panels {
		turned := ""
		if l.Turned {
			turned = "turned"
		}
		fmt.Fprintf(&b, "%-24s %10.1f %11.1f %11.1f  %s\n", l.Name, l.Y.MM(), l.Length.MM(), l.Width.MM(), turned)
	}
	b.WriteString("\nseam                        along mm   across mm\n")
	for _, s := range d.Seams {
		matched := ""
		if s.Matched {
			matched = "matched"
		}
		fmt.Fprintf(&b, "%-24s %11.3f %11.3f  %s\n", s.Name, s.PhaseAlong.MM(), s.PhaseAcross.MM(), matched)
	}
	return b.String()
}
