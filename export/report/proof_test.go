package report

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// The proof is one page, shows the cloth at true size and tells its measures without
// the words of the trade.
func TestTheProofIsOnePageInPlainWords(t *testing.T) {
	w := starter(t, "small-dot")
	for _, page := range []string{"A4", "A3", "B4", "letter"} {
		b, err := Proof(w, Options{Page: page})
		if err != nil {
			t.Fatal(err)
		}
		if len(b.Pages) != 1 || len(b.Pages[0].Photos) != 2 || len(b.Pages[0].Views) != 1 {
			t.Fatalf("%s: %d pages", page, len(b.Pages))
		}
	}
	b, err := Proof(w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, "proof.pdf", b)
	words := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", path, "-"))), " ")
	width, _ := w.Run.Bolt.FinishedSize()
	wantWords(t, words, "The cloth is "+geom.CMUnit.Number(width, 1)+" cm wide")
	for _, trade := range []string{"okuri", "step", "pitch", "lattice", "joint", "star", "placement", "pile", "cut-out", "bolt", "komon"} {
		if strings.Contains(strings.ToLower(words), trade) {
			t.Errorf("the proof says %q: %s", trade, words)
		}
	}
	// The picture elements of the cloth are at true size: mutool finds the nearest
	// holes one pitch of the lattice apart.
	pitch := w.Printed().Lattice.Pitch().MM()
	least := math.Inf(1)
	discs := b.Pages[0].Views[0].Of.Layers[1].Discs
	for i, d := range discs[:min(len(discs), 400)] {
		for _, e := range discs[:i] {
			least = min(least, d.Centre.Distance(e.Centre).MM())
		}
	}
	if math.Abs(least-pitch) > 0.002 {
		t.Errorf("holes stand %.4f mm apart, the pitch is %.4f", least, pitch)
	}
}

// Another reader finds both pictures, as large as they are on the page.
func TestThePicturesOfTheProofAreReadBack(t *testing.T) {
	w := starter(t, "small-dot")
	b, err := Proof(w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	listed := strings.TrimSpace(string(read(t, "pdfimages", "-list", written(t, "proof.pdf", b))))
	rows := strings.Split(listed, "\n")[2:]
	if len(rows) != 2 {
		t.Fatalf("pdfimages lists\n%s", listed)
	}
	for i, row := range rows {
		cells := strings.Fields(row)
		photo := b.Pages[0].Photos[i]
		if cells[3] != strconv.Itoa(photo.Pixels.Rect.Dx()) || cells[4] != strconv.Itoa(photo.Pixels.Rect.Dy()) {
			t.Errorf("picture %d is read as %s, not %v", i+1, row, photo.Pixels.Rect)
		}
		dpi, err := strconv.Atoi(cells[12])
		if err != nil || cells[5] != "rgb" || dpi < proofDPI-2 || dpi > proofDPI+2 {
			t.Errorf("picture %d is read as %s, not %d to the inch", i+1, row, proofDPI)
		}
	}
}
