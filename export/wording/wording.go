// Package wording says in English or Japanese what the sheets, the command line and
// the window have to say. The English sentence is the key; its Japanese stands in
// assets/words. Whole sentences are kept, not words to be strung together, since
// the order of the words differs.
//
//	wording.Japanese.Say("%d of %d", 3, 12) // "12のうち3"
package wording

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"

	"tsugime/assets"
)

// A Language is one that sheets are worded in. The zero Language is English.
type Language string

// The languages, by their tags of BCP 47.
const (
	English  Language = "en"
	Japanese Language = "ja"
)

// Languages lists the languages, the usual one first.
func Languages() []Language { return []Language{English, Japanese} }

// Named returns the language of a tag, whichever way it is capitalised; English
// for none.
func Named(tag string) (Language, error) {
	if tag == "" {
		return English, nil
	}
	var tags []string
	for _, l := range Languages() {
		if strings.EqualFold(string(l), strings.TrimSpace(tag)) {
			return l, nil
		}
		tags = append(tags, string(l))
	}
	return English, fmt.Errorf("%q is no language of the sheets; use one of %s", tag, strings.Join(tags, ", "))
}

// table is the Japanese of every English sentence. It panics on a file that can't
// be read: the file is part of the program.
var table = sync.OnceValue(func() map[string]string {
	all := map[string]string{}
	if err := json.Unmarshal(assets.JapaneseWords(), &all); err != nil {
		panic(fmt.Sprintf("wording: the built-in table can't be read: %v", err))
	}
	return all
})

// Knows reports whether l has a sentence of its own for an English one.
func (l Language) Knows(text string) bool {
	_, ok := table()[text]
	return ok || l != Japanese
}

// Say returns an English sentence in l with its places filled as by fmt.Sprintf; a
// sentence without places may hold percent signs. What l has no words for stays
// English.
func (l Language) Say(text string, places ...any) string {
	said := text
	if l == Japanese {
		if own, ok := table()[text]; ok {
			said = own
		}
	}
	if len(places) == 0 {
		return said
	}
	return fmt.Sprintf(said, places...)
}

// Count writes a number with its noun: "1 sheet", "7 sheets". The sentence of
// the many is the key for a language that doesn't tell them apart.
func (l Language) Count(n int, noun string) string {
	if l != Japanese && n == 1 {
		return "1 " + noun
	}
	return l.Say("%d "+noun+"s", n)
}

// Join writes things one after another, parted as l parts them.
func (l Language) Join(things []string) string {
	if l == Japanese {
		return strings.Join(things, "、")
	}
	return strings.Join(things, ", ")
}
