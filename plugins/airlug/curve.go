package airlug

import (
	"fmt"
	"slices"
	"strings"

	"chainwale/engine/strength"
)

// chartedMetals are the families whose lugs the chart of shear-bearing is of:
// aluminium, and steel up to an ultimate strength of 160 ksi (memory).
var chartedMetals = []string{"stainless", "steel", "aluminium"}

// strongest is 160 ksi in MPa.
const strongest = 160 * 6.894757293168

// charted tells why the chart of shear-bearing is not of a metal.
func charted(family string, ultimate float64) error {
	if !slices.Contains(chartedMetals, family) {
		return fmt.Errorf("the chart of shear-bearing is of steel and aluminium lugs, not of %s", family)
	}
	if ultimate > strongest {
		return fmt.Errorf("the chart of shear-bearing is of metals up to %.0f MPa, not of one with %.4g MPa", strongest, ultimate)
	}
	return nil
}

// curveOf is the curve of net tension that a metal follows. Stainless steels of the
// 18-8 kind, the 304 and 316 families, have two, annealed and full hard; no fact says
// how hard a plate is, so the lower of the two counts. 4130 steel has its own. All
// other metals have none here.
func curveOf(name, family string) (strength.LugCurve, error) {
	plain := strings.NewReplacer(" ", "", "-", "", "_", "", ".", "").Replace(strings.ToLower(name))
	switch {
	case family == "stainless" && is18And8(plain):
		return strength.LugUnknown, nil
	case family == "steel" && strings.Contains(plain, "4130"):
		return strength.LugAlloySteel, nil
	}
	return "", fmt.Errorf("the chart of net tension has no curve for %s that could be read: it has 18-8 stainless (304, 316) and 4130 steel", name)
}

// is18And8 tells the names of 18-8 stainless steels, without spaces, points and hyphens.
func is18And8(plain string) bool {
	for _, number := range []string{"304", "316", "14301", "14307", "14401", "14404"} {
		if strings.Contains(plain, number) {
			return true
		}
	}
	return slices.Contains([]string{"188", "302", "a2", "a4", "stainless", "stainlesssteel"}, plain)
}
