package pattern

// The rules follow the widths that textile writers give in units of the thinnest
// thread; where they give only words the numbers are common practice, no source.

// evenRule is one slit on each pitch.
func evenRule(v values) (float64, []stripe) {
	return v.nm("pitch"), []stripe{{0, v.nm("pitch") * v.share("slit")}}
}

func evenParams(pitch float64) []Param {
	return []Param{
		length("pitch", "Pitch", 0.1, 200, pitch, "From one stripe to the next."),
		percent("slit", "Stripe", 1, 99, 50, "How much of the pitch the stripe takes."),
	}
}

// evenStripes are wide, and as wide as the ground between them.
var evenStripes = stripes("even-stripes", "bojima", "Wide stripes as broad as the ground between them.",
	evenRule, evenParams(8)...)

// fineStripes and finestStripes have the same rule at 10 and 20 to the kane sun.
var (
	fineStripes = stripes("fine-stripes", "sensuji", "Fine even stripes, ten to the kane sun.",
		evenRule, evenParams(3.0303)...)
	finestStripes = stripes("finest-stripes", "mansuji", "Very fine even stripes, twenty to the kane sun.",
		evenRule, evenParams(1.5152)...)
)

// threadStripes: two threads to six of ground.
var threadStripes = stripes("thread-stripes", "daimyo", "Narrow stripes of two threads on a ground of six.",
	func(v values) (float64, []stripe) { return 8 * v.nm("thread"), []stripe{{0, 2 * v.nm("thread")}} },
	length("thread", "Thread", 0.05, 20, 0.5, "Width of one thread; a stripe has two, the ground six."))

// pairedStripes: two lines as a pair, then a gap.
var pairedStripes = stripes("paired-stripes", "kintsu", "Two lines as a pair, a gap, and again.",
	func(v values) (float64, []stripe) {
		line, inner := v.nm("line"), v.nm("inner")
		return 2*line + inner + v.nm("gap"), []stripe{{0, line}, {line + inner, line}}
	},
	length("line", "Line", 0.05, 50, 0.8, "Width of a line."),
	length("inner", "Within the pair", 0.05, 50, 0.8, "Paper between the two lines of a pair."),
	length("gap", "Between pairs", 0.05, 200, 6, "Paper from pair to pair."))

// companionStripes: a thick line with a thin one beside it, or one on each side.
var companionStripes = stripes("companion-stripes", "komochi", "A thick stripe with a thin one beside it.",
	companionRule,
	length("thick", "Thick stripe", 0.05, 100, 4, "Width of the thick stripe."),
	length("thin", "Thin stripe", 0.05, 50, 0.8, "Width of the thin stripe."),
	length("inner", "Between the two", 0.05, 50, 1, "Paper between thick and thin."),
	length("gap", "To the next", 0.05, 200, 8, "Paper from group to group."),
	chosen("sides", "Sides", "Where the thin stripe stands.", "one", "both"))

func companionRule(v values) (float64, []stripe) {
	thick, thin, inner := v.nm("thick"), v.nm("thin"), v.nm("inner")
	all := []stripe{{0, thick}, {thick + inner, thin}}
	if v["sides"] == 1 {
		all = []stripe{{0, thin}, {thin + inner, thick}, {thin + thick + 2*inner, thin}}
	}
	last := all[len(all)-1]
	return last.from + last.width + v.nm("gap"), all
}

// cascadeStripes: widths that taper evenly, to one side or from the middle to both.
var cascadeStripes = stripes("cascade-stripes", "taki", "Stripes that taper, to one side or from the middle to both.",
	cascadeRule,
	counted("lines", "Stripes", 2, 20, 5, "How many stripes from the thickest to the thinnest."),
	length("thick", "Thickest", 0.05, 50, 4, "Width of the thickest stripe."),
	length("thin", "Thinnest", 0.05, 50, 0.6, "Width of the thinnest stripe."),
	length("inner", "Between stripes", 0.05, 50, 1.2, "Paper between two stripes."),
	length("gap", "To the next", 0.05, 200, 5, "Paper from group to group."),
	chosen("sides", "Sides", "Where the stripes taper to.", "one", "both"))

func cascadeRule(v values) (float64, []stripe) {
	n := v.count("lines")
	var widths []float64
	if v["sides"] == 1 {
		for i := n - 1; i > 0; i-- {
			widths = append(widths, tapered(v, i, n))
		}
	}
	for i := range n {
		widths = append(widths, tapered(v, i, n))
	}
	var all []stripe
	var at float64
	for _, w := range widths {
		all = append(all, stripe{at, w})
		at += w + v.nm("inner")
	}
	return at - v.nm("inner") + v.nm("gap"), all
}

func tapered(v values, i, n int) float64 {
	return v.nm("thick") + (v.nm("thin")-v.nm("thick"))*float64(i)/float64(n-1)
}
