package wording

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// A retelling is a sentence with places, ready to be recognised in what was made
// from it.
type retelling struct {
	english *regexp.Regexp
	said    string
	fixed   int // letters that are not of a place
}

// leastFixed is how many letters of its own a sentence needs to be recognised by:
// fewer would be found everywhere.
const leastFixed = 5

var places = regexp.MustCompile(`%(?:\[\d+\])?[-+ #0-9.]*[a-zA-Z]|%%`)

// retellings are those of all sentences that have a place, those with the most
// letters of their own first.
var retellings = sync.OnceValue(func() []retelling {
	var all []retelling
	for english, said := range table() {
		if r, ok := retellingOf(english, said); ok {
			all = append(all, r)
		}
	}
	slices.SortFunc(all, func(a, b retelling) int {
		return cmp.Or(cmp.Compare(b.fixed, a.fixed), strings.Compare(a.english.String(), b.english.String()))
	})
	return all
})

func retellingOf(english, said string) (retelling, bool) {
	var pattern strings.Builder
	at, n, fixed := 0, 0, 0
	pattern.WriteString("^")
	for _, place := range places.FindAllStringIndex(english, -1) {
		pattern.WriteString(regexp.QuoteMeta(english[at:place[0]]))
		fixed += place[0] - at
		switch verb := english[place[1]-1]; verb {
		case '%':
			pattern.WriteString("%")
		case 'd':
			pattern.WriteString(`(-?\d+)`)
			n++
		case 'f', 'g':
			pattern.WriteString(`([-+−]?\d+(?:\.\d+)?)`)
			n++
		default:
			pattern.WriteString("(.+?)")
			n++
		}
		at = place[1]
	}
	pattern.WriteString(regexp.QuoteMeta(english[at:]) + "$")
	fixed += len(english) - at
	return retelling{regexp.MustCompile(pattern.String()), said, fixed}, n > 0 && fixed >= leastFixed
}

var numbered = regexp.MustCompile(`%[-+ #0-9.]*\[(\d+)\][a-zA-Z]`)

// Retell returns in l what was said in English somewhere that knows no language: a
// finding, a name. It is looked for among the sentences with places too, and what
// stands in a place is retold in its turn. Several sentences in a row are retold
// one by one. What is not found stays English.
func (l Language) Retell(text string) string {
	if l != Japanese || text == "" {
		return text
	}
	if said, ok := retold(text); ok {
		return said
	}
	var all []string
	for _, sentence := range sentences(text) {
		said, _ := retold(sentence)
		all = append(all, said)
	}
	return strings.Join(all, "")
}

// retold returns one sentence in Japanese, and whether it was found.
func retold(text string) (string, bool) {
	if said, ok := table()[text]; ok {
		return strings.ReplaceAll(said, "%%", "%"), true
	}
	for _, r := range retellings() {
		found := r.english.FindStringSubmatch(text)
		if found == nil {
			continue
		}
		said := numbered.ReplaceAllStringFunc(r.said, func(place string) string {
			i, err := strconv.Atoi(numbered.FindStringSubmatch(place)[1])
			if err != nil || i >= len(found) {
				return place
			}
			return Japanese.Retell(found[i])
		})
		return strings.ReplaceAll(said, "%%", "%"), true
	}
	return text, false
}

var sentenceEnd = regexp.MustCompile(`[.!?] `)

// sentences parts a text behind each full stop that a space follows.
func sentences(text string) []string {
	var all []string
	at := 0
	for _, end := range sentenceEnd.FindAllStringIndex(text, -1) {
		all = append(all, text[at:end[0]+1])
		at = end[1]
	}
	return append(all, text[at:])
}
