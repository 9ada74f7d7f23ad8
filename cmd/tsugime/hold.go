package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

func runHold(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	way := flags.String("by", string(stencil.WithTies), "")
	width, cut, lap := flags.String("width", "", ""), flags.String("second", "", ""), flags.String("lap", "", "")
	out, force := flags.String("o", "", ""), flags.Bool("force", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if err := oneOf("by", *way, named(stencil.HoldWays())...); err != nil {
		return err
	}
	o, err := p.readOrder(words[0])
	if err != nil {
		return err
	}
	h := o.Sheet.Hold
	if h.TieWidth, err = lengthFlag("width", *width, h.TieWidth); err != nil {
		return err
	}
	if h.Second.Lap, err = lengthFlag("lap", *lap, h.Second.Lap); err != nil {
		return err
	}
	if *cut != "" {
		if err := oneOf("second", *cut, named(stencil.SecondCuts())...); err != nil {
			return err
		}
		h.Second.Cut = stencil.SecondCut(*cut)
	}
	if o, err = document.SetHold(o, h); err != nil {
		return wrongUse("hold: %v", err)
	}
	o, unheld, err := heldOrder(ctx, o, stencil.HoldWay(*way))
	if err != nil {
		return err
	}
	if err := p.save(*out, *force, func(w io.Writer) error { return document.Write(w, o) }); err != nil {
		return err
	}
	_, err = fmt.Fprint(p.err, holdText(o, unheld))
	return err
}

// heldOrder holds the paper of an order in one of the ways.
func heldOrder(ctx context.Context, o document.Order, way stencil.HoldWay) (document.Order, []stencil.Unheld, error) {
	switch way {
	case stencil.WithTies:
		h := o.Sheet.Hold
		h.Way = stencil.WithTies
		o, err := document.SetHold(o, h)
		if err != nil {
			return o, nil, err
		}
		return document.ProposeTies(ctx, o)
	case stencil.Split:
		return document.ProposeSplit(ctx, o)
	}
	h := o.Sheet.Hold
	h.Way, h.Ties, h.Second.Ties, h.Second.Motifs = stencil.AsDrawn, nil, nil, nil
	o, err := document.SetHold(o, h)
	return o, nil, err
}

func named[T ~string](choices []T) []string {
	var all []string
	for _, c := range choices {
		all = append(all, string(c))
	}
	return all
}

// holdText says what was done; it is a message, since the order itself may go to
// standard output.
func holdText(o document.Order, unheld []stencil.Unheld) string {
	var b strings.Builder
	h := o.Sheet.Hold
	fmt.Fprintf(&b, "tsugime: held by %s: %d ties", h.Way, len(h.Ties))
	if h.Way == stencil.Split {
		fmt.Fprintf(&b, ", on the second sheet %d ties and %d motifs of its own", len(h.Second.Ties), len(h.Second.Motifs))
	}
	b.WriteString("\n")
	for _, u := range unheld {
		fmt.Fprintf(&b, "tsugime: not held at %s, %s mm: %s\n", short(u.At.X), short(u.At.Y), u.Why)
	}
	return b.String()
}

type choiceJSON struct {
	Share     rounded `json:"share_pct"`
	Clearance mm      `json:"clearance_mm"`
	Length    mm      `json:"length_mm"`
	Points    int     `json:"points"`
}

func runJoint(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON := flags.Bool("json", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	o, err := p.readOrder(words[0])
	if err != nil {
		return err
	}
	choices, err := stencil.JointCurve(ctx, o.Design(), o.Sheet.Field, o.Sheet.Step)
	if err != nil {
		return fmt.Errorf("%s: %w", words[0], err)
	}
	if *asJSON {
		doc := struct {
			Schema  int          `json:"schema"`
			Choices []choiceJSON `json:"choices"`
		}{schema, []choiceJSON{}}
		for _, j := range choices {
			doc.Choices = append(doc.Choices, choiceJSON{rounded(100 * j.Share), mm(j.Clearance), mm(j.Length), j.Points})
		}
		return p.printJSON(doc)
	}
	_, err = fmt.Fprint(p.out, jointText(choices, o.Sheet.Joint))
	return err
}

func jointText(choices []stencil.JointChoice, spec stencil.JointSpec) string {
	var b strings.Builder
	b.WriteString("Joint lines: how much of the greatest clearance they keep, and how long they are:\n\n")
	b.WriteString("   share %   clearance mm   length mm   points\n")
	for _, j := range choices {
		fmt.Fprintf(&b, "%10.0f %14s %11s %8d\n", 100*j.Share, geom.Length(j.Clearance).AppendMM(nil, 3), geom.Length(j.Length).AppendMM(nil, 2), j.Points)
	}
	switch {
	case len(spec.Line) > 0:
		b.WriteString("\nThe order has a line drawn by hand.\n")
	default:
		fmt.Fprintf(&b, "\nThe order asks for %.0f %%.\n", 100*spec.Share)
	}
	return b.String()
}
