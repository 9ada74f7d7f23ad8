package dxf

import "tsugime/export"

// basic holds the first nine colours by index. The seventh is black on paper and
// white on a dark screen; DXF before release 2004 knows no others by value.
// Source: colour index of the DXF Reference, from memory, read again in the tests.
var basic = [...]export.Colour{
	1: {R: 255}, 2: {R: 255, G: 255}, 3: {G: 255}, 4: {G: 255, B: 255},
	5: {B: 255}, 6: {R: 255, B: 255}, 7: {}, 8: {R: 128, G: 128, B: 128}, 9: {R: 192, G: 192, B: 192},
}

// index returns the basic colour nearest to c in red, green and blue.
func index(c export.Colour) int {
	best, least := 0, 0
	for i := 1; i < len(basic); i++ {
		dr, dg, db := int(c.R)-int(basic[i].R), int(c.G)-int(basic[i].G), int(c.B)-int(basic[i].B)
		if d := dr*dr + dg*dg + db*db; best == 0 || d < least {
			best, least = i, d
		}
	}
	return best
}
