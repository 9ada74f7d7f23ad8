package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"tsugime/repeat"
)

type placementJSON struct {
	N     int    `json:"n"`
	Y     mm     `json:"y_mm"`
	Face  string `json:"face"`
	WalkX mm     `json:"walk_x_mm"`
	WalkY mm     `json:"walk_y_mm"`
}

type boltJSON struct {
	Schema     int             `json:"schema"`
	Count      int             `json:"count"`
	Step       mm              `json:"step_mm"`
	Remainder  mm              `json:"remainder_mm"`
	Placements []placementJSON `json:"placements"`
	Drift      struct {
		Way        string `json:"way"`
		EndX       mm     `json:"end_x_mm"`
		EndY       mm     `json:"end_y_mm"`
		WorstJoint mm     `json:"worst_joint_mm"`
	} `json:"drift"`
}

func runBolt(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, asCSV := flags.Bool("json", false, ""), flags.Bool("csv", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if *asJSON && *asCSV {
		return wrongUse("bolt: --json and --csv are two forms of the same; give one")
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	switch {
	case *asJSON:
		return p.printJSON(boltDocument(w))
	case *asCSV:
		return p.boltCSV(w)
	}
	_, err = fmt.Fprint(p.out, boltText(w))
	return err
}

func boltDocument(w repeat.Work) boltJSON {
	r := w.Run
	doc := boltJSON{
		Schema: schema, Count: len(r.Placements), Step: mm(r.Step), Remainder: mm(r.Remainder),
		Placements: []placementJSON{},
	}
	for _, l := range r.Placements {
		doc.Placements = append(doc.Placements, placementJSON{l.N, mm(l.Y), string(l.Face), mm(l.WalkX), mm(l.WalkY)})
	}
	doc.Drift.Way = string(r.Drift.Way)
	doc.Drift.EndX, doc.Drift.EndY, doc.Drift.WorstJoint = mm(r.Drift.EndX), mm(r.Drift.EndY), mm(r.Drift.WorstJoint)
	return doc
}

func (p program) boltCSV(w repeat.Work) error {
	table := csv.NewWriter(p.out)
	rows := [][]string{{"n", "y_mm", "face", "walk_x_mm", "walk_y_mm"}}
	for _, l := range w.Run.Placements {
		rows = append(rows, []string{strconv.Itoa(l.N), l.Y.String(), string(l.Face), l.WalkX.String(), l.WalkY.String()})
	}
	return table.WriteAll(rows)
}

func boltText(w repeat.Work) string {
	var b strings.Builder
	r := w.Run
	fmt.Fprintf(&b, "%s\n\n%d placements of %s on a bolt of %s; %s left over.\n", w.Order.Title,
		len(r.Placements), long(r.Step), long(r.Bolt.Length), long(r.Remainder))
	fmt.Fprintf(&b, "Laid %s: the end walks %s across and %s along; the worst joint is off by %s (standard deviations).\n\n",
		r.Drift.Way, long(r.Drift.EndX), long(r.Drift.EndY), long(r.Drift.WorstJoint))
	b.WriteString("    n        y mm  face    walk across   along mm\n")
	for _, l := range r.Placements {
		fmt.Fprintf(&b, "%5d %11.3f  %-5s %12.3f %10.3f\n", l.N, l.Y.MM(), l.Face, l.WalkX.MM(), l.WalkY.MM())
	}
	return b.String()
}
