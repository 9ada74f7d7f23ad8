package report

import (
	"testing"

	"tsugime/export"
)

func TestTheRegisterSheetIsOnePage(t *testing.T) {
	w := built(t, dotOrder(t, 4, 1.5))
	for _, page := range export.Pages() {
		for _, opt := range []Options{{Page: page.Name}, {Page: page.Name, Language: "ja"}, {Page: page.Name, Units: inSun}, {Page: page.Name, Units: inSun, Language: "ja"}} {
			b, err := Register(w, opt)
			if err != nil {
				t.Fatal(err)
			}
			if len(b.Pages) != 1 {
				t.Errorf("%+v: %d pages", opt, len(b.Pages))
			}
		}
	}
}
