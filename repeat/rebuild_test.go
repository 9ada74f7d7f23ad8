package repeat_test

import (
	"context"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// sameWork compares all that a work tells; sheets keep different things for the
// next edit.
func sameWork(t *testing.T, edit string, got, want repeat.Work) {
	t.Helper()
	if !slices.Equal(got.Sheet.Webs.Widths(), want.Sheet.Webs.Widths()) {
		t.Fatalf("%s: the widths of the webs differ", edit)
	}
	exportedEqual(t, edit, reflect.ValueOf(got), reflect.ValueOf(want))
}

// exportedEqual goes down into structs that have fields of their own to keep.
func exportedEqual(t *testing.T, at string, got, want reflect.Value) {
	t.Helper()
	if got.Kind() == reflect.Pointer && !got.IsNil() && !want.IsNil() {
		got, want = got.Elem(), want.Elem()
	}
	if got.Kind() != reflect.Struct {
		if !reflect.DeepEqual(got.Interface(), want.Interface()) {
			t.Fatalf("%s is %.300v, want %.300v", at, got.Interface(), want.Interface())
		}
		return
	}
	for i := range got.NumField() {
		if f := got.Type().Field(i); f.IsExported() {
			exportedEqual(t, at+"."+f.Name, got.Field(i), want.Field(i))
		}
	}
}

// scatteredOrder is an order whose unit fills a narrow sheet with dots, none of
// which touches another.
func scatteredOrder(t testing.TB, seed uint64) document.Order {
	o, rnd := starter(t, "fine-dot"), rand.New(rand.NewPCG(seed, 3))
	o.Unit = pattern.Unit{Lattice: pattern.Straight(geom.MM(60), geom.MM(40))}
	o.Sheet.Step = geom.MM(40)
	o.Sheet.Field.Width = geom.MM(50)
	var dots []pattern.Motif
	for i := range 60 * 40 {
		// Off the raster by so little that none touches another.
		at := geom.PtMM(float64(i%60)+0.3*rnd.Float64(), float64(i/60)+0.3*rnd.Float64())
		dots = append(dots, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.45)), At: at})
	}
	o, err := document.AddMotifs(o, dots...)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// randomOrder edits an order as a hand does.
func randomOrder(t *testing.T, rnd *rand.Rand, o document.Order) (string, document.Order) {
	t.Helper()
	id := o.Unit.Motifs[rnd.IntN(len(o.Unit.Motifs))].ID
	at := geom.PtMM(60*rnd.Float64(), 40*rnd.Float64())
	var err error
	name := []string{"move", "resize", "add", "delete", "redraw", "turn", "limit", "title", "field", "ties", "as drawn"}[rnd.IntN(11)]
	switch name {
	case "move":
		o, err = document.MoveMotif(o, id, geom.PtMM(0.1*rnd.Float64(), -0.1*rnd.Float64()))
	case "resize":
		o, err = document.ResizeDiscs(o, geom.MM(0.3+0.2*rnd.Float64()), id)
	case "add":
		o, err = document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.3)), At: at})
	case "delete":
		o, err = document.DeleteMotifs(o, id)
	case "redraw":
		o, err = document.Redraw(o, id, geom.DiscShape(geom.Point{}, geom.MM(0.4)))
	case "turn":
		o, err = document.TurnMotif(o, id, 30)
	case "limit":
		o, err = document.SetLimits(o, o.Limits, geom.MM(0.2+0.3*rnd.Float64()))
	case "title":
		o, err = document.SetTitle(o, o.Title+"'")
	case "field":
		f := o.Sheet.Field
		f.Width = geom.MM(45 + 5*rnd.Float64())
		o, err = document.SetField(o, f)
	case "ties":
		o.Sheet.Hold.Way = "ties"
	case "as drawn":
		o.Sheet.Hold.Way = "as-drawn"
	}
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return name, o
}

// A work built again after edits, and after going back to an order of before, is
// what Build makes of the order.
func TestAWorkBuiltAgainIsTheWorkBuilt(t *testing.T) {
	for seed := range uint64(3) {
		rnd := rand.New(rand.NewPCG(seed, 4))
		orders := []document.Order{scatteredOrder(t, seed)}
		work := built(t, orders[0])
		for range 14 {
			name, o := "undo", orders[rnd.IntN(len(orders))]
			if rnd.IntN(5) > 0 {
				name, o = randomOrder(t, rnd, orders[len(orders)-1])
				orders = append(orders, o)
			}
			got, err := repeat.Rebuild(context.Background(), work, o)
			if err != nil {
				t.Fatal(err)
			}
			sameWork(t, name, got, built(t, o))
			work = got
		}
	}
}

// What a person waits for after one dot of a unit that fills a narrow sheet was moved.
func BenchmarkRebuildAfterOneDotMoved(b *testing.B) {
	o := scatteredOrder(b, 1)
	id := o.Unit.Motifs[1000].ID
	moved, err := document.MoveMotif(o, id, geom.PtMM(0.05, 0.05))
	if err != nil {
		b.Fatal(err)
	}
	again := func(b *testing.B, prev repeat.Work, o document.Order) repeat.Work {
		w, err := repeat.Rebuild(context.Background(), prev, o)
		if err != nil {
			b.Fatal(err)
		}
		return w
	}
	work := again(b, again(b, repeat.Work{}, o), moved)
	b.Run("build", func(b *testing.B) {
		for b.Loop() {
			again(b, repeat.Work{}, o)
		}
	})
	b.Run("rebuild", func(b *testing.B) {
		for b.Loop() {
			again(b, work, o)
		}
	})
}
