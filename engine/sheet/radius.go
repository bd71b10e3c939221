package sheet

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/working"
)

// Grain says how a fold line runs to the direction in which the plate was rolled.
type Grain string

const (
	// AcrossGrain is a fold line square to the rolling direction: the strip's length
	// runs along it. It is the kinder way.
	AcrossGrain Grain = "across"
	// AlongGrain is a fold line along the rolling direction.
	AlongGrain Grain = "along"
	// UnknownGrain counts as AlongGrain.
	UnknownGrain Grain = "unknown"
)

// MinRadius is the smallest inside radius that plate of an alloy is folded to.
//
// Returns Radius, below which a fold is not to be made, and Usual, which to ask for.
//
// Equation:
//
//	Radius = max(m t', ((100/A - 1)/2) t')
//	t' = t across the grain, along it the next thickness of 1, 1.5, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20 mm above t
//
// Symbols: Thickness t, mm; m of the Metal from the table, bare; Elongation A at break
// from a certificate, %, 0 if there is none; results mm.
//
// Holds for annealed plate up to 20 mm and edges that are rounded on the outside of
// the fold. Cold-worked strip takes up to 6 t: test it.
//
// Source: by row, see the table; the elongation rule is that of ductility (computed)
// and falls within the bend test radii of ASTM B265 for 11 grades of 16; the step for
// the grain after DIN 6935:1975, which steps its table so (published). Errors: a metal
// or a thickness that the table does not have.
type MinRadius struct {
	Metal      string
	Thickness  float64
	Grain      Grain
	Elongation float64
}

// MinRadiusResult is what a MinRadius gives.
type MinRadiusResult struct {
	Radius, Usual float64

	of        MinRadius
	row       radiusRow
	counts    float64
	byStretch float64
}

// radiusRow is one row of the table of radii.
type radiusRow struct {
	metal              string
	over, upTo         float64
	least, usual       float64
	leastSrc, usualSrc working.Source
}

var radiusRows = sync.OnceValues(func() ([]radiusRow, error) {
	var err error
	var list []radiusRow
	_, rows := readTable("radii.csv", &err)
	for _, r := range rows {
		list = append(list, radiusRow{r.cells["metal"], r.number("t_over"), r.upTo("t_max"), r.number("least"), r.number("usual"),
			working.Source{Title: r.cells["for_least"], As: working.HowKnown(r.cells["known_least"]), For: "the radius in thicknesses"},
			working.Source{Title: r.cells["for_usual"], As: working.HowKnown(r.cells["known_usual"]), For: "the radius in thicknesses"}})
	}
	return list, err
})

// grainSteps are the thicknesses of DIN 6935:1975, mm.
var grainSteps = []float64{1, 1.5, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20}

var (
	grainSource   = working.Source{Title: "after DIN 6935", Edition: "1975", As: working.Published, For: "the next thickness for a fold along the grain"}
	stretchSource = working.Source{Title: "stretch of the outer face against elongation at break", As: working.Computed, For: "the form of the equation"}
)

// RadiusMetals are the metals in the table of radii.
func RadiusMetals() ([]string, error) {
	rows, err := radiusRows()
	var names []string
	for _, r := range rows {
		if !slices.Contains(names, r.metal) {
			names = append(names, r.metal)
		}
	}
	return names, err
}

// leastElongation is that of metal that breaks before it folds, %.
const leastElongation = 0.5

// RadiusByElongation is (100/A - 1)/2, the inside radius in thicknesses at which the
// outer face of a fold stretches by the elongation A at break, %.
func RadiusByElongation(elongation float64) (float64, error) {
	var in inputs
	in.must(elongation >= leastElongation && elongation <= 100, "an elongation at break is %g to 100 %%, not %g", leastElongation, elongation)
	if in.err != nil {
		return 0, in.err
	}
	return (100/elongation - 1) / 2, nil
}

// Reckon gives both radii.
func (m MinRadius) Reckon() (MinRadiusResult, error) {
	var in inputs
	in.positive("the thickness", m.Thickness, "mm")
	in.must(slices.Contains([]Grain{AcrossGrain, AlongGrain, UnknownGrain}, m.Grain), "a fold line runs across or along the grain, or it is unknown, not %q", string(m.Grain))
	last := grainSteps[len(grainSteps)-1]
	in.must(m.Thickness <= last, "radii are known for plate up to %g mm, not for %g mm", last, m.Thickness)
	if in.err != nil {
		return MinRadiusResult{}, in.err
	}
	row, err := m.find()
	if err != nil {
		return MinRadiusResult{}, err
	}
	r := MinRadiusResult{of: m, row: row, counts: m.Thickness}
	if m.Grain != AcrossGrain {
		next := slices.IndexFunc(grainSteps, func(t float64) bool { return t > m.Thickness })
		if next < 0 {
			return MinRadiusResult{}, fmt.Errorf("no radius is known for a fold along the grain in %g mm", m.Thickness)
		}
		r.counts = grainSteps[next]
	}
	if m.Elongation != 0 {
		if r.byStretch, err = RadiusByElongation(m.Elongation); err != nil {
			return MinRadiusResult{}, err
		}
	}
	r.Radius = max(row.least, r.byStretch) * r.counts
	r.Usual = max(row.usual*r.counts, r.Radius)
	return r, nil
}

// find looks the metal up at its thickness.
func (m MinRadius) find() (radiusRow, error) {
	rows, err := radiusRows()
	if err != nil {
		return radiusRow{}, err
	}
	known := false
	for _, r := range rows {
		if r.metal == m.Metal {
			known = true
			if m.Thickness > r.over && m.Thickness <= r.upTo {
				return r, nil
			}
		}
	}
	if known {
		return radiusRow{}, fmt.Errorf("no radius is known for %s of %g mm: form it hot or avoid the fold", m.Metal, m.Thickness)
	}
	names, err := RadiusMetals()
	if err != nil {
		return radiusRow{}, err
	}
	return radiusRow{}, fmt.Errorf("no radius is known for %s; known are %s", m.Metal, strings.Join(names, ", "))
}

// Working writes the calculation down.
func (r MinRadiusResult) Working() []working.Step {
	m := r.of
	counts := working.Step{Symbol: "t'", Meaning: "thickness that counts", Formula: "t across the grain", Inputs: given("t", m.Thickness, "mm"), Value: r.counts, Unit: "mm", Source: grainSource}
	if m.Grain != AcrossGrain {
		counts.Formula = "the next thickness above t, along the grain"
	}
	row := func(symbol, meaning string, value float64, source working.Source) working.Step {
		return working.Step{Symbol: symbol, Meaning: meaning, Formula: "table of radii, row of " + r.row.metal, Value: value, Source: source}
	}
	steps := []working.Step{counts, row("m", "least radius in thicknesses", r.row.least, r.row.leastSrc), row("mu", "usual radius in thicknesses", r.row.usual, r.row.usualSrc)}
	if m.Elongation > 0 {
		steps = append(steps, working.Step{Symbol: "mA", Meaning: "radius in thicknesses at which the outer face stretches as far as the metal does",
			Formula: "(100/A - 1)/2", Inputs: given("A", m.Elongation, "%"), Value: r.byStretch, Source: stretchSource})
	}
	formula, governs, size := "m t'", r.row.leastSrc, given("m", r.row.least, "", "t'", r.counts, "mm")
	if m.Elongation > 0 {
		formula, size = "max(m, mA) t'", given("m", r.row.least, "", "mA", r.byStretch, "", "t'", r.counts, "mm")
	}
	if r.byStretch > r.row.least {
		governs = stretchSource
	}
	return append(steps,
		working.Step{Symbol: "Rmin", Meaning: "below it a fold is not to be made", Formula: formula, Inputs: size, Value: r.Radius, Unit: "mm", Source: governs},
		working.Step{Symbol: "Rusual", Meaning: "to ask for", Formula: "max(mu t', Rmin)", Inputs: given("mu", r.row.usual, "", "t'", r.counts, "mm", "Rmin", r.Radius, "mm"), Value: r.Usual, Unit: "mm", Source: r.row.usualSrc})
}
