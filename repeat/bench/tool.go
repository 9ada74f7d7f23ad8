package bench

import (
	"fmt"
	"unicode"
	"unicode/utf8"

	"tsugime/repeat/geom"
)

// A Kind is what a tool is.
type Kind string

// The kinds of tools.
const (
	Awl   Kind = "awl"   // an awl's curved blade or a round punch: leaves a round hole
	Punch Kind = "punch" // forged to a shape, which one push cuts
	Knife Kind = "knife" // for thrust and pull
	Pair  Kind = "pair"  // two blades side by side, for stripes
)

// Kinds returns the kinds of tools.
func Kinds() []Kind { return []Kind{Awl, Punch, Knife, Pair} }

// A Condition is how a tool is.
type Condition string

// The conditions. A broken tool is never chosen.
const (
	Sharp  Condition = "sharp"
	Worn   Condition = "worn"
	Broken Condition = "broken"
)

// Conditions returns the conditions.
func Conditions() []Condition { return []Condition{Sharp, Worn, Broken} }

// A Tool is one of the cutter's own.
type Tool struct {
	Kind   Kind
	Number string // the cutter's own; tells tools apart
	// Size is the diameter an awl cuts, the width of a knife's tip, or how far a
	// pair's blades stand apart. A punch has its Outline instead.
	Size      geom.Length
	Outline   geom.Outline // of a punch
	Condition Condition    // "" counts as sharp
	Note      string
}

// Bounds of a rack.
const (
	maxTools  = 10_000
	maxPieces = 1_000 // of one punch's outline
	maxWords  = 200   // letters of a number or a note
	mostPile  = 50    // sheets of a limit
)

// Sizes that a tool may have.
const (
	leastSize = 50 * geom.Micrometre
	mostSize  = 100 * geom.Millimetre
)

// check returns what is wrong with the tool: the name of the value, and what to do.
func (t Tool) check() (value, fault string) {
	switch {
	case t.Number == "":
		return "number", "a tool without a number can't be told from others; give it one"
	case !plain(t.Number):
		return "number", fmt.Sprintf("it has more than %d letters or some that can't be printed; shorten it", maxWords)
	case !plain(t.Note):
		return "note", fmt.Sprintf("it has more than %d letters or some that can't be printed; shorten it", maxWords)
	case t.Condition != "" && t.Condition != Sharp && t.Condition != Worn && t.Condition != Broken:
		return "condition", fmt.Sprintf("there is no condition %.40q; give one of %q", t.Condition, Conditions())
	}
	switch t.Kind {
	case Awl, Knife, Pair:
		if t.Size < leastSize || t.Size > mostSize {
			return "size_mm", fmt.Sprintf("a size of %s mm is out of bounds; give %s to %s", t.Size, leastSize, mostSize)
		}
	case Punch:
		return t.checkOutline()
	default:
		return "kind", fmt.Sprintf("there is no kind %.40q; give one of %q, or a method for limits of your own", t.Kind, Kinds())
	}
	return "", ""
}

func (t Tool) checkOutline() (value, fault string) {
	pieces := 0
	for _, c := range t.Outline {
		pieces += len(c.Segments)
	}
	b := t.Outline.Bounds()
	switch {
	case len(t.Outline) == 0:
		return "outline_mm", "a punch needs the outline it cuts, as SVG path data in mm, like M0 0H2V1Z"
	case pieces > maxPieces:
		return "outline_mm", fmt.Sprintf("%d pieces; keep the outline to %d", pieces, maxPieces)
	case max(b.Width(), b.Height()) > mostSize || min(b.Width(), b.Height()) < leastSize:
		return "outline_mm", fmt.Sprintf("it is %s × %s mm; keep it within %s to %s each way", b.Width(), b.Height(), leastSize, mostSize)
	}
	return "", ""
}

// plain reports whether words are short and can be printed on one line.
func plain(words string) bool {
	if !utf8.ValidString(words) || utf8.RuneCountInString(words) > maxWords {
		return false
	}
	for _, r := range words {
		if !unicode.IsPrint(r) {
			return false
		}
	}
	return true
}
