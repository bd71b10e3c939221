package quantity_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"chainwale/engine/quantity"
)

// TestShelf holds that readings that share memory are those that would stand alone.
func TestShelf(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	var shelf quantity.Shelf
	type pair struct {
		kept  *quantity.Readings
		alone quantity.Readings
	}
	var pairs []pair
	for range 3000 {
		values := make([]float64, r.IntN(5))
		for i := range values {
			values[i] = [...]float64{r.NormFloat64(), 1e308, -1e308, math.NaN(), math.Inf(1), 0}[max(0, r.IntN(40)-34)]
		}
		kept := shelf.Keep(quantity.Length, values)
		alone, err := quantity.NewReadings(quantity.Length, values...)
		if (kept == nil) != (err != nil) {
			t.Fatalf("%v: %v and %v", values, kept, err)
		}
		if kept != nil {
			pairs = append(pairs, pair{kept, alone})
		}
	}
	for _, p := range pairs {
		if p.kept.N() != p.alone.N() || p.kept.Mean() != p.alone.Mean() || p.kept.Spread() != p.alone.Spread() || p.kept.Dimension() != p.alone.Dimension() {
			t.Fatalf("%v and %v", p.kept, p.alone)
		}
	}
	if len(pairs) < 1000 {
		t.Errorf("only %d were sound", len(pairs))
	}
}

// ReadAs reads what ParseAs does.
func TestReadAs(t *testing.T) {
	for _, text := range []string{"6 mm", "1/4 in", "", "6", "6 N", "x", "17 %", "nan mm", " 5-1/4 in ", "1,000 mm", "40 degF", "1e400 mm"} {
		for _, d := range []quantity.Dimension{quantity.Length, quantity.Bare, quantity.Temperature} {
			value, ok := quantity.ReadAs(text, d)
			q, err := quantity.ParseAs(text, d)
			if ok != (err == nil) || ok && value != q.Value {
				t.Errorf("%q: %v, %v and %v, %v", text, value, ok, q, err)
			}
		}
	}
}
