package report

import "testing"

func TestTry(t *testing.T) {
	w := built(t, dotOrder(t, 1.29, 0.5))
	for _, u := range []string{"mm", "sun"} {
		_, err := JobFolder(t.Context(), w, "/tmp/report-try/"+u, Options{Force: true, Units: u}, func(d, of int, n string) { t.Log(d, of, n) })
		t.Log(err)
	}
	t.Log(len(w.Sheet.CutOuts), w.Sheet.Stars, w.Findings)
}
