package quantity

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

// TestPrinted holds that the number by which a unit is chosen is the one that is
// written.
func TestPrinted(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for i := range 20_000 {
		v := r.NormFloat64() * math.Pow(10, float64(r.IntN(40)-20))
		if i%10 == 0 {
			v = [...]float64{0, 999.5, 9999.5, 0.05, -0.04, math.MaxFloat64, -math.MaxFloat64, 5e-324, 999.4999, 1e7}[i/10%10]
		}
		for _, d := range []Dimension{Length, Angle, Temperature, Force} {
			written, err := strconv.ParseFloat(figures(v, d), 64)
			if err != nil || math.Abs(written) != math.Abs(printed(v, d)) {
				t.Fatalf("%g is written as %s and chosen by %g", v, figures(v, d), printed(v, d))
			}
		}
	}
}

func BenchmarkFormatForce(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Format(12345.678, Force, Metric)
	}
}
