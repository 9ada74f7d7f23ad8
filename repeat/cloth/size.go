package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

// A size is a row of the height table, in nanometres.
type size struct {
	height                                         geom.Length
	body, sleeve, sleeveWidth, shoulder, frontEdge geom.Length
}

// bu returns n tenths of a kujira sun, the cloth ruler's 25/6600 m, rounded to
// the nanometre.
func bu(n float64) geom.Length { return geom.MM(n * 250 / 66) }

// womens is the height table of a kimono shop's size page (women, kujira ruler):
// body from the back, sleeve length, sleeve width, shoulder width, front edge
// below the collar (tsumashita), all in bu. At 165 cm the front edge is given as
// 2.15 to 2.2 shaku; the middle is taken.
var womens = []struct{ cm, body, sleeve, sleeveWidth, shoulder, frontEdge float64 }{
	{150, 400, 130, 85, 80, 200},
	{155, 410, 130, 85, 85, 205},
	{160, 425, 135, 90, 85, 215},
	{165, 435, 140, 90, 90, 217.5},
	{170, 450, 145, 93, 92, 220},
}

// The heights that the table is trusted for: its own rows, and 10 cm beyond
// them along its first and last pair of rows.
const (
	minHeight = 140 * geom.Centimetre
	maxHeight = 180 * geom.Centimetre
)

// sizeOf returns the sizes for a wearer, in a straight line between the rows.
func sizeOf(b Body) (size, error) {
	if b.Kind != WomensKimono {
		return size{}, fmt.Errorf("garment: %q is no garment that can be cut; use %s", b.Kind, WomensKimono)
	}
	if b.Height < minHeight || b.Height > maxHeight {
		return size{}, fmt.Errorf("garment: there are no sizes for a height of %s mm; give between %s and %s mm",
			b.Height, minHeight, maxHeight)
	}
	i := 0
	for i+2 < len(womens) && b.Height.MM() > 10*womens[i+1].cm {
		i++
	}
	lo, hi := womens[i], womens[i+1]
	t := (b.Height.MM()/10 - lo.cm) / (hi.cm - lo.cm)
	mix := func(a, b float64) geom.Length { return bu(a + t*(b-a)) }
	return size{
		height: b.Height,
		body:   mix(lo.body, hi.body), sleeve: mix(lo.sleeve, hi.sleeve),
		sleeveWidth: mix(lo.sleeveWidth, hi.sleeveWidth), shoulder: mix(lo.shoulder, hi.shoulder),
		frontEdge: mix(lo.frontEdge, hi.frontEdge),
	}, nil
}

// Sizes that do not go with the height. Women's standard sizes of a sewing
// course, kujira ruler, in bu: back 8 sun, front 6.5, overlap 4, its top 6 below
// the shoulder, collar 1.5 wide where it is worn folded.
const (
	backBu, frontBu, overlapBu, dropBu, collarBu = 80, 65, 40, 60, 15

	// tuckBu is the tuck at the waist (age) and hemBu the least allowance at an
	// end: 4 sun and 5 bu, a sewing school's cutting page.
	tuckBu, hemBu = 40, 5

	// seamBu is the least seam allowance, 2.5 bu or about 1 cm: from memory,
	// common practice at the back centre.
	seamBu = 2.5

	// backTuckBu is how far below the end of the sleeve the back's tuck begins,
	// frontTuckBu the front's: 1 and 3 sun, of a men's sewing page; taken for
	// women too, no source.
	backTuckBu, frontTuckBu = 10, 30
)

// What a half collar has beyond the body's length: the neck point set back
// (kurikoshi) twice, inset, hem and half the neck band, and the turned-in end.
// A sewing page for 160 cm: 160 + 2 + 2 + 2 + 9.5 + 2 + 8 − 76 = 109.5 cm, and
// an over-collar of 47 to 50 cm a half, of which the least is taken.
const (
	setBack        = 20 * geom.Millimetre
	inset          = 20 * geom.Millimetre
	collarHem      = 20 * geom.Millimetre
	neckBand       = 95 * geom.Millimetre
	collarEnd      = 80 * geom.Millimetre
	halfOverCollar = 470 * geom.Millimetre
)

// cutBody returns the cut length of a body panel, front and back in one.
func cutBody(body geom.Length) geom.Length { return 2 * (body + bu(tuckBu) + bu(hemBu)) }

// cutSleeve returns the cut length of a sleeve, front and back in one.
func cutSleeve(sleeve geom.Length) geom.Length { return 2 * (sleeve + bu(hemBu)) }

// cutOverlap returns the cut length of an overlap: from its top, 6 sun below the
// shoulder, to the hem, with an allowance at each end. It has no tuck.
func cutOverlap(body geom.Length) geom.Length { return body - bu(dropBu) + 2*bu(hemBu) }

// halfCollar returns half the cut length of the collar.
func halfCollar(body, frontEdge geom.Length) geom.Length {
	return body + 2*setBack + inset + collarHem + neckBand + collarEnd - frontEdge
}

// A cut is the sizes of a garment together with what the cloth allows.
type cut struct {
	size
	width            geom.Length // of the finished cloth
	seam, back       geom.Length
	front, overlap   geom.Length
	sleeveW, yoke    geom.Length // sleeve and shoulder widths, as far as the cloth reaches
	collarHalf, over geom.Length // half lengths as cut
}

// cutFor returns the cut of a wearer's garment from cloth of a finished width.
// Where the cloth is too narrow for the sleeve, the shoulder or the overlap of
// the table, they are as wide as it allows; below the width of the back there is
// no garment.
func cutFor(b Body, width geom.Length) (cut, error) {
	s, err := sizeOf(b)
	if err != nil {
		return cut{}, err
	}
	c := cut{
		size: s, width: width, seam: bu(seamBu), back: bu(backBu), front: bu(frontBu),
		collarHalf: halfCollar(s.body, s.frontEdge), over: halfOverCollar,
	}
	most := width - 2*c.seam
	if most < c.back {
		return cut{}, fmt.Errorf("garment: a bolt of %s mm finished width is too narrow for a back of %s mm; use one of at least %s mm",
			width, c.back, c.back+2*c.seam)
	}
	c.sleeveW, c.yoke = min(s.sleeveWidth, most), min(s.shoulder, most)
	c.overlap = min(bu(overlapBu), width/2-2*c.seam)
	return c, nil
}
