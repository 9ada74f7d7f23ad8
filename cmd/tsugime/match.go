package main

import (
	"fmt"
	"strings"

	"tsugime/repeat/cloth"
)

// A matchJSON is what became of one wish for the garment, and what it costs.
type matchJSON struct {
	Name    string   `json:"name"`
	Goal    string   `json:"goal"`
	Reached bool     `json:"reached"`
	Along   mm       `json:"off_along_mm"`
	Across  mm       `json:"off_across_mm"`
	Cost    mm       `json:"cost_mm"`
	Why     string   `json:"why"`
	Width   mm       `json:"width_change_mm"`
	With    []string `json:"with"`
}

// A matchesJSON is the part of the garment's document on its wishes.
type matchesJSON struct {
	Matches []matchJSON `json:"matches"`
	Bound   mm          `json:"lower_bound_mm"`
	Proven  bool        `json:"proven"`
}

// The goals of wishes that are no seam's.
const (
	motifGoal = "motif"
	clearGoal = "clear"
)

func matchesDocument(d cloth.Dressed) matchesJSON {
	doc := matchesJSON{Matches: []matchJSON{}, Bound: mm(d.LowerBound), Proven: d.Proven}
	for _, m := range d.Matches {
		j := matchJSON{
			Name: m.Name, Goal: goalOf(m), Reached: m.Reached, Along: mm(m.Off.Y), Across: mm(m.Off.X), Cost: mm(m.Cost),
			Why: string(m.Why.Reason), Width: mm(m.Why.Width), With: m.Why.With,
		}
		if j.With == nil {
			j.With = []string{}
		}
		doc.Matches = append(doc.Matches, j)
	}
	return doc
}

func goalOf(m cloth.Match) string {
	switch {
	case m.Goal != "":
		return string(m.Goal)
	case m.Name == cloth.AvoidName:
		return clearGoal
	}
	return motifGoal
}

// matchesText says what was asked for, what came of it and what it costs.
func matchesText(b *strings.Builder, d cloth.Dressed) {
	if len(d.Matches) == 0 {
		return
	}
	b.WriteString("\nasked for                goal          cost mm\n")
	for _, m := range d.Matches {
		said := "reached"
		switch {
		case m.Along:
			said = fmt.Sprintf("closed along; across it is off by %.3f mm", m.Off.X.MM())
		case !m.Reached:
			said = "not reached; 'tsugime check' says why"
		}
		name := m.Name
		if name == cloth.AvoidName {
			name = "turn of the board"
		}
		fmt.Fprintf(b, "%-24s %-10s %10.1f  %s\n", name, goalOf(m), m.Cost.MM(), said)
	}
	if d.Proven {
		b.WriteString("No laying that reaches as much uses less cloth.\n")
	} else {
		fmt.Fprintf(b, "It isn't proven that no laying uses less; none uses less than %s.\n", long(d.LowerBound))
	}
}
