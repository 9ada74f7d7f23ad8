package printer

import (
	"fmt"
	"strconv"
	"strings"

	"golang.org/x/text/width"
)

// Ranges reads pages as people write them, "1-3, 5" or "４、６〜８", as lp(1) takes them:
// "1-3,5". Nothing, or "all" by whatever word, is "".
func Ranges(text string) (string, error) {
	text = width.Narrow.String(strings.TrimSpace(text))
	text = strings.NewReplacer("、", ",", "､", ",", ";", ",", "–", "-", "〜", "-", "~", "-", " ", "").Replace(text)
	if text == "" {
		return "", nil
	}
	var parts []string
	for _, part := range strings.Split(text, ",") {
		from, to, ranged := strings.Cut(part, "-")
		a, err := page(from)
		if err != nil {
			return "", err
		}
		if !ranged {
			parts = append(parts, strconv.Itoa(a))
			continue
		}
		b, err := page(to)
		if err != nil {
			return "", err
		}
		if b < a {
			return "", fmt.Errorf("pages %d to %d run backwards; write %d-%d", a, b, b, a)
		}
		parts = append(parts, fmt.Sprintf("%d-%d", a, b))
	}
	return strings.Join(parts, ","), nil
}

// page reads the number of a page, from 1.
func page(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return 0, fmt.Errorf("%q is no page; write pages like 1-3, 5", text)
	}
	return n, nil
}
