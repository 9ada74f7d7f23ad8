package outlinefile

import (
	"slices"

	"tsugime/repeat/geom"
)

// sound returns o mended by the even-odd or the non-zero rule, and whether it was
// narrow enough for that. One circle alone is sound. The rest is mended about the
// origin, where coordinates are small, and moved back.
func sound(o geom.Outline, evenOdd bool) (geom.Outline, bool) {
	if len(o) == 1 {
		if _, round := discOf(o[0]); round {
			return o, true
		}
	}
	box := o.Bounds()
	if box.Empty() {
		return nil, true
	}
	if box.Width() > geom.MaxSpan/2 || box.Height() > geom.MaxSpan/2 {
		return o, false
	}
	home := box.Centre()
	o = o.Moved(home.Neg())
	var mends []geom.Mend
	if evenOdd {
		o, mends = o.MendedEvenOdd()
	} else {
		o, mends = o.Mended()
	}
	wide := slices.ContainsFunc(mends, func(m geom.Mend) bool { return m.Flaw == geom.TooWide })
	return o.Moved(home), !wide
}

// tooWide is what is said of an outline that can't be sound.
func tooWide(log *logbook, line int, kind string, o geom.Outline) {
	b := o.Bounds()
	log.add(line, "%s: it is %s × %s mm and was left out; outlines may be %s mm each way", kind, b.Width(), b.Height(), geom.MaxSpan/2)
}

// Bounds of one shape: no tool cuts less, and no order holds more.
const (
	minExtent      = 10 * geom.Micrometre
	maxShapePieces = 100_000
)

// cuttable reports whether a shape can be a motif, and notes it where it can't.
func cuttable(log *logbook, line int, kind string, s geom.Shape) bool {
	if b := s.Bounds(); b.Width() < minExtent || b.Height() < minExtent {
		log.add(line, "%s: it is smaller than %s mm and was left out", kind, minExtent)
		return false
	}
	pieces := 0
	for _, c := range s.Outline {
		pieces += len(c.Segments)
	}
	if pieces > maxShapePieces {
		log.add(line, "%s: it has %d pieces and was left out; draw it plainer, with %d at most", kind, pieces, maxShapePieces)
		return false
	}
	return true
}
