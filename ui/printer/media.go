package printer

import (
	"strings"

	"tsugime/export"
)

// mediaNames are the self-describing names of PWG 5101.1 for the pages that sheets are
// made for.
var mediaNames = map[string]string{
	"A4": "iso_a4_210x297mm", "A3": "iso_a3_297x420mm", "A2": "iso_a2_420x594mm",
	"B4": "jis_b4_257x364mm", "letter": "na_letter_8.5x11in",
}

// Media is the name of a page for the printer, "" for a page that has none.
func Media(p export.PageSize) string {
	for name, media := range mediaNames {
		if strings.EqualFold(name, p.Name) {
			return media
		}
	}
	return ""
}
