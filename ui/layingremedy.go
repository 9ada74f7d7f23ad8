package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
)

// layingRemedies are what another laying of the panels can mend.
func layingRemedies(code string) []remedy {
	wishes := func(name string, when func(w cloth.Wishes) bool, set func(w cloth.Wishes) cloth.Wishes) remedy {
		r := edited(name, func(o document.Order) (document.Order, error) { return document.SetWishes(o, set(o.Garment.Wishes)) })
		r.when = func(o document.Order) bool { return when(o.Garment.Wishes) }
		return r
	}
	free := wishes("Free the Order of Panels", func(w cloth.Wishes) bool { return !w.AnyOrder },
		func(w cloth.Wishes) cloth.Wishes { w.AnyOrder = true; return w })
	switch code {
	case "bolt-turn":
		return []remedy{wishes("Avoid the Turn", func(w cloth.Wishes) bool { return !w.AvoidTurn },
			func(w cloth.Wishes) cloth.Wishes { w.AvoidTurn = true; return w })}
	case "bolt-short":
		return []remedy{wishes("Ask Nothing of the Seams", func(w cloth.Wishes) bool { return len(w.Seams)+len(w.Targets) > 0 || w.AvoidTurn },
			func(cloth.Wishes) cloth.Wishes { return cloth.Wishes{} })}
	}
	return []remedy{free}
}
