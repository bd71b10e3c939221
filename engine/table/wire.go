package table

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"chainwale/engine/working"
)

// sizeTolerance is how far a diameter may lie from a row's own and still be that
// row's wire: 0.5 % takes 7.94 mm for 5/16 in (7.9375) and tells 8 mm from it.
const sizeTolerance = 0.005

// WireRow is what a wire breaks at.
type WireRow struct {
	Construction, Metal string
	// Size is the size as the trade calls it ("5/16 in"), "" where no row has the diameter.
	Size string
	// Diameter is in mm.
	Diameter float64
	// BreakLoad is the least load in N that the wire breaks at, the one to count as
	// strength. BreakLoadMost is the one to count where the wire is the load on
	// something else; it differs from BreakLoad only where no row has the diameter
	// or the metal is not known.
	BreakLoad, BreakLoadMost float64
	// FromFormula says that no row has the diameter and a band stands in for it.
	FromFormula bool
	Note        string
	Source      working.Source
}

// WireBuild is how a wire is made, and what follows from that for any diameter d in mm.
type WireBuild struct {
	Construction string
	// AreaFactor gives the metallic area, AreaFactor * d^2 mm2; Fill is its share of
	// the circle around the wire; SpinFactor is what laying up leaves of the strength
	// of the single wires; BreakFactor gives the break load, BreakFactor * grade * d^2 N.
	AreaFactor, Fill, SpinFactor, BreakFactor float64
	// GrossModulus is in MPa on the circle around the wire: EA = GrossModulus * pi d^2/4.
	GrossModulus   float64
	Source, Moduli working.Source
}

// Wire gives the break load of a wire by construction ("1x19", "7x19", "7x7",
// "compacted", "rod"), metal ("316", "304", "galvanised") and diameter in mm.
//
// A row counts for diameters within 0.5 % of its own. Where none has the
// diameter, the row comes back FromFormula with the bounds that every row near it
// keeps to. A metal given only as "stainless", or as "unknown" or not at all,
// has the weakest candidate's BreakLoad and the strongest one's BreakLoadMost.
func Wire(construction, metal string, diameter float64) (WireRow, error) {
	weaker, stronger, err := WireBounds(construction, metal, diameter)
	if err != nil {
		return WireRow{}, err
	}
	weaker.BreakLoadMost = stronger.BreakLoadMost
	if weaker.Metal != stronger.Metal {
		weaker.Note = fmt.Sprintf("the metal is not known: %s counts as the wire's strength, %s where the wire is the load", weaker.Metal, stronger.Metal)
		weaker.Metal = weaker.Metal + " or " + stronger.Metal
	}
	return weaker, nil
}

// WireBounds gives the weakest and the strongest wire that a construction, a metal
// and a diameter in mm may mean. They are the same row where all three are known.
func WireBounds(construction, metal string, diameter float64) (weaker, stronger WireRow, err error) {
	t, err := wires()
	if err != nil {
		return weaker, stronger, err
	}
	if math.IsNaN(diameter) || math.IsInf(diameter, 0) || diameter <= 0 {
		return weaker, stronger, fmt.Errorf("the diameter of a wire can't be %g mm", diameter)
	}
	build, err := WireBuildOf(construction)
	if err != nil {
		return weaker, stronger, err
	}
	metals, err := t.metalsNamed(metal, build.Construction)
	if err != nil {
		return weaker, stronger, err
	}
	var found []WireRow
	for _, m := range metals {
		if w, ok := t.at(build.Construction, m, diameter); ok {
			found = append(found, w)
		}
	}
	if len(found) == 0 {
		return weaker, stronger, fmt.Errorf("the table has no %s wire of %s at %g mm: %s", build.Construction, metalWord(metal), diameter, t.offers(build.Construction))
	}
	weaker = slices.MinFunc(found, func(a, b WireRow) int { return cmp.Compare(a.BreakLoad, b.BreakLoad) })
	stronger = slices.MaxFunc(found, func(a, b WireRow) int { return cmp.Compare(a.BreakLoadMost, b.BreakLoadMost) })
	return weaker, stronger, nil
}

// metalsNamed lists the metals that a name may mean for a construction.
func (t *wireTable) metalsNamed(name, construction string) ([]string, error) {
	switch plain(name) {
	case "", "unknown", "notknown":
		return t.metals, nil
	case "stainless", "stainlesssteel":
		return []string{"304", "316"}, nil
	}
	m, err := t.metal.find(name)
	if err != nil {
		return nil, err
	}
	// A rod is made of one metal whatever an owner calls it.
	if construction == "rod" && m != "galvanised" {
		m = "S20910"
	}
	return []string{m}, nil
}

func metalWord(name string) string {
	if name == "" {
		return "unknown metal"
	}
	return name
}

// at finds the row of a diameter, or makes one from the band it falls in.
func (t *wireTable) at(construction, metal string, diameter float64) (WireRow, bool) {
	for _, w := range t.rows {
		if w.Construction == construction && w.Metal == metal && math.Abs(w.Diameter-diameter) <= sizeTolerance*w.Diameter {
			return w, true
		}
	}
	for _, b := range t.bands {
		if b.construction == construction && b.metal == metal && diameter > b.over && diameter <= b.upTo {
			square := 1000 * diameter * diameter
			return WireRow{Construction: construction, Metal: metal, Diameter: diameter, BreakLoad: b.least * square, BreakLoadMost: b.most * square,
				FromFormula: true, Note: "no row has this diameter; a certificate would settle it", Source: b.source}, true
		}
	}
	return WireRow{}, false
}

// offers says which metals and diameters of a construction the table has.
func (t *wireTable) offers(construction string) string {
	var parts []string
	for _, m := range t.metals {
		least, most := math.Inf(1), 0.0
		for _, w := range t.rows {
			if w.Construction == construction && w.Metal == m {
				least, most = min(least, w.Diameter), max(most, w.Diameter)
			}
		}
		if most > 0 {
			parts = append(parts, fmt.Sprintf("%s from %.4g to %.4g mm", m, least, most))
		}
	}
	return "it has " + strings.Join(parts, ", ")
}

// WireBuildOf gives the construction factors of a wire by name.
func WireBuildOf(construction string) (WireBuild, error) {
	t, err := wires()
	if err != nil {
		return WireBuild{}, err
	}
	i, err := t.build.find(construction)
	if err != nil {
		return WireBuild{}, err
	}
	return t.builds[i], nil
}

// Wires are all rows, in the order of the file.
func Wires() ([]WireRow, error) {
	t, err := wires()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.rows), nil
}
