package report

import (
	"unicode/utf8"

	"tsugime/repeat/geom"
)

type pageSize struct {
	Name          string
	Width, Height geom.Length
}

func pages() []pageSize {
	mm := geom.MM
	return []pageSize{{"A4", mm(210), mm(297)}, {"A3", mm(297), mm(420)}, {"B4", mm(257), mm(364)}, {"letter", mm(215.9), mm(279.4)}}
}

func pageNamed(name string) (pageSize, bool) {
	for _, p := range pages() {
		if p.Name == name {
			return p, true
		}
	}
	return pageSize{}, false
}

func textWidth(text string, height geom.Length, bold bool) geom.Length {
	return height.Times(0.55 * float64(utf8.RuneCountInString(text)))
}
