package wording

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/export"
)

// verbs lists the places of a sentence by their number: the verb with its
// decimals.
func verbs(t *testing.T, text string) map[int]string {
	t.Helper()
	found := map[int]string{}
	for _, m := range regexp.MustCompile(`%([-+ #0-9.]*)(?:\[(\d+)\])?([a-zA-Z])|%%`).FindAllStringSubmatch(text, -1) {
		if m[0] == "%%" {
			continue
		}
		n := len(found) + 1
		if m[2] != "" {
			fmt.Sscan(m[2], &n)
		}
		if before, ok := found[n]; ok && before != m[1]+m[3] {
			t.Errorf("%q has two kinds of place %d", text, n)
		}
		found[n] = m[1] + m[3]
	}
	return found
}

// A sentence with places keeps them all, of the same kind, each numbered; without
// places it isn't formatted, and no number may be in it.
func TestJapaneseSentencesKeepEveryPlace(t *testing.T) {
	for english, said := range table() {
		want, got := verbs(t, english), verbs(t, said)
		if len(want) == 0 && strings.Contains(said, "%[") {
			t.Errorf("%q has places in %q", english, said)
		}
		for n, verb := range want {
			if got[n] != verb {
				t.Errorf("%q: place %d is %q in %q, want %q", english, n, got[n], said, verb)
			}
		}
		if len(got) > len(want) {
			t.Errorf("%q: %d places in %q", english, len(got), said)
		}
		if rest := regexp.MustCompile(`%[-+ #0-9.]*[a-zA-Z]`).FindString(said); len(want) > 0 && rest != "" {
			t.Errorf("%q: place %s of %q has no number", english, rest, said)
		}
	}
}

func TestEveryJapaneseLetterHasAShape(t *testing.T) {
	for english, said := range table() {
		if lacking := export.Lacking(said); len(lacking) > 0 {
			t.Errorf("%q: no face has %q of %q", english, string(lacking), said)
		}
	}
}

func TestSayFillsItsPlacesInTheLanguagesOwnOrder(t *testing.T) {
	for _, c := range []struct {
		lang   Language
		text   string
		places []any
		want   string
	}{
		{English, "%d of %d", []any{3, 12}, "3 of 12"},
		{Japanese, "%d of %d", []any{3, 12}, "12のうち3"},
		{Japanese, "Print at 100 %,", nil, "等倍（100 %）で刷り、"},
		{Japanese, "%d, open area %.1f %%", []any{39100, 11.94}, "39100、抜き 11.9 %"},
		{Japanese, "nobody has said this yet", nil, "nobody has said this yet"},
		{"", "joint", nil, "joint"},
	} {
		if got := c.lang.Say(c.text, c.places...); got != c.want {
			t.Errorf("%q in %q reads %q, want %q", c.text, c.lang, got, c.want)
		}
	}
	if a, b, c := English.Count(1, "sheet"), English.Count(7, "sheet"), Japanese.Count(1, "sheet"); a != "1 sheet" || b != "7 sheets" || c != "1枚" {
		t.Errorf("counts read %q, %q, %q", a, b, c)
	}
}

func TestALanguageIsFoundByItsTag(t *testing.T) {
	for tag, want := range map[string]Language{"": English, "en": English, "JA": Japanese, " ja ": Japanese} {
		if got, err := Named(tag); got != want || err != nil {
			t.Errorf("%q is %q, %v", tag, got, err)
		}
	}
	if _, err := Named("xx"); err == nil || !strings.Contains(err.Error(), `"xx"`) {
		t.Errorf("error %v, want one that names xx", err)
	}
}

// Retelling is the inverse of saying: what was made from an English sentence
// gives the same as the Japanese one with the same places.
func TestWhatWasSaidInEnglishIsRetold(t *testing.T) {
	var keys []string
	for english := range table() {
		keys = append(keys, english)
	}
	slices.Sort(keys)
	told := 0
	for _, english := range keys {
		var places []any
		kinds := verbs(t, english)
		for n := range len(kinds) {
			switch kind := kinds[n+1]; kind[len(kind)-1] {
			case 'd':
				places = append(places, 41+n)
			case 'f', 'g':
				places = append(places, 12.25+float64(n))
			default:
				places = append(places, fmt.Sprintf("%d.125 mm", n+3))
			}
		}
		if _, ok := retellingOf(english, table()[english]); !ok && len(places) > 0 {
			continue
		}
		told++
		want := Japanese.Say(english, places...)
		if got := Japanese.Retell(English.Say(english, places...)); got != want {
			t.Errorf("%q is retold as %q, want %q", English.Say(english, places...), got, want)
		}
	}
	if told < 250 {
		t.Errorf("%d sentences were retold", told)
	}
	for said, want := range map[string]string{
		"Lay to an edge line. Let it lap by 0.3 mm or more.": "耳の線に合わせる。0.3 mm 以上重ねる。",
		"left hind leg": "left hind leg",
		"":              "",
	} {
		if got := Japanese.Retell(said); got != want {
			t.Errorf("%q is retold as %q, want %q", said, got, want)
		}
		if got := English.Retell(said); got != said {
			t.Errorf("English retells %q as %q", said, got)
		}
	}
}

// A sentence that stands twice in the file would be said as the last one says, and
// a change of the first would change nothing.
func TestNoSentenceStandsTwice(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^\s*("(?:[^"\\]|\\.)*"):`).FindAllSubmatch(assets.JapaneseWords(), -1) {
		key := string(m[1])
		if seen[key] {
			t.Errorf("%s stands twice", key)
		}
		seen[key] = true
	}
	if len(seen) != len(table()) {
		t.Errorf("%d sentences were seen, the table has %d", len(seen), len(table()))
	}
}
