package check

import (
	"fmt"
	"math"

	"tsugime/repeat/pattern"
)

// A Ground is the recipe that the unit was laid by, and how it met the step.
type Ground struct {
	Recipe pattern.Recipe
	Laying pattern.Laying
}

// bentGround reports a ground that is stretched more across than along: its
// circles are no circles any more.
func bentGround(m Measures, _ Limits) []Finding {
	g := m.Ground
	if math.Abs(g.Laying.Bent) <= pattern.MostBent {
		return nil
	}
	even := g.Recipe.Width.Times(1 / (1 + g.Laying.Bent))
	return []Finding{{
		Code: "ground-bent", Severity: Warning, Domain: OnUnit,
		Text: fmt.Sprintf("The ground %s is stretched by %+.2f %% more across than along, so that %d of its tiles fill %s; above %g %% it shows.",
			g.Recipe.Ground, 100*g.Laying.Bent, g.Laying.Columns, mm(g.Recipe.Width), 100*pattern.MostBent),
		Remedy: fmt.Sprintf("Let it repeat in %s or as it comes, or change its size until both fit.", mm(even)),
	}}
}
