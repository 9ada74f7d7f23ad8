package report

// A kind of file in the job folder and what the index says of it.
type entry struct {
	name  string
	about string
}

// entries lists the job folder in the order in which the bench needs it.
func entries() []entry {
	return []entry{
		{"cut.svg", "the cut-ready drawing, one group for each method and tool"},
		{"cut.dxf", "the same drawing, one layer for each method and tool, round holes as circles"},
		{"cut.pdf", "the same drawing on one page of the paper's size"},
		{"transfer.pdf", "marking sheets for the transfer: print at 100 %, paste by the crosses"},
		{"transfer-whole.pdf", "the whole field on one page, for a wide printer"},
		{"binding.pdf", "marking sheets for the binding: string holes and paper edges"},
		{"register.pdf", "for the dyer: stars, square check, step, placements, drift, cautions"},
		{"placements.csv", "every placement: where it starts, on which face, how far it may walk"},
		{"findings.txt", "what was measured and needs a look"},
		{"unit.png", "picture: the unit among its neighbours"},
		{"sheet.png", "picture: the sheet as it is cut"},
		{"joint.png", "picture: the joint between two placements"},
		{"bolt.png", "picture: the placements along the bolt"},
		{"garment.png", "picture: the pieces of the garment with their seams"},
		{"README.txt", "this list"},
	}
}

// Names lists the files of a job folder in the order in which they are written.
func Names() []string {
	var names []string
	for _, e := range entries() {
		names = append(names, e.name)
	}
	return names
}
