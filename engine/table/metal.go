package table

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"chainwale/engine/working"
)

// Metal is one row of the table of metals: the least that a specification asks
// of a metal in one condition. What the specification doesn't give is NaN.
type Metal struct {
	// Name is the row's own name ("316L-A240"), Family what an owner calls the metal ("316L").
	Name, Family string
	// Kind is stainless, titanium, bronze, brass, aluminium or steel.
	Kind string
	// Standard and Condition say which metal: "ASTM A240 S31603", "annealed".
	Standard, Condition string
	// ThicknessOver and ThicknessUpTo bound the row in mm; NaN where the table has no bound.
	ThicknessOver, ThicknessUpTo float64
	// Yield and Ultimate are minima in MPa; UltimateMax is the upper ultimate strength, which a press has to bend.
	Yield, Ultimate, UltimateMax float64
	// YieldBasis is "0.2 % offset" or, for copper alloys, "0.5 % extension under load".
	YieldBasis string
	// Elongation is in %, Modulus in MPa, Density in kg/m3.
	Elongation, Modulus, Density float64
	// The chemistry bounds are in % by mass; NaN for metals that have none in the table.
	CrMin, CrMax, MoMin, MoMax, NMin, NMax, NiMin, NiMax, CarbonMax float64
	// Galvanic is the metal's name in the galvanic series.
	Galvanic string
	// Welded says that the strengths are those beside a weld.
	Welded bool

	// Strength, MaxStrength, Stretch, Elastic, Chemistry and Carbon are the sources
	// of yield and ultimate, of UltimateMax, of the elongation, of modulus and
	// density, of the chemistry, and of CarbonMax. Empty where there is no value.
	Strength, MaxStrength, Stretch, Elastic, Chemistry, Carbon working.Source

	weldRows []string
}

// Stainless says whether pitting resistance means anything for the metal.
func (m Metal) Stainless() bool { return m.Kind == "stainless" }

// Titanium says whether the metal is titanium, which does not pit at boating temperatures.
func (m Metal) Titanium() bool { return m.Kind == "titanium" }

// Brass says whether the metal holds enough zinc to lose it in sea water.
func (m Metal) Brass() bool { return m.Kind == "brass" }

// covers says whether the row holds for a thickness; 0 is a thickness nobody gave.
// Plate rows start where their standard starts, so the lower bound is open.
func (m Metal) covers(thickness float64) bool {
	return thickness == 0 || (!(thickness < m.ThicknessOver) && !(thickness > m.ThicknessUpTo))
}

type metalTable struct {
	rows []Metal
	// names leads from any name to the rows it may mean, none of them welded
	// unless the name is that of a welded row.
	names *index[[]int]
}

var metals = sync.OnceValues(loadMetals)

func loadMetals() (*metalTable, error) {
	rows, err := readRows("metals.csv", readMetal)
	if err != nil {
		return nil, err
	}
	t := &metalTable{rows: rows, names: newIndex[[]int]("metal")}
	families := map[string][]int{}
	var order []string
	for i, m := range rows {
		if err := t.names.add(m.Name, []int{i}); err != nil {
			return nil, err
		}
		if m.Welded {
			continue
		}
		if families[m.Family] == nil {
			order = append(order, m.Family)
		}
		families[m.Family] = append(families[m.Family], i)
	}
	for _, family := range order {
		if err := t.names.add(family, families[family]); err != nil {
			return nil, err
		}
	}
	return t, addOtherNames("metal_names.csv", t.names)
}

// addOtherNames reads a file of names and what they mean into an index.
func addOtherNames(file string, x *index[[]int]) error {
	type other struct {
		name  string
		means []string
	}
	all, err := readRows(file, func(r *row) other { return other{r.text("name"), r.list("means")} })
	if err != nil {
		return err
	}
	for _, o := range all {
		var rows []int
		for _, m := range o.means {
			more, err := x.find(m)
			if err != nil {
				return fmt.Errorf("table %s: %w", file, err)
			}
			rows = append(rows, more...)
		}
		if err := x.add(o.name, rows); err != nil {
			return err
		}
	}
	return nil
}

func readMetal(r *row) Metal {
	m := Metal{
		Name: r.text("id"), Family: r.text("family"), Kind: r.text("kind"), Standard: r.text("standard"), Condition: r.text("condition"),
		ThicknessOver: r.number("t_min"), ThicknessUpTo: r.number("t_max"),
		Yield: r.needed("yield"), YieldBasis: r.text("yield_basis"), Ultimate: r.needed("ultimate"), UltimateMax: r.number("ultimate_max"),
		Elongation: r.number("elongation"), Modulus: r.needed("modulus"), Density: r.needed("density"),
		CrMin: r.number("cr_min"), CrMax: r.number("cr_max"), MoMin: r.number("mo_min"), MoMax: r.number("mo_max"),
		NMin: r.number("n_min"), NMax: r.number("n_max"), NiMin: r.number("ni_min"), NiMax: r.number("ni_max"), CarbonMax: r.number("c_max"),
		Galvanic: r.text("galvanic"), Welded: strings.HasPrefix(r.text("condition"), "butt weld"),
		weldRows: strings.Fields(r.text("welded")),
		Strength: r.source("source", "known", "yield and ultimate strength"),
		Elastic:  r.source("source", "elastic_known", "elastic modulus and density"),
	}
	for _, part := range []struct {
		value float64
		known string
		what  string
		into  *working.Source
	}{
		{m.UltimateMax, "ultimate_max_known", "upper ultimate strength", &m.MaxStrength},
		{m.Elongation, "elongation_known", "elongation", &m.Stretch},
		{m.CrMin, "chemistry_known", "chemistry", &m.Chemistry},
		{m.CarbonMax, "carbon_known", "carbon", &m.Carbon},
	} {
		if part.value == part.value {
			*part.into = r.source("source", part.known, part.what)
		}
	}
	return m
}

// Metals are all rows, in the order of the file.
func Metals() ([]Metal, error) {
	t, err := metals()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.rows), nil
}

// MetalNames are all names a metal may be looked up by, in the order of the file.
func MetalNames() ([]string, error) {
	t, err := metals()
	if err != nil {
		return nil, err
	}
	return slices.Clone(t.names.shown), nil
}

// MetalNamed looks a metal up by the name of a row ("316L-A240"), of a family
// ("316L") or any other name in use ("A4", "titanium", "bronze"). Where the name
// doesn't settle the standard or the temper, the weakest candidate counts.
func MetalNamed(name string) (Metal, error) { return MetalFor(name, 0, false) }

// MetalFor is MetalNamed for a thickness in mm (0 if nobody gave one) and, where
// welded, for the metal beside a weld. A thickness that no candidate covers is an
// error, and so is a weld in a metal that loses its temper there.
func MetalFor(name string, thickness float64, welded bool) (Metal, error) {
	if math.IsNaN(thickness) || math.IsInf(thickness, 0) || thickness < 0 {
		return Metal{}, fmt.Errorf("the thickness of a metal can't be %g mm", thickness)
	}
	t, err := metals()
	if err != nil {
		return Metal{}, err
	}
	candidates, err := t.names.find(name)
	if err != nil {
		return Metal{}, err
	}
	if welded {
		if candidates, err = t.besideWeld(name, candidates); err != nil {
			return Metal{}, err
		}
	}
	var weakest *Metal
	for _, i := range candidates {
		if m := &t.rows[i]; m.covers(thickness) && (weakest == nil || m.weaker(weakest)) {
			weakest = m
		}
	}
	if weakest == nil {
		return Metal{}, fmt.Errorf("no row for %s holds at %g mm thickness: %s", name, thickness, t.ranges(candidates))
	}
	return *weakest, nil
}

// besideWeld replaces each candidate by the rows that count beside a weld.
func (t *metalTable) besideWeld(name string, candidates []int) ([]int, error) {
	var rows []int
	for _, i := range candidates {
		for _, w := range t.rows[i].weldRows {
			switch w {
			case "same":
				rows = append(rows, i)
			case "none":
				return nil, fmt.Errorf("%s loses its temper beside a weld and the table has no strength for it there", name)
			default:
				found, err := t.names.find(w)
				if err != nil {
					return nil, err
				}
				rows = append(rows, found...)
			}
		}
	}
	return rows, nil
}

// ranges says in words what thicknesses the candidates hold for.
func (t *metalTable) ranges(candidates []int) string {
	var parts []string
	for _, i := range candidates {
		m := t.rows[i]
		text := m.Name + " holds"
		if m.ThicknessOver == m.ThicknessOver {
			text += fmt.Sprintf(" from %g", m.ThicknessOver)
		}
		if m.ThicknessUpTo == m.ThicknessUpTo {
			text += fmt.Sprintf(" up to %g", m.ThicknessUpTo)
		}
		parts = append(parts, text+" mm")
	}
	return strings.Join(parts, ", ")
}

// weaker tells whether the metal has a lower ultimate strength than another, or
// among equals a lower yield.
func (m *Metal) weaker(than *Metal) bool {
	return cmp.Or(cmp.Compare(m.Ultimate, than.Ultimate), cmp.Compare(m.Yield, than.Yield)) < 0
}
