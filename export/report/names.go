package report

import (
	"slices"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
)

// A kind of file in the job folder and what the index says of it. Those of the
// set are only there where the order is cut as two sheets; those for the board's
// edge are the names of ofMarks, where there is a board.
type entry struct {
	name  string
	about string
	ofSet bool
}

// ofMarks begins the names of what marks a board; poured dye is not laid on one.
const ofMarks = "strip"

// allEntries lists what a job folder can hold in the order in which the bench
// needs it. One binding serves both sheets of a split: the string holes keep
// clear of what either cuts.
func allEntries() []entry {
	return []entry{
		{"cut.svg", "the cut-ready drawing, one group for each method and tool", false},
		{"cut.dxf", "the same drawing, one layer for each method and tool, round holes as circles", false},
		{"cut.pdf", "the same drawing on one page of the paper's size", false},
		{"cut-only.svg", "what is cut and nothing else, in the order of the work, for a machine", false},
		{"cut-only.dxf", "the same for a machine, one layer for each method and tool", false},
		{"cut-only.hpgl", "the same for a cutting plotter, a pen for each method and tool", false},
		{"cut-second.svg", "the cut-ready drawing of the second sheet", true},
		{"cut-second.dxf", "the same drawing, one layer for each method and tool", true},
		{"cut-second.pdf", "the same drawing on one page of the paper's size", true},
		{"cut-only-second.svg", "what is cut of the second sheet and nothing else", true},
		{"cut-only-second.dxf", "the same of the second sheet for a machine", true},
		{"cut-only-second.hpgl", "the same of the second sheet for a cutting plotter", true},
		{"bench.pdf", "for the cutter: tools, passes, counts, lengths, times and the pile, to tick off", false},
		{"transfer.pdf", "marking sheets for the transfer: print at 100 %, paste by the crosses", false},
		{"transfer-whole.pdf", "the whole field on one page, for a wide printer", false},
		{"transfer-second.pdf", "marking sheets for the transfer of the second sheet", true},
		{"transfer-second-whole.pdf", "the whole field of the second sheet on one page", true},
		{"binding.pdf", "marking sheets for the binding: string holes and paper edges", false},
		{"reinforcement.pdf", "threads, gauze and ties to cut away afterwards, over the cut field at true scale", false},
		{"register.pdf", "for the dyer: stars, square check, step, placements, drift, cautions", false},
		{"dyer.pdf", "the dyer's card: cloth and dye, the board, how to lay the stencil true, on one page", false},
		{"strip.pdf", "the scale for the board's edge, with a mark for every placement: print, cut, join", false},
		{"strip-whole.pdf", "the same scale in as few pieces as can be, for a roll", false},
		{"proof.pdf", "the proof to show the customer: pattern, cloth at true size, garment, measures in plain words", false},
		{"placements.csv", "every placement: where it starts, on which face, how far it may walk", false},
		{"findings.txt", "what was measured and needs a look", false},
		{"unit.png", "picture: the unit among its neighbours", false},
		{"sheet.png", "picture: the sheet as it is cut", false},
		{"sheet-second.png", "picture: the second sheet as it is cut", true},
		{"set.png", "picture: the second sheet laid over the first, in place and laid off", true},
		{"joint.png", "picture: the joint between two placements", false},
		{"bolt.png", "picture: the placements along the bolt", false},
		{"garment.png", "picture: the pieces of the garment with their seams", false},
		{"README.txt", "this list", false},
	}
}

// entries lists what the job folder of w holds.
func entries(w repeat.Work) []entry {
	all := slices.DeleteFunc(allEntries(), func(e entry) bool {
		return e.ofSet && w.Sheet.Second == nil || strings.HasPrefix(e.name, ofMarks) && len(cloth.Marks(w.Run)) == 0 || e.name == "reinforcement.pdf" && !reinforced(w)
	})
	for i, e := range all {
		if e.name == "binding.pdf" && w.Sheet.Second != nil {
			all[i].about = "marking sheets for the binding: string holes and paper edges, the same for both sheets, whose cuts the holes keep clear of"
		}
	}
	return all
}

// Names lists the files of the job folder of w in the order in which they are
// written.
func Names(w repeat.Work) []string {
	var names []string
	for _, e := range entries(w) {
		names = append(names, e.name)
	}
	return names
}

// Paged lists the files of the job folder of w that are made for the pages of a usual
// printer; the others that can be printed are as large as the paper or the field.
func Paged(w repeat.Work) []string {
	return slices.DeleteFunc(Names(w), func(name string) bool {
		return !strings.HasSuffix(name, ".pdf") || strings.HasPrefix(name, "cut") || strings.Contains(name, "-whole")
	})
}
