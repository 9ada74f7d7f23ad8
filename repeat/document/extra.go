package document

// An Extra is what a file held beyond the keys of this version: it is kept, part
// by part, and written again after the known keys of the same part. What belongs
// to a motif or a punch goes when that goes. The zero Extra is nothing. An Extra
// is never written after Read has made it, so orders share it.
type Extra struct {
	// parts holds the members by the part that they stood in: "" for the order's
	// top, "sheet.paper", "unit.motifs#7" for the motif with ID 7.
	parts map[string][]member
}

// A member is a key with its value as compact JSON.
type member struct{ key, value string }
