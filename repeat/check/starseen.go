package check

import (
	"fmt"

	"tsugime/repeat/cloth"
)

// starsSeen tells which marks of the feed stars the made-up garment shows, each
// followed by itself.
func starsSeen(m Measures, _ Limits) []Finding {
	leading := m.Sheet.Stars.Marking()
	if len(leading) == 0 || len(m.Dressed.Panels) == 0 {
		return nil
	}
	prints := cloth.StarPrints(m.Dressed, m.Run, leading)
	seen := cloth.SeenStars(prints)
	if len(seen) == 0 {
		return nil
	}
	first := seen[0]
	return []Finding{{
		Code: "star-seen", Severity: Note, Domain: OnCloth, At: first.At,
		Text: fmt.Sprintf("Of %d marks that the stars leave on the cloth the garment shows %d, the first on the %s.",
			len(prints), len(seen), first.Piece),
		Remedy: "Move the stars nearer to the selvedge or into a hole of their size, or have the marks dyed over.",
	}}
}
