package table

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/working"
)

// ClevisPinRow is a standard clevis pin. A pin is thinner than its name: by the
// tolerance of ISO 2341, by up to a quarter of a millimetre under ASME B18.8.1.
type ClevisPinRow struct {
	Standard, Size string
	// Nominal, Largest and Smallest are shank diameters in mm.
	Nominal, Largest, Smallest float64
	// Head is the largest head, SplitPin the smallest hole for the split pin, mm.
	Head, SplitPin float64
	Source         working.Source
}

// Inch says whether the pin is of the inch system.
func (p ClevisPinRow) Inch() bool { return strings.HasSuffix(p.Size, " in") }

var pins = sync.OnceValues(func() ([]ClevisPinRow, error) {
	return readRows("pins.csv", func(r *row) ClevisPinRow {
		return ClevisPinRow{Standard: r.text("standard"), Size: r.text("size"), Nominal: r.needed("nominal"), Largest: r.needed("largest"), Smallest: r.needed("smallest"),
			Head: r.needed("head"), SplitPin: r.needed("split_pin"), Source: r.source("source", "known", "shank, head and hole")}
	})
})

// ClevisPin gives the standard pin of a nominal diameter in mm, within 0.5 %.
func ClevisPin(nominal float64) (ClevisPinRow, error) {
	all, err := pins()
	if err != nil {
		return ClevisPinRow{}, err
	}
	if math.IsNaN(nominal) || math.IsInf(nominal, 0) || nominal <= 0 {
		return ClevisPinRow{}, fmt.Errorf("the diameter of a pin can't be %g mm", nominal)
	}
	nearest := all[0]
	for _, p := range all {
		if math.Abs(p.Nominal-nominal) < math.Abs(nearest.Nominal-nominal) {
			nearest = p
		}
	}
	if math.Abs(nearest.Nominal-nominal) > sizeTolerance*nearest.Nominal {
		return ClevisPinRow{}, fmt.Errorf("no standard clevis pin is called %.4g mm; the nearest is %s (%s)", nominal, nearest.Size, nearest.Standard)
	}
	return nearest, nil
}

// ClevisPins are all rows, in the order of the file.
func ClevisPins() ([]ClevisPinRow, error) {
	all, err := pins()
	return slices.Clone(all), err
}
