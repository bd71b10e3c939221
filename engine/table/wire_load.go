package table

import (
	"fmt"
	"sync"

	"chainwale/engine/working"
)

// newtonsPerPound is one pound-force in N, by definition.
const newtonsPerPound = 4.4482216152605

// wireBand bounds the break load over d^2 (kN/mm2) between two diameters.
type wireBand struct {
	construction, metal     string
	over, upTo, least, most float64
	source                  working.Source
}

type wireTable struct {
	rows   []WireRow
	bands  []wireBand
	builds []WireBuild
	build  *index[int]
	metal  *index[string]
	metals []string
}

var wires = sync.OnceValues(loadWires)

func loadWires() (*wireTable, error) {
	t := &wireTable{build: newIndex[int]("wire construction"), metal: newIndex[string]("wire metal")}
	for _, load := range []func(*wireTable) error{loadWireBuilds, loadWireMetals, loadWireRows, loadWireBands} {
		if err := load(t); err != nil {
			return nil, err
		}
	}
	return t, nil
}

func loadWireBuilds(t *wireTable) (err error) {
	var names [][]string
	t.builds, err = readRows("wire_builds.csv", func(r *row) WireBuild {
		names = append(names, append([]string{r.text("construction")}, r.list("names")...))
		return WireBuild{Construction: r.text("construction"), AreaFactor: r.needed("area_factor"), Fill: r.needed("fill"),
			SpinFactor: r.needed("spin_factor"), BreakFactor: r.needed("break_factor"), GrossModulus: r.needed("gross_modulus"),
			Source: r.source("source", "known", "area and break factors"), Moduli: r.source("modulus_source", "modulus_known", "modulus on the outer circle")}
	})
	for i, all := range names {
		for _, name := range all {
			if err == nil && !t.build.has(name) {
				err = t.build.add(name, i)
			}
		}
	}
	return err
}

func loadWireMetals(t *wireTable) error {
	_, err := readRows("wire_metals.csv", func(r *row) string {
		metal := r.text("metal")
		t.metals = append(t.metals, metal)
		for _, name := range append([]string{metal}, r.list("names")...) {
			if t.metal.has(name) {
				continue
			}
			if err := t.metal.add(name, metal); err != nil {
				r.fail("names", err.Error())
			}
		}
		return metal
	})
	return err
}

func loadWireRows(t *wireTable) (err error) {
	t.rows, err = readRows("wire.csv", func(r *row) WireRow {
		load := r.needed("load")
		switch unit := r.text("unit"); unit {
		case "kN":
			load *= 1000
		case "lbf":
			load *= newtonsPerPound
		default:
			r.fail("unit", fmt.Sprintf("%q is neither kN nor lbf", unit))
		}
		return WireRow{Construction: r.text("construction"), Metal: r.text("metal"), Size: r.text("size"), Diameter: r.needed("diameter"),
			BreakLoad: load, BreakLoadMost: load, Note: r.text("note"), Source: r.source("source", "known", "minimum break load")}
	})
	return err
}

func loadWireBands(t *wireTable) (err error) {
	t.bands, err = readRows("wire_bands.csv", func(r *row) wireBand {
		return wireBand{construction: r.text("construction"), metal: r.text("metal"), over: r.needed("over"), upTo: r.needed("upto"),
			least: r.needed("least"), most: r.needed("most"), source: r.source("source", "known", "bounds of the break load")}
	})
	return err
}
