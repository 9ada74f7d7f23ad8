package document

import (
	"fmt"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// Goals are what may be asked of a seam.
var Goals = []string{string(cloth.RunOn), string(cloth.Staggered), string(cloth.Apart)}

// maxWishes is how many seams or places a garment may have wishes for.
const maxWishes = 20

// seamWish reads one seam that is to match: {"seam", "goal", "share_pct",
// "distance_mm"}. Left out, a seam runs on; staggered, by half a repeat.
func (r *reader) seamWish() cloth.SeamWish {
	w := cloth.SeamWish{Goal: cloth.RunOn, Share: 0.5}
	r.entry([]string{"seam", "goal", "share_pct", "distance_mm"}, 1, func(i int) {
		switch i {
		case 0:
			w.Seam = string(r.text())
		case 1:
			w.Goal = cloth.Goal(r.text())
		case 2:
			w.Share = r.float(-2)
		case 3:
			w.Distance = r.length()
		}
	}, func() string { return seamWishPart(w.Seam) })
	return w
}

// placeWish reads one motif that is to fall at a place: {"name", "piece", "at_mm",
// "motif_mm", "within_mm"}.
func (r *reader) placeWish() cloth.PlaceWish {
	var w cloth.PlaceWish
	r.entry([]string{"name", "piece", "at_mm", "motif_mm", "within_mm"}, 5, func(i int) {
		switch i {
		case 0:
			w.Name = string(r.text())
		case 1:
			w.Piece = string(r.text())
		case 2:
			w.At = r.point()
		case 3:
			w.Motif = r.point()
		case 4:
			w.Within = r.length()
		}
	}, func() string { return placeWishPart(w.Name) })
	return w
}

// entry reads an object of a list by its keys, the first few of which it must
// have; part names it for Extra once it is read.
func (r *reader) entry(keys []string, must int, read func(i int), part func() string) {
	var extra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		for i, k := range keys {
			if k == string(key) {
				r.once(&seen, i)
				read(i)
				return
			}
		}
		extra = r.unknown(extra, string(key))
	})
	for i, k := range keys[:must] {
		if seen&(1<<i) == 0 {
			r.missing(from, k)
		}
	}
	r.keep(part(), extra)
}

func seamWishPart(seam string) string  { return "garment.match#" + seam }
func placeWishPart(name string) string { return "garment.targets#" + name }

func (p *printer) seamWish(w cloth.SeamWish) {
	p.buf = append(p.buf, `{"seam": `...)
	p.text(w.Seam)
	p.buf = append(p.buf, `, "goal": `...)
	p.text(string(w.Goal))
	p.buf = append(p.buf, `, "share_pct": `...)
	p.buf = appendFloat(p.buf, w.Share, 2)
	p.buf = append(p.buf, `, "distance_mm": `...)
	p.length(w.Distance)
	p.extra(seamWishPart(w.Seam))
	p.buf = append(p.buf, '}')
}

func (p *printer) placeWish(w cloth.PlaceWish) {
	p.buf = append(p.buf, `{"name": `...)
	p.text(w.Name)
	p.buf = append(p.buf, `, "piece": `...)
	p.text(w.Piece)
	p.buf = append(p.buf, `, "at_mm": `...)
	p.point(w.At)
	p.buf = append(p.buf, `, "motif_mm": `...)
	p.point(w.Motif)
	p.buf = append(p.buf, `, "within_mm": `...)
	p.length(w.Within)
	p.extra(placeWishPart(w.Name))
	p.buf = append(p.buf, '}')
}

// checkWishes refuses what can't be asked of any garment; which seams and pieces
// this one has, Dress tells.
func checkWishes(w cloth.Wishes) *Fault {
	if n := max(len(w.Seams), len(w.Targets)); n > maxWishes {
		return faultf("garment", "%d wishes; keep to %d seams and %d places", n, maxWishes, maxWishes)
	}
	seen := map[string]bool{}
	for i, s := range w.Seams {
		path := fmt.Sprintf("garment.match[%d]", i)
		if seen[s.Seam] {
			return faultf(path+".seam", "the seam %q stands here twice; keep one of the two", s.Seam)
		}
		seen[s.Seam] = true
		if fault := first(words(path+".seam", s.Seam, maxTitle, false), oneOf(path+".goal", string(s.Goal), Goals),
			shareWithin(path+".share_pct", s.Share), within(path+".distance_mm", s.Distance, 0, geom.Metre)); fault != nil {
			return fault
		}
	}
	clear(seen)
	for i, t := range w.Targets {
		path := fmt.Sprintf("garment.targets[%d]", i)
		if seen[t.Name] {
			return faultf(path+".name", "another place is called %q too; give each its own name", t.Name)
		}
		seen[t.Name] = true
		reach := 3 * geom.Metre
		if fault := first(words(path+".name", t.Name, maxTitle, false), words(path+".piece", t.Piece, maxTitle, false),
			within(path+".at_mm[0]", t.At.X, -reach, reach), within(path+".at_mm[1]", t.At.Y, -reach, reach),
			within(path+".motif_mm[0]", t.Motif.X, -reach, reach), within(path+".motif_mm[1]", t.Motif.Y, -reach, reach),
			within(path+".within_mm", t.Within, 0, geom.Metre)); fault != nil {
			return fault
		}
	}
	return nil
}

func shareWithin(path string, share float64) *Fault {
	if !(share >= 0 && share <= 1) {
		return faultf(path, "%g %% is out of bounds; give 0 to 100 %%", 100*share)
	}
	return nil
}

// SetWishes sets how the pattern is to fall on the garment.
func SetWishes(o Order, w cloth.Wishes) (Order, error) {
	g := o.Garment
	g.Wishes = w
	return SetGarment(o, g)
}
